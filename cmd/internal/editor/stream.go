package editor

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync/atomic"

	"github.com/sourcegraph/jsonrpc2"
)

// The codes of errors of JSON-RPC 2.0 and of the Language Server Protocol 3.17 that are used here.
const (
	codeParse          = jsonrpc2.CodeParseError     // the message is no JSON
	codeRequest        = jsonrpc2.CodeInvalidRequest // it is, and no request
	codeMethod         = jsonrpc2.CodeMethodNotFound
	codeParams         = jsonrpc2.CodeInvalidParams
	codeInternal       = jsonrpc2.CodeInternalError
	codeNotInitialized = -32002
	codeCancelled      = -32800
	codeFailed         = -32803 // the request is right, and cannot be done
)

// mostMessage is how long a message may be: a file of the greatest length, with every letter of it escaped.
const mostMessage = 64 << 20

// stream reads messages as they stand behind their headers. What is no message is answered with an
// error, and the next is read, as long as it is known where that begins.
type stream struct {
	jsonrpc2.ObjectStream // writes
	in                    *bufio.Reader
	fault                 atomic.Pointer[error] // why nobody can say where the next message begins
}

func newStream(both io.ReadWriteCloser) *stream {
	return &stream{ObjectStream: jsonrpc2.NewBufferedStream(both, jsonrpc2.VSCodeObjectCodec{}), in: bufio.NewReader(both)}
}

// ReadObject reads the next message into a value.
func (s *stream) ReadObject(into any) error {
	for {
		length, err := s.header()
		if err != nil {
			return err
		}
		if length < 0 {
			if err := s.refuse(nil, codeParse, "a message has no Content-Length"); err != nil {
				return err
			}
			continue
		}
		body, err := io.ReadAll(io.LimitReader(s.in, length))
		if err != nil {
			return err
		}
		if int64(len(body)) < length {
			return io.ErrUnexpectedEOF
		}
		id, code, fault := faultOf(body)
		if fault == "" {
			if json.Unmarshal(body, into) == nil {
				return nil
			}
			code, fault = codeRequest, "the message is no request and no answer"
		}
		if err := s.refuse(id, code, fault); err != nil {
			return err
		}
	}
}

// header reads the lines before a message, and says how long it is; -1 where they do not. It is
// an error where nobody can say where the next message begins.
func (s *stream) header() (int64, error) {
	length := int64(-1)
	for {
		line, err := s.in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			return 0, s.lost("a line before a message is longer than %d bytes", s.in.Size())
		}
		if err != nil {
			return 0, err
		}
		text := strings.TrimRight(string(line), "\r\n")
		if text == "" {
			return length, nil
		}
		name, value, there := strings.Cut(text, ":")
		if !there {
			return 0, s.lost("%.60q is no header of a message", text)
		}
		if strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
			if length, err = strconv.ParseInt(strings.TrimSpace(value), 10, 64); err != nil || length < 0 || length > mostMessage {
				return 0, s.lost("%.60q is no length of a message of at most %d MiB", strings.TrimSpace(value), mostMessage>>20)
			}
		}
	}
}

// lost keeps why the stream cannot be read on.
func (s *stream) lost(format string, args ...any) error {
	err := fmt.Errorf("what the editor says cannot be read any further: "+format, args...)
	s.fault.Store(&err)
	return err
}

// faultOf says what keeps a text from being a message, and the name of the request as far as it
// is known.
func faultOf(body []byte) (id json.RawMessage, code int64, fault string) {
	var message struct {
		ID     json.RawMessage `json:"id"`
		Method *string         `json:"method"`
		Result json.RawMessage `json:"result"`
		Error  json.RawMessage `json:"error"`
	}
	switch err := json.Unmarshal(body, &message); {
	case !json.Valid(body):
		return nil, codeParse, "the message is no JSON"
	case bytes.HasPrefix(bytes.TrimSpace(body), []byte("[")):
		return nil, codeRequest, "several messages in one are not taken; send one after the other"
	case err != nil:
		return message.ID, codeRequest, "the message is no request and no answer"
	case message.Method == nil && message.Result == nil && message.Error == nil:
		return message.ID, codeRequest, "the message names no method"
	}
	return message.ID, 0, ""
}

// refuse answers what is no message.
func (s *stream) refuse(id json.RawMessage, code int64, fault string) error {
	if len(id) == 0 {
		id = json.RawMessage("null")
	}
	return s.WriteObject(map[string]any{"jsonrpc": "2.0", "id": id, "error": map[string]any{"code": code, "message": fault}})
}
