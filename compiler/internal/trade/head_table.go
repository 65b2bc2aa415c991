package trade

// ISO 272 as used by ISO 4014, 4017 and 4032, read for M3 to M36 (Width across flats in
// Wikipedia, machinecalcs.com, gumyr/bd_warehouse hex_head_parameters.csv, BOLTS data/hex.blt).
var iso272 = map[string]float64{"M3": 5.5, "M4": 7, "M5": 8, "M6": 10, "M7": 11, "M8": 13, "M10": 16, "M12": 18, "M14": 21, "M16": 24,
	"M18": 27, "M20": 30, "M22": 34, "M24": 36, "M27": 41, "M30": 46, "M33": 50, "M36": 55}

// ISO 272 sizes from memory.
var iso272Rest = map[string]float64{"M1.6": 3.2, "M2": 4, "M2.5": 5, "M3.5": 6, "M39": 60, "M42": 65, "M45": 70, "M48": 75, "M52": 80}

// DIN 931, 933 and 934 kept the older widths for four sizes (same sources).
var dinHex = map[string]float64{"M10": 17, "M12": 19, "M14": 22, "M22": 32}

// JIS B 1180 annex, small series: common on engines from Japan. For information; from memory.
var jisSmall = map[string]float64{"M8": 12, "M10": 14, "M12": 17, "M14": 19, "M16": 22}

func hexColumns(standard, older string) []sizes {
	return []sizes{
		{standard: standard, mm: iso272},
		{standard: "ISO 272", fromMemory: true, mm: iso272Rest},
		{standard: older, mm: dinHex},
		{standard: "JIS B 1180 small series", fromMemory: true, mm: jisSmall},
	}
}

// Flange columns: ISO 15071 and ISO 4162, EN 1662, EN 1665 (FreeCAD_FastenersWB FsData).
// Hexagon sockets: ISO 4762, ISO 7380, ISO 10642, ISO 4026 (FreeCAD_FastenersWB FsData,
// gumyr/bd_warehouse socket_head_cap_parameters.csv); the second column of a head is from memory.
var metricWidths = map[string][]sizes{
	"hex":        hexColumns("ISO 272 (ISO 4014, ISO 4017)", "DIN 931, DIN 933"),
	"nut":        hexColumns("ISO 272 (ISO 4032)", "DIN 934"),
	"castle-nut": hexColumns("ISO 272 (ISO 7035)", "DIN 935"),
	"hex-flange": {
		{standard: "ISO 15071, ISO 4162", mm: map[string]float64{"M5": 7, "M6": 8, "M8": 10, "M10": 13, "M12": 15, "M14": 18, "M16": 21}},
		{standard: "EN 1662", mm: map[string]float64{"M12": 16}},
	},
	"hex-flange-heavy": {
		{standard: "EN 1665", mm: map[string]float64{"M5": 8, "M6": 10, "M8": 13, "M10": 16, "M12": 18, "M14": 21, "M16": 24, "M20": 30}},
	},
	"socket": {
		{standard: "ISO 4762", mm: map[string]float64{"M1.6": 1.5, "M2": 1.5, "M2.5": 2, "M3": 2.5, "M4": 3, "M5": 4, "M6": 5, "M8": 6, "M10": 8,
			"M12": 10, "M14": 12, "M16": 14, "M20": 17, "M24": 19, "M30": 22, "M36": 27}},
		{standard: "ISO 4762, DIN 912", fromMemory: true, mm: map[string]float64{"M18": 14, "M22": 17, "M27": 19, "M33": 24}},
	},
	"button": {
		{standard: "ISO 7380", mm: map[string]float64{"M3": 2, "M4": 2.5, "M5": 3, "M6": 4, "M8": 5, "M10": 6, "M12": 8, "M16": 10}},
	},
	"countersunk": {
		{standard: "ISO 10642", mm: map[string]float64{"M3": 2, "M4": 2.5, "M5": 3, "M6": 4, "M8": 5, "M10": 6, "M12": 8, "M14": 10, "M16": 10, "M20": 12}},
		{standard: "DIN 7991", fromMemory: true, mm: map[string]float64{"M24": 14}},
	},
	"set-screw": {
		{standard: "ISO 4026 to ISO 4029", mm: map[string]float64{"M3": 1.5, "M4": 2, "M5": 2.5, "M6": 3, "M8": 4, "M10": 5, "M12": 6, "M14": 6, "M16": 8, "M18": 10, "M20": 10, "M24": 12}},
	},
}

// ASME B18.2.1 hexagon cap screws and bolts (FreeCAD_FastenersWB asmeb18.2.1.6def.csv, machinecalcs.com; #8 and #10 BOSL2 screws.scad).
var asmeHex = map[string]string{"#8": "1/4", "#10": "5/16", "1/4": "7/16", "5/16": "1/2", "3/8": "9/16", "7/16": "5/8", "1/2": "3/4", "9/16": "13/16",
	"5/8": "15/16", "3/4": "1-1/8", "7/8": "1-5/16", "1": "1-1/2", "1-1/8": "1-11/16", "1-1/4": "1-7/8", "1-3/8": "2-1/16", "1-1/2": "2-1/4"}

// asmeNut is ASME B18.2.2: as the bolt heads, but the 7/16 and 9/16 nuts are wider (FreeCAD_FastenersWB asmeb18.2.2.4def.csv).
var asmeNut = map[string]string{"1/4": "7/16", "5/16": "1/2", "3/8": "9/16", "7/16": "11/16", "1/2": "3/4", "9/16": "7/8",
	"5/8": "15/16", "3/4": "1-1/8", "7/8": "1-5/16", "1": "1-1/2", "1-1/8": "1-11/16", "1-1/4": "1-7/8", "1-3/8": "2-1/16", "1-1/2": "2-1/4"}

// Inch hexagon sockets, ASME B18.3: caps from gumyr/bd_warehouse, the others from
// FreeCAD_FastenersWB asmeb18.3.3adef.csv, asmeb18.3.2def.csv and asmeb18.3.5def.csv.
// Flanges: asmeb18.2.1.8def.csv. Square heads are from memory of ASME B18.2.1.
var inchWidths = map[string][]sizes{
	"hex":        {{standard: "ASME B18.2.1", inch: asmeHex}},
	"nut":        {{standard: "ASME B18.2.2", inch: asmeNut}, {standard: "machine screw nut, ASME B18.6.3", fromMemory: true, inch: map[string]string{"#8": "11/32", "#10": "3/8"}}},
	"castle-nut": {{standard: "ASME B18.2.2", inch: asmeNut}},
	"hex-flange": {{standard: "ASME B18.2.1", inch: map[string]string{"1/4": "3/8", "5/16": "1/2", "3/8": "9/16", "7/16": "5/8", "1/2": "3/4", "5/8": "15/16", "3/4": "1-1/8"}}},
	"square": {{standard: "ASME B18.2.1", fromMemory: true, inch: map[string]string{"1/4": "3/8", "5/16": "1/2", "3/8": "9/16", "7/16": "5/8", "1/2": "3/4",
		"5/8": "15/16", "3/4": "1-1/8", "7/8": "1-5/16", "1": "1-1/2"}}},
	"socket": {{standard: "ASME B18.3", inch: map[string]string{"#4": "3/32", "#6": "7/64", "#8": "9/64", "#10": "5/32", "1/4": "3/16", "5/16": "1/4", "3/8": "5/16",
		"7/16": "3/8", "1/2": "3/8", "5/8": "1/2", "3/4": "5/8", "7/8": "3/4", "1": "3/4"}}},
	"button": {{standard: "ASME B18.3", inch: map[string]string{"#4": "1/16", "#6": "5/64", "#8": "3/32", "#10": "1/8", "1/4": "5/32", "5/16": "3/16", "3/8": "7/32", "1/2": "5/16", "5/8": "3/8"}}},
	"countersunk": {{standard: "ASME B18.3", inch: map[string]string{"#4": "1/16", "#6": "5/64", "#8": "3/32", "#10": "1/8", "1/4": "5/32", "5/16": "3/16", "3/8": "7/32",
		"7/16": "1/4", "1/2": "5/16", "5/8": "3/8", "3/4": "1/2", "7/8": "9/16", "1": "5/8"}}},
	"set-screw": {{standard: "ASME B18.3", inch: map[string]string{"#5": "1/16", "#6": "1/16", "#8": "5/64", "#10": "3/32", "1/4": "1/8", "5/16": "5/32", "3/8": "3/16",
		"7/16": "7/32", "1/2": "1/4", "5/8": "5/16", "3/4": "3/8", "7/8": "1/2", "1": "9/16"}}},
}

// Plugs, all from memory. DIN 906 and 908 share their keys; DIN 910 is the hexagon plug; ASME B16.14 the square head.
var (
	plugKeys = sizes{standard: "DIN 906, DIN 908", fromMemory: true, mm: map[string]float64{
		"M10": 5, "M12": 6, "M14": 6, "M16": 8, "M18": 8, "M20": 10, "M22": 10, "M24": 12, "M26": 12, "M27": 12, "M30": 17, "M33": 17, "M36": 19,
		"G 1/8": 5, "G 1/4": 6, "G 3/8": 8, "G 1/2": 10, "G 3/4": 12, "G 1": 17, "R 1/8": 5, "R 1/4": 7, "R 3/8": 8, "R 1/2": 10, "R 3/4": 12, "R 1": 17,
	}, inch: map[string]string{"1/16 NPT": "5/32", "1/8 NPT": "3/16", "1/4 NPT": "1/4", "3/8 NPT": "5/16", "1/2 NPT": "3/8", "3/4 NPT": "9/16", "1 NPT": "5/8"}}
	hexPlugs = sizes{standard: "DIN 910", fromMemory: true, mm: map[string]float64{
		"G 1/8": 10, "G 1/4": 13, "G 3/8": 17, "G 1/2": 19, "G 3/4": 24, "G 1": 27}}
	squarePlugs = sizes{standard: "ASME B16.14", fromMemory: true, inch: map[string]string{
		"1/8 NPT": "9/32", "1/4 NPT": "3/8", "3/8 NPT": "7/16", "1/2 NPT": "9/16", "3/4 NPT": "5/8", "1 NPT": "13/16"}}
)
