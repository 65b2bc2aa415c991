package trend

import "math"

// student is the t that a variable with so many degrees of freedom, at least 1, stays
// within, up and down, in a share of cases above 0 and below 1.
func student(degrees int, share float64) float64 {
	low, high := 0.0, math.Pi/2
	for {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			return math.Sqrt(float64(degrees)) * math.Tan(low)
		}
		if within(middle, degrees) < share {
			low = middle
		} else {
			high = middle
		}
	}
}

// within is the chance that t lies within ±√degrees·tan(angle): the incomplete beta function
// of whole degrees, whose series ends (Abramowitz and Stegun, Handbook of Mathematical
// Functions, 26.7.3 and 26.7.4). All terms are above zero, so that no digits are lost.
func within(angle float64, degrees int) float64 {
	sin, cos := math.Sincos(angle)
	odd := degrees % 2
	term, sum := 1.0, 0.0
	if odd == 1 {
		term = cos
	}
	for k := odd; k+1 < degrees && term > sum*1e-18; k += 2 {
		sum += term
		term *= cos * cos * float64(k+1) / float64(k+2)
	}
	if odd == 0 {
		return sin * sum
	}
	return 2 / math.Pi * (angle + sin*sum)
}
