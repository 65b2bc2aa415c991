package rules

import (
	"slices"
	"strings"

	"benchleaf/compiler/internal/memo"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
	"benchleaf/compiler/source"
	"benchleaf/schema"
)

// sentence is one sentence of a text, with where it stands in it. A colon and a
// semicolon end one as well: what follows them is an order or a reason of its own.
type sentence struct {
	text  model.Text
	start int
	words string // as long as it is written, with the marks of CommonMark as spaces
}

var (
	// A full stop ends a sentence only before white space and a capital, so that
	// "approx. 5 mm" and "0.5 mm" stay whole.
	sentenceEnd = pattern.MustCompile(`[.!?]["”)]*\s+["“(]?\p{Lu}|[.!?]["”)]*\s*$|[:;]\s|\n\s*\n|\n\s*(?:[-*+]|\d+[.)])\s`)
	emphasis    = strings.NewReplacer("*", " ", "_", " ", "`", " ")
)

// sentences splits a text, once for all the rules of a job that look at it.
func (p *Pass) sentences(text model.Text) []sentence {
	if text.Value == nil || p.split == nil {
		return sentences(text)
	}
	out, known := p.split[text.Value]
	if !known {
		for _, piece := range split.Of(p.Job.Memo, text.Text) {
			out = append(out, sentence{text, piece.start, piece.words})
		}
		p.split[text.Value] = out
	}
	return out
}

// sentences splits a text.
func sentences(text model.Text) (out []sentence) {
	for _, piece := range pieces(text.Text) {
		out = append(out, sentence{text, piece.start, piece.words})
	}
	return out
}

// piece is one sentence of some words, and where it begins.
type piece struct {
	start int
	words string
}

var split = memo.Of(pieces)

func pieces(text string) []piece {
	plain := emphasis.Replace(text)
	var out []piece
	keep := func(start, end int) {
		words := strings.TrimRight(plain[start:end], " \n.!?:;")
		trimmed := strings.TrimLeft(words, " \n-+")
		if trimmed != "" {
			out = append(out, piece{start + len(words) - len(trimmed), trimmed})
		}
	}
	start := 0
	for from := 0; from < len(plain); {
		mark := strings.IndexAny(plain[from:], ".!?:;\n") // each end begins with one
		if mark < 0 {
			break
		}
		from += mark
		if from == len(plain)-1 && plain[from] != ':' && plain[from] != ';' && plain[from] != '\n' {
			keep(start, len(plain))
			start = len(plain)
			break
		}
		at := sentenceEnd.FindStringIndex(plain[from:])
		if at == nil {
			break
		}
		end := from + at[0] + 1
		keep(start, end)
		start, from = end, end
	}
	if start < len(plain) {
		keep(start, len(plain))
	}
	return out
}

// at is where bytes of the sentence stand in the file.
func (s sentence) at(start, end int) source.Place { return s.text.Inside(s.start+start, s.start+end) }

// place is where the sentence stands in the file.
func (s sentence) place() source.Place { return s.at(0, len(s.words)) }

// head is how the sentence begins, for a summary.
func (s sentence) head() string {
	fields := strings.Fields(s.words)
	if len(fields) > 5 {
		return strings.Join(fields[:5], " ") + " …"
	}
	return strings.Join(fields, " ")
}

// lead is a condition, a place or a way that stands first, up to its comma.
var lead = pattern.MustCompile(`(?i)^(?:when|whenever|if|unless|while|after|before|once|as|until|with|without|where|on|at|in|from|to|for|by|over|under|between|using|working|starting|beginning|then|now|next|first|last|finally)\b[^,]*,\s+`)

// core is the sentence without what leads it in, and how many bytes that is.
func (s sentence) core() (string, int) {
	if !strings.Contains(s.words, ",") {
		return s.words, 0
	}
	skip := len(lead.FindString(s.words))
	return s.words[skip:], skip
}

// determiner is what stands before a noun, so that the word before it is a verb:
// "grease the fitting" and not "grease on the fitting".
const determiner = `(?:the|a|an|all|both|each|every|any|it|them|your|this|these|those|its|one|two|three|four|five|six|\d+)\b`

// languageVerbs are the verbs of the language as they stand in a sentence.
var languageVerbs = func() []string {
	var out []string
	for _, verb := range schema.Verbs() {
		out = append(out, strings.ReplaceAll(verb.Key, "-", " "))
	}
	return out
}()

// handVerbs are other words an order begins with; common practice, no source. Words
// that begin a statement as often ("oil", "lock", "stand", "back") are left out.
var handVerbs = strings.Fields(`press push pull put take turn use wipe hold let lift fit screw unscrew call wear keep leave go set bring renew tap switch
	shut move add pour cut wash rinse reset repeat try change get throw draw slide lay hang carry lean bend tie cover uncover fetch tell send write read`)

var (
	verbForm  = "(?:" + strings.Join(languageVerbs, "|") + ")"
	orderForm = pattern.MustCompile(`(?i)^(?:` + strings.Join(slices.Concat(languageVerbs, handVerbs), "|") + `)\b`)
	// In a note "grease on the fitting", "mark 1" and "never a drop" tell, so more must
	// follow the verb there.
	firmOrder = pattern.MustCompile(`(?i)^(?:do not \w+|don't \w+|make sure|(?:never|always) (?:` + strings.Join(slices.Concat(languageVerbs, handVerbs), "|") + `)\b|(?:` +
		strings.Join(slices.Concat(languageVerbs, handVerbs), "|") + `) (?:the|a|an|all|both|each|every|any|it|them|your|this|these|those)\b)`)
)

// statement is a start that no order has: a noun or pronoun with its verb, or a deed
// in the passive.
var (
	statement = pattern.MustCompile(`(?i)^(?:the|a|an|this|these|it|they|you|we|there|your|its|their|both|all|each|every)\b.*?\b(?:is|are|was|were|must|should|shall|has to|have to|needs? to|can|may|will|gets?)\b`)
	passive   = pattern.MustCompile(`(?i)^[\w-]+(?: [\w-]+){0,4} (?:must|should|shall)(?: not)? be\b`)
	// Behind these words stands another clause, with a verb of its own.
	clause = pattern.MustCompile(`(?i),|\s(?:until|when|if|while|that|which|where|whose|who|whoever|whatever|what|how|so|as|because|before|after|than)\b`)
	asking = pattern.MustCompile(`(?i)^(?:make|check|see|tell|say|ask|verify|ensure|note|remember|confirm|mind|let)\b`)
)

// states reports whether the sentence says how things are where it should say what
// to do.
func (s sentence) states() bool {
	core, _ := s.core()
	if cut := clause.FindStringIndex(core); cut != nil {
		core = core[:cut[0]]
	}
	return !asking.MatchString(core) && (statement.MatchString(core) || passive.MatchString(core) && !orderForm.MatchString(core))
}

// figure reports whether a digit stands in the sentence: a value.
func (s sentence) figure() bool { return strings.ContainsAny(s.words, "0123456789½¼¾") }

// orders are the texts of a step that tell someone to do something.
func orders(step *model.Step) []model.Text {
	var out []model.Text
	for _, text := range []model.Text{step.Say, step.Outside} {
		if text.Set() {
			out = append(out, text)
		}
	}
	return out
}

// authored are the safety messages the job's author wrote, each once; the built-in
// ones have no place.
func (p *Pass) authored() []*model.Caution {
	if p.wrote == nil {
		p.wrote = p.written()
	}
	return p.wrote
}

func (p *Pass) written() []*model.Caution {
	out := []*model.Caution{}
	add := func(list model.List) {
		for _, name := range list.Names() {
			if message := p.Job.Caution(name); message != nil && !message.BuiltIn() && !slices.Contains(out, message) {
				out = append(out, message)
			}
		}
	}
	add(p.Job.Procedure.Cautions)
	for _, step := range p.Job.Steps {
		add(step.Cautions)
		out = append(out, step.Own...)
	}
	return out
}

// valued reports whether a step gives a value the words may lean on.
func valued(step *model.Step) bool {
	return step.SetTo.Set() || step.Limit.Set() || step.Torque.Set() || step.Angle.Set() || step.Amount.Set() || step.Until.Set()
}
