package join

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What two authors grease alike is greased once, behind what both do before it and ahead of what
// both do after it; with another grease, or at another point, each greases his own.
func TestWhatTwoGreaseAlikeIsGreasedOnce(t *testing.T) {
	greases := func(before, how, after string) string {
		return offAndProved + "[[step]]\n" + before + "\n[[step]]\ngrease = \"" + how + "\n[[step]]\n" + after + "\n" + onAgain
	}
	first := greases(`clean = "the fitting"`, "the pillow block\"\ncount = 3\nsay = \"Turn it by hand.\"", `mark = "the date on the guard"`)
	other := greases(`inspect = "the seal"`, "the Pillow Block\"\ncount = 3", `clean = "the pan"`)
	for _, jobs := range [][]string{{first, other}, {other, first}, {first, other, first}} {
		plan, written := joinedOf(t, jobs...)
		at, count := 0, 0
		for i, deed := range plan.Deeds {
			if deed.Step.Verb.Key == "grease" {
				at, count = i, count+1
				assert.Len(t, deed.Also, len(jobs)-1, written)
			}
		}
		assert.Equal(t, 1, count, written)
		for i, deed := range plan.Deeds {
			switch {
			case slices.Contains([]string{"the fitting", "the seal"}, deed.Step.Objects[0].Words()):
				assert.Less(t, i, at, written)
			case slices.Contains([]string{"the date on the guard", "the pan"}, deed.Step.Objects[0].Words()):
				assert.Greater(t, i, at, written)
			}
		}
		assert.Equal(t, 1, strings.Count(written, "Turn it by hand."), written)
		assert.Contains(t, written, "count = 3", written)
	}
	for _, differs := range []string{"the pillow block\"\ncount = 4", "the other block\"\ncount = 3"} {
		plan, written := joinedOf(t, first, greases(`inspect = "the seal"`, differs, `clean = "the pan"`))
		count := 0
		for _, deed := range plan.Deeds {
			if deed.Step.Verb.Key == "grease" {
				count++
				assert.Empty(t, deed.Also, written)
			}
		}
		assert.Equal(t, 2, count, written)
	}
}

// Where their orders fight, each greases for himself.
func TestGreaseThatIsWantedBeforeAndAfterIsPutOnTwice(t *testing.T) {
	job := offAndProved + "[[step]]\ngrease = \"the left block\"\n[[step]]\nclean = \"the pan\"\n[[step]]\ngrease = \"the right block\"\n" + onAgain
	turned := offAndProved + "[[step]]\ngrease = \"the right block\"\n[[step]]\nclean = \"the seat\"\n[[step]]\ngrease = \"the left block\"\n" + onAgain
	plan, written := joinedOf(t, job, turned)
	said := verbs(plan)
	count := len(slices.DeleteFunc(said, func(verb string) bool { return !strings.HasSuffix(verb, "grease") }))
	assert.Equal(t, 3, count, written)
}
