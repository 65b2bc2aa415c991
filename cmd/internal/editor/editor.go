// Package editor is the editor service: it speaks the Language Server Protocol 3.17 with an
// editor, and knows of the work only what the compiler's front door says. It must not touch the
// disk; the caller reads shops for it.
package editor

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"net/url"
	"path"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/sourcegraph/jsonrpc2"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// Shop is a shop folder as it is on the disk.
type Shop struct {
	Folder   string // absolute, with forward slashes
	Files    []*source.File
	Pictures []source.Picture
}

// Open reads the shop that a file lies in, by its absolute path with forward slashes.
type Open func(file string) (Shop, error)

// Serve answers an editor until it says exit, or hangs up.
func Serve(ctx context.Context, stream io.ReadWriteCloser, open Open) error {
	s := &server{open: open, shops: map[string]*shop{}, work: make(chan message, 4096), done: make(chan struct{})}
	s.conn = jsonrpc2.NewConn(ctx, jsonrpc2.NewBufferedStream(stream, jsonrpc2.VSCodeObjectCodec{}), s)
	go s.serve(ctx)
	select {
	case <-s.conn.DisconnectNotify():
	case <-s.done:
	}
	return s.conn.Close()
}

type message struct{ request *jsonrpc2.Request }

// server does one message after the other, in the order in which they come.
type server struct {
	open  Open
	conn  *jsonrpc2.Conn
	work  chan message
	done  chan struct{}
	pulls bool // the editor asks for findings, and is not sent them
	snips bool // the editor knows where the cursor goes in what it inserts
	ended bool // it was told to shut down
	shops map[string]*shop
}

// shop is one shop folder with what is open in the editor.
type shop struct {
	Shop
	session compiler.Session
	open    map[string]*document // by path from the folder
	result  *compiler.Result     // nil where something has changed since
	owed    bool                 // findings are to be sent, once no more messages wait
}

type document struct {
	version int
	file    *source.File
}

// Handle takes a message in; the connection calls it for one after the other.
func (s *server) Handle(_ context.Context, _ *jsonrpc2.Conn, request *jsonrpc2.Request) {
	s.work <- message{request}
}

func (s *server) serve(ctx context.Context) {
	for {
		select {
		case one := <-s.work:
			if one.request.Method == "exit" {
				close(s.done)
				return
			}
			s.answer(ctx, one.request)
			if len(s.work) == 0 { // more may change them
				s.settle(ctx)
			}
		case <-s.conn.DisconnectNotify():
			return
		case <-ctx.Done():
			close(s.done)
			return
		}
	}
}

// guarded does something. A fault of the service is told to who asked, and it goes on.
func (s *server) guarded(ctx context.Context, request *jsonrpc2.Request, do func()) {
	defer func() {
		if fault := recover(); fault != nil && request != nil && !request.Notif {
			_ = s.conn.ReplyWithError(ctx, request.ID, &jsonrpc2.Error{Code: jsonrpc2.CodeInternalError, Message: fmt.Sprintf("this is a fault of benchleaf, not of your files: %v\n%s", fault, debug.Stack())})
		}
	}()
	do()
}

// answer does what a message asks for.
func (s *server) answer(ctx context.Context, request *jsonrpc2.Request) {
	s.guarded(ctx, request, func() { s.reply(ctx, request) })
}

func (s *server) reply(ctx context.Context, request *jsonrpc2.Request) {
	var params json.RawMessage
	if request.Params != nil {
		params = *request.Params
	}
	result, err := s.handle(ctx, request.Method, params)
	if request.Notif {
		return
	}
	if err != nil {
		code := int64(jsonrpc2.CodeInvalidRequest)
		if err == errUnknown {
			code = jsonrpc2.CodeMethodNotFound
		}
		_ = s.conn.ReplyWithError(ctx, request.ID, &jsonrpc2.Error{Code: code, Message: err.Error()})
		return
	}
	_ = s.conn.Reply(ctx, request.ID, result)
}

var errUnknown = fmt.Errorf("the editor service does not know this method")

func (s *server) handle(ctx context.Context, method string, params json.RawMessage) (any, error) {
	if s.ended {
		return nil, fmt.Errorf("the editor service is shut down")
	}
	read := func(into any) error {
		if len(params) == 0 {
			return nil
		}
		return json.Unmarshal(params, into)
	}
	switch method {
	case "initialize":
		var asked initializeParams
		if err := read(&asked); err != nil {
			return nil, err
		}
		s.pulls, s.snips = asked.Capabilities.TextDocument.Diagnostic != nil, asked.Capabilities.TextDocument.Completion.Item.Snippets
		return capabilities, nil
	case "initialized", "textDocument/willSave", "$/cancelRequest", "$/setTrace", "workspace/didChangeConfiguration":
		return nil, nil
	case "shutdown":
		s.ended = true
		return nil, nil
	case "textDocument/didOpen":
		var asked openParams
		if err := read(&asked); err != nil {
			return nil, err
		}
		return nil, s.opened(ctx, asked.Document)
	case "textDocument/didChange":
		var asked changeParams
		if err := read(&asked); err != nil {
			return nil, err
		}
		return nil, s.changed(ctx, asked)
	case "textDocument/didClose":
		var asked closeParams
		if err := read(&asked); err != nil {
			return nil, err
		}
		return nil, s.closed(ctx, asked.Document.URI)
	case "textDocument/didSave", "workspace/didChangeWatchedFiles":
		return nil, s.reload(ctx)
	}
	question, known := questions[method]
	if !known {
		return nil, errUnknown
	}
	var asked placeParams
	if err := read(&asked); err != nil {
		return nil, err
	}
	at, name, doc := s.find(asked.Document.URI)
	if doc == nil {
		return nil, fmt.Errorf("%s is not open", asked.Document.URI)
	}
	return question(s, at, name, doc, asked)
}

var capabilities = map[string]any{
	"capabilities": map[string]any{
		"positionEncoding":           "utf-16",
		"textDocumentSync":           map[string]any{"openClose": true, "change": 2, "save": true},
		"diagnosticProvider":         map[string]any{"identifier": "benchleaf", "interFileDependencies": true, "workspaceDiagnostics": false},
		"codeActionProvider":         map[string]any{"codeActionKinds": []string{"quickfix"}},
		"completionProvider":         map[string]any{"triggerCharacters": []string{"\"", "[", "=", " ", "."}},
		"hoverProvider":              true,
		"definitionProvider":         true,
		"referencesProvider":         true,
		"renameProvider":             map[string]any{"prepareProvider": true},
		"documentSymbolProvider":     true,
		"documentFormattingProvider": true,
		"inlayHintProvider":          true,
	},
	"serverInfo": map[string]any{"name": "benchleaf"},
}

// file is the absolute path of a file by its address, with forward slashes.
func file(address string) (string, error) {
	parsed, err := url.Parse(address)
	if err != nil || parsed.Scheme != "file" {
		return "", fmt.Errorf("%q is no address of a file; save it first", address)
	}
	name := parsed.Path
	if len(name) > 2 && name[0] == '/' && name[2] == ':' { // /C:/shop
		name = name[1:]
	}
	return path.Clean(name), nil
}

// address is the address of a file of a shop.
func (s *shop) address(name string) string {
	full := path.Join(s.Folder, name)
	if !strings.HasPrefix(full, "/") {
		full = "/" + full
	}
	return (&url.URL{Scheme: "file", Path: full}).String()
}

// find is the shop, the path and the text of an open file; nil where it is not open.
func (s *server) find(address string) (*shop, string, *document) {
	full, err := file(address)
	if err != nil {
		return nil, "", nil
	}
	for _, at := range s.shops {
		if name, inside := strings.CutPrefix(full, at.Folder+"/"); inside && at.open[name] != nil {
			return at, name, at.open[name]
		}
	}
	return nil, "", nil
}

func (s *server) opened(ctx context.Context, item documentItem) error {
	full, err := file(item.URI)
	if err != nil {
		return err
	}
	read, err := s.open(full)
	if err != nil {
		return s.say(ctx, err)
	}
	at := s.shops[read.Folder]
	if at == nil {
		at = &shop{open: map[string]*document{}}
		s.shops[read.Folder] = at
	}
	at.Shop, at.result = read, nil
	name := strings.TrimPrefix(full, at.Folder+"/")
	at.open[name] = &document{item.Version, source.New(name, []byte(item.Text))}
	return s.publish(ctx, at)
}

// say shows an error to the person at the editor.
func (s *server) say(ctx context.Context, err error) error {
	return s.conn.Notify(ctx, "window/showMessage", map[string]any{"type": 1, "message": err.Error()})
}

func (s *server) changed(ctx context.Context, asked changeParams) error {
	at, name, doc := s.find(asked.Document.URI)
	if doc == nil {
		return fmt.Errorf("%s is not open", asked.Document.URI)
	}
	for _, change := range asked.Changes {
		text := []byte(change.Text)
		if change.Range != nil {
			start, end := doc.file.Offset(change.Range.Start.Line, change.Range.Start.Character), doc.file.Offset(change.Range.End.Line, change.Range.End.Character)
			text = slices.Concat(doc.file.Text[:start], text, doc.file.Text[max(start, end):])
		}
		doc.file = source.New(name, text)
	}
	if asked.Document.Version != nil {
		doc.version = *asked.Document.Version
	}
	at.result, at.owed = nil, true
	return nil
}

// settle sends the findings that are owed.
func (s *server) settle(ctx context.Context) {
	for _, folder := range slices.Sorted(maps.Keys(s.shops)) {
		if at := s.shops[folder]; at.owed {
			s.guarded(ctx, nil, func() { _ = s.publish(ctx, at) })
		}
	}
}

func (s *server) closed(ctx context.Context, address string) error {
	at, name, doc := s.find(address)
	if doc == nil {
		return nil
	}
	delete(at.open, name)
	at.result = nil
	if !s.pulls {
		if err := s.conn.Notify(ctx, "textDocument/publishDiagnostics", publishParams{URI: address, Diagnostics: []diagnostic{}}); err != nil {
			return err
		}
	}
	if len(at.open) == 0 {
		delete(s.shops, at.Folder)
		return nil
	}
	return s.publish(ctx, at)
}

// reload reads the shops again, since something on the disk has changed.
func (s *server) reload(ctx context.Context) error {
	for _, folder := range slices.Sorted(maps.Keys(s.shops)) {
		at := s.shops[folder]
		for name := range at.open {
			read, err := s.open(path.Join(folder, name))
			if err == nil && read.Folder == folder {
				at.Shop, at.result = read, nil
			}
			break
		}
		if err := s.publish(ctx, at); err != nil {
			return err
		}
	}
	return nil
}

// compiled is what the compiler says of the shop as it is in the editor. What is not saved counts.
func (s *shop) compiled() *compiler.Result {
	if s.result != nil {
		return s.result
	}
	var files []*source.File
	for _, file := range s.Files {
		if s.open[file.Path] == nil {
			files = append(files, file)
		}
	}
	names := slices.Sorted(maps.Keys(s.open))
	for _, name := range names {
		files = append(files, s.open[name].file)
	}
	s.result = s.session.Compile(compiler.Input{Files: files, Targets: names, Whole: true, Pictures: s.Pictures})
	return s.result
}

// publish sends the findings of what is open, where the editor does not ask for them itself.
func (s *server) publish(ctx context.Context, at *shop) error {
	at.owed = false
	if s.pulls {
		return nil
	}
	for _, name := range slices.Sorted(maps.Keys(at.open)) {
		version := at.open[name].version
		if err := s.conn.Notify(ctx, "textDocument/publishDiagnostics", publishParams{URI: at.address(name), Version: &version, Diagnostics: at.diagnostics(name)}); err != nil {
			return err
		}
	}
	return nil
}

// diagnostics are the findings that stand in a file.
func (s *shop) diagnostics(name string) []diagnostic {
	out := []diagnostic{}
	for _, found := range s.compiled().Findings {
		if found.Place.File.Path == name {
			out = append(out, s.diagnostic(found))
		}
	}
	return out
}

func (s *shop) diagnostic(found finding.Finding) diagnostic {
	severity := map[finding.Severity]int{finding.Error: 1, finding.Warning: 2, finding.Note: 3}[found.Severity]
	text := found.Summary
	if found.Variant != "" {
		text += " (" + found.Variant + ")"
	}
	if found.Help != "" {
		text += "\n" + found.Help
	}
	out := diagnostic{Range: spanOf(found.Place), Severity: severity, Code: found.Rule, Source: "benchleaf", Message: text}
	for _, one := range found.Related {
		out.Related = append(out.Related, related{s.location(one.Place), one.Text})
	}
	return out
}

func (s *shop) location(at source.Place) location {
	return location{s.address(at.File.Path), spanOf(at)}
}

func spanOf(at source.Place) span {
	return span{positionOf(at.File, at.Span.Start), positionOf(at.File, at.Span.End)}
}

func positionOf(file *source.File, offset int) position {
	line, character := file.UTF16(offset)
	return position{line, character}
}
