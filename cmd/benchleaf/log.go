package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
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
	shop     string
	form     bool
	asItIs   bool
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

The book is only ever added to. A wrong entry is put right by a new one with --corrects
and the number of the wrong one. Several people may write at the same time.`,
		Example: `  benchleaf log entry.toml                                        what a phone page gave
  benchleaf log --unit deck --meter "1234 h"                      a meter that was read
  benchleaf log --unit deck --procedure log-deck-bearing-grease --meter "1240 h" --who "R. A."
  benchleaf log --unit deck --procedure log-deck-chain-tension --form > form.toml
  benchleaf log --received gear-oil="20 L" --received seal=10     what came into the store
  benchleaf log --corrects 17 --remarks "Was done to the other deck"`,
		RunE: func(_ *cobra.Command, files []string) error { return by.log(files, said) },
	}
	flags := cmd.Flags()
	flags.StringVar(&said.shop, "shop", ".", "folder of the shop")
	flags.StringVar(&said.entry.Unit, "unit", "", "short name of the machine")
	flags.StringVar(&said.entry.Procedure, "procedure", "", "short name of the procedure that was worked by")
	flags.StringVar(&said.date, "date", "", "day it was done, such as 2026-05-01; today when left out")
	flags.StringVar(&said.entry.Who, "who", "", "who did it")
	flags.StringVar(&said.entry.Meter, "meter", "", "what the meter stood at")
	flags.StringVar(&said.entry.NewMeter, "new-meter", "", "what another meter stood at that took its place")
	flags.StringVar(&said.entry.Remarks, "remarks", "", "what else is to be known")
	flags.IntVar(&said.entry.Corrects, "corrects", 0, "number of an entry that this one stands for")
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
	if said.date == "" {
		said.date = time.Now().Format(time.DateOnly)
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
	entries, err := by.toLog(files, said, result)
	if err != nil {
		return err
	}
	var ready []compiler.Entry
	var problems []string
	if err := s.reading(func(book compiler.BookText) (err error) {
		ready, problems, err = result.Accept(book, entries)
		return err
	}); err != nil {
		return err
	}
	for _, problem := range problems {
		fmt.Fprintln(by.err, problem)
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

// toLog are the entries of files, or the one that was said.
func (by *caller) toLog(files []string, said logged, result *compiler.Result) ([]compiler.Entry, error) {
	if len(files) == 0 {
		one := said.entry
		if len(said.readings) > 0 || one.Procedure != "" {
			form, err := result.Form(one.Procedure, one.Unit, said.date)
			if err != nil {
				return nil, err
			}
			one.Unit, one.Done, one.Used = form.Unit, form.Done, form.Used
			for _, text := range said.readings {
				name, value, _ := strings.Cut(text, "=")
				at := slices.IndexFunc(form.Readings, func(reading compiler.Reading) bool { return reading.What == strings.TrimSpace(name) })
				if at < 0 {
					return nil, fmt.Errorf("the card of %s asks for no reading %q; it asks for: %s", one.Procedure, name, asksFor(form))
				}
				reading := form.Readings[at]
				reading.Value = strings.TrimSpace(value)
				one.Readings = append(one.Readings, reading)
			}
		}
		for _, list := range []struct {
			said []string
			into *[]compiler.Moved
		}{{said.used, &one.Used}, {said.received, &one.Received}} {
			for _, text := range list.said {
				name, amount, given := strings.Cut(text, "=")
				if !given {
					return nil, fmt.Errorf("%q says no amount; write name=amount, such as gear-oil=\"1.3 L\"", text)
				}
				moved := compiler.Moved{What: strings.TrimSpace(name), Amount: strings.TrimSpace(amount)}
				if at := slices.IndexFunc(*list.into, func(other compiler.Moved) bool { return other.What == moved.What }); at >= 0 {
					(*list.into)[at] = moved
				} else {
					*list.into = append(*list.into, moved)
				}
			}
		}
		if one.Unit == "" && one.Procedure == "" && one.Corrects == 0 && one.Remarks == "" && len(one.Received)+len(one.Used) == 0 {
			return nil, fmt.Errorf("nothing is said to be written; give a file, or --unit with --meter or --procedure")
		}
		return []compiler.Entry{compiler.On(one, said.date)}, nil
	}
	var out []compiler.Entry
	for _, file := range files {
		text, err := os.ReadFile(by.from(file))
		if err != nil {
			return nil, fmt.Errorf("%s cannot be read: %w", file, reason(err))
		}
		before := len(out)
		err = compiler.ScanBook(bytes.NewReader(text), func(e compiler.Entry, _ int) error {
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
	return out, nil
}
