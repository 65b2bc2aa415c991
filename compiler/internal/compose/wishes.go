// Package compose puts into words what a page says: it turns jobs into the plan
// of a bench card and of a pick list. It must not know paper or any file format.
package compose

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
)

// Wishes is how a shop wants its pages; what is empty is left to the caller.
type Wishes struct {
	Stock, Units string
	DistanceMM   float64
	Own          []OwnStock
}

// OwnStock is a stock of the shop's own, in millimetres; 0 and empty where nothing is said.
type OwnStock struct {
	Name, Title           string
	Width, Height, Border float64
	Sides                 int
	Binding, Top          float64
	Turn                  string
	Hole                  []float64
	Corner, Distance      float64
}

// WishesOf reads the wishes of the shop a job belongs to.
func WishesOf(job *model.Job) Wishes {
	if job.Shop == nil {
		return Wishes{}
	}
	wishes := Wishes{Stock: job.Shop.Stock.Name(), Units: job.Shop.Units.Text, DistanceMM: millimetres(job.Shop.ReadingDistance)}
	for _, stock := range job.Stocks() {
		wishes.Own = append(wishes.Own, Own(stock))
	}
	return wishes
}

// Own is a stock of the shop's own in millimetres.
func Own(stock *model.Stock) OwnStock {
	own := OwnStock{Name: stock.Name, Title: stock.Title.Text, Turn: stock.Turn.Text, Width: millimetres(stock.Width), Height: millimetres(stock.Height),
		Border: millimetres(stock.Border), Binding: millimetres(stock.Binding), Top: millimetres(stock.Top), Corner: millimetres(stock.Corner),
		Distance: millimetres(stock.Distance), Sides: stock.Sides.Or(2)}
	for _, length := range stock.Hole {
		own.Hole = append(own.Hole, millimetres(length))
	}
	return own
}

// millimetres is the greatest value of a length; 0 where there is none.
func millimetres(length model.Amount) float64 {
	most, ok := length.Max()
	if !length.OK || !ok {
		return 0
	}
	mm, _ := most.Float64()
	return mm
}

var systems = []struct {
	name   string
	system quantity.System
}{{"metric", quantity.Metric}, {"inch", quantity.Inch}, {"both", quantity.Both}}

// Units lists the choices of units.
func Units() []string {
	out := make([]string, len(systems))
	for i, entry := range systems {
		out[i] = entry.name
	}
	return out
}

// System finds a choice of units by its name.
func System(name string) (quantity.System, error) {
	i := slices.IndexFunc(systems, func(entry struct {
		name   string
		system quantity.System
	}) bool {
		return strings.EqualFold(entry.name, name)
	})
	if i < 0 {
		return 0, fmt.Errorf("no units %q; there are: %s", name, strings.Join(Units(), ", "))
	}
	return systems[i].system, nil
}
