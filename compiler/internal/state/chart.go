package state

import (
	"slices"
)

// record keeps how everything stands after a step.
func (w *walk) record() {
	w.moments++
	moment := w.moments
	mark := func(kind, name, words string, level Level) {
		i := slices.IndexFunc(w.out.Tracks, func(t Track) bool { return t.Kind == kind && t.Name == name })
		if i < 0 {
			if level == AsBefore {
				return
			}
			w.out.Tracks = append(w.out.Tracks, Track{Name: name, Words: words, Kind: kind, Levels: make([]Level, moment-1, max(moment, len(w.job.Steps)))})
			i = len(w.out.Tracks) - 1
		}
		w.out.Tracks[i].Levels = append(w.out.Tracks[i].Levels, level)
	}
	for _, p := range w.known {
		kind := "part"
		if p.Cover {
			kind = "cover"
		}
		level := w.parts[p].level()
		if i := slices.IndexFunc(w.taps, func(t *tap) bool { return t.of == p && t.usually }); i >= 0 && level != Off {
			level = AsBefore
			if !w.taps[i].open {
				level = Shut
			}
		}
		if slices.ContainsFunc(w.parted, func(h *held) bool { return h.of == p }) {
			level = Off
		}
		mark(kind, p.Name, p.Words(), level)
	}
	for _, c := range w.pools {
		level := AsBefore
		if w.cavities[c].drained {
			level = Empty
		}
		mark("cavity", c.Name, c.Words(), level)
	}
	for _, e := range w.sources {
		mark("energy", e.Name, e.Words(), w.energies[e].level())
	}
	for _, h := range w.parted {
		if h.of == nil { // of a part its own strip tells it
			mark("parted", h.name, h.name, Off)
		}
	}
	for _, h := range w.slack {
		mark("slack", h.name, h.name, Loose)
	}
	for i := range w.out.Tracks { // what is no longer there stands as before
		for len(w.out.Tracks[i].Levels) < moment {
			w.out.Tracks[i].Levels = append(w.out.Tracks[i].Levels, w.liftOf(w.out.Tracks[i]))
		}
	}
	for _, h := range w.raised {
		if !slices.ContainsFunc(w.out.Tracks, func(t Track) bool { return t.Kind == "raised" && t.Name == plain(h.name) }) {
			track := Track{Name: plain(h.name), Words: h.name, Kind: "raised", Levels: make([]Level, moment)}
			track.Levels[moment-1] = h.level()
			w.out.Tracks = append(w.out.Tracks, track)
		}
	}
}

func (w *walk) liftOf(t Track) Level {
	for _, h := range w.raised {
		if t.Kind == "raised" && t.Name == plain(h.name) {
			return h.level()
		}
	}
	return AsBefore
}

func (p *part) level() Level {
	switch {
	case p.off > 0:
		return Off
	case p.open:
		return Open
	case p.loose, p.hand:
		return Loose
	}
	return AsBefore
}

func (e *energy) level() Level {
	switch {
	case e.cut && e.proved:
		return Proved
	case e.cut:
		return Cut
	}
	return AsBefore
}

func (h *held) level() Level {
	if h.supports {
		return Stands
	}
	return Raised
}

// chart makes every track as long as the job.
func (w *walk) chart() {
	for i := range w.out.Tracks {
		for len(w.out.Tracks[i].Levels) < len(w.job.Steps) {
			w.out.Tracks[i].Levels = append(w.out.Tracks[i].Levels, AsBefore)
		}
	}
}
