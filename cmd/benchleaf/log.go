package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"benchleaf/compiler"
)

// logged is what is to be written into the service book.
type logged struct {
	entry    compiler.Entry
	date     string
	readings []string // "Chain slack=24 mm"
	used     []string // "gear-oil=1.1 L"
	received []string
	void     int // number of an entry to take out
	shop     string
	form     bool
	asItIs   bool
	says     func(flag string) bool // it stands on the line
}

func logCommand(by *caller) *cobra.Command {
	var said logged
	cmd := &cobra.Command{
		Use:   "log [FILE…]",
		Short: "Write into the service book what was done or read",
		Long: `Log adds entries to the service book of the shop: those of the files, as the phone page
gives them or as a form was filled in, or one out of what is said on the line. Each is
held against the card it was worked by: its steps, its readings and their limits, the
meter. What is used up comes off the shelves: what the entry says, or else what its card
takes. Where something speaks against it nothing is written, unless --as-it-is says so.

The book is only ever added to. A wrong entry is put right by a new one, which stands for
it from then on: --corrects with the number of the wrong one takes over what that one says
and changes what is said on the line; an entry of a file with corrects is taken as it is.
--void takes an entry out altogether, and --corrects with the number of the voiding entry
brings it back. Several people may write at the same time.

What a file does not say of unit, date, who, meter, new-meter and remarks is taken from the
line.`,
		Example: `  benchleaf log entry.toml                                        what a phone page gave
  benchleaf log --unit deck --meter "1234 h"                      a meter that was read
  benchleaf log --unit deck --procedure log-deck-bearing-grease --meter "1240 h" --who "R. A."
  benchleaf log --unit deck --procedure log-deck-chain-tension --form > form.toml
  benchleaf log --received gear-oil="20 L" --received seal=10     what came into the store
  benchleaf log --corrects 17 --meter "1243 h"                    all else stays as entry 17 says
  benchleaf log --void 17 --remarks "Entered twice"               entry 17 no longer counts
  benchleaf log --corrects 18                                     entry 18 was wrong to void it`,
		RunE: func(_ *cobra.Command, files []string) error { return by.log(files, said) },
	}
	flags := cmd.Flags()
	said.says = flags.Changed
	flags.StringVar(&said.shop, "shop", ".", "folder of the shop")
	flags.StringVar(&said.entry.Unit, "unit", "", "short name of the machine")
	flags.StringVar(&said.entry.Procedure, "procedure", "", "short name of the procedure that was worked by")
	flags.StringVar(&said.date, "date", "", "day it was done, such as 2026-05-01; today when left out")
	flags.StringVar(&said.entry.Who, "who", "", "who did it")
	flags.StringVar(&said.entry.Meter, "meter", "", "what the meter stood at")
	flags.StringVar(&said.entry.NewMeter, "new-meter", "", "what another meter stood at that took its place")
	flags.StringVar(&said.entry.Remarks, "remarks", "", "what else is to be known")
	flags.IntVar(&said.entry.Corrects, "corrects", 0, "number of an entry that this one stands for; what is not said stays as that one says")
	flags.IntVar(&said.void, "void", 0, "number of an entry to take out, with the reason in --remarks")
	flags.StringArrayVar(&said.readings, "reading", nil, `what was read, as name=value: "Chain slack=24 mm"; once for each`)
	flags.StringArrayVar(&said.used, "used", nil, `what was used otherwise than the card says, as name=amount: "gear-oil=1.3 L"; once for each`)
	flags.StringArrayVar(&said.received, "received", nil, `what came into the store, as name=amount: "gear-oil=20 L"; once for each`)
	flags.BoolVar(&said.form, "form", false, "print an entry to fill in, and write nothing")
	flags.BoolVar(&said.asItIs, "as-it-is", false, "write it whatever speaks against it")
	return cmd
}

func (by *caller) log(files []string, said logged) error {
	shops, err := load(by.folder, []string{said.shop})
	if err != nil {
		return err
	}
	if len(shops) != 1 {
		return fmt.Errorf("there are %d shops in %s; say which with --shop", len(shops), said.shop)
	}
	s := shops[0]
	result := s.check()
	today := today()
	if said.date == "" {
		said.date = today
	}
	if err := isDay(said.date); err != nil {
		return err
	}
	if said.form {
		form, err := result.Form(said.entry.Procedure, said.entry.Unit, said.date)
		if err != nil {
			return err
		}
		day := "\ndate = " + said.date + "\n"
		_, err = fmt.Fprint(by.out, strings.TrimLeft(strings.Replace(string(form.Text()), day, day+"who = \"\"\nmeter = \"\"\n", 1), "\n"))
		return err
	}
	var taken compiler.Accepted
	if err := s.reading(func(book compiler.BookText) error {
		entries, missing, err := by.toLog(files, said, result, book)
		if err != nil {
			return err
		}
		taken, err = result.Accept(book, entries, today)
		taken.Problems = append(missing, taken.Problems...)
		return err
	}); err != nil {
		return err
	}
	ready, problems := taken.Entries, taken.Problems
	for _, text := range slices.Concat(taken.Notes, problems) {
		fmt.Fprintln(by.err, text)
	}
	if len(problems) > 0 && len(result.Unchecked) > 0 {
		fmt.Fprintf(by.err, "%s cannot be read whole, and what stands there is not known here; see: benchleaf lint\n", many(len(result.Unchecked), "file", "files"))
	}
	if len(problems) > 0 && !said.asItIs {
		fmt.Fprintln(by.err, "nothing was written; put it right, or write it all the same with --as-it-is")
		return errFindings
	}
	done, err := appendEntries(s.folder, s.name, ready)
	if err != nil {
		return err
	}
	if done.torn > 0 {
		fmt.Fprintf(by.err, "%d bytes at the end of the book were torn in writing, and are now in %s\n", done.torn, filepath.Join(s.name, bookTorn))
	}
	for i, number := range done.numbers {
		fmt.Fprintf(by.out, "entry %d  %s\n", number, toldEntry(ready[i]))
		if old, stood := taken.Stood[i]; stood {
			fmt.Fprintf(by.out, "  %s\n", toldStood(ready[i], old))
		}
		if open := ready[i].Open; len(open) > 0 && ready[i].Procedure != "" {
			fmt.Fprintf(by.out, "  not finished: %s open, and it does not count as done\n", compiler.Steps(open, "is", "are"))
		}
		if left := leftOut(ready[i]); len(left) > 0 {
			fmt.Fprintf(by.out, "  left out: %s\n", compiler.Steps(left, "", ""))
		}
		if used := toldMoves(ready[i].Used); used != "" {
			fmt.Fprintf(by.out, "  used: %s\n", used)
		}
		if received := toldMoves(ready[i].Received); received != "" {
			fmt.Fprintf(by.out, "  received: %s\n", received)
		}
		for _, reading := range ready[i].Readings {
			if reading.Outside {
				fmt.Fprintf(by.out, "  outside its limit: %s %s, limit %s\n", reading.What, reading.Value, reading.Limit)
			}
		}
	}
	return nil
}

// toldEntry says an entry shortly.
func toldEntry(e compiler.Entry) string {
	words := []string{string(e.Date)}
	for _, word := range []string{e.Unit, e.Procedure, e.Meter, e.Remarks} {
		if word != "" {
			words = append(words, word)
		}
	}
	return strings.Join(words, "  ")
}

// toldStood says which entry of the book another one stands for or takes out.
func toldStood(e, old compiler.Entry) string {
	does := "stands for"
	if compiler.Voids(e) {
		does = "takes out"
	}
	of := ""
	if old.Unit != "" {
		of = " of " + old.Unit
	}
	number := old.Number
	old.Unit = ""
	return fmt.Sprintf("%s entry %d%s: %s", does, number, of, toldEntry(old))
}

// leftOut are the steps of an entry that were left out.
func leftOut(e compiler.Entry) []int {
	var out []int
	for _, left := range e.LeftOut {
		out = append(out, left.Step)
	}
	return out
}

// isDay is an error where a text is no day that can be.
func isDay(text string) error {
	if _, err := time.Parse(time.DateOnly, text); err == nil {
		return nil
	}
	if likeDay.MatchString(text) {
		return fmt.Errorf("there is no such day as %s", text)
	}
	return fmt.Errorf("%q is no day such as 2026-05-01", text)
}

var likeDay = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}-[0-9]{2}$`)

// toldMoves says what went out of the store or came into it.
func toldMoves(moves []compiler.Moved) string {
	var out []string
	for _, moved := range moves {
		out = append(out, moved.What+" "+moved.Amount)
	}
	return strings.Join(out, ", ")
}

// asksFor names the readings of a form.
func asksFor(form compiler.Entry) string {
	var names []string
	for _, reading := range form.Readings {
		names = append(names, fmt.Sprintf("%q", reading.What))
	}
	if len(names) == 0 {
		return "none"
	}
	return strings.Join(names, ", ")
}

// toLog are the entries of files, or the one that was said. missing says what the card of that
// one asks for and the line does not give.
func (by *caller) toLog(files []string, said logged, result *compiler.Result, book compiler.BookText) (entries []compiler.Entry, missing []string, err error) {
	switch {
	case said.says("void"):
		return said.voiding(files)
	case said.says("corrects") && said.entry.Corrects < 1:
		return nil, nil, fmt.Errorf("--corrects takes the number of an entry, from 1")
	case len(files) > 0:
		entries, err = by.ofFiles(files, said)
		return entries, nil, err
	case said.says("corrects"):
		one, err := said.correction(result, book)
		return []compiler.Entry{one}, nil, err
	}
	one, missing, err := said.line(compiler.On(said.entry, said.date), result)
	if err == nil && one.Unit == "" && one.Procedure == "" && one.Remarks == "" && len(one.Received)+len(one.Used) == 0 {
		err = fmt.Errorf("nothing is said to be written; give a file, or --unit with --meter or --procedure")
	}
	return []compiler.Entry{one}, missing, err
}

// voiding is the entry that takes another one out.
func (l logged) voiding(files []string) ([]compiler.Entry, []string, error) {
	for _, flag := range []string{"corrects", "unit", "procedure", "meter", "new-meter", "reading", "used", "received"} {
		if l.says(flag) {
			return nil, nil, fmt.Errorf("--void takes an entry out and says nothing in its place, so --%s does not go with it; to put an entry right, write --corrects", flag)
		}
	}
	switch {
	case len(files) > 0:
		return nil, nil, fmt.Errorf("--void takes an entry out of the book, and no file goes with it")
	case l.void < 1:
		return nil, nil, fmt.Errorf("--void takes the number of an entry, from 1")
	case strings.TrimSpace(l.entry.Remarks) == "":
		return nil, nil, fmt.Errorf("say why entry %d is taken out, with --remarks", l.void)
	}
	return []compiler.Entry{compiler.On(compiler.Entry{Corrects: l.void, Who: l.entry.Who, Remarks: l.entry.Remarks}, l.date)}, nil, nil
}

// line is an entry with what the line says of a job: of a form, all its steps done.
func (l logged) line(one compiler.Entry, result *compiler.Result) (compiler.Entry, []string, error) {
	if one.Procedure == "" && len(l.readings) > 0 {
		return one, nil, fmt.Errorf("--reading is of what a card asks for; say which with --procedure")
	}
	var missing []string
	if one.Procedure != "" {
		form, err := result.Form(one.Procedure, one.Unit, string(one.Date))
		if err != nil {
			return one, nil, err
		}
		one.Unit, one.Done, one.Used = form.Unit, form.Done, form.Used
		if one.Readings, err = l.read(nil, form); err != nil {
			return one, nil, err
		}
		for _, reading := range form.Readings {
			if !slices.ContainsFunc(one.Readings, func(other compiler.Reading) bool { return other.Step == reading.Step && other.What == reading.What }) {
				missing = append(missing, fmt.Sprintf("the card of %s asks for a reading %q; add --reading \"%s=…\", or fill in what --form prints", one.Procedure, reading.What, reading.What))
			}
		}
	}
	one, err := l.moved(one)
	return one, missing, err
}

// read puts the readings of the line into those of an entry: in place of what is there by that
// name, or else as the form of its card asks for them.
func (l logged) read(into []compiler.Reading, form compiler.Entry) ([]compiler.Reading, error) {
	into = slices.Clone(into)
	given := make([]bool, len(into))
	for _, text := range l.readings {
		name, value, is := strings.Cut(text, "=")
		name, value = strings.TrimSpace(name), strings.TrimSpace(value)
		if !is || value == "" {
			return nil, fmt.Errorf("%q says no value; write name=value, such as \"Chain slack=24 mm\"", text)
		}
		at := -1
		for i, reading := range into {
			if reading.What == name && !given[i] && at < 0 {
				at = i
			}
		}
		if at < 0 {
			asked := slices.IndexFunc(form.Readings, func(reading compiler.Reading) bool {
				return reading.What == name && !slices.ContainsFunc(into, func(other compiler.Reading) bool { return other.Step == reading.Step && other.What == name })
			})
			switch {
			case asked < 0 && slices.ContainsFunc(form.Readings, func(reading compiler.Reading) bool { return reading.What == name }):
				return nil, fmt.Errorf("the reading %q is given more often than the card of %s asks for it", name, form.Procedure)
			case asked < 0:
				return nil, fmt.Errorf("the card of %s asks for no reading %q; it asks for: %s", form.Procedure, name, asksFor(form))
			}
			at = len(into)
			into, given = append(into, form.Readings[asked]), append(given, true)
		}
		into[at].Value, given[at] = value, true
	}
	return into, nil
}

// moved puts what the line says of the store into an entry.
func (l logged) moved(one compiler.Entry) (compiler.Entry, error) {
	for _, list := range []struct {
		said []string
		into *[]compiler.Moved
	}{{l.used, &one.Used}, {l.received, &one.Received}} {
		*list.into = slices.Clone(*list.into)
		for _, text := range list.said {
			name, amount, given := strings.Cut(text, "=")
			if !given {
				return one, fmt.Errorf("%q says no amount; write name=amount, such as gear-oil=\"1.3 L\"", text)
			}
			moved := compiler.Moved{What: strings.TrimSpace(name), Amount: strings.TrimSpace(amount)}
			if at := slices.IndexFunc(*list.into, func(other compiler.Moved) bool { return other.What == moved.What }); at >= 0 {
				(*list.into)[at] = moved
			} else {
				*list.into = append(*list.into, moved)
			}
		}
	}
	return one, nil
}

// correction is the entry that stands for another one: it says what that one says, but for
// what stands on the line.
func (l logged) correction(result *compiler.Result, book compiler.BookText) (compiler.Entry, error) {
	before, old, err := result.Correction(book, l.entry.Corrects)
	if err != nil {
		return before, err
	}
	one := before
	for _, text := range []struct {
		flag, said string
		into       *string
	}{{"unit", l.entry.Unit, &one.Unit}, {"procedure", l.entry.Procedure, &one.Procedure}, {"who", l.entry.Who, &one.Who}, {"meter", l.entry.Meter, &one.Meter},
		{"new-meter", l.entry.NewMeter, &one.NewMeter}, {"remarks", l.entry.Remarks, &one.Remarks}} {
		if l.says(text.flag) {
			*text.into = text.said
		}
	}
	if l.says("date") {
		one = compiler.On(one, l.date)
	}
	if one.Procedure != before.Procedure && one.Procedure != "" { // other work, with steps of its own
		one.Revision, one.Machine, one.Variant, one.Open, one.LeftOut, one.Readings = "", "", "", nil, nil, nil
		one, missing, err := l.line(one, result)
		if err == nil && len(missing) > 0 {
			err = errors.New(strings.Join(missing, "\n"))
		}
		return one, err
	}
	switch {
	case one.Procedure == "" && (len(l.readings) > 0 || before.Procedure != ""):
		return one, fmt.Errorf("entry %d is to be of no procedure, and steps and readings are of one; say which with --procedure", l.entry.Corrects)
	case one.Procedure != "" && (len(l.readings) > 0 || one.Unit != before.Unit):
		if one, err = l.rework(one, before, result); err != nil {
			return one, err
		}
	}
	if one, err = l.moved(one); err != nil {
		return one, err
	}
	if reflect.DeepEqual(one, before) && !compiler.Voids(old) {
		return one, fmt.Errorf("entry %d says so already; say what is to be changed, or take it out with --void %d", l.entry.Corrects, l.entry.Corrects)
	}
	return one, nil
}

// rework holds the work of an entry that is put right against the card it is of now: that of
// another machine, whose limits and amounts may differ.
func (l logged) rework(one, before compiler.Entry, result *compiler.Result) (compiler.Entry, error) {
	form, err := result.Form(one.Procedure, one.Unit, string(one.Date))
	if err != nil {
		return one, err
	}
	if one.Unit != before.Unit {
		one.Machine, one.Variant = "", ""
		one.Readings = slices.Clone(one.Readings)
		for i, reading := range one.Readings {
			if at := slices.IndexFunc(form.Readings, func(asked compiler.Reading) bool { return asked.Step == reading.Step && asked.What == reading.What }); at >= 0 {
				one.Readings[i].Limit = form.Readings[at].Limit
			}
		}
		if was, err := result.Form(before.Procedure, before.Unit, string(one.Date)); err == nil && slices.Equal(was.Used, before.Used) {
			one.Used = nil // as the card says, which is now another one
		}
	}
	one.Readings, err = l.read(one.Readings, form)
	return one, err
}

// ofFiles are the entries of files, with what the line says of what they do not.
func (by *caller) ofFiles(files []string, said logged) ([]compiler.Entry, error) {
	for _, flag := range []string{"procedure", "reading", "used", "received"} {
		if said.says(flag) {
			return nil, fmt.Errorf("--%s does not go with a file; write it into the file", flag)
		}
	}
	var out []compiler.Entry
	for _, file := range files {
		text, err := readPlain(by.from(file), file, mostBytes)
		if err != nil {
			return nil, err
		}
		before := len(out)
		err = compiler.ScanForm(text, func(e compiler.Entry, _ int) error {
			e.Number = 0
			out = append(out, e)
			return nil
		})
		var faults compiler.BookFaults
		if errors.As(err, &faults) {
			for _, fault := range faults {
				fmt.Fprintf(by.err, "%s: %s\n", file, fault)
			}
			return nil, fmt.Errorf("%s cannot be read whole, and nothing is written", file)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		if len(out) == before {
			return nil, fmt.Errorf("%s holds no [[entry]]", file)
		}
	}
	if said.says("corrects") {
		if len(out) > 1 {
			return nil, fmt.Errorf("--corrects is of one entry, and there are %d; write corrects into the one it is of", len(out))
		}
		out[0].Corrects = said.entry.Corrects
	}
	for i := range out {
		one := &out[i]
		for _, text := range []struct {
			said string
			into *string
		}{{said.entry.Unit, &one.Unit}, {said.entry.Who, &one.Who}, {said.entry.Meter, &one.Meter}, {said.entry.NewMeter, &one.NewMeter}, {said.entry.Remarks, &one.Remarks}} {
			if *text.into == "" && !compiler.Voids(*one) {
				*text.into = text.said
			}
		}
		if one.Date == "" && said.says("date") {
			*one = compiler.On(*one, said.date)
		}
	}
	return out, nil
}
