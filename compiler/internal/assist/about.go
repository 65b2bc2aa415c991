package assist

import (
	"fmt"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/trade"
	"benchleaf/schema"
)

// card is what is known of a thing: its name as it prints, a few words for the same line, and
// the rest line by line.
type card struct {
	title  string
	detail []string
	lines  []string
}

func (c *card) say(what, text string) {
	if text != "" {
		c.lines = append(c.lines, what+": "+inline(text))
	}
}

func (c *card) short(text string) {
	if text != "" {
		c.detail = append(c.detail, text)
	}
}

func (c *card) names(what string, list model.List) {
	if names := list.Names(); len(names) > 0 {
		c.lines = append(c.lines, what+": `"+strings.Join(names, "`, `")+"`")
	}
}

// text is the card in CommonMark; kind says what it is of.
func (c card) text(kind string) string {
	var out strings.Builder
	fmt.Fprintf(&out, "**%s** – %s", inline(c.title), kind)
	if len(c.detail) > 0 {
		out.WriteString("\n\n" + inline(strings.Join(c.detail, ", ")))
	}
	if len(c.lines) > 0 {
		out.WriteString("\n\n- " + strings.Join(c.lines, "\n- "))
	}
	return out.String()
}

var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "[", `\[`, "]", `\]`, "<", `\<`, ">", `\>`, "#", `\#`, "\n", " ", "\r", "")

// inline is the author's text as CommonMark that reads the same, on one line.
func inline(text string) string { return marks.Replace(text) }

// spoken is an amount with the figure of the other system behind it.
func spoken(amount model.Amount) string {
	switch {
	case !amount.Set():
		return ""
	case !amount.OK:
		return amount.Text.Text
	}
	return strings.ReplaceAll(amount.Format(quantity.Both), "\u00a0", " ")
}

func list(amounts []model.Amount) string {
	var out []string
	for _, amount := range amounts {
		if text := spoken(amount); text != "" {
			out = append(out, text)
		}
	}
	return strings.Join(out, ", ")
}

// about is what is known of a thing, as a file sees it. The tools that serve a fastener are
// looked for only where they are asked for.
func (s *Shop) about(file *model.File, t target, tools bool) (card, bool) {
	switch t.kind {
	case "machine":
		return aboutMachine(t.file), t.file.Machine != nil
	case "procedure":
		return aboutProcedure(t.file), t.file.Procedure != nil
	case "variant":
		return card{title: model.Spoken(t.name), lines: []string{"of " + inline(t.file.Machine.Title.Text)}}, true
	case "step":
		step := stepNamed(t.file, t.name)
		if step == nil {
			return card{}, false
		}
		return card{title: stepWords(step)}, true
	}
	switch thing := t.file.Own(t.kind, t.name).(type) {
	case *model.Part:
		return s.aboutPart(file, thing, tools), true
	case *model.Cavity:
		return s.aboutCavity(file, thing), true
	case *model.Energy:
		return aboutEnergy(thing), true
	case *model.Lubricated:
		return aboutPoint(thing), true
	case *model.Limit:
		return aboutLimit(thing), true
	case *model.Pose:
		c := card{title: thing.Words()}
		c.say("how", thing.How.Text)
		c.names("takes", thing.Tools)
		return c, true
	case *model.Area:
		c := card{title: thing.Words()}
		c.names("apart from", thing.Apart)
		return c, true
	case *model.Tool:
		return aboutTool(thing), true
	case *model.Fluid:
		return aboutFluid(thing), true
	case *model.Supply:
		c := card{title: thing.Words()}
		c.short(list(thing.Packs))
		c.say("where", thing.Where.Text)
		c.say("number", thing.Number.Text)
		c.names("hazards", thing.Hazards)
		return c, true
	case *model.Spare:
		c := card{title: thing.Words()}
		c.short(thing.Number.Text)
		if !thing.Reusable.On {
			c.short("single-use")
		}
		c.say("where", thing.Where.Text)
		c.names("hazards", thing.Hazards)
		return c, true
	case *model.Unit:
		c := card{title: thing.Title.Text}
		if c.title == "" {
			c.title = model.Spoken(thing.Name)
		}
		c.short(thing.Serial.Text)
		c.say("machine", thing.Machine.Text)
		c.say("version", thing.Version.Text)
		return c, true
	case *model.Stock:
		c := card{title: thing.Title.Text}
		c.short(thing.Width.Text.Text + " × " + thing.Height.Text.Text)
		return c, true
	case *model.Caution:
		return aboutCaution(thing), true
	}
	return card{}, false
}

func aboutMachine(file *model.File) card {
	machine := file.Machine
	if machine == nil {
		return card{}
	}
	c := card{title: machine.Title.Text}
	if c.title == "" {
		c.title = model.Spoken(file.MachineName())
	}
	c.short(strings.TrimSpace(machine.Maker.Text + " " + machine.Model.Text))
	c.say("manual", machine.Manual.Text)
	c.names("versions", machine.Variants)
	return c
}

func aboutProcedure(file *model.File) card {
	procedure := file.Procedure
	if procedure == nil {
		return card{}
	}
	c := card{title: procedure.Title.Text}
	if c.title == "" {
		c.title = model.Spoken(file.Name())
	}
	c.short(procedure.Machine.Text)
	if procedure.Revision.Set() {
		c.short("revision " + procedure.Revision.Text)
	}
	if procedure.Summary.Set() {
		c.lines = append(c.lines, strings.ReplaceAll(procedure.Summary.Text, "\n", " "))
	}
	c.say("who", procedure.Who.Text)
	c.say("every", list(procedure.Every))
	return c
}

func (s *Shop) aboutPart(file *model.File, part *model.Part, tools bool) card {
	c := card{title: part.Words()}
	grip, turned := needs.Fastener(part)
	if count := part.Count.Or(1); count > 1 {
		c.short(fmt.Sprintf("%d ×", count))
	}
	c.short(part.Thread.Text)
	if turned && grip.Known() {
		c.short(grip.Spoken())
	}
	c.short(spoken(part.Torque))
	if part.Angle.Set() {
		c.short("then " + spoken(part.Angle))
	}
	c.short(part.Condition.Text)
	if part.LeftHand.On {
		c.short("left-hand thread")
	}
	switch {
	case part.Tool.Given:
		c.names("tool", part.Tool)
	case tools && turned && grip.Known():
		c.lines = append(c.lines, serving(file, grip))
	}
	c.names("seals, renewed each time", part.Seals)
	c.names("held by", part.HeldBy)
	c.names("behind", part.Behind)
	c.names("loaded by", part.LoadedBy)
	c.names("guards against", part.Guards)
	c.names("only on", part.For)
	c.names("hazards", part.Hazards)
	c.say("mass", spoken(part.Mass))
	for _, note := range part.Notes.Items {
		c.lines = append(c.lines, inline(note.Text))
	}
	return c
}

// serving says which tools that a file sees serve a fastener.
func serving(file *model.File, grip needs.Grip) string {
	var tools []*model.Tool
	for _, name := range file.Names("tool") {
		if _, thing := file.Describing("tool", name); thing != nil {
			tools = append(tools, thing.(*model.Tool))
		}
	}
	ways := grip.Handy(tools)
	if len(ways) == 0 {
		return "tool: none of the shop's fits; describe one" + grip.Wanted()
	}
	return "tool: `" + strings.Join(ways[0], "`, `") + "`"
}

func (s *Shop) aboutCavity(file *model.File, cavity *model.Cavity) card {
	c := card{title: cavity.Words()}
	c.short(spoken(cavity.Capacity))
	if name := cavity.Fluid.Name(); name != "" {
		if _, thing := file.Describing("fluid", name); thing != nil {
			fluid := thing.(*model.Fluid)
			c.short(strings.TrimSpace(fluid.Words() + " " + fluid.Grade.Text))
		} else {
			c.short(name)
		}
	}
	for _, one := range []struct {
		what string
		text model.Text
	}{{"drained at", cavity.Drain}, {"filled at", cavity.Fill}, {"level at", cavity.Level}, {"breathes at", cavity.Vent}} {
		if one.text.Set() {
			c.lines = append(c.lines, one.what+": `"+one.text.Name()+"`")
		}
	}
	c.say("pressure", spoken(cavity.Pressure))
	for _, override := range cavity.Variant {
		if entry := override.Table.Get("capacity"); entry != nil {
			c.say(model.Spoken(override.Variant.Text), entry.Value.Text)
		}
	}
	c.names("hazards", cavity.Hazards)
	return c
}

func aboutEnergy(energy *model.Energy) card {
	c := card{title: energy.Words()}
	c.short(energy.Kind.Text)
	c.short(spoken(energy.Voltage))
	c.short(spoken(energy.Pressure))
	c.say("isolate", energy.Isolate.Text)
	c.say("relieve", energy.Relieve.Text)
	c.say("prove", energy.Prove.Text)
	c.say("restore", energy.Restore.Text)
	c.say("stands still in", spoken(energy.StopsIn))
	c.names("takes", energy.Tools)
	return c
}

func aboutPoint(point *model.Lubricated) card {
	c := card{title: point.Words()}
	if count := point.Count.Or(1); count > 1 {
		c.short(fmt.Sprintf("%d ×", count))
	}
	c.short(point.Fluid.Text)
	c.short(spoken(point.Amount))
	c.say("until", point.Until.Text)
	c.say("every", list(point.Every))
	c.names("tool", point.Tool)
	c.names("behind", point.Behind)
	return c
}

func aboutLimit(limit *model.Limit) card {
	c := card{title: limit.Words()}
	c.short(spoken(limit.Limit))
	c.say("new", spoken(limit.New))
	c.say("how", limit.How.Text)
	c.say("outside", limit.Outside.Text)
	c.names("tool", limit.Tool)
	c.names("behind", limit.Behind)
	c.names("held by", limit.HeldBy)
	c.names("anew after", limit.Anew)
	return c
}

func aboutTool(tool *model.Tool) card {
	c := card{title: tool.Title.Text}
	if c.title == "" {
		c.title = model.Spoken(tool.Name)
	}
	c.short(tool.Kind.Text)
	c.short(list(tool.Sizes))
	c.short(strings.Join(tool.Points.Names(), ", "))
	if tool.Drive.Set() {
		c.short("drive " + tool.Drive.Text)
	}
	c.short(spoken(tool.Range))
	c.short(spoken(tool.Holds))
	c.say("where", tool.Where.Text)
	c.say("number", tool.Number.Text)
	c.names("hazards", tool.Hazards)
	return c
}

func aboutFluid(fluid *model.Fluid) card {
	c := card{title: fluid.Words()}
	c.short(fluid.Grade.Text)
	c.short(fluid.Service.Text)
	c.say("packs", list(fluid.Packs))
	c.say("where", fluid.Where.Text)
	c.say("safety data sheet", fluid.Sheet.Text)
	c.names("hazards", fluid.Hazards)
	return c
}

func aboutCaution(caution *model.Caution) card {
	c := card{title: caution.Hazard.Text}
	if c.title == "" {
		c.title = model.Spoken(caution.Name)
	}
	c.short(caution.Signal.Text)
	c.short(caution.Consequence.Text)
	c.say("avoid", caution.Avoid.Text)
	c.names("wear", caution.Wear)
	return c
}

// builtIn is what is known of a name that no file describes: a stock, or the message of a hazard.
func builtIn(m mention) (card, string, bool) {
	for _, kind := range m.kinds {
		switch kind {
		case "stock":
			for _, name := range schema.Stocks {
				if name == m.name {
					return card{title: name}, "stock", true
				}
			}
		case "caution":
			if hazard, ok := trade.FindHazard(m.name); ok {
				c := card{title: hazard.Hazard, detail: []string{hazard.Level.String(), hazard.Sentence()}}
				c.say("avoid", hazard.Avoid)
				return c, "built-in safety message", true
			}
		}
	}
	return card{}, "", false
}

// stepWords is what a step does, shortly: "remove belt-guard".
func stepWords(step *model.Step) string {
	if step.Verb.Key == "" {
		return cut(strings.Join(strings.Fields(step.Say.Text), " "), 50)
	}
	words := step.Verb.Key
	if step.Wait.Set() {
		return words + " " + step.Wait.Text.Text
	}
	for i, object := range step.Objects {
		if i > 0 {
			words += ","
		}
		words += " " + object.Text.Text
	}
	return cut(words, 60)
}

// cut is a text of at most so many letters.
func cut(text string, most int) string {
	runes := []rune(text)
	if len(runes) <= most {
		return text
	}
	return string(runes[:most-1]) + "…"
}
