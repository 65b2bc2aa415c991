package draft

// deed is what is done. Those that end in ? depend on what they are done to.
type deedRow struct {
	verbs     string // forms of the verb
	particles string // words that stand behind it, with or without the object between; "" where none
	deed      string
}

// deedRows are the words of work, and the language's verb for each.
var deedRows = []deedRow{
	{"take takes pull pulls lift lifts get gets whip slide slip slips knock draw pop prise drive tap unscrew unbolt screw fetch", "off out", "off?"},
	{"pull pulls", "", "pull?"},
	{"pack repack", "", "grease"},
	{"remove undo unscrew unbolt strip removing", "", "off?"},
	{"out", "with", "off?"},
	{"put puts push pushes fit fits slide screw bolt refit install reinstall pop", "back in on", "on?"},
	{"refit reinstall reassemble", "", "on?"},
	{"unhook unclip disconnect unplug uncouple unhitch", "", "disconnect"},
	{"reconnect couple", "", "connect"},
	{"hook plug clip hitch", "up in on", "connect"},
	{"replace renew swap", "", "replace"},
	{"swap change", "out over", "replace"},
	{"change changes changed", "", "change?"},
	{"slack slacken loosen crack", "", "loosen"},
	{"back slack free", "off", "loosen"},
	{"tighten torque retorque snug pinch", "", "tighten"},
	{"nip do cinch pull snug", "up", "tighten"},
	{"nip do pull", "tight", "tighten"},
	{"lock", "", "lock?"},
	{"drain drains", "", "drain"},
	{"let", "drain out", "drain"},
	{"pump suck syphon siphon", "out", "pumpout"},
	{"empty dump", "", "drain"},
	{"fill refill", "", "fill"},
	{"top tops", "up", "fill"},
	{"bleed bleeds", "", "bleed"},
	{"grease", "", "grease"},
	{"oil lube lubricate", "", "lubricate"},
	{"clean wipe brush vacuum wash scrape degrease dust", "", "clean"},
	{"blow hose", "out off down", "clean"},
	{"inspect examine", "", "inspect"},
	{"look", "at for over", "inspect"},
	{"check", "", "check"},
	{"make", "sure", "check"},
	{"test", "", "check"},
	{"spin", "on", "on?"},
	{"spin wiggle rock", "", "check"},
	{"measure clock", "", "measure"},
	{"adjust", "", "adjust"},
	{"set", "to", "adjust"},
	{"tension", "", "tension"},
	{"align", "", "align"},
	{"line", "up", "align"},
	{"jack hoist", "up", "raise"},
	{"raise", "", "raise"},
	{"tip lift", "up", "raise"},
	{"get", "up", "raise"},
	{"prop support", "", "support"},
	{"set rest block sit", "on", "seton?"},
	{"chock", "", "chock"},
	{"lower", "", "lower"},
	{"let drop fold folded bring", "down", "lower"},
	{"isolate", "", "isolate"},
	{"switch turn knock shut", "off", "switchoff?"},
	{"switch turn", "on", "switchon?"},
	{"shut close", "", "close"},
	{"open", "", "open"},
	{"start", "", "start"},
	{"fire", "up", "start"},
	{"shut shuts", "down", "stop"},
	{"run", "", "run"},
	{"stop", "", "stop"},
	{"sharpen dress hone", "", "sharpen"},
	{"file", "", "file"},
	{"mark", "", "mark"},
	{"dispose", "", "dispose"},
}

// actionWords are all words of work, that are no names of parts before a noun.
var actionWords = func() map[string]bool {
	out := map[string]bool{}
	for _, row := range deedRows {
		for verb := range set(row.verbs) {
			out[verb] = true
		}
	}
	return out
}()
