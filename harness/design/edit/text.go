package edit

import (
	"bytes"
	"slices"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

var bom = []byte("\uFEFF")

// text is a file with the places of its lines, counted as YAML counts them.
type text struct {
	src     []byte
	starts  []int  // by line, from 0
	newline string // of its first line
}

func newText(src []byte) *text {
	t := &text{src: src, newline: "\n", starts: []int{0}}
	if bytes.HasPrefix(src, bom) {
		t.starts[0] = len(bom)
	}
	for at := 0; at < len(src); {
		n := breakLen(src[at:])
		if n == 0 {
			at++
			continue
		}
		if len(t.starts) == 1 && n == 2 && src[at] == '\r' {
			t.newline = "\r\n"
		}
		at += n
		t.starts = append(t.starts, at)
	}
	return t
}

// breakLen is the length of a line break at the start of a text, or 0.
func breakLen(s []byte) int {
	switch {
	case len(s) == 0:
		return 0
	case bytes.HasPrefix(s, []byte("\r\n")):
		return 2
	case s[0] == '\n', s[0] == '\r':
		return 1
	case bytes.HasPrefix(s, []byte("\u0085")):
		return 2
	case bytes.HasPrefix(s, []byte("\u2028")), bytes.HasPrefix(s, []byte("\u2029")):
		return 3
	}
	return 0
}

// offset is where a line and column stand, both from 1; columns are characters.
func (t *text) offset(line, column int) int {
	at := len(t.src)
	if line >= 1 && line <= len(t.starts) {
		at = t.starts[line-1]
	}
	for ; column > 1 && at < len(t.src); column-- {
		_, n := utf8.DecodeRune(t.src[at:])
		at += n
	}
	return at
}

// lineEnd is where the line after a line begins; false = the file ends on it.
func (t *text) lineEnd(line int) (int, bool) {
	if line < len(t.starts) {
		return t.starts[line], true
	}
	return len(t.src), false
}

// lineAt is the line on which a place of the text stands, from 1.
func (t *text) lineAt(at int) int {
	i, found := slices.BinarySearch(t.starts, at)
	if found {
		i++
	}
	return i
}

// documentEnd is where the mark that ends a document stands, or the end of the text.
func (t *text) documentEnd() int {
	for _, at := range t.starts {
		rest, ok := bytes.CutPrefix(t.src[at:], []byte("..."))
		if ok && (len(rest) == 0 || isSpace(rest[0]) || breakLen(rest) > 0) {
			return at
		}
	}
	return len(t.src)
}

// scalarEnd is the end of a scalar that stands on one line; false when it does
// not, or when its text is not what the tree says.
func (t *text) scalarEnd(from int, n *yaml.Node) (int, bool) {
	rest := t.src[from:]
	switch {
	case n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0:
		end, ok := quotedEnd(rest)
		return from + end, ok && !hasBreak(rest[:end])
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return 0, false
	}
	if !bytes.HasPrefix(rest, []byte(n.Value)) {
		return 0, false
	}
	return from + len(n.Value), true
}

// quotedEnd is the end of a quoted scalar.
func quotedEnd(s []byte) (int, bool) {
	if len(s) == 0 {
		return 0, false
	}
	q := s[0]
	for i := 1; i < len(s); i++ {
		switch {
		case q == '"' && s[i] == '\\':
			i++
		case s[i] == q && q == '\'' && i+1 < len(s) && s[i+1] == q:
			i++
		case s[i] == q:
			return i + 1, true
		}
	}
	return 0, false
}

func hasBreak(s []byte) bool {
	for i := range s {
		if breakLen(s[i:]) > 0 {
			return true
		}
	}
	return false
}

// endsOn tells whether a value ends on the line it begins on.
func (t *text) endsOn(n *yaml.Node) bool {
	from := t.offset(n.Line, n.Column)
	switch {
	case n.Kind == yaml.AliasNode:
		return true
	case n.Kind == yaml.ScalarNode:
		_, ok := t.scalarEnd(from, n)
		return ok && n.Anchor == ""
	case n.Style&yaml.FlowStyle != 0 && n.Anchor == "":
		_, end, _, ok := t.flow(from)
		return ok && !hasBreak(t.src[from:end])
	}
	return false
}

// lastInside is the place after the last thing inside a flow record.
func (t *text) lastInside(from int) (at int, empty, ok bool) {
	last, _, empty, ok := t.flow(t.skipAnchor(from))
	return last, empty, ok
}

// skipAnchor steps over an anchor, since the tree has the place of that.
func (t *text) skipAnchor(from int) int {
	if from < len(t.src) && t.src[from] == '&' {
		if i := bytes.IndexAny(t.src[from:], "{["); i > 0 {
			return from + i
		}
	}
	return from
}

// flow scans a flow collection: the place after its last thing, and its end.
func (t *text) flow(from int) (last, end int, empty, ok bool) {
	if from >= len(t.src) || !strings.ContainsRune("{[", rune(t.src[from])) {
		return 0, 0, false, false
	}
	depth, last := 0, from+1
	for i := from; i < len(t.src); i++ {
		switch c := t.src[i]; {
		case c == '{' || c == '[':
			depth++
		case c == '}' || c == ']':
			if depth--; depth == 0 {
				return last, i + 1, last == from+1, true
			}
		case c == '"' || c == '\'':
			if !t.opens(i) {
				break
			}
			n, ok := quotedEnd(t.src[i:])
			if !ok {
				return 0, 0, false, false
			}
			i += n - 1
		case c == '#' && i > 0 && isSpace(t.src[i-1]):
			for i+1 < len(t.src) && breakLen(t.src[i+1:]) == 0 {
				i++
			}
			continue
		case isSpace(c) || breakLen(t.src[i:]) > 0:
			i += max(breakLen(t.src[i:])-1, 0)
			continue
		}
		if i > from {
			last = i + 1
		}
	}
	return 0, 0, false, false
}

// opens tells whether a quote at a place begins a quoted scalar: it follows a
// bracket, a comma or a colon; inside plain text it is a letter like others.
func (t *text) opens(at int) bool {
	for i := at - 1; i >= 0; i-- {
		if c := t.src[i]; !isSpace(c) && breakLen(t.src[i:]) == 0 {
			return strings.ContainsRune("{[,:", rune(c))
		}
	}
	return true
}

func isSpace(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }
