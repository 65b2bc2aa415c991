package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNutOnLine(t *testing.T) {
	for _, called := range []string{"fuel pipe union", "flare nut", "nut of the brake pipe", "hose nut", "union nuts of the fuel line", "pipe union at the pump", "brake-line-fitting", "hose end"} {
		line, sure := NutOnLine(called)
		assert.True(t, line && sure, called)
	}
	for _, called := range []string{"press hose", "brake pipe", "fuel line at the filter", "return hoses"} {
		line, sure := NutOnLine(called)
		assert.True(t, line && !sure, called)
	}
	for _, called := range []string{"drain plug", "hose clamp", "exhaust pipe nuts", "pipe flange nuts", "banjo bolt of the fuel pipe", "wheel nuts", "pipe bracket nut", "hose reel nut", "nut of the pipe clamp",
		"level plug of the pipe", "axle end", "bolts of the pipe", "shaft coupling", "pipe plug", "grease fitting", "drive line", "", "valve cover nuts"} {
		line, _ := NutOnLine(called)
		assert.False(t, line, called)
	}
}
