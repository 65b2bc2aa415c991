package compiler

import (
	"bytes"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/source"
)

// A shop of which no more is held than is being looked at is found to be what it is: the
// demonstration shop with damage done to it, a few procedures at a time.
func TestALeanCompileFindsWhatACompileFinds(t *testing.T) {
	dice := rand.New(rand.NewPCG(20, 26))
	shop := shopTexts(t)
	paths := slices.Sorted(maps.Keys(shop))
	edits := []string{"\"", "x", "7", "[part.new]\n", "[", "[[step]]\n", "N·m", "renamed-", "[machine]\n", "[area.left]\n", "use = [\"*.toml\"]\n",
		"\n[[step]]\nsay = \"Wipe the rim of the left wheel at 20 N.\"\n\n", "[second-reading]\nby = \"L. Aske\"\n", "allow = [{ rule = \"torque/none\", reason = \"so\" }]\n"}
	rounds := 60
	if testing.Short() {
		rounds = 12
	}
	for round := range rounds {
		texts := maps.Clone(shop)
		for range dice.IntN(12) {
			path := paths[dice.IntN(len(paths))]
			text := texts[path]
			at := dice.IntN(len(text) + 1)
			switch dice.IntN(5) {
			case 0:
				delete(texts, path)
			case 1:
				texts[path] = slices.Concat(text[:at], text[min(len(text), at+dice.IntN(12)):])
			case 2: // a copy under another name
				texts["copy-"+path] = text
			default:
				for at > 0 && text[at-1] != '\n' {
					at--
				}
				texts[path] = slices.Concat(text[:at], []byte(edits[dice.IntN(len(edits))]), text[at:])
			}
		}
		var targets []string
		for path := range texts {
			if round%3 == 0 && dice.IntN(2) == 0 {
				targets = append(targets, path)
			}
		}
		var files []*source.File
		for path, text := range texts {
			files = append(files, source.New(path, text))
		}
		in := Input{Files: files, Targets: targets, Whole: round%2 == 0, Pictures: Imagined(files)}
		want, got := Compile(in), inTurns(in, 1+dice.IntN(6))
		require.Equal(t, texted(want), texted(got), "round %d", round)
	}
}

// Most procedures have turns, and a machine has none.
func TestProceduresHaveTurns(t *testing.T) {
	turns := model.InTurns(fresh(shopTexts(t)), inParallel)
	for _, file := range turns.Held() {
		require.False(t, file.Procedure != nil && file.Machine == nil && !file.Describes() && !mentioned(turns.Set, file) && !strings.Contains(string(file.Source.Text), "area"), file.Source.Path)
	}
	n := 0
	turns.Each(3, func(files []*model.File) {
		n += len(files)
		require.LessOrEqual(t, len(files), 6)
		for _, file := range files {
			require.Equal(t, file.Second == nil, len(file.Steps) > 0)
		}
	})
	require.Equal(t, len(turns.Files), n+len(turns.Held()))
	require.GreaterOrEqual(t, n, 5, "procedures that have turns")
}

func mentioned(set *model.Set, file *model.File) bool {
	return slices.ContainsFunc(set.Files, func(other *model.File) bool {
		return other != file && strings.Contains(string(other.Source.Text), `"`+file.Name()+`"`)
	})
}

// The cards and lists of a lean compile are those of a compile, to the byte.
func TestALeanCompilePrintsWhatACompilePrints(t *testing.T) {
	files := fresh(shopTexts(t))
	for _, look := range []Look{{}, {Units: "inch", Language: "de", Stock: "letter"}} {
		in := Input{Files: files, Whole: true, Pictures: Imagined(files)}
		whole := Compile(in)
		want, told, err := whole.Cards(look, nil)
		require.NoError(t, err)
		lists, more, err := whole.Pick(look)
		require.NoError(t, err)
		want, told = append(want, lists...), append(told, more...)
		for _, many := range []int{1, 5, 50} {
			var got []Output
			lean := inTurns(in, many)
			require.Equal(t, whole.written(), lean.written())
			lists, troubles, err := lean.Print(look, nil, func(one Output) error {
				got = append(got, one)
				return nil
			}, nil)
			require.NoError(t, err)
			got = append(got, lists...)
			require.Equal(t, told, troubles)
			require.Len(t, got, len(want))
			for i := range want {
				require.Equal(t, want[i].Name, got[i].Name)
				require.Equal(t, want[i].Bytes, got[i].Bytes, want[i].Name)
				require.Len(t, got[i].Jobs, len(want[i].Jobs), want[i].Name)
			}
		}
	}
}

// shelf keeps in memory.
type shelf struct {
	lock sync.Mutex
	data map[[32]byte][]byte
	hits int
}

func (s *shelf) Get(key [32]byte) ([]byte, bool) {
	s.lock.Lock()
	defer s.lock.Unlock()
	data, there := s.data[key]
	if there {
		s.hits++
	}
	return data, there
}

func (s *shelf) Put(key [32]byte, data []byte) {
	s.lock.Lock()
	defer s.lock.Unlock()
	s.data[key] = data
}

// What was kept is the card as it would be drawn, after any change of the files and of the look.
func TestACardThatIsKeptIsTheCardThatIsDrawn(t *testing.T) {
	keep := &shelf{data: map[[32]byte][]byte{}}
	texts := shopTexts(t)
	print := func(look Look) {
		files := fresh(texts)
		in := Input{Files: files, Whole: true, Pictures: Imagined(files)}
		result := Compile(in)
		want, told, err := result.Cards(look, nil)
		require.NoError(t, err)
		_, more, err := result.Pick(look)
		require.NoError(t, err)
		told = append(told, more...)
		var got []Output
		_, troubles, err := result.Print(look, keep, func(one Output) error {
			got = append(got, one)
			return nil
		}, nil)
		require.NoError(t, err)
		require.Equal(t, told, troubles)
		require.Len(t, got, len(want))
		for i := range want {
			require.Equal(t, want[i].Name, got[i].Name)
			require.Equal(t, want[i].Bytes, got[i].Bytes, want[i].Name)
			require.Len(t, got[i].Jobs, len(want[i].Jobs))
		}
	}
	print(Look{})
	require.Zero(t, keep.hits)
	print(Look{})
	cards := len(keep.data)
	require.Equal(t, cards, keep.hits, "all are there")
	print(Look{Pictures: true})
	print(Look{Stock: "a6", Distance: "700 mm"})
	require.Equal(t, cards, keep.hits, "another look is another card")
	path := "chipper-knife-turn.toml"
	texts[path] = bytes.Replace(texts[path], []byte("[[step]]"), []byte("[[step]]\ninspect = \"the rim of the rotor\"\nexpect = \"no crack\"\noutside = \"Call the maker.\"\n\n[[step]]"), 1)
	print(Look{})
	require.Equal(t, 2*cards-1, keep.hits, "one card says something else")
	for key := range keep.data {
		keep.data[key] = keep.data[key][:len(keep.data[key])/2]
	}
	print(Look{})
}

// texted is all that a compile tells.
func texted(r *Result) []string {
	out := []string{string(r.JSON()), string(r.SARIF("0"))}
	out = append(out, r.Unchecked...)
	for _, job := range r.Jobs {
		out = append(out, job.Path, job.Name, job.MachineName)
		for _, found := range job.holding {
			out = append(out, found.Rule, found.Summary)
		}
	}
	return out
}
