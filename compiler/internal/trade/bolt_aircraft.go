package trade

// NmPerInchPound is 1 lbf·in in N·m: NIST SP 811 App. B.8, exact factors.
const NmPerInchPound = 0.1129848290276167

// BoltTorque is a row of FAA AC 43.13-1B, table 7-1, in lbf·in, for threads that are
// cadmium-plated and free of oil: recommended for tension and shear nuts, and the most.
type BoltTorque struct {
	Thread            string
	Tension, Shear    [2]float64
	MostTension, Most float64 // Most is for shear nuts
	Estimated         bool    // the shear figures are estimated in the source
}

// boltTorques is FAA AC 43.13-1B, table 7-1, fine threads and then coarse ones, as at
// landseaskyspace.com/ac4313/7-44.html.
var boltTorques = []BoltTorque{
	{"#8-36 UNF", [2]float64{12, 15}, [2]float64{7, 9}, 20, 12, false},
	{"#10-32 UNF", [2]float64{20, 25}, [2]float64{12, 15}, 40, 25, false},
	{"1/4-28 UNF", [2]float64{50, 70}, [2]float64{30, 40}, 100, 60, false},
	{"5/16-24 UNF", [2]float64{100, 140}, [2]float64{60, 85}, 225, 140, false},
	{"3/8-24 UNF", [2]float64{160, 190}, [2]float64{95, 110}, 390, 240, false},
	{"7/16-20 UNF", [2]float64{450, 500}, [2]float64{270, 300}, 840, 500, false},
	{"1/2-20 UNF", [2]float64{480, 690}, [2]float64{290, 410}, 1100, 660, false},
	{"9/16-18 UNF", [2]float64{800, 1000}, [2]float64{480, 600}, 1600, 960, false},
	{"5/8-18 UNF", [2]float64{1100, 1300}, [2]float64{600, 780}, 2400, 1400, false},
	{"3/4-16 UNF", [2]float64{2300, 2500}, [2]float64{1300, 1500}, 5000, 3000, false},
	{"7/8-14 UNF", [2]float64{2500, 3000}, [2]float64{1500, 1800}, 7000, 4200, false},
	{"1-14 UNS", [2]float64{3700, 5500}, [2]float64{2200, 3300}, 10000, 6000, true},
	{"1-1/8-12 UNF", [2]float64{5000, 7000}, [2]float64{3000, 4200}, 15000, 9000, true},
	{"1-1/4-12 UNF", [2]float64{9000, 11000}, [2]float64{5400, 6600}, 25000, 15000, true},
	{"#8-32 UNC", [2]float64{12, 15}, [2]float64{7, 9}, 20, 12, false},
	{"#10-24 UNC", [2]float64{20, 25}, [2]float64{12, 15}, 35, 21, false},
	{"1/4-20 UNC", [2]float64{40, 50}, [2]float64{25, 30}, 75, 45, false},
	{"5/16-18 UNC", [2]float64{80, 90}, [2]float64{48, 55}, 160, 100, false},
	{"3/8-16 UNC", [2]float64{160, 185}, [2]float64{95, 100}, 275, 170, false},
	{"7/16-14 UNC", [2]float64{235, 255}, [2]float64{140, 155}, 475, 280, false},
	{"1/2-13 UNC", [2]float64{400, 480}, [2]float64{240, 290}, 880, 520, false},
	{"9/16-12 UNC", [2]float64{500, 700}, [2]float64{300, 420}, 1100, 650, false},
	{"5/8-11 UNC", [2]float64{700, 900}, [2]float64{420, 540}, 1500, 900, false},
	{"3/4-10 UNC", [2]float64{1150, 1600}, [2]float64{700, 950}, 2500, 1500, false},
	{"7/8-9 UNC", [2]float64{2200, 3000}, [2]float64{1300, 1800}, 4600, 2700, false},
}

// FindBoltTorque looks a thread up in FAA AC 43.13-1B, table 7-1.
func FindBoltTorque(thread Thread) (BoltTorque, bool) {
	for _, row := range boltTorques {
		if row.Thread == thread.Written {
			return row, true
		}
	}
	return BoltTorque{}, false
}
