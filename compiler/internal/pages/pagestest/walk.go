package pagestest

import (
	"fmt"
	"math"
	"strconv"

	"benchleaf/compiler/internal/pages"
	"benchleaf/compiler/internal/plan"
)

// Walk checks what holds on every side of every document, and gives the faults.
func Walk(doc pages.Document, look pages.Look) []string {
	var faults []string
	fault := func(side pages.Side, format string, args ...any) {
		faults = append(faults, fmt.Sprintf("side %d: ", side.Number)+fmt.Sprintf(format, args...))
	}
	for _, side := range doc.Sides {
		if err := Inside(side.Safe, pages.Rectangle{Width: side.Width, Height: side.Height}); err != "" {
			fault(side, "safe area %s", err)
		}
		walkBoxes(side.Boxes, side.Safe, func(format string, args ...any) { fault(side, format, args...) })
		walkMarks(side, look, func(format string, args ...any) { fault(side, format, args...) })
	}
	return faults
}

const tolerance = 0.01 // mm

func Inside(r, outer pages.Rectangle) string {
	switch {
	case r.X < outer.X-tolerance:
		return fmt.Sprintf("reaches %.2f mm over the left of %v", outer.X-r.X, outer)
	case r.Y < outer.Y-tolerance:
		return fmt.Sprintf("reaches %.2f mm over the top of %v", outer.Y-r.Y, outer)
	case r.Right() > outer.Right()+tolerance:
		return fmt.Sprintf("reaches %.2f mm over the right of %v", r.Right()-outer.Right(), outer)
	case r.Bottom() > outer.Bottom()+tolerance:
		return fmt.Sprintf("reaches %.2f mm below %v", r.Bottom()-outer.Bottom(), outer)
	}
	return ""
}

func Overlap(a, b pages.Rectangle) bool {
	return a.X < b.Right()-tolerance && b.X < a.Right()-tolerance && a.Y < b.Bottom()-tolerance && b.Y < a.Bottom()-tolerance
}

func walkBoxes(boxes []pages.Box, outer pages.Rectangle, fault func(string, ...any)) {
	for i, box := range boxes {
		if err := Inside(box.Place, outer); err != "" {
			fault("box %s %q %s", box.Kind, box.ID, err)
		}
		for _, other := range boxes[:i] {
			// A bar runs in the margin of the steps beside it.
			if box.Kind != "bar" && other.Kind != "bar" && Overlap(box.Place, other.Place) {
				fault("box %s %q %v lies over %s %q %v", box.Kind, box.ID, box.Place, other.Kind, other.ID, other.Place)
			}
		}
		walkBoxes(box.Boxes, box.Place, fault)
	}
}

// ink is the rectangle of a text from its capitals' height to its base line.
func InkOf(text pages.Text) pages.Rectangle {
	high := text.Face.CapHeight(text.Size)
	return pages.Rectangle{X: text.X, Y: text.Y - high, Width: text.Face.Width(text.Text, text.Size), Height: high}
}

func walkMarks(side pages.Side, look pages.Look, fault func(string, ...any)) {
	var texts []pages.Text
	var inks []pages.Rectangle
	var panels []pages.Panel
	for _, mark := range side.Marks {
		switch mark := mark.(type) {
		case pages.Panel:
			if err := Inside(mark.Rectangle, side.Safe); err != "" {
				fault("panel %v %s", mark.Rectangle, err)
			}
			if mark.Fill.On() {
				panels = append(panels, mark)
			}
		case pages.Image:
			if err := Inside(mark.Rectangle, side.Safe); err != "" {
				fault("image %v %s", mark.Rectangle, err)
			}
		case pages.Path:
			points := []pages.Point{mark.From}
			for _, step := range mark.Steps {
				points = append(points, step.To)
			}
			for _, at := range points {
				if err := Inside(pages.Rectangle{X: at.X, Y: at.Y}, side.Safe); err != "" {
					fault("path %s", err)
				}
			}
		case pages.Text:
			walkText(side, look, mark, panels, fault)
			ink := InkOf(mark)
			for i, other := range inks {
				if Overlap(ink, other) {
					fault("%q lies over %q", mark.Text, texts[i].Text)
				}
			}
			texts, inks = append(texts, mark), append(inks, ink)
		}
	}
}

func walkText(side pages.Side, look pages.Look, text pages.Text, panels []pages.Panel, fault func(string, ...any)) {
	ink := InkOf(text)
	if err := Inside(ink, side.Safe); err != "" {
		fault("%q %s", text.Text, err)
	}
	// 15 minutes of arc: NUREG-0700 rev. 3, 11.4.1.5-1, height at least distance × 0.004.
	if text.Face.CapHeight(text.Size) < 0.004*look.DistanceMM {
		fault("%q is %.2f mm high, to be read from %.0f mm", text.Text, text.Face.CapHeight(text.Size), look.DistanceMM)
	}
	ground := pages.InkOn | 0xFFFFFF
	for _, panel := range panels {
		if Overlap(panel.Rectangle, ink) {
			ground = panel.Fill
			if err := Inside(ink, panel.Rectangle); err != "" {
				fault("%q %s", text.Text, err)
			}
		}
	}
	if text.On != ground {
		fault("%q is said to lie on %06x and lies on %06x", text.Text, text.On, ground)
	}
	if ratio := Contrast(text.Ink, ground); ratio < 4.5 {
		fault("%q has a contrast of %.2f", text.Text, ratio)
	}
	for _, r := range text.Text {
		if !text.Face.Covers(r) {
			fault("%q has no glyph for %U", text.Text, r)
		}
	}
}

// Contrast is the ratio of WCAG 2.1, 1.4.3, written down anew from the published formula.
func Contrast(a, b pages.Ink) float64 {
	light := func(ink pages.Ink) float64 {
		sum, weights := 0.0, [3]float64{0.2126, 0.7152, 0.0722}
		for i, part := range [3]pages.Ink{ink >> 16 & 255, ink >> 8 & 255, ink & 255} {
			c := float64(part) / 255
			if c <= 0.03928 {
				sum += weights[i] * c / 12.92
			} else {
				sum += weights[i] * math.Pow((c+0.055)/1.055, 2.4)
			}
		}
		return sum
	}
	la, lb := light(a), light(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// Find lists the boxes of a kind, at any depth.
func Find(boxes []pages.Box, kind string) (out []pages.Box) {
	for _, box := range boxes {
		if box.Kind == kind {
			out = append(out, box)
		}
		out = append(out, Find(box.Boxes, kind)...)
	}
	return out
}

// Every step is there once, in order, with its messages on the side of its action.
func Every(doc pages.Document, card plan.Card) (faults []string) {
	next := 1
	for _, side := range doc.Sides {
		for _, step := range Find(side.Boxes, "step") {
			actions := Find(step.Boxes, "action")
			for _, action := range actions {
				if action.ID == strconv.Itoa(next) {
					next++
				} else if action.ID != strconv.Itoa(next-1) {
					faults = append(faults, fmt.Sprintf("side %d: action %s where %d is next", side.Number, action.ID, next))
				}
				for _, caution := range Find(step.Boxes, "caution") {
					if caution.Place.Bottom() > action.Place.Y {
						faults = append(faults, fmt.Sprintf("side %d: a message of step %s stands below its action", side.Number, action.ID))
					}
				}
			}
		}
	}
	steps := 0
	for _, section := range card.Sections {
		steps += len(section.Steps)
	}
	if next != steps+1 {
		faults = append(faults, fmt.Sprintf("%d steps on the sides, %d in the card", next-1, steps))
	}
	return faults
}
