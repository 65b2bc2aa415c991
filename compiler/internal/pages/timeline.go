package pages

import (
	"fmt"

	"benchleaf/compiler/internal/plan"
)

// timeline draws a job over its time: what is worked at, what waits, and what the machine is set
// to, row below row over one line of the time.
func (c *card) timeline(strip plan.Timeline) piece {
	em := c.size.text
	label := 0.0
	for _, row := range strip.Rows {
		label = max(label, c.say(c.small(), c.width*0.34, row.Label).width)
	}
	left := label + em*0.5
	scale := (c.width - left) / float64(max(1, strip.Length))
	out := piece{width: c.width}
	top := 0.0
	step := timelineStep(strip.Length)
	axis := c.small().line() + em*0.2
	var rows []piece
	height := axis
	for _, row := range strip.Rows {
		words := c.say(c.small(), label, row.Label)
		tall := max(words.height, em*0.95)
		one := piece{width: c.width, height: tall}
		one.put(words, 0, (tall-words.height)/2)
		for _, bar := range row.Bars {
			x, width := left+scale*float64(bar.From), max(0.4, scale*float64(bar.To-bar.From))
			one.mark(timelineBar(row.Kind, x, tall, width, em))
		}
		rows = append(rows, one.named("strip-row", row.Label))
		height += tall + em*0.18
	}
	for at := int64(0); at <= strip.Length; at += step {
		x := left + scale*float64(at)
		out.mark(band(min(x, c.width-0.2), axis-em*0.15, 0.2, height-axis+em*0.15, rule))
		words := c.say(c.small().inked(grey), c.width*0.2, c.clockTime(at))
		if x+words.width <= c.width+tiny {
			out.put(words, x, top)
		}
	}
	top += axis
	for _, row := range rows {
		out.put(row, 0, top)
		top += row.height + em*0.18
	}
	out.height = max(out.height, top)
	return out.named("strip", strip.Title)
}

// timelineBar is one bar: dark for work, grey for what only changes the machine, hollow for what
// waits, thin for what the machine is set to.
func timelineBar(kind string, x, tall, width, em float64) Panel {
	line := em * 0.1
	switch kind {
	case "work":
		return Panel{Rectangle{x, tall * 0.12, width, tall * 0.76}, corners(0), Paint{Fill: slate}}
	case "change":
		return Panel{Rectangle{x, tall * 0.12, width, tall * 0.76}, corners(0), Paint{Fill: grey}}
	case "wait":
		return Panel{Rectangle{x + line/2, tall*0.2 + line/2, max(line, width-line), tall*0.6 - line}, corners(0), Paint{white, black, line}}
	}
	return Panel{Rectangle{x, tall*0.5 - line, width, 2 * line}, corners(0), Paint{Fill: black}}
}

// timelineStep is the time between two marks of the line, in seconds: ten at the most.
func timelineStep(length int64) int64 {
	for _, step := range []int64{300, 600, 900, 1800, 3600, 7200, 14400} {
		if length/step <= 9 {
			return step
		}
	}
	return 28800
}

// clockTime is a time since the begin: 0:45, 1:30.
func (c *card) clockTime(seconds int64) string {
	return fmt.Sprintf("%d:%02d", seconds/3600, seconds%3600/60)
}
