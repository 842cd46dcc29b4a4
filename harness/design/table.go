package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"

	"gopkg.in/yaml.v3"
)

// Section is one kind of record of the design format: its keys and what they
// mean. The tables of sections drive the reader, its hints and the format
// reference, so none of them can say anything the others do not.
type Section struct {
	Name    string // "relay"; of parts and other named records, what one of them is
	Shape   string // "record", "named" (name: record) or "list" (of records)
	Doc     string // what it is for, in sentences
	Short   string // what may stand in place of the record; empty = nothing
	Example string // a few lines of YAML, as in a file
	Keys    []Key
}

// Key is one key of a section.
type Key struct {
	Name     string
	Was      string             // its name before, which this version still reads
	Other    string             // another word of the trade for it, which is hinted at
	Kind     string             // how its value is written: see the kind constants
	Unit     quantity.Dimension // of quantities
	Min, Max float64            // of quantities and numbers, inclusive, in base units
	Choices  []string           // the words it takes; with a quantity or a library name, words besides it
	Library  string             // the library list that its name comes from
	Section  string             // the section of its record or records
	Required bool
	Whole    bool   // of numbers: a count
	Default  string // what holds when it is left out, in words
	Doc      string // one line
	Example  string // a value

	per  float64 // base units per unit of the model; 0 = 1
	most int     // entries of a list; 0 = as many as there are
}

// The kinds of values.
const (
	KindText       = "text"
	KindNumber     = "number"
	KindQuantity   = "quantity"
	KindChoice     = "choice"
	KindYesNo      = "yes or no"
	KindLibrary    = "library name"
	KindPlace      = "place"
	KindRelay      = "relay"
	KindFeeds      = "one part, a list of parts, or each with its wire"
	KindReturns    = "one ground or part in the return, a list of them, or each with its wire"
	KindLoads      = "list of loads"
	KindParts      = "one part, or a list of parts, by name"
	KindSwitches   = "list of switches"
	KindState      = "situation"
	KindStates     = "one situation or condition, or a list of them"
	KindCondition  = "name of a condition"
	KindConditions = "one condition, or a list of them"
	KindTexts      = "text, or a list of texts"
	KindRecord     = "record"
	KindNamed      = "named records"
	KindList       = "list of records"
	KindCurve      = "speed to current"
	KindMoney      = "money"
	KindLabels     = "labels, each with what it stands for"
	// positions of switches, and in which of them they are
	KindSwitch    = "switch"
	KindLoad      = "load"
	KindPositions = "list of positions, or the outputs of each"
	KindSettings  = "positions of switches"
	KindCharges   = "shares of batteries"
)

// key is a Key with how to read it into a T.
type key[T any] struct {
	Key
	read  func(r *reader, t *T, f field)
	early bool // read before the keys around it, which need it
}

// section is a Section with how to read it into a T.
type section[T any] struct {
	Section
	keys   []key[T]
	short  func(r *reader, t *T, f field) bool // takes a scalar instead; false = not one
	finish func(r *reader, t *T, f field)      // after all keys
}

// describe is the section with its keys, for the format reference.
func (s *section[T]) describe() Section {
	d := s.Section
	for _, k := range s.keys {
		d.Keys = append(d.Keys, k.Key)
	}
	return d
}

// wholeDesign is where the top-level keys are.
const wholeDesign = "the design"

// inside is where a record is that stands under a key.
func (f field) inside() where {
	if f.where.kind == wholeDesign {
		return where{kind: f.key}
	}
	return where{f.key + " of " + f.where.kind, f.where.name}
}

// where says what is being read, for messages: relay "keyed".
type where struct{ kind, name string }

func (w where) String() string {
	if w.name == "" {
		return w.kind
	}
	return w.kind + " " + quoted(w.name)
}

// field is one value of the file: what it belongs to, its key and its node.
type field struct {
	where where
	key   string
	node  *yaml.Node
	want  *Key            // what the value should be, for messages; may be nil
	has   map[string]bool // in finish: the keys given
}

// String names the field for messages: `relay "keyed", form`.
func (f field) String() string {
	switch {
	case f.key == "":
		return f.where.String()
	case f.where.kind == wholeDesign:
		return f.key
	}
	return f.where.String() + ", " + f.key
}

// readRecord reads a mapping with the keys of a section.
func readRecord[T any](r *reader, s *section[T], t *T, n *yaml.Node, at where) {
	f := field{where: at, node: n}
	if s.short != nil && follow(n).Kind == yaml.ScalarNode && s.short(r, t, f) {
		return
	}
	if follow(n).Kind != yaml.MappingNode {
		expected := "a mapping with the keys " + oneOf(s.names(true))
		if s.Short != "" {
			expected += ", or " + s.Short
		}
		r.report(r.pos(n), fmt.Sprintf("%s is %s", at, kindName(n)), expected)
		return
	}
	f.has = map[string]bool{}
	var later []func()
	r.pairs(n, at, s.sameKey, func(name, value *yaml.Node) {
		k, guessed := s.find(name.Value), false
		if k == nil {
			if k, value = near(r, s, name, value, at, follow(n)); k == nil || f.has[k.Name] || isNothing(value) {
				return
			}
			guessed = value.Kind == yaml.ScalarNode
		}
		r.renamed(&k.Key, name)
		read := func() {
			before := len(r.problems)
			k.read(r, t, field{where: at, key: k.Name, node: value, want: &k.Key})
			if guessed { // whether the value is right is not known
				r.problems = r.problems[:before]
			}
		}
		switch {
		case isNothing(value):
			r.report(r.pos(name), fmt.Sprintf("%s: %q has no value", at, k.Name), k.expected())
		case k.early:
			read()
		default:
			later = append(later, read)
		}
		f.has[k.Name] = true
	})
	for _, read := range later {
		read()
	}
	for i := range s.keys {
		if k := &s.keys[i]; k.Required && !f.has[k.Name] {
			r.report(r.pos(n), fmt.Sprintf("%s lacks %q", at, k.Name), k.expected())
		}
	}
	if s.finish != nil {
		s.finish(r, t, f)
	}
}

// names lists the keys; only the required ones when there are any and few is set.
func (s *section[T]) names(few bool) []string {
	var all, required []string
	for _, k := range s.keys {
		all = append(all, k.Name)
		if k.Required {
			required = append(required, k.Name)
		}
	}
	if few && len(required) > 0 {
		return required
	}
	return all
}

// unknownKey reports a key that a section does not have, and gives the nearest.
func (r *reader) unknownKey(name *yaml.Node, at where, names []string) string {
	if name.Value == "<<" {
		r.report(r.pos(name), at.String()+": merge keys are not part of the format",
			"the values written out, or a whole value shared by an anchor")
		return ""
	}
	return r.unknown(r.pos(name), unknownKey(name, at), name.Value, names)
}

// pairs goes through a mapping in file order and reports keys that are no plain
// text and keys that stand twice. same makes two spellings of a key equal.
func (r *reader) pairs(n *yaml.Node, at where, same func(string) string,
	do func(name, value *yaml.Node)) {
	content := follow(n).Content
	seen := make(map[string]*yaml.Node, len(content)/2)
	for i := 0; i+1 < len(content); i += 2 {
		name, value := follow(content[i]), content[i+1]
		if name.Kind != yaml.ScalarNode {
			r.report(r.pos(content[i]), fmt.Sprintf("%s: a key is %s", at, kindName(name)), "plain text")
			continue
		}
		if first := seen[same(name.Value)]; first != nil {
			also := r.pos(first)
			r.add(problem.Problem{Pos: r.pos(name), Also: &also,
				What: fmt.Sprintf("%s: the key %s is given twice", at, quoted(name.Value))})
			continue
		}
		seen[same(name.Value)] = name
		do(name, value)
	}
}

// items goes through a list.
func (r *reader) items(f field, expected string, do func(n *yaml.Node)) {
	n := follow(f.node)
	if n.Kind != yaml.SequenceNode {
		r.report(r.pos(f.node), fmt.Sprintf("%s is %s", f, kindName(n)), expected)
		return
	}
	if r.tooMany(f, n) {
		return
	}
	for _, c := range n.Content {
		do(c)
	}
}

// tooMany reports a list that is longer than its key takes, at the first entry too
// many, before any of it is read.
func (r *reader) tooMany(f field, list *yaml.Node) bool {
	if f.want == nil || f.want.most == 0 || len(list.Content) <= f.want.most {
		return false
	}
	r.report(r.pos(list.Content[f.want.most]), fmt.Sprintf("%s has %d entries", f, len(list.Content)),
		fmt.Sprintf("at most %d", f.want.most))
	return true
}

func isNothing(n *yaml.Node) bool {
	n = follow(n)
	return n.Kind == yaml.ScalarNode && n.Tag == "!!null"
}
