// Package slips finds what a hand does wrong in the layout of a YAML text:
// indentation, brackets, quotes, commas and colons. A YAML parser stops at the
// first place where it cannot go on, which is often lines after the mistake; this
// package looks line by line for the mistake itself. It is asked only about texts
// that a parser has refused, and knows of the format no more than which words are
// keys.
package slips

import (
	"bytes"
	"sort"
	"strings"
	"unicode/utf8"
)

// Slip is one mistake and where it is; Line and Col count from 1, Col in characters.
type Slip struct {
	Line, Col      int
	What, Expected string
}

// Find gives the slips of a text, at most so many, in the order of its lines, and
// the text with them mended in place: no line is added or taken away. The second
// is nil when a slip can be mended in more ways than one, or when there is none.
// isKey tells the keys of the format, in any spelling.
func Find(src []byte, isKey func(string) bool, most int) ([]Slip, []byte) {
	text := strings.ReplaceAll(string(src), "\r\n", "\n")
	if strings.ContainsAny(text, "\r\u0085\u2028\u2029") {
		return nil, nil // lines are not what they seem
	}
	f := &finder{lines: strings.Split(text, "\n"), isKey: isKey, most: most}
	f.measure()
	for i := 0; i < len(f.lines) && len(f.slips) < most; {
		i = f.line(i)
	}
	if len(f.slips) < most {
		f.unclosed(len(f.lines))
	}
	sort.SliceStable(f.slips, func(i, j int) bool {
		a, b := f.slips[i], f.slips[j]
		return a.Line < b.Line || a.Line == b.Line && a.Col < b.Col
	})
	if len(f.slips) == 0 || len(f.slips) >= most || f.unsure {
		return f.slips, nil
	}
	return f.slips, f.mended()
}

// finder is one Find.
type finder struct {
	lines  []string
	isKey  func(string) bool
	most   int
	slips  []Slip
	edits  []edit
	unsure bool // a slip has more than one mend

	indents []int // of each line, as mended; -1 = nothing on it
	tabs    []int // byte of the first sign in the indentation that is no space; -1 = none
	unit    int   // one step of indentation
	levels  []level
	opener  int // column of a key or dash that waits for its block; -1 = none
	flow    []bracket
	last    int   // the last line with content
	plain   bool  // it ends in text without quotes, which the next line may go on with
	value   place // where the value on it begins

	anchors map[string]bool
}

// place is a byte of a line.
type place struct{ line, at int }

// edit is one replacement of bytes of a line.
type edit struct {
	place
	del  int
	text string
}

// report adds a slip at a byte of a line.
func (f *finder) report(p place, what, expected string) {
	line := f.lines[p.line]
	col := utf8.RuneCountInString(line[:min(p.at, len(line))]) + 1
	f.slips = append(f.slips, Slip{p.line + 1, col, what, expected})
}

// mend replaces bytes of a line.
func (f *finder) mend(p place, del int, text string) { f.edits = append(f.edits, edit{p, del, text}) }

// measure notes the indentation of every line, the usual step and the anchors.
func (f *finder) measure() {
	f.opener, f.anchors = -1, map[string]bool{}
	f.indents, f.tabs = make([]int, len(f.lines)), make([]int, len(f.lines))
	for i, line := range f.lines {
		if i == 0 {
			line = strings.TrimPrefix(line, "\uFEFF")
		}
		body := strings.TrimLeft(line, " \t\u00a0")
		f.indents[i], f.tabs[i] = len(line)-len(body), -1
		if body == "" || body[0] == '#' {
			f.indents[i] = -1
			continue
		}
		if at := strings.IndexAny(line[:len(line)-len(body)], "\t\u00a0"); at >= 0 {
			f.tabs[i] = at
			continue
		}
		if f.unit == 0 {
			f.unit = f.indents[i]
		}
		for rest := line; ; {
			at := strings.IndexByte(rest, '&')
			if at < 0 {
				break
			}
			rest = rest[at+1:]
			f.anchors[word(rest)] = true
		}
	}
	if f.unit == 0 {
		f.unit = 2
	}
}

// word is a text up to its first blank or sign of YAML.
func word(s string) string {
	if at := strings.IndexAny(s, " \t,[]{}"); at >= 0 {
		return s[:at]
	}
	return s
}

// mended is the text with its slips mended.
func (f *finder) mended() []byte {
	sort.SliceStable(f.edits, func(i, j int) bool { return f.edits[i].at < f.edits[j].at })
	byLine := map[int][]edit{}
	for _, e := range f.edits {
		byLine[e.line] = append(byLine[e.line], e)
	}
	var out bytes.Buffer
	for i, line := range f.lines {
		if i > 0 {
			out.WriteByte('\n')
		}
		last := 0
		if body := strings.TrimLeft(line, " \t\u00a0"); f.indents[i] >= 0 && !strings.HasPrefix(line, "\uFEFF") {
			out.WriteString(strings.Repeat(" ", f.indents[i]))
			last = len(line) - len(body)
		}
		for _, e := range byLine[i] {
			if e.at < last || e.at > len(line) {
				continue
			}
			out.WriteString(line[last:e.at] + e.text)
			last = min(e.at+e.del, len(line))
		}
		out.WriteString(line[last:])
	}
	return out.Bytes()
}
