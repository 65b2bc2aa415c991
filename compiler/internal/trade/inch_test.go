package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseWidth(t *testing.T) {
	tests := []struct {
		text, label string
		mm          float64
		inch        bool
	}{
		{"16 mm", "16 mm", 16, false},
		{"16mm", "16 mm", 16, false},
		{"5.5 mm", "5.5 mm", 5.5, false},
		{"3/4 in", "3/4 in", 19.05, true},
		{`3/4"`, "3/4 in", 19.05, true},
		{"0.75 in", "3/4 in", 19.05, true},
		{"1-3/16 in", "1-3/16 in", 30.1625, true},
		{"1 3/16 in", "1-3/16 in", 30.1625, true},
		{"12/16 in", "3/4 in", 19.05, true},
		{"2 inch", "2 in", 50.8, true},
		{"0.05 in", "1/20 in", 1.27, true},
	}
	for _, test := range tests {
		width, err := ParseWidth(test.text)
		require.NoError(t, err, test.text)
		assert.Equal(t, test.label, width.Label)
		assert.InDelta(t, test.mm, width.MM, 1e-12)
		assert.Equal(t, test.inch, width.Inch)
		again, err := ParseWidth(width.Label)
		require.NoError(t, err)
		assert.Equal(t, width, again)
	}
	for _, text := range []string{"", "16", "mm", "0 mm", "-3 mm", "NaN mm", "inf mm", "900 mm", "3/0 in", "1e9 in", "M10", "3/4 ft"} {
		_, err := ParseWidth(text)
		assert.ErrorContains(t, err, "write", text)
	}
}

func FuzzParseWidth(f *testing.F) {
	for _, text := range []string{"16 mm", "1-3/16 in", "0.75 in", "3/0 in", "1e300 mm", "3/77709in"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		width, err := ParseWidth(text)
		if err != nil {
			return
		}
		assert.Greater(t, width.MM, 0.0)
		again, err := ParseWidth(width.Label)
		require.NoError(t, err, "%q reads as %q", text, width.Label)
		assert.InDelta(t, width.MM, again.MM, 0.002)
	})
}
