package draft

// toldRow is something to do that a phrase tells by itself, whatever stands beside it.
type toldRow struct {
	said   string
	verb   string
	object string // $energy, $machine, $prime, $cavity, $section, $fastener, $raised: what is spoken of
	needs  string // class of the section it holds in: "cavity", "belt", …; "" for any
}

// toldRows are phrases of the trade that tell a deed.
var toldRows = []toldRow{
	{"turn that to off|turn it to off|turned to off|turn it round to off|switch it to off|to off and|loto|lock out tag out|lockout tagout|key out|keys out|pull the key|take the keys|battery isolator out|unplug it|unplug the machine|unplug from the wall|pull the plug out of the wall|plug out of the wall|plug out the wall|plug out of the socket|pull the plug out of the socket|out of the wall socket|pull the mains plug|mains plug out|switch it off at the wall|turn it off at the wall|turn the power off|power off|kill the power|kill the mains|cut the power|mains off|supply off|local isolator|turn it off at the isolator|take the key|takes the key|key in your pocket|round to off|isolator off|isolator to off|lock it off at|lock off the|power off at|plug it out|breaker off|breakers off|main switch off|switch to off|switched to off|ignition off|master switch off|battery isolator off|off at the isolator|off at the wall|off at the mains|off at the switch|off at the breaker|padlock on it|padlock through it|lock it out|lock and tag it", "isolate", "$energy", ""},
	{"hit the green button|push the green button|press the green button|hit the start|push start|push the start|try start|try to run it|try the switch|try and run it|try the start|check it's dead|make sure nothing happens|make sure it won't start|make sure it doesn't start|check it won't start|check nothing happens|try it's dead|verify dead|prove dead|proved dead|check dead|is dead|= dead|across l one|try starting it|try and fire it|try the green button|try the start button|try the starter|press start|hit start|press the start|try to start it|try and start it|try it and nothing|push the start button|try the button|prove it dead|test it's dead|test for dead", "prove", "$energy", ""},
	{"power on|power back on|mains on|mains back on|plug it back in|plug it in|plug it in again|plug her back in|plugged back in|unlock it|lock off and|lock off power on|lock and tag off|isolate on|isolate back on|tag off|take your lock off|take the lock off|take your padlock off|take the padlock off|remove your lock|remove the lock|lock and tag off|isolator on|isolator back on|padlock off|locks off|power back on|breaker on|breaker back on|key back in|main switch on|fuse in|fuse back in", "restore", "$energy", ""},
	{"fuel on|fuel back on|tap on|fuel tap on", "open", "fuel valve", ""},
	{"water on|water back on|turn the water on|water supply on|turn the water back on", "open", "water valve", ""},
	{"red stop button|stop button works|test the stop button|try the stop button|check the stop button", "check", "emergency stop", ""},
	{"good and tight", "tighten", "$fastener", ""},
	{"key stays on you|key stays with you|key in your pocket|keys in your pocket|pocket the key", "remove", "key", ""},
	{"top up only|only top up|topping up only", "fill", "$cavity", "cavity"},
	{"fuel off|tap off|fuel tap off", "close", "fuel valve", ""},
	{"stop on panel|stop on the panel|stop at the panel|stop at panel|stop it at the panel|press stop|hit stop|press the stop|hit the stop button", "stop", "$machine", ""},
	{"red mushroom|emergency stop|e stop|mushroom button", "check", "emergency stop", ""},
	{"lever in float|in float with|lever worked both ways|work the lever|work the levers|worked both ways|lever both ways|let the pressure off|let the pressure out|let the pressure down|dump the pressure|bleed the pressure off|bleed the pressure down|levers back and forth|work it both ways|work them both ways|lever back and forth|handle back and forth|lever to and fro", "relieve", "hydraulic pressure", ""},
	{"bleed air|bleed off air|dump air|vent air|drain air|bleed the air off|bleed down the air|drain the receiver|drain the tank down|blow the air off|let the air off|let all the air|vent the tank|dump the tank|let the air out|let the air down|dump the air|blow it down|blow the tank down|air pressure off|drain the air", "relieve", "air pressure", "air"},
	{"get the air out|let the air out|air out of it|bleed the air|work the air out", "bleed", "$system", ""},
	{"no bubbles|no more bubbles|no air in it|bubbles stop", "bleed", "$system", ""},
	{"drain hot|drain warm|drain oil hot|drain oil warm|drain it hot|let it all drain|let that drain|let it all run|drain oil|drain the coolant|drain coolant|drain the fluid|drain old oil|oil out|dump the oil|old oil out|get the old oil|let it run into|let that run|run into|let it drain|let it run out|stops running|stopped running|let the oil out|let the oil run|let it all out|drain it off|drain the oil", "drain", "$oil", "cavity"},
	{"on the stick|on the dipstick|check the dipstick|pull the dipstick|look at the dipstick|on the glass", "check", "$level", "cavity"},
	{"put a stick in|bottom of the hole|level with the hole|up to the hole", "check", "$cavity", "cavity"},
	{"with a thumb|with your thumb|with my thumb|thumb pressure|press it in the middle|press in the middle|push it in the middle", "check", "belt tension", ""},
	{"snug with|just snug|hand tight|finger tight|nip it up|nip them up|do it up|do them up|snug it up", "tighten", "$fastener", ""},
	{"if the thread is good|if the threads are good|if the thread's good", "inspect", "$fastener", ""},
	{"few drops on|drop of oil on|smear of oil|drop of oil|squirt of oil|bit of oil on|wipe of oil|film of oil|dab of grease|smear of grease", "lubricate", "$last", ""},
	{"negative off|negative lead off|earth off|ground off|neg off", "disconnect", "battery", ""},
	{"positive on|positive back on|negative on|negative back on", "connect", "battery", ""},
	{"should hang|the sag|it should sag|sag of", "measure", "$section sag", ""},
	{"gets changed|get changed|gets replaced|get replaced|gets renewed|get renewed|wants changing|want changing|wants replacing|want replacing|needs changing|need changing|needs replacing|need replacing|gets a new one", "replace", "$section", ""},
	{"start outside|start it outside|fire it up|fire her up|crank it up", "start", "$prime", ""},
	{"it lifts out|it slides out|it pulls out|it comes off|it comes away|they lift out|they slide out|they pull out|they come off|it lifts off|it slides off|it pulls off|they lift off|they slide off", "remove", "$last", ""},
	{"dribble out|dribbles out|weep out|weeps out|run out of the hole|runs out of the hole|spill out of the hole", "check", "$level", "cavity"},
	{"level mid glass|level mid|level at the|level to the|level half|check the stick|check stick|check on the stick|recheck stick|dip it|dip the oil|check the level|check level|check the oil level|check oil level|check the oil|check oil|check the glass|look in the glass|look at the sight glass|look at the glass|check the sight glass|level in the glass|half way up the glass|middle of the glass|halfway up the glass|between the lines|between the marks|up to the line|up to the mark", "check", "$level", "cavity"},
	{"lock off|tag off", "restore", "$energy", ""},
	{"let it drip dry|let it dry|let them dry|let that dry|leave it to dry|leave to dry|leave them to dry|let dry|dry it off|dry them off|blow it dry|blow them dry", "dry", "$last", ""},
	{"wheels chocked|chocks in|chocks on|chocks under|wheels blocked", "chock", "wheels", ""},
	{"lifts straight off|lifts off|lift straight off|comes straight off|slides straight off|just lifts off|lifts away|just pulls off|pulls straight off", "remove", "$first", ""},
	{"look again", "check", "$level", "cavity"},
	{"look for leaks|check for leaks|look for any leaks|check for any leaks|see if anything's leaking|see if it leaks|check there's no leaks|leak check|any leaks|no leaks", "inspect", "leaks", ""},
	{"listen to it|have a listen|listen for any|listen for knocking|listen for anything|listen out for", "check", "$machine", ""},
	{"turn it in|wind it in|screw it in|turn the adjuster|wind the adjuster", "tension", "$section", "tensioned"},
	{"lever it down|lever it out|lever it back|pry it out|pry it back|pull it tight", "tension", "$belt", ""},
	{"old ones out|old one out|old ones off|old one off", "remove", "$section", ""},
	{"sign the book|sign it off|sign the sheet|sign the log", "record", "visit", ""},
	{"go with the brass brush|go with the wire brush|go with the brush|go with a brush|give it a brush|give it a wipe|give it a clean", "clean", "$last", ""},
}

type toldDeed struct {
	verb, object, needs string
}

var toldPhrases = &phrases[toldDeed]{fill: func(out *phrases[toldDeed]) {
	for _, row := range toldRows {
		out.addAll(row.said, toldDeed{row.verb, row.object, row.needs})
	}
}}

// dirt is what is taken off and out, so that the place is cleaned.
var dirt = set("string twine wire-wrap grass dirt dust chip chips swarf mud muck fluff lint leaves straw chaff sawdust shavings crud gunk rust hair net-wrap baling resin pitch scale grit debris gravel stones leaf bark slime algae barnacles weed weeds salt carbon soot ash grime crumbs flour dough residue deposits deposit buildup crap filth clippings fibres fibers thread cobwebs sludge oxide corrosion paint glue spatter slag dross limescale feathers manure slurry snow ice clay soil roots")

// bad are states that are looked for.
var bad = set("cracked worn glazed split torn damaged frayed scored chipped perished bent broken loose leaking weeping blunt rusty pitted burnt swollen cut nicked")

// defects are what is looked for.
var defects = set("glazing chunks fraying splitting flaking crack cracks wear leaks leak play damage fraying frays chips rust scoring burrs nicks tears splits cuts corrosion looseness")

// ownName are machines that are started and run by their own name, also where an engine drives
// them; of all others the engine is.
var ownName = set("pump generator genset compressor engine motor conveyor belt lathe welder")

// quantities are what is checked, measured and written down.
var quantities = cues("hrs|hour meter reading|oil level|current|voltage|temperatures|pressures|temp|clearances|runout|run out|stopping time|hour meter|hours|end float|end play|backlash|relief pressure|oil pressure|pressure|readings|reading|temperature|voltage|clearance|gap")
