package compiler

import (
	"errors"
	"fmt"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/picture"
	"benchleaf/compiler/source"
)

// album holds the pictures of a compile by their paths, each read once.
type album map[string]*leaf

// leaf is one picture, or why there is none.
type leaf struct {
	picture *picture.Picture
	fault   error
}

// keptWhole is how many pictures keep their pixels: a shop of hundreds of photographs would take more
// memory than there is.
const keptWhole = 16

// leafThrough reads the pictures that some files show; nil where none was looked for.
func leafThrough(files []*model.File, given []source.Picture) album {
	if given == nil {
		return nil
	}
	there := map[string]source.Picture{}
	for _, one := range given {
		there[one.Path] = one
	}
	out := album{}
	var leaves []*leaf
	var sources []source.Picture
	for _, file := range files {
		for _, shown := range file.Pictures() {
			place := shown.Place()
			if out[place] != nil || !shown.Path.Set() || shown.Outside() || !shown.Readable() || strings.Contains(shown.Path.Text, `\`) { // told by other rules
				continue
			}
			out[place] = &leaf{}
			one, found := there[place]
			if !found {
				out[place].fault = errors.New("is not there")
				continue
			}
			leaves, sources = append(leaves, out[place]), append(sources, one)
		}
	}
	inParallel(len(leaves), func(i int) {
		switch one := sources[i]; {
		case one.Fault != "":
			leaves[i].fault = &picture.Fault{Says: one.Fault, Near: one.Near}
		case len(one.Bytes) > picture.MostBytes:
			leaves[i].fault = fmt.Errorf("is larger than %d MiB", picture.MostBytes>>20)
		default:
			leaves[i].picture, leaves[i].fault = picture.Read(one.Bytes)
			if leaves[i].fault == nil && i >= keptWhole {
				leaves[i].picture = leaves[i].picture.Lean(one.Bytes)
			}
		}
	})
	return out
}

// of is the picture that a file shows, or why there is none; neither where none was looked for.
func (a album) of(shown *model.Picture) (*picture.Picture, error) {
	one := a[shown.Place()]
	if one == nil {
		return nil, nil
	}
	return one.picture, one.fault
}
