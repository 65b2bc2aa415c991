package csv

import (
	"encoding/json"
	"os/exec"
	"strings"
	"testing"

	"benchleaf/compiler/internal/pages/pagestest"
	"benchleaf/compiler/internal/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// secondReader reads CSV with Python's csv module, which shares no code with the writer.
func secondReader(t *testing.T, text []byte) [][]string {
	t.Helper()
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("python3 is not installed")
	}
	command := exec.Command(python, "-c", "import csv,io,json,sys; print(json.dumps(list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode('utf-8'), newline='')))))")
	command.Stdin = strings.NewReader(string(text))
	out, err := command.Output()
	require.NoError(t, err)
	var rows [][]string
	require.NoError(t, json.Unmarshal(out, &rows))
	return rows
}

func TestASecondReaderReadsWhatWasWritten(t *testing.T) {
	list := pagestest.PickList()
	list.Groups[0].Lines[0].Name = "Wrench 1/2\", \"long\", with extension"
	text, err := Pick(list)
	require.NoError(t, err)
	rows := secondReader(t, text)
	assert.Equal(t, []string{"group", "item", "quantity", "take", "serves", "into", "stand_ins", "instead_of", "where", "procedures"}, rows[0])
	n := 0
	for _, group := range list.Groups {
		for _, line := range group.Lines {
			n++
			assert.Equal(t, []string{group.Title, line.Name, line.Quantity, line.Take, strings.Join(line.Serves, "; "), line.Into,
				strings.Join(line.StandIns, "; "), strings.Join(line.Instead, "; "), line.Where, strings.Join(line.For, "; ")}, rows[n])
		}
	}
	assert.Len(t, rows, n+1)
}

func TestNoCellIsAFormula(t *testing.T) {
	for cell, want := range map[string]string{
		"=HYPERLINK(\"x\")": "'=HYPERLINK(\"x\")", "+1": "'+1", "-2 mm": "'-2 mm", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r\n=1": "' =1", "two\nlines": "two lines",
		"": "", "1.1 L": "1.1 L", "M8 = bolt": "M8 = bolt", "'quoted'": "'quoted'",
	} {
		list := plan.PickList{Groups: []plan.PickGroup{{Title: "Tools", Lines: []plan.Pick{{Name: cell, Serves: []string{cell}}}}}}
		text, err := Pick(list)
		require.NoError(t, err)
		rows := secondReader(t, text)
		assert.Equal(t, want, rows[1][1])
		assert.Equal(t, want, rows[1][4])
	}
}

func TestAnEmptyListIsItsHeader(t *testing.T) {
	text, err := Pick(plan.PickList{})
	require.NoError(t, err)
	assert.Equal(t, "group,item,quantity,take,serves,into,stand_ins,instead_of,where,procedures\r\n", string(text))
}
