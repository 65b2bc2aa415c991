package model

import (
	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/pattern"
)

var dayPattern = pattern.MustCompile(`^\d{4}-\d{2}-\d{2}$`)

// Rules lists what reading a file into the model can find wrong.
func Rules() []finding.Rule {
	return []finding.Rule{
		emptyFile, noVersion, newerVersion, unknownKey, missingKey, wrongKind, unknownWord, emptyText, badName, noVerb, twoVerbs, noProcedure,
		unknownName, notInVariant, wrongThing, nameTwice, missingFile, outsideShop, useLoop, nothingRead,
	}
}

const head = "benchleaf = 1\n"

const lone = `benchleaf = 1
[procedure]
title = "Look over the chain oiler"
machine = "Log-deck conveyor"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Anyone who runs the deck"
hands-on = "5 min"
every = "50 h"
no-isolation = "Nothing is touched"
no-close = "Nothing is opened"
tools = []
supplies = []
spares = []
wear = []
manual = "Operator's manual, section 4"
`

var (
	emptyFile = finding.Rule{ID: "language/empty-file", Severity: finding.Error, Title: "The file is empty",
		Why:    "An empty file is often a save that went wrong; it says nothing about any machine.",
		Source: "the language itself", Bad: "\n", Good: head}
	noVersion = finding.Rule{ID: "language/no-version", Severity: finding.Error, Title: "The file does not say its language version",
		Why:    "Without the version a later compiler cannot know how the file is meant.",
		Source: "the language itself", Bad: "[tool.rag-bin]\nkind = \"container\"\n", Good: head + "[tool.rag-bin]\nkind = \"container\"\n"}
	newerVersion = finding.Rule{ID: "language/newer-version", Severity: finding.Error, Title: "The file is written in a later language",
		Why:    "What a later language says could be misread here, and a misread procedure is worse than none.",
		Source: "the language itself", Bad: "benchleaf = 2\n", Good: head}
	unknownKey = finding.Rule{ID: "language/unknown-key", Severity: finding.Error, Title: "A key is not known",
		Why:    "A misspelt key would be left out of the card without a word.",
		Source: "the language itself", Setting: lone, Bad: "[[step]]\ninspect = \"the oil level\"\nexpct = \"between the marks\"\n", Good: "[[step]]\ninspect = \"the oil level\"\nexpect = \"between the marks\"\n"}
	missingKey = finding.Rule{ID: "language/missing-key", Severity: finding.Error, Title: "A key that is always needed is missing",
		Why:    "The card has a place for it that would stay empty.",
		Source: "the language itself", Setting: head, Bad: "[tool.rag-bin]\ntitle = \"Rag bin\"\n", Good: "[tool.rag-bin]\nkind = \"container\"\n"}
	wrongKind = finding.Rule{ID: "language/wrong-kind", Severity: finding.Error, Title: "A value is of the wrong kind",
		Why:    "A value of another kind cannot be read for what was meant.",
		Source: "the language itself", Setting: head, Bad: "[tool.rag-bin]\nkind = \"container\"\ncount = \"two\"\n", Good: "[tool.rag-bin]\nkind = \"container\"\ncount = 2\n"}
	unknownWord = finding.Rule{ID: "language/unknown-word", Severity: finding.Error, Title: "A word is not in the list the key knows",
		Why:    "A word out of the list has one meaning; another would be left out of every check.",
		Source: "the language itself", Setting: head, Bad: "[tool.rag-bin]\nkind = \"bucket\"\n", Good: "[tool.rag-bin]\nkind = \"container\"\n"}
	emptyText = finding.Rule{ID: "language/empty-text", Severity: finding.Error, Title: "A text is empty",
		Why:    "A blank that was never filled in would print as nothing.",
		Source: "the language itself", Setting: head, Bad: "[tool.rag-bin]\nkind = \"container\"\nwhere = \"\"\n", Good: "[tool.rag-bin]\nkind = \"container\"\nwhere = \"By the door\"\n"}
	badName = finding.Rule{ID: "language/bad-name", Severity: finding.Error, Title: "A short name is not lower case with hyphens",
		Why:    "One spelling for one thing: names are compared letter by letter.",
		Source: "the language itself", Setting: head, Bad: "[tool.Rag_Bin]\nkind = \"container\"\n", Good: "[tool.rag-bin]\nkind = \"container\"\n"}
	noVerb = finding.Rule{ID: "language/no-action", Severity: finding.Error, Title: "A step says nothing to do",
		Why:    "A step without a verb and without words prints as an empty line with a tick box.",
		Source: "the language itself", Setting: lone, Bad: "[[step]]\ntime = \"2 min\"\n", Good: "[[step]]\nsay = \"Look at the oiler.\"\ntime = \"2 min\"\n"}
	twoVerbs = finding.Rule{ID: "language/two-actions", Severity: finding.Error, Title: "A step has two verbs",
		Why:    "One tick box for two actions hides the one that was forgotten.",
		Source: "ASD-STE100 rule 5.2; DOE-STD-1029-92: one action a step", Setting: lone, Bad: "[[step]]\ninspect = \"the oil level\"\nclean = \"the sight glass\"\n",
		Good: "[[step]]\ninspect = \"the oil level\"\n[[step]]\nclean = \"the sight glass\"\n"}
	noProcedure = finding.Rule{ID: "language/steps-without-procedure", Severity: finding.Error, Title: "A file has steps and no [procedure]",
		Why:    "Steps without a procedure are printed on no card.",
		Source: "the language itself", Bad: head + "[[step]]\nsay = \"Look at the oiler.\"\n", Good: lone + "[[step]]\nsay = \"Look at the oiler.\"\n"}
	unknownName = finding.Rule{ID: "reference/unknown-name", Severity: finding.Error, Title: "A name is described nowhere",
		Why:    "What a name stands for – its torque, its fluid, its hazards – cannot be checked or printed.",
		Source: "the language itself", Setting: lone, Bad: "[[step]]\ninspect = \"chain\"\n", Good: "[[step]]\ninspect = \"chain\"\n[part.chain]\n"}
	notInVariant = finding.Rule{ID: "reference/not-in-variant", Severity: finding.Error, Title: "A thing is not on this version of the machine",
		Why:    "On this version the technician would look for a part that is not there.",
		Source: "the language itself", Setting: variants, Bad: "[[step]]\ninspect = \"chain\"\n", Good: "[[step]]\ninspect = \"chain\"\nfor = \"long\"\n[[step]]\nsay = \"Look at the belt.\"\nfor = \"short\"\n"}
	wrongThing = finding.Rule{ID: "reference/wrong-thing", Severity: finding.Error, Title: "A verb or key names a thing of another kind",
		Why:    "A plug cannot be filled and a gearbox has no torque: the check and the print would be of the wrong thing.",
		Source: "the language itself", Setting: lone, Bad: "[[step]]\ntighten = \"oiler\"\n[cavity.oiler]\n", Good: "[[step]]\ninspect = \"oiler\"\n[cavity.oiler]\n"}
	nameTwice = finding.Rule{ID: "reference/name-twice", Severity: finding.Error, Title: "Two things have one name",
		Why:    "Which of the two is meant would depend on the order of the files.",
		Source: "the language itself", Setting: head, Bad: "[part.guard]\n[cover.guard]\n", Good: "[part.guard-bolts]\n[cover.guard]\n"}
	missingFile = finding.Rule{ID: "reference/missing-file", Severity: finding.Error, Title: "A file that is used is not there",
		Why:    "Everything that file describes is missing from the checks and the card.",
		Source: "the language itself", Bad: "benchleaf = 1\nuse = [\"tools.toml\"]\n", Good: head}
	outsideShop = finding.Rule{ID: "reference/outside-shop", Severity: finding.Error, Title: "A file outside the shop folder is used",
		Why:    "A card must come out the same on every machine that has the shop folder, and nothing else is read.",
		Source: "the language itself", Bad: "benchleaf = 1\nuse = [\"../../tools.toml\"]\n", Good: head}
	nothingRead = finding.Rule{ID: "reference/nothing-read", Severity: finding.Error, Title: "A second reading of a file that is not there",
		Why:    "Nothing is held against it, and whoever read a second time believes that it is.",
		Source: "the language itself", Setting: head + "[second-reading]\nby = \"T. Okafor\"\ndate = 2026-02-20\nfrom = \"Operator's manual, page 41\"\n",
		Bad:  "[second-reading.part.plug]\nthread = \"M22x1.5\"\n",
		Good: "[second-reading.part.plug]\nthread = \"M22x1.5\"\n[part.plug]\nthread = \"M22x1.5\"\n"}
	useLoop = finding.Rule{ID: "reference/use-loop", Severity: finding.Error, Title: "Files use each other in a circle",
		Why:    "In a circle it is open whose names go before whose.",
		Source: "the language itself", Bad: "benchleaf = 1\nuse = [\"bad.toml\"]\n", Good: head}
)

const variants = lone + `[machine]
name = "log-deck-conveyor"
title = "Log-deck conveyor"
manual = "Operator's manual"
variants = ["short", "long"]
[part.chain]
for = "long"
`
