package edit

import (
	"bytes"
	"fmt"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"

	"gopkg.in/yaml.v3"
)

// Tidy brings a design's text into one form: keys by their names
// of today and quantities in their usual spelling, one space after colons and commas, none inside brackets, no blanks
// at ends of lines, at most one blank line in a row, lines ended as the
// first is. Indentation, order, quotes, comments and what spans several lines stay.
// The text must be a design that reads without problems; tidying twice gives
// the same as once.
func Tidy(src []byte) ([]byte, error) {
	plain := plainBreaks(src)
	out, err := tidied(plain)
	if newText(src).newline == "\r\n" && len(plain) < len(src) {
		out = bytes.ReplaceAll(out, []byte("\n"), []byte("\r\n"))
	}
	return out, err
}

// tidied is a text with plain line ends, tidied.
func tidied(src []byte) ([]byte, error) {
	if !bytes.HasSuffix(src, []byte("\n")) { // the parser hangs a last comment differently without
		src = append(bytes.Clone(src), '\n')
	}
	root, err := parse(src)
	if err != nil {
		return nil, err
	}
	t := &tidier{editor: editor{t: newText(src)}, sections: map[string]*design.Section{},
		now: map[*yaml.Node]string{}, guarded: map[int]bool{}, seen: map[*yaml.Node]bool{}}
	format := design.Format()
	for i := range format {
		t.sections[format[i].Name] = &format[i]
	}
	t.record(root, &format[0])
	t.spaces(root)
	out := t.lines(t.apply())
	after, err := parse(out)
	if err != nil {
		return nil, fmt.Errorf("the tidied file would not be YAML: %w", err)
	}
	if !t.same(root, after) {
		return nil, fmt.Errorf("the tidied file would say something else; nothing was changed")
	}
	return out, nil
}

// plainBreaks turns the line ends of Windows into line feeds, which say the same
// in YAML: the parser hangs comments differently on the former. Where returns
// stand alone too, everything stays.
func plainBreaks(src []byte) []byte {
	if bytes.Count(src, []byte("\r")) != bytes.Count(src, []byte("\r\n")) {
		return src
	}
	return bytes.ReplaceAll(src, []byte("\r\n"), []byte("\n"))
}

// tidier is one Tidy.
type tidier struct {
	editor
	sections map[string]*design.Section
	now      map[*yaml.Node]string // scalars that are spelt anew
	guarded  map[int]bool          // lines inside of what spans several
	seen     map[*yaml.Node]bool
}

// record goes through a mapping with the keys of a section.
func (t *tidier) record(n *yaml.Node, s *design.Section) {
	if n.Kind == yaml.ScalarNode {
		t.short(n, s.Name)
		return
	}
	if n.Kind != yaml.MappingNode {
		return
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		for k := range s.Keys {
			if s.Keys[k].Is(n.Content[i].Value) {
				t.key(n.Content[i], s.Keys[k].Name)
				t.value(n.Content[i+1], &s.Keys[k])
			}
		}
	}
}

// key spells a plain key as the format does.
func (t *tidier) key(n *yaml.Node, name string) {
	if n.Kind != yaml.ScalarNode || n.Style != 0 || n.Anchor != "" || n.Value == name {
		return
	}
	from := t.t.offset(n.Line, n.Column)
	if to, ok := t.t.scalarEnd(from, n); ok {
		t.now[n] = name
		t.splices = append(t.splices, splice{at: from, del: to - from, text: name})
	}
}

// short spells the quantity that stands in place of a record.
func (t *tidier) short(n *yaml.Node, section string) {
	switch section {
	case "vehicle load":
		t.quantity(n, quantity.Power)
	case "way":
		t.quantity(n, quantity.Current)
	}
}

// value goes into the value of a key.
func (t *tidier) value(n *yaml.Node, k *design.Key) {
	if k.Unit != "" {
		t.quantity(n, k.Unit)
	}
	if k.Kind == design.KindCurve && n.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(n.Content); i += 2 {
			t.quantity(n.Content[i], quantity.Speed)
			t.quantity(n.Content[i+1], quantity.Current)
		}
	}
	s := t.sections[k.Section]
	if s == nil {
		return
	}
	switch {
	case k.Kind == design.KindNamed && n.Kind == yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			t.record(n.Content[i+1], s)
		}
	case k.Kind == design.KindList && n.Kind == yaml.SequenceNode:
		for _, c := range n.Content {
			t.record(c, s)
		}
	case k.Kind == design.KindRecord:
		t.record(n, s)
	}
}

// quantity spells a plain scalar on one line in the usual way.
func (t *tidier) quantity(n *yaml.Node, dim quantity.Dimension) {
	if n.Kind != yaml.ScalarNode || n.Style != 0 || n.Anchor != "" {
		return
	}
	usual, err := quantity.Tidy(n.Value, dim)
	if err != nil || usual == n.Value || quote(usual) != usual && !strings.Contains(usual, "%") {
		return
	}
	from := t.t.offset(n.Line, n.Column)
	to, ok := t.t.scalarEnd(from, n)
	if !ok {
		return
	}
	t.now[n] = usual
	t.splices = append(t.splices, splice{at: from, del: to - from, text: usual})
}

// spaces tidies between the values of every mapping and list, and notes what
// spans several lines.
func (t *tidier) spaces(n *yaml.Node) {
	if n.Kind == yaml.ScalarNode {
		t.guard(n)
		return
	}
	if n.Kind == yaml.AliasNode || t.seen[n] {
		return
	}
	t.seen[n] = true
	if n.Style&yaml.FlowStyle != 0 {
		t.flowSpaces(n)
	}
	for i, c := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 0 && i+1 < len(n.Content) {
			t.colon(c, n.Content[i+1])
		}
		t.spaces(c)
	}
}

// guard keeps the lines that a scalar spans from being changed: only its first
// line's beginning is not its own.
func (t *tidier) guard(n *yaml.Node) {
	from := t.t.offset(n.Line, n.Column)
	if n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 || n.Anchor != "" {
		t.guardFrom(n.Line)
		return
	}
	if _, ok := t.t.scalarEnd(from, n); !ok {
		t.guardFrom(n.Line)
	}
}

// guardFrom keeps a line and those after it that are blank or indented: what
// belongs to it can be no more.
func (t *tidier) guardFrom(line int) {
	t.guarded[line] = true
	for line++; line <= len(t.t.starts); line++ {
		start := t.t.starts[line-1]
		if start < len(t.t.src) && !isSpace(t.t.src[start]) && breakLen(t.t.src[start:]) == 0 {
			return
		}
		t.guarded[line] = true
	}
}

// colon leaves one space between a key and a value on the same line.
func (t *tidier) colon(key, value *yaml.Node) {
	if key.Line != value.Line || key.Kind != yaml.ScalarNode || key.Anchor != "" {
		return
	}
	from := t.t.offset(key.Line, key.Column)
	end, ok := t.t.scalarEnd(from, key)
	at := t.t.offset(value.Line, value.Column)
	if !ok || at <= end || value.Kind == yaml.ScalarNode && value.Value == "" && value.Style == 0 {
		return
	}
	t.between(end, at, ":", ": ")
}

// between puts one text in place of blanks around a sign, and of nothing else.
func (t *tidier) between(from, to int, sign, tidy string) {
	gap := string(t.t.src[from:to])
	if gap != tidy && strings.Trim(gap, " \t") == sign {
		t.splices = append(t.splices, splice{at: from, del: to - from, text: tidy})
	}
}

// flowSpaces tidies after the opening bracket, around commas and before the
// closing bracket, wherever that stands on one line.
func (t *tidier) flowSpaces(n *yaml.Node) {
	open := t.t.skipAnchor(t.t.offset(n.Line, n.Column))
	_, end, empty, ok := t.t.flow(open)
	if !ok {
		return
	}
	if empty {
		if strings.Trim(string(t.t.src[open+1:end-1]), " \t") == "" && end-open > 2 {
			t.splices = append(t.splices, splice{at: open + 1, del: end - open - 2})
		}
		return
	}
	step := 1
	if n.Kind == yaml.MappingNode {
		step = 2
	}
	last, sign, tidy := open+1, "", ""
	for i := 0; i+step-1 < len(n.Content); i += step {
		at := t.t.offset(n.Content[i].Line, n.Content[i].Column)
		if last >= 0 && at >= last {
			t.between(last, at, sign, tidy)
		}
		last, sign, tidy = t.end(n.Content[i+step-1]), ",", ", "
	}
	if last >= 0 && last <= end-1 {
		gap := strings.Trim(string(t.t.src[last:end-1]), " \t")
		if gap == "" || gap == "," {
			t.between(last, end-1, gap, "")
		}
	}
}

// end is where a value inside a flow collection ends; -1 = not known.
func (t *tidier) end(n *yaml.Node) int {
	from := t.t.offset(n.Line, n.Column)
	switch {
	case n.Anchor != "":
		return -1
	case n.Kind == yaml.AliasNode:
		if end := from + 1 + len(n.Value); bytes.HasPrefix(t.t.src[from:], []byte("*"+n.Value)) {
			return end
		}
		return -1
	case n.Kind == yaml.ScalarNode:
		if n.Value == "" && n.Style == 0 { // nothing there
			return -1
		}
		if end, ok := t.t.scalarEnd(from, n); ok {
			return end
		}
		return -1
	}
	_, end, _, ok := t.t.flow(from)
	if !ok {
		return -1
	}
	return end
}

// lines tidies line ends and blank lines outside of what spans several lines.
// No splice adds or takes a line, so that line numbers still hold.
func (t *tidier) lines(src []byte) []byte {
	text := newText(src)
	var out bytes.Buffer
	if bytes.HasPrefix(src, bom) {
		out.Write(bom)
	}
	blank := 0
	for i, start := range text.starts {
		end := len(src)
		if i+1 < len(text.starts) {
			end = text.starts[i+1]
		}
		line := string(src[start:end])
		if t.guarded[i+1] {
			blank = 0
			out.WriteString(line)
			continue
		}
		body := strings.TrimRight(line, "\r\n")
		if body+"\n" != line && body+"\r\n" != line && body != line { // a rarer break
			blank = 0
			out.WriteString(line)
			continue
		}
		body = strings.TrimRight(body, " \t")
		if blank++; body != "" {
			blank = 0
		}
		if blank > 1 || body == "" && end == len(src) {
			continue
		}
		out.WriteString(body + "\n")
	}
	tidied := bytes.TrimRight(out.Bytes(), "\n")
	if len(t.guarded) > 0 && t.guarded[len(text.starts)] || len(tidied) == 0 {
		return out.Bytes()
	}
	return append(tidied, '\n')
}

// same tells whether two trees say the same but for the scalars spelt anew.
func (t *tidier) same(a, b *yaml.Node) bool {
	if a.Kind != b.Kind || a.Anchor != b.Anchor || len(a.Content) != len(b.Content) {
		return false
	}
	want := a.Value
	if now, ok := t.now[a]; ok {
		want = now
	} else if a.Tag != b.Tag {
		return false
	}
	if want != b.Value {
		return false
	}
	for i := range a.Content {
		if !t.same(a.Content[i], b.Content[i]) {
			return false
		}
	}
	return comments(a) == comments(b)
}

// comments are the comments at a node, blanks at their ends left out.
func comments(n *yaml.Node) string {
	list := strings.Split(n.HeadComment+"\n"+n.LineComment+"\n"+n.FootComment, "\n")
	for i, c := range list {
		list[i] = strings.TrimRight(c, " \t\r")
	}
	return strings.TrimRight(strings.Join(list, "\n"), "\n")
}
