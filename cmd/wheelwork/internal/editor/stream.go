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
	"sync"

	"github.com/sourcegraph/jsonrpc2"
)

// mostMessage bounds the bytes of a message: more than any spec file has.
const mostMessage = 128 << 20

// stream carries the messages of the protocol: a header with the length, then
// JSON. What is no message is answered with an error, and reading goes on.
type stream struct {
	in   *bufio.Reader
	out  io.Writer
	ends []io.Closer

	mu sync.Mutex
}

func newStream(in io.Reader, out io.Writer) *stream {
	s := &stream{in: bufio.NewReaderSize(in, 64<<10), out: out}
	for _, end := range []any{in, out} {
		if c, ok := end.(io.Closer); ok {
			s.ends = append(s.ends, c)
		}
	}
	return s
}

// Close lets go of both ends.
func (s *stream) Close() error {
	var all []error
	for _, end := range s.ends {
		all = append(all, end.Close())
	}
	return errors.Join(all...)
}

// WriteObject writes one message.
func (s *stream) WriteObject(v any) error {
	body, err := json.Marshal(v)
	if err != nil {
		return err
	}
	message := make([]byte, 0, len(body)+40)
	message = append(message, "Content-Length: "...)
	message = strconv.AppendInt(message, int64(len(body)), 10)
	message = append(append(message, "\r\n\r\n"...), body...)
	s.mu.Lock()
	defer s.mu.Unlock()
	_, err = s.out.Write(message)
	return err
}

// ReadObject reads the next sound message.
func (s *stream) ReadObject(v any) error {
	for {
		length, err := s.header()
		if err != nil {
			var odd *oddHeader
			if errors.As(err, &odd) { // where the next message begins cannot be known
				s.refuse(nil, jsonrpc2.CodeParseError, odd.Error())
			}
			return err
		}
		if length > mostMessage {
			if _, err := io.CopyN(io.Discard, s.in, length); err != nil {
				return err
			}
			s.refuse(nil, jsonrpc2.CodeInvalidRequest, fmt.Sprintf("a message of %d bytes, where %d are the most", length, mostMessage))
			continue
		}
		body := make([]byte, length)
		if _, err := io.ReadFull(s.in, body); err != nil {
			return err
		}
		if id, code, why := judge(body); code == ignored {
			continue
		} else if why != "" {
			s.refuse(id, code, why)
			continue
		}
		if err := json.Unmarshal(body, v); err != nil {
			s.refuse(nil, jsonrpc2.CodeInvalidRequest, err.Error())
			continue
		}
		return nil
	}
}

type oddHeader struct{ line string }

func (o *oddHeader) Error() string {
	return fmt.Sprintf("no Content-Length in the header, which ends with %q", o.line)
}

// header reads up to the empty line and returns the length of what follows.
func (s *stream) header() (int64, error) {
	length := int64(-1)
	for {
		raw, err := s.in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			return 0, &oddHeader{line: "..."}
		}
		if err != nil {
			return 0, err
		}
		line := strings.TrimRight(string(raw), "\r\n")
		if line == "" && length >= 0 {
			return length, nil
		}
		name, value, _ := strings.Cut(line, ":")
		if strings.EqualFold(name, "Content-Length") {
			n, err := strconv.ParseInt(strings.TrimSpace(value), 10, 64)
			if err != nil || n < 0 {
				return 0, &oddHeader{line: line}
			}
			length = n
		} else if line == "" {
			return 0, &oddHeader{}
		}
	}
}

// ignored is the code of what is no message and wants no answer, since it is one.
const ignored = 1

// judge says why a body is no message, "" if it is one. Its id, if it has a
// sound one, belongs into the answer.
func judge(body []byte) (id json.RawMessage, code int64, why string) {
	if !json.Valid(body) {
		return nil, jsonrpc2.CodeParseError, "this is no JSON"
	}
	var m struct {
		ID     json.RawMessage `json:"id"`
		Method json.RawMessage `json:"method"`
		Result json.RawMessage `json:"result"`
		Error  json.RawMessage `json:"error"`
	}
	if err := json.Unmarshal(body, &m); err != nil {
		return nil, jsonrpc2.CodeInvalidRequest, "a message is an object"
	}
	answer := m.Result != nil || m.Error != nil
	if m.ID != nil && !soundID(m.ID) {
		if m.Method == nil && answer {
			return nil, ignored, "an answer to nothing"
		}
		return nil, jsonrpc2.CodeInvalidRequest, "the id of a message is a string or a whole number"
	}
	switch {
	case m.Method == nil && !answer:
		return m.ID, jsonrpc2.CodeInvalidRequest, "a message has a method, or a result or error"
	case m.Method != nil && (answer || m.Method[0] != '"'):
		return m.ID, jsonrpc2.CodeInvalidRequest, "the method of a request is a string, and it has no result"
	}
	return nil, 0, ""
}

func soundID(id json.RawMessage) bool {
	if id[0] == '"' {
		return true
	}
	_, err := strconv.ParseUint(string(id), 10, 63)
	return err == nil
}

// refuse answers what is no message.
func (s *stream) refuse(id json.RawMessage, code int64, why string) {
	if id == nil {
		id = json.RawMessage("null")
	}
	_ = s.WriteObject(map[string]any{ // the next read tells a stream that is gone
		"jsonrpc": "2.0", "id": id,
		"error": map[string]any{"code": code, "message": why},
	})
}

// isNull reports whether there are no parameters.
func isNull(raw json.RawMessage) bool {
	return len(raw) == 0 || bytes.Equal(bytes.TrimSpace(raw), []byte("null"))
}
