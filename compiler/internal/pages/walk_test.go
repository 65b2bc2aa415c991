package pages_test

import (
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/assert"
)

func report(t *testing.T, name string, faults []string) {
	t.Helper()
	for i, fault := range faults {
		if i == 8 {
			t.Errorf("%s: and %d more", name, len(faults)-i)
			break
		}
		t.Errorf("%s: %s", name, fault)
	}
}

// Black on white is 21 by definition (WCAG 2.1); #767676 on white is its well-known
// least grey, 4.54; ISO 3864-4 colours as computed from their published hex values.
func TestTheYardstickOfContrast(t *testing.T) {
	for _, c := range []struct {
		a, b  pages.Ink
		ratio float64
	}{{0x000000, 0xFFFFFF, 21}, {0x767676, 0xFFFFFF, 4.54}, {0x9B2423, 0xFFFFFF, 7.86}, {0xD05D29, 0x000000, 5.28}, {0xF9A800, 0x000000, 10.63}, {0x005387, 0xFFFFFF, 8.12}} {
		assert.InDelta(t, c.ratio, pagestest.Contrast(c.a, c.b), 0.01)
	}
}
