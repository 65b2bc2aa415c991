package store

import (
	"fmt"
	"math/big"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/entry"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/needs"
	"benchleaf/compiler/source"
)

const shelves = `benchleaf = 1

[fluid.oil]
kind = "gear-oil"
grade = "ISO VG 220"
packs = ["1 L", "5 L"]

[fluid.grease]
kind = "grease"
grade = "NLGI 2"
packs = ["400 g"]
stroke = "1.2 g"

[supply.rags]
title = "Rags"

[spare.seal]
title = "sealing ring"
pack = 10

[store.oil]
on-hand = ["5 L", "0.6 L"]
counted = 2026-03-31
keep = "1 L"
lead = "10 days"
prices = [{ pack = "1 L", price = "14.20" }, { pack = "5 L", price = "61.00" }]

[store.grease]
on-hand = "500 g"
counted = 2026-03-31

[store.seal]
on-hand = 3
counted = 2026-04-30
`

// read opens the shelves above on a day; uses are what work takes besides.
func read(t *testing.T, on string) *Ledger {
	t.Helper()
	set := model.Read([]*source.File{source.New("store.toml", []byte(shelves))}, func(n int, do func(int)) {
		for i := range n {
			do(i)
		}
	})
	require.Empty(t, set.Findings)
	return Open(Things(set.Stores(), nil), set.Shelved(), day(t, on))
}

func day(t *testing.T, text string) due.Day {
	t.Helper()
	out, err := due.ParseDay(text)
	require.NoError(t, err)
	return out
}

func nothing() []Use { return nil }

// By hand: 5.6 l counted on the evening of 31 March; the 1 l of that day is behind it. Less
// 1.1 l, and 1 US qt more, which is 0.946352946 l (NIST Handbook 44 App. C): 5.446352946 l.
// Twenty strokes at 1.2 g are 24 g. What is dated after the day does not count yet.
func TestWhatIsLeftByHand(t *testing.T) {
	ledger := read(t, "2026-04-30")
	on := day(t, "2026-04-30")
	for i, e := range []entry.Entry{
		{Date: "2026-03-31", Used: []entry.Moved{{What: "oil", Amount: "1 L"}}},
		{Date: "2026-04-02", Used: []entry.Moved{{What: "oil", Amount: "1.1 L"}, {What: "grease", Amount: "20 strokes"}}},
		{Date: "2026-04-05", Received: []entry.Moved{{What: "oil", Amount: "1 US qt"}}},
		{Date: "2026-05-01", Used: []entry.Moved{{What: "oil", Amount: "2 L"}}},
		{Date: "2025-04-30", Used: []entry.Moved{{What: "seal", Amount: "4"}}},
		{Date: "2025-05-02", Used: []entry.Moved{{What: "seal", Amount: "2"}}},
	} {
		e.Number = i + 1
		ledger.Take(e, on, nothing)
	}
	ledger.Settle()
	assert.Empty(t, ledger.Problems)
	assert.Equal(t, "5.446352946", ledger.Find("oil").OnHand.FloatString(9), "litres")
	assert.Equal(t, "476", litres(ledger.Find("grease"), 0))
	assert.Equal(t, "3", ledger.Find("seal").OnHand.RatString())
	assert.Equal(t, "2", ledger.Find("seal").Year.RatString(), "of the twelve months before")
	assert.Equal(t, "2.1", ledger.Find("oil").Year.FloatString(1))
}

// litres is what is on hand in the unit of the account.
func litres(account *Account, places int) string {
	return account.Unit.FromBase(account.OnHand).FloatString(places)
}

func TestWhatCannotBeBookedIsTold(t *testing.T) {
	ledger := read(t, "2026-06-01")
	on := day(t, "2026-06-01")
	for i, moved := range []entry.Moved{{What: "oyl", Amount: "1 L"}, {What: "oil", Amount: "1 kg"}, {What: "oil", Amount: "3"}, {What: "oil", Amount: "1 pint"}, {What: "rags", Amount: "4"}, {What: "seal", Amount: "9"}} {
		ledger.Take(entry.Entry{Number: i + 1, Date: "2026-05-20", Used: []entry.Moved{moved}}, on, nothing)
	}
	ledger.Take(entry.Entry{Number: 9, Date: "no day", Used: []entry.Moved{{What: "oil", Amount: "1 L"}}}, on, nothing)
	ledger.Settle()
	require.Len(t, ledger.Problems, 5, "%q", ledger.Problems)
	assert.Equal(t, `entry 1 of the service book: no fluid, supply or spare is named "oyl"; did you mean "oil"?`, ledger.Problems[0])
	assert.Equal(t, `entry 2 of the service book: "1 kg" cannot be told in L, which oil is counted in`, ledger.Problems[1])
	assert.Equal(t, `entry 3 of the service book: "3" has no unit; oil is counted in L`, ledger.Problems[2])
	assert.Contains(t, ledger.Problems[3], `entry 4 of the service book: "1 pint": `)
	assert.Equal(t, "more of seal was used than there was since 2026-04-30; count it again", ledger.Problems[4])
	assert.Zero(t, ledger.Find("seal").OnHand.Sign())
	assert.Nil(t, read(t, "2026-03-30").Find("oil").OnHand, "it was counted on the day after")
}

// An entry that does not say what was used counts as its card says; one that says it does not.
func TestTheCardCountsWhereTheEntryIsSilent(t *testing.T) {
	ledger := read(t, "2026-06-01")
	seal := ledger.Find("seal")
	card := func() []Use { return []Use{{Of: seal.Of, Name: "seal", Total: needs.Total{Count: 2}}} }
	ledger.Take(entry.Entry{Number: 1, Date: "2026-05-20", Procedure: "oil-change"}, day(t, "2026-06-01"), card)
	assert.Equal(t, "1", seal.OnHand.RatString())
	assert.Equal(t, 1, ledger.Reckoned)
	ledger.Take(entry.Entry{Number: 2, Date: "2026-05-21", Procedure: "oil-change", Used: []entry.Moved{{What: "seal", Amount: "0"}}}, day(t, "2026-06-01"), card)
	assert.Equal(t, "1", seal.OnHand.RatString())
	assert.Equal(t, 1, ledger.Reckoned)
}

// By hand, with 5.6 l on the shelf, 1 l to keep and ten days from order to shelf: each case
// says what work takes and when, what is asked for now, and what is to be bought at 14.20 a
// litre and 61.00 for five.
func TestWhatToOrderByHand(t *testing.T) {
	for name, c := range map[string]struct {
		needs   []string // day, litres, and * where it is asked for now
		state   State
		missing string
		cost    string
		runsOut string
		orderBy string
	}{
		"nothing is foreseen":           {nil, Enough, "0.0", "", "", ""},
		"enough for what is asked":      {[]string{"2026-05-02 4.6 *"}, Enough, "0.0", "", "", ""},
		"it eats what is kept":          {[]string{"2026-05-02 4.7 *"}, ToOrder, "0.1", "14.20", "", ""},
		"more than there is":            {[]string{"2026-05-02 6.0 *"}, Missing, "1.4", "28.40", "2026-05-02", "2026-04-22"},
		"five in one can are cheaper":   {[]string{"2026-05-02 9.4 *"}, Missing, "4.8", "61.00", "2026-05-02", "2026-04-22"},
		"it runs out far away":          {[]string{"2026-06-20 3.0", "2026-09-20 3.0"}, Enough, "0.0", "", "2026-09-20", "2026-09-10"},
		"it runs out within the lead":   {[]string{"2026-05-20 3.0", "2026-05-24 3.0"}, ToOrder, "1.4", "28.40", "2026-05-24", "2026-05-14"},
		"a day later there is time yet": {[]string{"2026-05-20 3.0", "2026-05-26 3.0"}, Enough, "0.0", "", "2026-05-26", "2026-05-16"},
	} {
		t.Run(name, func(t *testing.T) {
			ledger := read(t, "2026-05-01")
			oil := ledger.Find("oil")
			for _, text := range c.needs {
				var on, litres, now string
				_, _ = fmt.Sscan(text, &on, &litres, &now)
				much, problem := oil.Read(litres + " L")
				require.Empty(t, problem)
				oil.Future = append(oil.Future, Need{Day: day(t, on), Much: much, Now: now == "*"})
			}
			order := oil.Order(day(t, "2026-05-01"), 14)
			assert.Equal(t, c.state, order.State)
			assert.Equal(t, c.missing, order.Missing.FloatString(1))
			cost, runsOut, orderBy := "", "", ""
			if order.Chosen {
				cost = order.Choice.Cost.FloatString(2)
			}
			if order.RunsOut != nil {
				runsOut, orderBy = order.RunsOut.Day.String(), order.OrderBy.String()
			}
			assert.Equal(t, []string{c.cost, c.runsOut, c.orderBy}, []string{cost, runsOut, orderBy})
		})
	}
}

func TestMoney(t *testing.T) {
	for text, want := range map[string]string{"14.20": "1420", "3": "300", "0.005": "1/2", "": "", "3,20": "", "-1": "", "1.": "", ".5": "", "1.2345": "", "12345678901": "", "1e3": ""} {
		got, err := Money(text) // held against cents
		if want == "" {
			assert.Error(t, err, text)
			continue
		}
		require.NoError(t, err, text)
		assert.Equal(t, want, got.Mul(got, big.NewRat(100, 1)).RatString(), text)
	}
}
