package pages

import "benchleaf/compiler/internal/plan"

// grid is the upright order of a card: a margin for numbers, ticks and labels, and
// the column the words hang in.
type grid struct {
	width  float64 // of the side inside its border
	margin float64
	column float64 // where the words begin is margin; this is their width
	indent float64 // of steps done while something waits
}

// sheet is what cards and lists have in common.
type sheet struct {
	*setter
	grid
}

// begin settles a look, and begins a sheet with it whose labels hang in a narrow margin. What
// of the look cannot be is among the problems of the sheet.
func begin(look Look, words plan.Words) (Look, sheet) {
	look, problems := look.settled()
	out := sheet{setter: newSetter(look, words, problems)}
	out.width = look.Stock.safe(1).Width
	out.margin = out.size.main * 0.75
	out.column = out.width - out.margin
	return look, out
}

// labelled hangs a label in the margin beside what it names; a label too wide for
// the margin stands above.
func (c *sheet) labelled(label string, body piece) piece {
	style := c.small().with(Bold).inked(grey)
	var out piece
	if c.widestWord(style, label) <= c.margin-c.size.small*0.6 {
		name := c.say(style, c.margin-c.size.small*0.6, label)
		out.put(name, 0, c.text().baseline()-style.baseline())
		out.put(body, c.margin, 0)
	} else {
		name := c.say(style, c.width, label)
		out.put(name, 0, 0)
		out.put(body, c.margin, name.height)
	}
	out.width = c.width
	return out
}

func (c *sheet) widestWord(k kind, text string) float64 {
	widest := 0.0
	for _, w := range c.split([]span{{text, k.face, k.ink}}) {
		widest = max(widest, w.width(k.size))
	}
	return widest
}

// again is the heading of a side that goes on with a part of the job.
func (c *sheet) again(part string) item {
	words := []span{{part, Bold, slate}, {" · " + c.words.Labels.Continued, Regular, slate}}
	return item{piece: c.quietBand(words, c.text()).named("again", part)}
}

// quietBand is a heading on a pale ground.
func (c *sheet) quietBand(words []span, style kind) piece {
	pad := style.size * 0.3
	text := c.set(style.lying(tint), c.column-pad, words)
	out := piece{width: c.width, height: text.height + 2*pad}
	out.mark(band(0, 0, c.width, out.height, tint), band(0, 0, style.size*0.35, out.height, slate))
	out.put(text, c.margin, pad)
	return out
}

// titleBand is the band on top of a first side: a line, the title, a line, and a
// stamp at the right.
func (c *sheet) titleBand(above, title, below string, stamp piece) piece {
	em, pad := c.size.main, c.size.main*0.75
	small, middle := c.small().inked(white).lying(slate), c.main().inked(white).lying(slate)
	big := kind{c.size.title, 1.2, Bold, white, slate}
	room := c.width - 2*pad - stamp.width - em
	var words piece
	words.put(c.say(small, room, above), 0, 0)
	words.put(c.say(big, room, title), 0, words.height+em*0.1)
	words.put(c.say(middle, room, below), 0, words.height+em*0.1)
	out := piece{width: c.width, height: max(words.height, stamp.height) + 1.7*pad}
	r := em * 0.45
	out.mark(Panel{Rectangle{0, 0, out.width, out.height}, [4]float64{r, r, 0, 0}, Paint{Fill: slate}})
	out.put(words, pad, pad*0.8)
	out.put(stamp, c.width-pad-stamp.width, pad*0.8)
	return out
}

// stamp is the mark and the day that tell this page from an older one.
func (c *sheet) stamp(mark, date string) piece {
	em := c.size.main
	small := c.small().inked(white).lying(slate)
	big := kind{c.size.value, 1.2, Bold, white, slate}
	most := c.width * 0.28
	for big.size > c.size.text && big.wide(c.split([]span{{mark, Bold, white}})) > most { // a day is not broken
		big.size -= c.size.text * 0.1
	}
	upper, lower := c.say(big, most, mark), c.say(small, most, date)
	out := piece{width: max(upper.width, lower.width) + 1.1*em, height: upper.height + lower.height + em*0.5}
	line := em * 0.08
	out.mark(Panel{Rectangle{line / 2, line / 2, out.width - line, out.height - line}, corners(em * 0.3), Paint{Stroke: white, Line: line}})
	out.put(upper, (out.width-upper.width)/2, em*0.2)
	out.put(lower, (out.width-lower.width)/2, em*0.2+upper.height)
	return out
}

// bandOf is the heading of a part: white on dark, with a count at the right.
func (c *sheet) bandOf(title, count string) piece {
	em := c.size.main
	style := c.main().with(Bold).inked(white).lying(slate)
	pad := em * 0.28
	aside := c.say(c.text().inked(white).lying(slate), c.column*0.4, count)
	text := c.say(style, c.column-aside.width-3*pad, title)
	out := piece{width: c.width, height: max(text.height, aside.height) + 2*pad}
	out.mark(Panel{Rectangle{0, 0, c.width, out.height}, corners(em * 0.22), Paint{Fill: slate}})
	out.put(text, c.margin, pad)
	out.put(aside, c.width-aside.width-2*pad, (out.height-aside.height)/2)
	return out
}
