package library

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// row reads one mapping of a library file. The first call for a key marks it
// as known, so that finish can report the keys nobody asked for, with the
// nearest known one. Values are read leniently: a wrong one is reported with
// its place and read as the zero value, and reading goes on.
type row struct {
	r      *reader
	node   *yaml.Node
	keys   map[string]*yaml.Node
	values map[string]*yaml.Node
	asked  []string
	// inherits tells that what it leaves out holds already.
	inherits bool
	around   Source // of the row, for what has a source of its own in it
}

// newRow takes a mapping apart. A node of another kind is reported and gives
// an empty row; ok tells them apart.
func (r *reader) newRow(n *yaml.Node, what string) (m *row, ok bool) {
	m = &row{r: r, node: n, keys: map[string]*yaml.Node{}, values: map[string]*yaml.Node{}}
	if n.Kind != yaml.MappingNode {
		r.report(n, what+" is "+kindName(n), "a mapping of keys and values", "")
		return m, false
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		if k.Kind != yaml.ScalarNode {
			r.report(k, "a key is "+kindName(k), "plain text", "")
			continue
		}
		if first, twice := m.keys[k.Value]; twice {
			at := r.pos(first)
			r.add(problem.Problem{Pos: r.pos(k),
				What: fmt.Sprintf("key %q is given twice", shorten(k.Value)), Also: &at})
			continue
		}
		m.keys[k.Value], m.values[k.Value] = k, v
	}
	return m, true
}

// get returns the value of a key, or nil, and marks the key as known.
func (m *row) get(key string) *yaml.Node {
	m.mark(key)
	return m.values[key]
}

// mark makes a key known.
func (m *row) mark(key string) {
	if !slices.Contains(m.asked, key) {
		m.asked = append(m.asked, key)
	}
}

// has tells whether a key is given; it does not mark it.
func (m *row) has(key string) bool { return m.values[key] != nil }

// finish reports the keys that no reader asked for.
func (m *row) finish() {
	known := map[string]bool{}
	for _, k := range m.asked {
		known[k] = true
	}
	for i := 0; i+1 < len(m.node.Content); i += 2 {
		k := m.node.Content[i]
		if m.node.Kind != yaml.MappingNode || k.Kind != yaml.ScalarNode || known[k.Value] {
			continue
		}
		m.r.reportUnknown(k, "key", k.Value, m.asked)
	}
}

// text reads a word or sentence; "" when it is not given.
func (m *row) text(key string) string {
	v := m.get(key)
	if v == nil {
		return ""
	}
	if v.Kind != yaml.ScalarNode || v.Tag == "!!null" {
		m.r.report(v, fmt.Sprintf("%q is %s", key, kindName(v)), "text", "")
		return ""
	}
	return tidy(m.r.printable(v, fmt.Sprintf("%q", key)))
}

// needText is text that must be there.
func (m *row) needText(key string) string {
	s := m.text(key)
	if s == "" {
		m.missing(key)
	}
	return s
}

// choice reads one word out of a set; the first is taken when none is given.
func (m *row) choice(key string, words ...string) string {
	s := m.text(key)
	if s == "" {
		return words[0]
	}
	for _, w := range words {
		if w == s {
			return s
		}
	}
	m.r.reportUnknown(m.values[key], key, s, words)
	return words[0]
}

// texts reads a list of words.
func (m *row) texts(key string) []string {
	var out []string
	for _, n := range m.list(key) {
		if n.Kind != yaml.ScalarNode || strings.TrimSpace(n.Value) == "" {
			m.r.report(n, fmt.Sprintf("an entry of %q is %s", key, kindName(n)), "text", "")
			continue
		}
		out = append(out, tidy(m.r.printable(n, fmt.Sprintf("an entry of %q", key))))
	}
	return out
}

// maxEntries bounds every list of a file, so that no file takes long to check.
const maxEntries = 2000

// list gives the entries of a sequence; nil when the key is not given.
func (m *row) list(key string) []*yaml.Node {
	v := m.get(key)
	switch {
	case v == nil:
		return nil
	case v.Kind != yaml.SequenceNode:
		m.r.report(v, fmt.Sprintf("%q is %s", key, kindName(v)), "a list", "")
		return nil
	case len(v.Content) > maxEntries:
		m.r.report(v, fmt.Sprintf("%q has %d entries", key, len(v.Content)),
			fmt.Sprintf("at most %d", maxEntries), "")
		return nil
	}
	return v.Content
}

// yes reads true or false; false when it is not given.
func (m *row) yes(key string) bool {
	v := m.get(key)
	if v == nil {
		return false
	}
	if v.Kind != yaml.ScalarNode || (v.Value != "true" && v.Value != "false") {
		m.r.report(v, fmt.Sprintf("%q is %s", key, describe(v)), "true or false", "")
		return false
	}
	return v.Value == "true"
}

// number reads a plain number between lo and hi, both allowed; 0 when it is
// not given. The key names its unit.
func (m *row) number(key string, lo, hi float64) float64 {
	v := m.get(key)
	if v == nil {
		return 0
	}
	return m.r.number(v, key, lo, hi)
}

// needNumber is a number that must be there.
func (m *row) needNumber(key string, lo, hi float64) float64 {
	if !m.has(key) {
		m.missing(key)
	}
	return m.number(key, lo, hi)
}

// missing reports a key that must be there.
func (m *row) missing(key string) {
	m.mark(key)
	if m.node.Kind == yaml.MappingNode && !m.has(key) {
		m.r.report(m.node, fmt.Sprintf("%q is missing", key), "", "")
	} else if m.has(key) {
		m.r.report(m.values[key], fmt.Sprintf("%q is empty", key), "", "")
	}
}

// plainNumber is a decimal number as a table prints it.
var plainNumber = regexp.MustCompile(`^[+-]?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]+)?$`)

// number reads a scalar as a finite number within limits.
func (r *reader) number(v *yaml.Node, what string, lo, hi float64) float64 {
	between := fmt.Sprintf("a number from %g to %g", lo, hi)
	if v.Kind != yaml.ScalarNode || !plainNumber.MatchString(v.Value) {
		r.report(v, fmt.Sprintf("%q is %s", what, describe(v)), between, "")
		return 0
	}
	x, err := strconv.ParseFloat(v.Value, 64)
	if err != nil || math.IsInf(x, 0) || math.IsNaN(x) || x < lo || x > hi {
		r.report(v, fmt.Sprintf("%q is out of range: %s", what, shorten(v.Value)), between, "")
		return 0
	}
	return x
}

// describe names a value for a message.
func describe(n *yaml.Node) string {
	if n.Kind == yaml.ScalarNode && n.Tag != "!!null" {
		return fmt.Sprintf("%q", shorten(n.Value))
	}
	return kindName(n)
}

// shorten keeps messages of long values readable.
func shorten(s string) string {
	const most = 60
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}

// kindName says what a node is.
func kindName(n *yaml.Node) string {
	switch {
	case n.Kind == yaml.MappingNode:
		return "a mapping"
	case n.Kind == yaml.SequenceNode:
		return "a list"
	case n.Kind == yaml.AliasNode:
		return "an alias"
	case n.Tag == "!!null" || n.Value == "":
		return "empty"
	}
	return "text"
}

// each reads the rows of a list inside a row, each with its own source.
func (m *row) each(key string, around Source, read func(*row, Source)) {
	for _, n := range m.list(key) {
		if sub, ok := m.r.newRow(n, "an entry of \""+key+"\""); ok {
			s := m.r.source(sub, around)
			m.r.sourced(n, s)
			read(sub, s)
			sub.finish()
		}
	}
}

// ascending reports a list whose values do not rise from entry to entry.
func (r *reader) ascending(n *yaml.Node, what string, count int, value func(int) float64) {
	for i := 1; i < count; i++ {
		if value(i) <= value(i-1) {
			r.report(n, fmt.Sprintf("%q do not ascend: %g comes after %g", what, value(i), value(i-1)),
				"ascending order without repeats", "")
			return
		}
	}
}

// longestName is the length up to which a near name is looked for.
const longestName = 100

// reportUnknown reports a name that is not in a list, with the nearest that is.
func (r *reader) reportUnknown(n *yaml.Node, what, name string, known []string) {
	near, expected := "", ""
	if len(name) <= longestName { // a longer one is no slip of the pen
		near = problem.Nearest(name, known)
	}
	if near == "" {
		expected = "one of: " + strings.Join(known, ", ")
	}
	r.report(n, fmt.Sprintf("unknown %s %q", what, shorten(name)), expected, near)
}
