package compiler_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

// Every job has its sheet, on every stock, without trouble.
func TestEveryApprovalSheetFitsEveryStock(t *testing.T) {
	result := compileShop(t)
	for _, stock := range stocksTried() {
		sheets, troubles, err := result.Approvals(compiler.Look{Stock: stock})
		require.NoError(t, err)
		assert.Empty(t, troubles, stock)
		assert.Len(t, sheets, len(result.Jobs))
		records, troubles, err := result.Records(compiler.Look{Stock: stock})
		require.NoError(t, err)
		assert.Empty(t, troubles, stock)
		assert.Len(t, records, len(result.Jobs))
	}
}

// A record sheet has a row for each reading, with its limit and what to do outside it.
// Read back by poppler's pdftotext.
func TestARecordSheetAsksForEveryReading(t *testing.T) {
	program := needs(t, "pdftotext")
	result := compileShop(t)
	records, _, err := result.Records(compiler.Look{Units: "metric"})
	require.NoError(t, err)
	at := slices.IndexFunc(records, func(o compiler.Output) bool { return o.Name == "log-deck-gearbox-oil-six-metre-record.pdf" })
	require.GreaterOrEqual(t, at, 0)
	path := filepath.Join(t.TempDir(), "record.pdf")
	require.NoError(t, os.WriteFile(path, records[at].Bytes, 0o600))
	out, err := exec.Command(program, path, "-").Output()
	require.NoError(t, err)
	read := strings.Join(strings.Fields(string(out)), " ")
	for _, words := range []string{"Record sheet", "One column each time the job is done.", "Date", "Oil filled", "Hour meter", "Chain slack step 15 · mm · Limit 20 to 30 mm",
		"Outside the limit: Set the chain by its own card before the conveyor runs again.", "All steps done", "Initials", "Remarks"} {
		assert.Contains(t, read, words)
	}
}

const standsBy = `benchleaf = 1

[procedure]
title = "Look after the hand winch"
machine = "Hand winch"
revision = "A"
date = 2026-03-02
author = "T. Okafor"
who = "Mechanic"
hands-on = "20 min"
every = "50 h"
manual = "Operator's manual, section 3"
tools = []
supplies = []
spares = []
wear = []
cautions = []
no-isolation = "The winch lies on the bench"
no-close = "The last step is the look"

[part.drum-lid]

[part.clamp]
thread = "M8"
across = "13 mm"
torque = "20 to 24 N·m" # operator's manual, page 31
condition = "dry"
[[step.allow]]
`

// The sheet tells where a figure is from, how the machine stands, what was found and
// what is accepted with its reason. Read back by poppler's pdftotext.
func TestAnApprovalSheetTellsWhatToSign(t *testing.T) {
	program := needs(t, "pdftotext")
	text := strings.Replace(standsBy, "[[step.allow]]\n", `
[[step]]
remove = "drum-lid"

[[step]]
measure = "the gap between pawl and wheel"
limit = "max 2 mm"
outside = "Renew the pawl."
reading = "Gap"

[[step]]
tighten = "clamp"
[[step.allow]]
rule = "tool/no-tool-fits"
reason = "The socket hangs on the winch"
`, 1)
	result := compiler.Compile(compiler.Input{Files: []*source.File{source.New("winch.toml", []byte(text))}})
	sheets, _, err := result.Approvals(compiler.Look{Units: "metric"})
	require.NoError(t, err)
	require.Len(t, sheets, 1)
	assert.Equal(t, "winch-approval.pdf", sheets[0].Name)
	path := filepath.Join(t.TempDir(), sheets[0].Name)
	require.NoError(t, os.WriteFile(path, sheets[0].Bytes, 0o600))
	out, err := exec.Command(program, "-layout", path, "-").Output()
	require.NoError(t, err)
	read := strings.Join(strings.Fields(string(out)), " ")
	for _, words := range []string{
		"Held back", "Errors: 1", "Departures accepted: 1", "Drum lid", "off", "The drum lid is taken off at step 1 and never put back",
		"Reason: The socket hangs on the winch", "Clamp, torque 20 to 24 N·m operator's manual, page 31 winch.toml:26",
		"max 2 mm — none written beside it", "Written by", "T. Okafor", "Approved by", "Signature",
	} {
		assert.Contains(t, read, words)
	}
}

// A wall chart shows every job and every point of its machine under its interval. Read
// back by poppler's pdftotext.
func TestAWallChartShowsWhatIsDue(t *testing.T) {
	program := needs(t, "pdftotext")
	charts, troubles, err := compileShop(t).Charts(compiler.Look{Units: "metric"})
	require.NoError(t, err)
	assert.Empty(t, troubles)
	var names []string
	for _, chart := range charts {
		names = append(names, chart.Name)
	}
	assert.Equal(t, []string{"band-mill-chart.pdf", "chipper-chart.pdf", "compressor-chart.pdf", "edger-chart.pdf", "log-deck-chart.pdf", "log-trailer-chart.pdf", "power-pack-chart.pdf"}, names)
	path := filepath.Join(t.TempDir(), "chart.pdf")
	require.NoError(t, os.WriteFile(path, charts[4].Bytes, 0o600))
	out, err := exec.Command(program, "-layout", path, "-").Output()
	require.NoError(t, err)
	read := strings.Join(strings.Fields(string(out)), " ")
	for _, words := range []string{"Log-deck conveyor", "Change the worm gearbox oil First at 300 h", "Grease the deck bearings", "2 × head bearings Lithium grease · 6 strokes", "2000", "whichever comes first"} {
		assert.Contains(t, read, words)
	}
}
