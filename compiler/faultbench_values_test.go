package compiler_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	held  = []string{"part", "cover"}
	every = []string{"part", "cover", "cavity", "point", "limit", "energy", "prepare", "step", "close"}
)

// fastenerFaults give a fastener the wrong figure, or leave one out.
var fastenerFaults = []faultKind{
	{name: "torque halved", family: "fastener", does: "Every figure of `torque` is halved", apply: change(held, []string{"torque"}, scale(0.5), tooled)},
	{name: "torque doubled", family: "fastener", does: "Every figure of `torque` is doubled", apply: change(held, []string{"torque"}, scale(2), tooled)},
	{name: "torque times ten", family: "fastener", does: "Every figure of `torque` is ten times as large", apply: change(held, []string{"torque"}, scale(10), tooled)},
	{name: "torque by ten", family: "fastener", does: "Every figure of `torque` is a tenth", apply: change(held, []string{"torque"}, scale(0.1), tooled)},
	{name: "newton metres for pound-feet", family: "fastener", does: "The unit of `torque` is changed to the other one, the figure stays", apply: change(held, []string{"torque"}, replace("N·m", "lbf·ft", "lbf·ft", "N·m"), tooled)},
	{name: "pound-inches for pound-feet", family: "fastener", does: "`lbf·ft` is written `lbf·in`", apply: change(held, []string{"torque"}, replace("lbf·ft", "lbf·in"), tooled)},
	{name: "nm for newton metres", family: "fastener", does: "`N·m` is written `nm`", apply: change(held, []string{"torque"}, replace("N·m", "nm"), tooled)},
	{name: "torque without a unit", family: "fastener", does: "The unit of `torque` is left out", apply: change(held, []string{"torque"}, replace(" N·m", "", " lbf·ft", ""), tooled)},
	{name: "torque dropped", family: "fastener", does: "`torque` is left out", apply: drop(held, []string{"torque"}, tooled)},
	{name: "condition dropped", family: "fastener", does: "`condition` is left out", apply: drop(held, []string{"condition"}, same)},
	{name: "oiled for dry", family: "fastener", does: "`condition` is changed, the torque stays", apply: change(held, []string{"condition"}, replace("dry", "oiled", "oiled", "dry"), same)},
	{name: "thread one size up", family: "fastener", does: "The next size of the same series is written", apply: change(held, []string{"thread"}, replace(nextThread...), tooled)},
	{name: "thread one size down", family: "fastener", does: "The size before of the same series is written", apply: change(held, []string{"thread"}, replace(threadBefore()...), tooled)},
	{name: "thread that does not exist", family: "fastener", does: "A size or a pitch nobody makes is written", apply: change(held, []string{"thread"}, noThread, tooled)},
	{name: "thread dropped", family: "fastener", does: "`thread` is left out", apply: drop(held, []string{"thread"}, tooled)},
	{name: "width one size up", family: "fastener", does: "`across` is the next width up", apply: change(held, []string{"across"}, width(1), tooled)},
	{name: "width one size down", family: "fastener", does: "`across` is the next width down", apply: change(held, []string{"across"}, width(-1), tooled)},
	{name: "class 12.9 for 8.8", family: "fastener", does: "A stronger class is written, the torque stays", apply: change(held, []string{"class"}, replace("8.8", "12.9", "10.9", "12.9", "grade 5", "grade 8"), same)},
	{name: "class 4.6 for 8.8", family: "fastener", does: "A weaker class is written, the torque stays", apply: change(held, []string{"class"}, replace("8.8", "4.6", "10.9", "4.6", "grade 5", "grade 2"), same)},
	{name: "class that does not exist", family: "fastener", does: "8.8 is written 8.6, grade 5 grade 6", apply: change(held, []string{"class"}, replace("8.8", "8.6", "10.9", "10.8", "grade 5", "grade 6"), same)},
	{name: "head changed", family: "fastener", does: "hex is written socket, and socket hex", apply: change(held, []string{"head"}, replace(`"hex"`, `"socket"`, `"socket"`, `"hex"`, `"nut"`, `"socket"`), tooled)},
	{name: "passes out of order", family: "fastener", does: "The last pass stands first", apply: change(held, []string{"passes"}, replace("[30, 60, 100]", "[100, 30, 60]", "[50, 100]", "[100, 50]"), same)},
	{name: "passes that end early", family: "fastener", does: "The last pass is 90 percent", apply: change(held, []string{"passes"}, replace("100]", "90]"), same)},
	{name: "seals dropped", family: "fastener", does: "`seals` is left out at the part, and still listed", apply: drop(held, []string{"seals"}, sealed)},
	{name: "product dropped", family: "fastener", does: "`product` is left out at a thread with thread-locker", apply: drop(held, []string{"product"}, func(f *folder, d damage, t table) damage { return same(f, d, t).list(f, "supplies") })},
	{name: "reach made longer", family: "fastener", does: "The head sits deeper than any socket", apply: change(held, []string{"reach"}, scale(5), tooled)},
	{name: "held-by dropped", family: "fastener", does: "`held-by` is left out", apply: drop(held, []string{"held-by"}, users)},
	{name: "count one up at the part", family: "fastener", does: "`count` is one more", apply: change(held, []string{"count"}, count(1), same)},
	{name: "count one down at the part", family: "fastener", does: "`count` is one less", apply: change(held, []string{"count"}, count(-1), same)},
	{name: "count one up at a step", family: "fastener", does: "`count` is one more", apply: change(stepKinds, []string{"count"}, count(1), same)},
	{name: "count one down at a step", family: "fastener", does: "`count` is one less", apply: change(stepKinds, []string{"count"}, count(-1), same)},
	{name: "by-hand dropped", family: "fastener", does: "`by-hand` is left out where no torque is known", apply: drop(stepKinds, []string{"by-hand"}, func(f *folder, d damage, _ table) damage { return d.list(f, "tools") })},
	{name: "adapter dropped", family: "fastener", does: "`adapter` is left out at a crowfoot", apply: drop(stepKinds, []string{"adapter"}, same)},
	{name: "adapter angle changed", family: "fastener", does: "`adapter` stands at 45°", apply: change(stepKinds, []string{"adapter"}, replace("0°", "45°"), same)},
	{name: "length of the crowfoot changed", family: "fastener", does: "The length at the step is not that of the tool", apply: change(stepKinds, []string{"adapter"}, replace(`length = "50 mm"`, `length = "80 mm"`), tooled)},
}

func sealed(f *folder, d damage, t table) damage { return same(f, d, t).list(f, "spares") }

var nextThread = []string{
	"3/8-16", "1/2-13", "1/2-13", "5/8-11", "M30x2", "M33x2", "M27x2", "M30x2", "M24x1.5", "M27x1.5", "M22x1.5", "M24x1.5", "M14x1.5", "M16x1.5",
	"M16", "M18", "M12", "M14", "M10", "M12", "M8", "M10", "M6", "M8",
}

func threadBefore() []string {
	before := []string{"3/8-16", "5/16-18", "1/2-13", "3/8-16", "M30x2", "M27x2", "M27x2", "M24x2", "M24x1.5", "M22x1.5", "M22x1.5", "M20x1.5", "M14x1.5", "M12x1.5"}
	return append(before, "M16", "M14", "M12", "M10", "M10", "M8", "M8", "M6", "M6", "M5")
}

func noThread(value string) (string, bool) {
	if to, ok := replace("x1.5", "x1.4", "x2", "x2.2", "-16", "-17", "-13", "-14")(value); ok {
		return to, true
	}
	return strings.TrimSuffix(value, `"`) + `.5"`, true
}

var widths = []string{"7", "8", "10", "13", "16", "17", "18", "19", "21", "22", "24", "27", "30", "32", "34", "36", "41", "46", "50"}

func width(by int) func(string) (string, bool) {
	return func(value string) (string, bool) {
		at := slices.Index(widths, strings.TrimSuffix(strings.Trim(value, `"`), " mm"))
		if at < 0 {
			return value, false
		}
		return `"` + widths[at+by] + ` mm"`, true
	}
}

func count(by int) func(string) (string, bool) {
	return func(value string) (string, bool) {
		n, err := strconv.Atoi(value)
		return strconv.Itoa(n + by), err == nil && n+by > 0
	}
}

var (
	fluidKeys = []string{"amount", "capacity"}
	holders   = append([]string{"cavity", "point"}, stepKinds...)
)

// fluidFaults give the wrong fluid, the wrong amount, or nothing to catch it in.
var fluidFaults = []faultKind{
	{name: "amount halved", family: "fluid", does: "`amount` or `capacity` is halved", apply: change(holders, fluidKeys, scale(0.5), same)},
	{name: "amount doubled", family: "fluid", does: "`amount` or `capacity` is doubled", apply: change(holders, fluidKeys, scale(2), same)},
	{name: "amount times ten", family: "fluid", does: "`amount` or `capacity` is ten times as large", apply: change(holders, fluidKeys, scale(10), same)},
	{name: "amount without a unit", family: "fluid", does: "The unit is left out", apply: change(holders, fluidKeys, unitless, same)},
	{name: "millilitres for litres", family: "fluid", does: "`L` is written `mL`, `g` `kg`, `US qt` `US gal`", apply: change(holders, fluidKeys, replace(` mL"`, ` L"`, ` L"`, ` mL"`, ` g"`, ` kg"`, ` US qt"`, ` US gal"`), same)},
	{name: "gallon or ounce of no country", family: "fluid", does: "`US qt` is written `qt`, `mL` `oz`", apply: change(holders, fluidKeys, replace(" US qt", " qt", " mL", " oz"), same)},
	{name: "amount dropped", family: "fluid", does: "`amount` or `capacity` is left out", apply: drop(holders, fluidKeys, same)},
	{name: "fluid dropped", family: "fluid", does: "`fluid` is left out", apply: drop(holders, []string{"fluid"}, func(f *folder, d damage, t table) damage { return same(f, d, t).list(f, "supplies") })},
	{name: "fluid changed", family: "fluid", does: "Another fluid of the shop is written", apply: change(holders, []string{"fluid"}, otherFluid, func(f *folder, d damage, t table) damage { return same(f, d, t).list(f, "supplies") })},
	{name: "grade changed", family: "fluid", does: "ISO VG or NLGI is another grade", apply: change([]string{"fluid"}, []string{"grade"}, replace("VG 460", "VG 46", "VG 46", "VG 460", "VG 100", "VG 10", "VG 150", "VG 15", "NLGI 2", "NLGI 0"), users)},
	{name: "grade that does not exist", family: "fluid", does: "VG 460 is written VG 450, NLGI 2 NLGI 7", apply: change([]string{"fluid"}, []string{"grade"}, replace("VG 460", "VG 450", "VG 46", "VG 45", "VG 100", "VG 110", "VG 150", "VG 160", "NLGI 2", "NLGI 7"), users)},
	{name: "thickener changed", family: "fluid", does: "lithium is written polyurea or clay", apply: change([]string{"fluid"}, []string{"thickener"}, replace("lithium-complex", "polyurea", "lithium", "polyurea"), users)},
	{name: "kind of fluid changed", family: "fluid", does: "Gear oil is written hydraulic oil, hydraulic oil engine oil", apply: change([]string{"fluid"}, []string{"kind"}, replace("gear-oil", "hydraulic-oil", "hydraulic-oil", "engine-oil", "compressor-oil", "engine-oil"), users)},
	{name: "into dropped", family: "fluid", does: "No container at a drain", apply: drop(stepKinds, []string{"into"}, func(f *folder, d damage, t table) damage { return d.list(f, "tools") })},
	{name: "container too small", family: "fluid", does: "What a container holds is a tenth", apply: change([]string{"tool"}, []string{"holds"}, containerOnly, users)},
	{name: "smaller container at the drain", family: "fluid", does: "Another container of the shop stands at the drain and in the list", apply: smallerContainer},
	{name: "until dropped", family: "fluid", does: "Nothing says when a drain or a bleeding is done, and no level is looked at", apply: dropUntil},
	{name: "pack without a unit", family: "fluid", does: "The unit of `packs` is left out", apply: change([]string{"fluid", "supply"}, []string{"packs"}, unitless, users)},
	{name: "drain plug dropped at the cavity", family: "fluid", does: "`drain` or `fill` of a cavity is left out", apply: drop([]string{"cavity"}, []string{"drain", "fill"}, users)},
	{name: "variants changed over", family: "fluid", does: "The values of two versions of the machine change places", apply: swapVariants},
}

func dropUntil(_ *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.steps() {
		if one, ok := t.entry("until"); ok && t.does("drain", "bleed") {
			out = append(out, s.cut(t, one))
		}
	}
	return out
}

var unitForm = regexp.MustCompile(`(\d) ([A-Za-z][^"]*)"`)

func unitless(value string) (string, bool) {
	return unitForm.ReplaceAllString(value, `$1"`), unitForm.MatchString(value)
}

func otherFluid(value string) (string, bool) {
	return replace("gear-460", "hydraulic-46", "hydraulic-46", "gear-460", "compressor-100", "hydraulic-46", "bearing-grease", "grease-2", "grease-2", "bearing-grease", "chain-oil", "gear-460")(value)
}

// containerOnly shrinks what is in litres, and leaves alone what is in kilograms.
func containerOnly(value string) (string, bool) {
	return scaled(value, 0.02), strings.Contains(value, " L")
}

func smallerContainer(f *folder, s *sheet) []damage {
	var out []damage
	procedure, ok := s.table("procedure", "")
	tools, _ := procedure.entry("tools")
	for _, t := range s.steps() {
		one, has := t.entry("into")
		small, smaller := replace("drain-drum-60", "drain-pan-8", "drain-pan-8", "cup", "drip-tray", "cup")(one.value)
		if !ok || !has || !smaller || strings.Contains(small, "cup") {
			continue
		}
		d := s.with(fmt.Sprintf("%s: into = %s is now %s", t.call(), one.value, small), edit{one.from, one.to, []string{"into = " + small}},
			edit{tools.from, tools.to, strings.Split("tools = "+strings.Replace(tools.value, one.value, small, 1), "\n")})
		out = append(out, d)
	}
	return out
}

var variantForm = regexp.MustCompile(`^\{ *([a-z-]+) *= *(.+?) *\}$`)

func swapVariants(f *folder, s *sheet) []damage {
	var out []damage
	for _, t := range s.tables {
		for _, one := range t.entries {
			m := variantForm.FindStringSubmatch(one.value)
			if m == nil || !strings.HasPrefix(one.key, "variant.") {
				continue
			}
			own, ok := t.entry(m[1])
			if ok {
				d := s.with(fmt.Sprintf("%s: %s and %s have changed places", t.call(), own.value, m[2]),
					edit{own.from, own.to, []string{own.key + " = " + m[2]}}, edit{one.from, one.to, []string{fmt.Sprintf("%s = { %s = %s }", one.key, m[1], own.value)}})
				out = append(out, same(f, d, t))
			}
		}
	}
	steps := s.steps()
	for i := 1; i < len(steps); i++ {
		a, first := steps[i-1].entry("for")
		b, second := steps[i].entry("for")
		if first && second && a.value != b.value {
			d := s.with(fmt.Sprintf("%s: for = %s and %s have changed places", steps[i].call(), a.value, b.value),
				edit{a.from, a.to, []string{"for = " + b.value}}, edit{b.from, b.to, []string{"for = " + a.value}})
			out = append(out, d)
		}
	}
	return out
}
