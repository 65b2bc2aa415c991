package draft

import (
	"slices"
	"strings"
	"testing"
)

// tradeNotes are sentences of many trades in several voices, written before the rules that read
// them, by what is taken from them; "!" stands before what must not be taken. A * in
// what is wanted stands for any words.
var tradeNotes = []struct {
	notes string
	want  []string
}{
	// dictated
	{"Right, this is the pillar drill. Pull the plug out of the wall before you touch anything.", []string{"action isolate mains"}},
	{"Undo the three cap screws on the chuck guard with a five mil allen key and lift the guard away.", []string{"count 3", "size 5 mm", "tool hex key", "action remove *guard", "action remove *screws"}},
	{"Drift the chuck off with the wedge and wipe the taper down with a clean rag.", []string{"action remove *chuck", "action clean *taper", "tool rag", "!action clean chuck"}},
	{"Knock the old bearing out with a brass drift and press the new one in square.", []string{"action remove *bearing", "tool punch"}},
	{"The rack wants a smear of grease every six months.", []string{"interval 6 months", "action *rack"}},
	{"Back wheel off, cassette off with the chain whip and the lockring tool, then soak the cassette in degreaser for twenty minutes.", []string{"action remove *wheel", "action remove *cassette", "tool chain whip", "wait 20 min"}},
	{"Cassette lockring is forty newton metres.", []string{"torque 40 N·m", "action tighten *lockring"}},
	{"Brake pads under one and a half millimetres get binned.", []string{"range min 1.5 mm", "action replace brake pads"}},
	{"Stem bolts five newton metres, and do not go over six.", []string{"torque 5 N·m", "part stem bolt", "!torque 6 N·m"}},
	{"Check the headset for play and the spokes for any loose ones.", []string{"action check *headset", "action check *spokes"}},
	{"Take the return air filters out of the air handler, four of them, and slide the new ones in with the arrow towards the fan.", []string{"count 4", "action remove *filters"}},
	{"Hose the condenser coil down from the inside out, low pressure or you'll flatten the fins.", []string{"action clean *coil"}},
	{"Pour a jug of water in the condensate tray and make sure it drains away.", []string{"action check *"}},
	{"Contactor points, if they are pitted the contactor gets replaced.", []string{"action replace *contactor", "action inspect *"}},
	{"The compressor crankcase heater has to be warm before you start it.", []string{"action check *heater"}},
	{"Discharge the capacitor with the insulated screwdriver, it can bite you an hour after.", []string{"hazard shock", "tool screwdriver"}},
	{"Low side ought to be about sixty five psi and the high side two hundred and twenty five.", []string{"range 65 psi"}},
	{"Teat cup liners are changed every two thousand five hundred milkings.", []string{"action replace *liners"}},
	{"Flush the milk line with hot water and acid, wear the goggles and the long gloves, that acid will burn you.", []string{"action flush *line", "tool goggles", "tool gloves", "hazard corrosive"}},
	{"On the inboard diesel the raw water strainer, shut the seacock first, then unscrew the lid and rinse the basket.", []string{"action close *seacock", "action remove *lid", "action clean *basket"}},
	{"Pull the impeller with the puller, count the vanes, and if one is missing you have to find it.", []string{"action remove *impeller", "tool puller", "action inspect *"}},
	{"New impeller goes in with a smear of glycerine, blades bent the way it turns.", []string{"action replace *impeller"}},
	{"Shaft anodes, undo two allen bolts each, swap them when they're half wasted.", []string{"action replace *anodes", "count 2"}},
	{"The stern gland should drip three times a minute with the shaft turning.", []string{"range 3 drops/min"}},
	{"Gearbox oil is ATF, one point one litres, and it's changed every five hundred hours.", []string{"fluid ATF", "amount 1.1 L", "interval 500 h", "action fill *gearbox"}},
	{"Chain bar, turn it over each time you sharpen and clean the groove out with a bit of wire.", []string{"action clean *groove", "action turn-over *bar"}},
	{"Depth gauges want to be twenty five thou below the cutters.", []string{"range 0.025 in"}},
	{"Drop the mower deck, two lynch pins each side, and drag it out from under.", []string{"action remove *pins", "action lower *deck"}},
	{"Blade bolts are ninety foot pounds, use a block of wood to stop the blade turning.", []string{"torque 90 lbf·ft", "tool block", "action tighten blade bolts"}},
	{"Grease the spindle housings, one zerk on each, two pumps.", []string{"amount 2 strokes", "action grease spindle housings"}},
	{"Clean the cooling fins with a stiff brush, not the pressure washer.", []string{"action clean *fins", "tool brush", "!tool pressure washer"}},
	{"The drive belt is tight when it gives half an inch under ten pounds.", []string{"range 1/2 in", "range 10 lbf"}},
	{"Lower the forks to the floor, handbrake on, key out.", []string{"action lower forks", "action isolate *"}},
	{"Mast chains, hose the muck off, look for stretched links and brush chain oil on.", []string{"action inspect *", "action lubricate *"}},
	{"Tilt cylinder pins, four grease nipples, until you see clean grease.", []string{"count 4", "action grease *pins"}},
	{"Battery water, top the cells up with distilled water after charging, never before.", []string{"action fill *", "fluid distilled water"}},
	{"Watch the acid, goggles and rubber gloves, and no sparks because it gives off hydrogen.", []string{"hazard battery-gas", "tool goggles", "tool gloves"}},
	{"Jack the back axle up, stands under the beam, and take both wheels off.", []string{"action raise *axle", "tool stand", "action remove wheels", "count 2"}},
	{"Brake drums, two locating screws, tap the drum with the mallet if it's stuck.", []string{"count 2", "tool mallet"}},
	{"Bleed the brakes starting at the furthest wheel, DOT four, and don't let the reservoir run dry.", []string{"action bleed brakes", "fluid DOT 4"}},
	{"Wheel nuts a hundred and ten newton metres in a star pattern, then check them again after fifty kilometres.", []string{"torque 110 N·m", "interval 50 km", "action tighten wheel nuts"}},
	{"Bandsaw, open both doors, take the tension off with the handwheel and lift the blade out.", []string{"action open *doors", "action remove *blade", "action slacken *"}},
	{"Mind the teeth, wear the leather gloves.", []string{"hazard edge", "tool gloves"}},
	{"Guides one tenth of a millimetre off the blade, use a bit of paper.", []string{"range 0.1 mm"}},
	{"Dust extractor, shake the bags down and empty the drum, dust mask on.", []string{"hazard dust", "tool mask", "action empty *"}},
	{"Way oil reservoir on the mill, fill it to the line with ISO VG 68.", []string{"fluid ISO VG 68", "action fill *reservoir"}},
	{"Gib screw, nip it up till the table just drags, then lock the nut.", []string{"action tighten *"}},
	{"Coolant tank, pump it out, shovel the swarf out and put fresh in at eight percent.", []string{"range 8 %", "action drain coolant tank", "action clean coolant tank"}},
	{"Dough mixer, unplug it, drop the bowl and take the hook off.", []string{"action remove *hook", "action isolate *", "action lower *bowl"}},
	{"Planetary gearbox takes food grade grease, about three hundred grams.", []string{"amount 300 g", "fluid food-grade grease"}},
	{"Chain hoist, run the hook all the way down, clean the load chain and oil it with a rag, measure eleven links with the caliper.", []string{"action lower *hook", "action clean *chain", "action lubricate *chain", "tool rag", "tool caliper", "action measure *"}},
	{"Bin the sling if there's any cut in it.", []string{"action replace *sling", "action inspect *sling"}},
	{"Wire feed rollers on the MIG set, blow them out with the air gun, then change the contact tip and the liner.", []string{"action clean *rollers", "tool air gun", "action replace *tip", "action replace *liner"}},
	{"Check the earth clamp for burn marks.", []string{"action check *clamp"}},
	{"Gas regulator, spray soapy water on the joints and look for bubbles.", []string{"action inspect *joints", "fluid soapy water"}},
	// typed
	{"SNOW BLOWER\nshear pins x4, replace w/ OEM only, 10 mm wrench", []string{"count 4", "action replace shear pins", "size 10 mm", "tool wrench"}},
	{"skid shoes: adj to 1/8 in off ground, 2 bolts ea side, 1/2 in wrench", []string{"action adjust skid shoes", "range 1/8 in", "count 2", "tool wrench", "size 1/2 in"}},
	{"friction wheel: insp, rpl if < 1/8 rubber left", []string{"action inspect friction wheel", "action replace friction wheel"}},
	{"auger gbx: lvl plug 3/8 sq, top up GL-5 80W90", []string{"fluid 80W-90", "fluid GL-5", "size 3/8 in", "action fill auger gearbox"}},
	{"- LOTO panel 4, try start", []string{"action isolate mains", "action prove mains"}},
	{"- rmv guard (6 off M8, 13 AF)", []string{"action remove *guard", "count 6", "size M8", "size 13 mm"}},
	{"- coupling insert: check wear, rpl if cracked. Hub grub scr 8 Nm + blue loctite type", []string{"action check *insert", "action replace *insert", "torque 8 N·m"}},
	{"- align: rim 0.05 mm TIR, face 0.05", []string{"range 0.05 mm", "action align *"}},
	{"- brgs DE+NDE 6205, 15 g ea, EP2, ev 4000 h", []string{"fluid NLGI 2", "amount 15 g", "interval 4000 h", "action grease *bearings"}},
	{"- start, 1 h run, brg temp < 80 C, vib < 4.5 mm/s", []string{"range max 80 °C", "wait 1 h", "range max 4.5 mm/s"}},
	{"Burner svc (annual). Gas cock shut, isolator off. Nozzle 0.75 gal/h 60 deg - renew.", []string{"interval 1 year", "action close *cock", "action isolate mains", "action replace nozzle"}},
	{"Electrodes: gap 3-4 mm. Photocell: clean w/ soft cloth.", []string{"range 3 to 4 mm", "action clean photocell"}},
	{"CO2 11.5-12.5 %, smoke 0-1, flue temp 180-220 °C. Record.", []string{"range 11.5 to 12.5 %", "range 180 to 220 °C"}},
	{"Bike: chain - clean, lube, rpl at 0.75 % wear", []string{"action clean chain", "action lubricate chain", "action replace chain", "range max 0.75 %"}},
	{"quad: valve clr in .10 mm ex .15 mm COLD", []string{"range 0.10 mm", "range 0.15 mm"}},
	{"air box: tap out paper elem, new if oily", []string{"action clean *element", "action replace *element"}},
	{"sprayer: flush tank 3x w/ clean water, nitrile gloves, face shield", []string{"action flush *tank", "tool gloves", "tool face shield", "count 3"}},
	{"nozzle filters 50 mesh, wash. diaphragm chk valves ok?", []string{"action clean nozzle filters"}},
	// captions without marks
	{"so then you want to loosen off the belt tensioner slip the old belt off and fit the new one making sure it sits in all the grooves", []string{"action loosen belt tensioner", "action remove *belt", "action replace *belt"}},
	{"now grab a thirteen mil socket and take out the four bolts holding the sump on there'll be a bit of oil left so have a tray ready", []string{"size 13 mm", "tool socket", "action remove sump bolts", "count 4", "tool drip tray"}},
	{"put a bead of sealant round the flange refit the sump and torque the bolts to ten newton metres in a cross pattern", []string{"action refit sump", "torque 10 N·m"}},
	{"you used to do it every thousand hours but now it's every two thousand", []string{"interval 2000 h", "!interval 1000 h"}},
	{"i had one last year where the key sheared and it cost us four hundred quid", []string{"!part key", "!count 400"}},
	{"the other machine takes eleven litres but this one's only nine", []string{"amount 9 L", "!amount 11 L"}},
	{"check the hoses for chafing the clips for tightness and the radiator for leaks", []string{"action check *hoses", "action check *clips", "action check *radiator"}},
	{"we fill it with straight forty no sorry straight thirty about two litres", []string{"fluid SAE 30", "amount 2 L", "!fluid SAE 40"}},
	{"make sure the guard is back on before you give it any power", []string{"action refit *guard"}},
	{"clean the screen and the float switch and the bottom of the tank", []string{"action clean *screen", "action clean *switch"}},
	{"somewhere between eight and ten bar on the gauge with the engine at two thousand revs", []string{"range 8 to 10 bar", "range 2000"}},
	{"keep your fingers out of there it'll have them off", []string{"hazard pinch"}},
	{"it weighs about forty kilos so use the engine hoist and a sling", []string{"hazard load", "tool hoist", "tool sling", "amount 40 kg"}},
	{"don't breathe that dust it's asbestos on the old ones", []string{"hazard dust"}},
	{"stay off the ladder if it's wet you'll come off it", []string{"hazard fall"}},
	{"no naked flames round there it's full of vapour", []string{"hazard fire"}},
	{"use two slings because one'll tip it", []string{"count 2", "tool sling"}},
}

// tradeFloor is how many of the things wanted of tradeNotes are read as wanted, at the least.
const tradeFloor = 197

func TestNotesOfManyTrades(t *testing.T) {
	all, right := 0, 0
	for _, row := range tradeNotes {
		made, err := Of([]byte(row.notes))
		if err != nil {
			t.Fatal(err)
		}
		var taken []string
		for _, one := range made.Taken {
			taken = append(taken, one.Kind+" "+one.Value)
		}
		for _, want := range row.want {
			all++
			bare, no := strings.CutPrefix(want, "!")
			if slices.ContainsFunc(taken, func(one string) bool { return wanted(one, bare) }) == no {
				t.Logf("%q: %q of %q", row.notes, want, taken)
				continue
			}
			right++
		}
	}
	t.Logf("%d of %d", right, all)
	if right < tradeFloor {
		t.Errorf("%d of %d are read as wanted, and were %d", right, all, tradeFloor)
	}
}

// wanted compares what was taken with what is wanted: "action remove *guard".
func wanted(one, want string) bool {
	before, behind, open := strings.Cut(want, "*")
	return one == want || open && strings.HasPrefix(one, before) && strings.HasSuffix(one, behind) && len(one) >= len(before)+len(behind)
}
