package main

import (
	"fmt"
	"strings"
)

// sights are what is looked at from outside the guards, with what is to be seen there and what
// is done where it is not.
var sights = []struct{ what, expect, outside string }{
	{"the oil level in the sight glass", "between the two marks", "Fill it by its own card before the next shift."},
	{"the belts through the slots of the guard", "no fray, no shine on the sides", "Renew the belts by their own card."},
	{"the anchor bolts at the feet", "no gap under a washer, no bright rim", "Call a mechanic before the next shift."},
	{"the hoses along the frame", "dry all along, no blister", "Stop the machine, and call a mechanic."},
	{"the lamp on the control box", "it is lit and steady", "Call an electrician."},
	{"the seals of the bearings", "a thin clean collar of grease", "Grease the bearings by their own card."},
	{"the floor below the housing", "dry", "Find where it drips from, and call a mechanic."},
	{"the plate with the safety signs", "there, clean and whole", "Put up a new plate before the next shift."},
	{"the cooling fins of the motor", "free of dust between all fins", "Clean the fins by their own card."},
	{"the cover of the chain", "closed all round, no dent that touches", "Stop the machine, and call a mechanic."},
	{"the indicator of the filter", "green", "Change the filter by its own card."},
	{"the cable where it goes into the motor", "no crack, no bare wire", "Stop the machine, and call an electrician."},
}

var stations = []string{"north", "south", "upper", "lower", "left", "right", "middle", "front", "rear", "tail", "head", "outer", "inner", "first", "second", "third"}

// plainShop is a shop of one machine and its inspection cards, each in a file of its own.
func plainShop(procedures int, seed uint64) map[string]string {
	m := newMaker(seed)
	m.files["shop.toml"] = "benchleaf = 1\nuse = [\"machines/*.toml\"]\n\n[shop]\ntitle = \"Coldwater Works\"\nunits = \"metric\"\nstock = \"a5\"\n"
	m.files["machines/line.toml"] = "benchleaf = 1\n\n[machine]\nname = \"line\"\ntitle = \"Grading line\"\nmaker = \"Own build\"\nmodel = \"GL 4\"\n" +
		"manual = \"Operator's manual GL 4\"\nmeter = \"hours\"\n"
	for n := range procedures {
		name, text := m.plainCard(n)
		m.files[name] = text
	}
	return m.files
}

func (m *maker) plainCard(n int) (name, text string) {
	var out strings.Builder
	station := fmt.Sprintf("%s station %d", stations[n%len(stations)], n/len(stations)+1)
	minutes := m.between(3, 12)
	fmt.Fprintf(&out, "benchleaf = 1\n\n[procedure]\ntitle = \"Look over the %s\"\nmachine = \"line\"\nrevision = \"%s\"\ndate = %s\nauthor = \"%s\"\n",
		station, one(m, "A", "B", "C", "D"), m.date(), m.author())
	fmt.Fprintf(&out, "who = \"Anyone who runs the line\"\nhands-on = \"%d min\"\nevery = \"%d h\"\n", minutes, 10*m.between(2, 50))
	out.WriteString("no-isolation = \"Nothing is touched; look from outside the guards\"\nno-close = \"Nothing is opened\"\n" +
		"tools = []\nsupplies = []\nspares = []\nwear = [\"eye-protection\"]\n")
	fmt.Fprintf(&out, "manual = \"section %d.%d\"\n", m.between(2, 9), m.between(1, 12))
	for _, at := range m.pick.Perm(len(sights))[:3] {
		sight := sights[at]
		fmt.Fprintf(&out, "\n[[step]]\ninspect = %q\nexpect = %q\noutside = %q\n", sight.what, sight.expect, sight.outside)
	}
	return fmt.Sprintf("look-over-%05d.toml", n+1), out.String()
}
