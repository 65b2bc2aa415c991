package due

import "slices"

// Following tells when a job comes due after an answer of Next, up to a day, each time on
// the assumption that it was done on the day it was expected on: on today, where that is
// past. The spans are those of one interval, not of all of them together. What a reading asks
// for at once is over when it was done; an interval that a reading asks for goes on, since
// nobody knows what will be read.
func Following(job Job, use Use, answer Answer, today, until Day) []Answer {
	job.Done, use.points = slices.Clone(job.Done), slices.Clone(use.points)
	job.Sooner = slices.DeleteFunc(slices.Clone(job.Sooner), func(one Sooner) bool { return !one.Every.any() })
	var out []Answer
	for done := max(answer.Day, today); answer.Day > 0 && done < until; done = answer.Day {
		made := Done{Day: done}
		if total, ok := use.On(done); ok {
			made.Total, made.Read = total.Expected, true
			if n := len(use.points); done > use.points[n-1].Day {
				use.points = append(use.points, Point{done, total.Expected, -1})
			}
		}
		job.Done = append(job.Done, made)
		answer = Next(job, use, done)
		if answer.Day <= done || answer.Day > until {
			break
		}
		out = append(out, answer)
	}
	return out
}
