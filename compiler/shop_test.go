package compiler_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

const demonstration = "../procedures"

func compileShop(t testing.TB) *compiler.Result {
	files := compiler.ReadFolder(t, demonstration)
	return compiler.Compile(compiler.Input{Files: files, Pictures: compiler.ReadPictures(t, demonstration, files)})
}

func TestTheDemonstrationShopIsClean(t *testing.T) {
	result := compileShop(t)
	assert.Empty(t, result.Findings, "findings: %s", describe(result.Findings))
	procedures, machines := map[string]bool{}, map[string]bool{}
	for _, job := range result.Jobs {
		assert.False(t, job.Blocked, job.Path)
		procedures[job.Path], machines[job.Machine] = true, true
	}
	assert.GreaterOrEqual(t, len(procedures), 14)
	assert.GreaterOrEqual(t, len(machines), 5)
}

var stepHeader = regexp.MustCompile(`(?m)^\[\[(prepare|step|close)\]\]`)

func TestDemonstrationProceduresHaveDepth(t *testing.T) {
	result := compileShop(t)
	seen := map[string]bool{}
	for _, job := range result.Jobs {
		if seen[job.Path] {
			continue
		}
		seen[job.Path] = true
		text, err := os.ReadFile(filepath.Join(demonstration, job.Path))
		require.NoError(t, err)
		steps := len(stepHeader.FindAll(text, -1))
		assert.GreaterOrEqual(t, steps, 10, "%s has %d steps", job.Path, steps)
		assert.LessOrEqual(t, steps, 32, "%s has %d steps", job.Path, steps)
	}
}

// stocksTried are all stocks; one where little time is to be taken.
func stocksTried() []string {
	if testing.Short() {
		return compiler.Stocks()[:1]
	}
	return compiler.Stocks()
}

// Every look of the demonstration shop lays out without trouble.
func TestEveryCardFitsEveryStock(t *testing.T) {
	result := compileShop(t)
	for _, stock := range stocksTried() {
		for _, units := range compiler.Units() {
			cards, troubles, err := result.Cards(compiler.Look{Stock: stock, Units: units}, nil)
			require.NoError(t, err)
			assert.Empty(t, troubles, "%s, %s", stock, units)
			served := 0
			for _, card := range cards {
				served += len(card.Jobs)
			}
			assert.Equal(t, len(result.Jobs), served)
		}
	}
}

func needs(t *testing.T, program string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skipf("%s is not installed", program)
	}
	return path
}

func outputs(t *testing.T, result *compiler.Result) []compiler.Output {
	t.Helper()
	cards, troubles, err := result.Cards(compiler.Look{}, nil)
	require.NoError(t, err)
	assert.Empty(t, troubles)
	lists, troubles, err := result.Pick(compiler.Look{})
	require.NoError(t, err)
	assert.Empty(t, troubles)
	manual, troubles, err := result.Manual(compiler.Look{})
	require.NoError(t, err)
	assert.Empty(t, troubles)
	return append(append(cards, lists...), manual...)
}

// qpdf, a PDF library that has nothing to do with the one that writes, finds no fault in any file.
func TestPDFsAreSoundByQpdf(t *testing.T) {
	qpdf := needs(t, "qpdf")
	folder := t.TempDir()
	for _, output := range outputs(t, compileShop(t)) {
		if !strings.HasSuffix(output.Name, ".pdf") {
			continue
		}
		file := filepath.Join(folder, output.Name)
		require.NoError(t, os.WriteFile(file, output.Bytes, 0o644))
		said, err := exec.Command(qpdf, "--check", file).CombinedOutput()
		assert.NoError(t, err, "%s: %s", output.Name, said)
	}
}

var spaces = regexp.MustCompile(`\s+`)

// Poppler, which did not write the file, reads every step once and in order, and
// every font is inside the file.
func TestStepsStandOnceAndInOrderByPoppler(t *testing.T) {
	pdftotext, pdffonts := needs(t, "pdftotext"), needs(t, "pdffonts")
	result := compileShop(t)
	cards, _, err := result.Cards(compiler.Look{}, nil)
	require.NoError(t, err)
	folder := t.TempDir()
	for _, card := range cards {
		file := filepath.Join(folder, card.Name)
		require.NoError(t, os.WriteFile(file, card.Bytes, 0o644))
		text, err := exec.Command(pdftotext, "-raw", file, "-").Output()
		require.NoError(t, err)
		flat := spaces.ReplaceAllString(strings.ReplaceAll(string(text), "\u00a0", " "), " ")
		at := 0
		for n, action := range compiler.Actions(card.Jobs[0]) {
			action = strconv.Itoa(n+1) + " " + spaces.ReplaceAllString(strings.ReplaceAll(action, "\u00a0", " "), " ")
			found := strings.Index(flat[at:], action)
			if assert.GreaterOrEqual(t, found, 0, "%s: step %q is not there after the one before", card.Name, action) {
				at += found + len(action)
				assert.NotContains(t, flat[at:], " "+action, "%s: step stands twice", card.Name)
			}
		}
		fonts, err := exec.Command(pdffonts, file).Output()
		require.NoError(t, err)
		lines := strings.Split(strings.TrimSpace(string(fonts)), "\n")
		require.Greater(t, len(lines), 2)
		for _, line := range lines[2:] {
			assert.Regexp(t, `yes\s+\S+\s+yes\s+\d+\s+\d+\s*$`, line, "embedded, and with its characters named")
		}
	}
}

// encoding/csv reads the pick list back; so does any spreadsheet.
func TestPickListIsReadBySecondReader(t *testing.T) {
	lists, _, err := compileShop(t).Pick(compiler.Look{})
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(lists[1].Bytes)).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 20)
	groups := map[string]int{}
	for _, row := range rows[1:] {
		groups[row[0]]++
		assert.NotEmpty(t, row[1])
		assert.NotEmpty(t, row[9], "%s is wanted by no procedure", row[1])
	}
	for _, group := range []string{"Tools", "Supplies", "New parts", "Wear", "Waste"} {
		assert.Positive(t, groups[group], group)
	}
}

// What the shop's procedures renew, counted by hand from their steps; both versions of
// a machine are summed.
func TestNewPartsAreCountedAsByHand(t *testing.T) {
	lists, _, err := compileShop(t).Pick(compiler.Look{})
	require.NoError(t, err)
	rows, err := csv.NewReader(bytes.NewReader(lists[1].Bytes)).ReadAll()
	require.NoError(t, err)
	counted := map[string]string{}
	for _, row := range rows[1:] {
		if row[0] == "New parts" {
			words, _, _ := strings.Cut(row[1], ",")
			counted[words] = row[2]
		}
	}
	assert.Equal(t, map[string]string{
		"Band blade": "1", "Matched set of three V-belts SPB 2650": "1", "Guide roller": "2", "Felt wiper": "2", "Split pin 4 × 40 mm": "1",
		"Chipper knife": "4", "Knife bolt M16 × 55": "8", "Intake filter element": "1", "Sealing washer 3/8 in": "1", "Matched pair of V-belts SPA 1500": "1",
		"Edger saw": "5", "Sealing ring 22 × 27 mm": "4", "Breather filter": "2", "Hub seal 45 × 72 × 10 mm": "1", "Split pin 5 × 50 mm": "1",
		"Press hose": "1", "Sealing ring 27 × 32 mm": "1", "Tank cover gasket": "1", "Suction strainer": "1", "Return filter element": "1", "O-ring 98 × 3 mm": "1",
	}, counted)
}

func TestSameInputSameBytesWithOneCoreAndTwo(t *testing.T) {
	everything := func(cores int) []compiler.Output {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		result := compileShop(t)
		return append(outputs(t, result), compiler.Output{Name: "json", Bytes: result.JSON()})
	}
	first := everything(1)
	rounds := 3
	if testing.Short() {
		rounds = 1
	}
	for range rounds {
		again := everything(2)
		require.Len(t, again, len(first))
		for i := range first {
			assert.Equal(t, first[i].Name, again[i].Name)
			assert.True(t, bytes.Equal(first[i].Bytes, again[i].Bytes), first[i].Name)
		}
	}
}

// A split pin that its nut names among the seals and that a step of its own renews is
// one pin, counted by hand.
func TestWhatAStepRenewsIsNotCountedAsASealToo(t *testing.T) {
	text := strings.Replace(standsBy, "[[step.allow]]\n", `
[spare.split-pin]
title = "split pin 4 × 40 mm"
[part.hub-nut]
head = "wing"
seals = ["split-pin"]
[[step]]
remove = "hub-nut"
[[step]]
refit = "hub-nut"
[[step]]
replace = "split-pin"
`, 1)
	text = strings.Replace(text, "spares = []", `spares = ["split-pin"]`, 1)
	result := compiler.Compile(compiler.Input{Files: []*source.File{source.New("winch.toml", []byte(text))}})
	require.False(t, result.Jobs[0].Blocked, describe(result.Findings))
	lists, _, err := result.Pick(compiler.Look{})
	require.NoError(t, err)
	assert.Contains(t, string(lists[1].Bytes), "New parts,Split pin 4 × 40 mm,1,")
}

// The stocks the language names are those that are there.
func TestTheLanguageNamesTheStocks(t *testing.T) {
	assert.Equal(t, compiler.Stocks(), schema.Stocks)
}

// A card that is checked alone brings along the file of a procedure it names.
func TestAFileUsesTheProceduresItNames(t *testing.T) {
	text, err := os.ReadFile("../procedures/log-deck-chain-tension.toml")
	require.NoError(t, err)
	uses, _ := compiler.Uses(source.New("deck/log-deck-chain-tension.toml", text))
	assert.Contains(t, uses, "deck/log-deck-gearbox-oil.toml")
}
