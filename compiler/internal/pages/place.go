package pages

import (
	"slices"
	"strconv"
	"strings"
)

// frame is what stands on every side around the items.
type frame struct {
	s      *setter
	width  float64
	height float64
	top    float64            // height of the running head, with the gap below it
	most   int                // sides the foot has room to count
	who    string             // identity line of the foot
	what   string             // what the sides are about
	end    string             // said on the last side
	filled bool               // each side is filled before the next begins, as a sheet is that is only read
	laws   []string           // lines on the first and the last side; at least one
	again  func(string) item  // heading of a side that goes on with a part
	feet   map[bool]float64   // heights of the foot, with and without the laws
	heads  map[string]float64 // heights of the headings
	tabs   map[int]float64    // widths of the count of sides, by the sides there is room for
	before int                // sides that lie before the first
	run    *running           // heads and feet of their own; nil for those of cards and lists
}

// running is what stands above and below the items of every side.
type running struct {
	head piece
	foot func(number int) piece // number counts the sides before too; all are as high
}

// gapHead is the blank below a running head, in ems of the main type.
const gapHead = 0.7

// gaps above the foot and below a repeated heading, in ems of the main type.
const (
	gapFoot  = 0.45
	gapAgain = 0.5
)

// airs are shares of the blank between items, tried from the airy to the tight:
// the first that takes the fewest sides is used.
var airs = [...]float64{1, 0.85, 0.7, 0.6}

// share lays items out on sides and draws heads and feet.
func (f *frame) share(items []item) []Side {
	f.most = 8
	if f.run != nil && f.run.head.height > 0 {
		f.top = f.run.head.height + gapHead*f.s.size.main
		f.height -= f.top
	}
	best := f.fewest(items)
	if len(best.starts) > f.most {
		f.most = 98
		best = f.fewest(items)
	}
	if best.parted {
		f.s.problem("what belongs together is taller than a side, and was parted")
	}
	sides := make([]Side, len(best.starts))
	for i, first := range best.starts {
		end := len(best.items)
		if i+1 < len(best.starts) {
			end = best.starts[i+1]
		}
		free := f.free(best.items, first, end)
		sides[i] = f.side(stretched(best.items[first:end], free), i, len(best.starts))
	}
	return sides
}

func (f *frame) fewest(items []item) (best turning) {
	f.feet = map[bool]float64{true: f.foot(true, 0, f.most).height, false: f.foot(false, 0, f.most).height}
	f.heads = map[string]float64{}
	items = f.fit(items)
	for _, air := range airs {
		if made := f.turned(items, air); best.items == nil || len(made.starts) < len(best.starts) {
			best = made
		}
	}
	return best
}

// lastBlank is what a blank last side costs: nothing, where the sides before it are filled.
func (f *frame) lastBlank() float64 {
	if f.filled {
		return 0
	}
	return costLast
}

// turning is one way to share items out.
type turning struct {
	items  []item
	starts []int
	parted bool
}

func (f *frame) turned(items []item, air float64) turning {
	items = slices.Clone(items)
	for i := range items {
		items[i].above *= air
	}
	starts, parted := turns(items, func(first, end int) float64 { return f.free(items, first, end) }, f.lastBlank())
	return turning{items, starts, parted}
}

// stretched gives some of a side's blank to the gaps between its items.
func stretched(items []item, free float64) []item {
	const most = 0.5 // of a gap
	left, gaps := free, 0.0
	for i, it := range items {
		left -= it.height
		if i > 0 {
			gaps += it.above
		}
	}
	left -= gaps
	if left <= 0 || gaps <= 0 {
		return items
	}
	items = slices.Clone(items)
	for i := range items {
		items[i].above *= 1 + min(most, left/gaps)
	}
	return items
}

// free is the height for items on a side: first and last sides have a taller foot.
func (f *frame) free(items []item, first, end int) float64 {
	left := f.height - f.feet[first == 0 || end == len(items)] - gapFoot*f.s.size.main
	if first > 0 {
		left -= f.headed(items[first].part)
	}
	return left
}

// headed is the height a repeated heading takes, with the gap below it.
func (f *frame) headed(part string) float64 {
	if part == "" {
		return 0
	}
	height, known := f.heads[part]
	if !known {
		height = f.again(part).height + gapAgain*f.s.size.main
		f.heads[part] = height
	}
	return height
}

// fit cuts what is taller than any side.
func (f *frame) fit(items []item) []item {
	var out []item
	for _, it := range items {
		most := f.height - f.feet[true] - gapFoot*f.s.size.main - f.headed(it.part)
		for it.height > most {
			head, tail := it, it
			head.piece, tail.piece = it.cut(most)
			tail.above, tail.stays, tail.dear = 0, false, costInside
			f.s.problem("something is taller than a side and goes on overleaf: %q", excerpt(it.piece))
			out = append(out, head)
			it = tail
		}
		out = append(out, it)
	}
	return out
}

// excerpt gives the first words of a piece, to find it by.
func excerpt(p piece) string {
	for _, mark := range p.marks {
		if text, ok := mark.(Text); ok && len(text.Text) > 3 {
			return strings.TrimSpace(text.Text)
		}
	}
	return ""
}

func (f *frame) side(items []item, index, all int) Side {
	stock := f.s.look.Stock
	side := Side{Width: stock.Width, Height: stock.Height, Safe: stock.safe(f.before + index + 1), Number: f.before + index + 1, Sheet: (f.before+index)/stock.Sides + 1}
	page := piece{width: f.width, height: f.height}
	foot := f.foot(index == 0 || index == all-1, index, all)
	y := 0.0
	if index > 0 && items[0].part != "" {
		again := f.again(items[0].part)
		page.put(again.piece, 0, 0)
		y = f.headed(items[0].part)
	}
	barFrom := -1.0
	for i, it := range items {
		if i > 0 {
			y += it.above
		}
		if it.low {
			y = max(y, f.height-foot.height-gapFoot*f.s.size.main-it.height)
		}
		page.put(it.piece, 0, y)
		if it.bar && barFrom < 0 {
			barFrom = y
		}
		y += it.height
		if barFrom >= 0 && (i+1 == len(items) || !items[i+1].bar) {
			page.put(f.bar(y-barFrom), f.barInset(), barFrom)
			barFrom = -1
		}
	}
	page.put(foot, 0, f.height-foot.height)
	var whole piece
	if f.run != nil {
		whole.put(f.run.head, side.Safe.X, side.Safe.Y)
	}
	whole.put(page, side.Safe.X, side.Safe.Y+f.top)
	side.Marks, side.Boxes = whole.marks, whole.boxes
	return side
}

func (p piece) at(x, y float64) piece {
	var out piece
	out.put(p, x, y)
	return out
}

func (f *frame) barInset() float64 { return f.s.size.main * 0.35 }

// bar runs beside the steps that are done while something waits.
func (f *frame) bar(height float64) piece {
	width := f.s.size.main * 0.32
	out := piece{width: width, height: height}
	out.mark(Panel{Rectangle{0, 0, width, height}, corners(width / 2), Paint{Fill: slate}})
	return out.named("bar", "")
}

// foot says on every side which card this is, where it goes on and, where it is
// asked for, what stands above the card.
func (f *frame) foot(laws bool, index, all int) piece {
	if f.run != nil {
		return f.run.foot(f.before + index + 1)
	}
	small := f.s.small()
	out := piece{width: f.width}
	out.mark(band(0, 0, f.width, 0.3, black))
	out.put(f.s.say(small.with(Bold), f.width, f.who), 0, small.size*0.35)
	next, y := f.onward(index, all), out.height+small.size*0.1
	beside := []string{f.what}
	if laws {
		beside = f.laws
	}
	room := f.width - f.widest() - small.size
	first := f.s.say(small.inked(grey), f.width, beside[0])
	if first.width <= room && first.height <= small.line()+tiny {
		out.put(first, 0, y+(next.height-first.height)/2)
		beside = beside[1:]
	}
	out.put(next, f.width-next.width, y)
	if laws {
		for _, law := range beside {
			out.put(f.s.say(small.inked(grey), f.width, law), 0, out.height)
		}
	}
	return out.named("foot", strconv.Itoa(index+1))
}

// widest is the room kept for the count of sides, the same on every side so that
// the foot is as high on all of them.
func (f *frame) widest() float64 {
	if wide, known := f.tabs[f.most]; known {
		return wide
	}
	if f.tabs == nil {
		f.tabs = map[int]float64{}
	}
	f.tabs[f.most] = max(f.onward(f.most-3, f.most).width, f.onward(f.most-2, f.most).width, f.onward(f.most-1, f.most).width)
	return f.tabs[f.most]
}

// onward counts the sides and says where to go on.
func (f *frame) onward(index, all int) piece {
	labels, small := f.s.words.Labels, f.s.small()
	sheets := f.s.look.Stock.Sides
	count := strings.ReplaceAll(labels.Sheet, "{n}", strconv.Itoa(index/sheets+1)) + " · " +
		strings.NewReplacer("{n}", strconv.Itoa(index+1), "{all}", strconv.Itoa(all)).Replace(labels.Side)
	word, sign := labels.TurnOver, turned(small.size*0.85, white)
	switch {
	case index == all-1:
		word, sign = f.end, piece{}
	case sheets == 1 || index%2 == 1:
		word, sign = labels.NextSheet, onward(small.size*0.7, white)
	}
	side := f.s.say(small, f.width, count)
	tab := f.tab(word, sign)
	out := piece{}
	out.put(side, 0, (tab.height-side.height)/2)
	out.put(tab, side.width+small.size*0.7, 0)
	return out
}

func (f *frame) tab(word string, sign piece) piece {
	small := f.s.small().with(Bold).inked(white).lying(slate)
	pad := small.size * 0.45
	text := f.s.say(small, f.width/2, word)
	out := piece{height: text.height + pad*0.3}
	out.width = pad + text.width + pad
	if sign.width > 0 {
		out.width += sign.width + pad*0.8
	}
	out.mark(Panel{Rectangle{0, 0, out.width, out.height}, corners(small.size * 0.2), Paint{Fill: slate}})
	out.put(text, pad, pad*0.15)
	out.put(sign, pad+text.width+pad*0.8, (out.height-sign.height)/2)
	return out
}
