package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	_ "image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"benchleaf/compiler/internal/emit/pdf"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func sides(t *testing.T) (pages.Document, [][]byte) {
	t.Helper()
	doc, problems := pages.LayCard(pagestest.Card(), pages.Look{})
	require.Empty(t, problems)
	out, err := Draw(doc)
	require.NoError(t, err)
	require.Len(t, out, len(doc.Sides))
	return doc, out
}

func TestEachSideIsWellFormedAndNeedsNothingElse(t *testing.T) {
	doc, out := sides(t)
	again, err := Draw(doc)
	require.NoError(t, err)
	for i, side := range out {
		assert.True(t, bytes.Equal(side, again[i]), "other bytes the second time")
		decoder := xml.NewDecoder(bytes.NewReader(side))
		ids, used := map[string]bool{}, map[string]bool{}
		for {
			token, err := decoder.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err)
			if start, ok := token.(xml.StartElement); ok {
				assert.NotContains(t, []string{"script", "style", "foreignObject"}, start.Name.Local)
				for _, attribute := range start.Attr {
					switch attribute.Name.Local {
					case "id":
						ids[attribute.Value] = true
					case "href":
						if start.Name.Local == "image" {
							assert.Regexp(t, "^data:image/(png|jpeg);base64,", attribute.Value)
							continue
						}
						used[attribute.Value] = true
					}
				}
			}
		}
		require.NotEmpty(t, used)
		for reference := range used {
			assert.True(t, ids[strings.TrimPrefix(reference, "#")], "%s is nowhere", reference)
		}
	}
}

// The picture is the page: drawn by librsvg it shows what poppler shows of the PDF.
func TestThePictureIsThePage(t *testing.T) {
	convert, raster := program(t, "rsvg-convert"), program(t, "pdftoppm")
	doc, out := sides(t)
	printed, err := pdf.Draw(doc)
	require.NoError(t, err)
	folder := t.TempDir()
	write := func(name string, text []byte) string {
		path := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(path, text, 0o600))
		return path
	}
	run := func(program string, args ...string) {
		text, err := exec.Command(program, args...).CombinedOutput()
		require.NoError(t, err, string(text))
	}
	file := write("card.pdf", printed)
	for i, side := range out {
		drawn := filepath.Join(folder, fmt.Sprintf("svg-%d.png", i+1))
		run(convert, "--dpi-x", "200", "--dpi-y", "200", "-o", drawn, write(fmt.Sprintf("%d.svg", i+1), side))
		page := fmt.Sprint(i + 1)
		run(raster, "-r", "200", "-png", "-singlefile", "-f", page, "-l", page, file, filepath.Join(folder, "pdf-"+page))
		ours, theirs := grey(t, drawn), grey(t, filepath.Join(folder, "pdf-"+page+".png"))
		apart, ink := 0.0, 0.0
		width, height := min(len(ours[0]), len(theirs[0])), min(len(ours), len(theirs))
		assert.InDelta(t, len(ours[0]), len(theirs[0]), 2)
		assert.InDelta(t, len(ours), len(theirs), 2)
		for y := range height {
			for x := range width {
				apart += max(ours[y][x]-theirs[y][x], theirs[y][x]-ours[y][x])
				ink += 255 - theirs[y][x]
			}
		}
		assert.Less(t, apart/ink, 0.12, "side %d: share of the ink that lies elsewhere, soft edges of letters included", i+1)
	}
}

func program(t *testing.T, name string) string {
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skip(name + " is not installed")
	}
	return path
}

// grey is a picture averaged over squares of 8 × 8, so that soft edges count for little.
func grey(t *testing.T, path string) [][]float64 {
	t.Helper()
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	picture, _, err := image.Decode(file)
	require.NoError(t, err)
	const square = 8
	bounds := picture.Bounds()
	out := make([][]float64, bounds.Dy()/square)
	for y := range out {
		out[y] = make([]float64, bounds.Dx()/square)
		for x := range out[y] {
			for i := range square * square {
				r, g, b, _ := picture.At(bounds.Min.X+x*square+i%square, bounds.Min.Y+y*square+i/square).RGBA()
				out[y][x] += float64(r+g+b) / 3 / 257 / square / square
			}
		}
	}
	return out
}
