package sequence

// assignShare is how small a share of labels may be that the assignment leaves out.
const assignShare = 10

// mix spreads the bits of a state over a hash (the finalizer of splitmix64).
func mix(x uint64) uint64 {
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// beam goes through the layers once and keeps the best so many labels in each. What it
// drops bounds the length of all orders it did not look at.
func (s *search) beam(width int) {
	net := s.net
	dropped := never
	s.now.clear()
	s.next.clear()
	s.trace = s.trace[:0]
	start := net.states.index[net.Start]
	fines := int64(0)
	if s.walks != nil {
		fines = s.walks.fines
	}
	s.now.add(label{fines: fines, state: start, hash: mix(uint64(start))}, newSet(net.n), nil, false)
	if s.assigns {
		s.now.prices.resize(net.n+1, 1)
	}
	if net.n == 0 {
		s.take(net.closing(start), []int{})
		s.bound, s.complete = s.best, true
		return
	}
	for depth := 0; depth < net.n && len(s.now.labels) > 0; depth++ {
		// Near the end of the budget the beam gets narrow, so that it reaches the end.
		limit := min(width, max(1, s.budget.Labels-s.labels-(net.n-depth)*firstWidth))
		for index := range s.now.labels {
			s.expand(index, depth)
			if len(s.next.labels) >= 3*limit {
				dropped = min(dropped, s.narrow(s.next, limit))
			}
		}
		dropped = min(dropped, s.narrow(s.next, limit))
		s.pinched = s.pinched || limit < width && dropped < never
		s.past.clear()
		s.past, s.now, s.next = s.now, s.next, s.past
		if s.assigns {
			s.now.prices.resize(net.n+1, len(s.now.labels))
		}
		trail := make([]origin, len(s.now.labels))
		for i := range trail {
			trail[i] = origin{s.now.labels[i].from, s.now.labels[i].task}
		}
		s.trace = append(s.trace, trail)
	}
	if len(s.trace) == net.n {
		s.finish()
	}
	// The assignment takes more time than the rest, and stays if it leaves out much.
	s.assigns = s.assigns && (s.walks == nil || s.cut*assignShare >= s.tried)
	s.tried, s.cut = 0, 0
	s.complete = dropped == never
	if s.complete {
		s.bound = s.best
	}
	s.bound = max(s.bound, min(s.best, dropped))
}

func (s *search) narrow(l *layer, width int) int64 {
	dropped, places := l.narrow(width, s.places)
	s.places = places
	return dropped
}

// finish takes the shortest order of the last layer.
func (s *search) finish() {
	best := -1
	for i := range s.now.labels {
		if lab := &s.now.labels[i]; !lab.worse && (best < 0 || lab.rank < s.now.labels[best].rank) {
			best = i
		}
	}
	if best < 0 {
		return
	}
	length := s.now.labels[best].rank
	order := make([]int, s.net.n)
	at := int32(best)
	for depth := s.net.n - 1; depth >= 0; depth-- {
		origin := s.trace[depth][at]
		order[depth], at = int(origin.task), origin.from
	}
	s.take(length, order)
}

// expand puts a label's followers into the next layer. The assignments of the layer before
// are in s.past; the label's own is mended from that of the label it came from.
func (s *search) expand(index, depth int) {
	net, from := s.net, &s.now.labels[index]
	s.labels++
	done := s.now.set(index)
	s.left = s.left[:0]
	work := int64(0)
	for task := range net.n {
		if !done.has(task) {
			s.left = append(s.left, int16(task))
			work += net.Times[task]
		}
	}
	if s.deepest == nil || len(s.left) < len(s.deepest) {
		s.deepest = s.deepest[:0]
		for _, task := range s.left {
			s.deepest = append(s.deepest, int(task))
		}
	}
	if s.assigns && !s.assign(index, depth, work) {
		return
	}
	row := net.row(from.state)
	for _, next := range s.left {
		task := int(next)
		if row[task].to == none || !net.before[task].within(done) {
			continue
		}
		s.follow(index, done, task, row[task], work-net.Times[task])
	}
}

// assign bounds what is left by the assignment; false if the label can be left out.
func (s *search) assign(index, depth int, work int64) bool {
	net, relaxed, from := s.net, s.relaxed, &s.now.labels[index]
	relaxed.stand(from.state, s.left, s.now.set(index))
	if depth == 0 {
		relaxed.solve()
	} else {
		s.past.prices.load(relaxed, int(from.from))
		relaxed.mend(int(from.task))
	}
	s.tried++
	if relaxed.value >= int64(forbidden/2) {
		return false
	}
	from.rest = max(from.rest, work+relaxed.value*net.unit)
	from.rank = max(from.rank, from.time+from.rest)
	if depth == 0 {
		s.bound = max(s.bound, min(from.rank, s.best))
	}
	if from.rank >= s.best {
		s.cut++
		return false
	}
	s.now.prices.keep(relaxed, index)
	// What a follower's assignment may be dearer at most.
	spare := int64(forbidden / 2)
	if s.best < never {
		spare = min(spare, (s.best-from.time-work)/net.unit-relaxed.value)
	}
	relaxed.measureBack(spare)
	return true
}

// follow puts what comes of a label when a task is done into the next layer, where work is
// what the tasks left then take.
func (s *search) follow(index int, done set, task int, step step, work int64) {
	net, from := s.net, &s.now.labels[index]
	open := s.now.open(from)
	began := net.begin(from.time, from.state, step, open, task)
	time := began + net.Times[task]
	if net.late(open, task, began, time) {
		return
	}
	lab := label{time: time, rest: work, from: int32(index), state: step.to, task: int16(task)}
	if len(s.left) == 1 {
		lab.rest = net.closing(step.to)
	} else if !s.bounded(&lab, from, work) {
		return
	}
	copy(s.done, done)
	s.done.add(task)
	if net.Rest != nil && len(s.left) > 1 { // the caller knows more of what is left than any matrix tells
		lab.rest = max(lab.rest, work+net.Rest(s.done, net.states.names[step.to]))
	}
	lab.rank = time + lab.rest
	s.waits = s.waits[:0]
	if len(net.waits) > 0 {
		s.waits = net.carry(s.waits, open, task, time)
		if len(s.left) > 1 && lab.rank < s.best {
			lab.rank = max(lab.rank, s.machine.bound(time, s.left, task, s.waits))
		}
	}
	if lab.rank >= s.best {
		return
	}
	lab.hash = from.hash ^ mix(uint64(from.state)) ^ mix(uint64(step.to)) ^ s.hashes[task]
	s.next.add(lab, s.done, s.waits, net.limited(s.done))
}

// bounded bounds what is left after a label, waits left out; false if it can be left out.
func (s *search) bounded(lab, from *label, work int64) bool {
	net, task := s.net, int(lab.task)
	if w := s.walks; w != nil {
		lab.seen, lab.fines = from.seen.with(w.watched[task]), from.fines-w.penalty[task]
		ahead := w.rest(net.n-len(s.left), task, lab.seen)
		if ahead >= unreached {
			return false
		}
		lab.rest = max(lab.rest, work+(ahead+lab.fines+fine-1)/fine*net.unit)
		if lab.time+lab.rest >= s.best {
			return false
		}
	}
	if s.assigns {
		s.tried++
		if s.relaxed.here[task] >= forbidden {
			return false
		}
		rest := work + (s.relaxed.value+s.relaxed.dearer(task)-int64(s.relaxed.here[task]))*net.unit
		lab.rest = max(lab.rest, rest)
		if lab.time+lab.rest >= s.best {
			s.cut++
			return false
		}
	}
	return true
}
