package compiler

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A procedure from which nobody takes anything comes, goes and changes its name, its title, its
// machine and what it uses, while others name it or have its name or title: a session finds what
// a compile of the files as they then are finds.
func TestASessionFindsWhatACompileFindsOfProceduresThatComeAndGo(t *testing.T) {
	rounds := 6000
	if testing.Short() {
		rounds = 600
	}
	dice := rand.New(rand.NewPCG(11, 4))
	one := func(of ...string) string { return of[dice.IntN(len(of))] }
	procedure := func() string {
		out := one("benchleaf = 1\n", "benchleaf = 1\n", "benchleaf = 1\n", "benchleaf = 2\n", "")
		out += one("", "", "use = [\"one.toml\"]\n", "use = [\"two.toml\", \"one.toml\"]\n", "use = [\"none.toml\"]\n", "use = [\"one.toml\", \"../far.toml\"]\n",
			"use = [\"p?.toml\", \"three.toml\"]\n", "use = [\"three.toml\", \"two.toml\"]\n", "use = [\"q.toml\"]\n")
		out += one("[procedure]\n", "[procedure]\n", "[procedure]\n", "[procedure]\n", "[procedure\n", "")
		out += one("", "", "name = \"wash\"\n", "name = \"washed\"\n", "name = \"p1\"\n", "name = \"q\"\n")
		out += fmt.Sprintf("title = %q\nmachine = %q\n", one("Wash the deck", "Wash the bed", "Wash the saw"), one("deck", "bed", "The saw"))
		out += one("", "", "joins = [\"wash\"]\n", "sooner = [{ reading = \"Slack\", of = \"q\", over = \"3 mm\", every = \"5 h\" }]\n")
		out += "revision = \"A\"\ndate = 2026-02-14\nauthor = \"R. Aldous\"\nwho = \"Anyone\"\nhands-on = \"5 min\"\ntools = [\"rag\"]\n"
		if dice.IntN(12) == 0 {
			out += "[tool.rag]\nkind = \"container\"\n"
		}
		if dice.IntN(8) == 0 {
			out += "[second-reading]\nby = \"T. Okafor\"\ndate = 2026-02-20\nfrom = \"page 41\"\n"
		}
		for range 1 + dice.IntN(2) {
			out += "[[step]]\n" + one("say = \"Wipe the rim.\"\n", "inspect = \"bolt\"\n", "follow = \"wash\"\n", "follow = \"p2\"\n", "follow = \"q\"\n", "follow = \"wahs\"\n",
				"inspect = \"the rim\"\narea = [\"side\"]\n")
		}
		return out + one("", "", "", "[", "# end\n")
	}
	tools := func() string {
		out := "benchleaf = 1\n" + one("", "", "use = [\"p1.toml\"]\n", "use = [\"two.toml\"]\n")
		out += one("", "[machine]\nname = \"deck\"\ntitle = \"The deck\"\nmanual = \"its book\"\n", "[machine]\nname = \"bed\"\ntitle = \"The bed\"\nmanual = \"its book\"\n[area.side]\ntitle = \"Side\"\n")
		return out + one("", "[part.bolt]\n", "[tool.rag]\nkind = \"container\"\n", "[tool.rag]\nkind = \"container\"\n[tool.wrag]\nkind = \"container\"\n")
	}
	procedures, libraries := []string{"p1.toml", "p2.toml", "p3.toml", "q.toml", "second/p1.toml"}, []string{"one.toml", "two.toml", "three.toml"}
	texts := map[string][]byte{}
	for _, path := range procedures {
		texts[path] = []byte(procedure())
	}
	for _, path := range libraries {
		texts[path] = []byte(tools())
	}
	var session Session
	for round := range rounds {
		switch n := dice.IntN(20); {
		case n == 0:
			texts[one(libraries...)] = []byte(tools())
		case n < 10:
			texts[one(procedures...)] = []byte(procedure())
		default: // one line of a procedure is as in another, is gone or is back
			path := one(procedures...)
			lines, others := strings.SplitAfter(string(texts[path]), "\n"), strings.SplitAfter(procedure(), "\n")
			if i := dice.IntN(len(lines)); i < len(others) {
				lines[i] = one("", others[i], others[i], "["+lines[i])
			}
			texts[path] = []byte(strings.Join(lines, ""))
		}
		targets := []string{}
		if dice.IntN(3) == 0 {
			targets = append(targets, one(procedures...))
		}
		in := Input{Files: fresh(texts), Targets: targets, Whole: true}
		fast := everything(session.Compile(in))
		require.Equal(t, everything(Compile(Input{Files: fresh(texts), Targets: targets, Whole: true})), fast, "round %d", round)
	}
}
