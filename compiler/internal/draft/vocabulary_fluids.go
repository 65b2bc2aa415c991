package draft

import "sync"

// services are classes of oils by their letters: API 1560 for gears, API for engines.
var services = []string{"GL-1", "GL-3", "GL-4", "GL-5", "GL-6", "MT-1", "CK-4", "CJ-4", "CI-4", "CH-4", "CF-4", "FA-4"}

// thickeners are those of greases, as they are called.
var thickeners = sync.OnceValue(func() map[string]string {
	return map[string]string{"lithium": "lithium", "calcium": "calcium", "sodium": "sodium", "barium": "barium", "clay": "clay", "bentone": "clay", "polyurea": "polyurea", "moly": "lithium"}
})

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
	{"polyurea|poly urea", "polyurea", "grease", thickenerPart, false},
	{"thread locker|thread lock|threadlock|threadlocker|locking compound|thread locking|stud lock|studlock|nut lock|retaining compound|loctite|lock tight|locktite", "thread-locker", "other", productPart, true},
	{"anti seize|antiseize|anti-seize|copper grease|copper slip|copaslip|copper paste|never seize|nickel paste", "anti-seize", "other", productPart, false},
	{"thread sealant|pipe dope|jointing compound|pipe sealant", "thread sealant", "other", productPart, false},
	{"antifreeze|anti freeze|ethylene glycol|glycol", "antifreeze", "coolant", productPart, false},
	{"propylene glycol", "propylene glycol", "coolant", productPart, false},
	{"atf|a t f|automatic transmission fluid|auto trans fluid|dexron|auto box oil", "ATF", "other", productPart, false},
	{"distilled water|demineralised water|demin water|deionised water|deionized water|battery water", "distilled water", "water", productPart, false},
	{"soapy water|soap and water|warm soapy water|hot soapy water", "soapy water", "water", productPart, false},
	{"paraffin", "paraffin", "cleaner", productPart, false},
	{"kerosene", "kerosene", "cleaner", productPart, false},
	{"coil cleaner|foaming cleaner|spray cleaner|hand cleaner|glass cleaner|all purpose cleaner|traffic film remover|t f r|tfr", "cleaner", "cleaner", productPart, false},
	{"white spirit|mineral spirits|turps", "white spirit", "cleaner", productPart, false},
	{"meths|methylated spirit|isopropyl|isopropyl alcohol|i p a|ipa|rubbing alcohol", "alcohol", "cleaner", productPart, false},
	{"clean diesel", "diesel", "fuel", productPart, false},
	{"penetrating oil|penetrating fluid|release oil|penetrant|easing oil|freeing oil", "penetrating oil", "other", productPart, false},
	{"silicone spray|silicone lube|silicone lubricant", "silicone spray", "other", productPart, false},
	{"silicone grease|silly cone grease", "silicone grease", "grease", productPart, false},
	{"silicone sealant|gasket sealant|gasket maker|instant gasket|rtv|r t v|liquid gasket|flange sealant|bead of sealant|bead of silicone|silicone sealer|gasket goo", "sealant", "other", productPart, false},
	{"dielectric grease|contact grease|terminal grease|petroleum jelly|vaseline", "petroleum jelly", "grease", productPart, false},
	{"food grade grease|food grease|food safe grease", "food-grade grease", "grease", productPart, false},
	{"food grade oil|food safe oil", "food-grade oil", "other", productPart, false},
	{"graphite grease", "graphite grease", "grease", productPart, false},
	{"moly grease|molybdenum grease|moly paste", "moly grease", "grease", productPart, false},
	{"marine grease|waterproof grease", "marine grease", "grease", namePart, false},
	{"high temp grease|high temperature grease", "high-temperature grease", "grease", productPart, false},
	{"brake grease|ceramic grease|caliper grease", "brake grease", "grease", productPart, false},
	{"chain wax|chain paste", "chain wax", "other", productPart, false},
	{"power steering fluid", "power steering fluid", "hydraulic-oil", productPart, false},
	{"hypoy|hypoid oil|ep gear oil|e p gear oil", "gear oil", "gear-oil", namePart, false},
	{"vacuum pump oil|pump oil", "pump oil", "other", namePart, false},
	{"glycerine|glycerin", "glycerine", "other", productPart, false},
	{"cutting fluid|soluble oil|cutting oil|suds|cutting compound", "cutting fluid", "other", productPart, false},
	{"fuel stabiliser|fuel stabilizer", "fuel stabilizer", "other", productPart, false},
	{"adblue|def fluid|urea", "urea solution", "other", productPart, false},
	{"screenwash|screen wash", "screenwash", "other", productPart, false},
	{"refrigerant oil|pag oil|poe oil|fridge oil", "refrigerant oil", "compressor-oil", productPart, false},
	{"flushing oil", "flushing oil", "other", productPart, false},
	{"universal tractor oil|utto|stou|tractor hydraulic fluid|wet brake oil", "tractor transmission oil", "other", productPart, false},
	{"descaler|citric acid", "descaler", "cleaner", productPart, false},
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

var colours = set("blue red green purple medium")

var products = &phrases[productRow]{fill: func(out *phrases[productRow]) {
	for _, row := range productRows {
		out.addAll(row.said, row)
	}
}}
