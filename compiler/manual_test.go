package compiler_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
)

func manualOf(t *testing.T, look compiler.Look) (path string) {
	t.Helper()
	made, troubles, err := compileShop(t).Manual(look)
	require.NoError(t, err)
	require.Empty(t, troubles)
	require.Len(t, made, 1)
	path = filepath.Join(t.TempDir(), made[0].Name)
	require.NoError(t, os.WriteFile(path, made[0].Bytes, 0o600))
	return path
}

func said(t *testing.T, program string, args ...string) string {
	t.Helper()
	out, err := exec.Command(program, args...).Output()
	require.NoError(t, err)
	return string(out)
}

// oneLine is a text with each run of blanks as one.
func oneLine(text string) string {
	return strings.TrimSpace(spaces.ReplaceAllString(strings.ReplaceAll(text, "\u00a0", " "), " "))
}

func TestTheManualFitsEveryStock(t *testing.T) {
	result := compileShop(t)
	for _, stock := range stocksTried() {
		made, troubles, err := result.Manual(compiler.Look{Stock: stock})
		require.NoError(t, err)
		assert.Empty(t, troubles, stock)
		require.Len(t, made, 1)
		assert.Len(t, made[0].Jobs, len(result.Jobs))
	}
}

// pageReader tells where things are in a PDF by qpdf, which did not write it.
type pageReader struct {
	Pages []struct {
		Object string
	}
	Outlines []outlineLine
	Qpdf     []map[string]json.RawMessage
}

type outlineLine struct {
	Title string
	Page  int `json:"destpageposfrom1"`
	Kids  []outlineLine
}

// Qpdf reads the bookmarks and the links, poppler the words: each bookmark's heading stands on
// the page it leads to, each line of the contents says the page its heading stands on, and
// each link leads to the page whose number it shows.
func TestTheManualLeadsWhereItSays(t *testing.T) {
	qpdf, pdftotext := needs(t, "qpdf"), needs(t, "pdftotext")
	tried := []string{"a4", "letter", "a5"}
	if testing.Short() {
		tried = tried[:1]
	}
	for _, stock := range tried {
		path := manualOf(t, compiler.Look{Stock: stock})
		said(t, qpdf, "--check", path)
		var read pageReader
		require.NoError(t, json.Unmarshal([]byte(said(t, qpdf, "--json", path)), &read))
		pages := strings.Split(said(t, pdftotext, "-raw", path, "-"), "\f")
		pages = pages[:len(pages)-1]
		require.Len(t, read.Pages, len(pages))
		labels := numbersOf(pages)
		at := map[string]int{}
		for i, page := range read.Pages {
			at[page.Object] = i
		}
		contents := ""
		for _, page := range pages {
			if strings.HasPrefix(page, "Contents\n") {
				contents += " " + oneLine(page)
			}
		}
		lines := 0
		var follow func(list []outlineLine, level int)
		follow = func(list []outlineLine, level int) {
			for _, line := range list {
				require.Positive(t, line.Page, line.Title)
				number, title, numbered := strings.Cut(line.Title, " ")
				if !numbered || !strings.ContainsAny(number, "0123456789") {
					title = line.Title
				}
				title = oneLine(title)
				words := strings.Split(title, ",")[0] // the version stands in the line above the title
				if title == "Figures" {
					words = "Intervals" // the first table
				}
				assert.True(t, strings.Contains(oneLine(pages[line.Page-1]), words), "%s: page %s does not say %q", stock, labels[line.Page-1], words)
				if level < 2 && title != "Figures" && title != "Contents" && title != "Revisions" {
					said := oneLine(line.Title) + " " + labels[line.Page-1]
					assert.True(t, strings.Contains(contents, said), "%s: the contents do not say %q", stock, said)
					lines++
				}
				follow(line.Kids, level+1)
			}
		}
		follow(read.Outlines, 0)
		assert.Greater(t, lines, 25)
		links := 0
		for _, page := range read.Pages {
			var object struct{ Value map[string]any }
			require.NoError(t, json.Unmarshal(read.Qpdf[1]["obj:"+page.Object], &object))
			annots, _ := object.Value["/Annots"].([]any)
			for _, annot := range annots {
				links++
				link := annot.(map[string]any)
				to, known := at[link["/Dest"].([]any)[0].(string)]
				require.True(t, known)
				rect := link["/Rect"].([]any)
				box := [4]float64{}
				for i := range box {
					box[i] = rect[i].(float64)
				}
				if links%7 != 0 { // each is read by a run of its own
					continue
				}
				shown := textIn(t, pdftotext, path, at[page.Object]+1, box, heights[stock])
				shown, _, _ = strings.Cut(strings.TrimSuffix(shown, ","), "–")
				assert.True(t, shown == labels[to] || strings.HasSuffix(shown, " "+labels[to]) || strings.Contains(shown, " "+labels[to]+" "), "%s, page %s: %q leads to page %s", stock, labels[at[page.Object]], shown, labels[to])
			}
		}
		assert.Greater(t, links, 400, stock)
	}
}

// heights of the stocks in points.
var heights = map[string]float64{"a4": 297 * 72 / 25.4, "letter": 11 * 72, "a5": 210 * 72 / 25.4}

// textIn is what stands in a rectangle of a page.
func textIn(t *testing.T, pdftotext, path string, page int, box [4]float64, height float64) string {
	t.Helper()
	whole := func(value float64) string { return strings.Split(strings.TrimSpace(jsonOf(value)), ".")[0] }
	x, top := box[0], height-max(box[1], box[3])
	return oneLine(said(t, pdftotext, "-f", jsonOf(float64(page)), "-l", jsonOf(float64(page)), "-x", whole(x-1), "-y", whole(top),
		"-W", whole(box[2]-box[0]+3), "-H", whole(max(box[1], box[3])-min(box[1], box[3])+1), path, "-"))
}

func jsonOf(value float64) string {
	text, _ := json.Marshal(value)
	return string(text)
}

// numbersOf are the numbers at the feet of pages, as poppler reads them; the cover is i.
func numbersOf(pages []string) []string {
	out := []string{"i"}
	for _, page := range pages[1:] {
		words := strings.Fields(page)
		out = append(out, words[len(words)-1])
	}
	return out
}

// The labels a viewer shows are the numbers printed on the pages.
func TestTheManualIsCountedAsItIsPrinted(t *testing.T) {
	qpdf, pdftotext := needs(t, "qpdf"), needs(t, "pdftotext")
	path := manualOf(t, compiler.Look{})
	var read struct {
		PageLabels []struct {
			Index int            `json:"index"`
			Label map[string]any `json:"label"`
		} `json:"pagelabels"`
	}
	require.NoError(t, json.Unmarshal([]byte(said(t, qpdf, "--json", "--json-key=pagelabels", path)), &read))
	require.Len(t, read.PageLabels, 2)
	assert.Equal(t, "/r", read.PageLabels[0].Label["/S"])
	assert.Equal(t, "/D", read.PageLabels[1].Label["/S"])
	pages := strings.Split(said(t, pdftotext, "-raw", path, "-"), "\f")
	labels := numbersOf(pages[:len(pages)-1])
	assert.Equal(t, "1", labels[read.PageLabels[1].Index])
	assert.Equal(t, "ii", labels[1])
}

// Poppler finds every face inside the file, and who made it of what, in which language.
func TestTheManualCarriesItsFacesAndItsName(t *testing.T) {
	pdffonts, pdfinfo := needs(t, "pdffonts"), needs(t, "pdfinfo")
	path := manualOf(t, compiler.Look{})
	for _, line := range strings.Split(strings.TrimSpace(said(t, pdffonts, path)), "\n")[2:] {
		assert.Regexp(t, `yes\s+\S+\s+yes\s+\d+\s+\d+\s*$`, line)
	}
	info := said(t, pdfinfo, "-isodates", path)
	assert.Regexp(t, `Title:\s+Fernhollow Sawmill · Service manual`, info)
	assert.Regexp(t, `Author:\s+Fernhollow Sawmill`, info)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(text), "/Lang (en)")
}

// Every step of every procedure stands in the manual, in order, as on its card; the index and
// the tables name what the shop's files hold.
func TestTheManualHoldsEveryProcedure(t *testing.T) {
	pdftotext := needs(t, "pdftotext")
	text := oneLine(said(t, pdftotext, "-raw", manualOf(t, compiler.Look{}), "-"))
	for _, job := range compileShop(t).Jobs {
		at := strings.LastIndex(text, "Step 1") + 1
		for _, action := range compiler.Actions(job) {
			found := strings.Index(text[at:], oneLine(action))
			if assert.GreaterOrEqual(t, found, 0, "%s: %q", job.Path, action) {
				at += found
			}
		}
	}
	for _, words := range []string{
		"Worm gearbox, six-metre Polyglycol gear oil ISO VG 460", "Worm gearbox, nine-metre", "1.6 L", "Wheel nuts 5 M14x1.5", "120 to 130 N·m",
		"Tail bearings 2", "50 h", "Play at the rim", "Set the bearing by its own card.", "19 mm nut", "Every safety message of the procedures", "The machine's own manual comes first.",
	} {
		assert.True(t, strings.Contains(text, words), words)
	}
}

// The manual of one machine alone holds no other, and a shop without a procedure has none.
func TestAManualOfSomeJobs(t *testing.T) {
	pdftotext := needs(t, "pdftotext")
	result := compileShop(t)
	var jobs []compiler.Job
	for _, job := range result.Jobs {
		if job.MachineName == "log-trailer" {
			jobs = append(jobs, job)
		}
	}
	require.Len(t, jobs, 2)
	result.Jobs = jobs
	made, _, err := result.Manual(compiler.Look{})
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "one.pdf")
	require.NoError(t, os.WriteFile(path, made[0].Bytes, 0o600))
	text := said(t, pdftotext, path, "-")
	assert.Contains(t, text, "Log trailer")
	assert.NotContains(t, text, "Band mill")
	result.Jobs = nil
	made, _, err = result.Manual(compiler.Look{})
	require.NoError(t, err)
	assert.Empty(t, made)
}
