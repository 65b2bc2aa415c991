// Package hazard works out what can hurt at each step of a job: from its verb and
// object, the energies, tools and fluids it works with, and its words. It must
// not know which messages the author wrote.
package hazard

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/internal/trade"
	"benchleaf/compiler/source"
)

// Implied is a hazard of one step, with the level its message needs and what implies it.
type Implied struct {
	Hazard trade.Hazard
	Level  trade.Signal
	Raised string // what raises the level above the usual; empty where nothing does
	Step   *model.Step
	Place  source.Place
	Why    string // what implies it: `"belt" in the words`, "the drive belt can pinch"
}

// Of lists the hazards of a job in order of its steps, each once a step at its
// highest level.
func Of(job *model.Job) []Implied {
	looks, kept := make([]*look, len(job.Steps)), rooms.looks.Take(job.Memo)
	kept = slices.Grow(kept, len(job.Steps))[:len(job.Steps)]
	for i, step := range job.Steps {
		l := &kept[i]
		*l = look{job: job, step: step, out: l.out[:0]}
		l.verb()
		l.engine()
		l.objects()
		l.things()
		l.words()
		looks[i] = l
		l.fire(looks[:i])
		if opener := opens(looks[:i], step); opener != nil {
			for _, object := range step.Objects {
				if object.Cavity != nil {
					opener.runsOut(object.Cavity, fluidOf(job, step, object.Cavity), opener.at())
				}
			}
		}
	}
	n := 0
	for _, l := range looks {
		n += len(l.out)
	}
	rooms.looks.Put(job.Memo, kept)
	if n == 0 {
		return nil
	}
	out := slices.Grow(rooms.implied.Take(job.Memo), n)
	for _, l := range looks {
		out = append(out, l.out...)
	}
	rooms.implied.Put(job.Memo, out)
	return out
}

// rooms are for what is made of each step of a job.
var rooms struct {
	looks   memo.Room[look]
	implied memo.Room[Implied]
}

// opens finds the step before a drain at which the fluid begins to run: the last
// that takes a drain plug, a drain cock or the like out.
func opens(before []*look, step *model.Step) *look {
	if step.Verb.Key != "drain" {
		return nil
	}
	for i := len(before) - 1; i >= 0; i-- {
		switch earlier := before[i].step; earlier.Verb.Key {
		case "drain":
			return nil
		case "remove", "open", "loosen", "disconnect":
			for _, object := range earlier.Objects {
				if object.Part != nil && (strings.Contains(strings.ToLower(object.Part.Name+" "+object.Part.Words()), "drain") || drains(object.Part, step)) {
					return before[i]
				}
			}
		}
	}
	return nil
}

// drains reports whether a part is described as the drain of what a step drains.
func drains(part *model.Part, step *model.Step) bool {
	return slices.ContainsFunc(step.Objects, func(object model.Object) bool {
		return object.Cavity != nil && object.Cavity.Drain.Set() && object.Cavity.Drain.Name() == part.Name
	})
}

func fluidOf(job *model.Job, step *model.Step, cavity *model.Cavity) *model.Fluid {
	if step.Fluid.Set() {
		return job.Fluid(step.Fluid.Name())
	}
	return job.Fluid(cavity.Fluid.Name())
}

// Message is a safety message as a job needs it: a built-in one rises to the
// gravest level of what it speaks for and asks for what that asks to wear, a shop's
// own stays as it is written.
func Message(caution *model.Caution, implied []Implied) *model.Caution {
	if !caution.BuiltIn() {
		return caution
	}
	level, err := trade.ParseSignal(caution.Signal.Text)
	if err != nil {
		return caution
	}
	var met bool
	worn := map[string]bool{}
	for _, one := range implied {
		if caution.Against.Has(one.Hazard.Key) {
			met, level = true, min(level, one.Level)
			for _, wear := range one.Hazard.Wear {
				worn[wear] = true
			}
		}
	}
	if met {
		caution = caution.Wearing(worn)
	}
	if level.String() == caution.Signal.Text {
		return caution
	}
	return caution.Raised(level)
}

// Hands reports whether a verb brings hands or tools onto its object: looking,
// measuring and writing do not.
func Hands(verb string) bool {
	return !slices.Contains([]string{"", "inspect", "check", "measure", "record", "mark", "wait", "start", "run", "stop", "isolate", "prove", "restore", "follow"}, verb)
}

// moves are the hazards by which a step shows that hands are where the machine moves.
var moves = []string{"start", "pinch", "rotation", "feed"}

// HandsIn tells of a step whether it brings hands to where the machine moves, and
// the words that show it.
func HandsIn(implied []Implied) func(*model.Step) (source.Place, bool) {
	return func(step *model.Step) (source.Place, bool) {
		if step.Verb.Key == "" || Hands(step.Verb.Key) {
			for _, one := range implied {
				if one.Step == step && slices.Contains(moves, one.Hazard.Key) {
					return one.Place, true
				}
			}
		}
		return source.Place{}, false
	}
}

var triggers = memo.Of(trade.Triggers)

// look gathers the hazards of one step.
type look struct {
	job  *model.Job
	step *model.Step
	out  []Implied
}

func (l *look) at() source.Place {
	if len(l.step.Verbs) > 0 {
		return l.step.Verbs[0].At
	}
	return l.step.Header
}

// add keeps a hazard once a step; raised says why its level is the worst one.
func (l *look) add(key string, place source.Place, why, raised string) {
	found, ok := trade.FindHazard(key)
	if !ok || key == "load" && l.jacked() {
		return
	}
	level := found.Level
	if raised != "" {
		level = found.Worst
	}
	if key == "solvent" && !mist.MatchString(why+" "+l.step.Say.Text) { // a wet rag is no cloud
		found.Wear = slices.DeleteFunc(slices.Clone(found.Wear), func(wear string) bool { return wear == "respirator" })
	}
	for i, other := range l.out {
		if other.Hazard.Key == key {
			if level < other.Level {
				l.out[i].Level, l.out[i].Raised, l.out[i].Place, l.out[i].Why = level, raised, place, why
			}
			return
		}
	}
	l.out = append(l.out, Implied{found, level, raised, l.step, place, why})
}

// mist are words by which a solvent is breathed in, and not only wiped on; common practice, no source.
var mist = pattern.MustCompile(`(?i)spray|mist|isocyanate|lacquer|varnish|paint|fog|hot|heated|inside|closed|pit\b`)

// byVerb are hazards a verb brings by itself.
var byVerb = map[string]string{"raise": "crushing", "support": "crushing", "lower": "crushing", "sharpen": "edge"}

func (l *look) verb() {
	key := l.step.Verb.Key
	if hazard := byVerb[key]; hazard != "" && !(key == "support" && l.hangs()) {
		raised := ""
		if key == "support" {
			raised = "hands go under what is raised"
		}
		if key == "sharpen" {
			raised = "it is an edge of the machine"
		}
		l.add(hazard, l.at(), fmt.Sprintf("%s is its verb", key), raised)
	}
}

// hangs reports whether what is supported is a part in a sling or on a hoist, which is
// a load and no raised machine.
func (l *look) hangs() bool {
	for _, name := range l.step.Tools.Names() {
		if tool := l.job.Tool(name); tool != nil && (tool.Kind.Text == "sling" || tool.Kind.Text == "hoist") {
			return len(l.step.Objects) > 0 && !slices.ContainsFunc(whole, func(word string) bool {
				return strings.Contains(strings.ToLower(l.step.Objects[0].Words()), word)
			})
		}
	}
	return false
}

// jacked reports whether a step raises a machine by its axle or its end, or lets it down: the
// message against crushing says all of it, and nothing hangs over a head.
func (l *look) jacked() bool {
	if !slices.Contains([]string{"raise", "support", "lower"}, l.step.Verb.Key) || len(l.step.Objects) == 0 {
		return false
	}
	words := strings.ToLower(l.step.Say.Text)
	for _, name := range l.step.Tools.Names() {
		if tool := l.job.Tool(name); tool != nil {
			words += " " + tool.Kind.Text
		}
	}
	return wheeled.MatchString(l.step.Objects[0].Words()) && !hung.MatchString(words)
}

// Words of what a machine rolls on, and of what lifting gear hangs in; common practice, no source.
var (
	wheeled = pattern.MustCompile(`(?i)\b(?:axles?|wheels?)\b`)
	hung    = pattern.MustCompile(`(?i)\b(?:hoists?|slings?|cranes?|hang|straps?|fork ?lift)\b`)
)

// whole are words for what a machine rests on, and for all of it.
var whole = []string{"machine", "axle", "frame", "end", "side", "deck", "header", "boom", "tractor", "loader", "bucket arm", "trailer", "wheel", "chassis"}

// Words by which a step brings flame or great heat, and names of tools that do; common
// practice, no source.
var (
	welds   = pattern.MustCompile(`(?i)(?:^|[.;,] |\b(?:and|then) )(?:weld|braze)\b|\bwelding (?:the|a|an|it|on|at|near|beside)\b`)
	heats   = pattern.MustCompile(`(?i)\b(?:heat|warm|burn)\b.*\b(?:torch|flame|burner|blowlamp|gun)\b|\bblow ?torch`)
	burners = []string{"heat gun", "hot-air", "hot air", "blowtorch", "blowlamp", "gas torch", "welder", "welding"}
	alight  = []string{"fuel", "solvent", "battery-gas", "used-oil"}
)

// fire adds heat beside what burns: what the step itself or the one before handles, or a
// battery that is still connected while somebody welds.
func (l *look) fire(before []*look) {
	text := l.step.Say.Text
	for _, object := range l.step.Objects {
		text += ". " + l.step.Verb.Key + " " + object.Words()
	}
	weld, heat := welds.MatchString(text), heats.MatchString(text)
	for _, name := range l.step.Tools.Names() {
		if tool := l.job.Tool(name); tool != nil {
			words := strings.ToLower(tool.Title.Text + " " + strings.ReplaceAll(name, "-", " "))
			heat = heat || slices.ContainsFunc(burners, func(word string) bool { return strings.Contains(words, word) })
		}
	}
	if !weld && !heat {
		return
	}
	near := []*look{l}
	if len(before) > 0 {
		near = append(near, before[len(before)-1])
	}
	for _, other := range near {
		for _, implied := range other.out {
			if slices.Contains(alight, implied.Hazard.Key) {
				raised := ""
				if implied.Hazard.Key == "fuel" {
					raised = "fuel is near"
				}
				l.add("fire", l.at(), fmt.Sprintf("heat comes beside what step %d handles: %s", other.step.Number, implied.Hazard.Title), raised)
			}
		}
	}
	if fluid := l.job.Fluid(l.step.Fluid.Name()); fluid != nil && (fluid.Kind.Text == "grease" || strings.HasSuffix(fluid.Kind.Text, "-oil")) {
		l.add("fire", l.at(), fmt.Sprintf("heat comes beside %s", fluid.Words()), "")
	}
	for _, energy := range l.job.Energies() {
		cut := slices.ContainsFunc(before, func(other *look) bool {
			return (other.step.Verb.Key == "isolate" || other.step.Verb.Key == "disconnect") && slices.ContainsFunc(other.step.Objects, func(o model.Object) bool { return o.Energy == energy })
		})
		if weld && energy.Kind.Text == "battery" && !cut {
			l.add("fire", l.at(), fmt.Sprintf("somebody welds while %s is connected", energy.Words()), "")
		}
	}
}

func (l *look) objects() {
	for _, object := range l.step.Objects {
		switch {
		case object.Part != nil:
			l.part(object)
		case object.Cavity != nil:
			l.cavity(object)
		case object.Energy != nil:
			l.energy(object)
		case object.Limit != nil && l.felt(object):
			l.held(object)
		case object.Fluid != nil && l.step.Verb.Key == "dispose":
			l.fluid(object.Fluid, object.Text.At)
		}
	}
}

// HeavyKg is the mass from which lifting needs gear: the load constant of the
// NIOSH lifting equation is 23 kg, from memory.
const HeavyKg = 23

func (l *look) part(object model.Object) {
	part, key := object.Part, l.step.Verb.Key
	if !Hands(key) {
		if l.felt(object) {
			l.sharp(part, object.Text.At)
		}
		return
	}
	for _, hazard := range part.Hazards.Items {
		l.add(hazard.Text, object.Text.At, fmt.Sprintf("the %s is described with it", part.Words()), l.blade(hazard.Text, part.Words()))
	}
	l.oilFilter(object)
	if kg, ok := highest(part.Mass); ok && kg >= HeavyKg && slices.Contains([]string{"remove", "refit", "replace", "raise", "lower", "turn-over", "support"}, key) {
		l.add("load", object.Text.At, fmt.Sprintf("the %s weighs %s", part.Words(), part.Mass.Text.Text), "")
	}
	if lets := key == "loosen" || key == "remove" || key == "replace"; lets && idlerBolt.MatchString(part.Words()) && (len(part.LoadedBy.Items) > 0 || sprung.MatchString(l.step.Told())) {
		l.add("spring", object.Text.At, fmt.Sprintf("the %s lets go what is under tension", part.Words()), "")
	}
	if part.Cover && len(part.Guards.Items) > 0 && (key == "remove" || key == "open" || key == "loosen") {
		l.add("guard", object.Text.At, fmt.Sprintf("the %s is a guard", part.Words()), "")
	}
	if part.Product.Set() && (key == "tighten" || key == "refit" || key == "replace") {
		l.named(part.Product.Name(), object.Text.At)
	}
}

// oilFilter adds the heat of the oil that runs down the arm when an oil filter comes off:
// where the oil of the machine is described as hot, or the job begins with it warm.
func (l *look) oilFilter(object model.Object) {
	if !strings.Contains(strings.ToLower(object.Words()+" "+object.Text.Text), "oil filter") || !slices.Contains([]string{"remove", "replace", "loosen"}, l.step.Verb.Key) {
		return
	}
	warm := slices.ContainsFunc(l.job.Procedure.Start.Items, func(said model.Text) bool { return strings.Contains(strings.ToLower(said.Text), "warm") })
	for _, cavity := range l.job.Cavities() {
		fluid := l.job.Fluid(cavity.Fluid.Name())
		warm = warm || fluid != nil && strings.HasSuffix(fluid.Kind.Text, "-oil") && cavity.Hazards.Has("hot")
	}
	if warm {
		l.add("hot", object.Text.At, fmt.Sprintf("the %s comes off with warm oil in it", object.Words()), "")
	}
}

// Words of the bolt of an idler, which is fixed unless the words speak of what loads it;
// common practice, no source.
var (
	idlerBolt = pattern.MustCompile(`(?i)\bidler (?:bolt|nut|screw)s?\b`)
	sprung    = pattern.MustCompile(`(?i)\b(?:springs?|tensioner|loaded)\b`)
)

// felt reports whether a look or a measuring is done with the hands on its object: its words
// say so, or the step asks for gloves.
func (l *look) felt(object model.Object) bool {
	gloved := l.step.Wear.Has("gloves") || l.step.Wear.Has("cut-resistant-gloves")
	return l.step.Touches(object) || gloved && slices.Contains([]string{"inspect", "check", "measure"}, l.step.Verb.Key)
}

// held adds the edge of the part that a limit is named after.
func (l *look) held(object model.Object) {
	words := " " + strings.ToLower(object.Words()+" "+object.Limit.How.Text)
	for _, part := range l.job.Parts() {
		if strings.Contains(words, " "+strings.ToLower(part.Words())) {
			l.sharp(part, object.Text.At)
		}
	}
}

// sharp adds the edge of a part that is described with one.
func (l *look) sharp(part *model.Part, at source.Place) {
	if part.Hazards.Has("edge") {
		l.add("edge", at, fmt.Sprintf("the %s is described with it, and hands are on it", part.Words()), l.blade("edge", part.Words()))
	}
}

// blade raises an edge to the level of a blade of the machine.
func (l *look) blade(hazard, words string) string {
	if hazard != "edge" {
		return ""
	}
	for _, word := range []string{"blade", "knife", "knives", "saw", "cutter"} {
		if strings.Contains(strings.ToLower(words), word) {
			return "it is a " + word
		}
	}
	return ""
}

func highest(amount model.Amount) (float64, bool) {
	if !amount.Set() || !amount.OK {
		return 0, false
	}
	most, ok := amount.Highest()
	if !ok {
		return 0, false
	}
	value, _ := most.Float64()
	return value, true
}

// skinKPa is the pressure from which a jet can break the skin: 100 psi, 360training, incident-prevention.com.
const skinKPa = 690

// injectionDangerKPa is the pressure from which an injection is marked DANGER: 20 MPa, common practice, no source.
const injectionDangerKPa = 20_000

func (l *look) pressure(amount model.Amount, at source.Place, what string) {
	kPa, ok := highest(amount)
	if !ok || kPa < skinKPa {
		return
	}
	raised := ""
	if kPa > injectionDangerKPa {
		raised = "the pressure is above 20 MPa"
	}
	l.add("injection", at, fmt.Sprintf("the %s holds %s", what, amount.Text.Text), raised)
}

func (l *look) cavity(object model.Object) {
	cavity, key, at := object.Cavity, l.step.Verb.Key, object.Text.At
	if key != "drain" && key != "fill" && key != "bleed" && key != "clean" {
		return
	}
	fluid := fluidOf(l.job, l.step, cavity)
	if key == "drain" {
		l.runsOut(cavity, fluid, at)
		return
	}
	for _, hazard := range cavity.Hazards.Items {
		l.add(hazard.Text, at, fmt.Sprintf("the %s is described with it", cavity.Words()), "")
	}
	if fluid != nil {
		l.fluid(fluid, at)
	}
	if key == "bleed" {
		l.pressure(cavity.Pressure, at, cavity.Words())
	}
}

// runsOut adds what hurts when a fluid runs out of a cavity.
func (l *look) runsOut(cavity *model.Cavity, fluid *model.Fluid, at source.Place) {
	for _, hazard := range cavity.Hazards.Items {
		raised := ""
		if hazard.Text == "hot" {
			raised = "the fluid runs out hot"
		}
		l.add(hazard.Text, at, fmt.Sprintf("the %s is described with it", cavity.Words()), raised)
	}
	if fluid != nil {
		l.fluid(fluid, at)
		if strings.HasSuffix(fluid.Kind.Text, "-oil") {
			l.add("used-oil", at, fmt.Sprintf("used oil runs out of the %s", cavity.Words()), "")
		}
	}
	l.pressure(cavity.Pressure, at, cavity.Words())
}

// byFluid are hazards of kinds of fluid.
var byFluid = map[string]string{"fuel": "fuel", "cleaner": "solvent", "brake-fluid": "brake-fluid"}

func (l *look) fluid(fluid *model.Fluid, at source.Place) {
	if hazard := byFluid[fluid.Kind.Text]; hazard != "" {
		l.add(hazard, at, fmt.Sprintf("%q is handled", fluid.Words()), "")
	}
	for _, hazard := range fluid.Hazards.Items {
		l.add(hazard.Text, at, fmt.Sprintf("%q is described with it", fluid.Words()), "")
	}
}

// byEnergy are hazards of an energy when it is cut off, let out or handled.
var byEnergy = map[string]map[string][]string{
	"isolate":    {"electric": {"start"}, "engine": {"start"}, "battery": {"start", "battery-gas", "battery-order"}, "hydraulic": {"start"}, "pneumatic": {"start"}, "shaft": {"shaft"}, "rotation": {"rotation"}, "gravity": {"crushing"}, "spring": {"spring"}, "heat": {"hot"}, "fuel": {"fuel"}},
	"relieve":    {"spring": {"spring"}, "gravity": {"crushing"}, "pneumatic": {"air"}, "heat": {"hot"}, "rotation": {"rotation"}},
	"disconnect": {"battery": {"battery-gas", "battery-order"}, "electric": {"shock"}, "shaft": {"shaft"}, "fuel": {"fuel"}},
	"connect":    {"battery": {"battery-gas", "battery-order"}, "electric": {"shock"}, "shaft": {"shaft"}, "fuel": {"fuel"}},
}

// shockVolts is the voltage from which live parts are a hazard of shock: 50 V, OSHA 29 CFR 1910.303(g)(2), from memory.
const shockVolts = 50

func (l *look) energy(object model.Object) {
	energy, key, at := object.Energy, l.step.Verb.Key, object.Text.At
	for _, hazard := range byEnergy[key][energy.Kind.Text] {
		l.add(hazard, at, fmt.Sprintf("%s is its energy", model.The(energy.Words())), "")
	}
	if volts, ok := highest(energy.Voltage); ok && volts >= shockVolts && key == "prove" && len(energy.Tools.Items)+len(l.step.Tools.Items) > 0 && l.tester(energy) {
		l.add("shock", at, fmt.Sprintf("%s is tested at its terminals", model.The(energy.Words())), "")
	}
	if energy.Kind.Text == "hydraulic" && (key == "relieve" || key == "disconnect" || key == "connect") {
		l.pressure(energy.Pressure, at, energy.Words())
	}
}

func (l *look) tester(energy *model.Energy) bool {
	for _, list := range []model.List{energy.Tools, l.step.Tools} {
		for _, name := range list.Names() {
			if tool := l.job.Tool(name); tool != nil && tool.Kind.Text == "tester" {
				return true
			}
		}
	}
	return false
}

// byTool are hazards of kinds of tool.
var byTool = map[string][]string{
	"impact-wrench": {"reaction", "noise"}, "breaker-bar": {"reaction"}, "grinder": {"grinding", "noise"}, "air-gun": {"air"}, "jack": {"crushing"}, "hoist": {"load"}, "sling": {"load"},
}

// things adds what the tools and consumables of the step bring.
func (l *look) things() {
	for _, name := range l.step.Tools.Items {
		tool := l.job.Tool(name.Name())
		if tool == nil {
			continue
		}
		for _, hazard := range byTool[tool.Kind.Text] {
			l.add(hazard, name.At, fmt.Sprintf("the step works with %q", name.Text), "")
		}
		for _, hazard := range tool.Hazards.Items {
			l.add(hazard.Text, name.At, fmt.Sprintf("%q is described with it", name.Text), "")
		}
	}
	for _, used := range l.step.Supplies {
		l.named(used.Name.Name(), used.Name.At)
	}
	if l.step.Fluid.Set() {
		l.named(l.step.Fluid.Name(), l.step.Fluid.At)
	}
	for _, name := range l.step.Spares.Items {
		if spare := l.job.Spare(name.Name()); spare != nil {
			for _, hazard := range spare.Hazards.Items {
				l.add(hazard.Text, name.At, fmt.Sprintf("%s is described with it", model.The(spare.Words())), "")
			}
		}
	}
}

func (l *look) named(name string, at source.Place) {
	if supply := l.job.Supply(name); supply != nil {
		for _, hazard := range supply.Hazards.Items {
			l.add(hazard.Text, at, fmt.Sprintf("%q is described with it", supply.Words()), "")
		}
		for _, trigger := range triggers.Of(l.job.Memo, "Apply the "+supply.Words()+".") {
			if wet := trigger.Hazard == "adhesive" || trigger.Hazard == "solvent"; wet && l.reads() && !supply.Hazards.Given {
				l.add(trigger.Hazard, at, fmt.Sprintf("%q is handled", supply.Words()), "")
			}
		}
	} else if fluid := l.job.Fluid(name); fluid != nil {
		l.fluid(fluid, at)
	}
}

// tells are verbs that bring no hands onto their object and whose sentence may
// tell of a hazard all the same: run the PTO, measure the voltage at the terminals.
var tells = map[string]bool{"start": true, "run": true, "check": true, "measure": true}

// reads reports whether the author's words are in the language the cues are in.
func (l *look) reads() bool { return l.job.Language() == model.English }

// words adds what the sentence of the verb and the author's own words imply.
func (l *look) words() {
	if !l.reads() {
		return
	}
	for _, object := range l.step.Objects {
		if !tells[l.step.Verb.Key] && !Hands(l.step.Verb.Key) {
			continue
		}
		sentence := strings.ReplaceAll(l.step.Verb.Key, "-", " ") + " " + model.The(object.Words())
		for _, trigger := range triggers.Of(l.job.Memo, sentence) {
			if quoted := sentence[trigger.Start:trigger.End]; !l.braked(trigger.Hazard, quoted) {
				l.add(trigger.Hazard, object.Text.At, fmt.Sprintf("%q says so", sentence), l.context(trigger.Hazard, sentence))
			}
		}
	}
	l.text(l.step.Say)
	l.outside(l.step.Outside)
	for _, keep := range l.step.Keep.Items {
		l.text(keep)
	}
	if pose := l.job.Pose(l.step.Pose.Name()); pose != nil {
		l.text(pose.How)
	}
	for _, object := range l.step.Objects {
		if limit := object.Limit; limit != nil && l.step.Verb.Key != "record" {
			l.text(limit.How)
			if !l.step.Outside.Set() {
				l.outside(limit.Outside)
			}
		}
		switch energy := object.Energy; {
		case energy == nil:
		case l.step.Verb.Key == "isolate":
			l.text(energy.Isolate)
		case l.step.Verb.Key == "relieve":
			l.text(energy.Relieve)
		case l.step.Verb.Key == "prove":
			l.text(energy.Prove, triedByHand...)
		}
	}
}

// text adds what some words of the author's that print at the step imply, but for some
// hazards and for what they put off to another time; a step without a verb is done when its
// words say what is done, "every 50 h" among them.
func (l *look) text(text model.Text, without ...string) {
	for _, trigger := range triggers.Of(l.job.Memo, text.Text) {
		if !slices.Contains(without, trigger.Hazard) && (l.step.Verb.Key == "" || !trade.PutOff(text.Text, trigger.Start, trigger.End)) {
			l.says(text, trigger)
		}
	}
}

// outside adds what the words on a bad finding imply, as far as it is done at the step.
func (l *look) outside(text model.Text) {
	for _, trigger := range triggers.Of(l.job.Memo, text.Text) {
		if !trade.PutOff(text.Text, trigger.Start, trigger.End) && !trade.LeftToOthers(text.Text, trigger.Start, trigger.End) {
			l.says(text, trigger)
		}
	}
}

// says adds what a place in some words implies.
func (l *look) says(text model.Text, trigger trade.Trigger) {
	quoted := text.Text[trigger.Start:trigger.End]
	if l.braked(trigger.Hazard, quoted) {
		return
	}
	l.add(trigger.Hazard, text.Inside(trigger.Start, trigger.End), fmt.Sprintf("%q in the words says so", quoted), l.context(trigger.Hazard, text.Text))
}

// triedByHand are the hazards of what a proof tries by hand, after it was cut off.
var triedByHand = []string{"start", "rotation"}

// worse are words that raise a hazard to its worst: what scalds under pressure, exhaust
// gas in a closed place, and flame beside fuel.
var worse = map[string][]string{"hot": {"coolant", "radiator", "expansion", "steam"}, "exhaust-gas": {"closed", "shut"}, "fire": {"fuel", "petrol", "gasoline"}}

// context tells from the words around a trigger what raises its level.
func (l *look) context(hazard, text string) string {
	if hazard == "edge" {
		return l.blade(hazard, text)
	}
	lower := strings.ToLower(text)
	for _, word := range worse[hazard] {
		if strings.Contains(lower, word) {
			return word + " stands in the words"
		}
	}
	if hazard == "crushing" {
		for _, word := range strings.Fields(strings.ToLower(text)) {
			if word == "under" || word == "beneath" || word == "underneath" || word == "between" {
				return "hands or body go " + word + " it"
			}
		}
	}
	return ""
}
