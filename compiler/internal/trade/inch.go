package trade

import (
	"fmt"
	"math/big"
	"strings"

	"benchleaf/compiler/internal/pattern"
)

// mmPerInch is exact since 1959 (NIST SP 811 App. B.8).
const mmPerInch = 25.4

var fractionForm = pattern.MustCompile(`^(?:(\d+)[- ])?(\d+)/(\d+)$|^(\d+)$`)

// parseFraction reads a whole or mixed fraction: 3/4, 1-3/16, 1 3/16, 2. The value is exact.
func parseFraction(text string) (*big.Rat, bool) {
	m := fractionForm.FindStringSubmatch(strings.TrimSpace(text))
	if m == nil || len(text) > 12 {
		return nil, false
	}
	if m[4] != "" {
		return new(big.Rat).SetString(m[4])
	}
	part, ok := new(big.Rat).SetString(m[2] + "/" + m[3])
	if !ok {
		return nil, false
	}
	if m[1] != "" {
		whole, _ := new(big.Rat).SetString(m[1])
		part.Add(part, whole)
	}
	return part, true
}

// fraction writes an exact number of inches as the trade does: 3/4, 1-3/16, 2.
func fraction(value *big.Rat) string {
	whole := new(big.Int).Quo(value.Num(), value.Denom())
	rest := new(big.Rat).Sub(value, new(big.Rat).SetInt(whole))
	switch {
	case rest.Sign() == 0:
		return whole.String()
	case whole.Sign() == 0:
		return rest.String()
	}
	return fmt.Sprintf("%s-%s", whole, rest)
}

// inchMM turns exact inches into millimetres: the product is exact, only the last step rounds.
func inchMM(value *big.Rat) float64 {
	mm, _ := new(big.Rat).Mul(value, big.NewRat(254, 10)).Float64()
	return mm
}

// mustInch is for the tables of this package, whose fractions a test reads.
func mustInch(text string) *big.Rat {
	value, ok := parseFraction(text)
	if !ok {
		panic("trade: " + text + " is no fraction of an inch")
	}
	return value
}
