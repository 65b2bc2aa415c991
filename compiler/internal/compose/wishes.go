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
}

// WishesOf reads the wishes of the shop a job belongs to.
func WishesOf(job *model.Job) Wishes {
	if job.Shop == nil {
		return Wishes{}
	}
	wishes := Wishes{Stock: job.Shop.Stock.Text, Units: job.Shop.Units.Text}
	if distance := job.Shop.ReadingDistance; distance.OK {
		if most, ok := distance.Max(); ok {
			wishes.DistanceMM, _ = most.Float64()
		}
	}
	return wishes
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
