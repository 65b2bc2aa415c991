package export

import (
	"cmp"
	"math"
	"reflect"
	"slices"

	"benchleaf/compiler/internal/hazard"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/state"
	"benchleaf/schema"
)

// Work is a job with what is known of it.
type Work struct {
	Job     *model.Job
	Needs   *needs.Needs
	Hazards []hazard.Implied
	Walk    *state.Walk
	Actions []string // the sentence of each step
	Blocked bool
}

// Of is the model of a shop, in the order of its files, with the jobs that were made of it.
func Of(set *model.Set, jobs []Work) Model {
	out := Model{Version: schema.ModelVersion, Language: schema.Version, Machines: []Machine{}, Libraries: []Thing{}, Procedures: []Procedure{}}
	for _, file := range set.Files {
		if file.Shop != nil && out.Shop == nil {
			out.Shop = &Table{file.Shop.Header.Location(), keysOf("shop", file.Shop)}
		}
		if file.Machine != nil {
			out.Machines = append(out.Machines, machineOf(set, file))
		}
		for _, one := range file.Named() {
			if !slices.Contains(model.MachineKinds(), one.Kind) || file.Machine == nil && file.Procedure == nil {
				out.Libraries = append(out.Libraries, thingOf(one.Kind, one.Name, one.Value))
			}
		}
		if file.Procedure != nil {
			out.Procedures = append(out.Procedures, procedureOf(file, jobs))
		}
	}
	return out
}

func machineOf(set *model.Set, file *model.File) Machine {
	machine := file.Machine
	out := Machine{Name: file.MachineName(), Title: machine.Title.Text, Table: Table{machine.Header.Location(), keysOf("machine", machine)}, Versions: []MachineVersion{}}
	for _, job := range set.Versions(file) {
		out.Versions = append(out.Versions, MachineVersion{job.Variant, thingsOf(job)})
	}
	return out
}

// thingsOf are the things of a machine that a job's own file describes, for its version.
func thingsOf(job *model.Job) []Thing {
	out := []Thing{}
	for _, one := range job.File.Named() {
		if !slices.Contains(model.MachineKinds(), one.Kind) {
			continue
		}
		if value := job.Resolved(one.Kind, one.Name); value != nil {
			out = append(out, thingOf(one.Kind, one.Name, value))
		}
	}
	return out
}

func thingOf(kind, name string, value any) Thing {
	out := Thing{Kind: kind, Name: name, Words: model.Spoken(name), Table: Table{Keys: keysOf(kind, value)}}
	if thing, ok := reflect.ValueOf(value).Elem().Field(0).Interface().(model.Thing); ok { // as every thing has it first
		out.Place = thing.Header.Location()
	}
	if title, ok := out.Keys["title"].(string); ok {
		out.Words = title
	}
	return out
}

func procedureOf(file *model.File, jobs []Work) Procedure {
	procedure := file.Procedure
	out := Procedure{Name: file.Name(), Title: procedure.Title.Text, Table: Table{procedure.Header.Location(), keysOf("procedure", procedure)}, Versions: []Job{}}
	for _, work := range jobs {
		if work.Job.File == file {
			out.Machine = work.Job.MachineName()
			out.Versions = append(out.Versions, jobOf(work))
		}
	}
	return out
}

func jobOf(work Work) Job {
	job := work.Job
	out := Job{Version: job.Variant, Blocked: work.Blocked, Things: []Thing{}, Steps: []Step{}, Needs: needsOf(work.Needs)}
	if job.File.Machine == nil { // or they stand with the machine
		out.Things = thingsOf(job)
	}
	for i, step := range job.Steps {
		made := Step{Number: step.Number, Section: step.Section, Verb: step.Verb.Key, Objects: []Object{}, Wait: set(step.Wait), Hazards: []Hazard{}, After: []Standing{},
			Table: Table{step.Header.Location(), keysOf("step", step)}}
		if i < len(work.Actions) {
			made.Action = work.Actions[i]
		}
		for _, object := range step.Objects {
			made.Objects = append(made.Objects, objectOf(step, object))
		}
		for _, one := range work.Hazards {
			if one.Step == step {
				made.Hazards = append(made.Hazards, Hazard{one.Hazard.Key, one.Level.String(), one.Why})
			}
		}
		for _, track := range work.Walk.Tracks {
			if i < len(track.Levels) && track.Levels[i] != state.AsBefore {
				made.After = append(made.After, Standing{track.Kind, track.Name, track.Words, track.Levels[i].String()})
			}
		}
		out.Steps = append(out.Steps, made)
	}
	return out
}

// objectOf is an object with its own values, or those of the step where it says something else.
func objectOf(step *model.Step, object model.Object) Object {
	out := Object{Kind: object.Kind, Name: object.Text.Name(), Words: object.Words()}
	key := step.Verb.Key
	fluid := func(own model.Text) string {
		if step.Fluid.Set() {
			return step.Fluid.Name()
		}
		return own.Name()
	}
	amount := func(own model.Amount) *Amount {
		if step.Amount.Set() {
			return amountOf(step.Amount)
		}
		return set(own)
	}
	switch {
	case object.Kind == "words":
		out.Name = ""
	case object.Part != nil && object.Part.Cover:
		out.Kind = "cover"
	case object.Part != nil:
		out.Kind = "part"
	}
	switch {
	case object.Part != nil && key == "tighten":
		out.Torque = set(needs.TorqueOf(step, object.Part))
	case object.Cavity != nil && (key == "fill" || key == "drain"):
		out.Amount, out.Fluid = amount(object.Cavity.Capacity), fluid(object.Cavity.Fluid)
	case object.Point != nil && (key == "grease" || key == "lubricate"):
		out.Amount, out.Fluid = amount(object.Point.Amount), fluid(object.Point.Fluid)
	case object.Limit != nil:
		out.Limit = set(step.HeldAgainst())
	}
	return out
}

func needsOf(needed *needs.Needs) Needs {
	out := Needs{Fasteners: []Fastener{}, Tools: uses(needed.Tools), Supplies: uses(needed.Supplies), Spares: uses(needed.Spares), Waste: []Waste{}}
	for _, grip := range needed.Grips {
		made := Fastener{Step: grip.Step.Number, Part: grip.Part.Name, Words: grip.Part.Words(), Head: grip.Head, Point: grip.Point, Access: grip.Access,
			Reach: grip.ReachMM, Ways: [][]string{}}
		if !math.IsNaN(grip.Low+grip.High) && !math.IsInf(grip.Low+grip.High, 0) { // of a wrench with no lever it is no number
			made.Low, made.High = grip.Low, grip.High
		}
		for _, width := range grip.Widths {
			made.Widths = append(made.Widths, width.Label)
		}
		for _, way := range grip.Listed {
			made.Ways = append(made.Ways, slices.Clone([]string(way)))
		}
		out.Fasteners = append(out.Fasteners, made)
	}
	for _, caught := range needed.Catch {
		one := Waste{Step: caught.Step.Number, Cavity: caught.Cavity.Name, Words: caught.Cavity.Words(), Amount: set(caught.Amount)}
		if caught.Tool != nil {
			one.Into = caught.Tool.Name
		}
		one.Into = cmp.Or(one.Into, caught.Step.Into.Name())
		out.Waste = append(out.Waste, one)
	}
	return out
}

func uses(list []needs.Use) []Use {
	out := []Use{}
	for _, use := range list {
		out = append(out, Use{use.Step.Number, use.Name, use.Count, set(use.Amount), use.Why})
	}
	return out
}
