package assist

import "benchleaf/schema"

// holding is what the keys of a table are.
type holding int

const (
	unknown  holding = iota // the language has no such table
	keyed                   // keys of a table of the language
	named                   // names of things, [part.NAME]
	versions                // versions of the machine
	counted                 // names with how many or how much
)

// shape is a table by the language.
type shape struct {
	holds  holding
	layout schema.Table // of keyed; of named and versions, what each name holds
	key    schema.Key   // that made the table
	second bool         // in a second reading
}

func top() shape {
	layout, _ := schema.Find("file")
	return shape{holds: keyed, layout: layout}
}

// find is the key of a shape by its name.
func (s shape) find(name string) (schema.Key, bool) {
	if s.holds != keyed {
		return schema.Key{}, false
	}
	key, known := s.layout.Key(name)
	if known && key.Kind == schema.Again {
		file, _ := schema.Find("file")
		return file.Key(name)
	}
	return key, known
}

// down is the table that stands under a key or a name; of a list of tables each of them.
func (s shape) down(name string) shape {
	switch s.holds {
	case named, versions:
		return shape{holds: keyed, layout: s.layout, key: s.key, second: s.second}
	case keyed:
		key, known := s.find(name)
		if !known {
			return shape{}
		}
		out := shape{key: key, second: s.second || s.layout.Name == "file" && key.Of == "second-reading"}
		out.layout, _ = schema.Find(key.Of)
		switch key.Kind {
		case schema.Sub, schema.Subs:
			out.holds = keyed
		case schema.Named:
			out.holds = named
		case schema.Overrides:
			out.holds = versions
		case schema.Quantity:
			out.holds = counted
		}
		return out
	}
	return shape{}
}

// under is the shape that a path leads to.
func under(path []string) shape {
	out := top()
	for _, name := range path {
		out = out.down(name)
	}
	return out
}
