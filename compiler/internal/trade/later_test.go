package trade

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// first gives the place of the first trigger of a text.
func first(t *testing.T, text string) (start, end int) {
	t.Helper()
	triggers := Triggers(text)
	if !assert.NotEmpty(t, triggers, text) {
		return 0, 0
	}
	return triggers[0].Start, triggers[0].End
}

func TestPutOff(t *testing.T) {
	for _, text := range []string{
		"Replace the belt next time.",
		"Replace the spring next spring.",
		"Renew the belts in spring.",
		"Next time, replace the chain.",
		"Grease the chain each spring.",
		"Grease the chain every 50 h.",
		"Tighten the chain every second week.",
		"Sharpen the knives this winter.",
		"Look again tomorrow. Renew the belt at the next oil service.",
	} {
		start, end := first(t, text)
		assert.True(t, PutOff(text, start, end), text)
	}
	for _, text := range []string{
		"Replace the belt.",
		"Replace the belt before the next shift.",
		"Take the belt off, and order one for next spring.",
		"Remove the belt each time.",
		"Leave it until next time. Remove the chain.",
		"Turn the rollers next.",
		"Replace the spring in the next two steps.",
		"Remove the belt, and look at it again next week.",
	} {
		start, end := first(t, text)
		assert.False(t, PutOff(text, start, end), text)
	}
}

func TestLeftToOthers(t *testing.T) {
	for _, text := range []string{
		"Replace the belt before the next shift.",
		"Renew the chain by its own card.",
		"Have the tyre renewed by the tyre shop.",
		"Renew the belt within 50 h.",
		"Tighten the chain in two weeks.",
		"Call the fitter to replace the belt.",
		"Get the blade changed.",
		"Plan to replace the chain.",
		"Replace the drive belt at the next stop.",
	} {
		start, end := first(t, text)
		assert.True(t, LeftToOthers(text, start, end), text)
	}
	for _, text := range []string{
		"Replace the belt.",
		"Call the foreman, and replace the belt.",
		"Replace the belt before the next step.",
		"Renew the chain and both sprockets together.",
		"Stop, have the card at hand. Renew the belt.",
		"Renew the belt by hand.",
		"Have a second person hold the lamp and remove the belt.",
	} {
		start, end := first(t, text)
		assert.False(t, LeftToOthers(text, start, end), text)
	}
}

// Whatever a text holds, the questions about its triggers have an answer.
func FuzzLater(f *testing.F) {
	for _, text := range []string{"Replace the belt before the next shift.", "Remove the belt within", "Next, the chain each other", "by the", "in 2", "Have the belt replaced"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, trigger := range Triggers(text) { // blanks behind it change nothing
			assert.Equal(t, PutOff(text, trigger.Start, trigger.End), PutOff(text+" \n", trigger.Start, trigger.End), "%q", text)
			assert.Equal(t, LeftToOthers(text, trigger.Start, trigger.End), LeftToOthers(text+" \n", trigger.Start, trigger.End), "%q", text)
		}
	})
}
