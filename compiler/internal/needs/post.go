package needs

import (
	"fmt"
	"slices"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/pattern"
)

// Post is where a step keeps a person, with which tools, and whether anybody else may be at
// the machine meanwhile.
type Post struct {
	Areas []string // in which the person works; nil where that is not known
	Tools []string // in the hand
	Alone string   // why nobody else works at the machine; empty where another may
}

// moving are verbs that move, load or feed the machine, or throw things about: what they do is
// not kept to one place. Common practice, no source.
var moving = []string{"isolate", "relieve", "prove", "restore", "raise", "support", "lower", "turn-over", "stop", "start", "run", "bleed", "sharpen", "follow"}

// reaching are hazards that do not keep to the place of the work: what flies, spreads, falls or
// lets go. Common practice, no source.
var reaching = []string{"grinding", "crushing", "injection", "spring", "fire", "fuel", "burst", "load", "spray", "air", "gas", "confined", "exhaust-gas", "corrosive", "chips", "explosive", "solvent", "dust", "feed", "rotation", "start"}

// movesByHand are words that tell of the machine being moved at a step that has no such verb;
// common practice, no source.
var movesByHand = pattern.MustCompile(`(?i)\b(by hand (one|two|half|a|round|around|until|through)|(turn|pull|push|roll|spin|bar|crank|rock|move|jog|inch)(s|ed|ing)?\b.*\b(by hand|round|around|over|through|back and forth|forwards?|backwards?|on)|rotat\w*|revolution|jog|crank|let go|release)\b`)

// turnsByHand are words that tell of the works of the machine being turned over by hand; common
// practice, no source. Whoever does so lets a belt run onto its pulley and a chain onto its wheel.
var turnsByHand = pattern.MustCompile(`(?i)\b((turn|spin|roll|rotat|crank|bar)(s|e|es|ed|ing)?\b.*\b(by hand|over|round|around|through)|by hand (one|two|half|a|round|around|through)|(turn|spin|rotat|crank)(s|e|es|ed|ing)? ((the|both|each|all|a|it|its|to|next|top|bottom|upper|lower|main|drive|front|rear)\s+)*(knife|wheel|flywheel|drum|shaft|crankshaft|pulley|sheave|sprocket|arbor|rotor|spindle|chain|belt|blade|impeller|reel|gear)s?)\b`)

// TurnsByHand reports whether a step has the works of the machine turned by hand, by its words,
// its objects and how a limit is measured; words are read in English only.
func TurnsByHand(job *model.Job, step *model.Step) bool {
	return job.Language() == "en" && turnsByHand.MatchString(Words(step))
}

// Words are those of a step, of what it is done to and of how that is measured.
func Words(step *model.Step) string {
	out := []string{step.Told()}
	for _, object := range step.Objects {
		out = append(out, object.Words())
		if object.Limit != nil {
			out = append(out, object.Limit.How.Text)
		}
	}
	return strings.Join(out, "\n")
}

// Hands are the tools that a step takes, by their names, each once: of a fastener those of the
// first way that the listed tools serve it.
func (n *Needs) Hands(step *model.Step) []string {
	var tools []string
	for g := range n.Grips {
		if grip := &n.Grips[g]; grip.Step == step && len(grip.Listed) > 0 {
			tools = append(tools, grip.Listed[0]...)
		}
	}
	for _, use := range n.Tools {
		if use.Step == step {
			tools = append(tools, use.Name)
		}
	}
	slices.Sort(tools)
	return slices.Compact(tools)
}

// Posts are where the steps of a job keep a person, in their order.
func (n *Needs) Posts(job *model.Job) []Post {
	out := make([]Post, len(job.Steps))
	running := "" // the verb that set the machine going; empty while it stands
	for i, step := range job.Steps {
		if running == "run" && !step.Meanwhile.On {
			running = ""
		}
		out[i] = n.post(job, step)
		if running != "" && out[i].Alone == "" {
			out[i].Alone = "the machine runs"
		}
		switch step.Verb.Key {
		case "start", "run":
			running = step.Verb.Key
		case "stop":
			running = ""
		}
	}
	return out
}

func (n *Needs) post(job *model.Job, step *model.Step) Post {
	out := Post{Areas: job.Areas(step), Tools: n.Hands(step)}
	cover := slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Part != nil && o.Part.Cover })
	energy := slices.ContainsFunc(step.Objects, func(o model.Object) bool { return o.Energy != nil })
	hazard := n.reaches(job, step, out.Tools)
	switch {
	case step.People.Or(1) > 1 || job.Procedure.People.Or(1) > 1 && step.Person.N == 0:
		out.Alone = "it takes all hands"
	case slices.Contains(moving, step.Verb.Key):
		out.Alone = fmt.Sprintf("%s moves or feeds the machine", step.Verb.Key)
	case energy:
		out.Alone = "it works at an energy"
	case cover:
		out.Alone = "it works at a cover"
	case step.Watched():
		out.Alone = "its wait wants somebody with it or nobody at the machine"
	case hazard != "":
		out.Alone = fmt.Sprintf("its hazard %q reaches further than its place", hazard)
	case step.Area.Given: // whoever wrote it has thought of it
	case step.Say.Set() && job.Language() != "en":
		out.Alone = "its words are not read in this language; area = [...] at the step says where it is done"
	case movesByHand.MatchString(Words(step)):
		out.Alone = fmt.Sprintf("its words tell of something that moves (%q); area = [...] at the step says where it is done", movesByHand.FindString(Words(step)))
	case len(out.Areas) == 0:
		out.Alone = "nothing says in which area it is done"
	}
	return out
}

// reaches is a hazard of a step that does not keep to its place; empty for none.
func (n *Needs) reaches(job *model.Job, step *model.Step, tools []string) string {
	named := step.Cautions.Names()
	for _, own := range step.Own {
		named = append(named, own.Against.Names()...)
	}
	for _, object := range step.Objects {
		switch {
		case object.Part != nil:
			named = append(named, object.Part.Hazards.Names()...)
		case object.Cavity != nil:
			named = append(named, object.Cavity.Hazards.Names()...)
		}
	}
	for _, name := range tools {
		if tool := job.Tool(name); tool != nil {
			named = append(named, tool.Hazards.Names()...)
		}
	}
	for _, name := range named {
		if caution := job.Caution(name); caution != nil {
			named = append(slices.Clip(named), caution.Against.Names()...)
		}
	}
	for _, name := range named {
		if slices.Contains(reaching, name) {
			return name
		}
	}
	return ""
}

// Beside says why two steps of two jobs at one machine cannot be done at once by two people;
// empty where they can.
func Beside(job *model.Job, one, other Post) string {
	if one.Alone != "" {
		return one.Alone
	}
	if other.Alone != "" {
		return other.Alone
	}
	if !job.Apart(one.Areas, other.Areas) {
		return fmt.Sprintf("%s and %s are not described as apart", strings.Join(one.Areas, ", "), strings.Join(other.Areas, ", "))
	}
	for _, name := range one.Tools {
		if tool := job.Tool(name); slices.Contains(other.Tools, name) && (tool == nil || tool.Count.Or(1) < 2) {
			return fmt.Sprintf("both take %s, and there is one", name)
		}
	}
	return ""
}
