package cache

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func keyOf(text string) Key { return sha256.Sum256([]byte(text)) }

func environment(pairs ...string) func(string) string {
	return func(name string) string {
		for i := 0; i < len(pairs); i += 2 {
			if pairs[i] == name {
				return pairs[i+1]
			}
		}
		return ""
	}
}

func TestWhatWasPutIsFound(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "a", "b")
	s := At(folder, Most)
	_, there := s.Get(keyOf("card"))
	assert.False(t, there)
	s.Put(keyOf("card"), []byte("one"))
	s.Put(keyOf("empty"), nil)
	s.Close()
	for _, again := range []*Store{s, At(folder, Most)} {
		got, there := again.Get(keyOf("card"))
		assert.True(t, there)
		assert.Equal(t, "one", string(got))
		got, there = again.Get(keyOf("empty"))
		assert.True(t, there)
		assert.Empty(t, got)
		_, there = again.Get(keyOf("another"))
		assert.False(t, there)
	}
	s.Put(keyOf("card"), []byte("two"))
	got, _ := s.Get(keyOf("card"))
	assert.Equal(t, "two", string(got))
	if runtime.GOOS != "windows" {
		require.NoError(t, filepath.Walk(folder, func(path string, info os.FileInfo, err error) error {
			assert.Zero(t, info.Mode().Perm()&0o077, "%s is private", path)
			return err
		}))
	}
}

func TestADamagedEntryIsNotThere(t *testing.T) {
	s := At(t.TempDir(), Most)
	key := keyOf("card")
	s.Put(key, []byte("the text of a card"))
	whole, err := os.ReadFile(s.path(key))
	require.NoError(t, err)
	damage := map[string][]byte{"nothing": nil, "longer": append(bytes.Clone(whole), 'x')}
	for i := range whole {
		other := bytes.Clone(whole)
		other[i] ^= 1
		damage[fmt.Sprintf("byte %d", i)] = other
		damage[fmt.Sprintf("cut at %d", i)] = whole[:i]
	}
	for what, text := range damage {
		require.NoError(t, os.WriteFile(s.path(key), text, 0o600))
		_, there := s.Get(key)
		assert.False(t, there, what)
	}
	s.Put(key, []byte("the text of a card"))
	got, there := s.Get(key)
	assert.True(t, there)
	assert.Equal(t, "the text of a card", string(got))

	s.Put(keyOf("another"), []byte("another text"))
	require.NoError(t, os.Rename(s.path(keyOf("another")), s.path(key)))
	_, there = s.Get(key)
	assert.False(t, there, "the entry of another key")
	require.NoError(t, os.Remove(s.path(key)))
	require.NoError(t, os.Mkdir(s.path(key), 0o700))
	_, there = s.Get(key)
	assert.False(t, there, "a folder")
	s.Put(key, []byte("more")) // cannot be, and is no error
}

func TestWhereItLies(t *testing.T) {
	t.Setenv(Variable, "")
	for _, name := range []string{"HOME", "XDG_CACHE_HOME", "LocalAppData"} {
		t.Setenv(name, filepath.Join(t.TempDir(), name))
	}
	base, err := os.UserCacheDir()
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(base, "benchleaf"), Open(os.Getenv, "").folder)
	if runtime.GOOS != "windows" {
		t.Setenv("XDG_CACHE_HOME", "")
		base, err = os.UserCacheDir()
		require.NoError(t, err)
		assert.Equal(t, filepath.Join(base, "benchleaf"), Open(os.Getenv, "").folder)
	}
	folder := t.TempDir()
	assert.Equal(t, filepath.Join(folder, "kept"), Open(environment(Variable, "kept"), folder).folder)
	assert.Equal(t, filepath.Join(folder, "kept"), Open(environment(Variable, filepath.Join(folder, "kept"), "HOME", "elsewhere"), "").folder)
	for name, env := range map[string]func(string) string{
		"turned off": environment(Variable, Off, "HOME", folder, "LocalAppData", folder),
		"no home":    environment(),
		"no path":    environment("HOME", "home", "XDG_CACHE_HOME", "cache", "LocalAppData", "local"),
	} {
		s := Open(env, folder)
		assert.Nil(t, s, name)
		s.Put(keyOf("card"), []byte("one"))
		_, there := s.Get(keyOf("card"))
		assert.False(t, there, name)
		s.Close()
	}
}

func TestAFolderThatOthersWriteIntoIsNotUsed(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("rights are of another kind there")
	}
	folder := t.TempDir()
	for _, mode := range []os.FileMode{0o777, 0o770, 0o702} {
		require.NoError(t, os.Chmod(folder, mode))
		assert.Nil(t, At(folder, Most), mode)
	}
	require.NoError(t, os.Chmod(folder, 0o755))
	assert.NotNil(t, At(folder, Most))
}

func TestWhatCannotBeWrittenIsNotKept(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "file"), nil, 0o600))
	for _, at := range []string{filepath.Join(folder, "file"), filepath.Join(folder, "file", "below")} {
		s := At(at, Most)
		s.Put(keyOf("card"), []byte("one"))
		_, there := s.Get(keyOf("card"))
		assert.False(t, there)
		s.Close()
	}
	if os.Geteuid() == 0 {
		t.Skip("root may write everywhere")
	}
	shut := filepath.Join(folder, "shut")
	require.NoError(t, os.Mkdir(shut, 0o500))
	s := At(shut, Most)
	s.Put(keyOf("card"), []byte("one"))
	_, there := s.Get(keyOf("card"))
	assert.False(t, there)
	s.Close()
}

// bytesIn is how much lies in a cache, its tally apart.
func bytesIn(t *testing.T, folder string) (total int64) {
	require.NoError(t, filepath.Walk(folder, func(path string, info os.FileInfo, err error) error {
		if err == nil && info.Mode().IsRegular() && info.Name() != tally {
			total += info.Size()
		}
		return err
	}))
	return total
}

func TestTheOldestEntriesGo(t *testing.T) {
	folder := t.TempDir()
	const most = 100_000
	content := bytes.Repeat([]byte("x"), 1000)
	old := time.Now().Add(-30 * 24 * time.Hour)
	for i := range 300 {
		s := At(folder, most)
		key := keyOf(fmt.Sprint(i))
		s.Put(key, content)
		at := old.Add(time.Duration(i) * time.Minute)
		require.NoError(t, os.Chtimes(s.path(key), at, at))
		s.Get(keyOf("0")) // is used all the time
		s.Close()
		if i%20 == 0 {
			assert.LessOrEqual(t, bytesIn(t, folder), int64(most))
		}
	}
	s := At(folder, most)
	for name, want := range map[string]bool{"0": true, "1": false, "150": false, "299": true} {
		_, there := s.Get(keyOf(name))
		assert.Equal(t, want, there, name)
	}
	assert.Greater(t, bytesIn(t, folder), int64(most/2), "not more than has to go")

	s.Put(keyOf("large"), bytes.Repeat(content, 26))
	_, there := s.Get(keyOf("large"))
	assert.False(t, there, "one entry does not drive out a quarter of the others")
}

func TestOnlyWhatIsOfTheCacheGoes(t *testing.T) {
	folder := t.TempDir()
	old := time.Now().Add(-48 * time.Hour)
	foreign := []string{"photo.jpg", "ab/photo.jpg", "notes/" + fmt.Sprintf("%062x", 1), "new-year.toml.d/x", "ab/" + fmt.Sprintf("%061x", 1)}
	for _, name := range append(foreign, "ab/new-123") {
		path := filepath.Join(folder, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, bytes.Repeat([]byte("x"), 10_000), 0o600))
		require.NoError(t, os.Chtimes(path, old, old))
	}
	s := At(folder, 4000)
	for i := range 20 {
		s.Put(keyOf(fmt.Sprint(i)), bytes.Repeat([]byte("x"), 500))
		s.Close()
	}
	for _, name := range foreign {
		assert.FileExists(t, filepath.Join(folder, name))
	}
	assert.NoFileExists(t, filepath.Join(folder, "ab/new-123"), "the draft of a program that was killed")
}

func TestADamagedTallyIsMadeAnew(t *testing.T) {
	folder := t.TempDir()
	for i, text := range []string{"x", "-5\n", "9223372036854775807\n9223372036854775807\n", "", string(bytes.Repeat([]byte("1\n"), mostTally))} {
		s := At(folder, Most)
		s.Put(keyOf("first"), []byte("one"))
		require.NoError(t, os.WriteFile(filepath.Join(folder, tally), []byte(text), 0o600))
		s.Put(keyOf(fmt.Sprint(i)), []byte("one"))
		s.Close()
		now, err := os.ReadFile(filepath.Join(folder, tally))
		require.NoError(t, err)
		total, ok := sum(now)
		assert.True(t, ok)
		if text != "" {
			assert.Equal(t, bytesIn(t, folder), total, "%.20q", text)
		}
	}
}

// Several programs, each of several hands, put and get at once: whatever is found is whole.
func TestManyAtOnce(t *testing.T) {
	folder := t.TempDir()
	var hands sync.WaitGroup
	for range 8 {
		hands.Go(func() {
			s := At(folder, 200_000)
			defer s.Close()
			for i := range 200 {
				name := fmt.Sprint(i % 20)
				want := bytes.Repeat([]byte(name), 2000)
				if got, there := s.Get(keyOf(name)); there {
					assert.True(t, bytes.Equal(want, got), name)
				}
				s.Put(keyOf(name), want)
			}
		})
	}
	hands.Wait()
	drafts, err := filepath.Glob(filepath.Join(folder, "*", draft+"*"))
	require.NoError(t, err)
	assert.Empty(t, drafts)
}
