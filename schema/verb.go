package schema

// Verb is an action a step can name. Needs and Makes say in words what must be
// true before and what is true after.
type Verb struct {
	Key    string
	Object string   // kinds of thing the object may be; "words" lets it be free text
	Takes  []string // the keys that give the verb its value
	Doc    string
	Needs  string
	Makes  string
	Sample string // a TOML value
}

// Verbs lists every verb, in the order in which a job meets them.
func Verbs() []Verb { return verbs }

// FindVerb finds a verb by its key.
func FindVerb(key string) (Verb, bool) {
	for _, verb := range verbs {
		if verb.Key == key {
			return verb, true
		}
	}
	return Verb{}, false
}

func verbKeys() []Key {
	keys := make([]Key, 0, len(verbs)+len(stepKeys))
	for _, verb := range verbs {
		key := Key{Name: verb.Key, Kind: Names, Of: verb.Object, Doc: verb.Doc, Example: verb.Sample}
		if verb.Object == "time" {
			key.Kind = Amount
		}
		keys = append(keys, key)
	}
	return keys
}

var verbs = []Verb{
	{"isolate", "energy", []string{"expect"}, "Cut a source of energy off and lock it.", "the machine is stopped", "the energy is isolated", `"mains"`},
	{"relieve", "energy part cavity words", []string{"set", "expect", "into", "amount"}, "Let stored energy out: pressure, spring, a raised load.", "the source is isolated", "no stored energy is left", `"hydraulic-pressure"`},
	{"prove", "energy", []string{"expect", "limit", "reading"}, "Try and show that the energy is gone.", "the energy is isolated", "the energy is proved dead", `"mains"`},
	{"restore", "energy", []string{"expect"}, "Give an isolated energy back.", "guards are on, tools and people are clear", "the energy is live", `"mains"`},
	{"raise", "part words", []string{"set", "pose", "limit"}, "Lift the machine or a part of it.", "what rests on it is secured", "it is raised, and must be supported", `"the infeed end"`},
	{"support", "part words", []string{"pose"}, "Set stands, blocks or a sling under what is raised.", "it is raised", "it is held without the lifting gear", `"the infeed end"`},
	{"lower", "part words", []string{"pose", "set"}, "Let down what was raised.", "nobody is below, nothing is left under it", "it stands on its own", `"the infeed end"`},
	{"turn-over", "part words", []string{"pose", "angle"}, "Turn or tilt the machine into another position.", "no cavity is open, nothing is loose", "it is in the new position", `"the cutter head"`},
	{"stop", "words part energy", []string{"expect"}, "Bring to a standstill.", "", "it stands still", `"the band mill"`},
	{"start", "words part energy", []string{"least", "most", "expect", "set", "limit"}, "Set going.", "guards are on, people are clear", "it runs", `"the band mill"`},
	{"run", "words part energy", []string{"least", "most", "until", "set", "expect", "limit", "keep"}, "Let it run for a time or until something is seen.", "guards are on, people are clear", "it has run", `"the band mill"`},
	{"remove", "part cover spare", []string{"count", "into", "order"}, "Take off a part or a cover.", "what hides it is off, what it holds is safe", "it is off", `"belt-guard"`},
	{"refit", "part cover", []string{"count", "order", "by-hand", "fluid"}, "Put back a part or a cover that was taken off.", "it is off, the work behind it is done", "it is on, hand-tight until tightened", `"belt-guard"`},
	{"replace", "part spare", []string{"count", "into", "fluid", "by-hand"}, "Put a new part in the place of the old one.", "the old one can be reached", "the new one is in", `"filter-element"`},
	{"loosen", "part cover", []string{"count", "angle", "order", "into"}, "Slacken a fastener without taking it out.", "it is tight", "it is loose", `"motor-bolts"`},
	{"tighten", "part cover", []string{"torque", "angle", "by-hand", "count", "order", "passes", "condition", "adapter"}, "Tighten to a torque, to a torque and an angle, or by hand on purpose.", "everything under it is in", "it is tight", `"drain-plug"`},
	{"disconnect", "part energy words", []string{"count", "into"}, "Part a cable, hose or coupling.", "its energy is isolated and let out", "it is apart", `"pump-hose"`},
	{"connect", "part energy words", []string{"count", "by-hand"}, "Join a cable, hose or coupling.", "it is apart and clean", "it is joined", `"pump-hose"`},
	{"open", "part cover words", []string{"count", "set", "angle", "into"}, "Open a valve, cover or door.", "what is behind it is safe", "it is open", `"drain-valve"`},
	{"close", "part cover words", []string{"count", "set", "by-hand"}, "Close a valve, cover or door.", "", "it is closed", `"drain-valve"`},
	{"drain", "cavity", []string{"amount", "until", "into", "fluid"}, "Let a fluid out into a container.", "the drain is open, a container stands below", "the cavity is empty", `"gearbox"`},
	{"fill", "cavity", []string{"amount", "until", "fluid"}, "Put fluid in.", "the drain is shut, the vent is open", "the cavity is filled", `"gearbox"`},
	{"bleed", "cavity part words", []string{"until", "into", "amount", "fluid", "count"}, "Let air or pressure out.", "it is filled", "it is free of air", `"lift-circuit"`},
	{"grease", "point part words", []string{"amount", "until", "fluid", "count"}, "Press grease into a fitting.", "the fitting is clean", "the point is greased", `"tail-bearing"`},
	{"lubricate", "point part words", []string{"amount", "until", "fluid", "count"}, "Put oil or grease on.", "the place is clean", "it is lubricated", `"drive-chain"`},
	{"clean", "part cover cavity point words", []string{"fluid", "amount", "count", "into", "until"}, "Take dirt, chips or old lubricant off.", "", "it is clean", `"breather"`},
	{"inspect", "part cover cavity point limit energy spare words", []string{"expect", "limit", "count", "reading"}, "Look for damage or wear.", "it can be seen", "its condition is known", `"drive-belt"`},
	{"check", "part cover cavity point limit energy words", []string{"expect", "limit", "set", "count", "reading", "torque"}, "Compare with what is expected.", "it can be seen or reached", "it is known to be right", `"gearbox"`},
	{"measure", "part limit cavity point words", []string{"limit", "reading", "expect", "count", "set"}, "Find a value with an instrument.", "it can be reached", "the value is known", `"chain-stretch"`},
	{"adjust", "part limit words", []string{"set", "limit", "until", "angle", "count", "expect", "torque", "reading"}, "Bring to a value.", "it can be reached", "it has the value", `"blade-guide"`},
	{"align", "part limit words", []string{"set", "limit", "until", "expect", "reading"}, "Bring into line.", "it can be reached; what holds it is loose", "it is in line", `"drive-pulleys"`},
	{"tension", "part words", []string{"set", "limit", "until", "expect", "reading"}, "Bring under tension.", "it is in its place", "it is under tension", `"drive-belt"`},
	{"slacken", "part words", []string{"set", "until", "count"}, "Take the tension off.", "its energy is isolated", "it is slack", `"drive-belt"`},
	{"sharpen", "part words", []string{"set", "limit", "angle", "count", "until"}, "Bring an edge back.", "it is clamped", "it is sharp", `"chipper-knife"`},
	{"mark", "part words", []string{"count"}, "Mark a place or a direction.", "", "it is marked", `"belt-run"`},
	{"wait", "time", []string{"most", "until", "keep"}, "Let time pass.", "", "the time is over", `"20 min"`},
	{"record", "words limit", []string{"reading", "limit", "expect"}, "Write a value down.", "", "it is written down", `"hour meter"`},
	{"dispose", "fluid supply spare words", []string{"into", "amount"}, "Hand over what is left as the rules ask.", "it is caught in a container", "it is out of the way", `"the used oil"`},
	{"follow", "procedure", nil, "Do another procedure and come back.", "", "its end condition holds", `"lock-out"`},
}
