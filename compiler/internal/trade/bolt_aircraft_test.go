package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The table holds together: its shear figures are six tenths of the tension ones, its
// most above what it recommends, and it rises with the size. It is no formula of one nut
// factor (10-32 0.13 to 0.17, 7/16-20 0.22 to 0.24), so it stays a table.
func TestBoltTorquesHoldTogether(t *testing.T) {
	require.Len(t, boltTorques, 25)
	for i, row := range boltTorques {
		parsed := thread(t, row.Thread)
		found, ok := FindBoltTorque(parsed)
		require.True(t, ok, row.Thread)
		assert.Equal(t, row, found)
		assert.Less(t, row.Tension[0], row.Tension[1], row.Thread)
		assert.Less(t, row.Tension[1], row.MostTension, row.Thread)
		assert.Less(t, row.Shear[1], row.Most, row.Thread)
		for _, share := range []float64{row.Shear[0] / row.Tension[0], row.Shear[1] / row.Tension[1], row.Most / row.MostTension} {
			assert.InDelta(t, 0.59, share, 0.06, row.Thread)
		}
		if i > 0 && boltTorques[i-1].Tension[0] < row.Tension[0] {
			assert.LessOrEqual(t, boltTorques[i-1].MostTension, row.MostTension, row.Thread)
		}
	}
	_, ok := FindBoltTorque(thread(t, "M8"))
	assert.False(t, ok)
}

// The nut factors the recommended torques imply at 40,000 psi in the bolt, worked out
// beside the table: 10-32 0.13 to 0.17, 1/4-28 0.14 to 0.19, 3/8-24 0.12 to 0.14, 7/16-20
// 0.22 to 0.24, 1/2-20 0.15 to 0.22.
func TestBoltTorquesImplyTheirNutFactors(t *testing.T) {
	for text, want := range map[string][2]float64{"#10-32": {0.13, 0.17}, "1/4-28": {0.14, 0.19}, "3/8-24": {0.12, 0.14}, "7/16-20": {0.22, 0.24}, "1/2-20": {0.15, 0.22}} {
		parsed := thread(t, text)
		row, ok := FindBoltTorque(parsed)
		require.True(t, ok, text)
		area, _ := parsed.StressAreaMM2()
		load := area * 40000 * mpaPerPsi
		for i := range 2 {
			assert.InDelta(t, want[i], row.Tension[i]*NmPerInchPound*1000/load/parsed.DiameterMM, 0.01, text)
		}
	}
}
