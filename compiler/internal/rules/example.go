package rules

import "strings"

// setting is the file the examples of the rules stand in: a procedure that is
// clean with the step each example adds.
const setting = version + procedure

const version = `benchleaf = 1
`

const procedure = `
[procedure]
title = "Change the worm gearbox oil"
machine = "Log-deck conveyor"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Mechanic"
hands-on = "30 min"
every = "500 h"
no-close = "Nothing is opened"
manual = "Operator's manual, section 6"
` + goesOn

// goesOn lets an example leave undone what it is not about.
const goesOn = `end = ["The work goes on by the next card."]
`

// whole is a setting of a job that ends with its last step.
func whole(setting string) string { return strings.Replace(setting, goesOn, "", 1) }

// gearbox leaves the lists of tools and the isolation to the example.
const gearbox = setting + `supplies = []
spares = []
wear = []
`

// tested is a job that ends with a test of the machine, so that it needs no reason for
// having none.
var tested = strings.Replace(gearbox, "no-close = \"Nothing is opened\"\n", "", 1)

// bench is a job on the bench, where nothing needs to be isolated; the list of
// tools is left to the example.
const bench = gearbox + `no-isolation = "Shown on a gearbox on the bench"
`

// quiet is a job on the bench that needs nothing to be brought.
const quiet = bench + `tools = []
`

// worn is a job on the bench with protective equipment for all that the examples do.
const worn = setting + `no-isolation = "Shown on the bench"
supplies = []
spares = []
tools = []
wear = ["cut-resistant-gloves", "eye-protection", "helmet", "face-shield"]
`

// walled is a job on the bench in a shop with a few tools on the wall; the list of
// tools is left to the example.
const walled = version + wall + procedure + `no-isolation = "Shown on a gearbox on the bench"
supplies = []
spares = []
wear = []
`

const wall = `[tool.socket-16]
kind = "socket"
sizes = "16 mm"
drive = "1/2"
[tool.wrench-16]
kind = "wrench"
sizes = "16 mm"
[tool.wrench-17]
kind = "wrench"
sizes = "17 mm"
[tool.ratchet]
kind = "ratchet"
drive = "1/2"
[tool.torque-wrench]
kind = "torque-wrench"
drive = "1/2"
range = "20 to 100 N·m"
[tool.torque-wrench-300]
kind = "torque-wrench"
drive = "1/2"
range = "60 to 300 N·m"
`
