package editor

import (
	"context"
	"encoding/json"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// client is an editor.
type client struct {
	t         *testing.T
	conn      *jsonrpc2.Conn
	published chan publishParams
	shown     chan string
}

func (c *client) Handle(_ context.Context, _ *jsonrpc2.Conn, request *jsonrpc2.Request) {
	switch request.Method {
	case "textDocument/publishDiagnostics":
		var one publishParams
		assert.NoError(c.t, json.Unmarshal(*request.Params, &one))
		c.published <- one
	case "window/showMessage":
		c.shown <- string(*request.Params)
	}
}

func (c *client) call(method string, params, into any) error {
	return c.conn.Call(context.Background(), method, params, into)
}

func (c *client) tell(method string, params any) {
	require.NoError(c.t, c.conn.Notify(context.Background(), method, params))
}

// found waits for the findings of a file.
func (c *client) found(address string) []diagnostic {
	for {
		select {
		case one := <-c.published:
			if one.URI == address {
				return one.Diagnostics
			}
		case <-time.After(10 * time.Second):
			require.Fail(c.t, "no findings came")
		}
	}
}

// started is a client at a service for a copy of the demonstration shop.
func started(t *testing.T, pulls bool) (*client, string) {
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../../procedures")))
	return startedAt(t, pulls, readShop(folder)), folder
}

// startedAt is a client at a service that reads a folder so.
func startedAt(t *testing.T, pulls bool, open Open) *client {
	near, far := net.Pipe()
	ended := make(chan error, 1)
	go func() { ended <- Serve(context.Background(), far, open) }()
	c := &client{t: t, published: make(chan publishParams, 1000), shown: make(chan string, 10)}
	c.conn = jsonrpc2.NewConn(context.Background(), jsonrpc2.NewBufferedStream(near, jsonrpc2.VSCodeObjectCodec{}), c)
	capabilities := map[string]any{}
	if pulls {
		capabilities["textDocument"] = map[string]any{"diagnostic": map[string]any{}}
	}
	var told map[string]any
	require.NoError(t, c.call("initialize", map[string]any{"capabilities": capabilities}, &told))
	require.Contains(t, told, "capabilities")
	c.tell("initialized", map[string]any{})
	t.Cleanup(func() {
		require.NoError(t, c.call("shutdown", nil, nil))
		assert.Error(t, c.call("textDocument/hover", placeParams{}, nil), "nothing is answered after shutdown")
		c.tell("exit", nil)
		select {
		case err := <-ended:
			if err != nil {
				assert.ErrorIs(t, err, jsonrpc2.ErrClosed)
			}
		case <-time.After(10 * time.Second):
			assert.Fail(t, "the service does not end")
		}
	})
	return c
}

// readShop reads every file of a folder as its shop.
func readShop(folder string) Open {
	return func(string) (Shop, error) {
		out := Shop{Folder: filepath.ToSlash(folder)}
		err := filepath.WalkDir(folder, func(path string, entry os.DirEntry, err error) error {
			if err != nil || entry.IsDir() || filepath.Ext(path) != ".toml" || entry.Name() == "service-book.toml" {
				return err
			}
			text, err := os.ReadFile(path)
			name, _ := filepath.Rel(folder, path)
			out.Files = append(out.Files, source.New(filepath.ToSlash(name), text))
			return err
		})
		return out, err
	}
}

// at is the place behind some words of a text, as editors count it.
func at(text, words string) position {
	offset := strings.Index(text, words) + len(words)
	return positionOf(source.New("x.toml", []byte(text)), offset)
}

func (c *client) open(folder, name string) (address, text string) {
	read, err := os.ReadFile(filepath.Join(folder, name))
	require.NoError(c.t, err)
	address = (&shop{Shop: Shop{Folder: filepath.ToSlash(folder)}}).address(name)
	c.tell("textDocument/didOpen", openParams{documentItem{address, 1, string(read)}})
	return address, string(read)
}

func (c *client) change(address string, version int, where *span, text string) {
	var params changeParams
	params.Document = documentID{address, &version}
	params.Changes = append(params.Changes, struct {
		Range *span  `json:"range"`
		Text  string `json:"text"`
	}{where, text})
	c.tell("textDocument/didChange", params)
}

func asked(address string, at position) placeParams {
	return placeParams{Document: documentID{URI: address}, Position: at}
}

// What is typed and not saved is found, and a quick fix puts it right.
func TestFindingsComeAsYouType(t *testing.T) {
	c, folder := started(t, false)
	address, text := c.open(folder, "log-deck-gearbox-oil.toml")
	require.Empty(t, c.found(address))
	place := at(text, `remove = "drain-plu`)
	c.change(address, 2, &span{place, position{place.Line, place.Character + 1}}, "x") // drain-plux
	list := c.found(address)
	require.NotEmpty(t, list)
	i := slices.IndexFunc(list, func(d diagnostic) bool { return d.Code == "reference/unknown-name" })
	require.GreaterOrEqual(t, i, 0, "%v", list)
	assert.Equal(t, 1, list[i].Severity)
	assert.Equal(t, place.Line, list[i].Range.Start.Line)
	assert.Contains(t, list[i].Message, `"drain-plux"`)

	params := asked(address, place)
	params.Range = list[i].Range
	var actions []codeAction
	require.NoError(t, c.call("textDocument/codeAction", params, &actions))
	require.NotEmpty(t, actions)
	assert.Equal(t, `Write "drain-plug"`, actions[0].Title)
	atCursor := asked(address, place)
	atCursor.Range = span{position{Line: place.Line}, position{Line: place.Line}}
	var same []codeAction
	require.NoError(t, c.call("textDocument/codeAction", atCursor, &same))
	assert.Equal(t, actions, same, "the cursor stands at the begin of the line")
	atCursor.Range.Start.Line, atCursor.Range.End.Line = place.Line+1, place.Line+1
	require.NoError(t, c.call("textDocument/codeAction", atCursor, &same))
	assert.Empty(t, same, "on another line")
	edit := actions[0].Edit.Changes[address][0]
	c.change(address, 3, &edit.Range, edit.NewText)
	assert.Empty(t, c.found(address))

	c.tell("textDocument/didClose", closeParams{documentID{URI: address}})
	assert.Empty(t, c.found(address), "what is closed has no findings")
	assert.Error(t, c.call("textDocument/hover", asked(address, place), nil), "and is not open")
}

// An editor that asks for findings is not sent them.
func TestFindingsArePulled(t *testing.T) {
	c, folder := started(t, true)
	address, text := c.open(folder, "machines/log-deck.toml")
	pull := func() report {
		var out report
		require.NoError(t, c.call("textDocument/diagnostic", asked(address, position{}), &out))
		return out
	}
	require.Equal(t, report{"full", []diagnostic{}}, pull())
	place := at(text, `torque = "42 to 48 `)
	c.change(address, 2, &span{place, position{place.Line, place.Character + 3}}, "Nx")
	list := pull()
	require.NotEmpty(t, list.Items)
	assert.Equal(t, place.Line, list.Items[0].Range.Start.Line)
	assert.Empty(t, c.published)
}

// Completion, hover, definition, references, rename, outline, hints and layout answer over the
// wire with places as editors count them.
func TestWhatAnEditorAsks(t *testing.T) {
	c, folder := started(t, true)
	address, text := c.open(folder, "log-deck-gearbox-oil.toml")
	machine := (&shop{Shop: Shop{Folder: filepath.ToSlash(folder)}}).address("machines/log-deck.toml")

	var list completionList
	require.NoError(t, c.call("textDocument/completion", asked(address, at(text, `remove = "drain`)), &list))
	i := slices.IndexFunc(list.Items, func(one completionItem) bool { return one.Label == "drain-plug" })
	require.GreaterOrEqual(t, i, 0)
	assert.NotEmpty(t, list.Items[i].Detail)
	start := at(text, `remove = "drain`)
	assert.Equal(t, start.Line, list.Items[i].TextEdit.Range.Start.Line)

	var seen hover
	require.NoError(t, c.call("textDocument/hover", asked(address, at(text, `tighten = "drain`)), &seen))
	assert.Contains(t, seen.Contents.Value, "M22")

	var places []location
	require.NoError(t, c.call("textDocument/definition", asked(address, at(text, `tighten = "drain`)), &places))
	require.Len(t, places, 1)
	assert.Equal(t, machine, places[0].URI)
	require.NoError(t, c.call("textDocument/references", asked(address, at(text, `tighten = "drain`)), &places))
	assert.Greater(t, len(places), 2)

	var ready prepared
	require.NoError(t, c.call("textDocument/prepareRename", asked(address, at(text, `tighten = "drain`)), &ready))
	assert.Equal(t, "drain-plug", ready.Placeholder)
	params := asked(address, at(text, `tighten = "drain`))
	params.NewName = "sump-plug"
	var edit workspaceEdit
	require.NoError(t, c.call("textDocument/rename", params, &edit))
	assert.NotEmpty(t, edit.Changes[address])
	assert.NotEmpty(t, edit.Changes[machine])
	params.NewName = "not a name"
	assert.Error(t, c.call("textDocument/rename", params, nil))

	var outline []documentSymbol
	require.NoError(t, c.call("textDocument/documentSymbol", asked(address, position{}), &outline))
	require.NotEmpty(t, outline)

	var hints []inlayHint
	all := asked(address, position{})
	all.Range = span{position{}, at(text, text)}
	require.NoError(t, c.call("textDocument/inlayHint", all, &hints))
	assert.NotEmpty(t, hints)

	var edits []textEdit
	require.NoError(t, c.call("textDocument/formatting", asked(address, position{}), &edits))
	assert.Empty(t, edits, "the demonstration shop is tidy")
	place := at(text, "[[prepare]]\n")
	c.change(address, 2, &span{place, place}, "\n\n\n\n")
	require.NoError(t, c.call("textDocument/formatting", asked(address, position{}), &edits))
	require.Len(t, edits, 1)
	file := source.New("x.toml", []byte(text[:strings.Index(text, "[[prepare]]\n")+12]+"\n\n\n\n"+text[strings.Index(text, "[[prepare]]\n")+12:]))
	from, to := file.Offset(edits[0].Range.Start.Line, edits[0].Range.Start.Character), file.Offset(edits[0].Range.End.Line, edits[0].Range.End.Character)
	assert.Equal(t, text, string(file.Text[:from])+edits[0].NewText+string(file.Text[to:]))

	assert.ErrorContains(t, c.call("textDocument/foldingRange", asked(address, position{}), nil), "does not know this method")
	assert.Error(t, c.call("textDocument/hover", asked("untitled:1", position{}), nil))
}

// Places are counted in UTF-16 units, and what lies outside a text is clamped.
func TestOffsetsAreThoseOfEditors(t *testing.T) {
	file := source.New("x.toml", []byte("say = \"😀 N·m\"\nx\n"))
	for offset := range len(file.Text) + 1 {
		line, character := file.UTF16(offset)
		if offset == len(file.Text) || file.Text[offset]&0xC0 != 0x80 {
			assert.Equal(t, offset, file.Offset(line, character))
		}
	}
	assert.Equal(t, len(file.Text), file.Offset(99, 0))
	assert.Equal(t, 0, file.Offset(-1, 5))
	assert.Equal(t, 7, file.Offset(0, 8), "not between the halves of a character")
	assert.Equal(t, strings.IndexByte(string(file.Text), '\n'), file.Offset(0, 999))
}
