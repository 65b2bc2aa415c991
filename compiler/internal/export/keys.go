package export

import (
	"fmt"
	"math/big"
	"reflect"
	"strings"

	"benchleaf/compiler/internal/model"
	"benchleaf/compiler/internal/quantity"
	"benchleaf/schema"
)

// keysOf are the keys of a table of the language as the model holds them: thing points to a
// struct whose fields name their keys. What differs for a version is already in its place, and
// verbs are told with their steps.
func keysOf(table string, thing any) Keys {
	layout, _ := schema.Find(table)
	value := reflect.ValueOf(thing).Elem()
	out := Keys{}
	for i := range value.NumField() {
		name := value.Type().Field(i).Tag.Get("key")
		key, known := layout.Key(name)
		if !known {
			continue
		}
		if told := keyOf(key, value.Field(i).Interface()); told != nil {
			out[name] = told
		}
	}
	return out
}

// keyOf is the value of a key; nil where it is not written.
func keyOf(key schema.Key, value any) any {
	switch value := value.(type) {
	case model.Text:
		if value.Set() {
			return textOf(key, value)
		}
	case model.List:
		if value.Given {
			out := []string{}
			for _, item := range value.Items {
				out = append(out, textOf(key, item))
			}
			return out
		}
	case model.Amount:
		if value.Set() {
			return amountOf(value)
		}
	case []model.Amount:
		if value != nil {
			out := []*Amount{}
			for _, one := range value {
				if one.Set() {
					out = append(out, amountOf(one))
				}
			}
			return out
		}
	case model.Whole:
		if value.N > 0 {
			return value.N
		}
	case []model.Whole:
		if value != nil {
			out := []int{}
			for _, one := range value {
				out = append(out, one.N)
			}
			return out
		}
	case model.Flag:
		if value.At.Known() {
			return value.On
		}
	case []model.Spot:
		switch {
		case len(value) == 0:
		case key.Kind == schema.Point:
			return spots(value)[0]
		default:
			return spots(value)
		}
	case [][]model.Spot:
		if value != nil {
			out := [][][2]float64{}
			for _, line := range value {
				out = append(out, spots(line))
			}
			return out
		}
	case []model.Round:
		if value != nil {
			out := [][3]float64{}
			for _, one := range value {
				out = append(out, [3]float64{one.X, one.Y, one.Radius})
			}
			return out
		}
	case []model.Used:
		if value != nil {
			out := []Supplied{}
			for _, one := range value {
				out = append(out, Supplied{one.Name.Name(), one.Count, set(one.Amount)})
			}
			return out
		}
	case []model.Override:
	case *model.Picture:
		if value != nil {
			return keysOf(key.Of, value)
		}
	case *model.Adapter:
		if value != nil {
			return keysOf(key.Of, value)
		}
	default: // a list of tables
		list := reflect.ValueOf(value)
		if list.Kind() != reflect.Slice || list.Type().Elem().Kind() != reflect.Pointer {
			panic(fmt.Sprintf("export: the key %s is not told", key.Name))
		}
		if !list.IsNil() {
			out := []Keys{}
			for i := range list.Len() {
				out = append(out, keysOf(key.Of, list.Index(i).Interface()))
			}
			return out
		}
	}
	return nil
}

// textOf is a text; of a name, the short name, unless it may be a machine in plain words.
func textOf(key schema.Key, text model.Text) string {
	if (key.Kind == schema.Name || key.Kind == schema.Names) && key.Of != "machine" {
		return text.Name()
	}
	return text.Text
}

func spots(list []model.Spot) [][2]float64 {
	out := [][2]float64{}
	for _, one := range list {
		out = append(out, [2]float64{one.X, one.Y})
	}
	return out
}

// set is an amount where it was written, and nil where not.
func set(amount model.Amount) *Amount {
	if !amount.Set() {
		return nil
	}
	return amountOf(amount)
}

func amountOf(amount model.Amount) *Amount {
	out := &Amount{Text: strings.TrimSpace(amount.Text.Text)}
	if !amount.OK || amount.Dimension == quantity.None {
		return out
	}
	out.Text = amount.Plain()
	out.Dimension, out.Shape, out.Unit = amount.Dimension.String(), amount.Shape.String(), amount.Unit.Symbol
	out.SI = &SI{}
	bound := func(base *big.Rat, there bool, own, si **float64) {
		if !there {
			return
		}
		in, _ := amount.Unit.FromBase(base).Float64()
		value, unit := amount.Dimension.SI(base)
		told, _ := value.Float64()
		*own, *si, out.SI.Unit = &in, &told, unit
	}
	low, bounded := amount.Min()
	high, topped := amount.Max()
	bound(low, bounded, &out.Low, &out.SI.Low)
	bound(high, topped, &out.High, &out.SI.High)
	return out
}
