package schema

import "encoding/json"

// ModelVersion is the version of the form in which a whole shop is written for other programs.
const ModelVersion = 1

// field is one member of an object of the model's form.
type field struct {
	name   string
	always bool
	doc    string
	is     *node
}

// ModelJSON writes the form of benchleaf model as a JSON Schema of draft 2020-12. What the keys of
// a table hold comes out of the tables of the language.
func ModelJSON() ([]byte, error) {
	root := object("A shop: what its files mean, every name looked up, for each version of a machine.", []field{
		{"benchleaf-model", true, "Version of this form. It rises only when something changes its meaning; members may be added.", &node{Type: "integer", Minimum: number(ModelVersion), Maximum: number(ModelVersion)}},
		{"language", true, "Version of the language the files are written in.", &node{Type: "integer", Minimum: number(1), Maximum: number(Version)}},
		{"shop", false, "What shop.toml says.", tableOf("shop", nil)},
		{"machines", true, "Machines that the files describe.", list(reference("a-machine"))},
		{"libraries", true, "Tools, fluids, consumables, spares, safety messages, stocks, units and stores.", list(reference("thing"))},
		{"procedures", true, "Procedures, in the order of their files.", list(reference("a-procedure"))},
		{"findings", true, "What stands against the files.", list(reference("finding"))},
		{"allowed", true, "What an author stands by; the reason is the last related text.", list(reference("finding"))},
	})
	root.Schema = "https://json-schema.org/draft/2020-12/schema"
	root.Title = "benchleaf model, version 1"
	root.Defs = modelDefs()
	for _, table := range Tables()[1:] {
		if table.Name != secondReadingTable.Name {
			root.Defs["keys-"+table.Name] = keysNode(table)
		}
	}
	text, err := json.MarshalIndent(root, "", "  ")
	return append(text, '\n'), err
}

func object(doc string, fields []field) *node {
	out := &node{Type: "object", Description: doc, Properties: map[string]*node{}, Additional: false}
	for _, f := range fields {
		member := *f.is
		if f.doc != "" {
			member.Description = f.doc
		}
		out.Properties[f.name] = &member
		if f.always {
			out.Required = append(out.Required, f.name)
		}
	}
	return out
}

// tableOf is an object with the place and the keys of a table of the language, and more.
func tableOf(table string, more []field) *node {
	return object("", append(more, field{"place", true, "Header of its table.", reference("place")}, field{"keys", true, "Keys as they are written, what differs for the version put in place.", reference("keys-" + table)}))
}

func anyText() *node { return &node{Type: "string"} }

func whole() *node { return &node{Type: "integer", Minimum: number(0)} }

func decimal() *node { return &node{Type: "number"} }

func oneOf(list ...string) *node { return &node{Type: "string", Enum: list} }

// thingKinds are the tables that things with a name are described in.
var thingKinds = []string{"part", "cover", "cavity", "energy", "pose", "area", "point", "limit", "tool", "fluid", "supply", "spare", "caution", "stock", "unit", "store"}

func modelDefs() map[string]*node {
	things := &node{Description: "Something that is described by name."}
	for _, kind := range thingKinds {
		things.OneOf = append(things.OneOf, tableOf(kind, []field{
			{"kind", true, "", oneOf(kind)}, {"name", true, "Short name.", text()}, {"words", true, "Name as it prints.", text()}}))
	}
	var verbs []string
	for _, verb := range Verbs() {
		verbs = append(verbs, verb.Key)
	}
	bounds := func(doc string) []field {
		return []field{{"low", false, "Lower bound" + doc + "; left out where there is none.", decimal()}, {"high", false, "Upper bound" + doc + "; left out where there is none.", decimal()}}
	}
	use := func(doc string) *node {
		return object(doc, []field{{"step", true, "", whole()}, {"name", true, "Short name.", text()}, {"count", false, "How many.", whole()},
			{"amount", false, "How much.", reference("amount")}, {"why", true, "What for.", text()}})
	}
	return map[string]*node{
		"place": object("Where something stands: lines and columns from 1, columns in characters; offset and length in bytes.", []field{
			{"file", true, "Path from the shop folder.", anyText()}, {"line", true, "", whole()}, {"column", true, "", whole()}, {"offset", true, "", whole()}, {"length", true, "", whole()}}),
		"amount": object("An amount as it prints, and as numbers. One figure is both bounds. Of an amount that cannot be read only the text is told.", append([]field{
			{"text", true, "", anyText()}, {"dimension", false, "What it measures: torque, length, volume.", text()},
			{"shape", false, "", oneOf("exact", "range", "tolerance", "at least", "at most", "about")}, {"unit", false, "Unit of low and high.", text()},
			{"si", false, "The same in the coherent unit of the SI; of what is counted, and of shares, that is 1.", object("", append([]field{{"unit", true, "", text()}}, bounds("")...))}}, bounds(" in the unit")...)),
		"thing": things,
		"a-machine": tableOf("machine", []field{{"name", true, "Short name.", text()}, {"title", true, "Name as it prints.", anyText()},
			{"versions", true, "", list(object("One version of a machine.", []field{{"version", false, "Its name; left out where the machine has none.", text()}, {"things", true, "What the version has.", list(reference("thing"))}}))}}),
		"a-procedure": tableOf("procedure", []field{{"name", true, "Short name.", text()}, {"title", true, "", anyText()}, {"machine", false, "Short name of the machine; left out where it is only named in words.", text()},
			{"versions", true, "A job for each version of the machine; none where the file, or one it takes names from, cannot be read whole.", list(reference("job"))}}),
		"job": object("A procedure for one version of its machine.", []field{{"version", false, "", text()}, {"blocked", true, "An error stands against it, and no card is printed.", &node{Type: "boolean"}},
			{"things", true, "Things of the machine that the procedure's own file describes.", list(reference("thing"))},
			{"steps", true, "", list(reference("a-step"))}, {"needs", true, "", reference("needs")}}),
		"a-step": tableOf("step", []field{{"number", true, "From 1 through the whole job.", whole()}, {"section", true, "", oneOf("prepare", "step", "close")},
			{"verb", false, "Left out where the step is in words alone.", oneOf(verbs...)}, {"objects", true, "What the verb acts on.", list(reference("object"))},
			{"wait", false, "How long a wait lasts.", reference("amount")}, {"action", true, "The sentence as it prints; empty where the shop's language has no words.", anyText()},
			{"hazards", true, "What can hurt here.", list(object("", []field{{"hazard", true, "", text()}, {"level", true, "", oneOf("danger", "warning", "caution", "notice")}, {"why", true, "", anyText()}}))},
			{"after", true, "What does not stand behind the step as it did before the job.", list(object("", []field{
				{"kind", true, "", oneOf("part", "cover", "cavity", "energy", "raised", "parted", "slack")}, {"name", true, "", text()}, {"words", true, "", text()},
				{"level", true, "", oneOf("loose", "open", "shut", "off", "empty", "isolated", "proved", "raised", "on-stands")}}))}}),
		"object": object("What a verb acts on, with the values that hold for it at the step: the step's own, or else the thing's.", []field{
			{"kind", true, "", oneOf("part", "cover", "cavity", "energy", "point", "limit", "spare", "fluid", "supply", "procedure", "words")}, {"name", false, "Short name; left out for words.", text()},
			{"words", true, "", anyText()}, {"torque", false, "", reference("amount")}, {"amount", false, "", reference("amount")}, {"fluid", false, "", text()}, {"limit", false, "", reference("amount")}}),
		"needs": object("What a job takes, in the order of its steps.", []field{
			{"fasteners", true, "Fasteners that are turned.", list(object("", []field{{"step", true, "", whole()}, {"part", true, "", text()}, {"words", true, "", text()}, {"head", true, "", text()},
				{"widths", false, "Widths across flats that may be met.", list(text())}, {"point", false, "Number of a recess.", text()}, {"access", true, "", text()},
				{"reach-mm", false, "How deep the head sits.", decimal()}, {"torque-low-newton-metres", false, "Lowest setting of the wrench.", decimal()}, {"torque-high-newton-metres", false, "Highest setting of the wrench.", decimal()},
				{"tools", true, "Ways in which listed tools do it, each of them enough.", list(list(text()))}}))},
			{"tools", true, "Tools that are named outright.", list(use(""))}, {"supplies", true, "Fluids and consumables.", list(use(""))}, {"spares", true, "Parts that are renewed.", list(use(""))},
			{"waste", true, "Fluids that run out.", list(object("", []field{{"step", true, "", whole()}, {"cavity", true, "", text()}, {"words", true, "", text()}, {"amount", false, "", reference("amount")}, {"into", false, "What catches it.", text()}}))}}),
		"finding": object("A finding, as benchleaf lint --json tells it.", []field{{"rule", true, "", text()}, {"severity", true, "", oneOf("note", "warning", "error")}, {"holds", true, "No card is printed while it stands.", &node{Type: "boolean"}},
			{"place", true, "", reference("place")}, {"summary", true, "", text()}, {"why", false, "", text()}, {"help", false, "", text()}, {"variant", false, "Version of the machine it holds for.", text()},
			{"related", false, "", list(object("", []field{{"place", true, "", reference("place")}, {"text", true, "", anyText()}}))},
			{"fixes", false, "", list(object("", []field{{"title", true, "", text()}, {"certain", true, "", &node{Type: "boolean"}},
				{"edits", true, "", list(object("", []field{{"place", true, "", reference("place")}, {"text", true, "", anyText()}}))}}))}}),
	}
}

// keysNode are the keys of a table as the model tells them: what was left out is left out, amounts
// are numbers too, one name is a list, and what differs for a version is already in its place.
func keysNode(table Table) *node {
	out := &node{Type: "object", Description: table.Doc, Properties: map[string]*node{}, Additional: false}
	for _, key := range table.Keys {
		if _, verb := FindVerb(key.Name); verb && table.Name == stepTable.Name || key.Kind == Overrides {
			continue
		}
		value := toldNode(key)
		value.Description = key.Doc
		out.Properties[key.Name] = value
	}
	return out
}

func toldNode(key Key) *node {
	switch key.Kind {
	case Amount:
		return reference("amount")
	case Amounts:
		return list(reference("amount"))
	case Names:
		return list(text())
	case Quantity:
		return list(object("", []field{{"name", true, "", text()}, {"count", false, "", whole()}, {"amount", false, "", reference("amount")}}))
	case Sub:
		return reference("keys-" + key.Of)
	case Subs:
		return list(reference("keys-" + key.Of))
	default:
		return kindNode(key)
	}
}
