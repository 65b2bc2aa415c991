package sequence

// swapsPerTrial is how many swaps of two stretches count as one order that is done anew.
const swapsPerTrial = 1000

// improve looks for shorter orders near the best, or near some order while there is none.
func (s *search) improve() {
	net := s.net
	order := s.order
	if order == nil {
		order = net.ordered
	}
	if !net.exact {
		x := newShift(net, s.random)
		x.set(order)
		x.run(s.budget.Trials, s.bound, func(order []int, length int64) {
			if length < missing {
				s.take(length, order)
			}
		})
		return
	}
	x := newExchange(net, s.random)
	x.set(order)
	found := make([]int, net.n)
	x.run(s.budget.Trials*swapsPerTrial, s.bound-net.work, func(path []int16, length int64) {
		if length >= x.dear {
			return
		}
		for i, task := range path {
			found[i] = int(task)
		}
		s.take(length+net.work, found)
	})
}
