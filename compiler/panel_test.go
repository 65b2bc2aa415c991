package compiler

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	raster "image/draw"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/emit/pdf"
	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/trade"
)

var panelsTo = flag.String("panels", "", "write pictures of warning panels, as they are seen and copied, into this folder")

// sight is a way in which a page is seen.
type sight struct {
	name string
	see  func(color.RGBA) color.RGBA
}

// sights are a page in its colours, in grey, and as people see it who lack a kind of cone.
func sights() []sight {
	return []sight{
		{"colour", func(c color.RGBA) color.RGBA { return c }},
		{"grey", func(c color.RGBA) color.RGBA { return shade(greyOf(c)) }},
		// Machado, Oliveira, Fernandes, "A Physiologically-based Model for Simulation of Color
		// Vision Deficiency", IEEE TVCG 15(6), 2009, severity 1.0; on linear RGB.
		{"protanopia", withCones(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998)},
		{"deuteranopia", withCones(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881)},
		{"tritanopia", withCones(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900)},
	}
}

// photocopies are copies in black and white, from light to dark: what is darker than the cut
// comes out black. A copier sees grey values as they are perceived, so the cut is one of sRGB
// values weighted by ITU-R BT.601, not of luminance: at 50 % it lies at 128 of 255.
func photocopies() (out []sight) {
	for _, percent := range []float64{30, 35, 50, 65} {
		out = append(out, sight{fmt.Sprintf("copy-%.0f", percent), photocopy(percent / 100 * 255)})
	}
	return out
}

func photocopy(cut float64) func(color.RGBA) color.RGBA {
	return func(c color.RGBA) color.RGBA {
		if greyOf(c) < cut {
			return shade(0)
		}
		return shade(255)
	}
}

func greyOf(c color.RGBA) float64 {
	return 0.299*float64(c.R) + 0.587*float64(c.G) + 0.114*float64(c.B)
}

func shade(value float64) color.RGBA {
	v := uint8(math.Round(value))
	return color.RGBA{v, v, v, 255}
}

func withCones(m ...float64) func(color.RGBA) color.RGBA {
	return func(c color.RGBA) color.RGBA {
		r, g, b := linear(c.R), linear(c.G), linear(c.B)
		return color.RGBA{coded(m[0]*r + m[1]*g + m[2]*b), coded(m[3]*r + m[4]*g + m[5]*b), coded(m[6]*r + m[7]*g + m[8]*b), 255}
	}
}

// linear and coded are the transfer of sRGB (IEC 61966-2-1).
func linear(value uint8) float64 {
	c := float64(value) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

func coded(light float64) uint8 {
	light = min(1, max(0, light))
	if light <= 0.0031308 {
		return uint8(math.Round(255 * 12.92 * light))
	}
	return uint8(math.Round(255 * (1.055*math.Pow(light, 1/2.4) - 0.055)))
}

func TestTheYardstickOfSights(t *testing.T) {
	for _, sight := range sights() {
		for _, value := range []float64{0, 31, 128, 255} {
			assert.Equal(t, shade(value), sight.see(shade(value)), "%s changes a grey", sight.name)
		}
	}
	for value := range 256 {
		assert.Equal(t, uint8(value), coded(linear(uint8(value))))
	}
	assert.Equal(t, shade(0), photocopy(127.5)(color.RGBA{208, 93, 41, 255}), "orange has a grey value of 121.5")
}

// panel is a safety message on a page: its word on its ground, and the hazard beside it.
type panel struct {
	side           int
	signal, hazard string
	brief          bool
	place          pages.Rectangle
	words          []pages.Text
	ground         pages.Rectangle
	contours       []pages.Path
}

// warningPanels are the panels of the card of the demonstration shop that has messages of
// three levels; a notice, which no procedure of the shop has, is put with them.
func warningPanels(t *testing.T) (pages.Document, []panel) {
	t.Helper()
	cards, err := Compile(Input{Files: ReadFolder(t, "../procedures"), Targets: []string{"chipper-knife-turn.toml"}}).compose(Look{})
	require.NoError(t, err)
	require.Len(t, cards, 1)
	content := cards[0].content
	for _, caution := range pagestest.Card().Cautions {
		if caution.Signal == "notice" {
			caution.Steps = nil
			content.Cautions = append(content.Cautions, caution)
		}
	}
	document, problems := pages.LayCard(content, cards[0].look)
	require.Empty(t, problems)
	said := slices.Clone(plan.WorstFirst(content.Cautions))
	for _, section := range content.Sections {
		for _, step := range section.Steps {
			said = append(said, plan.WorstFirst(step.Cautions)...)
		}
	}
	var panels []panel
	for i, side := range document.Sides {
		for _, box := range cautionsIn(side.Boxes) {
			n := len(panels)
			require.Less(t, n, len(said))
			require.Equal(t, said[n].Signal, box.ID)
			one := panel{side: i, signal: said[n].Word, hazard: said[n].Hazard, brief: n < len(content.Cautions) && said[n].Brief(), place: box.Place}
			one.read(side)
			require.NotEmpty(t, one.words)
			panels = append(panels, one)
		}
	}
	require.Len(t, panels, len(said))
	return document, panels
}

func cautionsIn(boxes []pages.Box) (out []pages.Box) {
	for _, box := range boxes {
		if box.Kind == "caution" {
			out = append(out, box)
			continue
		}
		out = append(out, cautionsIn(box.Boxes)...)
	}
	return out
}

// read gathers the marks of the signal word: letters that lie on a colour, the ground, and
// lines without a fill round the letters.
func (p *panel) read(side pages.Side) {
	within := func(x, y float64, place pages.Rectangle) bool {
		return x >= place.X && x <= place.Right() && y >= place.Y && y <= place.Bottom()
	}
	for _, mark := range side.Marks {
		if text, ok := mark.(pages.Text); ok && within(text.X, text.Y, p.place) && text.On&0xFFFFFF != 0xFFFFFF {
			p.words = append(p.words, text)
		}
	}
	for _, mark := range side.Marks {
		switch mark := mark.(type) {
		case pages.Panel:
			if mark.Fill == p.words[0].On && within(p.words[0].X, p.words[0].Y, mark.Rectangle) {
				p.ground = mark.Rectangle
			}
		case pages.Path:
			if !mark.Fill.On() && within(mark.From.X, mark.From.Y, p.place) {
				p.contours = append(p.contours, mark)
			}
		}
	}
}

func rgba(ink pages.Ink) color.RGBA {
	r, g, b := ink.RGB()
	return color.RGBA{uint8(r), uint8(g), uint8(b), 255}
}

func contrastOf(t *testing.T, a, b color.RGBA) float64 {
	t.Helper()
	hex := func(c color.RGBA) string { return fmt.Sprintf("#%02X%02X%02X", c.R, c.G, c.B) }
	ratio, err := trade.Contrast(hex(a), hex(b))
	require.NoError(t, err)
	return ratio
}

// A signal word has a contrast of 4.5 (WCAG 2.1, 1.4.3) to what it lies on, in grey and for
// every eye, and no copy with a cut from 30 to 66 % makes the two one. It lies on its ground,
// or on its contour, where it has one: black on orange alone falls to 3.9 with protanopia and
// to 4.46 in grey, and a copy with its cut above 47.6 % turns both black. Below 28.0 % the
// ground of DANGER turns white, below 25.1 % that of NOTICE; above 67.9 % that of CAUTION
// turns black.
func TestSignalWordsStandOut(t *testing.T) {
	_, panels := warningPanels(t)
	contoured := map[string]bool{}
	for _, one := range panels {
		for _, word := range one.words {
			assert.GreaterOrEqual(t, contrastOf(t, rgba(word.Ink), rgba(word.On)), 4.5, one.signal)
			below := word.On
			if line := one.around(t, word); line.Stroke.On() {
				assert.GreaterOrEqual(t, line.Line/2, 0.2, "mm beyond the letters")
				below = line.Stroke
			}
			contoured[one.signal] = below != word.On
			for _, sight := range sights() {
				assert.GreaterOrEqual(t, contrastOf(t, sight.see(rgba(word.Ink)), sight.see(rgba(below))), 4.5, "%s, %s", one.signal, sight.name)
			}
			for percent := 30.0; percent <= 66; percent++ {
				copied := photocopy(percent / 100 * 255)
				require.NotEqual(t, copied(rgba(word.Ink)), copied(rgba(below)), "%s, cut at %.0f %%", one.signal, percent)
			}
		}
	}
	assert.Equal(t, map[string]bool{"DANGER": false, "WARNING": true, "CAUTION": false, "NOTICE": false}, contoured)
}

// around is the contour of a word, which goes round each of its letters; the zero Path
// where the word has none.
func (p panel) around(t *testing.T, word pages.Text) (out pages.Path) {
	t.Helper()
	letters := 0
	end := word.X + word.Face.Width(word.Text, word.Size)
	left, right := end, word.X
	for _, line := range p.contours {
		if line.From.X < word.X || line.From.X > end || line.From.Y > word.Y+word.Size {
			continue // of the alert symbol, or of a sign below
		}
		letters++
		top, bottom := line.From.Y, line.From.Y
		for _, step := range line.Steps {
			left, right = min(left, step.To.X), max(right, step.To.X)
			top, bottom = min(top, step.To.Y), max(bottom, step.To.Y)
		}
		high := word.Face.CapHeight(word.Size)
		assert.GreaterOrEqual(t, top, word.Y-1.05*high)
		assert.LessOrEqual(t, bottom, word.Y+0.05*high)
		out = line
	}
	if letters > 0 {
		assert.GreaterOrEqual(t, letters, len([]rune(word.Text)))
		assert.InDelta(t, word.X, left, 0.1*word.Size)
		assert.InDelta(t, end, right, 0.1*word.Size)
	}
	return out
}

const dotsPerInch = 200

func pixels(mm float64) int { return int(math.Round(mm / 25.4 * dotsPerInch)) }

// Tesseract, which knows nothing of panels, reads signal word and hazard in every sight and
// in every copy: of each level a panel in full and a brief one, drawn by poppler with 200
// dots to the inch. The word and the line beside it are handed to it cut out, since it
// takes neighbouring grounds of different shades for pictures, in full colour too.
func TestPanelReads(t *testing.T) {
	if testing.Short() {
		t.Skip("nothing here runs side by side")
	}
	pdftoppm, tesseract := outside(t, "pdftoppm"), outside(t, "tesseract")
	document, panels := warningPanels(t)
	sides := rastered(t, pdftoppm, document)
	type kind struct {
		signal string
		brief  bool
	}
	first := map[kind]bool{}
	var asked []panel
	for _, one := range panels {
		if !first[kind{one.signal, one.brief}] {
			first[kind{one.signal, one.brief}] = true
			asked = append(asked, one)
		}
	}
	require.Len(t, asked, 6)
	var cut []image.Image
	for _, one := range asked {
		const line = 0.5 // of the frame, mm
		ground := one.ground
		word := pages.Rectangle{X: one.words[0].X - 0.4, Y: ground.Y + line, Width: ground.Right() - line - one.words[0].X + 0.4, Height: ground.Height - 2*line}
		hazard := pages.Rectangle{X: ground.Right() + line, Y: ground.Y + line, Width: one.place.Right() - ground.Right() - 3*line, Height: ground.Height - 2*line}
		cut = append(cut, cutOut(sides[one.side], word), cutOut(sides[one.side], hazard))
	}
	for _, sight := range append(sights(), photocopies()...) {
		if *panelsTo != "" {
			writePanels(t, sight, sides, panels)
		}
		var seen []image.Image
		for _, picture := range cut {
			seen = append(seen, sight.over(picture))
		}
		for i, text := range readBy(t, tesseract, seen) {
			want := asked[i/2].signal
			if i%2 == 1 {
				want = asked[i/2].hazard
			}
			assert.Contains(t, letters(text), letters(want), "%s: %q", sight.name, text)
		}
	}
}

// letters are the letters and figures of a text alone, in small.
func letters(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.ToLower(text))
}

// rastered draws the sides of a document by poppler.
func rastered(t *testing.T, pdftoppm string, document pages.Document) (out []image.Image) {
	t.Helper()
	text, err := pdf.Draw(document)
	require.NoError(t, err)
	folder := t.TempDir()
	file := filepath.Join(folder, "card.pdf")
	require.NoError(t, os.WriteFile(file, text, 0o600))
	said, err := exec.Command(pdftoppm, "-r", fmt.Sprint(dotsPerInch), "-png", file, filepath.Join(folder, "side")).CombinedOutput()
	require.NoError(t, err, string(said))
	names, err := filepath.Glob(filepath.Join(folder, "side*.png"))
	require.NoError(t, err)
	require.Len(t, names, len(document.Sides))
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		picture, err := png.Decode(bytes.NewReader(text))
		require.NoError(t, err)
		out = append(out, picture)
	}
	return out
}

// over is a picture as it is seen.
func (s sight) over(picture image.Image) image.Image {
	out := image.NewRGBA(picture.Bounds())
	known := map[color.RGBA]color.RGBA{}
	for y := out.Rect.Min.Y; y < out.Rect.Max.Y; y++ {
		for x := out.Rect.Min.X; x < out.Rect.Max.X; x++ {
			c := color.RGBAModel.Convert(picture.At(x, y)).(color.RGBA)
			changed, there := known[c]
			if !there {
				changed = s.see(c)
				known[c] = changed
			}
			out.SetRGBA(x, y, changed)
		}
	}
	return out
}

// cutOut is a part of a picture.
func cutOut(picture image.Image, place pages.Rectangle) image.Image {
	out := image.NewRGBA(image.Rect(0, 0, pixels(place.Width), pixels(place.Height)))
	raster.Draw(out, out.Rect, picture, image.Pt(pixels(place.X), pixels(place.Y)), raster.Src)
	return out
}

// readBy has tesseract read pictures of one line each, in one run.
func readBy(t *testing.T, tesseract string, pictures []image.Image) []string {
	t.Helper()
	folder := t.TempDir()
	var list strings.Builder
	for i, picture := range pictures {
		name := filepath.Join(folder, fmt.Sprintf("%02d.png", i))
		writePicture(t, name, picture)
		fmt.Fprintln(&list, name)
	}
	names := filepath.Join(folder, "list.txt")
	require.NoError(t, os.WriteFile(names, []byte(list.String()), 0o600))
	command := exec.Command(tesseract, names, "stdout", "--psm", "7", "--dpi", fmt.Sprint(dotsPerInch), "-l", "eng")
	command.Env = append(os.Environ(), "OMP_THREAD_LIMIT=1")
	said, err := command.Output()
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSuffix(string(said), "\f"), "\f")
	require.Len(t, lines, len(pictures))
	return lines
}

func writePicture(t *testing.T, name string, picture image.Image) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, png.Encode(&out, picture))
	require.NoError(t, os.WriteFile(name, out.Bytes(), 0o600))
}

// writePanels writes the panels below each other, and the side they begin on, for people to look at.
func writePanels(t *testing.T, sight sight, sides []image.Image, panels []panel) {
	t.Helper()
	const gap = 3.0
	width, height := 0.0, gap
	for _, one := range panels {
		width, height = max(width, one.place.Width+2*gap), height+one.place.Height+gap
	}
	sheet := image.NewRGBA(image.Rect(0, 0, pixels(width), pixels(height)))
	raster.Draw(sheet, sheet.Rect, image.White, image.Point{}, raster.Src)
	y := gap
	for _, one := range panels {
		part := cutOut(sides[one.side], one.place)
		raster.Draw(sheet, part.Bounds().Add(image.Pt(pixels(gap), pixels(y))), part, image.Point{}, raster.Src)
		y += one.place.Height + gap
	}
	require.NoError(t, os.MkdirAll(*panelsTo, 0o755))
	writePicture(t, filepath.Join(*panelsTo, "panels-"+sight.name+".png"), sight.over(sheet))
	writePicture(t, filepath.Join(*panelsTo, "side-"+sight.name+".png"), sight.over(sides[0]))
}

// outside finds a program that is not ours; the test is skipped where it is missing.
func outside(t testing.TB, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skipf("%s is not installed", program)
	}
	return path
}
