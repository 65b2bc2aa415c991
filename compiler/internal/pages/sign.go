package pages

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"

	"benchleaf/compiler/internal/pattern"
	"benchleaf/templates"

	"github.com/BurntSushi/toml"
)

// field is the width of the square that the symbols of signs.toml are drawn in.
const field = 100

// drawn is one thing drawn of a symbol, in the field.
type drawn struct {
	gap   bool    // in the colour of the ground
	line  float64 // its width; 0 where the paths are filled
	paths []Path
}

// Ready reads what every page is made of, whatever it says.
func Ready() { _, _ = symbols() }

var symbols = sync.OnceValues(func() (map[string][]drawn, error) {
	text, err := templates.Files.ReadFile("signs.toml")
	if err != nil {
		return nil, err
	}
	return decodeSigns(string(text))
})

var signNumber = pattern.MustCompile(`^[WMPEF]\d{3}$`)

func decodeSigns(text string) (map[string][]drawn, error) {
	var file map[string]struct {
		Draw *[]string `toml:"draw"`
	}
	meta, err := toml.Decode(text, &file)
	if err != nil {
		return nil, fmt.Errorf("signs.toml: %w", err)
	}
	if unknown := meta.Undecoded(); len(unknown) > 0 {
		return nil, fmt.Errorf("signs.toml: a sign has no %q", unknown[0].String())
	}
	out := map[string][]drawn{}
	for _, number := range slices.Sorted(maps.Keys(file)) {
		if !signNumber.MatchString(number) {
			return nil, fmt.Errorf("signs.toml: %q is no number of a sign", number)
		}
		if file[number].Draw == nil {
			return nil, fmt.Errorf("signs.toml: %s: nothing says what to draw", number)
		}
		symbol := []drawn{}
		for _, line := range *file[number].Draw {
			one, err := parseDrawn(line)
			if err != nil {
				return nil, fmt.Errorf("signs.toml: %s: %q: %w", number, line, err)
			}
			symbol = append(symbol, one)
		}
		out[number] = symbol
	}
	return out, nil
}

// parseDrawn reads "fill PATH", "line WIDTH PATH", "gap PATH" or "gap WIDTH PATH".
func parseDrawn(text string) (drawn, error) {
	verb, rest, _ := strings.Cut(strings.TrimSpace(text), " ")
	words := strings.Fields(rest)
	if verb != "fill" && verb != "line" && verb != "gap" {
		return drawn{}, fmt.Errorf("%q is not fill, line or gap", verb)
	}
	out := drawn{gap: verb == "gap"}
	if len(words) > 0 && verb != "fill" {
		if width, err := strconv.ParseFloat(words[0], 64); err == nil {
			if !(width > 0 && width <= field) {
				return drawn{}, fmt.Errorf("no line is %s wide", words[0])
			}
			out.line, words = width, words[1:]
		}
	}
	if verb == "line" && out.line == 0 && len(words) > 0 {
		return drawn{}, fmt.Errorf("a line has no width")
	}
	var err error
	out.paths, err = parsePaths(words)
	return out, err
}

// letters tells how many figures follow each letter of a path.
var letters = map[byte]int{'M': 2, 'L': 2, 'C': 6, 'Z': 0, 'O': 3}

// parsePaths reads "M0 0 L10 0 C…6 figures Z" and circles, "O50 50 10": their middle
// and radius. All places count from the upper left; after L and C more of their kind
// may follow without the letter.
func parsePaths(words []string) ([]Path, error) {
	if len(words) == 0 {
		return nil, fmt.Errorf("nothing is drawn")
	}
	var out []Path
	open := false // whether the last path goes on
	for i := 0; i < len(words); {
		letter := words[i][0]
		count, known := letters[letter]
		if !known {
			return nil, fmt.Errorf("a path has no %q", words[i])
		}
		words[i] = words[i][1:]
		if words[i] == "" {
			i++
		}
		var at []float64
		for ; i < len(words); i++ {
			if c := words[i][0]; c >= 'A' && c <= 'z' {
				break
			}
			value, err := strconv.ParseFloat(words[i], 64)
			if err != nil {
				return nil, fmt.Errorf("%q is no figure", words[i])
			}
			if !(value >= 0 && value <= field) {
				return nil, fmt.Errorf("%s lies outside the field", words[i])
			}
			at = append(at, value)
		}
		more := letter == 'L' || letter == 'C'
		if len(at) != count && !(more && len(at) > 0 && len(at)%count == 0) {
			return nil, fmt.Errorf("%c takes %d figures and has %d", letter, count, len(at))
		}
		if !open && (more || letter == 'Z') {
			return nil, fmt.Errorf("%c has no M before it", letter)
		}
		switch last := len(out) - 1; letter {
		case 'M':
			out, open = append(out, Path{From: Point{at[0], at[1]}}), true
		case 'L':
			for ; len(at) > 0; at = at[2:] {
				out[last].Steps = append(out[last].Steps, Segment{To: Point{at[0], at[1]}})
			}
		case 'C':
			for ; len(at) > 0; at = at[6:] {
				out[last].Steps = append(out[last].Steps, Segment{true, Point{at[0], at[1]}, Point{at[2], at[3]}, Point{at[4], at[5]}})
			}
		case 'Z':
			out[last].Closed, open = true, false
		case 'O':
			if x, y, r := at[0], at[1], at[2]; r == 0 || min(x, y, field-x, field-y) < r {
				return nil, fmt.Errorf("no circle of radius %g fits round %g %g", r, x, y)
			}
			out, open = append(out, circle(Point{at[0], at[1]}, at[2], Paint{})), false
		}
	}
	for _, path := range out {
		if len(path.Steps) == 0 {
			return nil, fmt.Errorf("a path goes nowhere")
		}
	}
	return out, nil
}

// The shapes of ISO 3864-1 in the field. A triangle is the figure that a disc of
// triangleRound leaves when it rolls round a triangle, and stands on the height that it needs.
const (
	triangleRound = 7.0
	triangleLine  = 4.2
	squareRound   = 5.0
	ringLine      = 10.0
	slashLine     = 8.0
	slashRim      = 2.0 // of the ground beside the slash, so that a copy without colour shows it on the symbol
)

var triangleHeight = (field-2*triangleRound)*math.Sqrt(3)/2 + 2*triangleRound

// shape is what a sign of a letter is drawn on, what is drawn over its symbol, the
// inks of symbol and ground, and how high it is in the field.
type shape struct {
	under, over  []Mark
	symbol, lies Ink
	height       float64
}

func shapeOf(letter byte) shape {
	mid := Point{field / 2, field / 2}
	square := func(ink Ink) shape {
		return shape{under: []Mark{Panel{Rectangle{0, 0, field, field}, corners(squareRound), Paint{Fill: ink}}}, symbol: white, lies: ink, height: field}
	}
	switch letter {
	case 'W':
		return shape{under: []Mark{signTriangle(triangleRound, black), signTriangle(triangleRound-triangleLine, yellow)}, symbol: black, lies: yellow, height: triangleHeight}
	case 'P':
		far, rim := (field-ringLine)/2*math.Sqrt2/2, (field/2-ringLine-1)*math.Sqrt2/2
		return shape{
			under:  []Mark{circle(mid, field/2, Paint{Fill: red}), circle(mid, field/2-ringLine, Paint{Fill: white})},
			over:   []Mark{polyline(white, slashLine+2*slashRim, Point{mid.X - rim, mid.Y - rim}, Point{mid.X + rim, mid.Y + rim}), polyline(red, slashLine, Point{mid.X - far, mid.Y - far}, Point{mid.X + far, mid.Y + far})},
			symbol: black, lies: white, height: field,
		}
	case 'E':
		return square(green)
	case 'F':
		return square(red)
	}
	return shape{under: []Mark{circle(mid, field/2, Paint{Fill: blue})}, symbol: white, lies: blue, height: field}
}

// signTriangle is the triangle of a warning, of discs of a radius round the same three points.
func signTriangle(r float64, ink Ink) Path {
	side, in := field-2*triangleRound, triangleRound
	a, b, c := Point{field / 2, in}, Point{field - in, in + side*math.Sqrt(3)/2}, Point{in, in + side*math.Sqrt(3)/2}
	// A curve from one side to the next turns by 120°, and arm is the length of its controls;
	// sin and cos lead from the middle of a disc to where a slanting side touches it.
	arm, sin, cos := r*4/3*math.Tan(math.Pi/6), r*math.Sqrt(3)/2, r/2
	ax, ay := arm/2, arm*math.Sqrt(3)/2
	return Path{From: Point{a.X - sin, a.Y - cos}, Closed: true, Paint: Paint{Fill: ink}, Steps: []Segment{
		{true, Point{a.X - sin + ax, a.Y - cos - ay}, Point{a.X + sin - ax, a.Y - cos - ay}, Point{a.X + sin, a.Y - cos}},
		{To: Point{b.X + sin, b.Y - cos}},
		{true, Point{b.X + sin + ax, b.Y - cos + ay}, Point{b.X + arm, b.Y + r}, Point{b.X, b.Y + r}},
		{To: Point{c.X, c.Y + r}},
		{true, Point{c.X - arm, c.Y + r}, Point{c.X - sin - ax, c.Y - cos + ay}, Point{c.X - sin, c.Y - cos}},
	}}
}

// sign is a safety sign of ISO 7010, size high; false where none is drawn.
func sign(number string, size float64) (piece, bool) {
	known, err := symbols()
	symbol, ok := known[number]
	if err != nil || !ok {
		return piece{}, false
	}
	return draw(number, symbol, size), true
}

func draw(number string, symbol []drawn, size float64) piece {
	shape := shapeOf(number[0])
	var whole piece
	whole.mark(shape.under...)
	for _, one := range symbol {
		whole.mark(one.marks(shape)...)
	}
	whole.mark(shape.over...)
	scale := size / shape.height
	out := piece{width: field * scale, height: size}
	for _, mark := range whole.marks {
		out.mark(mark.scaled(scale))
	}
	return out.named("sign", number)
}

// marks paints what is drawn. Ends and corners of a line are round: each of its
// segments stands alone, with a disc where two meet.
func (d drawn) marks(on shape) []Mark {
	ink := on.symbol
	if d.gap {
		ink = on.lies
	}
	var out []Mark
	for _, path := range d.paths {
		if d.line == 0 {
			path.Closed, path.Paint = true, Paint{Fill: ink}
			out = append(out, path)
			continue
		}
		steps := path.Steps
		if path.Closed {
			steps = append(slices.Clone(steps), Segment{To: path.From})
		}
		from := path.From
		out = append(out, circle(from, d.line/2, Paint{Fill: ink}))
		for _, step := range steps {
			out = append(out,
				Path{From: from, Steps: []Segment{step}, Paint: Paint{Stroke: ink, Line: d.line}},
				circle(step.To, d.line/2, Paint{Fill: ink}))
			from = step.To
		}
	}
	return out
}

// SignDocument is a side of 20 × 20 mm that a sign of ISO 7010 fills; false where none is drawn.
func SignDocument(number string) (Document, bool) {
	const edge = 20
	out, ok := sign(number, edge)
	if !ok {
		return Document{}, false
	}
	if out.width > edge {
		out, _ = sign(number, edge*edge/out.width)
	}
	var side piece
	side.put(out, (edge-out.width)/2, (edge-out.height)/2)
	return Document{Title: number, Sides: []Side{{
		Width: edge, Height: edge, Safe: Rectangle{0, 0, edge, edge}, Number: 1, Sheet: 1, Marks: side.marks, Boxes: side.boxes,
	}}}, true
}
