package memo

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A text is worked out once, and forgotten when it was not met for long.
func TestATextIsWorkedOutOnce(t *testing.T) {
	worked := map[string]int{}
	length := Of(func(text string) int { worked[text]++; return len(text) })
	double := Of(func(text string) string { worked[text]++; return text + text })
	m := new(Memo)
	for round := range 3 * rounds {
		assert.Equal(t, 4, length.Of(m, "lamp"))
		assert.Equal(t, "lamplamp", double.Of(m, "lamp"))
		length.Of(m, strconv.Itoa(round))
		m.Next()
	}
	assert.Equal(t, 2, worked["lamp"])
	assert.Equal(t, 1, worked["7"])
	assert.Less(t, len(m.tables[length].(table[int])), 2*rounds+2)
	length.Of(m, "7")
	assert.Equal(t, 2, worked["7"])

	length.Of(nil, "lamp")
	assert.Equal(t, 3, worked["lamp"], "nothing is kept without a memo")
}
