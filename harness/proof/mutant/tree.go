package mutant

import (
	"slices"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design"
)

// plain copies a tree with every alias replaced by what it stands for.
func plain(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return plain(n.Alias)
	}
	c := *n
	c.Anchor, c.Content = "", make([]*yaml.Node, len(n.Content))
	for i, x := range n.Content {
		c.Content[i] = plain(x)
	}
	return &c
}

func scalar(text string) *yaml.Node {
	return &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: text}
}

// word is a scalar without quotes: yes, 12, auto.
func word(text string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: text} }

func setText(n *yaml.Node, text string) { *n = *word(text) }

// value of a key of a mapping; nil when it is not there.
func value(record *yaml.Node, key string) *yaml.Node {
	if record == nil || record.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(record.Content); i += 2 {
		if fold(record.Content[i].Value) == key {
			return record.Content[i+1]
		}
	}
	return nil
}

// text of a key of a mapping that is one value.
func text(record *yaml.Node, key string) string {
	if v := value(record, key); v != nil && v.Kind == yaml.ScalarNode {
		return v.Value
	}
	return ""
}

func put(record *yaml.Node, key string, v *yaml.Node) {
	if old := value(record, key); old != nil {
		*old = *v
		return
	}
	record.Content = append(record.Content, scalar(key), v)
}

// section is the value of a key of the design, made where it is not there.
func (s *subject) section(key string, kind yaml.Kind) *yaml.Node {
	if value(s.root, key) == nil {
		put(s.root, key, flow(kind))
	}
	return value(s.root, key)
}

func drop(record *yaml.Node, key string) {
	for i := 0; i+1 < len(record.Content); i += 2 {
		if fold(record.Content[i].Value) == fold(key) {
			record.Content = slices.Delete(record.Content, i, i+2)
			return
		}
	}
}

// flow is a mapping or list on one line.
func flow(kind yaml.Kind, content ...*yaml.Node) *yaml.Node {
	return &yaml.Node{Kind: kind, Style: yaml.FlowStyle, Content: content}
}

// fold is a name as the reader compares it.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// slot is one value of the design, with what the format says of it.
type slot struct {
	section string
	key     design.Key
	owner   string // the named record of the file that it is in
	record  *yaml.Node
	value   *yaml.Node
}

// label names a slot in words.
func (x slot) label() string {
	return strings.TrimSpace(strings.Join([]string{x.section, x.owner, x.key.Name}, " "))
}

// slots are all values of the design, in its order.
func (s *subject) slots() []slot {
	var list []slot
	s.walk(s.root, "design", "", func(x slot) { list = append(list, x) })
	return list
}

// some are the slots that pass a test.
func (s *subject) some(test func(slot) bool) []slot {
	var list []slot
	for _, x := range s.slots() {
		if test(x) {
			list = append(list, x)
		}
	}
	return list
}

func (s *subject) ofKind(kind string) []slot {
	return s.some(func(x slot) bool { return x.key.Kind == kind })
}

// walk visits the values of a record and of the records in it.
func (s *subject) walk(record *yaml.Node, section, owner string, visit func(slot)) {
	if record.Kind != yaml.MappingNode {
		return // the short form of a record
	}
	for i := 0; i+1 < len(record.Content); i += 2 {
		name, v := record.Content[i], record.Content[i+1]
		k := s.key(section, fold(name.Value))
		if k == nil {
			continue
		}
		visit(slot{section: section, key: *k, owner: owner, record: record, value: v})
		switch k.Kind {
		case design.KindRecord:
			s.walk(v, k.Section, owner, visit)
		case design.KindList:
			for _, x := range v.Content {
				s.walk(x, k.Section, owner, visit)
			}
		case design.KindNamed:
			s.walkNamed(v, k.Section, owner, visit)
		}
	}
}

func (s *subject) walkNamed(records *yaml.Node, section, owner string, visit func(slot)) {
	if records.Kind != yaml.MappingNode {
		return
	}
	for i := 0; i+1 < len(records.Content); i += 2 {
		of := owner
		if of == "" {
			of = records.Content[i].Value
		}
		s.walk(records.Content[i+1], section, of, visit)
	}
}

func (s *subject) key(section, name string) *design.Key {
	for _, k := range s.sections[section].Keys {
		if k.Is(name) {
			return &k
		}
	}
	return nil
}
