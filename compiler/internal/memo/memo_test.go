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

// A list stands where that of the compile before stood, but a second one of the same compile does not.
func TestAListStandsWhereTheOneBeforeStood(t *testing.T) {
	var room Room[int]
	m := new(Memo)
	first := append(room.Take(m), 1, 2, 3)
	room.Put(m, first)
	other := append(room.Take(m), 7)
	room.Put(m, other)
	assert.Equal(t, []int{1, 2, 3}, first)

	m.Next()
	again := append(room.Take(m), 4)
	room.Put(m, again)
	assert.Same(t, &first[0], &again[0])
	assert.Equal(t, []int{4}, again)
	assert.Equal(t, []int{4, 0, 0}, first, "what is left of the list before is cleared")

	assert.Nil(t, room.Take(nil), "nothing is kept without a memo")
	room.Put(nil, again)
}
