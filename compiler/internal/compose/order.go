package compose

import (
	"cmp"
	"strings"
)

// compareNames orders names as people read them: letters without regard to case,
// runs of figures by their value, so that 9 mm comes before 13 mm.
func compareNames(a, b string) int {
	for a != "" && b != "" {
		headA, restA, figuresA := token(a)
		headB, restB, figuresB := token(b)
		order := strings.Compare(strings.ToLower(headA), strings.ToLower(headB))
		if figuresA && figuresB {
			headA, headB = strings.TrimLeft(headA, "0"), strings.TrimLeft(headB, "0")
			order = cmp.Or(len(headA)-len(headB), strings.Compare(headA, headB))
		}
		if order != 0 {
			return order
		}
		a, b = restA, restB
	}
	return len(a) - len(b)
}

// token splits off the run of figures, or the one other byte, that a text begins with.
func token(text string) (head, rest string, figures bool) {
	n := strings.IndexFunc(text, func(r rune) bool { return r < '0' || r > '9' })
	switch {
	case n < 0:
		return text, "", true
	case n > 0:
		return text[:n], text[n:], true
	default:
		return text[:1], text[1:], false
	}
}
