package pages

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"benchleaf/templates"

	"github.com/BurntSushi/toml"
)

// Stock is what a page is printed on. Lengths are millimetres, upright.
type Stock struct {
	Name     string    `toml:"name"`  // "a5"
	Title    string    `toml:"title"` // "A5 card"
	Width    float64   `toml:"width"`
	Height   float64   `toml:"height"`
	Border   float64   `toml:"border"`   // left blank all round, for a pouch's seal
	Sides    int       `toml:"sides"`    // 1, or 2 where the back is printed too
	Binding  float64   `toml:"binding"`  // more border at the bound edge; 0 for a loose card
	Top      float64   `toml:"top"`      // more border at the top of a front
	Turn     string    `toml:"turn"`     // the edge it is turned over: "long", also when empty, or "short"
	Hole     []float64 `toml:"hole"`     // of a hole punched: x, y and diameter, from the upper left of the front
	Corner   float64   `toml:"corner"`   // radius of the corners; 0 where they are square
	Distance float64   `toml:"distance"` // from the eye, where nobody says another; 0 stands for 500
}

// Look is how a page is to be made.
type Look struct {
	Stock      Stock
	DistanceMM float64 // from eye to page, at its farthest; 0 stands for that of the stock
}

// DefaultStock is the stock of a bench card when nobody names another.
const DefaultStock = "a5"

const defaultDistance = 500

// Stocks reads the known stocks in the order of the file. It is an error when
// the file holds what no stock has, or sizes no page fits on.
func Stocks() ([]Stock, error) {
	stocks, err := builtIn()
	return slices.Clone(stocks), err
}

// builtIn are the known stocks, read once.
var builtIn = sync.OnceValues(func() ([]Stock, error) {
	text, err := templates.Files.ReadFile("stocks.toml")
	if err != nil {
		return nil, err
	}
	return decodeStocks(string(text))
})

// FindStock gives the stock of a name, out of some that a shop has of its own or else
// out of the known ones.
func FindStock(name string, own ...Stock) (Stock, error) {
	for _, stock := range own {
		if strings.EqualFold(stock.Name, name) {
			return stock, stock.check()
		}
	}
	stocks, err := Stocks()
	if err != nil {
		return Stock{}, err
	}
	stocks = append(stocks, own...)
	names := make([]string, len(stocks))
	for i, stock := range stocks {
		if strings.EqualFold(stock.Name, name) {
			return stock, nil
		}
		names[i] = stock.Name
	}
	return Stock{}, fmt.Errorf("no stock %q; there are: %s", name, strings.Join(names, ", "))
}

func decodeStocks(text string) ([]Stock, error) {
	var file struct {
		Stocks []Stock `toml:"stock"`
	}
	meta, err := toml.Decode(text, &file)
	if err != nil {
		return nil, fmt.Errorf("stocks.toml: %w", err)
	}
	if unknown := meta.Undecoded(); len(unknown) > 0 {
		return nil, fmt.Errorf("stocks.toml: a stock has no %q", unknown[0].String())
	}
	for i, stock := range file.Stocks {
		if err := stock.check(); err != nil {
			return nil, fmt.Errorf("stocks.toml: %w", err)
		}
		if slices.ContainsFunc(file.Stocks[:i], func(other Stock) bool { return other.Name == stock.Name }) {
			return nil, fmt.Errorf("stocks.toml: stock %q stands there twice", stock.Name)
		}
	}
	return file.Stocks, nil
}

// clear is how far from a hole nothing is printed, so that the punch may slip;
// common practice, no source.
const clear = 3

// check wants room for a few lines of the smallest type a card may have, and holes
// and corners outside of it.
func (s Stock) check() error {
	const least = 60
	front := s.safe(1)
	switch {
	case s.Name == "" || s.Title == "":
		return fmt.Errorf("a stock has no name or no title")
	case s.Border < 0 || s.Binding < 0 || s.Top < 0 || s.Corner < 0 || s.Distance < 0:
		return fmt.Errorf("stock %q has a length below zero", s.Name)
	case front.Width < least || front.Height < least:
		return fmt.Errorf("stock %q leaves less than %d mm inside its border", s.Name, least)
	case s.Sides != 1 && s.Sides != 2:
		return fmt.Errorf("stock %q has %d sides, not 1 or 2", s.Name, s.Sides)
	case s.Turn != "" && s.Turn != "long" && s.Turn != "short":
		return fmt.Errorf("stock %q is turned over %q, not long or short", s.Name, s.Turn)
	case s.Corner*(1-math.Sqrt2/2) > s.Border:
		return fmt.Errorf("stock %q has corners of %g mm, which cut into what is printed; give it a wider border", s.Name, s.Corner)
	case len(s.Hole) != 0 && len(s.Hole) != 3:
		return fmt.Errorf("stock %q has a hole of %d figures, not 3; write how far it is from the left, how far from the top, and its diameter", s.Name, len(s.Hole))
	}
	if len(s.Hole) == 3 {
		x, y, reach := s.Hole[0], s.Hole[1], s.Hole[2]/2+clear
		if r := s.Hole[2] / 2; !(r > 0) || x-r < 0 || y-r < 0 || x+r > s.Width || y+r > s.Height {
			return fmt.Errorf("stock %q has a hole that reaches over its edge; write its middle, from the left and from the top of a front", s.Name)
		}
		nearest := Point{min(max(x, front.X), front.Right()), min(max(y, front.Y), front.Bottom())}
		if math.Hypot(nearest.X-x, nearest.Y-y) < reach {
			way := "move it to the top or to the bound edge"
			if top, binding := y+reach-s.Border, x+reach-s.Border; top <= s.Height/4 && (top <= binding || binding > s.Width/4) {
				way = fmt.Sprintf("write top = \"%.0f mm\"", math.Ceil(top))
			} else if binding <= s.Width/4 {
				way = fmt.Sprintf("write binding = \"%.0f mm\"", math.Ceil(binding))
			}
			return fmt.Errorf("stock %q has a hole, with %d mm kept clear round it, that reaches %.1f mm into what is printed; %s", s.Name, clear, reach-math.Hypot(nearest.X-x, nearest.Y-y), way)
		}
	}
	return nil
}

// safe is the rectangle of side number n, counted from 1, that may be printed. What
// is left blank for a hole or a binding lies at the same place of the card on its back.
func (s Stock) safe(n int) Rectangle {
	place := Rectangle{s.Border, s.Border, s.Width - 2*s.Border - s.Binding, s.Height - 2*s.Border - s.Top}
	front := s.Sides == 1 || n%2 == 1
	if front || s.Turn == "short" {
		place.X += s.Binding
	}
	if front || s.Turn != "short" {
		place.Y += s.Top
	}
	return place
}

// sizes are the sizes of type, millimetres of the em.
type sizes struct {
	main  float64 // the words of a step
	text  float64 // second words: say, cautions, lists
	small float64 // labels, details, the foot
	value float64 // a value to set
	title float64
}

// Angles of a capital's height over the distance (NUREG-0700 rev. 3, 11.4.1.5-1):
// 20 minutes of arc as preferred for what is read at work, 15 as the least for anything.
const (
	preferredAngle = 0.006
	leastAngle     = 0.004
)

func (l Look) sizes() sizes {
	em := l.DistanceMM / Bold.metrics().cap
	return sizes{main: preferredAngle * em, text: 0.0048 * em, small: 0.00405 * em, value: 0.0075 * em, title: 0.0095 * em}
}

// settled fills in what the look leaves open. A distance too great for the stock
// is cut to what fits, and said.
func (l Look) settled() (Look, []Problem) {
	var problems []Problem
	if err := l.Stock.check(); err != nil {
		if l.Stock.Name != "" || l.Stock.Width != 0 {
			problems = append(problems, Problem{"stock", err.Error() + "; the page is laid out for " + DefaultStock})
		}
		l.Stock, err = FindStock(DefaultStock)
		if err != nil {
			return l, append(problems, Problem{"stock", err.Error()})
		}
	}
	if l.DistanceMM <= 0 {
		l.DistanceMM = l.Stock.Distance
	}
	if l.DistanceMM <= 0 {
		l.DistanceMM = defaultDistance
	}
	if most := l.Stock.Farthest(); l.DistanceMM > most {
		better := "no stock takes type for that"
		if larger, ok := forDistance(l.DistanceMM); ok {
			better = fmt.Sprintf("--stock %s takes it", larger.Name)
		}
		problems = append(problems, Problem{"reading distance", fmt.Sprintf("%s is read from no more than %.0f mm, so the type is set for that and not for %.0f mm; %s", l.Stock.Title, most, l.DistanceMM, better)})
		l.DistanceMM = most
	}
	return l, problems
}

// Farthest is the greatest distance in millimetres from which a stock can be read: the
// main type must go 22 times across the page, below which nothing can be set.
func (s Stock) Farthest() float64 {
	const widest = 22
	return s.safe(1).Width / widest / (preferredAngle / Bold.metrics().cap)
}

// forDistance is the smallest stock that can be read from a distance; false where there is none.
func forDistance(mm float64) (Stock, bool) { return forWidth(0, mm) }

// forWidth is the smallest stock that something so wide goes on, in type for a distance;
// false where there is none.
func forWidth(width, distance float64) (best Stock, ok bool) {
	stocks, err := Stocks()
	if err != nil {
		return Stock{}, false
	}
	for _, stock := range stocks {
		if stock.safe(1).Width >= width && stock.Farthest() >= distance && (!ok || stock.Width*stock.Height < best.Width*best.Height) {
			best, ok = stock, true
		}
	}
	return best, ok
}
