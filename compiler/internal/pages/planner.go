package pages

import (
	"slices"
	"strconv"
	"strings"

	"benchleaf/compiler/internal/plan"
)

// planner lays one planner out: a row for each month, with a cell for each of its weeks.
type planner struct {
	sheet
	plan  plan.Planner
	month float64 // width of the names of the months
	cell  float64 // of a week
	sum   float64 // of the time at the right
	flat  bool    // number and days of a week stand on one line
	least float64 // height of a month that needs no more
}

// LayPlanner lays a planner out. What could not be shown as it should comes back as
// problems; the document is whole all the same.
func LayPlanner(content plan.Planner, look Look) (Document, []Problem) {
	look, common := begin(look, content.Words)
	p := &planner{sheet: common, plan: content}
	p.rule()
	labels := content.Words.Labels
	frame := frame{s: p.setter, width: p.width, height: look.Stock.safe(1).Height, again: p.again, what: labels.Planner, end: labels.EndOfSheet, filled: true,
		laws: []string{labels.Planner}, who: joined(" · ", content.Shop, content.Machine, content.Which, content.On)}
	document := Document{Title: content.Machine, Subject: labels.Planner, Author: content.Shop, Language: content.Words.Language, Date: content.On}
	head, key := item{piece: p.head()}, p.key()
	document.Sides = frame.share(slices.Concat([]item{head}, p.months(), key))
	const most, step = 7.0, 0.1                   // ems of the main type
	for least := most; least > 0; least -= step { // as high as costs no side
		p.least = least * p.size.main
		if sides := frame.share(slices.Concat([]item{head}, p.months(), key)); len(sides) <= len(document.Sides) {
			document.Sides = sides
			break
		}
	}
	return document, distinct(p.problems)
}

// rule measures the columns: the month, its weeks, and the time they take.
func (p *planner) rule() {
	pad := p.size.small * 0.5
	weeks := 1
	for _, month := range p.plan.Months {
		p.month = max(p.month, p.wideAs(p.main().with(Bold), month.Name), p.wideAs(p.small(), month.Year))
		p.sum = max(p.sum, p.widestWord(p.small().with(Bold), month.Work))
		weeks = max(weeks, month.Weeks)
	}
	p.month = min(p.month+2*pad, p.width*0.18)
	p.sum = min(p.sum+1.6*pad, p.width*0.18)
	p.cell = (p.width - p.month - p.sum) / float64(weeks)
	p.flat = true
	for _, week := range p.plan.Weeks {
		number, days := p.weekWords(week)
		p.flat = p.flat && p.wideAs(p.small().with(Bold), number)+p.wideAs(p.small(), days)+p.size.small*0.6 <= p.cell-2*p.inset()
	}
}

// inset is the blank at the edges of a week.
func (p *planner) inset() float64 { return p.size.small * 0.35 }

func (p *planner) weekWords(week plan.PlannerWeek) (number, days string) {
	return p.words.Labels.WeekShort + strconv.Itoa(week.Number), strconv.Itoa(week.From) + "–" + strconv.Itoa(week.To)
}

func (p *planner) head() piece {
	labels := p.words.Labels
	p.where = "head"
	stamp, year := piece{}, ""
	if p.plan.On != "" {
		stamp = p.stamp(p.plan.On, labels.Date)
	}
	if n := len(p.plan.Months); n > 0 {
		first, last := p.plan.Months[0], p.plan.Months[n-1]
		year = first.Name + " " + first.Year + " – " + last.Name + " " + last.Year
	}
	return p.titleBand(joined(" · ", p.plan.Shop, labels.Planner), p.plan.Machine, joined(" · ", p.plan.Which, year), stamp).named("head", "")
}

// months is the year; nothing where there is none.
func (p *planner) months() []item {
	labels := p.words.Labels
	p.where = labels.Planner
	var items []item
	for i := range p.plan.Months {
		made := item{piece: p.row(i).named("month", strconv.Itoa(i+1)), part: labels.Planner, dear: costList}
		if i == 0 {
			title := p.say(p.small().inked(grey), p.width, labels.HandsOn)
			top := piece{width: p.width, height: title.height}
			top.put(title, p.width-title.width, 0)
			items = append(items, item{piece: top.named("columns", ""), above: p.size.main * 0.4, stays: true})
			made.stays = true
		}
		items = append(items, made)
	}
	return items
}

// planned is a mark in the row of a month.
type planned struct {
	plan.PlannerMark
	from, to int  // weeks of the month its bar lies over
	at       int  // the week its box stands in; -1 for another month
	before   bool // its bar comes from the month before
	after    bool // and goes on in the next
	lane     int
	x        float64 // of the box or the letter
	chip     piece
}

// lanes finds a place for each mark of a month: a bar has its weeks for itself, boxes stand
// beside each other while there is room.
func (p *planner) lanes(month plan.PlannerMonth) (out []planned, n int) {
	end := month.First + month.Weeks
	var lanes [][]float64 // how much of each week is taken
	for _, mark := range p.plan.Marks {
		early, late := min(mark.Early, mark.At), max(mark.Late, mark.At)
		if month.Weeks == 0 || late < month.First || early >= end {
			continue
		}
		one := planned{PlannerMark: mark, from: max(early, month.First) - month.First, to: min(late, end-1) - month.First, at: -1, before: early < month.First, after: late >= end}
		if mark.At >= month.First && mark.At < end {
			one.at = mark.At - month.First
		}
		bar := early < late
		one.chip = p.chip(one, bar)
		room := one.chip.width + p.inset()
		if bar {
			room = p.cell
		}
		free := func(lane []float64) bool {
			for week := one.from; week <= one.to; week++ {
				if lane[week] > 0 && lane[week]+room > p.cell-p.inset()+tiny {
					return false
				}
			}
			return true
		}
		one.lane = slices.IndexFunc(lanes, free)
		if one.lane < 0 {
			one.lane = len(lanes)
			lanes = append(lanes, make([]float64, month.Weeks))
		}
		week := one.at
		if week < 0 {
			week = one.from
		}
		one.x = float64(week)*p.cell + p.inset() + lanes[one.lane][week]
		for week := one.from; week <= one.to; week++ {
			lanes[one.lane][week] += room
		}
		out = append(out, one)
	}
	return out, len(lanes)
}

// chip is a box to tick with the letter of a job; the letter alone where its week is in
// another month.
func (p *planner) chip(one planned, bar bool) piece {
	style := p.text().with(Bold)
	switch at := one.At; {
	case bar:
		style = style.lying(pale)
	case at >= 0 && at < len(p.plan.Weeks) && p.plan.Weeks[at].Past:
		style = style.lying(tint)
	}
	room := p.cell - 2*p.inset()
	out := piece{height: p.box()}
	if one.at < 0 {
		letter := p.fitting(p.small().inked(grey).lying(pale), room-2*p.inset(), one.Key)
		out.put(letter, p.inset(), (out.height-letter.height)/2)
		return out
	}
	gap := p.size.small * 0.25
	box := tick(p.box())
	out.put(box, 0, 0)
	key := one.Key
	if one.Times > 1 {
		key += "×" + strconv.Itoa(one.Times)
	}
	left := box.width + gap
	if one.Overdue {
		pad := p.size.small * 0.2
		letter := p.fitting(style.inked(white).lying(black), room-left-2*pad, key)
		out.mark(Panel{Rectangle{left, 0, letter.width + 2*pad, out.height}, corners(pad), Paint{Fill: black}})
		out.put(letter, left+pad, (out.height-letter.height)/2)
		out.width = left + letter.width + 2*pad
		return out
	}
	letter := p.fitting(style, room-left, key)
	out.put(letter, left, (out.height-letter.height)/2)
	return out
}

// fitting sets letters in type that goes into a room, the small one at the least; nothing
// where that does not.
func (p *planner) fitting(style kind, room float64, text string) piece {
	if p.wideAs(style, text) > room {
		style.size = p.size.small
	}
	if p.wideAs(style, text) <= room {
		return p.say(style, room, text)
	}
	p.problem("the week has no room for the letters of %q; a larger stock has", text)
	return piece{}
}

func (p *planner) box() float64 { return p.size.main }

// row is a month: its name, its weeks with what is to be done in them, and how long that takes.
func (p *planner) row(n int) piece {
	month := p.plan.Months[n]
	pad := p.size.small * 0.5
	marks, lanes := p.lanes(month)
	weeks := p.plan.Weeks[min(month.First, len(p.plan.Weeks)):min(month.First+month.Weeks, len(p.plan.Weeks))]
	heads := make([]piece, len(weeks))
	top := 0.0
	for i, week := range weeks {
		heads[i] = p.week(week)
		top = max(top, heads[i].height)
	}
	pitch := p.box() * 1.3
	name := p.name(month, n)
	work := p.workOf(month)
	out := piece{width: p.width}
	out.height = max(top+float64(max(lanes, 1))*pitch+p.box()*0.2, name.height+pad, work.height+pad, p.least)
	out.mark(Panel{Rectangle{0, 0, p.month, out.height}, corners(0), Paint{Fill: tint}})
	out.put(name, pad, (out.height-name.height)/2)
	out.put(work, p.width-work.width, (out.height-work.height)/2)
	for i, week := range weeks {
		x := p.month + float64(i)*p.cell
		if week.Past {
			out.mark(band(x, 0, p.cell, out.height, tint))
		}
		out.put(heads[i], x, 0)
	}
	inner := piece{}
	for _, one := range marks {
		y := top + float64(one.lane)*pitch + p.box()*0.1
		if one.Early < one.Late {
			inner.mark(p.bar(one, y))
		}
		inner.put(one.chip.named("mark", one.Key), one.x, y+p.box()*0.1)
	}
	out.put(inner, p.month, 0)
	for i := range month.Weeks + 1 {
		out.mark(band(p.month+float64(i)*p.cell-0.1, 0, 0.2, out.height, grey))
	}
	out.mark(band(p.width-p.sum-0.1, 0, 0.2, out.height, grey))
	out.mark(band(0, 0, p.width, 0.2, black), band(0, out.height-0.2, p.width, 0.2, black))
	return out
}

// workOf is the time of a month, hours over minutes where they do not go beside each other.
func (p *planner) workOf(month plan.PlannerMonth) piece {
	style := p.small().with(Bold)
	room := p.sum - p.size.small*0.4
	if p.wideAs(style, month.Work) <= room {
		return p.say(style, room, month.Work)
	}
	out := piece{width: room}
	for part := range strings.FieldsFuncSeq(month.Work, func(r rune) bool { return r == ' ' }) {
		line := p.say(style, room, part)
		out.put(line, max(0, room-line.width), out.height)
	}
	return out
}

// bar lies over the weeks a job may come in; its ends are round where it begins and ends.
func (p *planner) bar(one planned, y float64) Mark {
	r := p.size.small * 0.5
	left, right := float64(one.from)*p.cell+p.inset()*0.4, float64(one.to+1)*p.cell-p.inset()*0.4
	round := corners(r)
	if one.before {
		left, round[0], round[3] = float64(one.from)*p.cell, 0, 0
	}
	if one.after {
		right, round[1], round[2] = float64(one.to+1)*p.cell, 0, 0
	}
	return Panel{Rectangle{left, y + p.box()*0.15, right - left, p.box() * 0.9}, round, Paint{pale, grey, 0.12}}
}

// name is the month, and the year where that begins.
func (p *planner) name(month plan.PlannerMonth, n int) piece {
	room := p.month - p.size.small*0.6
	out := p.say(p.main().with(Bold).lying(tint), room, month.Name)
	if n == 0 || month.Year != p.plan.Months[n-1].Year {
		out = column(0, out, p.say(p.small().lying(tint), room, month.Year))
	}
	return out
}

// week is the head of a week: its number and its days, white on dark for the week that is now.
func (p *planner) week(week plan.PlannerWeek) piece {
	number, days := p.weekWords(week)
	bold, plain := p.small().with(Bold), p.small().inked(grey)
	switch {
	case week.Now:
		bold, plain = bold.inked(white).lying(slate), plain.inked(white).lying(slate)
	case week.Past:
		bold, plain = bold.inked(grey).lying(tint), plain.lying(tint)
	}
	room := p.cell - 2*p.inset()
	first, second := p.line(bold, room, number), p.line(plain, room, days)
	out := piece{width: p.cell}
	lead := p.size.small * 0.08
	words := piece{height: first.height + 2*lead}
	words.put(first, p.inset(), lead)
	if p.flat {
		words.put(second, p.cell-p.inset()-second.width, lead)
	} else {
		words.put(second, p.inset(), first.height)
	}
	if week.Now {
		out.mark(Panel{Rectangle{0, 0, p.cell, words.height}, corners(0), Paint{Fill: slate}})
	}
	out.put(words, 0, 0)
	out.height = words.height
	return out
}

// key says how the marks are to be read, and which job each letter stands for.
func (p *planner) key() []item {
	labels, em := p.words.Labels, p.size.main
	p.where = labels.ChartJobs
	items := []item{{piece: p.signs().named("legend", ""), above: em * 0.4, dear: costStage}}
	sum := ""
	if p.plan.Work != "" {
		sum = labels.HandsOn + " " + p.plan.Work
	}
	items = append(items, item{piece: p.bandOf(labels.ChartJobs, sum).named("section", labels.ChartJobs), above: em * 0.6, dear: costPart})
	columns, gap := 1, em
	if (p.width-gap)/2 > 24*p.size.text && len(p.plan.Jobs) > 1 {
		columns = 2
	}
	each := (p.width - gap*float64(columns-1)) / float64(columns)
	left := 0.0
	for _, job := range p.plan.Jobs {
		left = max(left, p.letter(job).width)
	}
	left += p.size.small * 0.6
	rows := 0
	for jobs := range slices.Chunk(p.plan.Jobs, columns) {
		out := piece{width: p.width}
		for i, job := range jobs {
			out.put(p.job(job, each, left).named("job", job.Key), float64(i)*(each+gap), 0)
		}
		out.height += em * 0.15
		out.mark(band(0, out.height-0.2, p.width, 0.2, rule))
		items = append(items, item{piece: out.named("jobs", strconv.Itoa(rows+1)), part: labels.ChartJobs, above: em * 0.2, stays: rows == 0, dear: costTable})
		rows++
	}
	keepTogether(items[2:])
	return items
}

// signs are samples of the marks, and how they are meant.
func (p *planner) signs() piece {
	labels, em := p.words.Labels, p.size.small
	sample := func(mark piece, text string) piece {
		out := piece{}
		words := p.say(p.small(), p.width-mark.width-em*0.5, text)
		out.put(mark, 0, max(0, (p.small().line()-mark.height)/2))
		out.put(words, mark.width+em*0.5, max(0, (mark.height-p.small().line())/2))
		return out.named("key", text)
	}
	bar := piece{width: em * 2.4, height: em}
	bar.mark(Panel{Rectangle{0, 0, bar.width, bar.height}, corners(em * 0.4), Paint{pale, grey, 0.15}})
	late := piece{width: em, height: em}
	late.mark(Panel{Rectangle{0, 0, em, em}, corners(em * 0.2), Paint{Fill: black}})
	out := flow(p.width, em, []piece{sample(bar, labels.PlannerBar), sample(late, labels.PlannerLate)})
	out.put(p.say(p.small().inked(grey), p.width, labels.PlannerNote), 0, out.height+em*0.2)
	out.width = p.width
	return out
}

// letter is the letter of a job on a dark ground.
func (p *planner) letter(job plan.PlannerJob) piece {
	em := p.size.text
	text := p.line(p.text().with(Bold).inked(white).lying(slate), p.width*0.2, job.Key)
	out := piece{height: text.height + 0.1*em}
	out.width = max(out.height, text.width+0.5*em)
	out.mark(Panel{Rectangle{0, 0, out.width, out.height}, corners(em * 0.2), Paint{Fill: slate}})
	out.put(text, (out.width-text.width)/2, 0.05*em)
	return out
}

// job is one line of the key.
func (p *planner) job(job plan.PlannerJob, width, left float64) piece {
	labels := p.words.Labels
	p.where = job.Key
	var spans []span
	put := func(label, text string, face Face) {
		if text == "" {
			return
		}
		if len(spans) > 0 {
			spans = append(spans, span{" ·\u00a0", Regular, grey})
		}
		if label != "" {
			spans = append(spans, span{label + " ", Regular, grey})
		}
		spans = append(spans, span{text, face, black})
	}
	put(labels.Every, job.Every, Regular)
	put(labels.HandsOn, job.Work, Regular)
	switch {
	case job.State == "overdue":
		put(job.Word, job.Day, Bold)
	case job.Day != "":
		put(labels.DueDay, job.Day, Bold)
	default:
		put("", job.Word, Bold)
	}
	put("", job.Note, Italic)
	letter := p.letter(job)
	words := column(0, p.say(p.text().with(Bold), width-left, job.Title), p.set(p.small(), width-left, spans))
	out := piece{width: width}
	out.put(letter, 0, 0)
	out.put(words, left, 0)
	return out
}
