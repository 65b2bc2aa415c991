package plan

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"benchleaf/compiler/internal/picture"
)

// Every value of a card counts: a card of which all is filled in has another digest for each value
// that is changed, and the same one as its copy.
func TestDigestSeesEveryValueOfACard(t *testing.T) {
	var card, copied Card
	filled(reflect.ValueOf(&card).Elem())
	filled(reflect.ValueOf(&copied).Elem())
	require.Equal(t, card, copied)
	sum := Digest(card, 1.5)
	require.Equal(t, sum, Digest(copied, 1.5))
	require.NotEqual(t, sum, Digest(card, 1.25))
	require.NotEqual(t, Digest("ab", "c"), Digest("a", "bc"))
	require.NotEqual(t, Digest([]string(nil)), Digest([]string{}))
	seen := map[[32]byte]string{sum: "the card"}
	n := 0
	var each func(v reflect.Value, path string)
	each = func(v reflect.Value, path string) {
		change := func(changed, back func()) {
			changed()
			one := Digest(card, 1.5)
			require.Empty(t, seen[one], "%s has the digest of another", path)
			seen[one] = path
			n++
			back()
		}
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					each(v.Field(i), path+"."+v.Type().Field(i).Name)
				}
			}
		case reflect.Slice:
			was := reflect.ValueOf(v.Interface())
			change(func() { v.Set(reflect.Append(was, reflect.Zero(v.Type().Elem()))) }, func() { v.Set(was) })
			each(v.Index(0), path+"[0]")
		case reflect.Array:
			each(v.Index(0), path+"[0]")
		case reflect.Map:
			key := v.MapKeys()[0]
			was := v.MapIndex(key)
			change(func() { v.SetMapIndex(key, reflect.Zero(v.Type().Elem())) }, func() { v.SetMapIndex(key, was) })
		case reflect.Pointer:
			if v.IsNil() { // a picture
				return
			}
			was := reflect.ValueOf(v.Interface())
			change(func() { v.SetZero() }, func() { v.Set(was) })
			each(v.Elem(), path)
		case reflect.String:
			was := v.String()
			change(func() { v.SetString(was + "x") }, func() { v.SetString(was) })
		case reflect.Bool:
			change(func() { v.SetBool(false) }, func() { v.SetBool(true) })
		case reflect.Int, reflect.Int64:
			change(func() { v.SetInt(2) }, func() { v.SetInt(1) })
		case reflect.Float64:
			change(func() { v.SetFloat(2) }, func() { v.SetFloat(1) })
		case reflect.Interface:
		default:
			require.Fail(t, "no such value is known", "%s is %s", path, v.Kind())
		}
	}
	each(reflect.ValueOf(&card).Elem(), "card")
	require.Greater(t, n, 150, "values of a card")
}

var imageType = reflect.TypeFor[*picture.Picture]()

// filled gives every value something that is not nothing.
func filled(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && v.Field(i).Type() != imageType {
				filled(v.Field(i))
			}
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
		filled(v.Index(0))
	case reflect.Array:
		filled(v.Index(0))
	case reflect.Map:
		v.Set(reflect.MakeMap(v.Type()))
		one := reflect.New(v.Type().Elem()).Elem()
		filled(one)
		v.SetMapIndex(reflect.ValueOf("key").Convert(v.Type().Key()), one)
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		filled(v.Elem())
	case reflect.String:
		v.SetString("word")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int, reflect.Int64:
		v.SetInt(1)
	case reflect.Float64:
		v.SetFloat(1)
	case reflect.Interface:
	default:
		panic(fmt.Sprint("no such value is known: ", v.Kind()))
	}
}
