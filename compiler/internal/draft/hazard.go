package draft

func (t *taker) hazards() {}
