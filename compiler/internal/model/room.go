package model

import "benchleaf/compiler/internal/memo"

// room is where steps stand, so that those of the next reading can stand where those of the one
// before did: a step is large, and a key pressed in a procedure of 300 reads them all again.
type room struct {
	steps []*Step
	used  int
	memo  *memo.Memo // of the job whose steps stand there; nil where it is used once

	objects []Object // of the steps of a job
	refs    []Ref    // of a file
	amounts []Amount
}

// things are so many empty objects.
func (r *room) things(n int) []Object {
	if n > cap(r.objects) {
		r.objects = make([]Object, n+n/8)
	}
	clear(r.objects[:cap(r.objects)])
	return r.objects[:n]
}

// next is an empty step.
func (r *room) next() *Step {
	step := r.take()
	*step = Step{}
	return step
}

// reserve makes room for so many steps more, where there is too little.
func (r *room) reserve(n int) {
	block := make([]Step, max(0, r.used+n-len(r.steps)))
	for i := range block {
		r.steps = append(r.steps, &block[i])
	}
}

// copy is a step like another.
func (r *room) copy(step *Step) *Step {
	out := r.take()
	*out = *step
	return out
}

// take is the next step as it was left.
func (r *room) take() *Step {
	if r.used == len(r.steps) {
		r.steps = append(r.steps, new(Step))
	}
	r.used++
	return r.steps[r.used-1]
}

// JobsAnew makes the jobs of a file as Jobs does, in the room of those that it made before: they
// are no longer to be used.
func (s *Set) JobsAnew(file *File) []*Job {
	if !file.whole() {
		return nil
	}
	n := 0
	return s.jobs(file, func() *room {
		if n == len(file.rooms) {
			file.rooms = append(file.rooms, &room{memo: new(memo.Memo)})
		}
		n++
		file.rooms[n-1].used = 0
		file.rooms[n-1].memo.Next()
		return file.rooms[n-1]
	})
}
