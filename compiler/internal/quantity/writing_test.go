package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A decimal comma stands in what was worked out; what the author wrote stays (1 US qt is
// 0.946 353 L, NIST Handbook 44 App. C).
func TestWritingOfAnotherLanguage(t *testing.T) {
	german := Writing{To: "bis", AtLeast: "min.", AtMost: "max.", About: "etwa", Comma: true,
		Units: map[string]string{"months": "Monate", "years": "Jahre", "year": "Jahr", "month": "Monat"}}
	for text, want := range map[string]string{
		"1.1 L":             "1.1\u00a0L (1,2\u00a0US qt)",
		"1.1 L (1.2 US qt)": "1.1\u00a0L (1.2\u00a0US qt)",
		"42 to 48 N·m":      "42 bis 48\u00a0N·m (31 bis 35\u00a0lbf·ft)",
		"max 0.5 mm":        "max. 0.5\u00a0mm (0,019\u00a0in)",
		"12 months":         "12\u00a0Monate",
		"1 month":           "1\u00a0Monat",
		"1 year 6 months":   "1\u00a0Jahr\u00a06\u00a0Monate",
	} {
		amount, problems := Parse(text, Any)
		require.Empty(t, problems, text)
		assert.Equal(t, want, german.Format(amount, Both), text)
	}
	amount, _ := Parse("0.5 L", Volume)
	assert.Equal(t, "0.5 L", german.Plain(amount))
	assert.Equal(t, "1,5 L", german.Plain(amount.Scale(3)))
	assert.Equal(t, "0,5 L", german.Plain(amount.WorkedOut()))
	assert.Equal(t, "1.5 L", amount.Scale(3).Plain())
}

// Shares of a torque, worked out by hand and rounded to what a scale shows; the whole is
// what its author wrote.
func TestShareOfATorque(t *testing.T) {
	for _, one := range []struct {
		text    string
		percent int
		want    string
	}{
		{"80 N·m", 30, "24 N·m"}, {"75 to 85 N·m", 60, "45 to 51 N·m"}, {"75 to 85 N·m", 30, "23 to 26 N·m"}, {"44 to 48 N·m", 30, "13 to 14 N·m"}, {"8 to 10 N·m", 30, "2.4 to 3 N·m"}, {"100 to 101 N·m", 50, "50 to 51 N·m"},
		{"42 to 48 N·m", 100, "42 to 48 N·m"}, {"71 lbf·ft", 50, "36 lbf·ft"}, {"100 ± 10 N·m", 50, "45 to 55 N·m"},
	} {
		amount, problems := Parse(one.text, Torque)
		require.Empty(t, problems)
		assert.Equal(t, one.want, amount.Share(one.percent).Plain(), "%d %% of %s", one.percent, one.text)
	}
}
