package tree

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A list that is taken for whole at once has no item that the look at each would find damaged.
func TestAWholeListHasWholeItems(t *testing.T) {
	dice := rand.New(rand.NewPCG(3, 5))
	whole := 0
	for range 20000 {
		var line strings.Builder
		for range dice.IntN(9) {
			line.WriteString([]string{`"bolt"`, `"nut"`, `,`, `,`, ` `, `"`, `'`, `nut`, `"a 1/2 in bolt"`, `12`, "\t"}[dice.IntN(11)])
		}
		if !wholeItems([]byte(line.String())) {
			continue
		}
		whole++
		for _, item := range strings.Split(line.String(), ",") {
			assert.True(t, wholeItem.MatchString(strings.Trim(item, " \t")), line.String())
		}
	}
	assert.Greater(t, whole, 500)
}
