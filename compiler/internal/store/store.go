// Package store reckons what is on the shelf of a shop: what was counted, what the entries
// of the service book took from it and added to it since, what the work to come takes, when
// that runs out, and which packs to buy. It must not know words or the clock.
package store

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/internal/quantity"
)

// Thing is something that is used up and bought again.
type Thing struct {
	Name  string        // short
	Of    any           // *model.Fluid, *model.Supply or *model.Spare
	Kept  *model.Store  // nil where nobody counts it
	Unit  quantity.Unit // it is reckoned in; without a dimension where nothing tells
	Packs []Pack
}

// Use is what work takes of a thing.
type Use struct {
	Of    any
	Name  string
	Total needs.Total
}

// Uses are what the steps of a job take of each thing, in the order they first do; at
// chooses the steps by their numbers.
func Uses(job *model.Job, needed *needs.Needs, at func(step int) bool) []Use {
	var out []Use
	add := func(use needs.Use, of any, fluid *model.Fluid) {
		if use.Step == nil || !at(use.Step.Number) {
			return
		}
		i := slices.IndexFunc(out, func(other Use) bool { return other.Of == of })
		if i < 0 {
			i, out = len(out), append(out, Use{Of: of, Name: use.Name})
		}
		out[i].Total.Use(use, fluid)
	}
	for _, use := range needed.Supplies {
		if fluid := job.Fluid(use.Name); fluid != nil {
			add(use, fluid, fluid)
		} else if supply := job.Supply(use.Name); supply != nil {
			add(use, supply, nil)
		}
	}
	for _, use := range needed.Spares {
		if spare := job.Spare(use.Name); spare != nil {
			add(use, spare, nil)
		}
	}
	return slices.DeleteFunc(out, func(use Use) bool { return use.Total.Count == 0 && len(use.Total.Amounts) == 0 })
}

// Text is an amount as an entry of the service book writes it, in its own unit; false where
// the use holds amounts of several kinds.
func (u Use) Text() (string, bool) {
	switch {
	case len(u.Total.Amounts) == 0:
		return fmt.Sprint(u.Total.Count), true
	case len(u.Total.Amounts) == 1 && u.Total.Count == 0:
		return u.Total.Amounts[0].Plain(), true
	}
	return "", false
}

// Things lists what the store counts, and what some work takes besides, in the order of the names.
func Things(stores []*model.Store, uses []Use) []*Thing {
	var out []*Thing
	has := map[any]bool{}
	for _, kept := range stores {
		if of := kept.File.Stored(kept.Name); of != nil && !has[of] {
			has[of] = true
			out = append(out, thing(kept.Name, of, kept))
		}
	}
	for _, use := range uses {
		if !has[use.Of] {
			has[use.Of] = true
			out = append(out, thing(use.Name, use.Of, nil))
		}
	}
	for _, one := range out {
		for _, use := range uses {
			if one.Unit.Dimension == quantity.None && use.Of == one.Of && len(use.Total.Amounts) > 0 {
				one.Unit = use.Total.Amounts[0].Unit
			}
		}
		if one.Unit.Dimension == quantity.None {
			one.Unit = pieces()
		}
	}
	slices.SortStableFunc(out, func(a, b *Thing) int { return cmp.Compare(a.Name, b.Name) })
	return out
}

func pieces() quantity.Unit {
	unit, _ := quantity.FindUnit("pieces")
	return unit
}

func thing(name string, of any, kept *model.Store) *Thing {
	out := &Thing{Name: name, Of: of, Kept: kept}
	switch of := of.(type) {
	case *model.Fluid:
		out.sizes(of.Packs)
	case *model.Supply:
		out.sizes(of.Packs)
	case *model.Spare:
		out.Unit = pieces()
		number := of.Pack.Or(1)
		amount, _ := quantity.Parse(fmt.Sprintf("%d pieces", number), quantity.Count)
		out.Packs = []Pack{{Size: big.NewRat(int64(number), 1), Amount: amount}}
	}
	if kept == nil {
		return out
	}
	if len(kept.OnHand) > 0 && kept.OnHand[0].OK {
		out.Unit = kept.OnHand[0].Unit
	}
	for _, price := range kept.Prices {
		size, ok := out.base(price.Pack)
		cost, err := Money(price.Price.Text)
		if !ok || err != nil {
			continue
		}
		at := slices.IndexFunc(out.Packs, func(pack Pack) bool { return pack.Size.Cmp(size) == 0 })
		if at < 0 {
			at, out.Packs = len(out.Packs), append(out.Packs, Pack{Size: size, Amount: price.Pack.Amount})
		}
		out.Packs[at].Price = cost
	}
	return out
}

func (t *Thing) sizes(packs []model.Amount) {
	for _, pack := range packs {
		if !pack.OK {
			continue
		}
		if t.Unit.Dimension == quantity.None {
			t.Unit = pack.Unit
		}
		if size, ok := t.base(pack); ok && size.Sign() > 0 {
			t.Packs = append(t.Packs, Pack{Size: size, Amount: pack.Amount})
		}
	}
}

// base is an amount in the base unit of what the thing is reckoned in.
func (t *Thing) base(amount model.Amount) (*big.Rat, bool) {
	if !amount.OK || !t.Unit.Converts(amount.Unit) {
		return nil, false
	}
	return amount.Max()
}

// Much is a total in the base unit of what the thing is reckoned in; false where it cannot
// be told in that, as grams of what is counted in litres.
func (t *Thing) Much(total needs.Total) (*big.Rat, bool) {
	out := big.NewRat(0, 1)
	for _, amount := range total.Amounts {
		most, ok := amount.Max()
		if !ok || !t.Unit.Converts(amount.Unit) {
			return nil, false
		}
		out.Add(out, most)
	}
	if total.Count > 0 {
		if t.Unit.Dimension != quantity.Count {
			return nil, false
		}
		out.Add(out, big.NewRat(int64(total.Count), 1))
	}
	return out, true
}

// Read is an amount as an entry writes it; problem says what is wrong with it.
func (t *Thing) Read(text string) (much *big.Rat, problem string) {
	var total needs.Total
	text = strings.TrimSpace(text)
	if text != "" && len(text) < 9 && strings.Trim(text, "0123456789") == "" {
		fmt.Sscan(text, &total.Count)
		if t.Unit.Dimension != quantity.Count && total.Count > 0 {
			return nil, fmt.Sprintf("%q has no unit; %s is counted in %s", text, t.Name, t.Unit.Symbol)
		}
	} else {
		amount, problems := quantity.Parse(text, t.Unit.Dimension, quantity.Volume, quantity.Mass, quantity.Length, quantity.Count)
		for _, one := range problems {
			if !one.Warning {
				return nil, fmt.Sprintf("%q: %s", text, one.Message)
			}
		}
		fluid, _ := t.Of.(*model.Fluid)
		total.Take(amount, fluid)
	}
	much, ok := t.Much(total)
	if !ok {
		return nil, fmt.Sprintf("%q cannot be told in %s, which %s is counted in", text, t.Unit.Symbol, t.Name)
	}
	return much, ""
}

// Account is a thing with what the book tells of it.
type Account struct {
	*Thing
	OnHand *big.Rat // in the base unit; nil where nobody counted it
	Year   *big.Rat // used within the twelve months before the day
	Future []Need   // in order of their days
}

// Need is a time some work takes of a thing.
type Need struct {
	Day  due.Day
	Much *big.Rat
	Unit string // short name of the machine
	Job  *model.Job
	Now  bool // it is of the work that is asked for
}

// Ledger is the accounts of a store.
type Ledger struct {
	Accounts []*Account
	Problems []string
	Reckoned int // entries that do not say what was used, and are taken to have used what their cards say

	byName map[string]*Account
	of     map[any]*Account
	told   map[string]bool
	known  []string
}

// Open opens an account for each thing with what was counted of it by a day. What was
// counted later does not count. known are the short names of all there is.
func Open(things []*Thing, known []string, on due.Day) *Ledger {
	l := &Ledger{known: known, byName: map[string]*Account{}, of: map[any]*Account{}, told: map[string]bool{}}
	for _, thing := range things {
		account := &Account{Thing: thing, Year: new(big.Rat)}
		if kept := thing.Kept; kept != nil {
			day, err := due.ParseDay(kept.Counted.Text)
			if err == nil && day > on {
				l.problem("%s was counted on %s, which is after %s, so it does not count yet", thing.Name, kept.Counted.Text, on)
			}
			if err == nil && day <= on && len(kept.OnHand) > 0 {
				sum, known := new(big.Rat), true
				for _, can := range kept.OnHand {
					much, ok := thing.base(can)
					if known = known && ok; ok {
						sum.Add(sum, much)
					}
				}
				if known {
					account.OnHand = sum
				}
			}
		}
		l.Accounts = append(l.Accounts, account)
		if other := l.byName[thing.Name]; other == nil || other.Kept == nil {
			l.byName[thing.Name] = account
		}
		l.of[thing.Of] = account
	}
	return l
}

// problem tells something once.
func (l *Ledger) problem(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if !l.told[text] {
		l.told[text] = true
		l.Problems = append(l.Problems, text)
	}
}

// Find is the account of a short name; nil where there is none.
func (l *Ledger) Find(name string) *Account { return l.byName[name] }

// Of is the account of a *model.Fluid, *model.Supply or *model.Spare; nil where there is none.
func (l *Ledger) Of(thing any) *Account { return l.of[thing] }

// Take books an entry of a day. by is what its card takes, for where it does not say itself
// what was used.
func (l *Ledger) Take(e entry.Entry, on due.Day, by func() []Use) {
	day, err := due.ParseDay(string(e.Date))
	if err != nil || day > on {
		return
	}
	for _, moved := range e.Received {
		l.move(e.Number, day, on, moved, 1)
	}
	for _, moved := range e.Used {
		l.move(e.Number, day, on, moved, -1)
	}
	if len(e.Used) > 0 || e.Procedure == "" {
		return
	}
	for i, use := range by() {
		if i == 0 {
			l.Reckoned++
		}
		account := l.of[use.Of]
		if account == nil {
			continue
		}
		if much, ok := account.Much(use.Total); ok {
			account.book(day, on, new(big.Rat).Neg(much))
		}
	}
}

func (l *Ledger) move(number int, day, on due.Day, moved entry.Moved, sign int64) {
	account := l.byName[moved.What]
	if account == nil {
		if problem := unknown(moved.What, l.known); problem != "" {
			l.problem("entry %d of the service book: %s", number, problem)
		}
		return
	}
	much, problem := account.Read(moved.Amount)
	if problem != "" {
		l.problem("entry %d of the service book: %s", number, problem)
		return
	}
	account.book(day, on, new(big.Rat).Mul(much, big.NewRat(sign, 1)))
}

// unknown says that nothing has a name, with the nearest that something has; nothing where
// it is known, though no work takes it and nobody counts it.
func unknown(name string, known []string) string {
	if slices.Contains(known, name) {
		return ""
	}
	if near := model.Nearest(name, known); near != "" {
		return fmt.Sprintf("no fluid, supply or spare is named %q; did you mean %q?", name, near)
	}
	return fmt.Sprintf("no fluid, supply or spare is named %q", name)
}

// Check says what is wrong with an amount that moves; known are the short names of all there is.
func Check(things []*Thing, known []string, moved entry.Moved) string {
	for _, thing := range things {
		if thing.Name == moved.What {
			_, problem := thing.Read(moved.Amount)
			return problem
		}
	}
	return unknown(moved.What, known)
}

// book adds what came in, and takes off what is below nothing.
func (a *Account) book(day, on due.Day, change *big.Rat) {
	if change.Sign() < 0 && day > on.AddDays(-year) {
		a.Year.Sub(a.Year, change)
	}
	if a.OnHand == nil {
		return
	}
	if counted, err := due.ParseDay(a.Kept.Counted.Text); err == nil && day > counted {
		a.OnHand.Add(a.OnHand, change)
	}
}

// Settle tells of accounts that are below nothing.
func (l *Ledger) Settle() {
	for _, account := range l.Accounts {
		if account.OnHand != nil && account.OnHand.Sign() < 0 {
			l.problem("more of %s was used than there was since %s; count it again", account.Name, account.Kept.Counted.Text)
			account.OnHand.SetInt64(0)
		}
	}
}

// Expect books what a job takes on a day to come; now is the work that is asked for.
func (l *Ledger) Expect(day due.Day, unit string, job *model.Job, uses []Use, now bool) {
	for _, use := range uses {
		account := l.of[use.Of]
		if account == nil {
			continue
		}
		much, ok := account.Much(use.Total)
		if !ok {
			l.problem("what %s takes of %s cannot be told in %s, which it is counted in", job.File.Name(), account.Name, account.Unit.Symbol)
			continue
		}
		at, _ := slices.BinarySearchFunc(account.Future, day+1, func(need Need, day due.Day) int { return cmp.Compare(need.Day, day) })
		account.Future = slices.Insert(account.Future, at, Need{Day: day, Much: much, Unit: unit, Job: job, Now: now})
	}
}

// Money reads a price: figures, and after a point two or three more at the most.
func Money(text string) (*big.Rat, error) {
	whole, part, point := strings.Cut(text, ".")
	figures := func(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }
	if !figures(whole) || len(whole) > 9 || point && (!figures(part) || len(part) > 3) {
		return nil, fmt.Errorf("%q is no price such as \"14.20\"", text)
	}
	out, _ := new(big.Rat).SetString(text)
	return out, nil
}
