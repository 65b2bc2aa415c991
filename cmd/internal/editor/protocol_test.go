package editor

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/textproto"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// line is an editor that says what it likes.
type line struct {
	t    *testing.T
	near net.Conn
	in   *bufio.Reader
	end  chan error
}

func dial(t *testing.T, open Open) *line {
	near, far := net.Pipe()
	l := &line{t, near, bufio.NewReader(near), make(chan error, 1)}
	go func() { l.end <- Serve(context.Background(), far, open) }()
	t.Cleanup(func() { near.Close() })
	require.NoError(t, near.SetDeadline(time.Now().Add(20*time.Second)))
	return l
}

func (l *line) say(body string) { l.raw(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(body), body)) }

func (l *line) raw(text string) {
	_, err := io.WriteString(l.near, text)
	require.NoError(l.t, err)
}

type reply struct {
	ID    any
	Error struct {
		Code    int
		Message string
	}
	Result json.RawMessage
}

// hear is the next answer; what the service says by itself is passed over.
func (l *line) hear() reply {
	for {
		header, err := textproto.NewReader(l.in).ReadMIMEHeader()
		require.NoError(l.t, err)
		length, err := strconv.Atoi(header.Get("Content-Length"))
		require.NoError(l.t, err)
		body := make([]byte, length)
		_, err = io.ReadFull(l.in, body)
		require.NoError(l.t, err)
		var out struct {
			Method string
			reply
		}
		require.NoError(l.t, json.Unmarshal(body, &out))
		if out.Method == "" {
			return out.reply
		}
	}
}

func alone(string) (Shop, error) { return Shop{Folder: "/shop", Lone: true}, nil }

const initialize = `{"jsonrpc":"2.0","id":0,"method":"initialize","params":{}}`

// What is no message, or comes at the wrong time, is answered with the protocol's code, and the
// service goes on.
func TestBrokenMessagesAreAnswered(t *testing.T) {
	l := dial(t, alone)
	ask := func(body string, code int, words string) {
		l.say(body)
		got := l.hear()
		assert.Equal(t, code, got.Error.Code, body)
		assert.Contains(t, got.Error.Message, words, body)
	}
	ask(`{"jsonrpc":"2.0","id":1,"method":"textDocument/hover","params":{}}`, codeNotInitialized, "initialize first")
	ask(initialize, 0, "")
	ask(initialize, codeRequest, "already")
	ask(`hello`, codeParse, "no JSON")
	ask(`3`, codeRequest, "no request")
	ask(`[{"jsonrpc":"2.0","id":1,"method":"shutdown"}]`, codeRequest, "one after the other")
	ask(`{"jsonrpc":"2.0","id":7}`, codeRequest, "no method")
	ask(`{"jsonrpc":"2.0","id":-7,"method":3}`, codeRequest, "no request")
	ask(`{"jsonrpc":"2.0","id":8,"method":"textDocument/hover","params":"x"}`, codeParams, "parameters of textDocument/hover")
	ask(`{"jsonrpc":"2.0","id":8,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///shop/x.toml"}}}`, codeParams, "is not open")
	ask(`{"jsonrpc":"2.0","id":8,"method":"foo/bar"}`, codeMethod, "does not know")
	l.raw("X: 1\r\n\r\n")
	assert.Equal(t, codeParse, l.hear().Error.Code)
	body := `{"jsonrpc":"2.0","id":9,"method":"shutdown"}`
	l.raw(fmt.Sprintf("content-type: x\r\ncontent-length: %d\r\n\r\n%s", len(body), body))
	assert.Equal(t, float64(9), l.hear().ID)
	l.say(`{"jsonrpc":"2.0","method":"exit"}`)
	assert.NoError(t, <-l.end)
}

func TestExitWithoutShutdownIsToldApart(t *testing.T) {
	l := dial(t, alone)
	l.say(initialize)
	l.hear()
	l.say(`{"jsonrpc":"2.0","method":"exit"}`)
	assert.ErrorIs(t, <-l.end, ErrNotShutDown)
}

// Where nobody can say where the next message begins, the service ends and says why.
func TestAStreamThatIsLost(t *testing.T) {
	for said, why := range map[string]string{
		"Content-Length: 1000000000000\r\n\r\n{}":      `"1000000000000" is no length of a message of at most 64 MiB`,
		"Content-Length: -1\r\n\r\n":                   `"-1" is no length`,
		"Content-Length: 99999999999999999999\r\n\r\n": "is no length",
		"hello\r\n\r\n":           `"hello" is no header of a message`,
		strings.Repeat("a", 5000): "longer than 4096 bytes",
		"Content-Length: " + strings.Repeat("1", 4000) + "\r\n\r\n": "is no length",
	} {
		l := dial(t, alone)
		l.say(initialize)
		l.hear()
		go func() { _, _ = io.WriteString(l.near, said) }() // it may not be read to its end
		err := <-l.end
		assert.ErrorContains(t, err, "what the editor says cannot be read any further: ")
		assert.ErrorContains(t, err, why)
		assert.Less(t, len(err.Error()), 200)
	}
}

// A request that is called off is answered so, and not in full.
func TestARequestIsCalledOff(t *testing.T) {
	held, there := make(chan struct{}), make(chan struct{}, 10)
	l := dial(t, func(string) (Shop, error) {
		there <- struct{}{}
		<-held
		return Shop{Folder: "/shop", Lone: true}, nil
	})
	l.say(initialize)
	l.hear()
	l.say(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///shop/x.toml","text":"benchleaf = 1\n"}}}`)
	<-there
	l.say(`{"jsonrpc":"2.0","id":"a","method":"textDocument/documentSymbol","params":{"textDocument":{"uri":"file:///shop/x.toml"}}}`)
	l.say(`{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":"a"}}`)
	l.say(`{"jsonrpc":"2.0","method":"$/cancelRequest","params":{"id":"b"}}`)
	close(held)
	assert.Equal(t, codeCancelled, l.hear().Error.Code)
}

// A text that was never saved is served alone, and a file of something else has no findings.
func TestTextsOfNoShop(t *testing.T) {
	c, folder := started(t, false)
	c.tell("textDocument/didOpen", openParams{documentItem{"untitled:Untitled-1", 1, "benchleaf = 1\n[tool.bin]\nkind = \"bucket\"\n"}})
	list := c.found("untitled:Untitled-1")
	require.Len(t, list, 1)
	assert.Equal(t, "language/unknown-word", list[0].Code)
	var outline []documentSymbol
	require.NoError(t, c.call("textDocument/documentSymbol", asked("untitled:Untitled-1", position{}), &outline))
	assert.NotEmpty(t, outline)
	c.tell("textDocument/didOpen", openParams{documentItem{"untitled:Untitled-2", 1, "[package]\nname = 7\n"}})
	assert.Empty(t, c.found("untitled:Untitled-2"))

	in := "untitled:" + filepath.ToSlash(folder) + "/drafts/oil.toml" // of the shop it lies in
	c.tell("textDocument/didOpen", openParams{documentItem{in, 1, "benchleaf = 1\n[part.plug]\nseals = [\"seal-22-27\", \"seal-22-28\"]\n"}})
	list = c.found(in)
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Message, "seal-22-28")
}

// What changes on the disk counts when something is asked, with no word of the editor.
func TestChangesOnTheDiskAreNoticed(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "spares.toml")
	require.NoError(t, os.WriteFile(name, []byte("benchleaf = 1\n"), 0o644))
	l := dial(t, func(string) (Shop, error) {
		text, err := os.ReadFile(name)
		stale := func() bool {
			now, _ := os.ReadFile(name)
			return string(now) != string(text)
		}
		return Shop{Folder: filepath.ToSlash(folder), Stale: stale, Files: []*source.File{source.New("spares.toml", text)}}, err
	})
	l.say(`{"jsonrpc":"2.0","id":0,"method":"initialize","params":{"capabilities":{"textDocument":{"diagnostic":{}}}}}`)
	l.hear()
	address := (&shop{Shop: Shop{Folder: filepath.ToSlash(folder)}}).address("plug.toml")
	l.say(fmt.Sprintf(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":%q,"text":"benchleaf = 1\nuse = [\"spares.toml\"]\n[part.plug]\nseals = [\"ring\"]\n"}}}`, address))
	pull := fmt.Sprintf(`{"jsonrpc":"2.0","id":1,"method":"textDocument/diagnostic","params":{"textDocument":{"uri":%q}}}`, address)
	l.say(pull)
	assert.Contains(t, string(l.hear().Result), "unknown-name")
	require.NoError(t, os.WriteFile(name, []byte("benchleaf = 1\n[spare.ring]\ntitle = \"ring\"\n"), 0o644))
	l.say(pull)
	assert.NotContains(t, string(l.hear().Result), "unknown-name")
}

// What entries of the service book name keeps its name; of a machine in the shop the title changes.
func TestWhatTheServiceBookNamesIsNotRenamed(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../../procedures")))
	read := readShop(folder)
	c := startedAt(t, false, func(name string) (Shop, error) {
		out, err := read(name)
		out.Booked = func(name string) (bool, error) { return name == "gear-460", nil }
		return out, err
	})
	rename := func(file, words string) error {
		address, text := c.open(folder, file)
		params := asked(address, at(text, words))
		params.NewName = "another"
		return c.call("textDocument/rename", params, nil)
	}
	assert.ErrorContains(t, rename("shop/units.toml", "[unit.deck"), "change its title")
	assert.ErrorContains(t, rename("shop/fluids.toml", "[fluid.gear-460"), `entries of service-book.toml name "gear-460"`)
	assert.NoError(t, rename("shop/spares.toml", "[spare.seal-22-27"), "no entry names it")
}
