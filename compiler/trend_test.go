package compiler

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/standing"
	"benchleaf/compiler/source"
)

// trendsOf are the trend sheets of a shop on a day, by what is read.
func trendsOf(t *testing.T, files map[string]string, on, book string) map[string]plan.Trend {
	t.Helper()
	var sources []*source.File
	for name, text := range files {
		sources = append(sources, source.New(name, []byte(text)))
	}
	result := Compile(Input{Files: sources})
	for _, job := range result.Jobs {
		require.False(t, job.Blocked, "%v", result.Findings)
	}
	f, err := result.fleet(Asked{On: on}, strings.NewReader(book))
	require.NoError(t, err)
	require.Empty(t, f.problems)
	series, err := standing.ReadAt(f.units, f.book, f.on, f.scan)
	require.NoError(t, err)
	out := map[string]plan.Trend{}
	for _, one := range series {
		sheet, told, err := result.trend(Look{}, f, one)
		require.NoError(t, err)
		require.True(t, told)
		out[one.What] = sheet.content
	}
	return out
}

// slacks are entries of the slack of the chain, a month apart, each with the hours more.
func slacks(from int, hours float64, values ...string) string {
	out := ""
	for i, value := range values {
		out += worked(fmt.Sprintf("2026-%02d-01", from+i), fmt.Sprintf(`meter = "%g h"`, hours+100*float64(i))) + slackOf(value)
	}
	return out
}

// xs are the places of the readings on the axis.
func xs(content plan.Trend) (out []float64) {
	for _, point := range content.Points {
		out = append(out, math.Round(point.X))
	}
	return out
}

// A chain that grows by 2 mm every 100 h from 20 mm at 100 h: y = 18 + x/50. Without scatter it
// is at 40 mm at 1100 h.
func TestTheAxisShowsWhatTheMeterShows(t *testing.T) {
	files := map[string]string{"look.toml": looked("loader", `every = "100 h"`), "shop.toml": one(""), "loader.toml": loader}
	content := trendsOf(t, files, "2026-12-31", slacks(1, 100, "20 mm", "22 mm", "24 mm", "26 mm", "28 mm"))["Slack"]
	assert.Equal(t, "Hour meter, h", content.XTitle)
	assert.Equal(t, []float64{100, 200, 300, 400, 500}, xs(content))
	assert.Equal(t, "If it goes on like this, it does not reach 40\u00a0mm before 900\u00a0h.", content.Verdict) // 500 h and the 400 h that were read over

	// At 300 h, when 24 mm were read, another meter was fitted that stood at 0 h. The readings
	// before it are of another meter, so the axis counts both: 320 h is 20 h on the new one.
	fitted := written(`unit = "yard"`, "date = 2026-03-02", `meter = "300 h"`, `new-meter = "0 h"`)
	content = trendsOf(t, files, "2026-12-31", slacks(1, 100, "20 mm", "22 mm", "24 mm")+fitted+slacks(4, 100, "26 mm", "28 mm", "30 mm", "32 mm"))["Slack"]
	assert.Equal(t, "Hours of all meters, h", content.XTitle)
	assert.Equal(t, []float64{100, 200, 300, 400, 500, 600, 700}, xs(content))
	require.NotNil(t, content.Meets) // at 1100 h in all
	assert.Equal(t, 1100.0, math.Round(content.Meets.X))
	assert.Equal(t, "1100\u00a0h", content.Meets.Text, "the picture is by its axis")
	assert.Equal(t, "If it goes on like this, it reaches 40\u00a0mm at 800\u00a0h, likely between 800\u00a0h and 800\u00a0h. Counted over all meters: 700\u00a0h is 400\u00a0h on the one fitted now.", content.Verdict)

	// All readings are of the new meter: it alone counts.
	content = trendsOf(t, files, "2026-12-31", written(`unit = "yard"`, "date = 2026-01-01", `meter = "5000 h"`, `new-meter = "0 h"`)+slacks(2, 100, "20 mm", "23 mm", "26 mm", "29 mm", "32 mm"))["Slack"]
	assert.Equal(t, "Hour meter, h", content.XTitle)
	assert.Equal(t, []float64{100, 200, 300, 400, 500}, xs(content))
	assert.Contains(t, content.Verdict, "it reaches 40\u00a0mm at 767\u00a0h") // 20 mm in 667 h from 100 h
}

// A line is drawn only where it rises or falls by more than the readings scatter.
func TestNoLineWithinTheScatter(t *testing.T) {
	files := map[string]string{"look.toml": looked("loader", `every = "100 h"`), "shop.toml": one(""), "loader.toml": loader}
	content := trendsOf(t, files, "2026-12-31", slacks(1, 100, "24 mm", "20 mm", "25 mm", "19 mm", "24 mm"))["Slack"]
	assert.Equal(t, "The readings neither rise nor fall by more than they scatter.", content.Verdict)
	assert.Nil(t, content.Line)
	assert.Empty(t, content.Band)
}

// What is renewed begins its line anew: by the book, where the step names the part, and else
// where a reading goes back as far as wear never does.
func TestALineBeginsAnewWhenThePartIsNew(t *testing.T) {
	const jumped = "when the reading went back so far that something new must have been measured."
	files := map[string]string{"look.toml": strings.NewReplacer(`measure = "the slack of the chain"`, `measure = "slack"`, "limit = \"max 40 mm\"\n", "").Replace(looked("loader", `every = "100 h"`)), "shop.toml": one(""),
		"loader.toml": loader + "\n[limit.slack]\ntitle = \"slack of the chain\"\nhow = \"Press it down.\"\nnew = \"20 mm\"\nlimit = \"max 40 mm\"\noutside = \"Set the chain.\"\n"}
	content := trendsOf(t, files, "2026-12-31", slacks(1, 100, "24 mm", "28 mm", "32 mm", "36 mm", "20 mm", "24 mm", "28 mm", "32 mm"))["Slack"]
	assert.Len(t, content.Points, 8)
	assert.Equal(t, "If it goes on like this, it reaches 40\u00a0mm at 1000\u00a0h, likely between 1000\u00a0h and 1000\u00a0h. The line begins anew on 2026-05-01, "+jumped, content.Verdict)
	for i, point := range content.Points {
		assert.Equal(t, i < 4, point.Before, i)
	}

	// From 36 mm to 27 mm is no half of the 20 mm between new and the limit; 12 mm are, but 27 mm
	// are a third of the way from new.
	for _, back := range [][2]string{{"36 mm", "27 mm"}, {"39 mm", "27 mm"}} {
		content = trendsOf(t, files, "2026-12-31", slacks(1, 100, "20 mm", "24 mm", "28 mm", back[0], back[1], "28 mm"))["Slack"]
		assert.NotContains(t, content.Verdict, "anew")
	}

	// Where nobody says what it is when new, all of the way from the best reading to the limit: 20 mm.
	files = map[string]string{"look.toml": looked("loader", `every = "100 h"`), "shop.toml": one(""), "loader.toml": loader}
	for worst, anew := range map[string]bool{"40 mm": false, "41 mm": true} {
		content = trendsOf(t, files, "2026-12-31", slacks(1, 100, "24 mm", "28 mm", worst, "20 mm", "24 mm", "28 mm"))["Slack"]
		assert.Equal(t, anew, strings.Contains(content.Verdict, jumped), worst)
	}

	// The felt is measured as a part, and another card renews it: on the day of the fourth reading, behind it.
	belted := strings.NewReplacer(`measure = "the slack of the chain"`, `measure = "felt"`, `limit = "max 40 mm"`, `limit = "min 4 mm"`, "Set the chain", "Renew the felt").Replace(looked("loader", `every = "100 h"`))
	renew := strings.NewReplacer("Look over the chain oiler", "Renew the felt", `inspect = "the oil level in the sight glass"
expect = "between the two marks"
outside = "Fill the oiler by its own card before the next shift."`, `replace = "felt"`).Replace(looked("loader", `when = "Worn"`))
	renew = renew[:strings.LastIndex(renew, "[[step]]")]
	parts := map[string]string{"look.toml": belted, "renew.toml": renew, "shop.toml": one(""), "loader.toml": loader + "\n[part.felt]\ntitle = \"oiler felt\"\nhead = \"none\"\n"}
	renewed := func(more string) string {
		return written(`procedure = "renew"`, `unit = "yard"`, `machine = "Bark loader"`, "date = 2026-04-01", more)
	}
	read := func(more string) string {
		return slacks(1, 100, "6 mm", "5.8 mm", "5.6 mm", "5.4 mm") + renewed(more) + slacks(5, 500, "6 mm", "5.8 mm", "5.6 mm", "5.4 mm")
	}
	content = trendsOf(t, parts, "2026-12-31", read("done = [1]"))["Slack"]
	assert.Contains(t, content.Verdict, "The line begins anew on 2026-05-01, when the part was renewed.")
	content = trendsOf(t, parts, "2026-12-31", read("open = [1]\ndone = [2]"))["Slack"] // it was left open
	assert.NotContains(t, content.Verdict, "anew")

	// So does a spare that is called the same, on the card that measures it: what is read before
	// that step is of the old one, what is read after it of the new one.
	spare := parts["shop.toml"] + "\n[spare.felt-20]\ntitle = \"copper washer\"\n"
	for felt, anew := range map[string]bool{"copper washer": false, "oiler felt 20": true} {
		parts["shop.toml"] = strings.Replace(spare, "copper washer", felt, 1)
		parts["renew.toml"] = strings.NewReplacer(`replace = "felt"`, `replace = "felt-20"`, "spares = []", `spares = ["felt-20"]`).Replace(renew)
		content = trendsOf(t, parts, "2026-12-31", read("done = [1]"))["Slack"]
		assert.Equal(t, anew, strings.Contains(content.Verdict, "when the part was renewed"), felt)
	}
}
