package pdf

import (
	"bytes"
	"crypto/sha256"
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
		file.AddUTF8FontFromBytes(family(face), "", bytes.Clone(face.TrueType()))
		file.SetFont(family(face), "", 10*points)
		for _, text := range []string{"Refit the drain plug.", "42 to 48 N·m", "ÄÖÜß ± × ° ½ −", "WAVES iiiii"} {
			letters := float64(len([]rune(text)))
			assert.InDelta(t, file.GetStringWidth(text), face.Width(text, 10), 0.001*10*letters, "%d %q", face, text)
		}
	}
}
