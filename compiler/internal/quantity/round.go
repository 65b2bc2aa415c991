package quantity

import (
	"math"
	"math/big"
	"strings"
)

type direction int

const (
	nearest   direction = iota // halves away from nothing
	upwards                    // towards more, so that a minimum is never lowered
	downwards                  // towards less, so that a maximum is never raised
)

// roundPlaces rounds to a number of places behind the point; it may be below zero.
func roundPlaces(value *big.Rat, places int, d direction) *big.Rat {
	scaled := new(big.Rat).Mul(value, powerOfTen(places))
	num, den := scaled.Num(), scaled.Denom()
	whole := new(big.Int)
	switch d {
	case downwards:
		whole.Div(num, den) // den is above zero, so this is the floor
	case upwards:
		whole.Neg(whole.Div(new(big.Int).Neg(num), den))
	default:
		twice := new(big.Int).Lsh(new(big.Int).Abs(num), 1)
		whole.Quo(twice.Add(twice, den), new(big.Int).Lsh(den, 1))
		if num.Sign() < 0 {
			whole.Neg(whole)
		}
	}
	out := new(big.Rat).SetInt(whole)
	return out.Mul(out, powerOfTen(-places))
}

// placesFor is how many places behind the point leave a number of significant figures.
func placesFor(value *big.Rat, digits int) int {
	if value.Sign() == 0 {
		return 0
	}
	return digits - 1 - magnitude(value)
}

// magnitude is the power of ten of the first figure: 2 of 123, -1 of 0.85.
func magnitude(value *big.Rat) int {
	size := new(big.Rat).Abs(value)
	f, _ := size.Float64()
	m := int(math.Floor(math.Log10(f)))
	for size.Cmp(powerOfTen(m)) < 0 {
		m--
	}
	for size.Cmp(powerOfTen(m+1)) >= 0 {
		m++
	}
	return m
}

func powerOfTen(n int) *big.Rat {
	if n < 0 {
		return new(big.Rat).Inv(powerOfTen(-n))
	}
	return new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil))
}

// mostPlaces is more than any figure that is read or rounded here has behind the point.
const mostPlaces = 40

// decimalText writes a value as a decimal without trailing zeros, but with a least
// number of places.
func decimalText(value *big.Rat, least int) string {
	text := new(big.Rat).Abs(value).FloatString(mostPlaces)
	end := len(text)
	for text[end-1] == '0' && end > len(text)-mostPlaces+least {
		end--
	}
	text = strings.TrimSuffix(text[:end], ".")
	if value.Sign() < 0 {
		text = "−" + text
	}
	return text
}

// significant counts the figures of a value that ends within a few; ok is false for others.
func significant(value *big.Rat, most int) bool {
	if value.Sign() == 0 {
		return true
	}
	return roundPlaces(value, placesFor(value, most), nearest).Cmp(value) == 0
}
