package needs

import (
	"slices"

	"benchleaf/compiler/internal/model"
)

// Locks are how many of each lock and tag are on at once at the most, by their names: one for
// each energy that is cut off with it, and of a job that is shared out one for each person.
func Locks(job *model.Job) map[string]int {
	people := 1
	if job.ForTwo() {
		people = max(1, job.Procedure.People.Or(1))
	}
	most := map[string]int{}
	on := map[*model.Energy][]string{} // with which locks it is cut off
	for _, step := range job.Steps {
		for _, object := range step.Objects {
			if object.Energy == nil {
				continue
			}
			switch step.Verb.Key {
			case "isolate":
				names := slices.Concat(object.Energy.Tools.Names(), step.Tools.Names())
				on[object.Energy] = nil
				for i, name := range names {
					if job.Tool(name).IsLock() && !slices.Contains(names[:i], name) {
						on[object.Energy] = append(on[object.Energy], name)
					}
				}
			case "restore":
				delete(on, object.Energy)
			}
		}
		now := map[string]int{}
		for _, names := range on {
			for _, name := range names {
				now[name] += people
				most[name] = max(most[name], now[name])
			}
		}
	}
	return most
}
