// Package schema is the language as one table: every table, key and verb a
// technician may write, with its meaning and an example. The decoder, the JSON
// Schema and the reference page all come out of it. It must not know how a
// value is checked beyond its kind.
package schema

// Version is the newest version of the language this compiler reads.
const Version = 1

// Kind says what a value is.
type Kind int

const (
	Text      Kind = iota // a string in plain words
	Words                 // a string in CommonMark
	Texts                 // a list of strings
	Name                  // the name of a thing; Of says of which kinds
	Names                 // one name or a list of names
	Amount                // a string holding an amount; Of names the dimension
	Amounts               // one amount or a list of amounts
	Whole                 // a whole number from 1
	Wholes                // a list of whole numbers from 1
	Flag                  // true or false
	Day                   // a TOML local date
	Choice                // one of Choices
	Choices               // a list out of Choices
	Point                 // two numbers, [x, y]
	Points                // a list of points
	Lines                 // a list of lists of points
	Rounds                // a list of circles, [x, y, radius]
	Sub                   // a table; Of names it
	Subs                  // a list of tables; Of names them
	Named                 // tables by name, [part.drain-plug]; Of names what each holds
	Quantity              // names with how many or how much of each, { rags = 2, "gear-oil" = "0.5 L" }
	Overrides             // tables by variant, each with keys of the table it stands in
	Again                 // as the key of this name at the top of the file, and nothing in it is always needed
)

// Key is one key of a table.
type Key struct {
	Name     string
	Kind     Kind
	Of       string // what a Name names, the dimension of an Amount, the table of a Sub
	Required bool
	Doc      string // one or two sentences, for people
	Example  string // a TOML value
	Choices  []Option
}

// Option is one word a Choice allows.
type Option struct{ Word, Doc string }

// Table is a set of keys under one header.
type Table struct {
	Name    string
	Header  string // as it is written: [part.NAME]
	Doc     string
	Keys    []Key
	Example string // a whole example, when the keys alone do not show the use
}

// Key finds a key by its name.
func (t Table) Key(name string) (Key, bool) {
	for _, key := range t.Keys {
		if key.Name == name {
			return key, true
		}
	}
	return Key{}, false
}

// Find finds a table by its name.
func Find(name string) (Table, bool) {
	for _, table := range tables {
		if table.Name == name {
			return table, true
		}
	}
	return Table{}, false
}

// Tables lists every table, the file itself first.
func Tables() []Table { return tables }

// tables is put together once, when the program starts.
var tables = []Table{
	fileTable, shopTable, machineTable, procedureTable, stepTable,
	partTable, coverTable, cavityTable, energyTable, poseTable, areaTable, pointTable, limitTable,
	toolTable, fluidTable, supplyTable, spareTable, cautionTable,
	adapterTable, stepCautionTable, allowTable, pictureTable, stockTable, unitTable, useTable, soonerTable, storeTable, priceTable, secondReadingTable,
}
