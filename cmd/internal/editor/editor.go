// Package editor is the editor service: it speaks the Language Server Protocol 3.17 with an
// editor, and knows of the work only what the compiler's front door says. It must not touch the
// disk; the caller reads shops for it.
package editor

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log"
	"maps"
	"net/url"
	"path"
	"runtime/debug"
	"slices"
	"strings"
	"sync"

	"github.com/sourcegraph/jsonrpc2"

	"benchleaf/compiler"
	"benchleaf/compiler/finding"
	"benchleaf/compiler/source"
)

// Shop is a shop folder as it is on the disk.
type Shop struct {
	Folder   string // absolute, with forward slashes
	Lone     bool   // no shop: the folder of one file that lies in none, and what that uses
	Files    []*source.File
	Pictures []source.Picture
	Today    string      // the day it was read, such as 2026-05-01
	Stale    func() bool // whether something on the disk has changed since; nil where that is not known

	Booked func(name string) (bool, error) // whether entries of the service book name something so; nil where there is no book
}

// Open reads the shop that a file lies in, by its absolute path with forward slashes. Neither
// the file nor its folder need be there.
type Open func(file string) (Shop, error)

// ErrNotShutDown is that an editor went without saying shutdown first.
var ErrNotShutDown = errors.New("the editor went without saying shutdown")

// Serve answers an editor until it says exit, or hangs up.
func Serve(ctx context.Context, stream io.ReadWriteCloser, open Open) error {
	s := &server{open: open, shops: map[string]*shop{}, documents: map[string]*document{}, asked: map[jsonrpc2.ID]bool{}, work: make(chan message, 4096), done: make(chan struct{}), rest: make(chan struct{})}
	ready := make(chan struct{})
	s.ready = ready
	in := newStream(stream)
	s.conn = jsonrpc2.NewConn(ctx, in, s, jsonrpc2.SetLogger(log.New(io.Discard, "", 0))) // what is to be told is an error below
	close(ready)
	go s.serve(ctx)
	select {
	case <-s.conn.DisconnectNotify():
	case <-s.done:
	}
	<-s.rest
	if err := s.conn.Close(); err != nil && !errors.Is(err, jsonrpc2.ErrClosed) {
		return err
	}
	if fault := in.fault.Load(); fault != nil && !s.ended {
		return *fault
	}
	if !s.ended {
		return ErrNotShutDown
	}
	return nil
}

type message struct{ request *jsonrpc2.Request }

// server does one message after the other, in the order in which they come.
type server struct {
	open  Open
	conn  *jsonrpc2.Conn
	work  chan message
	done  chan struct{}
	rest  chan struct{} // closed when no message is worked at any more
	ready <-chan struct{}
	begun bool // the editor has said initialize
	pulls bool // the editor asks for findings, and is not sent them
	snips bool // the editor knows where the cursor goes in what it inserts
	looks bool // the editor tells of changes on the disk where it is asked to
	ended bool // it was told to shut down

	shops     map[string]*shop
	documents map[string]*document // that are open, by their places

	waiting sync.Mutex
	asked   map[jsonrpc2.ID]bool // requests that are not answered yet, and whether they were called off
}

// shop is one shop folder with what is open in the editor.
type shop struct {
	Shop
	id      string // its folder; of a lone file its path
	session compiler.Session
	open    map[string]*document // by path from the folder
	result  *compiler.Result     // nil where something has changed since
	owed    bool                 // findings are to be sent, once no more messages wait
}

type document struct {
	uri     string // as the editor calls it
	shop    *shop
	version int
	file    *source.File
}

// Handle takes a message in; the connection calls it for one after the other.
func (s *server) Handle(_ context.Context, _ *jsonrpc2.Conn, request *jsonrpc2.Request) {
	<-s.ready
	s.waiting.Lock()
	if request.Method == "$/cancelRequest" && request.Params != nil {
		var off struct {
			ID jsonrpc2.ID `json:"id"`
		}
		if json.Unmarshal(*request.Params, &off) == nil {
			if _, open := s.asked[off.ID]; open {
				s.asked[off.ID] = true
			}
		}
	} else if !request.Notif {
		s.asked[request.ID] = false
	}
	s.waiting.Unlock()
	s.work <- message{request}
}

// off reports whether a request was called off.
func (s *server) off(id jsonrpc2.ID) bool {
	s.waiting.Lock()
	defer s.waiting.Unlock()
	return s.asked[id]
}

func (s *server) serve(ctx context.Context) {
	defer close(s.rest)
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
			for len(s.work) > 0 { // what it still said
				one := <-s.work
				s.ended = s.ended || s.begun && one.request.Method == "shutdown"
			}
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
			_ = s.conn.ReplyWithError(ctx, request.ID, &jsonrpc2.Error{Code: codeInternal, Message: fmt.Sprintf("this is a fault of benchleaf, not of your files: %v\n%s", fault, debug.Stack())})
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
	if request.Notif {
		if s.begun {
			_, _ = s.handle(ctx, request.Method, params)
		}
		return
	}
	defer func() {
		s.waiting.Lock()
		delete(s.asked, request.ID)
		s.waiting.Unlock()
	}()
	var result any
	var err error = errOff
	if !s.off(request.ID) {
		result, err = s.handle(ctx, request.Method, params)
	}
	if err == nil && s.off(request.ID) && request.Method != "initialize" && request.Method != "shutdown" {
		err = errOff
	}
	if err != nil {
		told := &jsonrpc2.Error{Code: codeFailed, Message: err.Error()}
		errors.As(err, &told)
		_ = s.conn.ReplyWithError(ctx, request.ID, told)
		return
	}
	_ = s.conn.Reply(ctx, request.ID, result)
}

var errOff = &jsonrpc2.Error{Code: codeCancelled, Message: "the request was called off"}

func (s *server) handle(ctx context.Context, method string, params json.RawMessage) (any, error) {
	switch {
	case s.ended:
		return nil, &jsonrpc2.Error{Code: codeRequest, Message: "the editor service is shut down"}
	case !s.begun && method != "initialize":
		return nil, &jsonrpc2.Error{Code: codeNotInitialized, Message: "say initialize first"}
	case s.begun && method == "initialize":
		return nil, &jsonrpc2.Error{Code: codeRequest, Message: "initialize was said already"}
	}
	read := func(into any) error {
		if len(params) == 0 {
			return nil
		}
		if json.Unmarshal(params, into) != nil {
			return &jsonrpc2.Error{Code: codeParams, Message: fmt.Sprintf("the parameters of %s are not those of the protocol", method)}
		}
		return nil
	}
	switch method {
	case "initialize":
		var asked initializeParams
		if err := read(&asked); err != nil {
			return nil, err
		}
		s.pulls, s.snips = asked.Capabilities.TextDocument.Diagnostic != nil, asked.Capabilities.TextDocument.Completion.Item.Snippets
		s.begun, s.looks = true, asked.Capabilities.Workspace.Watched.Registers
		return capabilities, nil
	case "initialized":
		return nil, s.watch(ctx)
	case "textDocument/willSave", "$/cancelRequest", "$/setTrace", "workspace/didChangeConfiguration":
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
		return nil, &jsonrpc2.Error{Code: codeMethod, Message: "the editor service does not know this method"}
	}
	var asked placeParams
	if err := read(&asked); err != nil {
		return nil, err
	}
	doc := s.documents[key(asked.Document.URI)]
	if doc == nil {
		return nil, &jsonrpc2.Error{Code: codeParams, Message: fmt.Sprintf("%q is not open", asked.Document.URI)}
	}
	s.refresh()
	return question(s, doc.shop, doc.file.Path, doc, asked)
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

// file is the absolute path of a file by its address, with forward slashes; false where it has
// none, as a text that was never saved.
func file(address string) (string, bool) {
	parsed, err := url.Parse(address)
	if err != nil || parsed.Scheme != "file" && parsed.Scheme != "untitled" || !strings.HasPrefix(parsed.Path, "/") {
		return "", false
	}
	name := parsed.Path
	if len(name) > 2 && name[2] == ':' { // /C:/shop
		name = name[1:]
	}
	return path.Clean(name), true
}

// key is one name for all addresses of a file.
func key(address string) string {
	if full, there := file(address); there {
		return full
	}
	return address
}

// address is the address of a file of a shop.
func (s *shop) address(name string) string {
	if doc := s.open[name]; doc != nil {
		return doc.uri
	}
	full := path.Join(s.Folder, name)
	if !strings.HasPrefix(full, "/") {
		full = "/" + full
	}
	return (&url.URL{Scheme: "file", Path: full}).String()
}

func (s *server) opened(ctx context.Context, item documentItem) error {
	if old := s.documents[key(item.URI)]; old != nil {
		s.drop(old)
	}
	doc := &document{uri: item.URI, version: item.Version, file: source.New("", []byte(item.Text))}
	if err := s.place(doc); err != nil {
		return s.say(ctx, err)
	}
	return s.publish(ctx, doc.shop)
}

// place puts an open text into the shop it lies in, as that is on the disk now.
func (s *server) place(doc *document) error {
	read, name := Shop{Lone: true}, path.Base(doc.uri)
	id := doc.uri // of the shop
	if full, there := file(doc.uri); there {
		var err error
		if read, err = s.open(full); err != nil {
			return err
		}
		name, id = strings.TrimPrefix(full, strings.TrimSuffix(read.Folder, "/")+"/"), read.Folder
		if read.Lone {
			id = full
		}
	}
	at := s.shops[id]
	if at == nil {
		at = &shop{id: id, open: map[string]*document{}}
		s.shops[id] = at
	}
	at.Shop, at.result = read, nil
	doc.shop, doc.file = at, source.New(name, doc.file.Text)
	at.open[name], s.documents[key(doc.uri)] = doc, doc
	return nil
}

// drop takes an open text away, and its shop where it was the last.
func (s *server) drop(doc *document) {
	delete(doc.shop.open, doc.file.Path)
	delete(s.documents, key(doc.uri))
	doc.shop.result = nil
	if len(doc.shop.open) == 0 {
		delete(s.shops, doc.shop.id)
	}
}

// say shows an error to the person at the editor.
func (s *server) say(ctx context.Context, err error) error {
	return s.conn.Notify(ctx, "window/showMessage", map[string]any{"type": 1, "message": err.Error()})
}

func (s *server) changed(ctx context.Context, asked changeParams) error {
	doc := s.documents[key(asked.Document.URI)]
	if doc == nil {
		return fmt.Errorf("%q is not open", asked.Document.URI)
	}
	for _, change := range asked.Changes {
		text := []byte(change.Text)
		if change.Range != nil {
			start, end := doc.file.Offset(change.Range.Start.Line, change.Range.Start.Character), doc.file.Offset(change.Range.End.Line, change.Range.End.Character)
			text = slices.Concat(doc.file.Text[:start], text, doc.file.Text[max(start, end):])
		}
		doc.file = source.New(doc.file.Path, text)
	}
	if asked.Document.Version != nil {
		doc.version = *asked.Document.Version
	}
	doc.shop.result, doc.shop.owed = nil, true
	return nil
}

// settle sends the findings that are owed, of the texts as they are and the disk as it is.
func (s *server) settle(ctx context.Context) {
	owed := false
	for _, at := range s.shops {
		owed = owed || at.owed
	}
	if !owed {
		return
	}
	s.guarded(ctx, nil, s.refresh)
	for _, folder := range slices.Sorted(maps.Keys(s.shops)) {
		if at := s.shops[folder]; at.owed {
			s.guarded(ctx, nil, func() { _ = s.publish(ctx, at) })
		}
	}
}

func (s *server) closed(ctx context.Context, address string) error {
	doc := s.documents[key(address)]
	if doc == nil {
		return nil
	}
	s.drop(doc)
	if !s.pulls {
		if err := s.conn.Notify(ctx, "textDocument/publishDiagnostics", publishParams{URI: address, Diagnostics: []diagnostic{}}); err != nil {
			return err
		}
	}
	if len(doc.shop.open) == 0 {
		return nil
	}
	return s.publish(ctx, doc.shop)
}

// reload reads the shops again, since something on the disk has changed.
func (s *server) reload(ctx context.Context) error {
	for _, id := range slices.Sorted(maps.Keys(s.shops)) {
		s.reread(s.shops[id])
	}
	for _, id := range slices.Sorted(maps.Keys(s.shops)) {
		if err := s.publish(ctx, s.shops[id]); err != nil {
			return err
		}
	}
	return nil
}

// reread reads a shop again. Where its files lie in another now, they go there; where it cannot be
// read, it stays as it was.
func (s *server) reread(at *shop) {
	for _, name := range slices.Sorted(maps.Keys(at.open)) {
		doc := at.open[name]
		full, there := file(doc.uri)
		if !there {
			return
		}
		read, err := s.open(full)
		if err != nil {
			return
		}
		if read.Lone == at.Lone && read.Folder == at.Folder {
			at.Shop, at.result = read, nil
			return
		}
		s.drop(doc)
		if s.place(doc) != nil {
			return
		}
	}
}

// refresh reads those shops again of which something has changed on the disk, also where the
// editor tells of no changes there.
func (s *server) refresh() {
	for _, id := range slices.Sorted(maps.Keys(s.shops)) {
		if at := s.shops[id]; at != nil && at.Stale != nil && at.Stale() {
			s.reread(at)
		}
	}
}

// watch asks the editor to tell of changes on the disk.
func (s *server) watch(ctx context.Context) error {
	if !s.looks {
		return nil
	}
	_, err := s.conn.DispatchCall(ctx, "client/registerCapability", map[string]any{"registrations": []any{map[string]any{
		"id": "benchleaf-files", "method": "workspace/didChangeWatchedFiles",
		"registerOptions": map[string]any{"watchers": []any{map[string]any{"globPattern": "**/*.toml"}}},
	}}})
	return err
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
	s.result = s.session.Compile(compiler.Input{Files: files, Targets: names, Whole: !s.Lone, Pictures: s.Pictures, Today: s.Today})
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
	if s.Lone && !bytes.Contains(s.open[name].file.Text, []byte("benchleaf")) {
		return out // a file of something else
	}
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
