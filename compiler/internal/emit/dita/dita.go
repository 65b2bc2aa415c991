// Package dita writes a card as a machinery task of DITA, for programs that publish
// manuals. The elements are those that DITA 1.2 and DITA 1.3 (OASIS Standard with errata
// 02) have in common, so that a document of either is valid. It only draws.
package dita

import (
	"bytes"
	"encoding/xml"
	"slices"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// head names the standard's grammar of the newest version that a program has.
const head = xml.Header + `<!DOCTYPE task PUBLIC "-//OASIS//DTD DITA Machinery Task//EN" "machineryTask.dtd">` + "\n"

// Draw writes one card as one task; name tells it from others. Pictures, drawings and signs are
// left out.
func Draw(card plan.Card, name string) []byte {
	d := &drawing{card: card}
	d.out.WriteString(head)
	d.in("task", d.task, "id", "task-"+name, "xml:lang", card.Words.Language)
	return d.out.Bytes()
}

type drawing struct {
	card  plan.Card
	out   bytes.Buffer
	depth int
}

// in writes an element with others inside it, each on its own line.
func (d *drawing) in(name string, inside func(), attributes ...string) {
	d.open(name, attributes)
	d.out.WriteString("\n")
	d.depth++
	inside()
	d.depth--
	d.indent()
	d.out.WriteString("</" + name + ">\n")
}

// of writes an element with text inside it; what is empty is written only where it says so.
func (d *drawing) of(name string, text []plan.Run, attributes ...string) {
	d.open(name, attributes)
	d.runs(text)
	d.out.WriteString("</" + name + ">\n")
}

// alone writes an element that holds nothing.
func (d *drawing) alone(name string, attributes ...string) {
	d.open(name, attributes)
	d.out.Truncate(d.out.Len() - 1)
	d.out.WriteString("/>\n")
}

func (d *drawing) open(name string, attributes []string) {
	d.indent()
	d.out.WriteString("<" + name)
	for i := 0; i < len(attributes); i += 2 {
		d.out.WriteString(" " + attributes[i] + `="`)
		d.escape(attributes[i+1])
		d.out.WriteString(`"`)
	}
	d.out.WriteString(">")
}

func (d *drawing) indent() { d.out.WriteString(strings.Repeat("  ", d.depth)) }

func (d *drawing) escape(text string) { _ = xml.EscapeText(&d.out, []byte(text)) } // a buffer takes everything

func (d *drawing) runs(text []plan.Run) {
	for _, run := range text {
		var names []string
		for _, face := range []struct {
			on   bool
			name string
		}{{run.Bold, "b"}, {run.Italic, "i"}, {run.Code, "tt"}} {
			if face.on {
				names = append(names, face.name)
				d.out.WriteString("<" + face.name + ">")
			}
		}
		d.escape(run.Text)
		for _, name := range slices.Backward(names) {
			d.out.WriteString("</" + name + ">")
		}
	}
}

func plain(text string) []plan.Run { return []plan.Run{{Text: text}} }

// labelled is a label in bold with what it says.
func (d *drawing) labelled(label, text string) []plan.Run {
	return []plan.Run{{Text: label + d.card.Words.Labels.Colon, Bold: true}, {Text: " " + text}}
}

func (d *drawing) task() {
	card := d.card
	d.of("title", plain(card.Title))
	if len(card.Summary) > 0 {
		d.of("shortdesc", card.Summary)
	}
	d.in("prolog", d.prolog)
	d.in("taskbody", func() {
		d.in("prelreqs", d.before)
		d.context()
		d.in("steps", d.steps)
		d.in("closereqs", func() { d.in("reqconds", func() { d.conditions(card.End) }) })
	})
}

func (d *drawing) prolog() {
	card := d.card
	d.of("author", plain(card.Author))
	if card.Date != "" {
		d.in("critdates", func() { d.alone("created", "date", card.Date) })
	}
	d.in("metadata", func() {
		d.in("prodinfo", func() {
			d.of("prodname", plain(card.Machine))
			d.in("vrmlist", func() { d.alone("vrm", "version", card.Variant) })
		})
		d.alone("othermeta", "name", "revision", "content", card.Revision)
		if card.Checked != "" {
			d.alone("othermeta", "name", "checked", "content", card.Checked)
		}
	})
}

func (d *drawing) conditions(list []string) {
	if len(list) == 0 {
		d.alone("noconds")
	}
	for _, text := range list {
		d.of("reqcond", plain(text))
	}
}

// fact is what a card says under a label; empty where it says nothing.
func (d *drawing) fact(label string) string {
	for _, fact := range d.card.Facts {
		if fact.Label == label {
			return fact.Text
		}
	}
	return ""
}

// before are the preliminary requirements.
func (d *drawing) before() {
	card, labels := d.card, d.card.Words.Labels
	d.in("reqconds", func() {
		if len(card.Start) > 0 || card.Manual == "" {
			d.conditions(card.Start)
		}
		if card.Manual != "" {
			d.of("reqcontp", plain(card.Manual))
		}
	})
	d.in("reqpers", func() {
		d.of("personnel", plain(d.fact(labels.People)))
		if who := d.fact(labels.Who); who != "" {
			d.of("perskill", plain(who))
		}
		if time := d.fact(labels.HandsOn); time != "" {
			d.of("esttime", plain(time))
		}
	})
	d.items("supequip", "nosupeq", "supeqli", "supequi", slices.Concat(card.Wear, card.Tools))
	d.items("supplies", "nosupply", "supplyli", "supply", card.Supplies)
	d.items("spares", "nospares", "sparesli", "spare", card.Spares)
	d.in("safety", func() {
		if len(card.Cautions) == 0 && len(card.Isolations) == 0 && card.NoEnergy == "" {
			d.alone("nosafety")
		}
		if len(card.Cautions) > 0 {
			d.in("safecond", func() { d.hazards(card.Cautions) })
		}
		for _, one := range card.Isolations {
			d.of("safecond", d.labelled(one.Energy, strings.TrimSpace(one.How+" "+one.Prove)))
		}
		if card.NoEnergy != "" {
			d.of("safecond", plain(card.NoEnergy))
		}
	})
}

func (d *drawing) items(group, none, list, one string, items []plan.Item) {
	d.in(group, func() {
		if len(items) == 0 {
			d.alone(none)
			return
		}
		d.in(list, func() {
			for _, item := range items {
				text := item.Name
				if item.Quantity != "" {
					text = item.Quantity + " " + text
				}
				if item.Note != "" {
					text += " (" + item.Note + ")"
				}
				d.of(one, plain(text))
			}
		})
	})
}

// context are the facts that prelreqs has no place for: when the work is done.
func (d *drawing) context() {
	var facts []plan.Fact
	labels := d.card.Words.Labels
	for _, fact := range d.card.Facts {
		if !slices.Contains([]string{labels.Who, labels.People, labels.HandsOn}, fact.Label) {
			facts = append(facts, fact)
		}
	}
	if len(facts) == 0 {
		return
	}
	d.in("context", func() {
		for _, fact := range facts {
			d.of("p", d.labelled(fact.Label, fact.Text))
		}
	})
}

// hazards are safety messages as hazard statements.
func (d *drawing) hazards(list []plan.Caution) {
	for _, one := range list {
		d.in("hazardstatement", func() {
			d.in("messagepanel", func() {
				d.of("typeofhazard", plain(one.Hazard))
				if one.Consequence != "" {
					d.of("consequence", plain(one.Consequence))
				}
				if one.Avoid != "" || len(one.Wear) == 0 {
					d.of("howtoavoid", plain(one.Avoid))
				}
				if len(one.Wear) > 0 {
					d.of("howtoavoid", d.labelled(d.card.Words.Labels.Wear, strings.Join(one.Wear, ", ")))
				}
			})
		}, "type", plan.Signals()[one.Rank()])
	}
}

// steps are all steps of a card; a heading goes before the step that begins with it.
func (d *drawing) steps() {
	for _, section := range d.card.Sections {
		for i, step := range section.Steps {
			var heads []string
			if i == 0 {
				heads = append(heads, section.Title)
			}
			if step.Stage != "" {
				heads = append(heads, step.Stage)
			}
			if len(heads) > 0 {
				d.of("stepsection", plain(strings.Join(heads, " · ")))
			}
			d.in("step", func() { d.step(step) }, "id", "step-"+number(step.Number))
		}
	}
}
