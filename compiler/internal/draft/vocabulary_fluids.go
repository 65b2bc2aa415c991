package draft

// services are classes of oils by their letters: API 1560 for gears, API for engines.
var services = []string{"GL-1", "GL-3", "GL-4", "GL-5", "GL-6", "MT-1", "CK-4", "CJ-4", "CI-4", "CH-4", "CF-4", "FA-4"}

// thickeners are those of greases, as they are called.
var thickeners = map[string]string{"lithium": "lithium", "calcium": "calcium", "sodium": "sodium", "barium": "barium", "clay": "clay", "bentone": "clay", "polyurea": "polyurea", "moly": "lithium"}

type productRow struct {
	said     string
	name     string
	kind     string // of the language
	what     fluidPart
	coloured bool
}

// productRows are fluids that go by a name.
var productRows = []productRow{
	{"lithium|little m|lithium grease", "lithium", "grease", thickenerPart, false},
	{"lithium complex", "lithium complex", "grease", thickenerPart, false},
	{"calcium", "calcium", "grease", thickenerPart, false},
	{"calcium sulfonate|calcium sulphonate", "calcium sulfonate", "grease", thickenerPart, false},
	{"polyurea", "polyurea", "grease", thickenerPart, false},
	{"thread locker|thread lock|threadlock|threadlocker|locking compound|thread locking", "thread-locker", "other", productPart, true},
	{"anti seize|antiseize|anti-seize|copper grease|copper slip|copaslip|copper paste|never seize|nickel paste", "anti-seize", "other", productPart, false},
	{"thread sealant|pipe dope|jointing compound|pipe sealant", "thread sealant", "other", productPart, false},
	{"antifreeze|anti freeze|ethylene glycol|glycol", "antifreeze", "coolant", productPart, false},
	{"atf|a t f|automatic transmission fluid|dexron", "ATF", "other", productPart, false},
	{"chain oil|bar oil|chain lube|chain lubricant", "chain oil", "chain-oil", namePart, false},
	{"engine oil|motor oil", "engine oil", "engine-oil", namePart, false},
	{"gear oil|axle oil", "gear oil", "gear-oil", namePart, false},
	{"hydraulic oil|hydraulic fluid", "hydraulic oil", "hydraulic-oil", namePart, false},
	{"compressor oil", "compressor oil", "compressor-oil", namePart, false},
	{"brake fluid", "brake fluid", "brake-fluid", namePart, false},
	{"coolant", "coolant", "coolant", namePart, false},
	{"two stroke oil|two stroke mix", "two-stroke oil", "engine-oil", namePart, false},
	{"machine oil|way oil|slideway oil|spindle oil", "machine oil", "hydraulic-oil", namePart, false},
	{"flow grease|fluid grease", "flow grease", "grease", namePart, false},
}

var colours = set("blue red green purple")

var products = func() (out phrases[productRow]) {
	for _, row := range productRows {
		out.addAll(row.said, row)
	}
	return out
}()
