package schema

var fileTable = Table{
	Name: "file", Header: "top of the file",
	Doc: "A file holds one procedure, one machine, or libraries of a shop; or all of these together. Only the version is always needed.",
	Keys: []Key{
		{Name: "benchleaf", Kind: Whole, Required: true, Doc: "Version of the language the file is written in.", Example: "1"},
		{Name: "use", Kind: Texts, Doc: "Files this one takes names from, as paths from this file; * stands for any file name. What is written here goes before what is taken.", Example: `["shop/tools.toml", "machines/*.toml"]`},
		{Name: "shop", Kind: Sub, Of: "shop", Doc: "The shop: how it wants its cards. Stands in shop.toml at the top of the shop folder, which every file below it uses."},
		{Name: "machine", Kind: Sub, Of: "machine", Doc: "The machine this file describes; the parts, cavities, covers and energies in the file are its own."},
		{Name: "procedure", Kind: Sub, Of: "procedure", Doc: "The procedure this file holds."},
		{Name: "prepare", Kind: Subs, Of: "step", Doc: "Steps that make the machine safe and bring it into position, in order."},
		{Name: "step", Kind: Subs, Of: "step", Doc: "Steps of the work, in order."},
		{Name: "close", Kind: Subs, Of: "step", Doc: "Steps that close up, give energy back and prove that the machine runs, in order."},
		{Name: "part", Kind: Named, Of: "part", Doc: "Parts and their fasteners."},
		{Name: "cover", Kind: Named, Of: "cover", Doc: "Covers and guards: what they hide and what they guard against."},
		{Name: "cavity", Kind: Named, Of: "cavity", Doc: "Places that hold a fluid."},
		{Name: "energy", Kind: Named, Of: "energy", Doc: "Sources of energy, and how each is cut off and proved dead."},
		{Name: "pose", Kind: Named, Of: "pose", Doc: "Positions the machine can be put in."},
		{Name: "area", Kind: Named, Of: "area", Doc: "Areas of the machine, and at which of them two people can work at once."},
		{Name: "point", Kind: Named, Of: "point", Doc: "Lubrication points."},
		{Name: "limit", Kind: Named, Of: "limit", Doc: "Wear limits and settings that are measured."},
		{Name: "tool", Kind: Named, Of: "tool", Doc: "Tools on the wall."},
		{Name: "fluid", Kind: Named, Of: "fluid", Doc: "Oils, greases and other fluids."},
		{Name: "supply", Kind: Named, Of: "supply", Doc: "Consumables: rags, cleaner, thread-locker."},
		{Name: "spare", Kind: Named, Of: "spare", Doc: "Parts that are renewed: seals, filters, split pins."},
		{Name: "allow", Kind: Subs, Of: "allow", Doc: "Findings in this file that its author stands by, each with the reason: a plate figure of a machine, a special thread.", Example: `[{ rule = "units/disagree", reason = "as the plate on the pump has it" }]`},
		{Name: "stock", Kind: Named, Of: "stock", Doc: "Card stock of the shop's own: tags, pouches, cards with a hole."},
		{Name: "unit", Kind: Named, Of: "unit", Doc: "Machines that stand in the shop, each with its serial number and its meter. A machine that has none here is one of its kind."},
		{Name: "store", Kind: Named, Of: "store", Doc: "What is on the shelf of a fluid, a consumable or a spare, by its name."},
		{Name: "second-reading", Kind: Sub, Of: "second-reading", Doc: "The figures of this file, read in the manual a second time by another person. Stands in the file itself, or in one of the same name in the folder second beside it: that of log-deck.toml in second/log-deck.toml."},
		{Name: "caution", Kind: Named, Of: "caution", Doc: "Safety messages. A name out of the list of hazards replaces the built-in message for that hazard."},
	},
}

var shopTable = Table{
	Name: "shop", Header: "[shop]",
	Doc: "How the shop wants its cards.",
	Keys: []Key{
		{Name: "title", Kind: Text, Required: true, Doc: "Name of the shop as it prints.", Example: `"Fernhollow Sawmill"`},
		{Name: "units", Kind: Choice, Doc: "Units the pages print. What the author wrote always stands first.", Example: `"both"`, Choices: []Option{
			{"metric", "metric only"}, {"inch", "inch only"}, {"both", "as written, with the other system in parentheses"}}},
		{Name: "stock", Kind: Name, Of: "stock", Doc: "Card stock: a5, a4, letter, half-letter, a6, 4x6, a3 or tabloid, or one described with [stock.NAME].", Example: `"a5"`},
		{Name: "reading-distance", Kind: Amount, Of: "length", Doc: "Distance from the eye to the card at the bench. Type is sized for it.", Example: `"500 mm"`},
		{Name: "language", Kind: Choice, Doc: "Language of the fixed words and of the built-in safety messages. In another language than English the author's words are not read: hazards come from what is described, and the rules on words rest.", Example: `"de"`, Choices: Languages},
		{Name: "signal-language", Kind: Choice, Doc: "Second language on the panels of safety messages: signal word and hazard.", Example: `"es"`, Choices: Languages},
		{Name: "next", Kind: Choice, Doc: "What the next time of a job is counted from, when it was done early or late; done when left out.", Example: `"schedule"`, Choices: []Option{
			{"done", "from when it was done"}, {"schedule", "from when it was due, so that early or late moves nothing"}}},
		{Name: "soon", Kind: Amount, Of: "calendar", Doc: "How long before its day a job is told to come soon; 14 days when left out.", Example: `"14 days"`},
		{Name: "currency", Kind: Text, Doc: "Currency of the prices in the store, by ISO 4217.", Example: `"EUR"`},
		{Name: "local", Kind: Text, Doc: "Line on local rules and licensed practice that stands on every card instead of the built-in one.", Example: `"Lock-out rules of the site: office wall."`},
	},
}

// Languages are the languages that have fixed words.
var Languages = []Option{{"en", "English"}, {"de", "German"}, {"fr", "French"}, {"es", "Spanish"}}

var machineTable = Table{
	Name: "machine", Header: "[machine]",
	Doc: "What the machine is. Its parts, cavities, covers, energies, poses, points and limits stand in the same file.",
	Keys: []Key{
		{Name: "name", Kind: Text, Doc: "Short name procedures use; the file's name when left out.", Example: `"log-deck"`},
		{Name: "title", Kind: Text, Required: true, Doc: "Name as it prints.", Example: `"Log-deck conveyor"`},
		{Name: "maker", Kind: Text, Doc: "Maker.", Example: `"Own build"`},
		{Name: "model", Kind: Text, Doc: "Model or type.", Example: `"LD 6"`},
		{Name: "manual", Kind: Text, Required: true, Doc: "The machine's own manual. Every card points to it.", Example: `"Operator's manual LD 6, edition 3"`},
		{Name: "variants", Kind: Texts, Doc: "Names of the versions of this machine.", Example: `["short", "long"]`},
		{Name: "meter", Kind: Choice, Doc: "What its meter counts.", Example: `"hours"`, Choices: []Option{
			{"hours", "hours run"}, {"cycles", "cycles"}, {"distance", "distance"}, {"none", "no meter"}}},
		{Name: "in-service", Kind: Day, Doc: "Day it went into service.", Example: "2019-04-01"},
		{Name: "outline", Kind: Points, Doc: "Outline of the machine seen from where the technician stands: corners in any unit, x to the right, y down.", Example: "[[0, 0], [120, 0], [120, 40], [0, 40]]"},
		{Name: "lines", Kind: Lines, Doc: "Lines drawn thin inside the outline, each through its points: a guard, a frame, a shelf. One that ends where it begins is a closed shape.", Example: "[[[10, 0], [10, 40]], [[80, 10], [110, 10], [110, 30], [80, 10]]]"},
		{Name: "rounds", Kind: Rounds, Doc: "Circles drawn thin: wheels, pulleys, drums. Middle and radius.", Example: "[[20, 40, 8], [100, 40, 8]]"},
	},
}

var procedureTable = Table{
	Name: "procedure", Header: "[procedure]",
	Doc: "What the job is. Nothing is silent: where no tools, supplies, spares, protective equipment or isolation are needed, an empty list or a reason says so.",
	Keys: []Key{
		{Name: "name", Kind: Text, Doc: "Short name other procedures use; the file's name when left out.", Example: `"log-deck-gearbox-oil"`},
		{Name: "title", Kind: Text, Required: true, Doc: "Title, beginning with the action.", Example: `"Change the worm gearbox oil"`},
		{Name: "machine", Kind: Name, Of: "machine", Required: true, Doc: "Short name of the machine. Where no machine is described anywhere, its name in plain words instead, such as “Log-deck conveyor”.", Example: `"log-deck"`},
		{Name: "for", Kind: Names, Of: "variant", Doc: "Versions of the machine the procedure serves; all when left out.", Example: `["long"]`},
		{Name: "summary", Kind: Words, Doc: "What the job does and why, in a sentence or two.", Example: `"Drains the worn-in oil and its metal while it is warm."`},
		{Name: "revision", Kind: Text, Required: true, Doc: "Revision mark.", Example: `"B"`},
		{Name: "date", Kind: Day, Required: true, Doc: "Day of the revision.", Example: "2026-02-14"},
		{Name: "author", Kind: Text, Required: true, Doc: "Who wrote it.", Example: `"R. Aldous"`},
		{Name: "checked", Kind: Text, Doc: "Who checked it at the machine.", Example: `"M. Brandvold"`},
		{Name: "who", Kind: Text, Required: true, Doc: "Who may do it: trade, training or licence.", Example: `"Mechanic trained on lock-out"`},
		{Name: "people", Kind: Whole, Doc: "How many people it takes; one when left out.", Example: "2"},
		{Name: "hands-on", Kind: Amount, Of: "time", Required: true, Doc: "Time with hands on the machine.", Example: `"40 min"`},
		{Name: "elapsed", Kind: Amount, Of: "time", Doc: "Time from start to end, waits and all.", Example: `"1 h 15 min"`},
		{Name: "every", Kind: Amounts, Of: "interval", Doc: "When it is due again: running time, calendar time or both, whichever comes first.", Example: `["500 h", "12 months"]`},
		{Name: "first", Kind: Amounts, Of: "interval", Doc: "When it is due the first time, if sooner.", Example: `"50 h"`},
		{Name: "when", Kind: Text, Doc: "Condition it is done on, in words, when no interval rules it.", Example: `"When the blade wanders or a tooth is lost"`},
		{Name: "sooner", Kind: Subs, Of: "sooner", Doc: "Readings that bring its day forward, for each machine by what was last read there. Of several that hold, the soonest counts.", Example: `[{ reading = "Stretch", over = "508 mm", every = "125 h" }, { reading = "Chain slack", of = "log-deck-gearbox-oil", outside = true }]`},
		{Name: "joins", Kind: Names, Of: "procedure", Doc: "Procedures it was joined out of, called A, B and so on by their order; benchleaf join writes it.", Example: `["log-deck-gearbox-oil", "log-deck-chain-tension"]`},
		{Name: "joined-revisions", Kind: Texts, Doc: "Revisions of the procedures it was joined out of, in the order of joins; benchleaf join writes it.", Example: `["A", "C"]`},
		{Name: "start", Kind: Texts, Doc: "State the machine must be in before the first step.", Example: `["Conveyor empty", "Gearbox warm from running"]`},
		{Name: "end", Kind: Texts, Doc: "State it must be in after the last.", Example: `["Conveyor runs both ways", "No oil under the gearbox"]`},
		{Name: "no-isolation", Kind: Text, Doc: "Why no energy needs to be isolated.", Example: `"The card is a look from outside the guards"`},
		{Name: "no-close", Kind: Text, Doc: "Why there is nothing to close up or to test.", Example: `"Nothing is opened"`},
		{Name: "tools", Kind: Names, Of: "tool", Doc: "Every tool to bring. An empty list says that none is needed.", Example: `["socket-16", "torque-wrench-100"]`},
		{Name: "supplies", Kind: Names, Of: "fluid supply", Doc: "Every fluid and consumable to bring.", Example: `["gear-220", "rags"]`},
		{Name: "spares", Kind: Names, Of: "spare", Doc: "Every part that is renewed.", Example: `["drain-washer"]`},
		{Name: "wear", Kind: Choices, Doc: "Protective equipment to wear or have at hand.", Example: `["eye-protection", "gloves"]`, Choices: Protection},
		{Name: "cautions", Kind: Names, Of: "caution", Doc: "Safety messages that hold for the whole job, printed first.", Example: `["start"]`},
		{Name: "record", Kind: Texts, Doc: "More blanks on the record strip, besides the readings of the steps.", Example: `["Hour meter"]`},
		{Name: "manual", Kind: Text, Doc: "Place in the machine's own manual; the machine's own entry when left out.", Example: `"Section 6.2"`},
		{Name: "notes", Kind: Texts, Doc: "What is good to know. Notes inform; they never instruct.", Example: `["The sight glass fogs for a minute after filling."]`},
		{Name: "pictures", Kind: Subs, Of: "picture", Doc: "Pictures for the whole job.", Example: `[{ file = "gearbox.png", title = "Plugs" }]`},
		{Name: "allow", Kind: Subs, Of: "allow", Doc: "Findings the author stands by, each with the reason. A missing danger or warning cannot be allowed away.", Example: `[{ rule = "tool/never-used", reason = "kept at hand for the tail shaft" }]`},
	},
	Example: `benchleaf = 1

[procedure]
title = "Look over the chain oiler"
machine = "Log-deck conveyor"
revision = "A"
date = 2026-02-14
author = "R. Aldous"
who = "Anyone who runs the deck"
hands-on = "5 min"
every = "50 h"
no-isolation = "Nothing is touched; look from outside the guard"
no-close = "Nothing is opened"
tools = []
supplies = []
spares = []
wear = ["eye-protection"]
manual = "Operator's manual, section 4"

[[step]]
inspect = "the oil level in the sight glass"
expect = "between the two marks"
outside = "Fill the oiler by its own card before the next shift."`,
}

var unitTable = Table{
	Name: "unit", Header: "[unit.NAME]",
	Doc: "One machine that stands in the shop. Entries of the service book name it.",
	Keys: []Key{
		{Name: "title", Kind: Text, Doc: "Name as it prints; the machine's when left out.", Example: `"Log deck, yard side"`},
		{Name: "machine", Kind: Name, Of: "machine", Required: true, Doc: "What it is one of.", Example: `"log-deck"`},
		{Name: "version", Kind: Text, Doc: "Which version of the machine it is.", Example: `"nine-metre"`},
		{Name: "serial", Kind: Text, Doc: "Serial number.", Example: `"LD6-0117"`},
		{Name: "in-service", Kind: Day, Doc: "Day it went into service; the machine's when left out.", Example: "2019-04-01"},
		{Name: "meter-then", Kind: Amount, Of: "interval", Doc: "What its meter stood at on that day; nothing when left out.", Example: `"120 h"`},
		{Name: "use", Kind: Subs, Of: "use", Doc: "How much it runs, where its readings do not tell yet."},
	},
	Example: `[unit.deck]
machine = "log-deck"
version = "six-metre"
serial = "LD6-0117"
in-service = 2019-04-01
use = [{ from = "04-01", to = "10-31", week = "30 h" }, { from = "11-01", to = "03-31", week = "6 h" }]`,
}

var useTable = Table{
	Name: "use", Header: "use = [{ … }]",
	Doc: "How much a machine runs over a part of the year.",
	Keys: []Key{
		{Name: "from", Kind: Text, Doc: "First day of the part, month and day; the whole year when left out.", Example: `"04-01"`},
		{Name: "to", Kind: Text, Doc: "Last day of the part.", Example: `"10-31"`},
		{Name: "week", Kind: Amount, Of: "interval", Required: true, Doc: "How much in a week.", Example: `"30 h"`},
	},
}

var storeTable = Table{
	Name: "store", Header: "[store.NAME]",
	Doc: "What is on the shelf of a fluid, a consumable or a spare. Entries of the service book after the day it was counted take from it and add to it.",
	Keys: []Key{
		{Name: "on-hand", Kind: Amounts, Of: "volume mass length number", Required: true, Doc: "How much there is: one amount, or what is in each can, which is added up. A bare number counts pieces.", Example: `["5 L", "0.6 L"]`},
		{Name: "counted", Kind: Day, Required: true, Doc: "Day it was counted, at its end.", Example: "2026-04-01"},
		{Name: "keep", Kind: Amount, Of: "volume mass length number", Doc: "How much is to be there at the least when nothing is being worked on.", Example: `"1 L"`},
		{Name: "lead", Kind: Amount, Of: "calendar", Doc: "How long it takes from ordering it until it is there.", Example: `"10 days"`},
		{Name: "supplier", Kind: Text, Doc: "Where it is bought.", Example: `"Hollow Lane Oils"`},
		{Name: "prices", Kind: Subs, Of: "price", Doc: "What packs of it cost.", Example: `[{ pack = "1 L", price = "14.20" }, { pack = "5 L", price = "61.00" }]`},
	},
	Example: `[store.gear-460]
on-hand = ["5 L", "0.6 L"]
counted = 2026-04-01
keep = "1 L"
lead = "10 days"
supplier = "Hollow Lane Oils"
prices = [{ pack = "1 L", price = "14.20" }, { pack = "5 L", price = "61.00" }]`,
}

var priceTable = Table{
	Name: "price", Header: "prices = [{ … }]",
	Doc: "What one pack costs, in the currency of the shop.",
	Keys: []Key{
		{Name: "pack", Kind: Amount, Of: "volume mass length number", Required: true, Doc: "Size of the pack; a bare number counts pieces.", Example: `"5 L"`},
		{Name: "price", Kind: Text, Required: true, Doc: "Price of one pack: a number in quotes, with a point before the cents.", Example: `"61.00"`},
	},
}

var soonerTable = Table{
	Name: "sooner", Header: "sooner = [{ … }]",
	Doc: "A reading that brings the day of a procedure forward: while the last one of that name in the service book is over a value, under one, or outside its limit. With every it stays so until it is read again and is right. Without every the procedure is due on the day of the reading, until it is done: a reading of another procedure is spent when this one is done on the same day or later, one of its own when it is done again, and what is still wrong when the work ends makes it due at once.",
	Keys: []Key{
		{Name: "reading", Kind: Text, Required: true, Doc: "Name of what is read, as the record strip prints it.", Example: `"Chain slack"`},
		{Name: "of", Kind: Name, Of: "procedure", Doc: "Procedure that asks for the reading, of the same machine; this one when left out.", Example: `"log-deck-gearbox-oil"`},
		{Name: "over", Kind: Amount, Of: "any", Doc: "It holds while the reading is more than this. One of over, under and outside is needed, and no second.", Example: `"35 mm"`},
		{Name: "under", Kind: Amount, Of: "any", Doc: "It holds while the reading is less than this.", Example: `"4 mm"`},
		{Name: "outside", Kind: Flag, Doc: "It holds while the reading is outside its limit, as the entry says.", Example: "true"},
		{Name: "every", Kind: Amounts, Of: "interval", Doc: "When it is due again while it holds, from the last time it was done; at once when left out.", Example: `"50 h"`},
	},
}

// secondReadingTable holds the tables of a file once more. Two people seldom make
// one slip at one place: what they read differently is found.
var secondReadingTable = Table{
	Name: "second-reading", Header: "[second-reading]",
	Doc: "Figures of the file, read again by a second person who does not look at the first reading. Tables, keys and steps as in the file, as many as were read; each is held against the first. A step is known by its verb and object. benchleaf new --second FILE writes the blanks.",
	Keys: []Key{
		{Name: "by", Kind: Text, Required: true, Doc: "Who read a second time.", Example: `"T. Okafor"`},
		{Name: "date", Kind: Day, Required: true, Doc: "Day of the second reading.", Example: "2026-02-20"},
		{Name: "from", Kind: Text, Required: true, Doc: "What was read: manual, edition, pages; a plate; the machine itself.", Example: `"Operator's manual LD 6, edition 3, pages 41 to 44"`},
		again("machine", "What the machine is."), again("procedure", "When it is due."),
		again("prepare", "Steps with figures."), again("step", "Steps with figures."), again("close", "Steps with figures."),
		again("part", "Parts and their fasteners."), again("cover", "Covers."), again("cavity", "What holds a fluid."), again("energy", "Energies."),
		again("point", "Lubrication points."), again("limit", "Limits and settings."), again("tool", "Tools."), again("fluid", "Fluids."), again("supply", "Consumables."), again("spare", "Parts that are renewed."),
	},
	Example: `[second-reading]
by = "T. Okafor"
date = 2026-02-20
from = "Operator's manual LD 6, edition 3, page 41"

[second-reading.part.drain-plug]
thread = "M22x1.5"
torque = "42 to 48 N·m"`,
}

func again(name, doc string) Key { return Key{Name: name, Kind: Again, Doc: doc} }

// Stocks are the names of the stocks that need no description.
var Stocks = []string{"a5", "a4", "letter", "half-letter", "a6", "4x6", "a3", "tabloid"}

var stockTable = Table{
	Name: "stock", Header: "[stock.NAME]",
	Doc: "Something a card is printed on, upright. What lies round its hole and in its corners stays blank on both sides.",
	Keys: []Key{
		{Name: "title", Kind: Text, Required: true, Doc: "Name as it is told.", Example: `"Tag 80 × 150"`},
		{Name: "width", Kind: Amount, Of: "length", Required: true, Doc: "Width.", Example: `"80 mm"`},
		{Name: "height", Kind: Amount, Of: "length", Required: true, Doc: "Height.", Example: `"150 mm"`},
		{Name: "border", Kind: Amount, Of: "length", Required: true, Doc: "Left blank all round: what the printer cannot reach, and the seal of a pouch.", Example: `"5 mm"`},
		{Name: "binding", Kind: Amount, Of: "length", Doc: "More border at the bound edge, left on a front.", Example: `"8 mm"`},
		{Name: "top", Kind: Amount, Of: "length", Doc: "More border at the top of a front, for a hole or a slot.", Example: `"12 mm"`},
		{Name: "sides", Kind: Whole, Doc: "Sides that are printed, 1 or 2; 2 when left out.", Example: "2"},
		{Name: "turn", Kind: Choice, Doc: "Edge the card is turned over; long when left out.", Example: `"short"`, Choices: []Option{
			{"long", "like the page of a book"}, {"short", "like the sheet of a wall calendar"}}},
		{Name: "hole", Kind: Amounts, Of: "length", Doc: "Hole: from the left, from the top, and its diameter, on a front.", Example: `["40 mm", "9 mm", "6 mm"]`},
		{Name: "corner", Kind: Amount, Of: "length", Doc: "Radius of round corners.", Example: `"3 mm"`},
		{Name: "distance", Kind: Amount, Of: "length", Doc: "Distance from the eye, where the shop says none.", Example: `"400 mm"`},
	},
	Example: `[stock.tag]
title = "Tag 80 × 150"
width = "80 mm"
height = "150 mm"
border = "5 mm"
top = "12 mm"
hole = ["40 mm", "9 mm", "6 mm"]
corner = "3 mm"`,
}
