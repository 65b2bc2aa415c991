package compose

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"benchleaf/compiler/internal/due"
	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/plan"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/compiler/internal/store"
)

// Store puts into words how the shelves stand on a day: what is missing for some work first,
// then what is to be ordered within some days, then the rest. works, at least one, give
// language and units; their machines stand at them as they print.
func Store(ledger *store.Ledger, works []Asked, wanted []Asked, on due.Day, within int, system quantity.System) (plan.Store, error) {
	w, err := newWriter(works[0].Work, system)
	if err != nil {
		return plan.Store{}, err
	}
	out := plan.Store{Words: w.words, On: on.String(), Reckoned: ledger.Reckoned}
	currency := ""
	if shop := w.job.Shop; shop != nil {
		out.Shop, currency = shop.Title.Text, shop.Currency.Text
	}
	for i, asked := range wanted {
		out.Served = append(out.Served, asked.served(model.Letter(i)))
	}
	sum := new(big.Rat)
	for _, account := range ledger.Accounts {
		order := account.Order(on, within)
		row := w.storeRow(account, order, wanted, on)
		if order.Chosen && order.Choice.Cost != nil {
			row.Cost = price(order.Choice.Cost, currency)
			sum.Add(sum, order.Choice.Cost)
		} else if row.State == "missing" || row.State == "order" {
			out.Unpriced++
		}
		out.Rows = append(out.Rows, row)
	}
	if sum.Sign() > 0 {
		out.Cost = price(sum, currency)
	}
	slices.SortStableFunc(out.Rows, func(a, b plan.StoreRow) int {
		return cmp.Or(cmp.Compare(slices.Index(storeStates, a.State), slices.Index(storeStates, b.State)), byDay(a.RunsOut, b.RunsOut), cmp.Compare(a.Name, b.Name))
	})
	return out, nil
}

// storeStates are the states as programs read them, the most pressing first.
var storeStates = []string{store.Missing: "missing", store.ToOrder: "order", store.Enough: "enough", store.Uncounted: "uncounted"}

// byDay orders days, none last.
func byDay(a, b string) int {
	if (a == "") != (b == "") {
		return cmp.Compare(b, a)
	}
	return cmp.Compare(a, b)
}

func (w *writer) storeRow(account *store.Account, order store.Order, wanted []Asked, on due.Day) plan.StoreRow {
	labels := w.words.Labels
	row := plan.StoreRow{Name: account.Name, State: storeStates[order.State]}
	row.Word = []string{labels.BuyNow, labels.BuySoon, labels.Enough, labels.NotCounted}[order.State]
	row.Title, row.Number, row.Where = onShelf(account.Of)
	if kept := account.Kept; kept != nil {
		row.Supplier, row.Counted = kept.Supplier.Text, kept.Counted.Text
	}
	if account.OnHand != nil {
		row.OnHand = w.much(account, account.OnHand)
	}
	for _, level := range []struct {
		text *string
		much *big.Rat
	}{{&row.Need, order.Now}, {&row.Missing, order.Missing}, {&row.Used, account.Year}, {&row.Year, order.Year}, {&row.Keep, order.Keep}} {
		if level.much.Sign() > 0 {
			*level.text = w.much(account, level.much)
		}
	}
	if order.Chosen {
		row.Buy = w.packsOf(account, order.Choice)
	}
	if order.RunsOut != nil {
		row.RunsOut, row.OrderBy = order.RunsOut.Day.String(), max(order.OrderBy, on).String()
		row.At = order.RunsOut.Job.Procedure.Title.Text
	}
	for _, need := range account.Future {
		if !need.Now {
			continue
		}
		at := slices.IndexFunc(wanted, func(asked Asked) bool { return asked.Job == need.Job && asked.Unit == need.Unit })
		if at >= 0 && !slices.Contains(row.For, model.Letter(at)) {
			row.For = append(row.For, model.Letter(at))
			if name := need.Job.File.Name(); !slices.Contains(row.Works, name) {
				row.Works = append(row.Works, name)
			}
		}
	}
	return row
}

// onShelf is how a thing of the store is called, its number, and its place.
func onShelf(of any) (title, number, where string) {
	switch of := of.(type) {
	case *model.Fluid:
		return upper(fluidWords(of)), of.Number.Text, of.Where.Text
	case *model.Supply:
		return upper(of.Words()), of.Number.Text, of.Where.Text
	case *model.Spare:
		return upper(of.Words()), of.Number.Text, of.Where.Text
	}
	return "", "", ""
}

// much is how much there is of something, to two places; a number of pieces stands alone.
func (w *writer) much(account *store.Account, base *big.Rat) string {
	unit := account.Unit
	if amount, ok := rounded(base, unit); ok {
		if unit.Dimension == quantity.Count && unit.Symbol == "pieces" {
			return trimmed(unit.FromBase(base))
		}
		return w.writing().Format(amount, w.system)
	}
	if unit.Dimension == quantity.Count && unit.Symbol == "pieces" {
		return "0"
	}
	return "0\u00a0" + cmp.Or(w.words.Units[unit.Symbol], unit.Symbol)
}

// packsOf writes what packs to take; of single pieces only how many.
func (w *writer) packsOf(account *store.Account, choice store.Choice) string {
	if account.Unit.Symbol != "pieces" {
		return w.picks(choice.Picks)
	}
	var parts []string
	for _, pick := range choice.Picks {
		text := fmt.Sprint(pick.Count)
		if size := trimmed(pick.Pack.Size); size != "1" {
			text += " × " + size
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, " + ")
}

// price is an amount of money with its currency: "28.40 EUR".
func price(cost *big.Rat, currency string) string {
	return strings.TrimSpace(cost.FloatString(2) + "\u00a0" + currency)
}

// Shopping is the list of what to buy, supplier by supplier, and of what is not counted and
// wanted; it is drawn as a pick list is.
func Shopping(content plan.Store) plan.PickList {
	labels := content.Words.Labels
	out := plan.PickList{Words: content.Words, Shop: content.Shop, Kind: labels.Shopping, Title: labels.Shopping, Date: content.On, DateIs: labels.Date, Served: content.Served}
	var suppliers []string
	for _, row := range content.Rows {
		if buys(row) && !slices.Contains(suppliers, row.Supplier) {
			suppliers = append(suppliers, row.Supplier)
		}
	}
	slices.Sort(suppliers)
	for _, supplier := range suppliers {
		group := plan.PickGroup{Kind: "buy", Title: cmp.Or(supplier, labels.Shopping)}
		for _, row := range content.Rows {
			if buys(row) && row.Supplier == supplier {
				group.Lines = append(group.Lines, bought(row, labels))
			}
		}
		out.Groups = append(out.Groups, group)
	}
	if len(out.Groups) == 0 {
		out.Groups = append(out.Groups, plan.PickGroup{Kind: "buy", Title: labels.Shopping, None: labels.NothingToBuy})
	}
	if content.Cost != "" {
		out.Sum = labels.Together + " " + content.Cost
	}
	look := plan.PickGroup{Kind: "uncounted", Title: labels.NotCounted}
	for _, row := range content.Rows {
		if row.State == "uncounted" && row.Need != "" {
			look.Lines = append(look.Lines, plan.Pick{Name: numbered(row), Quantity: row.Need, Where: row.Where, For: row.For})
		}
	}
	if len(look.Lines) > 0 {
		out.Groups = append(out.Groups, look)
	}
	return out
}

func buys(row plan.StoreRow) bool { return row.State == "missing" || row.State == "order" }

func numbered(row plan.StoreRow) string {
	if row.Number == "" {
		return row.Title
	}
	return row.Title + ", " + row.Number
}

func bought(row plan.StoreRow, labels plan.Labels) plan.Pick {
	out := plan.Pick{Name: numbered(row), Quantity: row.Buy, Missing: row.Missing, OnHand: row.OnHand, Keep: row.Keep, Cost: row.Cost, For: row.For}
	if row.Buy == "" {
		out.Quantity, out.Missing = row.Missing, ""
	}
	if row.RunsOut != "" && row.Need == "" {
		out.RunsOut = strings.NewReplacer("{day}", row.RunsOut, "{job}", row.At).Replace(labels.RunsOut)
	}
	return out
}
