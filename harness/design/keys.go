package design

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/library"

	"gopkg.in/yaml.v3"
)

// expected says what a key takes, for messages.
func (k *Key) expected() string {
	switch k.Kind {
	case KindQuantity:
		if len(k.Choices) > 0 {
			return oneOf(append(append([]string(nil), k.Choices...), quantity.Expected(k.Unit)))
		}
		return quantity.Expected(k.Unit)
	case KindChoice:
		return oneOf(k.Choices)
	case KindYesNo:
		return "yes or no"
	case KindText, KindTexts:
		return "text, such as " + k.Example
	case KindLibrary:
		return "a name from the library's " + k.Library + ", such as " + k.Example
	case KindStates:
		return oneOf(append(append([]string(nil), k.Choices...), "the name of a situation", "a list of names"))
	case KindCondition:
		return oneOf(append(slices.Clone(k.Choices), "the name of a condition, such as "+k.Example))
	case KindConditions:
		return "the name of a condition or a list of names, such as " + k.Example
	case KindState:
		return "the name of a situation, such as " + k.Example
	case KindRelay, KindSwitch, KindLoad:
		return "the name of a " + k.Kind + ", such as " + k.Example
	case KindPositions:
		return "a list of positions, or a mapping of each to its outputs, such as " + k.Example
	case KindSettings:
		return "a mapping of switches to positions, such as " + k.Example
	case KindCharges:
		return "a mapping of further batteries to how full they are, such as " + k.Example
	case KindPlace:
		return "the name of a place, such as " + k.Example
	case KindFeeds, KindReturns:
		return "the name of a part, a list of names, or a mapping of names to wires, such as " + k.Example
	case KindParts:
		return "the name of a part or a list of names, such as " + k.Example
	case KindNumber:
		return fmt.Sprintf("a %s from %g to %g", k.number(), k.Min, k.Max)
	case KindList:
		return "a list"
	case KindRecord, KindNamed, KindCurve, KindLabels:
		return "a mapping"
	}
	return k.Kind
}

// number is the word for what a number key takes.
func (k *Key) number() string {
	if k.Whole {
		return "whole number"
	}
	return "number"
}

// scalar gives the text of a field that is a single value.
func (r *reader) scalar(f field, expected string) (string, bool) {
	n := follow(f.node)
	if n.Kind != yaml.ScalarNode || n.Tag == "!!null" {
		if f.want != nil {
			expected = f.want.expected()
		}
		r.report(r.pos(f.node), fmt.Sprintf("%s is %s", f, kindName(n)), expected)
		return "", false
	}
	return n.Value, true
}

// sentence gives the text of a field with its white space tidied.
func (r *reader) sentence(f field, most int) (Text, bool) {
	s, ok := r.scalar(f, "text")
	if !ok {
		return Text{}, false
	}
	pos := r.pos(f.node)
	if c := badRune(s); c >= 0 {
		r.report(pos, fmt.Sprintf("%s has the unprintable character %U", f, c), "printable text")
		return Text{}, false
	}
	s = strings.Join(strings.Fields(s), " ")
	switch n := len([]rune(s)); {
	case n == 0:
		r.report(pos, f.String()+" is empty", "text")
		return Text{}, false
	case n > most:
		r.report(pos, fmt.Sprintf("%s has %d characters", f, n), fmt.Sprintf("at most %d", most))
		return Text{}, false
	}
	return Text{s, pos}, true
}

func textKey[T any](k Key, to func(*T) *Text) key[T] {
	k.Kind = KindText
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if s, ok := r.sentence(f, maxSentence); ok {
			*to(t) = s
		}
	}}
}

// reasonKey reads why something is taken as it is. A bare yes or no is none.
func reasonKey[T any](k Key, to func(*T) *Text) key[T] {
	k.Kind = KindText
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		s, ok := r.sentence(f, maxSentence)
		switch {
		case !ok:
		case noReason.MatchString(s.Value):
			r.report(s.Pos, fmt.Sprintf("%s is %q, which is no reason", f, s.Value), "why it is so, in words, or no such key")
		default:
			*to(t) = s
		}
	}}
}

// noReason matches what answers a question nobody asked, and what says nothing.
var noReason = regexp.MustCompile(`(?i)^(yes|no|true|false|on|off|none|\PL*)$`)

// textsKey reads one text or a list of them.
func textsKey[T any](k Key, to func(*T) *[]Text) key[T] {
	k.Kind = KindTexts
	return key[T]{Key: k, read: func(r *reader, t *T, f field) { *to(t) = r.texts(f, maxSentence) }}
}

// texts reads one text or a list of them.
func (r *reader) texts(f field, most int) []Text {
	nodes := []*yaml.Node{f.node}
	if n := follow(f.node); n.Kind == yaml.SequenceNode {
		if r.tooMany(f, n) {
			return nil
		}
		nodes = n.Content
	}
	var list []Text
	for _, n := range nodes {
		if s, ok := r.sentence(field{where: f.where, key: f.key, node: n, want: f.want}, most); ok {
			list = append(list, s)
		}
	}
	return list
}

func yesKey[T any](k Key, to func(*T) *bool) key[T] {
	k.Kind = KindYesNo
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if yes, ok := r.yes(f); ok {
			*to(t) = yes
		}
	}}
}

// saidKey notes that the design gives a key, whatever it says.
func saidKey[T any](k key[T], said func(*T)) key[T] {
	read := k.read
	k.read = func(r *reader, t *T, f field) {
		read(r, t, f)
		said(t)
	}
	return k
}

func (r *reader) yes(f field) (yes, ok bool) {
	s, ok := r.scalar(f, "yes or no")
	if !ok {
		return false, false
	}
	switch fold(s) {
	case "yes", "true":
		return true, true
	case "no", "false":
		return false, true
	}
	r.report(r.pos(f.node), fmt.Sprintf("%s: %s", f, quoted(s)), "yes or no")
	return false, false
}

// choiceKey reads one of a few words.
func choiceKey[T any, S ~string](k Key, to func(*T) *S) key[T] {
	k.Kind = KindChoice
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if s, ok := r.choice(f, k.Choices); ok {
			*to(t) = S(s)
		}
	}}
}

func (r *reader) choice(f field, choices []string) (string, bool) {
	s, ok := r.scalar(f, "one of the words for it")
	if !ok {
		return "", false
	}
	for _, c := range choices {
		if fold(c) == fold(s) {
			return c, true
		}
	}
	r.unknown(r.pos(f.node), fmt.Sprintf("%s: unknown word %s", f, quoted(s)), s, choices)
	return "", false
}

func quantityKey[T any](k Key, to func(*T) *Quantity) key[T] {
	k.Kind = KindQuantity
	if k.Example == "" {
		k.Example = quantity.Example(k.Unit)
	}
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if q, ok := r.quantity(f, &k); ok {
			*to(t) = q
		}
	}}
}

// quantity reads a quantity within the limits of its key.
func (r *reader) quantity(f field, k *Key) (Quantity, bool) {
	if f.want == nil {
		f.want = k
	}
	s, ok := r.scalar(f, "")
	if !ok {
		return Quantity{}, false
	}
	return r.parseQuantity(f, s, k)
}

// parseQuantity is quantity for a text already taken from the field.
func (r *reader) parseQuantity(f field, s string, k *Key) (Quantity, bool) {
	value, err := quantity.Parse(s, k.Unit)
	if err != nil {
		r.add(quantityProblem(r.pos(f.node), f, err))
		return Quantity{}, false
	}
	if value < k.Min || value > k.Max {
		r.report(r.pos(f.node), fmt.Sprintf("%s: %s is out of range", f, quoted(s)),
			quantity.Plain(k.Min, k.Unit)+" to "+quantity.Plain(k.Max, k.Unit))
		return Quantity{}, false
	}
	if k.per != 0 {
		value /= k.per
	}
	return Quantity{Value: value, Text: strings.TrimSpace(s), Pos: r.pos(f.node)}, true
}

// quantityProblem turns an error of package quantity into a problem.
func quantityProblem(pos problem.Pos, f field, err error) problem.Problem {
	p := problem.Problem{Pos: pos, What: f.String() + ": " + err.Error()}
	var q *quantity.Error
	if errors.As(err, &q) {
		p.What, p.Expected, p.Nearest = f.String()+": "+q.What, q.Expected, q.Nearest
	}
	return p
}

// numberKey reads a plain number: a count or a ratio, which has no unit.
func numberKey[T any](k Key, to func(t *T, value float64)) key[T] {
	k.Kind = KindNumber
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		s, ok := r.scalar(f, "")
		if !ok {
			return
		}
		value, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		if err != nil || math.IsNaN(value) || value < k.Min || value > k.Max || k.Whole && value != math.Trunc(value) {
			r.report(r.pos(f.node), fmt.Sprintf("%s: %s", f, quoted(s)), k.expected())
			return
		}
		to(t, value)
	}}
}

// libraryKey reads the name of a row of the library, which find finds.
func libraryKey[T, X any](k Key, find func(*library.Library, string) *X, to func(*T) **X) key[T] {
	return rowKey(k, func(r *reader, name string) *X { return find(r.lib, name) }, to)
}

// rowKey is libraryKey for a row that goes by more than its name.
func rowKey[T, X any](k Key, find func(*reader, string) *X, to func(*T) **X) key[T] {
	k.Kind = KindLibrary
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		s, ok := r.scalar(f, "")
		if !ok {
			return
		}
		*to(t) = lookup(r, k.Library, s, func(name string) *X { return find(r, name) })
		if why := aluminium(s); *to(t) == nil && k.Library == "wire types" && why != "" {
			r.report(r.pos(f.node), fmt.Sprintf("%s: %s is aluminium, which is not worked with here: %s", f, quoted(s), why), "copper, plain or tinned")
			return
		}
		if *to(t) == nil {
			what := fmt.Sprintf("%s: the library has no %s", f, quoted(s))
			if s == autoWord {
				what = fmt.Sprintf("%s: cannot be left open, name one of the library", f)
			}
			r.unknown(r.pos(f.node), what, s, r.lib.Names(k.Library))
			return
		}
		r.severalMeant(f, k.Library, s, func(name string) bool { return find(r, name) == *to(t) })
	}}
}

// families are the lists of which a short name is meant to stand for several rows: the
// practice's class, the system's voltage decides.
var families = []string{"wire types", "relay forms", "chargers"}

// severalMeant notes, once, a short name with which several rows begin.
func (r *reader) severalMeant(f field, list, name string, taken func(string) bool) {
	id := list + "\x00" + name
	if slices.Contains(families, list) || r.old[id] {
		return
	}
	r.old[id] = true
	took, others := "", []string(nil)
	for _, n := range r.lib.Names(list) {
		switch {
		case fold(n) == fold(name):
			return
		case !strings.HasPrefix(fold(n), fold(name)+" "):
		case taken(n):
			took = n
		default:
			others = append(others, n)
		}
	}
	if took != "" && len(others) > 0 {
		r.d.OldKeys.Add(problem.Problem{Pos: r.pos(f.node), What: fmt.Sprintf("%s: %s is taken as %q; it may also be %s", f, quoted(name), took, wording.Or(others))})
	}
}

// lookup finds a row of the library once per name.
func lookup[X any](r *reader, list, name string, find func(string) *X) *X {
	id := list + "\x00" + name
	if found, ok := r.lookups[id]; ok {
		return found.(*X)
	}
	x := find(name)
	r.lookups[id] = x
	return x
}

// recordKey reads a mapping with its own section.
func recordKey[T, X any](k Key, s *section[X], to func(r *reader, t *T, f field) *X) key[T] {
	k.Kind, k.Section = KindRecord, s.Name
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		readRecord(r, s, to(r, t, f), f.node, f.inside())
	}}
}

// listKey reads a list of mappings.
func listKey[T, X any](k Key, s *section[X], add func(r *reader, t *T, n *yaml.Node) *X) key[T] {
	k.Kind, k.Section = KindList, s.Name
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		r.items(f, "a list of records, each after a \"-\"", func(n *yaml.Node) {
			readRecord(r, s, add(r, t, n), n, where{kind: s.Name})
		})
	}}
}

// namedKey reads a mapping of names to records. add makes the record for a
// name, or gives nil after reporting why not.
func namedKey[T, X any](k Key, s *section[X], add func(r *reader, t *T, name string, n *yaml.Node) *X) key[T] {
	k.Kind, k.Section = KindNamed, s.Name
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if n := follow(f.node); n.Kind != yaml.MappingNode {
			r.lost = true
			r.report(r.pos(f.node), fmt.Sprintf("%q is %s", k.Name, kindName(n)),
				fmt.Sprintf("a mapping with the name of each %s as key", s.Name))
			return
		}
		r.pairs(f.node, where{kind: k.Name}, fold, func(name, value *yaml.Node) {
			at := where{s.Name, name.Value}
			text, ok := r.sentence(field{where: where{kind: "the name of a " + s.Name}, node: name}, maxName)
			if !ok {
				return
			}
			if x := add(r, t, text.Value, name); x != nil {
				readRecord(r, s, x, value, at)
			}
		})
	}}
}
