package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The other published table, MTN 5183-1 for plugs with a copper ring, is nowhere above the one taken,
// and what an M18 of class 12.9 bears is far above both: no class tells a wrong torque of a plug.
func TestNoPublishedTorqueOfAPlugIsAboveTheGreatest(t *testing.T) {
	for written, torque := range map[string]float64{
		"M10x1": 15, "M12x1.5": 35, "M14x1.5": 35, "M16x1.5": 40, "M18x1.5": 50, "M20x1.5": 55, "M22x1.5": 60, "M24x1.5": 70, "M27x2": 80, "M30x2": 95, "M33x2": 120, "M36x1.5": 130, "M42x1.5": 150, "M48x1.5": 170,
	} {
		thread, err := ParseThread(written)
		require.NoError(t, err)
		most, ok := PlugTorqueNm(thread)
		require.True(t, ok, written)
		assert.LessOrEqual(t, torque, most, written)
	}
	thread, err := ParseThread("M18x1.5")
	require.NoError(t, err)
	class, err := ParseClass("12.9")
	require.NoError(t, err)
	yields, ok := Yields(thread, class, "dry")
	require.True(t, ok)
	assert.Greater(t, yields, 400.0)
	most, _ := PlugTorqueNm(thread)
	assert.InDelta(t, 70, most, 0)
	for _, written := range []string{"1/2-14 NPT", "R 1/2", "M52x1.5"} {
		thread, err := ParseThread(written)
		require.NoError(t, err)
		_, ok := PlugTorqueNm(thread)
		assert.False(t, ok, written)
	}
	thread, err = ParseThread("G 1/2") // 20.955 mm
	require.NoError(t, err)
	most, ok = PlugTorqueNm(thread)
	assert.True(t, ok)
	assert.InDelta(t, 100, most, 0)
}
