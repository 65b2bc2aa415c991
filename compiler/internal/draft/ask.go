package draft

func (t *taker) questions() {}
