package compiler

import (
	"bytes"
	"encoding/gob"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// Keep is where what was drawn is kept from one run to the next. Get gives what the same program
// put under a key, or nothing. Several hands use it at once.
type Keep interface {
	Get(key [32]byte) ([]byte, bool)
	Put(key [32]byte, data []byte)
}

// kept is a card as it was drawn, with what could not be shown on it.
type kept struct {
	Names    []string // of the card, and of the pictures of its sides
	Bytes    [][]byte
	Troubles []Trouble
}

// drawn draws a card, or takes it as it was drawn when it said the same.
func (look Look) drawn(card composedCard, keep Keep) ([]Output, []Trouble, error) {
	if keep == nil {
		document, problems := pages.LayCard(card.content, card.look)
		return look.draw(card.name(), document, problems, card.jobs)
	}
	key := plan.Digest("card", card.name(), card.content, card.look, look.Pictures)
	if data, there := keep.Get(key); there {
		var was kept
		if err := gob.NewDecoder(bytes.NewReader(data)).Decode(&was); err == nil && len(was.Names) == len(was.Bytes) {
			outputs := make([]Output, len(was.Names))
			for i, name := range was.Names {
				outputs[i] = Output{Name: name, Bytes: was.Bytes[i], Jobs: card.jobs}
			}
			return outputs, was.Troubles, nil
		}
	}
	outputs, troubles, err := look.drawn(card, nil)
	if err != nil {
		return nil, nil, err
	}
	is := kept{Troubles: troubles}
	for _, output := range outputs {
		is.Names, is.Bytes = append(is.Names, output.Name), append(is.Bytes, output.Bytes)
	}
	var data bytes.Buffer
	if err := gob.NewEncoder(&data).Encode(is); err == nil {
		keep.Put(key, data.Bytes())
	}
	return outputs, troubles, nil
}
