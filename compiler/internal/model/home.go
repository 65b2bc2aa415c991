package model

import (
	"cmp"
	"slices"
)

// homeKinds are the kinds of things that a file can describe by name, so that others name them.
var homeKinds = append(slices.Clone(machineKinds), "tool", "fluid", "supply", "spare", "caution")

// Homes are the files in which a thing of each kind can be described so that the file knows it, the
// likeliest first. What belongs to a machine stands where the machine is described. All else stands
// where most of its kind stand, or in the shop file; in a file of its own kind, as a library, it
// stays. The file itself is always among them. Of a
// file that cannot be read they are not known.
func (f *File) Homes() map[string][]*File {
	out := map[string][]*File{}
	if f.unread {
		return out
	}
	for _, kind := range homeKinds {
		homes := []*File{f}
		switch {
		case slices.Contains(machineKinds, kind):
			if f.machine != nil && f.machine != f {
				homes = []*File{f.machine, f}
			}
		case f.Procedure != nil || f.Machine != nil:
			homes = append(f.libraries(kind), f)
		}
		out[kind] = homes
	}
	return out
}

// libraries are the files that a file takes things of a kind from, that with the most of them first;
// without any, the shop file. Files of machines and procedures are none.
func (f *File) libraries(kind string) []*File {
	count := map[*File]int{}
	var out, shop []*File
	for _, layer := range f.layers {
		if layer == f || layer.Procedure != nil || layer.Machine != nil {
			continue
		}
		for _, thing := range layer.things {
			if thing.kind == kind {
				count[layer]++
			}
		}
		if count[layer] > 0 {
			out = append(out, layer)
		} else if layer.Shop != nil {
			shop = append(shop, layer)
		}
	}
	if len(out) == 0 {
		return shop
	}
	slices.SortStableFunc(out, func(a, b *File) int { return cmp.Compare(count[b], count[a]) })
	return out
}
