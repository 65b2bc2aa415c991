package plan

import (
	"crypto/sha256"
	"encoding/binary"
	"fmt"
	"hash"
	"math"
	"reflect"
	"slices"
	"strings"
)

// Digest is a digest of some values by all that they hold: what is the same for reflect.DeepEqual
// has the same, in any run of the program. What has a Digest method of its own is known by that.
// The keys of maps are texts. There are no functions and channels in what a page says, and it panics
// where there is one.
func Digest(values ...any) [sha256.Size]byte {
	d := digester{hash: sha256.New()}
	for _, value := range values {
		d.value(reflect.ValueOf(value))
	}
	d.flush()
	return [sha256.Size]byte(d.hash.Sum(nil))
}

// digested is a value that tells its own digest.
type digested interface{ Digest() [sha256.Size]byte }

type digester struct {
	hash hash.Hash
	room [512]byte
	used int
}

func (d *digester) value(v reflect.Value) {
	if v.IsValid() && v.CanInterface() {
		if own, ok := v.Interface().(digested); ok && (v.Kind() != reflect.Pointer || !v.IsNil()) {
			sum := own.Digest()
			d.bytes('d', sum[:])
			return
		}
	}
	switch v.Kind() {
	case reflect.Invalid:
		d.number('0', 0)
	case reflect.Bool:
		n := uint64(0)
		if v.Bool() {
			n = 1
		}
		d.number('b', n)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		d.number('i', uint64(v.Int()))
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		d.number('u', v.Uint())
	case reflect.Float32, reflect.Float64:
		d.number('f', math.Float64bits(v.Float()))
	case reflect.String:
		d.text(v.String())
	case reflect.Slice, reflect.Array:
		n := v.Len()
		nothing := uint64(0)
		if v.Kind() == reflect.Slice && v.IsNil() {
			nothing = 1
		}
		d.number('l', uint64(n)<<1|nothing)
		for i := range n {
			d.value(v.Index(i))
		}
	case reflect.Struct:
		d.number('s', uint64(v.NumField()))
		for i := range v.NumField() {
			d.value(v.Field(i))
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(a.String(), b.String()) })
		d.number('m', uint64(len(keys)))
		for _, key := range keys {
			d.text(key.String())
			d.value(v.MapIndex(key))
		}
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			d.number('n', 0)
			return
		}
		d.number('p', 0)
		if v.Kind() == reflect.Interface {
			d.text(v.Elem().Type().String())
		}
		d.value(v.Elem())
	default:
		panic(fmt.Sprintf("plan: a page holds %s, which has no digest", v.Type()))
	}
}

func (d *digester) number(kind byte, n uint64) {
	d.space(9)
	d.room[d.used] = kind
	binary.LittleEndian.PutUint64(d.room[d.used+1:], n)
	d.used += 9
}

func (d *digester) text(text string) {
	d.number('t', uint64(len(text)))
	for len(text) > 0 {
		d.space(1)
		n := copy(d.room[d.used:], text)
		d.used, text = d.used+n, text[n:]
	}
}

func (d *digester) bytes(kind byte, data []byte) {
	d.number(kind, uint64(len(data)))
	d.space(len(data))
	d.used += copy(d.room[d.used:], data)
}

// space makes room for so many bytes, at most as many as there are.
func (d *digester) space(n int) {
	if d.used+n > len(d.room) {
		d.flush()
	}
}

func (d *digester) flush() {
	d.hash.Write(d.room[:d.used])
	d.used = 0
}
