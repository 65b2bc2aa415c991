package main

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"

	"benchleaf/cmd/internal/cache"
)

func TestMain(m *testing.M) {
	if !strings.HasPrefix(filepath.Base(os.Args[0]), "benchleaf") || strings.HasPrefix(filepath.Base(os.Args[0]), "benchleaf.test") {
		os.Setenv(cache.Variable, cache.Off) // nobody's cache is of use to a test, or comes to harm by one
	}
	testscript.Main(m, map[string]func(){"benchleaf": main})
}

// The command line, one archive a case.
func TestCommand(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "../../testdata/command",
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv(cache.Variable, filepath.Join(env.WorkDir, ".cache"))
			return nil
		},
		Condition: func(name string) (bool, error) {
			if name == "root" { // who may write everywhere
				return os.Geteuid() == 0, nil
			}
			return false, fmt.Errorf("no condition %q", name)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"noise":   noise,
			"tear":    tear,
			"latin1":  latin1,
			"fill":    fill,
			"nested":  nested,
			"isjson":  isJSON,
			"nothing": nothingElse,
		},
	})
}

// tear takes the last bytes of a file away: tear FILE BYTES.
func tear(ts *testscript.TestScript, neg bool, args []string) {
	path := ts.MkAbs(args[0])
	text, err := os.ReadFile(path)
	ts.Check(err)
	bytes, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(path, text[:len(text)-bytes], 0o644))
}

// noise FILE KIND MIB writes bytes from a fixed seed: raw, or printable.
func noise(ts *testscript.TestScript, neg bool, args []string) {
	size := len(args[2]) << 20 // one x a MiB
	random := rand.New(rand.NewPCG(1, 2))
	out := make([]byte, size)
	letters := []byte("abc =[]{}\"'#.,-1\n")
	for i := range out {
		if args[1] == "raw" {
			out[i] = byte(random.Uint32())
		} else {
			out[i] = letters[random.IntN(len(letters))]
		}
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), out, 0o644))
}

// latin1 FILE turns a file in UTF-8 into one in ISO 8859-1.
func latin1(ts *testscript.TestScript, neg bool, args []string) {
	var out []byte
	for _, r := range ts.ReadFile(args[0]) {
		out = append(out, byte(r))
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), out, 0o644))
}

var blank = regexp.MustCompile(`(?m)^([a-z-]+ = \[?)""(\]?)\s+#.*such as (.*)$`)

// fill FILE… fills the blanks of a scaffold with the examples in their comments.
func fill(ts *testscript.TestScript, neg bool, args []string) {
	for _, name := range args {
		text := ts.ReadFile(name)
		if !blank.MatchString(text) {
			ts.Fatalf("%s has no blanks", name)
		}
		ts.Check(os.WriteFile(ts.MkAbs(name), []byte(blank.ReplaceAllString(text, "$1$3$2")), 0o644))
	}
}

// nested FILE writes a list so deep that each of its items stands far to the right.
func nested(ts *testscript.TestScript, neg bool, args []string) {
	text := "a = " + strings.Repeat("[", 99) + strings.Repeat("\"x\",\n", 40_000) + strings.Repeat("]", 99) + "\n"
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o644))
}

// isjson FILE wants one JSON document with findings and procedures.
func isJSON(ts *testscript.TestScript, neg bool, args []string) {
	var report struct {
		Version    int               `json:"benchleaf"`
		Procedures []json.RawMessage `json:"procedures"`
		Findings   []struct {
			Rule, Severity, Summary string
			Place                   struct {
				File         string
				Line, Column int
			}
		} `json:"findings"`
	}
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(args[0])), &report))
	if report.Version != 1 || report.Procedures == nil || report.Findings == nil {
		ts.Fatalf("%s lacks its parts", args[0])
	}
	for _, found := range report.Findings {
		if found.Rule == "" || found.Place.File == "" || found.Place.Line < 1 || found.Place.Column < 1 {
			ts.Fatalf("a finding lacks its place: %+v", found)
		}
	}
}

// nothing FOLDER [NAME…] wants a folder to hold nothing but some files.
func nothingElse(ts *testscript.TestScript, neg bool, args []string) {
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	for _, entry := range entries {
		if !strings.Contains(" "+strings.Join(args[1:], " ")+" ", " "+entry.Name()+" ") {
			ts.Fatalf("%s holds %s", args[0], entry.Name())
		}
	}
}

func TestNearestNames(t *testing.T) {
	assert.Equal(t, []string{"lint"}, nearest("lnit", []string{"lint", "print", "pick"}, 1))
	assert.Empty(t, nearest("wardrobe", []string{"lint", "print", "pick"}, 1))
}
