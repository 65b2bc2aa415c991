package rules

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "joined/value", Severity: finding.Error, Title: "A joined job says something else than its authors",
		Why:     "The service book counts the step as done for its procedure, and it was done otherwise than its author wrote it.",
		Source:  "the procedures themselves: the joined one is a copy of them",
		Setting: joinedAlone,
		Bad:     "[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 1, A 2\"\n[[step]]\nsay = \"Look at the plug from below.\"\n",
		Good:    "[[step]]\nsay = \"Look at the plug.\"\norigin = \"A 1\"\n[[step]]\nsay = \"Look at the plug from below.\"\norigin = \"A 2\"\n",
	},
	Job: func(p *Pass) {
		kept, told := p.kept(), map[string]bool{}
		for i := range kept.from {
			if one := &kept.from[i]; one.known() {
				p.head(one, told)
				for _, copy := range kept.of(one) {
					if copy.own.Verb.Key == copy.step.Verb.Key {
						p.held(kept, copy)
					}
				}
			}
		}
	},
})

// head holds the head of a job against that of a procedure: who may do it, what is worn and
// warned of, what is written down, and how the machine is to stand before and after, are for all
// of the work.
//
// What several say is told once.
func (p *Pass) head(one *joinedFrom, told map[string]bool) {
	here, own := p.Job.Procedure, one.job.Procedure
	if own.Who.Set() && !strings.Contains(spaced(here.Who.Text), spaced(own.Who.Text)) {
		p.headless("who", here.Who.At, one, own.Who)
	}
	if own.Manual.Set() && !strings.Contains(spaced(here.Manual.Text), spaced(own.Manual.Text)) {
		p.headless("manual", here.Manual.At, one, own.Manual)
	}
	for _, list := range []struct {
		key       string
		here, own model.List
	}{{"start", here.Start, own.Start}, {"end", here.End, own.End}, {"wear", here.Wear, own.Wear}, {"cautions", here.Cautions, own.Cautions}, {"record", here.Record, own.Record}, {"notes", here.Notes, own.Notes}} {
		for _, text := range list.own.Items {
			if !slices.ContainsFunc(list.here.Items, func(said model.Text) bool { return spaced(said.Text) == spaced(text.Text) }) && !told[list.key+" "+spaced(text.Text)] {
				told[list.key+" "+spaced(text.Text)] = true
				p.headless(list.key, list.here.At, one, text)
			}
		}
	}
}

// headless tells of a text that the head of a procedure has and the head of the job has not.
func (p *Pass) headless(key string, place source.Place, one *joinedFrom, text model.Text) {
	if place.File == nil {
		place = p.Job.Procedure.Header
	}
	p.Found(finding.Finding{Place: place, Summary: fmt.Sprintf("%s leaves out what %s says: %q", key, one.item.Text, text.Text),
		Help:    fmt.Sprintf("Write it into %s of the head, as its author has it; or change it in the procedure, and join the job anew.", key),
		Related: []finding.Related{{Place: text.At, Text: key + " of " + one.item.Text}}})
}

// Unheld are the keys of a step that a joined job may have otherwise than the step it comes
// from, each with the reason. All others are held against it.
var Unheld = map[string]string{
	"id":        "the words that speak of it are of its own procedure",
	"for":       "the job is of one version of the machine, and a step that is not for it is missing, which is told",
	"stage":     "the headings tell what the machine is set to in this job",
	"meanwhile": "it hangs on what stands before it; that a wait is over is held by the gate",
	"gate":      "it counts the steps of this job; joined/step holds it against the waits",
	"origin":    "it is what the step is held by",
	"person":    "the job is shared out to two, and the procedure was for one",
	"once":      "it names steps of the other person; people/at-once holds it",
	"allow":     "whoever keeps the job may stand by a finding of his own",
	"variant":   "what it sets for the version of the job is held key by key",
}

// held holds a step against the one that it is a copy of, or does the work of.
func (p *Pass) held(kept keptJob, copy copied) {
	changes := makesReady(copy.from.job, copy.own)
	if !copy.main && changes && copy.shares() {
		return // it is written as another author has it
	}
	if place, unlike := copy.step.UnlikeObjects(copy.own, changes); unlike {
		related := copy.place()
		related.Place = at(copy.own)
		summary := fmt.Sprintf("step %d is %s, and step %d of %s is %s", copy.step.Number, deed(copy.step), copy.own.Number, copy.from.item.Text, deed(copy.own))
		p.Found(finding.Finding{Place: place, Summary: summary, Help: asItsAuthor + " If another step is meant, correct the origin.", Related: []finding.Related{related}})
		return
	}
	run := copy.step.Verb.Key == "run" && len(copy.step.Origins()) > 1 // several have one
	for _, one := range copy.step.Unlike(copy.own, p.Job.Variant) {
		switch {
		case Unheld[one.Key] != "":
		case one.Key == "say" && changes && p.Job.ForTwo() && strings.HasPrefix(copy.step.Say.Text, copy.own.Say.Text): // locks of both
		case one.Key == "notes" && noted(copy):
		case one.Key == "spares" && p.sealed(copy):
		case run && (one.Key == "expect" || one.Key == "outside"):
			p.together(kept, copy, one)
		case run && !copy.main && (one.Key != "least" || longEnough(copy) || slices.ContainsFunc(kept.copies, func(first copied) bool { return first.main && first.step == copy.step && !longEnough(first) })): // what it says is of the first
		default:
			p.unlike(copy, one)
		}
	}
}

const asItsAuthor = "Write it as its author has it; or change it in the procedure, and join the job anew."

// unlike tells of one value.
func (p *Pass) unlike(copy copied, one model.Unlike) {
	name := fmt.Sprintf("step %d of %s", copy.own.Number, copy.from.item.Text)
	here, there := short(one.Here), short(one.There)
	related := copy.place()
	found := finding.Finding{Place: one.Here, Help: asItsAuthor}
	if one.There.File != nil {
		related.Place = one.There
	}
	switch {
	case one.Here.File == nil:
		found.Place = at(copy.step)
		found.Summary = fmt.Sprintf("step %d leaves %s out, and %s has it", copy.step.Number, one.Key, name)
		if there != "" {
			found.Summary = fmt.Sprintf("step %d leaves %s out, and %s has %s", copy.step.Number, one.Key, name, there)
			found.Help = fmt.Sprintf("Write %s = %s, as its author has it; or change it in the procedure, and join the job anew.", one.Key, there)
		}
	case one.There.File == nil:
		found.Summary = fmt.Sprintf("step %d says %s, and %s does not", copy.step.Number, one.Key, name)
		found.Help = "Take it out; or write it into the procedure, and join the job anew. What is good to know goes into notes."
	case here == "" || there == "":
		found.Summary = fmt.Sprintf("the %s of step %d is not that of %s", one.Key, copy.step.Number, name)
	default:
		found.Summary = fmt.Sprintf("the %s of step %d is %s, and %s has %s", one.Key, copy.step.Number, here, name, there)
		found.Help = fmt.Sprintf("Write %s = %s, as its author has it; or change it in the procedure, and join the job anew.", one.Key, there)
	}
	found.Related = []finding.Related{related}
	p.Found(found)
}

// short is a value as it is written; empty where it is too long for a line, or a table with a header.
func short(place source.Place) string {
	if place.File == nil {
		return ""
	}
	text := place.Text()
	if len(text) > 60 || strings.ContainsAny(text, "\r\n") || strings.HasPrefix(text, "[[") && !strings.HasSuffix(text, "}]") {
		return ""
	}
	return text
}

// noted reports whether the notes of the author are among those of a step: join adds its own.
func noted(copy copied) bool {
	return !slices.ContainsFunc(copy.own.Notes.Items, func(note model.Text) bool {
		return !slices.ContainsFunc(copy.step.Notes.Items, func(here model.Text) bool { return spaced(here.Text) == spaced(note.Text) })
	})
}

func spaced(text string) string { return strings.Join(strings.Fields(text), " ") }

// sealed reports whether a step names the spares of its author, and besides them nothing but
// seals of what it is done to: a part that goes back a second time takes new ones.
func (p *Pass) sealed(copy copied) bool {
	var seals []string
	for _, object := range copy.step.Objects {
		if object.Part == nil {
			continue
		}
		seals = append(seals, object.Part.Seals.Names()...)
		for _, name := range object.Part.HeldBy.Names() {
			if fastener := p.Job.Part(name); fastener != nil {
				seals = append(seals, fastener.Seals.Names()...)
			}
		}
	}
	own, here := copy.own.Spares.Names(), copy.step.Spares.Names()
	return !slices.ContainsFunc(own, func(name string) bool { return !slices.Contains(here, name) }) &&
		!slices.ContainsFunc(here, func(name string) bool { return !slices.Contains(own, name) && !slices.Contains(seals, name) })
}

// longEnough reports whether a run that several have is not shorter than one of them has it.
func longEnough(copy copied) bool {
	least, known := copy.own.Least.Lowest()
	here, told := copy.step.Least.Lowest()
	return !copy.own.Least.OK || !known || copy.step.Least.OK && told && here.Cmp(least) >= 0
}

// letters are those of whose words the words behind them are.
var letters = pattern.MustCompile(`\b[A-Z]+(, [A-Z]+)*:`)

// together holds what is to be seen at a run that several have: what each of them has, and no more.
func (p *Pass) together(kept keptJob, copy copied, one model.Unlike) {
	text := func(step *model.Step) string {
		if one.Key == "outside" {
			return spaced(step.Outside.Text)
		}
		return strings.TrimRight(spaced(step.Expect.Text), ".")
	}
	own, here := text(copy.own), text(copy.step)
	if !strings.Contains(here, own) {
		p.unlike(copy, one)
		return
	}
	if !copy.main {
		return // the rest of it is held once
	}
	var said []string // the longer first, which may hold a shorter one
	for _, other := range kept.copies {
		if other.step == copy.step {
			said = append(said, text(other.own))
		}
	}
	slices.SortStableFunc(said, func(a, b string) int { return cmp.Compare(len(b), len(a)) })
	rest := here
	for _, one := range said {
		rest = strings.Replace(rest, one, "", 1)
	}
	if len(copy.step.Origins()) == len(said) && strings.Trim(letters.ReplaceAllString(rest, ""), " ;.") != "" {
		p.unlike(copy, one)
	}
}
