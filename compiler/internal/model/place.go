package model

import "benchleaf/compiler/source"

// Place is where a thing of the machine lies on its outline.
type Place struct {
	Key    string // kind and name: "part/drain-plug"
	Title  string
	At     Spot
	Where  source.Place // of the key that says it
	Number int          // the same for every version and in every procedure of the machine
}

// Places lists what has a place on the machine of the job, in the order of its file. What
// another version has takes a number too, so that one number stands for one thing.
func (j *Job) Places() []Place {
	owner := j.File.machine
	if owner == nil {
		return nil
	}
	var out []Place
	number := 0
	for _, thing := range owner.things {
		if _, placed := spotOf(owner.index[key{thing.kind, thing.name}]); !placed {
			continue
		}
		number++
		var here Object
		if find, ok := lookups[thing.kind]; !ok || !find(j, thing.name, &here) {
			continue
		}
		if spot, placed := spotOf(here.placed()); placed {
			out = append(out, Place{Key: thing.kind + "/" + thing.name, Title: here.Words(), At: spot, Number: number, Where: here.placed().Key("at")})
		}
	}
	return out
}

// placed is the thing of an object that can have a place on an outline; nil where it is none.
func (o Object) placed() interface{ Key(string) source.Place } {
	switch {
	case o.Part != nil:
		return o.Part
	case o.Cavity != nil:
		return o.Cavity
	case o.Energy != nil:
		return o.Energy
	case o.Point != nil:
		return o.Point
	case o.Limit != nil:
		return o.Limit
	}
	return nil
}

// spotOf is the place of a thing; false where it has none.
func spotOf(thing any) (Spot, bool) {
	var spots []Spot
	switch thing := thing.(type) {
	case *Part:
		spots = thing.Spot
	case *Cavity:
		spots = thing.Spot
	case *Energy:
		spots = thing.Spot
	case *Lubricated:
		spots = thing.Spot
	case *Limit:
		spots = thing.Spot
	}
	if len(spots) == 0 {
		return Spot{}, false
	}
	return spots[0], true
}

// Key is the kind and the name of what an object is: "part/drain-plug"; empty for words.
func (o Object) Key() string {
	switch {
	case o.Part != nil && o.Part.Cover:
		return "cover/" + o.Part.Name
	case o.Part != nil:
		return "part/" + o.Part.Name
	case o.Cavity != nil:
		return "cavity/" + o.Cavity.Name
	case o.Energy != nil:
		return "energy/" + o.Energy.Name
	case o.Point != nil:
		return "point/" + o.Point.Name
	case o.Limit != nil:
		return "limit/" + o.Limit.Name
	}
	return ""
}
