package draft

import (
	"strings"
	"sync"
)

// deed is what is done. Those that end in ? depend on what they are done to.
type deedRow struct {
	verbs     string // forms of the verb
	particles string // words that stand behind it, with or without the object between; "" where none
	deed      string
}

// deedRows are the words of work, and the language's verb for each.
var deedRows = []deedRow{
	// off, out, apart
	{"take pull lift get whip slide slip knock draw pop prise drive tap unscrew unbolt screw fetch drift press drag lever pry work wiggle jiggle bring spin wind fish hook pick pluck shake tip tug yank break crack peel cut unwind thread bolt strip rip", "off out away", "off?"},
	{"pull slip draw slide lift", "", "pull?"},
	{"pack repack", "", "grease"},
	{"remove undo unscrew unbolt strip dismount demount unseat dismantle withdraw extract unfasten", "", "off?"},
	{"out off", "with", "off?"},
	{"unhook unclip disconnect unplug uncouple unhitch detach unclamp unstrap unpin decouple", "", "disconnect"},
	// on, in, together
	{"put push fit slide screw bolt refit install reinstall pop slip press tap knock drive click snap stick seat hang thread spin wind feed ease", "back in on", "on?"},
	{"refit reinstall reassemble replug rehang remount refasten", "", "on?"},
	{"reconnect couple rehitch", "", "connect"},
	{"hook plug clip hitch couple", "up in on back together", "connect"},
	// new for old
	{"replace renew", "", "replace"},
	{"swap change switch", "out over", "replace"},
	{"swap", "", "change?"},
	{"bin scrap junk discard chuck", "", "replace?"},
	{"throw chuck bin sling", "away out", "replace?"},
	{"change changed", "", "change?"},
	// loose and tight
	{"slack slacken loosen crack", "", "loosen"},
	{"back slack free loosen ease slacken", "off", "loosen"},
	{"tighten torque retorque snug pinch retighten", "", "tighten"},
	{"talk nip do cinch pull snug tighten run pinch lock torque screw bolt", "up down", "tighten"},
	{"nip do pull", "tight", "tighten"},
	{"lock", "", "lock?"},
	// fluids
	{"drain", "", "drain"},
	{"let drain", "drain out off", "drain"},
	{"pump suck syphon siphon draw", "out", "pumpout"},
	{"empty", "", "empty?"},
	{"fill refill", "", "fill"},
	{"top fill", "up", "fill"},
	{"bleed purge vent", "", "bleed"},
	{"grease regrease", "", "grease"},
	{"oil lube lubricate smear wet", "", "lubricate"},
	{"spray squirt smear coat dab wipe", "with", "smear?"},
	{"flush", "", "flush"},
	{"flush rinse", "out through", "flush"},
	// clean
	{"clean wipe brush vacuum wash scrape degrease dust rinse hoover swab polish decoke descale swill sponge", "", "clean"},
	{"blow hose clean brush wash wipe hoover vacuum scrape sweep knock bang dig pick", "out off down through", "clean"},
	{"give", "clean wipe brush wash blow rinse", "clean"},
	// look, feel, measure
	{"inspect examine eyeball", "", "inspect"},
	{"look", "at for over", "inspect"},
	{"count", "", "inspect"},
	{"check recheck verify confirm", "", "check"},
	{"make", "sure", "check"},
	{"see", "that", "check"},
	{"test", "", "check"},
	{"feel", "for", "check"},
	{"spin rotate", "on", "on?"},
	{"spin wiggle rock waggle", "", "check"},
	{"measure clock gauge mike", "", "measure"},
	{"weigh", "", "measure"},
	// set
	{"adjust readjust trim calibrate", "", "adjust"},
	{"set", "to at", "adjust"},
	{"set", "", "set?"},
	{"reset zero", "", "reset"},
	{"tension retension", "", "tension"},
	{"align realign", "", "align"},
	{"line", "up", "align"},
	// up and down
	{"jack hoist crank winch", "up", "raise"},
	{"raise jack hoist", "", "raise"},
	{"tip lift", "up", "raise"},
	{"get", "up", "raise"},
	{"prop support", "", "support"},
	{"set rest block sit", "on", "seton?"},
	{"chock", "", "chock"},
	{"lower", "", "lower"},
	{"drop", "", "drop?"},
	{"let drop fold folded bring run wind", "down", "lower"},
	// power
	{"isolate deenergise deenergize", "", "isolate"},
	{"switch turn knock shut", "off", "switchoff?"},
	{"switch turn", "on", "switchon?"},
	{"shut close", "", "close"},
	{"shut close turn", "off", "close?"},
	{"open", "", "open"},
	{"start restart", "", "start"},
	{"fire start crank", "up", "start"},
	{"shut shuts", "down", "stop"},
	{"run", "", "run"},
	{"stop", "", "stop"},
	{"depressurise depressurize", "", "relieve"},
	{"discharge", "", "relieve?"},
	// edges and marks
	{"sharpen dress hone regrind grind", "", "sharpen"},
	{"file deburr", "", "file"},
	{"mark scribe", "", "mark"},
	{"dispose", "", "dispose"},
	{"flip turn", "over round around", "turnover"},
	{"record log", "", "record?"},
}

// otherForms are forms of verbs that no rule gives.
var otherForms = sync.OnceValue(func() map[string]string {
	return map[string]string{"taken": "take", "done": "do", "put": "put", "cut": "cut", "set": "set", "shut": "shut", "drawn": "draw", "blown": "blow", "torn": "tear", "driven": "drive", "wound": "wind", "fed": "feed", "bled": "bleed", "swept": "sweep", "swapped": "swap", "binned": "bin", "chucked": "chuck", "thrown": "throw", "hung": "hang", "got": "get", "given": "give", "run": "run"}
})

// participle gives the verb of a form that tells what is done to a thing: greased, changed,
// done, changing; "" where it is none.
func participle(text string) string {
	if verb, ok := otherForms()[text]; ok {
		return verb
	}
	for _, end := range []string{"ed", "ing"} {
		bare, ok := strings.CutSuffix(text, end)
		if !ok || len(bare) < 2 {
			continue
		}
		for _, verb := range []string{bare, bare + "e", bare[:len(bare)-1], strings.TrimSuffix(bare, "i") + "y"} {
			if len(verb) > 1 && actionWords()[verb] && (verb != bare[:len(bare)-1] || bare[len(bare)-1] == bare[len(bare)-2]) {
				return verb
			}
		}
	}
	return ""
}

// actionWords are all words of work, that are no names of parts before a noun.
var actionWords = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, row := range deedRows {
		for verb := range strings.FieldsSeq(row.verbs) {
			out[verb] = true
			if other := withS(verb); other != "" {
				out[other] = true
			}
		}
	}
	return out
})

// withS gives the form of a verb for he, she and it; "" where it has one already.
func withS(verb string) string {
	switch {
	case strings.HasSuffix(verb, "s") && !strings.HasSuffix(verb, "ss") || strings.HasSuffix(verb, "ed"):
		return ""
	case strings.HasSuffix(verb, "ss") || strings.HasSuffix(verb, "sh") || strings.HasSuffix(verb, "ch") || strings.HasSuffix(verb, "x") || strings.HasSuffix(verb, "o"):
		return verb + "es"
	case strings.HasSuffix(verb, "y") && !strings.HasSuffix(verb, "ay"):
		return verb[:len(verb)-1] + "ies"
	}
	return verb + "s"
}
