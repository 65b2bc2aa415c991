package join

import (
	"math/big"

	"benchleaf/compiler/internal/model"
)

// What a step takes where its author gives it no time: shares of the hands-on time of its
// procedure by these figures, in seconds; common practice, no source.
var verbSeconds = map[string]int64{
	"isolate": 60, "relieve": 60, "prove": 30, "restore": 60, "raise": 150, "support": 120, "lower": 120, "turn-over": 180,
	"stop": 20, "start": 20, "run": 60, "remove": 90, "refit": 90, "replace": 150, "loosen": 40, "tighten": 60,
	"disconnect": 60, "connect": 60, "open": 40, "close": 40, "drain": 60, "fill": 150, "bleed": 180, "grease": 90,
	"lubricate": 90, "clean": 90, "inspect": 60, "check": 45, "measure": 60, "adjust": 180, "align": 180, "tension": 150,
	"slacken": 45, "sharpen": 300, "mark": 30, "record": 20, "dispose": 90, "follow": 600, "": 60,
}

// What is lost between two steps; common practice, no source.
const (
	toolSeconds  = 15 // another tool is taken in the hand
	fluidSeconds = 60 // can, funnel or gun is wiped before another fluid
	placeSeconds = 30 // another procedure is gone on with: its place at the machine and on the card is found
)

// Lost are the seconds that are lost between two steps by another tool, another fluid, and
// another procedure.
func Lost() [3]int64 { return [3]int64{toolSeconds, fluidSeconds, placeSeconds} }

// seconds is an amount of time, 0 where there is none.
func seconds(amount model.Amount) int64 {
	least, ok := amount.Min()
	if !amount.OK || !ok {
		return 0
	}
	return new(big.Int).Quo(least.Num(), least.Denom()).Int64()
}

// weight is what a step takes by its verb: half as much more for each fastener but the first.
func weight(step *model.Step) int64 {
	base := verbSeconds[step.Verb.Key]
	count := 1
	for _, object := range step.Objects {
		if object.Part != nil {
			count = max(count, step.Count.Or(object.Part.Count.Or(1)))
		}
		if object.Point != nil {
			count = max(count, object.Point.Count.Or(1))
		}
	}
	return base + base*int64(min(count, 40)-1)/4
}

// times are what the steps of a job take: what their authors say, a run as long as it has to
// be, and the rest of the hands-on time shared out by what verbs take, to five seconds.
func times(job *model.Job) map[*model.Step]int64 {
	out := map[*model.Step]int64{}
	hands := seconds(job.Procedure.HandsOn) / int64(job.Procedure.People.Or(1))
	var shared int64
	for _, step := range job.Steps {
		switch {
		case step.Verb.Key == "wait":
			out[step] = 0
		case step.Time.Set() && seconds(step.Time) > 0:
			out[step] = seconds(step.Time)
			hands -= out[step]
		case seconds(step.Least) > 0:
			out[step] = seconds(step.Least)
		default:
			shared += weight(step)
		}
	}
	for _, step := range job.Steps {
		if _, known := out[step]; known {
			continue
		}
		share := weight(step)
		if hands > 0 && shared > 0 {
			share = share * hands / shared
		}
		out[step] = max(5, (share+2)/5*5)
	}
	return out
}
