package sequence

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Conflict is why there is no order: these tasks cannot all be done.
type Conflict struct {
	Tasks  []int
	Reason string
}

func (c *Conflict) Error() string {
	names := make([]string, len(c.Tasks))
	for i, task := range c.Tasks {
		names[i] = strconv.Itoa(task)
	}
	if len(names) == 1 {
		return "task " + names[0] + ": " + c.Reason
	}
	return "tasks " + strings.Join(names, ", ") + ": " + c.Reason
}

// check refuses values that cannot be, and tasks that wait for each other in a ring.
func check(p Problem) error {
	n := len(p.Times)
	if n > MaxTasks {
		return fmt.Errorf("there are %d tasks, more than %d", n, MaxTasks)
	}
	for task, time := range p.Times {
		if err := seconds("the time of task", task, time); err != nil {
			return err
		}
	}
	there := func(what string, index, task int) error {
		if task < 0 || task >= n {
			return fmt.Errorf("%s %d names task %d, and there are %d", what, index, task, n)
		}
		return nil
	}
	after := make([][]int, n)
	for index, pair := range p.Before {
		for _, task := range pair {
			if err := there("pair", index, task); err != nil {
				return err
			}
		}
		after[pair[0]] = append(after[pair[0]], pair[1])
	}
	for index, lag := range p.Lags {
		for _, task := range append([]int{lag.From, lag.To}, lag.Bars...) {
			if err := there("lag", index, task); err != nil {
				return err
			}
		}
		if err := seconds("the wait of lag", index, lag.Least); err != nil {
			return err
		}
		if err := seconds("the most of lag", index, lag.Most); err != nil {
			return err
		}
		if lag.Most > 0 && lag.Most < lag.Least {
			return fmt.Errorf("lag %d is to take %d s at the least and %d s at the most", index, lag.Least, lag.Most)
		}
		after[lag.From] = append(after[lag.From], lag.To)
	}
	if ring := ring(after); ring != nil {
		return &Conflict{Tasks: ring, Reason: "each must be done before the next, and the last before the first"}
	}
	return nil
}

// seconds refuses a time that is below 0 or above MaxSeconds.
func seconds(what string, index int, value int64) error {
	if value < 0 || value > MaxSeconds {
		return fmt.Errorf("%s %d is %d s: it must be 0 to %d", what, index, value, MaxSeconds)
	}
	return nil
}

// ring is the first ring of tasks found, each of which comes before the next; nil for none.
func ring(after [][]int) []int {
	const entered, left = 1, 2
	mark := make([]int8, len(after))
	var path []int
	var visit func(task int) []int
	visit = func(task int) []int {
		mark[task] = entered
		path = append(path, task)
		for _, next := range after[task] {
			if mark[next] == entered {
				return slices.Clone(path[slices.Index(path, next):])
			}
			if mark[next] == 0 {
				if found := visit(next); found != nil {
					return found
				}
			}
		}
		mark[task] = left
		path = path[:len(path)-1]
		return nil
	}
	for task := range after {
		if mark[task] == 0 {
			if found := visit(task); found != nil {
				return found
			}
		}
	}
	return nil
}

// holdsBack says whether a task may not begin while a lag is open.
func holdsBack(lag Lag, task int) bool {
	return lag.To == task || lag.From != task && slices.Contains(lag.Bars, task)
}
