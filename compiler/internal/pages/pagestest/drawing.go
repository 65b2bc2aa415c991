package pagestest

import (
	"bytes"
	"image"
	"image/color"
	"image/png"

	"benchleaf/compiler/internal/picture"
	"benchleaf/compiler/internal/plan"
)

// Drawing is a conveyor on two legs with places close to each other and far apart.
func Drawing() *plan.Drawing {
	out := &plan.Drawing{
		Outline: []plan.Spot{{X: 0, Y: 10}, {X: 100, Y: 10}, {X: 100, Y: 2}, {X: 118, Y: 2}, {X: 120, Y: 24}, {X: 104, Y: 26}, {X: 104, Y: 40}, {X: 96, Y: 40}, {X: 96, Y: 22}, {X: 20, Y: 22}, {X: 20, Y: 40}, {X: 12, Y: 40}, {X: 12, Y: 22}, {X: 0, Y: 20}},
		Lines:   [][]plan.Spot{{{X: 0, Y: 14}, {X: 100, Y: 14}}, {{X: 101, Y: 4}, {X: 112, Y: 4}, {X: 112, Y: 20}, {X: 101, Y: 20}, {X: 101, Y: 4}}},
		Rounds:  []plan.Round{{Spot: plan.Spot{X: 6, Y: 15}, Radius: 5}, {Spot: plan.Spot{X: 98, Y: 15}, Radius: 6}},
	}
	for i, one := range []struct {
		name string
		at   plan.Spot
	}{{"Isolator Q7", plan.Spot{X: 115, Y: 6}}, {"Chain guard", plan.Spot{X: 98, Y: 12}}, {"Fill plug", plan.Spot{X: 108, Y: 8}}, {"Drain plug", plan.Spot{X: 108, Y: 19}}, {"Breather", plan.Spot{X: 111, Y: 7}}, {"Sight glass", plan.Spot{X: 109, Y: 13}}, {"Tail shaft", plan.Spot{X: 6, Y: 15}}} {
		out.Callouts = append(out.Callouts, plan.Callout{Spot: one.at, Number: i + 1, Name: one.name, Steps: []int{i + 2, i + 9}})
	}
	return out
}

// Picture is four bands of grey with two places in it.
func Picture() *plan.Picture {
	return &plan.Picture{Title: "The plugs, seen from the walkway", Image: bands(640, 400), Callouts: []plan.Callout{
		{Spot: plan.Spot{X: 0.2, Y: 0.3}, Number: 1, Name: "Fill plug"}, {Spot: plan.Spot{X: 0.75, Y: 0.9}, Number: 2, Name: "Drain plug"}}}
}

func bands(width, height int) *picture.Picture {
	pixels := image.NewGray(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			pixels.SetGray(x, y, color.Gray{Y: uint8(60 + 40*(4*x/width))})
		}
	}
	var data bytes.Buffer
	_ = png.Encode(&data, pixels) // a buffer takes everything
	out, err := picture.Read(data.Bytes())
	if err != nil {
		panic(err) // written just above
	}
	return out
}

// Level is a gearbox with all that one can have.
func Level() *plan.Level {
	return &plan.Level{Height: 0.5, Ports: []plan.Port{{Name: "Breather", Kind: plan.VentPort}, {Name: "Fill plug", Kind: plan.FillPort, Height: 0.1}, {Name: "Sight glass", Kind: plan.LevelPort, Height: 0.5}, {Name: "Drain plug", Kind: plan.DrainPort, Height: 1}}}
}

func (g dice) callouts(n int) (out []plan.Callout) {
	for i := range g.upTo(n) {
		one := plan.Callout{Spot: plan.Spot{X: g.Float64(), Y: g.Float64()}, Number: i + 1, Name: g.text(g.upTo(6))}
		for range g.upTo(3) {
			one.Steps = append(one.Steps, 1+g.IntN(99))
		}
		out = append(out, one)
	}
	return out
}

func (g dice) drawing() *plan.Drawing {
	out := &plan.Drawing{}
	spots := func(n int) (spots []plan.Spot) {
		for range n {
			spots = append(spots, plan.Spot{X: g.Float64(), Y: g.Float64()})
		}
		return spots
	}
	out.Outline = spots(3 + g.upTo(20))
	for range g.upTo(4) {
		out.Lines = append(out.Lines, spots(g.upTo(5)))
	}
	for range g.upTo(3) {
		out.Rounds = append(out.Rounds, plan.Round{Spot: spots(1)[0], Radius: g.Float64() / 4})
	}
	out.Callouts = g.callouts(30)
	return out
}

func (g dice) picture() *plan.Picture {
	return &plan.Picture{Title: g.text(1 + g.upTo(9)), Image: bands(1+g.upTo(300), 1+g.upTo(300)), Callouts: g.callouts(12)}
}

func (g dice) level() *plan.Level {
	out := &plan.Level{Height: g.Float64()}
	kinds := []plan.PortKind{plan.FillPort, plan.VentPort, plan.LevelPort, plan.DrainPort}
	for i := range 2 + g.upTo(2) {
		out.Ports = append(out.Ports, plan.Port{Name: g.text(1 + g.upTo(4)), Height: g.Float64(), Kind: kinds[i]})
	}
	return out
}
