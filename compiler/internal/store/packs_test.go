package store

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func packs(sizes, prices []int64) []Pack {
	var out []Pack
	for i, size := range sizes {
		pack := Pack{Size: big.NewRat(size, 1)}
		if prices != nil {
			pack.Price = big.NewRat(prices[i], 100)
		}
		out = append(out, pack)
	}
	return out
}

// Worked by hand: of 7 l in cans of 5, 3 and 1 l at 10.00, 6.50 and 3.20 the cheapest is
// 3 + 3 + 1 for 16.20 (5 + 1 + 1 costs 16.40, 5 + 3 costs 16.50, two fives 20.00); without prices 5 + 1 + 1 and
// 3 + 3 + 1 leave nothing, and both are three cans: the larger can is taken first.
func TestChooseByHand(t *testing.T) {
	choice, ok := Choose(big.NewRat(7, 1), packs([]int64{1, 5, 3}, []int64{320, 1000, 650}))
	require.True(t, ok)
	assert.Equal(t, "1620", new(big.Rat).Mul(choice.Cost, big.NewRat(100, 1)).RatString())
	assert.Equal(t, []int{2, 1}, counts(choice))
	choice, ok = Choose(big.NewRat(7, 1), packs([]int64{1, 5, 3}, nil))
	require.True(t, ok)
	assert.Nil(t, choice.Cost)
	assert.Zero(t, choice.Left.Sign())
	assert.Equal(t, []int{1, 2}, counts(choice))

	choice, ok = Choose(big.NewRat(301, 1), packs([]int64{1, 20}, nil)) // more than a dozen
	require.True(t, ok)
	assert.Equal(t, []int{15, 1}, counts(choice))
	_, ok = Choose(big.NewRat(3, 1), nil)
	assert.False(t, ok)
	_, ok = Choose(big.NewRat(3, 1), []Pack{{}})
	assert.False(t, ok)
}

func counts(choice Choice) []int {
	var out []int
	for _, pick := range choice.Picks {
		out = append(out, pick.Count)
	}
	return out
}

// No choice of up to a dozen packs is cheaper, or without prices leaves less over: held
// against all of them, counted in whole numbers.
func TestNoChoiceOfPacksIsBetter(t *testing.T) {
	dice := rand.New(rand.NewPCG(5, 1))
	for range 400 {
		sizes := []int64{1 + dice.Int64N(30), 1 + dice.Int64N(30), 1 + dice.Int64N(30)}
		prices := []int64{1 + dice.Int64N(900), 1 + dice.Int64N(900), 1 + dice.Int64N(900)}
		need := 1 + dice.Int64N(90)
		least, cheapest := int64(-1), int64(-1)
		for a := int64(0); a <= mostPacks; a++ {
			for b := int64(0); a+b <= mostPacks; b++ {
				for c := int64(0); a+b+c <= mostPacks; c++ {
					left, cost := a*sizes[0]+b*sizes[1]+c*sizes[2]-need, a*prices[0]+b*prices[1]+c*prices[2]
					if left < 0 {
						continue
					}
					if least < 0 || left < least {
						least = left
					}
					if cheapest < 0 || cost < cheapest {
						cheapest = cost
					}
				}
			}
		}
		if least < 0 {
			continue
		}
		choice, ok := Choose(big.NewRat(need, 1), packs(sizes, nil))
		require.True(t, ok)
		assert.Equal(t, big.NewRat(least, 1).RatString(), choice.Left.RatString(), "%d of %v", need, sizes)
		choice, ok = Choose(big.NewRat(need, 1), packs(sizes, prices))
		require.True(t, ok)
		assert.Equal(t, big.NewRat(cheapest, 100).RatString(), choice.Cost.RatString(), "%d of %v at %v", need, sizes, prices)
	}
}
