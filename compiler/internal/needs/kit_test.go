package needs_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/needs"
)

// bruteForce tries every subset of the tools: the outside check for the search.
func bruteForce(demands []needs.Demand, tools []string) int {
	best := len(tools) + 1
	for subset := range 1 << len(tools) {
		held := map[string]bool{}
		for i, tool := range tools {
			held[tool] = subset&(1<<i) != 0
		}
		size := 0
		for _, in := range held {
			if in {
				size++
			}
		}
		if size < best && serves(demands, func(tool string) bool { return held[tool] }) {
			best = size
		}
	}
	return best
}

func serves(demands []needs.Demand, has func(string) bool) bool {
	for _, demand := range demands {
		if len(demand.Ways) == 0 {
			continue
		}
		met := slices.ContainsFunc(demand.Ways, func(way needs.Set) bool {
			return !slices.ContainsFunc(way, func(tool string) bool { return !has(tool) })
		})
		if !met {
			return false
		}
	}
	return true
}

func TestSmallestKitAgainstEverySubset(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	tools := []string{"a", "b", "c", "d", "e", "f", "g", "h", "i", "j"}
	for round := range 400 {
		var demands []needs.Demand
		for range 1 + random.IntN(7) {
			var demand needs.Demand
			for range random.IntN(4) {
				var way needs.Set
				for range 1 + random.IntN(3) {
					way = append(way, tools[random.IntN(len(tools))])
				}
				slices.Sort(way)
				demand.Ways = append(demand.Ways, slices.Compact(way))
			}
			demands = append(demands, demand)
		}
		kit := needs.Smallest(demands)
		assert.True(t, kit.Proved)
		assert.True(t, serves(demands, func(tool string) bool { return slices.Contains(kit.Tools, tool) }), "round %d: %v does not serve %v", round, kit.Tools, demands)
		assert.Equal(t, bruteForce(demands, tools), len(kit.Tools), "round %d: %v", round, demands)
	}
}

func TestSmallestKitIsTheSameEveryTimeAndFast(t *testing.T) {
	var demands []needs.Demand
	for i := range 60 {
		demands = append(demands, needs.Demand{Ways: []needs.Set{
			{fmt.Sprintf("wrench-%d", i%17)}, {"ratchet", fmt.Sprintf("socket-%d", i%17)}, {"breaker-bar", fmt.Sprintf("socket-%d", i%17)}}})
		demands = append(demands, needs.Demand{Ways: []needs.Set{{fmt.Sprintf("socket-%d", i%13), "torque-wrench-100"}, {fmt.Sprintf("socket-%d", i%13), "torque-wrench-300"}}})
	}
	first := needs.Smallest(demands)
	assert.True(t, first.Proved)
	assert.Equal(t, 13+1+1+4, len(first.Tools), "13 sockets, one torque wrench, one handle, 4 wrenches for the sizes without a torque")
	for range 5 {
		assert.Equal(t, first, needs.Smallest(demands))
	}
}
