package sequence

import "fmt"

// Replay does the tasks in an order, each as soon as it may begin, and says when that is
// and when all have ended. It is an error if the order leaves a task out, or does one
// before it may be done. Bound and Labels of the plan stay 0.
func Replay(p Problem, order []int) (Plan, error) {
	if err := check(p); err != nil {
		return Plan{}, err
	}
	n := len(p.Times)
	if len(order) != n {
		return Plan{}, fmt.Errorf("the order has %d tasks of %d", len(order), n)
	}
	plan := Plan{Order: append([]int{}, order...), Starts: make([]int64, n)}
	ended := make([]int64, n) // when a task ended; -1 while it has not
	for i := range ended {
		ended[i] = -1
	}
	now, state := int64(0), p.Start
	for place, task := range order {
		if task < 0 || task >= n {
			return Plan{}, fmt.Errorf("place %d of the order has task %d, and there are %d", place, task, n)
		}
		if ended[task] >= 0 {
			return Plan{}, fmt.Errorf("the order has task %d twice", task)
		}
		for _, pair := range p.Before {
			if pair[1] == task && ended[pair[0]] < 0 {
				return Plan{}, &Conflict{Tasks: []int{pair[0], task}, Reason: "the first must end before the second begins"}
			}
		}
		for _, lag := range p.Lags {
			if lag.To == task && ended[lag.From] < 0 {
				return Plan{}, &Conflict{Tasks: []int{lag.From, task}, Reason: "the second waits for the first"}
			}
		}
		to, change := state, int64(0)
		if p.Move != nil {
			var ok bool
			if to, change, ok = p.Move(state, task); !ok {
				return Plan{}, &Conflict{Tasks: []int{task}, Reason: fmt.Sprintf("it cannot be done out of state %d", state)}
			}
			if err := seconds("a change before task", task, change); err != nil {
				return Plan{}, err
			}
		}
		if p.Holds != nil && (change > 0 || to != state) {
			for index, lag := range p.Lags {
				if ended[lag.From] >= 0 && now < ended[lag.From]+lag.Least && !p.Holds(index, state, to) {
					now = ended[lag.From] + lag.Least
				}
			}
		}
		now += change
		for _, lag := range p.Lags {
			if ended[lag.From] >= 0 && holdsBack(lag, task) {
				now = max(now, ended[lag.From]+lag.Least)
			}
		}
		for _, lag := range p.Lags {
			if lag.To == task && lag.Most > 0 && now > ended[lag.From]+lag.Most {
				return Plan{}, &Conflict{Tasks: []int{lag.From, task}, Reason: "the second would begin too long after the first"}
			}
		}
		plan.Starts[task] = now
		now += p.Times[task]
		ended[task], state = now, to
	}
	if p.End != nil {
		closing := p.End(state)
		if err := seconds("closing up after task", len(order)-1, closing); err != nil {
			return Plan{}, err
		}
		now += closing
	}
	plan.Length = now
	return plan, nil
}
