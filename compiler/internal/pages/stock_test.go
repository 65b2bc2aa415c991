package pages

import (
	"fmt"
	"strings"
	"testing"

	"benchleaf/templates"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ISO 216: A5 is 148 × 210, A4 is 210 × 297. ANSI/ASME Y14.1: size A is 8.5 × 11 in.
func TestStocksHaveTheirPublishedSizes(t *testing.T) {
	const inch = 25.4
	for name, size := range map[string][2]float64{"a5": {148, 210}, "a4": {210, 297}, "letter": {8.5 * inch, 11 * inch}, "half-letter": {5.5 * inch, 8.5 * inch}, "a6": {105, 148}, "4x6": {4 * inch, 6 * inch}, "a3": {297, 420}, "tabloid": {11 * inch, 17 * inch}} {
		stock, err := FindStock(name)
		require.NoError(t, err)
		assert.InDelta(t, size[0], stock.Width, 1e-9, name)
		assert.InDelta(t, size[1], stock.Height, 1e-9, name)
	}
	stocks, err := Stocks()
	require.NoError(t, err)
	assert.Equal(t, DefaultStock, stocks[0].Name)
	_, err = FindStock("a7")
	assert.ErrorContains(t, err, `no stock "a7"; there are: a5, a4, letter, half-letter, a6, 4x6, a3, tabloid`)
}

func TestDamagedStocksAreRefused(t *testing.T) {
	whole, err := templates.Files.ReadFile("stocks.toml")
	require.NoError(t, err)
	for name, c := range map[string]struct{ old, new, says string }{
		"unknown key":  {"border = 7", "border = 7\nbleed = 3", `a stock has no "stock.bleed"`},
		"no name":      {`name = "a5"`, ``, "no name"},
		"twice":        {`name = "a4"`, `name = "a5"`, "stands there twice"},
		"too narrow":   {"width = 148", "width = 73", "leaves less than 60 mm"},
		"three sides":  {"sides = 2", "sides = 3", "3 sides"},
		"below zero":   {"binding = 0", "binding = -1", "below zero"},
		"hole inside":  {"binding = 0", "binding = 0\nhole = [74, 10, 6]", "into what is printed"},
		"two figures":  {"binding = 0", "binding = 0\nhole = [74, 10]", "hole of 2 figures"},
		"round corner": {"binding = 0", "binding = 0\ncorner = 30", "cut into what is printed"},
		"turned over":  {"binding = 0", "binding = 0\nturn = \"top\"", "not long or short"},
		"not a number": {"width = 148", `width = "wide"`, "stocks.toml"},
	} {
		damaged := strings.Replace(string(whole), c.old, c.new, 1)
		require.NotEqual(t, string(whole), damaged, name)
		_, err := decodeStocks(damaged)
		assert.ErrorContains(t, err, c.says, name)
	}
}

func TestBindingChangesSides(t *testing.T) {
	two := Stock{Name: "x", Title: "x", Width: 100, Height: 100, Border: 5, Sides: 2, Binding: 10}
	assert.Equal(t, Rectangle{15, 5, 80, 90}, two.safe(1))
	assert.Equal(t, Rectangle{5, 5, 80, 90}, two.safe(2))
	one := two
	one.Sides = 1
	assert.Equal(t, Rectangle{15, 5, 80, 90}, one.safe(2))
}

// A hole at the top stays clear on both sides, whichever way the card is turned.
func TestAHoleStaysClearOnBothSides(t *testing.T) {
	for turn, back := range map[string]Rectangle{"long": {5, 17, 90, 128}, "short": {5, 5, 90, 128}} {
		stock := Stock{Name: "x", Title: "x", Width: 100, Height: 150, Border: 5, Top: 12, Sides: 2, Turn: turn, Hole: []float64{50, 10, 6}}
		require.NoError(t, stock.check())
		assert.Equal(t, Rectangle{5, 17, 90, 128}, stock.safe(1))
		assert.Equal(t, back, stock.safe(2), turn)
	}
}

// NUREG-0700 rev. 3, 11.4.1.5-1: 15 minutes of arc (distance × 0.004) at least, 20
// (× 0.006) preferred. Leading 1.2 to 1.45 times the size.
func TestSizesFollowTheDistance(t *testing.T) {
	for _, distance := range []float64{300, 500, 700, 2000} {
		look := Look{DistanceMM: distance}
		s := &setter{size: look.sizes()}
		for _, k := range []kind{s.main(), s.text(), s.small()} {
			assert.GreaterOrEqual(t, k.face.CapHeight(k.size), 0.004*distance)
			assert.GreaterOrEqual(t, k.leading, 1.2)
			assert.LessOrEqual(t, k.leading, 1.45)
		}
		assert.GreaterOrEqual(t, Regular.CapHeight(s.size.main), 0.006*distance-1e-9)
	}
}

func TestALookIsSettled(t *testing.T) {
	look, problems := Look{}.settled()
	assert.Empty(t, problems)
	assert.Equal(t, "a5", look.Stock.Name)
	assert.Equal(t, 500.0, look.DistanceMM)
	_, problems = Look{Stock: Stock{Name: "strip", Title: "Strip", Width: 20, Height: 300, Sides: 1}}.settled()
	assert.Equal(t, []Problem{{"stock", `stock "strip" leaves less than 60 mm inside its border; the page is laid out for a5`}}, problems)
}

func TestAStockTooSmallForTheDistanceNamesOneThatIsNot(t *testing.T) {
	a6, err := FindStock("a6")
	require.NoError(t, err)
	look, problems := Look{Stock: a6, DistanceMM: 700}.settled()
	assert.InDelta(t, a6.Farthest(), look.DistanceMM, 1e-9)
	assert.Equal(t, []Problem{{"reading distance", "A6 card is read from no more than 520 mm, so the type is set for that and not for 700 mm; --stock a5 takes it"}}, problems)
	_, problems = Look{Stock: a6, DistanceMM: 3000}.settled()
	assert.Contains(t, problems[0].Text, "no stock takes type for that")
}

func TestProblemsReadAsText(t *testing.T) {
	s := newSetter(Look{DistanceMM: 500}, plainWords(), nil)
	s.where = "step 3"
	s.say(s.text(), 50, "a\U0001F527b")
	assert.Equal(t, []Problem{{"step 3", fmt.Sprintf("no type for %q (U+1F527)", "\U0001F527")}}, s.problems)
}
