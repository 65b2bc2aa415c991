package rules

import (
	"slices"
	"strings"

	"benchleaf/compiler/finding"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
)

// Words for the two leads of a battery, for work on one in words, and for a machine whose
// frame is on the plus pole.
var (
	plusLead  = pattern.MustCompile(`(?i)\b(?:plus|positive)\b|\bred (?:battery )?(?:cable|lead|clamp)|\(\+\)`)
	minusLead = pattern.MustCompile(`(?i)\b(?:minus|negative|earth)\b|\b(?:ground|black) (?:battery )?(?:cable|lead|clamp|strap)|\([-−]\)`)
	leadOff   = pattern.MustCompile(`(?i)\b(?:take|takes|pull|lift)\b[^.]*\boff\b|\b(?:disconnect|remove|unclamp|undo|unhook)\b`)
	leadOn    = pattern.MustCompile(`(?i)\b(?:put|clamp|fit)\b[^.]*\bon\b|\b(?:connect|reconnect|refit|join)\b`)
	plusFrame = pattern.MustCompile(`(?i)\b(?:positive|plus)[ -](?:earth|ground|to (?:earth|ground|frame))`)
)

// instruments are words of what has leads of its own.
var instruments = []string{"meter", "tester", "volt", "charger", "probe"}

// firstLead tells which lead a text works on first, "plus" or "minus"; "" where it does not
// name both.
func firstLead(text string) string {
	var kept []string
	for _, sentence := range strings.FieldsFunc(text, func(r rune) bool { return r == '.' || r == ';' || r == '!' }) {
		if !says(sentence, "never", "not ", "measure", "between") {
			kept = append(kept, sentence)
		}
	}
	text = strings.Join(kept, ".")
	plus, minus := plusLead.FindStringIndex(text), minusLead.FindStringIndex(text)
	if plus == nil || minus == nil {
		return ""
	}
	plusFirst, between := plus[0] < minus[0], text[min(plus[1], minus[1]):max(plus[0], minus[0])]
	if plusFirst != says(between, "after", "last") {
		return "plus"
	}
	return "minus"
}

var _ = add(Rule{
	Rule: finding.Rule{
		ID: "safety/battery-order", Severity: finding.Warning, Title: "The leads of a battery come off or on in the wrong order",
		Why:     "A wrench between the plus pole and the frame welds itself fast, and the battery can burst.",
		Source:  "common practice, no source: minus off first and on last, where the frame is on minus",
		Setting: worn + "[caution.battery]\nsignal = \"danger\"\nagainst = [\"battery-order\", \"battery-gas\"]\nhazard = \"Battery\"\nconsequence = \"It bursts.\"\navoid = \"Take minus off first.\"\n",
		Bad:     "[[step]]\ndisconnect = \"the plus lead of the battery\"\ncautions = [\"battery\"]\n[[step]]\ndisconnect = \"the minus lead of the battery\"\ncautions = [\"battery\"]\n",
		Good:    "[[step]]\ndisconnect = \"the minus lead of the battery\"\ncautions = [\"battery\"]\n[[step]]\ndisconnect = \"the plus lead of the battery\"\ncautions = [\"battery\"]\n",
	},
	Job: func(p *Pass) {
		said := func(text model.Text, off bool) {
			if !text.Set() || plusFrame.MatchString(text.Text) {
				return
			}
			switch first := firstLead(text.Text); {
			case off && first == "plus":
				p.plusFirst(text.At, "the plus lead of the battery comes off before the minus lead")
			case !off && first == "minus":
				p.plusFirst(text.At, "the minus lead of the battery goes on before the plus lead")
			}
		}
		battery := false
		for _, energy := range p.Job.Energies() {
			if energy.Kind.Text == "battery" {
				battery = true
				said(energy.Isolate, true)
				said(energy.Relieve, true)
				said(energy.Restore, false)
			}
		}
		var off, on []poleLead
		for _, step := range p.Job.Steps {
			if text := step.Say.Text; (battery || says(text, "battery")) && !says(text, instruments...) {
				switch {
				case leadOff.MatchString(text):
					said(step.Say, true)
				case leadOn.MatchString(text):
					said(step.Say, false)
				}
			}
			for _, object := range step.Objects {
				pole, ok := poleOf(object, battery)
				switch {
				case !ok:
				case step.Verb.Key == "disconnect" || step.Verb.Key == "remove":
					off = append(off, poleLead{pole, object.Text.At})
				case step.Verb.Key == "connect" || step.Verb.Key == "refit":
					on = append(on, poleLead{pole, object.Text.At})
				}
			}
		}
		if len(off) > 1 && off[0].pole == "plus" && slices.ContainsFunc(off[1:], func(l poleLead) bool { return l.pole == "minus" }) {
			p.plusFirst(off[0].at, "the plus lead of the battery comes off before the minus lead")
		}
		if len(on) > 1 && on[0].pole == "minus" && slices.ContainsFunc(on[1:], func(l poleLead) bool { return l.pole == "plus" }) {
			p.plusFirst(on[0].at, "the minus lead of the battery goes on before the plus lead")
		}
	},
})

// poleLead is a lead of a battery that a step takes off or puts on.
type poleLead struct {
	pole string
	at   source.Place
}

// poleOf tells which pole a thing leads to, where it is a lead of a battery.
func poleOf(object model.Object, battery bool) (pole string, ok bool) {
	words := object.Words() + " " + object.Text.Text
	if plusFrame.MatchString(words) || !says(words, "cable", "lead", "clamp", "terminal", "strap") || !battery && !says(words, "battery") {
		return "", false
	}
	switch plus, minus := plusLead.MatchString(words), minusLead.MatchString(words); {
	case plus && !minus:
		return "plus", true
	case minus && !plus:
		return "minus", true
	}
	return "", false
}

func (p *Pass) plusFirst(place source.Place, what string) {
	p.Found(finding.Finding{Place: place, Summary: what,
		Help: "Take the minus lead off first, and put it on last; where plus is on the frame, say so."})
}
