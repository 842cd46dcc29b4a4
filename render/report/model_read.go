package report

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"fusewright/harness/design/problem"
	"fusewright/library"
)

// Limits on what ReadModel takes, so that no input can exhaust the program.
const (
	// MaxModelBytes is the size above which a model is refused: about six times
	// the model of a harness of five thousand wires.
	MaxModelBytes   = 64 << 20
	maxModelDepth   = 32  // levels of lists and objects
	maxModelLibrary = 100 // library texts
)

// ReadModel reads the JSON of a model; file names it in messages. It gives the
// model and its whole content as plain values for Differences. The error is a
// problem.List with the place where the text is wrong.
func ReadModel(file string, src []byte) (*Model, any, error) {
	refuse := func(offset int64, what, expected string) (*Model, any, error) {
		return nil, nil, problem.List{{Pos: posAt(file, src, offset), What: what, Expected: expected}}
	}
	if len(src) > MaxModelBytes {
		return refuse(-1, fmt.Sprintf("the model has more than %d bytes", MaxModelBytes), "at most 64 MiB")
	}
	if at := tooDeep(src); at >= 0 {
		return refuse(at, fmt.Sprintf("nested more than %d levels deep", maxModelDepth), "a model of this program")
	}
	var m Model
	if err := json.Unmarshal(src, &m); err != nil {
		offset, what := jsonFault(err)
		return refuse(offset, what, "a model as written by 'fusewright export --to json'")
	}
	if m.Fusewright != ModelVersion {
		return refuse(0, fmt.Sprintf("model version %d is not known", m.Fusewright),
			fmt.Sprintf("\"fusewright_model\": %d", ModelVersion))
	}
	if n := len(m.Libraries); n > maxModelLibrary {
		return refuse(0, fmt.Sprintf("%d libraries", n), fmt.Sprintf("at most %d", maxModelLibrary))
	}
	for i, t := range append([]SourceText{m.Source}, m.Libraries...) {
		if hashOf([]byte(t.Text)) != t.SHA256 {
			name := "the design text"
			if i > 0 {
				name = fmt.Sprintf("library text %d", i)
			}
			return refuse(0, name+" does not match its sha256", "the model as it was written")
		}
	}
	var all any
	if err := json.Unmarshal(src, &all); err != nil { // it was read above
		return nil, nil, err
	}
	return &m, all, nil
}

// Texts are the library texts of the model.
func (m *Model) Texts() []library.Text {
	var list []library.Text
	for _, l := range m.Libraries {
		list = append(list, library.Text{File: l.File, Data: []byte(l.Text)})
	}
	return list
}

// Plain gives the model as the plain values that ReadModel gives of a file.
func (m *Model) Plain() (any, error) {
	var b bytes.Buffer
	if err := WriteJSON(&b, m); err != nil {
		return nil, err
	}
	var all any
	err := json.Unmarshal(b.Bytes(), &all)
	return all, err
}

// tooDeep is the offset where brackets nest beyond the limit, or -1.
func tooDeep(src []byte) int64 {
	depth, inText, escaped := 0, false, false
	for i, c := range src {
		switch {
		case escaped:
			escaped = false
		case inText && c == '\\':
			escaped = true
		case c == '"':
			inText = !inText
		case inText:
		case c == '{', c == '[':
			if depth++; depth > maxModelDepth {
				return int64(i)
			}
		case c == '}', c == ']':
			depth--
		}
	}
	return -1
}

// jsonFault takes the place and the reason out of an error of the JSON package.
func jsonFault(err error) (offset int64, what string) {
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		return max(syntax.Offset-1, 0), "not JSON: " + syntax.Error()
	case errors.As(err, &kind):
		return max(kind.Offset-1, 0), fmt.Sprintf("%q is a %s", kind.Field, kind.Value)
	case errors.Is(err, io.ErrUnexpectedEOF):
		return 0, "not JSON: it ends too early"
	}
	return 0, "not JSON: " + err.Error()
}

// posAt is the line and column of an offset; the whole file for a negative one.
func posAt(file string, src []byte, offset int64) problem.Pos {
	if offset < 0 {
		return problem.Pos{File: file}
	}
	before := src[:min(int(offset), len(src))]
	start := bytes.LastIndexByte(before, '\n') + 1
	return problem.Pos{File: file, Line: bytes.Count(before, []byte("\n")) + 1,
		Col: len([]rune(string(before[start:]))) + 1}
}
