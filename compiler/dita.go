package compiler

import "benchleaf/compiler/internal/emit/dita"

// Dita writes a machinery task of DITA for each job that no error stands against, in order, and
// one for each version of its machine.
func (r *Result) Dita(look Look) ([]Output, error) {
	composed, err := r.composeEach(look)
	if err != nil {
		return nil, err
	}
	outputs := make([]Output, len(composed))
	inParallel(len(composed), func(i int) {
		name := composed[i].jobs[0].named()
		outputs[i] = Output{Name: name + ".dita", Bytes: dita.Draw(composed[i].content, name), Jobs: composed[i].jobs}
	})
	return outputs, nil
}
