package main

import (
	"fmt"
	"slices"
	"strings"
)

// jobsOfMachine is how many procedures a machine of a typical shop has: five jobs at each of
// four stations.
const jobsOfMachine = 20

// screw is a thread with the socket of its hexagon head and its torque. The torques are
// plausible for class 8.8 and an oiled thread, as in the demonstration shop.
type screw struct {
	thread string
	across int // mm, ISO 4014
	torque string
}

var screws = []screw{{"M8", 13, "22 to 27 N·m"}, {"M10", 16, "44 to 52 N·m"}, {"M12", 18, "75 to 85 N·m"}, {"M16", 24, "185 to 205 N·m"}}

// station is a part of a machine that is serviced by itself.
type station struct {
	name, word   string
	guard, block screw
	guards, legs int // bolts of the guard and of the bearing block
	capacity     string
	oil          string
	ring         string
	every        int // hours between changes of its oil
	strokes      int
	slack        int // mm, the least
}

var machines = []string{"press", "saw", "crusher", "mixer", "conveyor", "planer", "winder", "sorter"}

// typicalShop is a shop of machines with stations that are greased, emptied and filled,
// opened, measured and set, the energy cut off and given back.
func typicalShop(procedures int, seed uint64) map[string]string {
	m := newMaker(seed)
	m.files["shop.toml"] = "benchleaf = 1\nuse = [\"shop/*.toml\", \"machines/*.toml\"]\n\n[shop]\ntitle = \"Harrow Lane Mill\"\nunits = \"both\"\nstock = \"a5\"\nreading-distance = \"500 mm\"\n"
	m.library()
	for made, n := 0, 1; made < procedures; n++ {
		name := fmt.Sprintf("%s-%03d", machines[n%len(machines)], n)
		places := m.machine(name)
		for _, place := range places {
			for _, job := range []func(*maker, string, station) (string, string){oilChange, greasing, beltChange, retightening, measuring} {
				if made == procedures {
					break
				}
				file, text := job(m, name, place)
				m.files[name+"-"+place.name+"-"+file+".toml"] = text
				made++
			}
		}
	}
	return m.files
}

// library describes the tools, fluids, consumables and spares of a typical shop.
func (m *maker) library() {
	var tools strings.Builder
	tools.WriteString("benchleaf = 1\n\n[tool.padlock]\nkind = \"lock\"\nwhere = \"Board 1\"\n\n[tool.tag]\ntitle = \"Lock-out tag\"\nkind = \"tag\"\nwhere = \"Board 1\"\n")
	for _, size := range []int{13, 16, 18, 24} {
		fmt.Fprintf(&tools, "\n[tool.socket-%[1]d]\nkind = \"socket\"\nsizes = \"%[1]d mm\"\ndrive = \"1/2\"\nwhere = \"Board 2\"\n", size)
	}
	tools.WriteString(`
[tool.ratchet]
kind = "ratchet"
drive = "1/2"
where = "Board 2"

[tool.torque-wrench-100]
kind = "torque-wrench"
range = "20 to 100 N·m"
drive = "1/2"
where = "Cabinet 1"

[tool.torque-wrench-300]
kind = "torque-wrench"
range = "60 to 300 N·m"
drive = "1/2"
where = "Cabinet 1"

[tool.pan]
title = "Drain pan, 8 L"
kind = "container"
holds = "8 L"
where = "Oil room"

[tool.funnel]
title = "Funnel"
kind = "funnel"
where = "Oil room"

[tool.brush]
title = "Soft brush"
kind = "brush"
where = "Board 3"

[tool.lamp]
title = "Hand lamp"
kind = "light"
where = "Board 3"

[tool.rule]
title = "Steel rule, 300 mm"
kind = "measure"
range = "0 to 300 mm"
where = "Board 3"

[tool.grease-gun]
title = "Grease gun"
kind = "grease-gun"
where = "Oil room"
`)
	m.files["shop/tools.toml"] = tools.String()
	var fluids strings.Builder
	fluids.WriteString("benchleaf = 1\n\n[fluid.grease]\ntitle = \"Lithium grease\"\nkind = \"grease\"\ngrade = \"NLGI 2\"\nthickener = \"lithium\"\npacks = [\"400 g\"]\nstroke = \"1.2 g\"\nwhere = \"Oil room\"\nsheet = \"Sheet 1\"\n")
	for i, grade := range []int{150, 220, 320, 460} {
		fmt.Fprintf(&fluids, "\n[fluid.gear-%[1]d]\ntitle = \"Gear oil %[1]d\"\nkind = \"gear-oil\"\ngrade = \"ISO VG %[1]d\"\npacks = [\"1 L\", \"5 L\", \"20 L\"]\nwhere = \"Oil room, shelf %[2]d\"\nsheet = \"Sheet %[3]d\"\n", grade, i+1, i+2)
	}
	m.files["shop/fluids.toml"] = fluids.String()
	m.files["shop/supplies.toml"] = "benchleaf = 1\n\n[supply.rags]\ntitle = \"Lint-free rags\"\nwhere = \"Oil room\"\n\n[supply.absorbent]\ntitle = \"Oil absorbent\"\npacks = [\"10 kg\"]\nwhere = \"Oil room\"\n"
	m.files["shop/spares.toml"] = "benchleaf = 1\n\n[spare.ring-22]\ntitle = \"sealing ring 22 × 27 mm, copper\"\nnumber = \"R-2227\"\nwhere = \"Drawer 4\"\n" +
		"\n[spare.belt]\ntitle = \"drive belt\"\nnumber = \"B-1600\"\nwhere = \"Belt rack\"\n"
}

// machine describes a machine with its four stations.
func (m *maker) machine(name string) []station {
	var out strings.Builder
	kind, number, _ := strings.Cut(name, "-")
	title := strings.ToUpper(kind[:1]) + kind[1:] + " " + number
	fmt.Fprintf(&out, "benchleaf = 1\n\n[machine]\nname = %q\ntitle = %q\nmaker = %q\nmodel = \"%s %d\"\nmanual = \"Operator's manual of the %s, edition %d\"\nmeter = \"hours\"\n",
		name, title, one(m, "Own build", "Bought second-hand", "Built by the joiners of the mill"), one(m, "HL", "KT", "RS"), m.between(2, 90), kind, m.between(1, 6))
	switchName := fmt.Sprintf("Q%d", m.between(1, 40))
	fmt.Fprintf(&out, `
[energy.mains]
title = "mains"
kind = "electric"
voltage = "400 V"
isolate = "Turn isolator %[1]s on the %[2]s to OFF. Put your own lock and tag on it."
prove = "Press START at the %[3]s. Nothing moves."
restore = "Call “clear”. Take your lock and tag off, and turn %[1]s to ON."
tools = ["padlock", "tag"]
`, switchName, one(m, "wall", "post", "frame"), kind)
	var places []station
	for range jobsOfMachine / 5 {
		if len(m.places) == 0 { // so that every four machines have all stations
			m.places = m.pick.Perm(len(stations))
		}
		at := m.places[0]
		m.places = m.places[1:]
		s := station{name: stations[at], word: stations[at], guard: one(m, screws[:3]...), block: one(m, screws[1:]...), guards: 2 * m.between(2, 4), legs: 2 * m.between(2, 3),
			capacity: fmt.Sprintf("%d.%d L", m.between(0, 5), m.between(4, 9)), oil: fmt.Sprintf("gear-%d", one(m, 150, 220, 320, 460)), ring: "ring-22",
			every: 500 * m.between(2, 8), strokes: m.between(2, 8), slack: m.between(8, 24)}
		places = append(places, s)
		fmt.Fprintf(&out, `
[cover.%[1]s-guard]
title = "%[1]s guard"
guards = ["mains"]
count = %[2]d
thread = "%[3]s"
class = "8.8"
torque = "%[4]s" # plausible for an oiled thread of class 8.8
condition = "oiled"
order = "cross"

[cavity.%[1]s-gearbox]
title = "%[1]s gearbox"
fluid = "%[5]s"
capacity = "%[6]s"
drain = "%[1]s-drain-plug"
fill = "%[1]s-fill-plug"
level = "%[1]s-sight-glass"
hazards = ["hot"]

[part.%[1]s-drain-plug]
title = "%[1]s drain plug"
thread = "M22x1.5"
head = "hex"
across = "24 mm"
torque = "42 to 48 N·m" # common practice, no source
condition = "dry"
seals = ["%[7]s"]

[part.%[1]s-fill-plug]
title = "%[1]s fill plug"
thread = "M22x1.5"
head = "hex"
across = "24 mm"
torque = "42 to 48 N·m" # common practice, no source
condition = "dry"
seals = ["%[7]s"]

[part.%[1]s-sight-glass]
title = "%[1]s sight glass"
head = "none"

[part.%[1]s-belt]
title = "%[1]s belt"
head = "none"
hazards = ["pinch"]
behind = ["%[1]s-guard"]

[part.%[1]s-block-bolts]
title = "%[1]s block bolts"
count = %[8]d
thread = "%[9]s"
class = "8.8"
torque = "%[10]s" # plausible for an oiled thread of class 8.8
condition = "oiled"
order = "cross"
behind = ["%[1]s-guard"]

[point.%[1]s-bearings]
title = "%[1]s bearings"
count = 2
fluid = "grease"
amount = "%[11]d strokes"
until = "clean grease shows at the seal"
tool = ["grease-gun"]
every = "%[12]d h"
behind = ["%[1]s-guard"]

[limit.%[1]s-slack]
title = "slack of the %[1]s belt"
how = "Press the belt in at mid span, and measure how far it goes."
new = "%[13]d mm"
limit = "%[13]d to %[14]d mm" # about 2 %% of the span; common practice, no source
outside = "Renew the belt by its own card before the machine runs again."
tool = ["rule"]
behind = ["%[1]s-guard"]
`, s.name, s.guards, s.guard.thread, s.guard.torque, s.oil, s.capacity, s.ring, s.legs, s.block.thread, s.block.torque, s.strokes, 50*m.between(1, 6), s.slack, s.slack+m.between(6, 12))
	}
	m.files["machines/"+name+".toml"] = out.String()
	return places
}

// job writes a procedure of a machine whose mains are cut off.
type job struct {
	title, summary   string
	machine          string
	minutes, wait    int // hands-on, and what else passes
	every            int // hours
	start, end       []string
	tools, supplies  []string
	spares, cautions []string
	prepare          string // before the mains are cut off
	steps, close     string
}

func (m *maker) written(j job) string {
	var out strings.Builder
	fmt.Fprintf(&out, "benchleaf = 1\n\n[procedure]\ntitle = %q\nmachine = %q\nsummary = %q\nrevision = %q\ndate = %s\nauthor = %q\nchecked = %q\nwho = %q\n",
		j.title, j.machine, j.summary, one(m, "A", "B", "C", "D"), m.date(), m.author(), one(m, "M. Skerry", "L. Vance", "K. Orde"), one(m, "Mechanic trained on lock-out", "Fitter of the day shift, trained on lock-out"))
	fmt.Fprintf(&out, "hands-on = \"%d min\"\n", j.minutes)
	if j.wait > 0 {
		fmt.Fprintf(&out, "elapsed = \"%d min\"\n", j.minutes+j.wait)
	}
	fmt.Fprintf(&out, "every = \"%d h\"\nstart = %s\nend = %s\n", j.every, names(j.start...), names(j.end...))
	fmt.Fprintf(&out, "tools = %s\nsupplies = %s\nspares = %s\n", names(append([]string{"padlock", "tag"}, j.tools...)...), names(j.supplies...), names(j.spares...))
	fmt.Fprintf(&out, "wear = [\"eye-protection\", \"gloves\", \"safety-shoes\"]\ncautions = %s\nmanual = \"section %d.%d\"\n",
		names(append([]string{"start", "guard"}, j.cautions...)...), m.between(2, 9), m.between(1, 12))
	out.WriteString(j.prepare + "\n[[prepare]]\nisolate = \"mains\"\n\n[[prepare]]\nprove = \"mains\"\n" + j.steps + "\n[[close]]\nrestore = \"mains\"\n" + j.close)
	return out.String()
}

// wrench is the torque wrench whose range covers a screw.
func (s screw) wrench() string {
	if s.thread == "M16" {
		return "torque-wrench-300"
	}
	return "torque-wrench-100"
}

func (s screw) tools() []string {
	return []string{fmt.Sprintf("socket-%d", s.across), "ratchet", s.wrench()}
}

// all are the names of several lists, each once.
func all(lists ...[]string) []string {
	var out []string
	for _, name := range slices.Concat(lists...) {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

func (m *maker) tryOut(s station, least int) string {
	return fmt.Sprintf("\n[[close]]\nrun = \"the empty machine\"\nleast = \"%d min\"\nexpect = %q\noutside = %q\n", least,
		fmt.Sprintf(one(m, "no knock at the %s end", "no rumble and no smell at the %s end", "a steady sound at the %s end"), s.word),
		one(m, "Stop, isolate, and call a mechanic.", "Stop, isolate, and look at the work again."))
}

func oilChange(m *maker, machine string, s station) (string, string) {
	wait := 5 * m.between(2, 4)
	run := m.between(5, 10)
	steps := strings.ReplaceAll(fmt.Sprintf(`
[[step]]
stage = "Open and drain"
clean = "%s"
tools = ["brush"]
supplies = { rags = %d }

[[step]]
remove = "S-fill-plug"
notes = ["It lets air in, so that the oil runs freely."]

[[step]]
remove = "S-drain-plug"

[[step]]
drain = "S-gearbox"
into = "pan"
supplies = { absorbent = "0.%d kg" }

[[step]]
wait = "%d min"
until = "the last thread of oil breaks into drops"

[[step]]
inspect = "the drained oil against the light"
tools = ["lamp"]
expect = "%s"
outside = "%s"
meanwhile = true

[[step]]
stage = "Close and fill"
refit = "S-drain-plug"

[[step]]
tighten = "S-drain-plug"

[[step]]
fill = "S-gearbox"
tools = ["funnel"]
until = "the oil stands at the middle of the sight glass"

[[step]]
refit = "S-fill-plug"

[[step]]
tighten = "S-fill-plug"
`, one(m, "the housing round both plugs", "the rims of both plugs", "both plugs and the rims round them"), m.between(1, 3), m.between(2, 8), wait,
		one(m, "clear, with a little grey paste", "brown and clear, no flakes", "dark, and no grit between the fingers"),
		one(m, "Keep a sample, and call the foreman before you fill.", "Call a mechanic before you fill.")), "S-", s.name+"-")
	return "oil", m.written(job{
		title: fmt.Sprintf("Change the oil of the %s gearbox", s.word), machine: machine,
		summary: one(m, "Drains the oil and what has worn off while it is warm, and fills fresh oil to the glass.", "Takes the old oil out while it is warm, and puts new oil in."),
		minutes: 5 * m.between(6, 10), wait: wait + run, every: s.every,
		start: []string{one(m, "The machine is empty.", "Nothing lies on the machine.")}, end: []string{"No drip at either plug after the trial run."},
		tools: []string{"socket-24", "ratchet", "torque-wrench-100", "pan", "funnel", "brush", "lamp"}, supplies: []string{s.oil, "rags", "absorbent"},
		spares: []string{s.ring}, cautions: []string{"hot", "used-oil"},
		prepare: fmt.Sprintf("\n[[prepare]]\nrun = \"the empty machine\"\nleast = \"%d min\"\nuntil = \"the gearbox is hand-warm\"\n", run), steps: steps,
		close: m.tryOut(s, m.between(3, 6)) + "\n[[close]]\ndispose = \"the used oil\"\nsay = \"Pour it into the drum marked USED OIL.\"\nsupplies = { rags = 1 }\n",
	})
}

func greasing(m *maker, machine string, s station) (string, string) {
	steps := strings.ReplaceAll(fmt.Sprintf(`
[[step]]
remove = "S-guard"

[[step]]
clean = "%s"
supplies = { rags = %d }
notes = ["%s"]

[[step]]
grease = "S-bearings"

[[step]]
inspect = "the %s seals all round"
tools = ["lamp"]
expect = "%s"
outside = "Call a mechanic before the machine runs again."

[[step]]
clean = "%s"
supplies = { rags = 1 }

[[step]]
refit = "S-guard"

[[step]]
tighten = "S-guard"
`, one(m, "both fittings", "both fittings and their caps", "the fittings and the seals round them"), m.between(1, 2), one(m, "Grit on the fitting goes straight into the bearing.", "Dirt goes in with the grease."),
		s.word, one(m, "a thin clean collar, no water", "a clean collar, no rollers to be seen", "no tear, no loose lip"), one(m, "the grease off the frame and the floor", "the shaft beside the seals")), "S-", s.name+"-")
	return "grease", m.written(job{
		title: fmt.Sprintf("Grease the %s bearings", s.word), machine: machine, summary: "Presses clean grease in, and looks at the seals.",
		minutes: 5 * m.between(2, 5), every: 50 * m.between(1, 6), start: []string{"The machine is empty."}, end: []string{"Clean grease stands at both seals.", "The guard is on and the lock is off."},
		tools: all(s.guard.tools(), []string{"grease-gun", "lamp"}), supplies: []string{"grease", "rags"}, cautions: []string{"pinch"},
		steps: steps, close: m.tryOut(s, m.between(1, 4)),
	})
}

func beltChange(m *maker, machine string, s station) (string, string) {
	steps := strings.ReplaceAll(fmt.Sprintf(`
[[step]]
stage = "Open"
remove = "S-guard"

[[step]]
inspect = "both pulleys in line with a lamp behind the rule"
tools = ["lamp", "rule"]
expect = "%s"
outside = "%s"

[[step]]
stage = "Renew"
loosen = "S-block-bolts"

[[step]]
replace = "S-belt"
spares = ["belt"]
say = "%s"

[[step]]
tighten = "S-block-bolts"

[[step]]
measure = "S-slack"
reading = "Slack"

[[step]]
stage = "Close"
refit = "S-guard"

[[step]]
tighten = "S-guard"
`, one(m, "no light between rule and rim", "the rule lies on all four rims", "no step from rim to rim"), one(m, "Call a mechanic to set the pulleys.", "Have the pulleys set before the new belt goes on."),
		one(m, "Slide the block in, and lay the new belt into both grooves.", "Slide the block in. Take the old belt off, and put the new one on by hand.")), "S-", s.name+"-")
	return "belt", m.written(job{
		title: fmt.Sprintf("Renew the %s belt", s.word), machine: machine, summary: one(m, "Puts a new belt on, and sets how far it gives.", "Renews the belt before it slips."),
		minutes: 5 * m.between(6, 12), every: 500 * m.between(3, 9), start: []string{"The machine is empty."}, end: []string{"The guard is on and the lock is off."},
		tools: all(s.guard.tools(), s.block.tools(), []string{"lamp", "rule"}), supplies: nil, spares: []string{"belt"}, cautions: []string{"pinch"},
		steps: steps, close: m.tryOut(s, m.between(2, 6)),
	})
}

func retightening(m *maker, machine string, s station) (string, string) {
	steps := strings.ReplaceAll(fmt.Sprintf(`
[[step]]
remove = "S-guard"

[[step]]
clean = "%s"
tools = ["brush"]

[[step]]
inspect = "%s"
tools = ["lamp"]
expect = "%s"
outside = "%s"

[[step]]
loosen = "S-block-bolts"

[[step]]
tighten = "S-block-bolts"

[[step]]
measure = "S-slack"
reading = "Slack"

[[step]]
refit = "S-guard"

[[step]]
tighten = "S-guard"
`, one(m, "the heads of the block bolts", "the block and the frame beside it"), one(m, "the block for cracks", "the frame round the block"), one(m, "no crack from any bolt", "no crack, no rust that runs out of a gap"),
		one(m, "Leave the lock on, and call the foreman.", "Leave the machine cut off, and call the foreman.")), "S-", s.name+"-")
	return "bolts", m.written(job{
		title: fmt.Sprintf("Retighten the %s block", s.word), machine: machine, summary: "Loosens the bolts one after the other and sets them to their torque again.",
		minutes: 5 * m.between(4, 8), every: 250 * m.between(2, 8), start: []string{"The machine is empty."}, end: []string{"The guard is on and the lock is off."},
		tools: all(s.guard.tools(), s.block.tools(), []string{"brush", "lamp", "rule"}), cautions: []string{"pinch"},
		steps: steps, close: m.tryOut(s, m.between(2, 6)),
	})
}

func measuring(m *maker, machine string, s station) (string, string) {
	steps := strings.ReplaceAll(fmt.Sprintf(`
[[step]]
remove = "S-guard"

[[step]]
clean = "%s"
tools = ["brush"]
supplies = { rags = %d }

[[step]]
measure = "S-slack"
reading = "Slack"

[[step]]
inspect = "S-belt"
tools = ["lamp"]
expect = "%s"
outside = "Renew the belt by its own card."

[[step]]
inspect = "%s"
tools = ["lamp"]
expect = "%s"
outside = "%s"

[[step]]
refit = "S-guard"

[[step]]
tighten = "S-guard"
`, one(m, "the dust off the belt and both pulleys", "the inside of the guard", "the frame below the belt"), m.between(1, 3), one(m, "no crack, no shine on the sides", "no fray, no cord to be seen"),
		one(m, "both pulleys", "the bearings from the side"), one(m, "no worn groove, no play by hand", "nothing loose by hand"), one(m, "Call a mechanic before the machine runs again.", "Leave the lock on, and call a mechanic.")), "S-", s.name+"-")
	return "slack", m.written(job{
		title: fmt.Sprintf("Measure the %s belt", s.word), machine: machine, summary: one(m, "Tells by the slack when the belt is to be renewed.", "Finds a worn belt before it tears."),
		minutes: 5 * m.between(2, 5), every: 100 * m.between(1, 8), start: []string{"The machine is empty."}, end: []string{"The guard is on and the lock is off."},
		tools: all(s.guard.tools(), []string{"brush", "lamp", "rule"}), supplies: []string{"rags"}, cautions: []string{"pinch"},
		steps: steps, close: m.tryOut(s, m.between(1, 4)),
	})
}
