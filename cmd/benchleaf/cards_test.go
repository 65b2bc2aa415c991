package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/cmd/internal/cache"
)

// Cards are given as they were put, by the next run; what nobody asks for goes, and what is damaged
// is not there.
func TestCardsAreKeptInPacks(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "cache")
	shops := []*shop{{folder: "/mill"}}
	open := func(program byte) *cards { return openCards(cache.At(folder, 1<<30), cache.Key{program}, shops) }
	card := func(i int) ([32]byte, []byte) {
		return [32]byte{byte(i), byte(i >> 8)}, bytes.Repeat([]byte(fmt.Sprintf("card %d ", i)), 5000)
	}
	const n = 200 // some 10 MB
	first := open(1)
	for i := range n {
		key, text := card(i)
		_, there := first.Get(key)
		require.False(t, there)
		first.Put(key, text)
	}
	first.close()
	packs := 0
	require.NoError(t, filepath.Walk(folder, func(_ string, info os.FileInfo, err error) error {
		if err == nil && info.Size() > fullPack/2 {
			packs++
		}
		return err
	}))
	assert.InDelta(t, 10, packs, 4, "packs of some megabyte")

	again := open(1)
	for i := range n / 2 {
		key, want := card(i)
		got, there := again.Get(key)
		require.True(t, there, "card %d", i)
		require.Equal(t, want, got)
	}
	again.close()
	third := open(1)
	key, _ := card(n - 1)
	_, there := third.Get(key)
	assert.False(t, there, "nobody asked for it in the run before")
	key, want := card(3)
	got, there := third.Get(key)
	require.True(t, there)
	require.Equal(t, want, got)

	other := open(2)
	_, there = other.Get(key)
	assert.False(t, there, "another program draws its own")

	require.NoError(t, filepath.Walk(folder, func(path string, info os.FileInfo, err error) error {
		if err == nil && info.Size() > fullPack/2 {
			return os.Truncate(path, info.Size()/2)
		}
		return err
	}))
	_, there = open(1).Get(key)
	assert.False(t, there, "its pack is torn")
}

// Where many small changes have left cards in many packs, they are drawn anew once.
func TestCardsDoNotLieInEverMorePacks(t *testing.T) {
	store := cache.At(filepath.Join(t.TempDir(), "cache"), 1<<30)
	most := 0
	for run := range 40 {
		c := openCards(store, cache.Key{1}, nil)
		for i := range 40 {
			key := [32]byte{byte(i)}
			if i == run {
				key[1] = 1 // one card says something else from now on
			} else if i < run {
				key[1] = 1
			}
			if _, there := c.Get(key); !there {
				c.Put(key, []byte(fmt.Sprint("card ", i)))
			}
		}
		c.close()
		packs := map[cache.Key]bool{}
		for _, at := range c.is {
			packs[at.Pack] = true
		}
		most = max(most, len(packs))
	}
	assert.LessOrEqual(t, most, morePacks)
	assert.Greater(t, most, 1)
}
