package hazard

import (
	"slices"
	"strings"
)

// braked reports whether words speak of the disc or drum of a wheel brake, which a mechanic
// calls a rotor too: it is turned by hand, no power drives it and it does not run on.
func (l *look) braked(hazard, quoted string) bool {
	if hazard != "start" && hazard != "rotation" && hazard != "load" {
		return false
	}
	named := strings.FieldsFunc(strings.ToLower(quoted), func(r rune) bool { return r < 'a' || r > 'z' })
	if !slices.ContainsFunc(named, func(word string) bool { return slices.Contains([]string{"rotor", "rotors", "drum", "drums"}, word) }) {
		return false
	}
	words := l.spoken()
	return (containsAny(words, wheelBrakes) || strings.Contains(words, "brake") && containsAny(words, wheels)) && !containsAny(words, rotorMachines)
}

// spoken is what the job calls its machine, itself and what it works on, behind a space.
func (l *look) spoken() string {
	words := []string{l.job.MachineTitle(), l.job.Procedure.Title.Text, l.job.Procedure.Summary.Text}
	for _, step := range l.job.Steps {
		for _, object := range step.Objects {
			words = append(words, object.Words())
		}
	}
	for _, name := range []string{"rotor", "drum"} {
		if part := l.job.Part(name); part != nil {
			words = append(words, part.Words())
		}
	}
	return " " + strings.ToLower(strings.Join(words, "; "))
}

// wheelBrakes are words of wheel brakes, rotorMachines of machines whose rotor or drum does
// the work; common practice, no source.
var (
	wheelBrakes   = []string{"caliper", "brake disc", "brake disk", "disc brake", "disk brake", "brake rotor", "brake pad", "brake drum", "drum brake", "brake shoe", "front brake", "rear brake"}
	wheels        = []string{"wheel", "hub", "axle", "tyre", "tire"}
	rotorMachines = []string{"chipper", "shredder", "mulch", "mower", "flail", "baler", "thresh", "harvester", "tiller", "spreader", "saw", "mill", "turbine", "generator", "alternator", "fan", "crusher", "winch", "conveyor", "mixer", "tumbler", "centrifuge", "planer", "cutter", " rake", "tedder", "rotary", "rotavator", "harrow", "sweeper", "blower", "pump", "compressor", "electric motor", "dredge", "separator"}
)

func containsAny(text string, words []string) bool {
	return slices.ContainsFunc(words, func(word string) bool { return strings.Contains(text, word) })
}
