package edit

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"

	"gopkg.in/yaml.v3"
)

// numbersHead opens the section where there is none.
const numbersHead = "numbers:   # labels that stay; written by fmt --number"

// Numbers writes the section that holds labels: those of the list and no others,
// in the order of their letters and numbers, with the revision that they are for
// first; "" = none. Lines that are there already stay as they are, with the
// comments before them. A section that is missing comes at the end of the text.
func Numbers(src []byte, revision string, list []design.Number) ([]byte, error) {
	root, err := parse(src)
	if err != nil {
		return nil, err
	}
	t := newText(src)
	s := &numberLines{t: t, indent: "  ", lines: map[string]string{}}
	from, to, err := s.find(root)
	if err != nil {
		return nil, err
	}
	var out strings.Builder
	out.Write(src[:from])
	if from == len(src) {
		out.WriteString(s.opening(src))
	}
	if revision != "" {
		out.WriteString(s.line("revision", revision))
	}
	list = slices.Clone(list)
	slices.SortFunc(list, design.Number.Compare)
	for _, n := range list {
		out.WriteString(s.line(n.Label, n.Of.Value))
	}
	out.Write(src[to:])
	now := []byte(out.String())
	return now, sameBut(root, now, "numbers")
}

// numberLines are the lines of the section as it stands.
type numberLines struct {
	t      *text
	indent string
	lines  map[string]string // by key, with the comments before them
	values map[string]string
}

// find takes the lines of the section: where they begin and end in the text, both
// its end when there is no section.
func (s *numberLines) find(root *yaml.Node) (from, to int, err error) {
	if root.Kind != yaml.MappingNode || root.Style&yaml.FlowStyle != 0 {
		return 0, 0, fmt.Errorf("the design is written in braces; numbers need lines of their own")
	}
	s.values = map[string]string{}
	for i := 0; i+1 < len(root.Content); i += 2 {
		key, n := root.Content[i], root.Content[i+1]
		if fold(key.Value) != "numbers" {
			continue
		}
		if n.Kind != yaml.MappingNode || n.Style&yaml.FlowStyle != 0 || n.Anchor != "" {
			return 0, 0, fmt.Errorf("numbers is not written one label a line")
		}
		line := key.Line
		from, _ = s.t.lineEnd(line)
		s.indent = strings.Repeat(" ", n.Content[0].Column-1)
		for k := 0; k+1 < len(n.Content); k += 2 {
			label, of := n.Content[k], n.Content[k+1]
			if of.Line != label.Line || !s.t.endsOn(of) || label.Line <= line {
				return 0, 0, fmt.Errorf("numbers, %s: not on one line of its own", label.Value)
			}
			begin, _ := s.t.lineEnd(line)
			line = label.Line
			to, _ = s.t.lineEnd(line)
			s.lines[label.Value] = string(s.t.src[begin:to])
			s.values[label.Value] = follow(of).Value
		}
		return from, to, nil
	}
	return len(s.t.src), len(s.t.src), nil
}

// opening is the head of a new section.
func (s *numberLines) opening(src []byte) string {
	end := ""
	if n := len(src); n > 0 && src[n-1] != '\n' && src[n-1] != '\r' {
		end = s.t.newline
	}
	return end + s.t.newline + numbersHead + s.t.newline
}

// line is a line as it stands, or a new one when it says something else.
func (s *numberLines) line(key, value string) string {
	is, ok := s.lines[key]
	if !ok || s.values[key] != value {
		return s.indent + key + ": " + inLine(value) + s.t.newline
	}
	if !strings.HasSuffix(is, "\n") && !strings.HasSuffix(is, "\r") {
		is += s.t.newline
	}
	return is
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
