// Package edit changes the text of a design file in place. It moves no line
// that it does not change: comments, order, spacing and quoting stay, because
// nothing is written from a tree; the tree only says where in the text a value
// stands.
//
// Set puts values into records. Tidy brings spacing and quantities into one
// form. Both prove their result: the new text is parsed again and must differ
// from the old one by nothing but what was asked for.
package edit

import (
	"bytes"
	"fmt"
	"slices"
	"sort"
	"strings"

	"fusewright/harness/design"

	"gopkg.in/yaml.v3"
)

// Change sets a key of a record. Path leads to the record: keys of mappings,
// compared without regard to case and space, and indices of lists. Records
// that are missing on the way are made.
type Change struct {
	Path       []string
	Key, Value string
	// Items is a list to be the value in place of Value, of names that stand on one line.
	Items []string
}

// splice is one replacement of bytes of a text.
type splice struct {
	at, del int
	text    string
}

// Set makes changes. The error says which one cannot be made; the text is then
// nil.
func Set(src []byte, changes []Change) ([]byte, error) {
	if len(changes) == 0 {
		return append([]byte(nil), src...), nil
	}
	root, err := parse(src)
	if err != nil {
		return nil, err
	}
	e := &editor{t: newText(src), set: map[string]string{}, added: map[*yaml.Node]int{}, made: map[string]*record{}}
	for _, c := range changes {
		if err := e.change(root, c); err != nil {
			return nil, fmt.Errorf("%s: %w", strings.Join(append(c.Path, c.Key), " › "), err)
		}
	}
	e.writeRecords()
	out := e.apply()
	if err := e.check(out, changes); err != nil {
		return nil, err
	}
	return out, nil
}

// parse reads the one document of a text.
func parse(src []byte) (*yaml.Node, error) {
	var doc yaml.Node
	if err := yaml.Unmarshal(bytes.TrimPrefix(src, bom), &doc); err != nil {
		return nil, err
	}
	if len(doc.Content) == 0 {
		return nil, fmt.Errorf("the file is empty")
	}
	return doc.Content[0], nil
}

// editor gathers the splices of a set of changes.
type editor struct {
	t       *text
	splices []splice
	set     map[string]string  // values by record position and key: anchors are shared
	added   map[*yaml.Node]int // keys added to a flow record so far
	made    map[string]*record // new records by path
	order   []*record
}

// record is a new record in the making.
type record struct {
	parent *yaml.Node
	key    string
	keys   []Change
}

// change finds the record of a change and edits it.
func (e *editor) change(root *yaml.Node, c Change) error {
	n := root
	for i, step := range c.Path {
		next := child(n, step)
		if next == nil {
			return e.make(n, c, i)
		}
		n = follow(next)
	}
	id := fmt.Sprintf("%d:%d %s", n.Line, n.Column, fold(c.Key))
	if was, ok := e.set[id]; ok {
		if was != c.text() {
			return fmt.Errorf("the record is shared by an anchor and would need %s and %s", was, c.text())
		}
		return nil
	}
	e.set[id] = c.text()
	switch n.Kind {
	case yaml.ScalarNode: // the short form of a record: a way's rating
		return e.replace(n, c.Value)
	case yaml.MappingNode:
		if value := child(n, c.Key); value != nil {
			if value.Kind == yaml.AliasNode {
				return fmt.Errorf("its value is shared by an anchor")
			}
			if c.Items != nil {
				return e.replaceList(value, c.text())
			}
			return e.replace(value, c.Value)
		}
		return e.insert(n, c.Key, c.text())
	}
	return fmt.Errorf("it is a list")
}

// make notes a record that is missing; only the last step of a path may be.
func (e *editor) make(parent *yaml.Node, c Change, i int) error {
	if i != len(c.Path)-1 || parent.Kind != yaml.MappingNode {
		return fmt.Errorf("there is no %q", c.Path[i])
	}
	id := fmt.Sprintf("%d:%d %s", parent.Line, parent.Column, fold(c.Path[i]))
	r := e.made[id]
	if r == nil {
		r = &record{parent: parent, key: c.Path[i]}
		e.made[id] = r
		e.order = append(e.order, r)
	}
	for _, have := range r.keys {
		if fold(have.Key) == fold(c.Key) {
			if have.text() != c.text() {
				return fmt.Errorf("the record is shared by an anchor and would need %s and %s", have.text(), c.text())
			}
			return nil
		}
	}
	r.keys = append(r.keys, c)
	return nil
}

// writeRecords inserts the new records.
func (e *editor) writeRecords() {
	for _, r := range e.order {
		parts := make([]string, len(r.keys))
		for i, c := range r.keys {
			parts[i] = c.Key + ": " + c.text()
		}
		// A mapping takes a key at its first line at least, so this cannot fail.
		_ = e.insert(r.parent, r.key, "{"+strings.Join(parts, ", ")+"}")
	}
}

// text is the value as it stands in the file.
func (c Change) text() string {
	if c.Items == nil {
		return quote(c.Value)
	}
	list := make([]string, len(c.Items))
	for i, x := range c.Items {
		list[i] = quote(x)
	}
	return "[" + strings.Join(list, ", ") + "]"
}

// replaceList puts a list in place of one, or of a word.
func (e *editor) replaceList(n *yaml.Node, list string) error {
	from := e.t.offset(n.Line, n.Column)
	to, ok := from, false
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		return fmt.Errorf("its value is shared by an anchor")
	case n.Kind == yaml.ScalarNode:
		to, ok = e.t.scalarEnd(from, n)
	case n.Kind == yaml.SequenceNode && n.Style&yaml.FlowStyle != 0:
		_, to, _, ok = e.t.flow(from)
	}
	if !ok || hasBreak(e.t.src[from:to]) {
		return fmt.Errorf("its value spans several lines")
	}
	e.splices = append(e.splices, splice{at: from, del: to - from, text: list})
	return nil
}

// replace puts a value in place of a scalar.
func (e *editor) replace(n *yaml.Node, value string) error {
	if n.Kind != yaml.ScalarNode {
		return fmt.Errorf("it has a record or list where a value should be")
	}
	from := e.t.offset(n.Line, n.Column)
	if n.Anchor != "" {
		return fmt.Errorf("its value is shared by an anchor")
	}
	to, ok := e.t.scalarEnd(from, n)
	if !ok {
		return fmt.Errorf("its value spans several lines")
	}
	e.splices = append(e.splices, splice{at: from, del: to - from, text: quote(value)})
	return nil
}

// insert adds a key to a mapping.
func (e *editor) insert(n *yaml.Node, key, value string) error {
	entry := key + ": " + value
	if n.Style&yaml.FlowStyle != 0 {
		at, empty, ok := e.t.lastInside(e.t.offset(n.Line, n.Column))
		if !ok {
			return fmt.Errorf("the end of its record was not found")
		}
		if !empty || e.added[n] > 0 {
			entry = ", " + entry
			if e.t.src[at-1] == ',' && e.added[n] == 0 {
				entry = entry[1:]
			}
		}
		e.added[n]++
		e.splices = append(e.splices, splice{at: at, text: entry})
		return nil
	}
	indent := strings.Repeat(" ", n.Column-1)
	line := e.after(n)
	if line < 0 { // before the first key
		at := e.t.offset(n.Content[0].Line, n.Content[0].Column)
		e.splices = append(e.splices, splice{at: at, text: entry + e.t.newline + indent})
		return nil
	}
	at, broken := e.t.lineEnd(line)
	text := indent + entry + e.t.newline
	if !broken { // the last line of the file lacks its end
		text = e.t.newline + indent + entry
	}
	e.splices = append(e.splices, splice{at: at, text: text})
	return nil
}

// after is the line of the last entry of a block mapping that stands on one
// line, key and value; -1 when none does.
func (e *editor) after(n *yaml.Node) int {
	line := -1
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		if value.Line == key.Line && e.t.endsOn(value) {
			line = value.Line
		}
	}
	return line
}

// apply makes the new text. Splices at one place keep their order.
func (e *editor) apply() []byte {
	sort.SliceStable(e.splices, func(i, j int) bool { return e.splices[i].at < e.splices[j].at })
	var out bytes.Buffer
	last := 0
	for _, s := range e.splices {
		out.Write(e.t.src[last:s.at])
		out.WriteString(s.text)
		last = s.at + s.del
	}
	out.Write(e.t.src[last:])
	return out.Bytes()
}

// check parses the new text: every change is there and, with them taken out,
// nothing else differs.
func (e *editor) check(out []byte, changes []Change) error {
	root, err := parse(out)
	if err != nil {
		return fmt.Errorf("the changed file would not be YAML: %w", err)
	}
	for _, c := range changes {
		n := root
		for _, step := range c.Path {
			if n = child(follow(n), step); n == nil {
				return fmt.Errorf("%s did not get into the file", strings.Join(c.Path, " › "))
			}
		}
		n = follow(n)
		if n.Kind == yaml.MappingNode {
			n = child(n, c.Key)
		}
		if n == nil || c.Items == nil && follow(n).Value != c.Value || c.Items != nil && !slices.Equal(itemsOf(n), c.Items) {
			return fmt.Errorf("%s › %s did not become %s", strings.Join(c.Path, " › "), c.Key, c.Value)
		}
	}
	return nil
}

// itemsOf are the values of a list of scalars.
func itemsOf(n *yaml.Node) (items []string) {
	for _, x := range follow(n).Content {
		items = append(items, follow(x).Value)
	}
	return items
}

// child is the value under a key or index; nil when there is none.
func child(n *yaml.Node, step string) *yaml.Node {
	switch n.Kind {
	case yaml.MappingNode:
		folded := fold(step)
		for _, same := range []func(word string) bool{
			func(word string) bool { return word == step }, // most are, and a list may be long
			func(word string) bool { return fold(word) == folded },
			(&design.Key{Name: step}).Is,
		} {
			for i := 0; i+1 < len(n.Content); i += 2 {
				if same(follow(n.Content[i]).Value) {
					return n.Content[i+1]
				}
			}
		}
	case yaml.SequenceNode:
		for i, c := range n.Content {
			if fmt.Sprint(i) == step {
				return c
			}
		}
	}
	return nil
}

// follow is the node that an alias stands for, or the node itself.
func follow(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return n.Alias
	}
	return n
}

// fold makes names comparable, as the reader does.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// quote gives a value the quotes that YAML needs in any place, if it needs any.
func quote(value string) string {
	var n yaml.Node
	plain := !strings.ContainsAny(value, ",[]{}#:\"'\n&*!|>%@`")
	if plain && yaml.Unmarshal([]byte(value), &n) == nil && len(n.Content) == 1 &&
		n.Content[0].Kind == yaml.ScalarNode && n.Content[0].Value == value && n.Content[0].Tag != "!!null" {
		return value
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(value) + `"`
}
