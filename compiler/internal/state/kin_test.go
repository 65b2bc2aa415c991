package state

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/tree"
)

func TestKinsOfEachLanguage(t *testing.T) {
	for _, c := range []struct {
		language, a, b string
		want           bool
	}{
		{"en", "drive belt", "V-belt B 62", true},
		{"en", "drive belt", "drive pulley", false},
		{"de", "Antriebsriemen", "Keilriemen B 62, paarweise", true},
		{"de", "Hackmesser", "Messer", true},
		{"de", "Dichtring", "O-Ring 98", true},
		{"de", "Dichtung", "Leitung", false},
		{"de", "Ölfilter", "Luftfilter", true}, // both are filters, as "oil filter" and "air filter" are
		{"de", "Deckel", "Hebel", false},
		{"fr", "courroies d’entraînement", "Courroie trapézoïdale B 62", true},
		{"fr", "courroie", "poulie", false},
		{"es", "cuchillas de la astilladora", "Cuchilla 420 mm", true},
		{"es", "cuchilla", "correa", false},
	} {
		shop := &model.Shop{Language: model.Text{Text: c.language, Value: new(tree.Value)}}
		w := &walk{job: &model.Job{Shop: shop}}
		assert.Equal(t, c.want, w.kin(c.a, c.b), "%s: %s, %s", c.language, c.a, c.b)
		assert.Equal(t, c.want, w.kin(c.b, c.a), "%s: %s, %s", c.language, c.b, c.a)
	}
}
