package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/gob"
	"maps"
	"slices"
	"sync"

	"benchleaf/cmd/internal/cache"
)

// A card that says what it said is not drawn again. Cards are kept many to an entry of the cache, a
// pack, since a file for each would take as long as drawing it; a register says which card lies
// where. It is of one program and of the shops that a build reads.

// A pack is full at fullPack bytes, and mostOpen packs are held while cards are taken out of them.
// Where cards lie in more than morePacks times as many packs as they would fill, they are drawn anew.
const (
	fullPack  = 1 << 20
	mostOpen  = 8
	morePacks = 4
)

// spot is where a card lies.
type spot struct {
	Pack     cache.Key
	From, To int
}

// cards are those that this program drew before, under what they say.
type cards struct {
	of       *cache.Store
	register cache.Key

	lock sync.Mutex
	was  map[cache.Key]spot // by the register as it was read
	is   map[cache.Key]spot // of those that were asked for
	open []pack             // that are taken out of, the last one used last
	made []byte             // of the pack that is being filled
	new  []cache.Key        // the cards in it, in order
	ends []int
}

type pack struct {
	key  cache.Key
	text []byte
}

func openCards(of *cache.Store, program cache.Key, shops []*shop) *cards {
	all := parts{sha256.New()}
	all.add("cards", program[:])
	for _, s := range shops {
		all.add(s.folder)
	}
	c := &cards{of: of, register: all.key(), was: map[cache.Key]spot{}, is: map[cache.Key]spot{}}
	if text, ok := of.Get(c.register); ok && gob.NewDecoder(bytes.NewReader(text)).Decode(&c.was) != nil {
		c.was = map[cache.Key]spot{}
	}
	return c
}

// Get gives a card.
func (c *cards) Get(says [32]byte) ([]byte, bool) {
	c.lock.Lock()
	defer c.lock.Unlock()
	at, known := c.was[says]
	if !known {
		return nil, false
	}
	text, ok := c.taken(at.Pack)
	if !ok || at.From < 0 || at.From > at.To || at.To > len(text) {
		return nil, false
	}
	c.is[says] = at
	return text[at.From:at.To], true
}

// taken is a pack, held until others were used since.
func (c *cards) taken(key cache.Key) ([]byte, bool) {
	if i := slices.IndexFunc(c.open, func(one pack) bool { return one.key == key }); i >= 0 {
		one := c.open[i]
		c.open = append(slices.Delete(c.open, i, i+1), one)
		return one.text, true
	}
	text, ok := c.of.Get(key)
	if !ok {
		return nil, false
	}
	if len(c.open) == mostOpen {
		c.open = slices.Delete(c.open, 0, 1)
	}
	c.open = append(c.open, pack{key, text})
	return text, true
}

// Put keeps a card.
func (c *cards) Put(says [32]byte, data []byte) {
	c.lock.Lock()
	defer c.lock.Unlock()
	c.made = append(c.made, data...)
	c.new, c.ends = append(c.new, says), append(c.ends, len(c.made))
	if len(c.made) >= fullPack {
		c.put()
	}
}

// put keeps the pack that is being filled. Its key is the digest of what is in it, so a register never
// means another.
func (c *cards) put() {
	if len(c.new) == 0 {
		return
	}
	all := parts{sha256.New()}
	all.add("pack", c.made)
	key, from := all.key(), 0
	for i, says := range c.new {
		c.is[says] = spot{key, from, c.ends[i]}
		from = c.ends[i]
	}
	c.of.Put(key, c.made)
	c.made, c.new, c.ends = nil, nil, nil
}

// close keeps where the cards lie that were asked for.
func (c *cards) close() {
	if c == nil {
		return
	}
	c.lock.Lock()
	defer c.lock.Unlock()
	c.put()
	packs, size := map[cache.Key]bool{}, 0
	for _, at := range c.is {
		packs[at.Pack] = true
		size += at.To - at.From
	}
	if len(packs) > morePacks*(1+size/fullPack) {
		clear(c.is)
	}
	if maps.Equal(c.is, c.was) {
		return
	}
	var text bytes.Buffer
	if gob.NewEncoder(&text).Encode(c.is) == nil {
		c.of.Put(c.register, text.Bytes())
	}
}
