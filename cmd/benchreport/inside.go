package main

import "fmt"

// stages measures what a compile of the demonstration shop takes, stage by stage.
func stages(b *bench) (s section, err error) {
	s.tell("The demonstration shop, stage by stage, on one core but for the check; each stage and its floor take turns.",
		b.medians())
	m, err := b.goBench("./compiler", "^Benchmark(Stages|Pick)$", b.some("10x", "3x"), b.rounds())
	if err != nil {
		return s, err
	}
	return s, s.hold(m,
		held{"parse", gauge{"Stages", "µs-parse/procedure"}, "procedure", "BurntSushi/toml decodes the same texts to a map", gauge{"Stages", "µs-decode/procedure"}},
		held{"check, reading and all (lint)", gauge{"Stages", "µs-check/procedure"}, "procedure", "the parse", gauge{"Stages", "µs-parse/procedure"}},
		held{"put into words and lay out", gauge{"Stages", "µs-lay/card"}, "card", "go-pdf/fpdf draws the same marks", gauge{"Stages", "µs-bare/card"}},
		held{"PDF", gauge{"Stages", "µs-draw/card"}, "card", "go-pdf/fpdf draws the same marks", gauge{"Stages", "µs-bare/card"}},
		held{"phone page", gauge{"Stages", "µs-phone/page"}, "page", "html.EscapeString over its bytes", gauge{"Stages", "µs-escape/page"}},
		held{"pick list of all procedures", gauge{"Pick", "µs-pick/list"}, "list", "go-pdf/fpdf draws the same marks", gauge{"Pick", "µs-bare/list"}})
}

// medians says of how many runs the figures are.
func (b *bench) medians() string {
	if b.quick {
		return "One run."
	}
	return fmt.Sprintf("Medians of %d runs.", b.rounds())
}

// some is one of two settings.
func (b *bench) some(usual, quick string) string {
	if b.quick {
		return quick
	}
	return usual
}

func due(b *bench) (s section, err error) {
	s.tell("What is due at the machines of the demonstration shop, by a service book of 100,000 entries.", b.medians())
	m, err := b.goBench("./compiler", "^Benchmark(Due|CountingLines)$", b.some("10x", "3x"), b.rounds())
	if err != nil {
		return s, err
	}
	return s, s.hold(m, held{"what is due", gauge{"Due", "ns/op"}, "list", "the lines of the book are counted", gauge{"CountingLines", "ns/op"}})
}

func join(b *bench) (s section, err error) {
	s.tell("Three procedures of a machine of the demonstration shop made one job, and checked with the shop.", b.medians())
	m, err := b.goBench("./compiler", "^BenchmarkJoin$", b.some("10x", "3x"), b.rounds())
	if err != nil {
		return s, err
	}
	return s, s.hold(m, held{"join", gauge{"Join", "µs-join/job"}, "job", "the check of the shop", gauge{"Join", "µs-check/job"}})
}

func keystroke(b *bench) (s section, err error) {
	s.tell("Keys typed into a procedure of 300 steps in a shop of 216 files; after each, everything that is wrong is found anew.", b.medians())
	m, err := b.goBench("./compiler", "^Benchmark(Keystroke|DecodingWhatIsTyped)$", b.some("5x", "1x"), b.rounds())
	if err != nil {
		return s, err
	}
	const floor = "BurntSushi/toml decodes the file typed into to a map"
	return s, s.hold(m,
		held{"a key, median", gauge{"Keystroke", "ms-median"}, "key", floor, gauge{"DecodingWhatIsTyped", "ns/op"}},
		held{"a key, 99 of 100 take at most", gauge{"Keystroke", "ms-99th"}, "key", floor, gauge{"DecodingWhatIsTyped", "ns/op"}})
}

func desk(b *bench) (s section, err error) {
	s.tell("Keys typed into a procedure of the demonstration shop at the desk: from the request over the loopback to the last byte of the answer, with the findings and the card drawn anew.",
		b.medians())
	m, err := b.goBench("./cmd/internal/desk", "^BenchmarkRedraw$", b.some("10x", "2x"), b.rounds())
	if err != nil {
		return s, err
	}
	const floor = "a bare HTTP server gives the same answers"
	return s, s.hold(m,
		held{"a redraw, median", gauge{"Redraw", "ms-median"}, "key", floor, gauge{"Redraw", "ms-floor"}},
		held{"a redraw, 99 of 100 take at most", gauge{"Redraw", "ms-99th"}, "key", floor, gauge{"Redraw", "ms-floor"}})
}
