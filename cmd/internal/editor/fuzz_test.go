package editor

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/textproto"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"benchleaf/compiler/source"
)

// wire is an editor that says all it has to say at once, keeps what it hears, and hangs up when
// the service does, or after a while.
type wire struct {
	said   *bytes.Reader
	heard  bytes.Buffer
	closed chan struct{}
	while  time.Duration
}

func (w *wire) Read(into []byte) (int, error) {
	if n, err := w.said.Read(into); err == nil {
		return n, nil
	}
	select {
	case <-w.closed:
	case <-time.After(w.while):
	}
	return 0, io.EOF
}

func (w *wire) Write(text []byte) (int, error) { return w.heard.Write(text) }

func (w *wire) Close() error {
	close(w.closed)
	return nil
}

// served is all that the service answers to what is said, and how it ended.
func served(t *testing.T, said []byte, while time.Duration) ([]heard, error) {
	both := &wire{said: bytes.NewReader(said), closed: make(chan struct{}), while: while}
	ended := make(chan error, 1)
	go func() { ended <- Serve(context.Background(), both, lying) }()
	select {
	case err := <-ended:
		return messages(t, both.heard.Bytes()), err
	case <-time.After(20 * time.Second):
		require.Fail(t, "the service does not end")
	}
	return nil, nil
}

// heard is a message of the service.
type heard struct {
	Version string          `json:"jsonrpc"`
	ID      json.RawMessage `json:"id"`
	Method  string          `json:"method"`
	Params  json.RawMessage `json:"params"`
	Result  json.RawMessage `json:"result"`
	Error   *struct {
		Code    int    `json:"code"`
		Message string `json:"message"`
	} `json:"error"`
}

// messages takes what was written apart: each message stands whole behind its length, is JSON, and is
// an answer or something that is asked or told.
func messages(t *testing.T, text []byte) (out []heard) {
	in := bufio.NewReader(bytes.NewReader(text))
	for {
		header, err := textproto.NewReader(in).ReadMIMEHeader()
		if errors.Is(err, io.EOF) && len(header) == 0 {
			return out
		}
		require.NoError(t, err)
		length, err := strconv.Atoi(header.Get("Content-Length"))
		require.NoError(t, err)
		body := make([]byte, length)
		_, err = io.ReadFull(in, body)
		require.NoError(t, err)
		var one heard
		require.NoError(t, json.Unmarshal(body, &one), "%s", body)
		require.Equal(t, "2.0", one.Version)
		switch {
		case one.Method != "":
			require.Nil(t, one.Error)
		case one.Error != nil:
			require.NotEmpty(t, one.Error.Message)
			require.Negative(t, one.Error.Code)
			require.NotEqual(t, codeInternal, one.Error.Code, one.Error.Message)
		default:
			require.NotEmpty(t, one.ID, "%s", body)
		}
		out = append(out, one)
	}
}

// lying are the files of a shop that is nowhere.
func lying(string) (Shop, error) {
	return Shop{Folder: "/shop", Files: []*source.File{source.New("tools.toml", []byte("benchleaf = 1\n[tool.pan]\nkind = \"container\"\n"))}}, nil
}

// Whatever comes over the stream, the service ends, what it answers are messages, and it answers no
// more than it was asked.
func FuzzStream(f *testing.F) {
	for _, said := range []string{
		framed(initialize) + framed(`{"jsonrpc":"2.0","id":1,"method":"shutdown"}`) + framed(`{"jsonrpc":"2.0","method":"exit"}`),
		framed(`[1]`) + framed(`{"id":7}`) + framed(`{"id":-7,"method":3}`) + "X: 1\r\n\r\n" + framed(`hello`),
		"Content-Length: 1000000000000\r\n\r\n{}", "Content-Length: -1\r\n\r\n", "Content-Length: 3\r\n\r\n{", "Content-Length: 0\r\n\r\n", "Content-Length\r\n\r\n", "\r\n\r\n\r\n", strings.Repeat("a", 5000), strings.Repeat("A: b\r\n", 900),
		framed(initialize) + framed(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///shop/x.toml","text":"benchleaf = 1\n"}}}`) + framed(`{"jsonrpc":"2.0","id":"a","method":"textDocument/hover","params":{"textDocument":{"uri":"file:///shop/x.toml"},"position":{"line":-1,"character":99}}}`),
		framed(initialize) + framed(`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"file:///../../x\u0000%00"}}}`) + framed(`{"jsonrpc":"2.0","id":null,"method":"textDocument/formatting","params":[]}`),
		framed(strings.Repeat("[", 20000)), framed(`{"jsonrpc":"2.0","id":1e99,"method":"x"}`), framed(`{"id":1,"result":null}`) + framed(`{"id":1,"result":1,"error":{}}`),
	} {
		f.Add([]byte(said))
	}
	f.Fuzz(func(t *testing.T, said []byte) {
		told, _ := served(t, append(bytes.Clone(said), last...), time.Millisecond)
		answers := 0
		for _, one := range told {
			if one.Method == "" {
				answers++
			}
		}
		assert.LessOrEqual(t, answers, bytes.Count(said, []byte("\n"))+2, "there is a line feed before each message")
	})
}

var last = framed(`{"jsonrpc":"2.0","id":"last","method":"shutdown"}`) + framed(`{"jsonrpc":"2.0","method":"exit"}`)

func framed(body string) string { return fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(body), body) }

const oil = `benchleaf = 1

[procedure]
title = "Look over the chain oiler"
machine = "Log-deck conveyor"
revision = "A"
hands-on = "5min"
tools = ["pan", "pot"]

[[step]]
inspect = "the oil level in the 給 sight glass"
torque = "25Nm"

[part.plug]
thread = "M22"
`

// Whatever an editor asks in whatever order, each request is answered once and without a fault of the
// service, and every place it is told lies in the text as the editor has it.
func FuzzRequests(f *testing.F) {
	f.Add([]byte{0, 0, 0, 3, 9, 4, 4, 9, 4, 5, 10, 8, 6, 10, 9, 7, 0, 0, 8, 0, 0, 9, 0, 0, 10, 0, 0, 11, 1, 2}, "x")
	f.Add([]byte{0, 0, 0, 2, 5, 5, 2, 9, 200, 11, 0, 0, 1, 0, 0, 4, 1, 1, 0, 1, 0, 10, 0, 0}, "\"[{\n")
	f.Add([]byte{12, 0, 0, 0, 0, 0, 13, 3, 3, 5, 6, 7}, "給\U0001F527\r\n")
	f.Add([]byte{0, 1, 0, 2, 0, 0, 2, 0, 255, 3, 0, 0, 3, 200, 200, 11, 9, 9}, "\xff\x00")
	f.Fuzz(func(t *testing.T, steps []byte, typed string) {
		if len(steps) > 90 || len(typed) > 2000 {
			return
		}
		typed = strings.ToValidUTF8(typed, "\uFFFD") // as JSON brings it
		var said strings.Builder
		asked := map[string]bool{}
		say := func(id bool, method string, params any) {
			message := map[string]any{"jsonrpc": "2.0", "method": method, "params": params}
			if id {
				name := strconv.Itoa(len(asked) + 1)
				asked[name] = true
				message["id"] = len(asked)
			}
			body, err := json.Marshal(message)
			require.NoError(t, err)
			said.WriteString(framed(string(body)))
		}
		said.WriteString(framed(initialize))
		addresses := []string{"file:///shop/oil.toml", "file:///shop/tools.toml", "untitled:one", "file:///shop/" + typed}
		texts := map[string]string{} // as the editor has them
		longest := map[string]int{}  // lines that a text had at any time
		for ; len(steps) > 2; steps = steps[3:] {
			address := addresses[int(steps[0]/14)%len(addresses)]
			from := position{int(steps[1]) % 24, int(steps[2]) % 50}
			to := position{from.Line + int(steps[2])%3, int(steps[1]) % 50}
			place := map[string]any{"textDocument": map[string]any{"uri": address}, "position": from, "newName": typed, "range": span{from, to}, "context": map[string]any{"includeDeclaration": true}}
			switch steps[0] % 14 {
			case 0:
				texts[address] = oil
				say(false, "textDocument/didOpen", map[string]any{"textDocument": map[string]any{"uri": address, "version": 1, "text": texts[address]}})
			case 1:
				delete(texts, address)
				say(false, "textDocument/didClose", place)
			case 2:
				change := map[string]any{"text": typed}
				if steps[2] < 250 {
					change["range"] = span{from, to}
				}
				if text, open := texts[address]; open {
					texts[address] = edited(text, change)
				}
				say(false, "textDocument/didChange", map[string]any{"textDocument": map[string]any{"uri": address, "version": 2}, "contentChanges": []any{change}})
			default:
				say(true, []string{"textDocument/diagnostic", "textDocument/completion", "textDocument/hover", "textDocument/definition", "textDocument/references", "textDocument/prepareRename",
					"textDocument/rename", "textDocument/documentSymbol", "textDocument/codeAction", "textDocument/formatting", "textDocument/inlayHint"}[steps[0]%14-3], place)
			}
			longest[address] = max(longest[address], strings.Count(texts[address], "\n"))
		}
		say(true, "shutdown", nil)
		say(false, "exit", nil)
		told, err := served(t, []byte(said.String()), 20*time.Second)
		require.NoError(t, err)
		for _, one := range told {
			if one.Method == "textDocument/publishDiagnostics" {
				var list publishParams
				require.NoError(t, json.Unmarshal(one.Params, &list))
				for _, found := range list.Diagnostics {
					assert.LessOrEqual(t, found.Range.End.Line, longest[list.URI], "%s", one.Params)
					assert.True(t, found.Range.Start.Line < found.Range.End.Line || found.Range.Start.Line == found.Range.End.Line && found.Range.Start.Character <= found.Range.End.Character, "%s", one.Params)
				}
			}
			if one.Method == "" && string(one.ID) != "0" {
				assert.True(t, asked[string(one.ID)], "%s is answered twice, or was never asked", one.ID)
				delete(asked, string(one.ID))
			}
		}
		assert.Empty(t, asked, "requests without an answer")
	})
}

// edited is a text with a change as the editor makes it.
func edited(text string, change map[string]any) string {
	at, part := change["range"].(span)
	typed := change["text"].(string)
	if !part {
		return typed
	}
	file := source.New("x.toml", []byte(text))
	start, end := file.Offset(at.Start.Line, at.Start.Character), file.Offset(at.End.Line, at.End.Character)
	return text[:start] + typed + text[max(start, end):]
}
