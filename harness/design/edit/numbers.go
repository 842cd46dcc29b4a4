package edit

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"

	"gopkg.in/yaml.v3"
)

// numbersHead opens the section where there is none.
const numbersHead = "numbers:   # labels that stay; written by fmt --number"

// revisionKey is the key of the section that is no label.
const revisionKey = "revision"

// Numbers writes the section that holds labels: those of the list and no others,
// in the order of their letters and numbers, with the revision that they are for
// first; "" = none. Lines that are there already stay as they are; comments stay too,
// where a line goes or says something else. A section that is missing comes at the end
// of the document; one in braces gets lines, in a design that is not in braces itself.
func Numbers(src []byte, revision string, list []design.Number) ([]byte, error) {
	root, err := parse(src)
	if err != nil {
		return nil, err
	}
	list = slices.SortedFunc(slices.Values(list), design.Number.Compare)
	if revision != "" {
		list = append([]design.Number{{Label: revisionKey, Of: design.Text{Value: revision}}}, list...)
	}
	s := &numberLines{t: newText(src), indent: "  ", lines: map[string]*numberLine{}}
	if root.Kind == yaml.MappingNode && root.Style&yaml.FlowStyle != 0 {
		now, err := s.inBraces(root, list)
		if err != nil {
			return nil, err
		}
		return now, sameBut(root, now, "numbers")
	}
	from, to, head, err := s.find(root)
	if err != nil {
		return nil, err
	}
	write := func(head string) ([]byte, error) {
		now := slices.Concat(src[:from], []byte(head+s.written(list)), src[to:])
		return now, sameBut(root, now, "numbers")
	}
	now, err := write(head)
	if err != nil && strings.HasPrefix(head, s.t.newline) { // a blank line more is text here
		return write(strings.TrimPrefix(head, s.t.newline))
	}
	return now, err
}

// numberLines are the lines of the section as it stands.
type numberLines struct {
	t      *text
	indent string
	lines  map[string]*numberLine // by label
}

// numberLine is a line in the pieces that stay when its value is another.
type numberLine struct {
	above       string // comments and blank lines
	lead, after string // of the value, the line's end with it
	text        string // between the two
	value       string
}

// find takes the lines of the section: what of the text gives way to them, and what comes
// before them.
func (s *numberLines) find(root *yaml.Node) (from, to int, head string, err error) {
	key, n := section(root, "numbers")
	switch {
	case key == nil:
		from, head = s.opening(root)
		return from, from, head, nil
	case n.Kind == yaml.MappingNode && n.Style&yaml.FlowStyle != 0 && n.Anchor == "":
		return s.braces(key, n)
	case n.Kind != yaml.MappingNode || n.Anchor != "":
		return 0, 0, "", errNumbers
	}
	line := key.Line
	from, _ = s.t.lineEnd(line)
	s.indent = strings.Repeat(" ", n.Content[0].Column-1)
	for k := 0; k+1 < len(n.Content); k += 2 {
		label, of := n.Content[k], n.Content[k+1]
		if of.Line != label.Line || !s.t.endsOn(of) || label.Line <= line {
			return 0, 0, "", fmt.Errorf("numbers, %s: not on one line of its own", label.Value)
		}
		begin, _ := s.t.lineEnd(line)
		line = label.Line
		s.note(label, of, begin)
		to, _ = s.t.lineEnd(line)
	}
	return from, to, "", nil
}

// note takes a line apart; begin is where the comments above it begin.
func (s *numberLines) note(label, of *yaml.Node, begin int) {
	start, at := s.t.offset(label.Line, 1), s.t.offset(of.Line, of.Column)
	end, _ := s.t.scalarEnd(at, of)
	if of.Kind == yaml.AliasNode {
		end = at + len("*"+of.Value)
	}
	last, whole := s.t.lineEnd(label.Line)
	src := s.t.src
	l := &numberLine{above: string(src[begin:start]), lead: string(src[start:at]), text: string(src[at:end]),
		after: string(src[end:last]), value: follow(of).Value}
	if !whole {
		l.after += s.t.newline
	}
	name := label.Value
	if fold(name) == revisionKey {
		name = revisionKey
	}
	s.lines[name] = l
}

// errNumbers is of a section that cannot be rewritten without losing something.
var errNumbers = errors.New("numbers is not written one label a line: write each label on a line of its own " +
	"without braces, or take the section out, and its comments with it")

// braces takes a section in braces out of its line.
func (s *numberLines) braces(key, n *yaml.Node) (from, to int, head string, err error) {
	at := s.t.offset(n.Line, n.Column)
	_, end, _, ok := s.t.flow(at)
	if !ok || bytes.ContainsRune(s.t.src[at:end], '#') {
		return 0, 0, "", errNumbers
	}
	s.indent = strings.Repeat(" ", key.Column+1)
	to, whole := s.t.lineEnd(s.t.lineAt(end))
	if head = string(s.t.src[end:to]); !whole {
		head += s.t.newline
	}
	return len(bytes.TrimRight(s.t.src[:at], " \t")), to, head, nil
}

// opening is where a new section goes, and its head.
func (s *numberLines) opening(root *yaml.Node) (at int, head string) {
	margin := strings.Repeat(" ", max(root.Column-1, 0))
	s.indent = margin + s.indent
	at = s.t.documentEnd()
	if at > 0 && breakLen(s.t.src[at-1:]) == 0 {
		head = s.t.newline
	}
	return at, head + s.t.newline + margin + numbersHead + s.t.newline
}

// written is the lines of a list, with the comments of those that go.
func (s *numberLines) written(list []design.Number) string {
	for label := range s.lines {
		if !slices.ContainsFunc(list, func(n design.Number) bool { return n.Label == label }) {
			list = append(list, design.Number{Label: label})
		}
	}
	first := func(n design.Number) int {
		if n.Label == revisionKey {
			return 0
		}
		return 1
	}
	list = slices.SortedFunc(slices.Values(list), design.Number.Compare)
	slices.SortStableFunc(list, func(a, b design.Number) int { return first(a) - first(b) })
	var out strings.Builder
	for _, n := range list {
		out.WriteString(s.line(n))
	}
	return out.String()
}

// line is a line as it stands, with another value, or a new one; of what stands for
// nothing the comments alone.
func (s *numberLines) line(n design.Number) string {
	l := s.lines[n.Label]
	switch {
	case l == nil:
		return s.indent + n.Label + ": " + inLine(n.Of.Value) + s.t.newline
	case n.Of.Value == "":
		if _, comment, ok := strings.Cut(l.after, "#"); ok {
			return l.above + s.indent + "#" + comment
		}
		return l.above
	case n.Of.Value == l.value:
		return l.above + l.lead + l.text + l.after
	}
	return l.above + l.lead + inLine(n.Of.Value) + l.after
}

// inBraces writes the section into a design that is in braces.
func (s *numberLines) inBraces(root *yaml.Node, list []design.Number) ([]byte, error) {
	var pairs []string
	for _, n := range list {
		pairs = append(pairs, n.Label+": "+quote(n.Of.Value))
	}
	text := "{" + strings.Join(pairs, ", ") + "}"
	src := s.t.src
	if _, n := section(root, "numbers"); n != nil {
		at := s.t.offset(n.Line, n.Column)
		_, end, _, ok := s.t.flow(at)
		if !ok || n.Anchor != "" || bytes.ContainsRune(src[at:end], '#') {
			return nil, errNumbers
		}
		return slices.Concat(src[:at], []byte(text), src[end:]), nil
	}
	at, empty, ok := s.t.lastInside(s.t.offset(root.Line, root.Column))
	switch {
	case !ok:
		return nil, fmt.Errorf("the end of the design's braces is not found")
	case empty:
		text = "numbers: " + text
	case src[at-1] == ',':
		text = " numbers: " + text
	default:
		text = ", numbers: " + text
	}
	return slices.Concat(src[:at], []byte(text), src[at:]), nil
}

// section is a key of the design and its value; nil when it is not there.
func section(root *yaml.Node, name string) (key, value *yaml.Node) {
	for i := 0; i+1 < len(root.Content); i += 2 {
		if fold(root.Content[i].Value) == name {
			return root.Content[i], root.Content[i+1]
		}
	}
	return nil, nil
}

// inLine is a value that has the rest of a line: commas need no quotes there.
func inLine(value string) string {
	if strings.Contains(value, ",") && quote(strings.ReplaceAll(value, ",", "")) == strings.ReplaceAll(value, ",", "") {
		return value
	}
	return quote(value)
}

// sameBut parses a text that was edited: but for one section it says what it said.
func sameBut(was *yaml.Node, now []byte, section string) error {
	root, err := parse(now)
	if err != nil {
		return fmt.Errorf("the changed file would not be YAML: %w", err)
	}
	rest := func(n *yaml.Node) *yaml.Node {
		c := &yaml.Node{Kind: n.Kind}
		for i := 0; i+1 < len(n.Content); i += 2 {
			if fold(n.Content[i].Value) != section {
				c.Content = append(c.Content, n.Content[i], n.Content[i+1])
			}
		}
		return c
	}
	if !sameValues(rest(was), rest(root)) {
		return fmt.Errorf("the changed file would say something else; nothing was changed")
	}
	return nil
}

func sameValues(a, b *yaml.Node) bool {
	return a.Kind == b.Kind && a.Value == b.Value && slices.EqualFunc(a.Content, b.Content, sameValues)
}
