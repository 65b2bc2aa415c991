package draft

import (
	"strings"
	"sync"
)

// class is what a part is, as far as the deed done to it depends on it.
type class int

const (
	plainPart class = iota
	fastener        // tightened
	plugPart        // tightened, and shuts a cavity
	sealPart        // renewed
	coverPart       // a cover or a guard
	linePart        // a cable, a hose, a cap that is pushed on: taken off is disconnected
	springPart
	valvePart
	cavityPart // holds a fluid
	energyPart // a switch, a key: turned off is isolated
	greasePart // a place that is greased
	movingPart // a part that turns: a belt, a chain, a blade
	filterPart
	wheelPart
	machinePart // a machine
	placePart   // a place rather than a part
	raisedPart  // something that is raised and let down
	supportPart // a prop, a locking pin
	signPart    // a lamp, an alarm, a panel
)

// headRows are the nouns of parts, by class.
var headRows = map[class]string{
	fastener:    "bolt screw nut stud capscrew setscrew fastener clamp u-bolt locknut wingnut fixing knob capnut grubscrew lag anchor",
	plugPart:    "plug",
	sealPart:    "washer ring o-ring gasket seal grommet circlip snapring splitpin cotter roll-pin lockwasher packing wiper-seal element",
	coverPart:   "cover guard lid hatch shield panel-cover cowl cowling shroud casing-cover door inspection-plate fairing hood bonnet",
	linePart:    "wire cable hose pipe cap connector terminal coupler",
	springPart:  "spring",
	valvePart:   "valve tap cock stopcock",
	cavityPart:  "tank sump reducer gearcase chaincase transmission gearbox crankcase reservoir radiator housing case box differential diff transaxle oiler",
	energyPart:  "isolator switch breaker disconnector disconnect lanyard",
	greasePart:  "nipple zerk fitting pin bush bushing pivot hinge bearing cross joint trunnion kingpin swivel",
	movingPart:  "belt chain blade knife tine cutter auger flail rotor pulley sprocket shaft spindle pto-shaft coupling roller drum wheel-hub hub fan impeller flywheel disc propeller roll sheave gear pinion cog worm agitator paddle beater crankshaft camshaft spline",
	filterPart:  "filter strainer cartridge bowl screen breather cleaner precleaner",
	wheelPart:   "wheel tyre tire track castor caster",
	machinePart: "machine controller outboard mower tractor tiller lathe pump dumper tedder saw engine motor generator compressor baler chipper conveyor excavator digger loader sprayer spreader trailer hoist crane truck forklift mixer cutter-bar splitter shredder harrow plough rake cultivator planer bandsaw winch chainsaw blower",
	raisedPart:  "wedge skip body bed deck boom arm bucket header mast platform tailgate drawbar tongue forks blade-arm",
	supportPart: "prop strut",
	signPart:    "light indicator",
	plainPart:   "foam backstop counterweight sensor probe anode base take-up scraper rail race cone collar regulator cell coil solenoid block column post fuse axle thread taper tensioner adjuster end ram cylinder piston gland quill plate bracket lever pedal handle clutch brake pad shoe lining caliper-brake idler jockey rope starter-rope carburettor carburetor carb needle injector glow-plug glass battery electrode contact relay bulb gauge-glass hook latch clip pawl hitch yoke flange sleeve liner banjo taper nose rib tooth magnet mandrel chuck collet jaw tailstock headstock tool-rest ram-eye sight-glass crosshead slide gib carriage apron-box governor linkage rod barrel nozzle diaphragm anode thermostat manifold exhaust silencer muffler spark-arrestor arrestor mounting mount stick-gauge",
}

// headPhrases are parts of more than one word that are heads of their own.
var headPhrases = map[string]struct {
	name  string
	class class
}{
	"rotary screw": {"screw compressor", machinePart}, "screw compressor": {"screw compressor", machinePart},
	"v bell": {"V-belt", movingPart}, "vee bell": {"V-belt", movingPart},
	"o ring": {"O-ring", sealPart}, "little window": {"sight glass", plainPart}, "oil window": {"sight glass", plainPart}, "level window": {"sight glass", plainPart}, "round window": {"sight glass", plainPart}, "sight gauge": {"sight glass", plainPart}, "oil eye": {"sight glass", plainPart}, "sight window": {"sight glass", plainPart}, "level glass": {"sight glass", plainPart}, "oil sight": {"sight glass", plainPart}, "foam one": {"foam filter", filterPart}, "paper one": {"paper filter", filterPart}, "foam element": {"foam element", filterPart}, "paper element": {"paper element", filterPart}, "hold downs": {"hold-down bolt", fastener}, "holding downs": {"hold-down bolt", fastener}, "pillow block": {"pillow block", greasePart}, "plummer block": {"plummer block", greasePart}, "flange block": {"flange bearing", greasePart}, "main brush": {"main brush", movingPart}, "side brush": {"side brush", movingPart}, "carbon brush": {"carbon brush", plainPart}, "pull cord": {"pull cord", signPart}, "trip cord": {"pull cord", signPart}, "pull wire": {"pull cord", signPart}, "take up": {"take-up", plainPart}, "tell tale": {"tell-tale", plainPart}, "start button": {"start button", placePart}, "stop button": {"stop button", placePart}, "lanyard clip": {"lanyard", energyPart}, "kill cord": {"lanyard", energyPart}, "kill switch": {"kill switch", energyPart}, "hold down bolt": {"hold-down bolt", fastener}, "holding down bolt": {"hold-down bolt", fastener}, "ally washer": {"aluminium washer", sealPart}, "alloy washer": {"aluminium washer", sealPart}, "copper washer": {"copper washer", sealPart}, "aluminium ring": {"aluminium sealing ring", sealPart}, "copper ring": {"copper sealing ring", sealPart},
	"castor wheel": {"castor wheel", wheelPart}, "caster wheel": {"caster wheel", wheelPart}, "filter element": {"filter element", filterPart}, "motor plate bolt": {"motor plate bolt", fastener}, "spark plug": {"spark plug", plainPart}, "glow plug": {"glow plug", plainPart}, "split pin": {"split pin", sealPart}, "cotter": {"cotter pin", sealPart}, "cotter pin": {"cotter pin", sealPart}, "roll pin": {"roll pin", sealPart},
	"r clip": {"R-clip", plainPart}, "lynch pin": {"linch pin", supportPart}, "linch pin": {"linch pin", supportPart}, "lock pin": {"lock pin", supportPart}, "locking pin": {"lock pin", supportPart}, "shear pin": {"shear pin", fastener}, "sheer pin": {"shear pin", fastener},
	"grease nipple": {"grease fitting", greasePart}, "grease fitting": {"grease fitting", greasePart}, "grease zerk": {"grease fitting", greasePart}, "grease point": {"grease fitting", greasePart},
	"lock nut": {"lock nut", fastener}, "nyloc": {"lock nut", fastener}, "nylock": {"lock nut", fastener}, "nyloc nut": {"lock nut", fastener}, "jam nut": {"lock nut", fastener}, "wing nut": {"wing nut", fastener}, "grub screw": {"grub screw", fastener}, "set screw": {"set screw", fastener}, "bleed screw": {"bleed screw", fastener}, "bleeder": {"bleed screw", fastener}, "bleed nipple": {"bleed screw", fastener}, "lug nut": {"wheel nut", fastener}, "jubilee clip": {"hose clip", fastener}, "hose clamp": {"hose clamp", fastener}, "hose clip": {"hose clip", fastener},
	"shear bolt": {"shear bolt", fastener}, "sheer bolt": {"shear bolt", fastener}, "banjo bolt": {"banjo bolt", fastener},
	"uni joint": {"universal joint", greasePart}, "u joint": {"universal joint", greasePart}, "universal joint": {"universal joint", greasePart}, "u j": {"universal joint", greasePart},
	"wire cap": {"cap", linePart}, "plug wire": {"spark plug wire", linePart}, "plug lead": {"spark plug wire", linePart}, "plug cap": {"spark plug cap", linePart}, "spark plug cap": {"spark plug cap", linePart}, "spark plug wire": {"spark plug wire", linePart}, "spark plug lead": {"spark plug wire", linePart}, "ht lead": {"spark plug wire", linePart},
	"pto shaft": {"PTO shaft", linePart}, "p t o shaft": {"PTO shaft", linePart}, "pto": {"PTO shaft", linePart}, "drive shaft": {"drive shaft", movingPart}, "half shaft": {"half shaft", movingPart}, "prop shaft": {"propeller shaft", movingPart},
	"oil stick": {"dipstick", plainPart}, "sight glass": {"sight glass", plainPart}, "test point": {"test point", plainPart}, "packing gland": {"packing gland", plainPart}, "stuffing box": {"packing gland", plainPart}, "tool rest": {"tool rest", plainPart}, "bed foot": {"bed feet", plainPart}, "machine foot": {"machine feet", plainPart}, "levelling foot": {"levelling feet", plainPart},
	"steering lever": {"steering lever", placePart}, "drawbar stand": {"drawbar stand", placePart}, "jack stand": {"jack stand", placePart},
	"spark arrestor": {"spark arrestor", filterPart}, "ignition switch": {"ignition switch", energyPart}, "dipstick": {"dipstick", plainPart}, "tool post": {"tool post", plainPart}, "nylon ring": {"nylon ring", placePart}, "battery bank": {"battery", plainPart}, "injector pipe": {"injector pipe", linePart},
	"throttle cable": {"throttle cable", linePart}, "brake cable": {"brake cable", linePart}, "drag bar": {"drag bar", plainPart}, "motor plate": {"motor plate", plainPart},
	"air filter": {"air filter", filterPart}, "air cleaner": {"air filter", filterPart}, "fuel filter": {"fuel filter", filterPart}, "oil filter": {"oil filter", filterPart}, "return filter": {"return filter", filterPart}, "hydraulic filter": {"hydraulic filter", filterPart},
	"v belt": {"V-belt", movingPart}, "vee belt": {"V-belt", movingPart}, "drive belt": {"drive belt", movingPart}, "fan belt": {"fan belt", movingPart}, "poly vee": {"drive belt", movingPart}, "poly v": {"drive belt", movingPart},
	"ice a later": {"isolator", energyPart}, "eyes a later": {"isolator", energyPart}, "mode switch": {"mode switch", energyPart}, "main switch": {"main switch", energyPart}, "ignition key": {"ignition key", energyPart}, "emergency stop": {"emergency stop", signPart}, "e stop": {"emergency stop", signPart}, "red mushroom": {"emergency stop", signPart}, "mushroom button": {"emergency stop", signPart},
	"car lift": {"car lift", machinePart}, "vehicle lift": {"vehicle lift", machinePart}, "scissor lift": {"scissor lift", machinePart}, "dust cap": {"dust cap", coverPart}, "drain cock": {"drain cock", valvePart}, "gear case": {"gear case", cavityPart}, "fuel tank": {"fuel tank", cavityPart}, "water bowl": {"water bowl", filterPart}, "end float": {"end float", plainPart}, "brake fluid reservoir": {"brake fluid reservoir", cavityPart},
	"fuel tap": {"fuel valve", valvePart}, "fuel valve": {"fuel valve", valvePart}, "fuel cock": {"fuel valve", valvePart}, "dead man": {"dead man's lever", plainPart},
	"battery clamp": {"battery clamp", linePart}, "battery terminal": {"battery terminal", linePart}, "battery lead": {"battery lead", linePart}, "battery cable": {"battery cable", linePart},
}

// modifiers are words before a noun that say which one it is; other nouns of parts do so too.
var modifiers = set(`wash rinse phillips load button vacuum solution recovery milk pillow plummer speed vent separator start stop pull trip chute hopper idle trim tensioning splash drip propeller prop marine drain level fill filler sump oil fuel air water coolant hydraulic gear main rotor front rear left right upper lower top bottom inner outer side input output return suction pressure relief safety
 shear sheer lock wing grub set bleed hold-down hold down wheel axle belt chain tine motor pulley engine gearbox pump battery negative positive ground earth spark plug glow shaft drive driven bed end pilot guide tool cam copper aluminium aluminum ally alloy brass steel nylon rubber felt paper fibre fiber
 sealing dust crush tab spring lid cap cover guard hinge fold skip ram pin hose pipe cable throttle choke clutch brake gland packing head cylinder rocker tappet valve manifold exhaust inlet intake mounting anchor clamp adjuster adjusting tension tensioner idler jockey tail head headstock tailstock spindle bearing sprocket track roller
 blade knife cutter mower deck feed discharge auger flail drum reel bar arm boom bucket lift tilt steering castor caster king ball universal uni slip splined flexible coupling flywheel ring crown pinion worm bevel reduction final transfer tipper tip hitch drawbar pto master slave header test sight dip inspection access belt-guard filter element strainer bowl sediment cartridge magnetic castle locking retaining centre center pivot swivel turntable slew chassis frame foot seat engine-mount thrust vee v fan timing cam crank con conrod rod flange flanged swing star knock banjo stop spindle grease oil lubrication wheel nut bolt screw stud mill saw band swingarm mast rope winch hook anvil hammer screen grate concave shaker elevator injector nozzle lance agitator impeller volute casing wear tine-clutch clutch packing vent breather dipstick rear-tine hold heat fin pot return diverter shutoff isolating main-box shock absorber starter alternator dynamo regulator governor rim hub kingpin trunnion weld mast skid shoe runner share point coulter floor carriage column post slide corner equalizer safety foundation anchor head base footing `)

// stopWords end a search for words that say which part it is: they are no nouns.
var stopWords = set(`none a an the this that these those it its it's they them their there there's here one two three four five six seven eight nine ten both each every all any some no not never don't and or but so then than if when while till until because as at by for from in into of off on onto out over to under up with without within about above after again along around before behind below beneath between beside down through near past
 is are was were be been being am has have had do does did done get gets got getting go goes going gone went come comes came can can't could will won't would should may might must need needs want wants let lets leave leaves keep keeps make makes put puts take takes took pull pulls push pushes turn turns hold holds give gives see sees look looks check checks clean cleans wipe wipes fit fits run runs set sets new old good bad other same little big small wee tiny short long whole first second last next more less most least much many few right just only even still also too very really quite pretty about yeah yes no well okay ok um er uh ah oh you you'll you've you're your i i'm i've i'd i'll we he she who what where which how why my our his her us me him mate lads lad folks people somebody someone anybody
 said says say tell tells think know knows mind watch careful dry wet hot warm cold loose tight clear full empty hand finger thumb proper plain straight flat round square sharp blunt worn cracked bent dirty fine lowest highest biggest smallest longest nearest`)

type partName struct {
	name  string
	class class
}

var heads = sync.OnceValue(func() map[string]class {
	out := map[string]class{}
	for class, nouns := range headRows {
		for noun := range strings.FieldsSeq(nouns) {
			out[noun] = class
		}
	}
	for _, row := range nounRows {
		for noun := range strings.FieldsSeq(row.nouns) {
			if _, ok := out[noun]; !ok && !strings.Contains(noun, "-") {
				out[noun] = row.class
			}
		}
	}
	return out
})

var partPhrases = &phrases[partName]{fill: func(out *phrases[partName]) {
	known := map[string]bool{}
	for said, part := range headPhrases {
		out.add(said, partName{part.name, part.class})
		known[said] = true
	}
	for _, row := range nounRows {
		for noun := range strings.FieldsSeq(row.nouns) {
			if called := strings.ReplaceAll(noun, "-", " "); called != noun && !known[called] {
				out.add(called, partName{called, row.class})
				known[called] = true
			}
		}
	}
	for _, row := range nounPhrases {
		for called := range strings.SplitSeq(row.said, "|") {
			if !known[called] {
				out.add(called, partName{called, row.class})
				known[called] = true
			}
		}
	}
}}
