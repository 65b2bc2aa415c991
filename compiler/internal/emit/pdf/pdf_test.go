package pdf

import (
	"bytes"
	"crypto/sha256"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// outside runs a program that is not ours over a file; the test is skipped where it is missing.
func outside(t *testing.T, program string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skip(program + " is not installed")
	}
	out, err := exec.Command(path, args...).CombinedOutput()
	require.NoError(t, err, string(out))
	return string(out)
}

func drawn(t *testing.T, doc pages.Document) string {
	t.Helper()
	text, err := Draw(doc)
	require.NoError(t, err)
	name := filepath.Join(t.TempDir(), "page.pdf")
	require.NoError(t, os.WriteFile(name, text, 0o600))
	return name
}

func sample(t *testing.T) pages.Document {
	t.Helper()
	doc, problems := pages.LayCard(pagestest.Card(), pages.Look{})
	require.Empty(t, problems)
	return doc
}

func TestTheFileIsSound(t *testing.T) {
	name := drawn(t, sample(t))
	assert.Contains(t, outside(t, "qpdf", "--check", name), "No syntax or stream encoding errors found")
}

func TestEveryStepIsReadOnceAndInOrder(t *testing.T) {
	card := pagestest.Card()
	text := strings.Join(strings.Fields(outside(t, "pdftotext", "-raw", drawn(t, sample(t)), "-")), " ")
	at := 0
	for _, section := range card.Sections {
		for _, step := range section.Steps {
			action := ""
			for _, run := range step.Action {
				action += run.Text
			}
			line := strconv.Itoa(step.Number) + " " + action
			found := strings.Index(text[at:], line)
			require.GreaterOrEqual(t, found, 0, "%q after %q", line, text[max(0, at-40):at])
			at += found + len(line)
			assert.Equal(t, 1, strings.Count(text, line), line)
			for _, value := range step.Values {
				assert.Contains(t, text[at:], value.Text)
			}
		}
	}
	for _, words := range []string{"Log-deck conveyor, operator's manual, section 6.2, page 41", "DANGER Conveyor starts by itself", "42 to 48 N·m", "22 × 27 mm", "gap 10 ± 2 mm", "80 °C or less"} {
		assert.Contains(t, text, words)
	}
}

func TestAllFacesAreEmbeddedSubsets(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(outside(t, "pdffonts", drawn(t, sample(t)))), "\n")[2:]
	require.NotEmpty(t, lines)
	for _, line := range lines {
		assert.Regexp(t, regexp.MustCompile(`CID TrueType\s+Identity-H\s+yes `), line)
	}
	text, err := Draw(sample(t))
	require.NoError(t, err)
	assert.Less(t, len(text), len(pages.Regular.TrueType()), "no whole face is in the file")
}

func TestTheDateIsTheDocuments(t *testing.T) {
	info := outside(t, "pdfinfo", "-isodates", drawn(t, sample(t)))
	assert.Regexp(t, `Title:\s+Change the worm gearbox oil`, info)
	assert.Regexp(t, `Author:\s+R. Aldous`, info)
	assert.Regexp(t, `CreationDate:\s+2026-10-05`, info)
	assert.Regexp(t, `ModDate:\s+2026-10-05`, info)
	assert.Regexp(t, `Page size:\s+419.5\d* x 595.2\d* pts`, info)

	doc := sample(t)
	doc.Date = ""
	assert.Regexp(t, `CreationDate:\s+1980-01-01`, outside(t, "pdfinfo", "-isodates", drawn(t, doc)))
	doc.Date = "5 October"
	_, err := Draw(doc)
	assert.ErrorContains(t, err, `"5 October" is no day`)
}

func TestSameBytesEveryTime(t *testing.T) {
	card := pagestest.Card()
	// Letters that share a glyph, accents made of two glyphs, all styles.
	card.Summary = append(card.Summary, plan.Run{Text: " µ μ Ω Ω ÄÖÜß éèê ŁŽ ", Bold: true}, plan.Run{Text: "slanted Äé ", Italic: true}, plan.Run{Text: "both ", Bold: true, Italic: true}, plan.Run{Text: "code", Code: true})
	doc, problems := pages.LayCard(card, pages.Look{})
	require.Empty(t, problems)
	faces := shared()
	first, err := Draw(doc)
	require.NoError(t, err)
	for _, cores := range []int{1, 2} {
		before := runtime.GOMAXPROCS(cores)
		var wait sync.WaitGroup
		for range 6 {
			wait.Go(func() {
				doc, _ := pages.LayCard(card, pages.Look{})
				again, err := Draw(doc)
				assert.NoError(t, err)
				assert.True(t, string(first) == string(again), "other bytes with %d cores", cores)
			})
		}
		wait.Wait()
		runtime.GOMAXPROCS(before)
	}
	assert.Equal(t, faces, shared(), "drawing changed a shared face")
}

// shared is a sum over the bytes of all faces.
func shared() []byte {
	sum := sha256.New()
	for _, face := range []pages.Face{pages.Regular, pages.Bold, pages.Italic, pages.BoldItalic, pages.Mono} {
		sum.Write(face.TrueType())
	}
	return sum.Sum(nil)
}

func TestAnEmptyDocument(t *testing.T) {
	text, err := Draw(pages.Document{})
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(text), "%PDF-"))
}

// TestSamples writes samples to look at into the folder BENCHLEAF_LOOK names.
func TestSamples(t *testing.T) {
	dir := os.Getenv("BENCHLEAF_LOOK")
	if dir == "" {
		t.Skip("BENCHLEAF_LOOK names no folder to write samples to")
	}
	stocks, err := pages.Stocks()
	require.NoError(t, err)
	for _, stock := range stocks {
		look := pages.Look{Stock: stock}
		card, _ := pages.LayCard(pagestest.Card(), look)
		list, _ := pages.LayPick(pagestest.PickList(), look)
		for name, doc := range map[string]pages.Document{"card-": card, "pick-": list} {
			text, err := Draw(doc)
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(filepath.Join(dir, name+stock.Name+".pdf"), text, 0o600))
		}
	}
}

// The widths pages reckons with are those the library writes into the file, to
// the thousandth of an em PDF keeps.
func TestWidthsAgreeWithTheLibrary(t *testing.T) {
	file := fpdf.New("P", "mm", "A5", "")
	for _, face := range []pages.Face{pages.Regular, pages.Bold, pages.Italic, pages.BoldItalic, pages.Mono} {
		file.AddUTF8FontFromBytes(standIn(face), "", bytes.Clone(face.TrueType()))
		file.SetFont(standIn(face), "", 10*points)
		for _, text := range []string{"Refit the drain plug.", "42 to 48 N·m", "ÄÖÜß ± × ° ½ −", "WAVES iiiii"} {
			letters := float64(len([]rune(text)))
			assert.InDelta(t, file.GetStringWidth(text), face.Width(text, 10), 0.001*10*letters, "%d %q", face, text)
		}
	}
}

// The ruler and the hexagons are true to size within 0.1 mm, measured at 600 dots an
// inch on what poppler draws of the file.
func TestTheRulerIsTrue(t *testing.T) {
	a4, err := pages.FindStock("a4")
	require.NoError(t, err)
	doc, problems := pages.LayGauge(pagestest.Gauge(), pages.Look{Stock: a4})
	require.Empty(t, problems)
	name := drawn(t, doc)
	picture := strings.TrimSuffix(name, ".pdf")
	outside(t, "pdftoppm", "-r", "600", "-gray", "-singlefile", "-png", name, picture)
	file, err := os.Open(picture + ".png")
	require.NoError(t, err)
	defer file.Close()
	drawing, _, err := image.Decode(file)
	require.NoError(t, err)
	const dot = 25.4 / 600
	// inked gives the middles of what is dark along a line, in millimetres.
	inked := func(length float64, dark func(at int) bool) (out []float64) {
		begun := -1
		for at := 0; at < int(length/dot); at++ {
			switch on := dark(at); {
			case on && begun < 0:
				begun = at
			case !on && begun >= 0:
				out, begun = append(out, float64(begun+at-1)/2*dot), -1
			}
		}
		return out
	}
	is := func(x, y int) bool { r, _, _, _ := drawing.At(x, y).RGBA(); return r < 0x8000 }
	boxes := map[string]pages.Rectangle{}
	for _, box := range doc.Sides[0].Boxes {
		boxes[box.ID] = box.Place
		for _, inner := range box.Boxes {
			boxes[inner.ID] = inner.Place
		}
	}
	for id, unit := range map[string]float64{"mm": 1, "in": 25.4 / 16} {
		row := int((boxes[id].Y + 0.5) / dot)
		ticks := inked(a4.Width, func(x int) bool { return is(x, row) })
		require.Greater(t, len(ticks), 100)
		for i, at := range ticks {
			assert.InDelta(t, float64(i)*unit, at-ticks[0], 0.1, "tick %d of the ruler in %s", i, id)
		}
	}
	for id, width := range map[string]float64{"8 mm": 8, "13 mm": 13, "36 mm": 36, "1/2 in": 12.7} {
		place, ok := boxes[id]
		require.True(t, ok, id)
		column := int((place.X + place.Width/2 - min(place.Width, width)*0.2) / dot)
		top := int((place.Y - 1) / dot)
		edges := inked(width+2, func(y int) bool { return is(column, top+y) })
		require.NotEmpty(t, edges, id)
		assert.InDelta(t, width, edges[len(edges)-1]-edges[0], 0.1, "%s across flats", id)
	}
}
