package hazard

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// indoors are words that tell of a closed place; common practice, no source.
var indoors = []string{"shed", "garage", "indoors", "workshop", "building", "barn", "cellar", "cabin", "engine room", "hall", "container",
	"pump house", "pumphouse", "engine house", "power house", "boiler house", "greenhouse", "glasshouse", "basement", "hangar", "plant room", "pump room", "boiler room"}

// engineRuns are sentences that run an engine, and none that say it is not to run.
var (
	engineRuns  = pattern.MustCompile(`(?i)(?:^|[.;,] |\b(?:and|then) )(?:start|run|idle|warm up|let) (?:the |an? |its )?(?:\w+ )?(?:engine|motor generator|generator)\b`)
	engineStops = pattern.MustCompile(`(?i)\b(?:outdoors|outside|into the open|in the open|extraction|exhaust hose)\b`)
)

// underLoad are words of a run that is as loud as the engine gets; loud is for how many
// seconds an engine runs in a closed place before it is too much for the ears. Common
// practice, no source.
var underLoad = pattern.MustCompile(`(?i)\b(?:under|full|rated|at) (?:full |half |rated )?(?:load|speed|throttle|power)\b|\bload bank\b`)

const loud = 5 * 60

// engine adds what an engine brings that runs: its gas in a closed place, where the
// procedure, its machine or the step says that it stands in one, and its noise there or
// under load.
func (l *look) engine() {
	key, said := l.step.Verb.Key, engineRuns.MatchString(l.step.Say.Text)
	if !l.reads() || key != "run" && key != "start" && !(key == "" && said) || !said && !l.hasEngine() {
		return
	}
	place, closed := l.closedPlace()
	if closed && !engineStops.MatchString(l.step.Say.Text) {
		l.add("exhaust-gas", l.at(), fmt.Sprintf("an engine runs, and the words say %q", place), "")
	}
	words := l.step.Say.Text
	for _, object := range l.step.Objects {
		words += " " + object.Words()
	}
	least, known := least(l.step.Least)
	switch {
	case key != "run":
	case underLoad.MatchString(words):
		l.add("noise", l.at(), "an engine runs under load", "")
	case closed && known && least >= loud:
		l.add("noise", l.at(), fmt.Sprintf("an engine runs for %s, and the words say %q", l.step.Least.Text.Text, place), "")
	}
}

// hasEngine reports whether an engine drives the machine, or the step names one.
func (l *look) hasEngine() bool {
	return slices.ContainsFunc(l.job.Energies(), func(energy *model.Energy) bool { return energy.Kind.Text == "engine" }) ||
		slices.ContainsFunc(l.step.Objects, func(object model.Object) bool {
			words := strings.ToLower(object.Words())
			return strings.Contains(words, "engine") || strings.Contains(words, "generator") || strings.Contains(words, "genset")
		})
}

// closedPlace gives the word that tells of a closed place in which the machine stands.
func (l *look) closedPlace() (string, bool) {
	words := []string{l.job.MachineTitle(), l.job.Procedure.Machine.Text, l.job.Procedure.Title.Text, l.job.Procedure.Summary.Text, l.step.Say.Text}
	for _, object := range l.step.Objects {
		words = append(words, object.Words())
	}
	for _, list := range []model.List{l.job.Procedure.Start, l.step.Keep} {
		for _, text := range list.Items {
			words = append(words, text.Text)
		}
	}
	all := " " + strings.ToLower(strings.Join(words, " ")) + " "
	for _, place := range indoors {
		if strings.Contains(all, " "+place) {
			return place, true
		}
	}
	return "", false
}

// least gives the lower bound of an amount in its base unit.
func least(amount model.Amount) (float64, bool) {
	if !amount.OK {
		return 0, false
	}
	low, ok := amount.Lowest()
	if !ok {
		return 0, false
	}
	value, _ := low.Float64()
	return value, true
}
