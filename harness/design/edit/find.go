package edit

import "gopkg.in/yaml.v3"

// Tree is a text that values are looked up in.
type Tree struct{ root *yaml.Node }

// Open parses a text.
func Open(src []byte) (*Tree, error) {
	root, err := parse(src)
	if err != nil {
		return nil, err
	}
	return &Tree{root}, nil
}

// Value is what a key of a record has as it is written, and its line; a list has no value. Of a
// record in its short form, a scalar, it is that.
func (t *Tree) Value(path []string, key string) (value string, line int, found bool) {
	n := t.record(path)
	if n == nil {
		return "", 0, false
	}
	if n.Kind == yaml.ScalarNode {
		return n.Value, n.Line, true
	}
	v := child(n, key)
	if v == nil {
		return "", n.Line, false
	}
	return follow(v).Value, v.Line, true
}

// List is the names that a key of a record lists, and its line; a word is not a list.
func (t *Tree) List(path []string, key string) (items []string, line int, found bool) {
	n := t.record(path)
	if n == nil || n.Kind != yaml.MappingNode {
		return nil, 0, false
	}
	v := child(n, key)
	if v == nil {
		return nil, n.Line, false
	}
	return itemsOf(v), v.Line, follow(v).Kind == yaml.SequenceNode
}

func (t *Tree) record(path []string) *yaml.Node {
	n := t.root
	for _, step := range path {
		next := child(n, step)
		if next == nil {
			return nil
		}
		n = follow(next)
	}
	return n
}
