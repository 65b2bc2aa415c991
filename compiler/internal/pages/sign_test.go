package pages

import (
	"math"
	"slices"
	"strings"
	"testing"

	"benchleaf/compiler/internal/trade"
	"benchleaf/templates"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestEverySignIsDrawnAndEveryDrawingIsASign(t *testing.T) {
	known, err := symbols()
	require.NoError(t, err)
	for _, sign := range trade.Signs() {
		symbol, ok := known[sign.Number]
		assert.True(t, ok, "%s is not drawn", sign.Number)
		assert.Equal(t, sign.Number == "P001", len(symbol) == 0, "%s: only the general prohibition has no symbol", sign.Number)
	}
	assert.Len(t, known, len(trade.Signs()))
	for number := range known {
		_, ok := trade.FindSign(number)
		assert.True(t, ok, "%s is no sign", number)
	}
}

func TestSignIsAsHighAsAskedAndNamed(t *testing.T) {
	for _, s := range trade.Signs() {
		got, ok := sign(s.Number, 6)
		require.True(t, ok, s.Number)
		assert.InDelta(t, 6, got.height, 1e-9, s.Number)
		assert.Equal(t, []Box{{Kind: "sign", ID: s.Number, Place: Rectangle{0, 0, got.width, 6}}}, got.boxes)
		left, top, right, bottom := math.Inf(1), math.Inf(1), 0.0, 0.0
		for _, mark := range got.marks {
			for _, line := range outline(mark) {
				for _, p := range line {
					left, top, right, bottom = min(left, p.X), min(top, p.Y), max(right, p.X), max(bottom, p.Y)
				}
			}
		}
		for i, edge := range []float64{left, top, right - got.width, bottom - got.height} {
			assert.InDelta(t, 0, edge, 0.01, "%s, edge %d", s.Number, i)
		}
	}
	_, ok := sign("W999", 6)
	assert.False(t, ok)
}

func TestSignDocumentIsOneSideThatTheSignFills(t *testing.T) {
	for _, s := range trade.Signs() {
		doc, ok := SignDocument(s.Number)
		require.True(t, ok, s.Number)
		require.Len(t, doc.Sides, 1)
		side := doc.Sides[0]
		assert.Equal(t, [2]float64{20, 20}, [2]float64{side.Width, side.Height})
		place := side.Boxes[0].Place
		assert.InDelta(t, 20, place.Width, 1e-9, s.Number)
		assert.InDelta(t, (20-place.Height)/2, place.Y, 1e-9, s.Number)
		assert.True(t, place.Y >= 0, s.Number)
	}
	_, ok := SignDocument("W999")
	assert.False(t, ok)
}

// ISO 3864-1, table 1: what each letter looks like, and how much of it is the safety
// colour at least. Shares are from memory of the standard.
func TestSignsHaveShapeAndColourOfTheirLetter(t *testing.T) {
	looks := map[byte]struct {
		safety, symbol, ground Ink
		share                  float64
		corners                int
	}{
		'W': {yellow, black, yellow, 0.5, 3},
		'M': {blue, white, blue, 0.5, 0},
		'P': {red, black, white, 0.35, 0},
		'E': {green, white, green, 0.5, 4},
		'F': {red, white, red, 0.5, 4},
	}
	for _, s := range trade.Signs() {
		look := looks[s.Number[0]]
		got := shapeOf(s.Number[0])
		assert.Equal(t, [2]Ink{look.symbol, look.ground}, [2]Ink{got.symbol, got.lies}, s.Number)
		outer := 1.0 * field * field
		switch look.corners {
		case 0:
			assert.Equal(t, circle(Point{50, 50}, 50, Paint{Fill: look.safety}), got.under[0])
			outer *= math.Pi / 4
		case 3:
			assert.Equal(t, black, got.under[0].(Path).Fill)
			side := field - 2*triangleRound
			outer = side*side*math.Sqrt(3)/4 + 3*side*triangleRound + math.Pi*triangleRound*triangleRound
		case 4:
			assert.IsType(t, Panel{}, got.under[0])
		}
		count := 0
		seen := looked(s.Number)
		for _, ink := range seen {
			if ink == look.safety {
				count++
			}
		}
		share := float64(count) / float64(len(seen)) * field * field / outer
		assert.GreaterOrEqual(t, share, look.share, s.Number)
		if s.Number[0] == 'P' {
			slash := got.over[len(got.over)-1].(Path)
			assert.Equal(t, red, slash.Stroke)
			assert.Less(t, slash.From.X, slash.Steps[0].To.X)
			assert.Less(t, slash.From.Y, slash.Steps[0].To.Y)
			marks := func() []Mark { p, _ := sign(s.Number, field); return p.marks }()
			assert.Equal(t, slash, marks[len(marks)-1], "the slash lies over the symbol")
		}
	}
}

func TestSignsContrastWithTheirGround(t *testing.T) {
	// WCAG 2.1, 1.4.3.
	luminance := func(ink Ink) float64 {
		r, g, b := ink.RGB()
		out := 0.0
		for i, part := range []int{r, g, b} {
			c := float64(part) / 255
			if c <= 0.04045 {
				c /= 12.92
			} else {
				c = math.Pow((c+0.055)/1.055, 2.4)
			}
			out += c * []float64{0.2126, 0.7152, 0.0722}[i]
		}
		return out
	}
	for _, letter := range []byte("WMPEF") {
		shape := shapeOf(letter)
		a, b := luminance(shape.symbol), luminance(shape.lies)
		assert.GreaterOrEqual(t, (max(a, b)+0.05)/(min(a, b)+0.05), 4.5, string(letter))
	}
}

func TestSignsKeepTheirSymbolsInside(t *testing.T) {
	known, err := symbols()
	require.NoError(t, err)
	for number, symbol := range known {
		for _, one := range symbol {
			clear := 1.5
			if one.gap {
				clear = 0
			}
			if one.line > 0 {
				least := 3.0
				if one.gap {
					least = 2
				}
				assert.GreaterOrEqual(t, one.line, least, "%s has a line that is lost on a small sign", number)
			}
			for _, path := range one.paths {
				for _, p := range outline(path)[0] {
					assert.GreaterOrEqual(t, inward(number[0], p)-one.line/2, clear, "%s at %.1f %.1f", number, p.X, p.Y)
				}
			}
		}
	}
}

// inward is how far a point of the field lies inside the ground of a letter.
func inward(letter byte, p Point) float64 {
	far := math.Hypot(p.X-field/2, p.Y-field/2)
	switch letter {
	case 'W':
		base := triangleHeight - triangleLine - p.Y
		// A side rises by 60°; it passes the middle of the upper disc at the disc's radius.
		slope := (triangleRound - triangleLine) + ((p.Y-triangleRound)-math.Abs(p.X-field/2)*math.Sqrt(3))/2
		return min(base, slope)
	case 'M':
		return field/2 - far
	case 'P':
		return field/2 - ringLine - far
	}
	return min(p.X, p.Y, field-p.X, field-p.Y)
}

func TestNoTwoSignsLookAlike(t *testing.T) {
	signs := trade.Signs()
	seen := map[string][]Ink{}
	for _, s := range signs {
		seen[s.Number] = looked(s.Number)
	}
	for i, a := range signs {
		for _, b := range signs[:i] {
			if a.Number[0] != b.Number[0] {
				continue
			}
			one, other := seen[a.Number], seen[b.Number]
			differ := 0
			for j := range one {
				if one[j] != other[j] {
					differ++
				}
			}
			assert.Greater(t, differ, len(one)/40, "%s and %s", a.Number, b.Number)
		}
	}
}

func TestDamagedSignsAreRefused(t *testing.T) {
	whole, err := templates.Files.ReadFile("signs.toml")
	require.NoError(t, err)
	_, err = decodeSigns(string(whole))
	require.NoError(t, err)
	for draw, says := range map[string]string{
		`"fill"`:                          "nothing is drawn",
		`"line 5"`:                        "nothing is drawn",
		`"blot M1 1 L2 2"`:                `"blot" is not fill, line or gap`,
		`"line M1 1 L2 2"`:                "a line has no width",
		`"line 0 M1 1 L2 2"`:              "no line is 0 wide",
		`"gap -1 M1 1 L2 2"`:              "no line is -1 wide",
		`"line NaN M1 1 L2 2"`:            "no line is NaN wide",
		`"fill 5 M1 1 L2 2"`:              `a path has no "5"`,
		`"fill m1 1 L2 2"`:                `a path has no "m1"`,
		`"fill M1 1 Q1 1 2 2"`:            `a path has no "Q1"`,
		`"fill M1 L2 2"`:                  "M takes 2 figures and has 1",
		`"fill M1 1 L2 2 3"`:              "L takes 2 figures and has 3",
		`"fill M1 1 L"`:                   "L takes 2 figures and has 0",
		`"fill M1 1 C1 1 2 2"`:            "C takes 6 figures and has 4",
		`"fill O5 5 6"`:                   "no circle of radius 6 fits round 5 5",
		`"fill O5 5 0"`:                   "no circle of radius 0 fits round 5 5",
		`"fill O1 1"`:                     "O takes 3 figures and has 2",
		`"fill M1 1 L2 2 Z 3"`:            "Z takes 0 figures and has 1",
		`"fill L2 2"`:                     "L has no M before it",
		`"fill M1 1 L2 2 Z L3 3"`:         "L has no M before it",
		`"fill O5 5 1 Z"`:                 "Z has no M before it",
		`"fill M1 1"`:                     "a path goes nowhere",
		`"fill M1 1 L101 2"`:              "101 lies outside the field",
		`"fill M1 1 L2 -2"`:               "-2 lies outside the field",
		`"fill M1 1 L2,5 2"`:              `"2,5" is no figure`,
		`"fill M1 1 L2 2 Z", "gap M1 1 "`: "a path goes nowhere",
	} {
		_, err := decodeSigns("[W001]\ndraw = [" + draw + "]\n")
		require.ErrorContains(t, err, says, draw)
		assert.ErrorContains(t, err, "signs.toml: W001: ", draw)
	}
	for text, says := range map[string]string{
		"[W001]\n":                         "W001: nothing says what to draw",
		"[W1]\ndraw = []\n":                `"W1" is no number of a sign`,
		"[X001]\ndraw = []\n":              `"X001" is no number of a sign`,
		"[W001]\ndraw = []\nink = \"x\"\n": `a sign has no "W001.ink"`,
		"[W001]\ndraw = 5\n":               "signs.toml: ",
		strings.Repeat("[W001]\n", 2):      "signs.toml: ",
	} {
		_, err := decodeSigns(text)
		assert.ErrorContains(t, err, says, text)
	}
}

// outline gives a mark as lines of points, curves in short steps.
func outline(mark Mark) [][]Point {
	switch mark := mark.(type) {
	case Panel:
		r := mark.Rectangle
		return [][]Point{{{r.X, r.Y}, {r.Right(), r.Y}, {r.Right(), r.Bottom()}, {r.X, r.Bottom()}, {r.X, r.Y}}}
	case Path:
		line, from := []Point{mark.From}, mark.From
		for _, step := range mark.Steps {
			if step.Curved {
				const parts = 12
				for i := 1; i < parts; i++ {
					u := float64(i) / parts
					v := 1 - u
					at := func(a, b, c, d float64) float64 { return v*v*v*a + 3*v*v*u*b + 3*v*u*u*c + u*u*u*d }
					line = append(line, Point{at(from.X, step.A.X, step.B.X, step.To.X), at(from.Y, step.A.Y, step.B.Y, step.To.Y)})
				}
			}
			line, from = append(line, step.To), step.To
		}
		if mark.Closed {
			line = append(line, mark.From)
		}
		return [][]Point{line}
	}
	return nil
}

// looked is a sign as someone sees it: the ink at each place of a grid over the field, 0 outside.
func looked(number string) []Ink {
	const places = 50
	whole, _ := sign(number, shapeOf(number[0]).height)
	out := make([]Ink, places*places)
	for _, mark := range whole.marks {
		for _, line := range outline(mark) {
			paint, segments := paintOf(mark), pairs(line)
			for i := range out {
				p := Point{(float64(i%places) + 0.5) * field / places, (float64(i/places) + 0.5) * field / places}
				if paint.Fill.On() && encloses(line, p) {
					out[i] = paint.Fill
				}
				if paint.Stroke.On() && slices.ContainsFunc(segments, func(s [2]Point) bool { return apart(s, p) <= paint.Line/2 }) {
					out[i] = paint.Stroke
				}
			}
		}
	}
	return out
}

func paintOf(mark Mark) Paint {
	if panel, ok := mark.(Panel); ok {
		return panel.Paint
	}
	return mark.(Path).Paint
}

func pairs(line []Point) [][2]Point {
	var out [][2]Point
	for i := 1; i < len(line); i++ {
		out = append(out, [2]Point{line[i-1], line[i]})
	}
	return out
}

// apart is how far a point lies from a straight piece of a line.
func apart(s [2]Point, p Point) float64 {
	dx, dy := s[1].X-s[0].X, s[1].Y-s[0].Y
	along := 0.0
	if length := dx*dx + dy*dy; length > 0 {
		along = min(1, max(0, ((p.X-s[0].X)*dx+(p.Y-s[0].Y)*dy)/length))
	}
	return math.Hypot(p.X-s[0].X-along*dx, p.Y-s[0].Y-along*dy)
}

// encloses counts how often a closed line winds round a point.
func encloses(line []Point, p Point) bool {
	winds := 0
	for i := range line {
		a, b := line[i], line[(i+1)%len(line)]
		side := (b.X-a.X)*(p.Y-a.Y) - (p.X-a.X)*(b.Y-a.Y)
		switch {
		case a.Y <= p.Y && b.Y > p.Y && side > 0:
			winds++
		case a.Y > p.Y && b.Y <= p.Y && side < 0:
			winds--
		}
	}
	return winds != 0
}
