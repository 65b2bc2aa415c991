package main

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
)

// shape is a kind of shop that is made: what its machines and procedures are like.
type shape struct {
	name  string
	about string
	files func(procedures int, seed uint64) map[string]string
}

var shapes = []shape{
	{"plain", "one machine, inspection cards of three steps", plainShop},
	{"typical", fmt.Sprintf("procedures of about a dozen steps, %d to a machine: isolation, covers, torques, fluids, seals, messages", jobsOfMachine), typicalShop},
}

// maker writes the texts of a shop. All it picks comes from its seed, so the same seed makes
// the same shop.
type maker struct {
	pick   *rand.Rand
	files  map[string]string
	places []int // of stations, those that the next machines get
}

func newMaker(seed uint64) *maker {
	return &maker{pick: rand.New(rand.NewPCG(seed, 0x62656e6368)), files: map[string]string{}}
}

func (m *maker) between(low, high int) int { return low + m.pick.IntN(high-low+1) }

// one is any of a list.
func one[T any](m *maker, of ...T) T { return of[m.pick.IntN(len(of))] }

// date is a day of the years before the shop was made.
func (m *maker) date() string {
	return fmt.Sprintf("%d-%02d-%02d", m.between(2023, 2025), m.between(1, 12), m.between(1, 28))
}

func (m *maker) author() string {
	return one(m, "A. Brekke", "T. Lindqvist", "J. Marsh", "O. Farrow", "S. Dunmore", "E. Halloway", "P. Tarn")
}

// writeShop writes the files of a shop below a folder.
func writeShop(folder string, files map[string]string) error {
	for name, text := range files {
		path := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			return err
		}
	}
	return nil
}

// names are the names of a list in quotes, as TOML has them.
func names(list ...string) string {
	quoted := make([]string, len(list))
	for i, name := range list {
		quoted[i] = fmt.Sprintf("%q", name)
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}
