package compiler_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler"
	"benchleaf/compiler/source"
)

const deck = `benchleaf = 1
[[allow]]
rule = "units/disagree"
reason = "as the plate on the deck has it"
[machine]
title = "Log deck"
manual = "Operator's manual"
[part.plug]
across = "16 mm"
torque = "42 N·m (35 lbf·ft)"
condition = "dry"
[tool.wrench-16]
kind = "wrench"
sizes = "16 mm"
`

const look = `benchleaf = 1
use = ["deck.toml"]
[procedure]
title = "Loosen the plug"
machine = "deck"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Mechanic"
hands-on = "30 min"
every = "500 h"
no-isolation = "On the bench"
no-close = "Nothing is opened"
end = ["The plug stays loose."]
tools = ["wrench-16"]
supplies = []
spares = []
wear = []
[[step]]
loosen = "plug"
`

// A machine's file stands by its own plate figures, for every card of the machine.
func TestAFileStandsByItsOwnFindings(t *testing.T) {
	result := compiler.Compile(compiler.Input{Files: []*source.File{source.New("deck.toml", []byte(deck)), source.New("look.toml", []byte(look))}})
	assert.Empty(t, result.Findings)
	require.Len(t, result.Jobs, 1)
	assert.False(t, result.Jobs[0].Blocked)
	require.NotEmpty(t, result.Allowed)
	assert.Equal(t, "units/disagree", result.Allowed[0].Rule)
	only := compiler.Compile(compiler.Input{Files: []*source.File{source.New("deck.toml", []byte(deck)), source.New("look.toml", []byte(look))}, Targets: []string{"look.toml"}})
	assert.Empty(t, only.Findings)
	assert.False(t, only.Jobs[0].Blocked)
}
