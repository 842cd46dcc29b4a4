package design

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// Is tells whether a word of a design is this key: its name or, for one version,
// the name that it had. Capitals, and hyphens for spaces, make no difference.
func (k *Key) Is(word string) bool {
	return word == k.Name || spelling(word) == spelling(k.Name) || k.was(word)
}

func (k *Key) was(word string) bool { return k.Was != "" && spelling(word) == spelling(k.Was) }

// spelling makes two spellings of a key equal.
func spelling(s string) string { return strings.ToLower(joiner.Replace(s)) }

var joiner = strings.NewReplacer(" ", "", "-", "", "_", "")

// anyKey tells the keys of all sections.
func anyKey(word string) bool { return keyNames()[spelling(word)] }

var keyNames = sync.OnceValue(func() map[string]bool {
	names := map[string]bool{}
	for _, s := range Format() {
		for _, k := range s.Keys {
			names[spelling(k.Name)], names[spelling(k.Was)] = true, true
		}
	}
	delete(names, "")
	return names
})

// find is the key of a name; nil when there is none.
func (s *section[T]) find(name string) *key[T] {
	for i := range s.keys {
		if s.keys[i].Name == name {
			return &s.keys[i]
		}
	}
	for i := range s.keys {
		if s.keys[i].Is(name) {
			return &s.keys[i]
		}
	}
	return nil
}

// sameKey is what two spellings of a key have in common.
func (s *section[T]) sameKey(name string) string {
	if k := s.find(name); k != nil {
		return k.Name
	}
	return name
}

// near reports a key that a section does not have and gives the one that it was
// meant to be with its value, if that is plain and does not stand in the record
// itself: the value is read, so that nothing more is said for want of it.
func near[T any](r *reader, s *section[T], name, value *yaml.Node, at where, record *yaml.Node) (*key[T], *yaml.Node) {
	names := s.names(false)
	if key, value := r.unspaced(names, name, at); value != nil {
		return s.find(key), value
	}
	if k := s.byOtherWord(name.Value); k != nil {
		r.add(problem.Problem{Pos: r.pos(name), What: unknownKey(name, at), Nearest: k.Name})
		return k, value
	}
	i := slices.IndexFunc(names, func(n string) bool { return number(n) == number(name.Value) })
	meant := ""
	if i >= 0 {
		meant = names[i]
		r.add(problem.Problem{Pos: r.pos(name), What: unknownKey(name, at), Nearest: meant})
	} else if meant = r.unknownKey(name, at, names); meant == "" {
		return nil, nil
	}
	for i := 0; i < len(record.Content); i += 2 {
		if k := s.find(follow(record.Content[i]).Value); k != nil && k.Name == meant {
			return nil, nil
		}
	}
	return s.find(meant), value
}

// byOtherWord is the key that the trade also calls by a word; nil = none.
func (s *section[T]) byOtherWord(word string) *key[T] {
	i := slices.IndexFunc(s.keys, func(k key[T]) bool { return k.Other != "" && number(k.Other) == number(word) })
	if i < 0 {
		return nil
	}
	return &s.keys[i]
}

// joinCommas puts numbers with a decimal comma together that YAML takes apart between
// { and }: of "size: 2,5 mm²" it makes a key "5 mm²" without a value.
func joinCommas(n *yaml.Node) {
	for i := 2; n.Kind == yaml.MappingNode && i+1 < len(n.Content); i += 2 {
		whole, rest := n.Content[i-1], n.Content[i]
		if isNothing(n.Content[i+1]) && digits(whole.Value) && rest.Value != "" && digits(rest.Value[:1]) && rest.Line == whole.Line &&
			rest.Column == whole.Column+len(whole.Value)+1 {
			whole.Value, whole.Tag = whole.Value+","+rest.Value, "!!str"
			n.Content = slices.Delete(n.Content, i, i+2)
			i -= 2
		}
	}
	for _, x := range n.Content {
		joinCommas(x)
	}
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// number makes the singular and the plural of a key equal.
func number(s string) string {
	words := strings.FieldsFunc(strings.ToLower(s), func(c rune) bool { return strings.ContainsRune(" -_", c) })
	for i, w := range words {
		if strings.HasSuffix(w, "ches") {
			w = strings.TrimSuffix(w, "es")
		}
		words[i] = strings.TrimSuffix(w, "s")
	}
	return strings.Join(words, "")
}

// unspaced reports a key that has its value in it: between { and }, YAML takes
// "at:tray" and "at tray" for keys without a value. It gives both apart.
func (r *reader) unspaced(names []string, name *yaml.Node, at where) (string, *yaml.Node) {
	for _, sign := range []string{":", "=", " "} {
		key, value, ok := strings.Cut(name.Value, sign)
		if sign == " " {
			for _, n := range names {
				if strings.HasPrefix(name.Value, n+" ") && len(n) > len(key) {
					key = n
				}
			}
			value, ok = strings.TrimPrefix(name.Value, key+" "), strings.Contains(name.Value, " ")
		}
		key = strings.TrimSpace(key)
		if !ok || value == "" || !slices.ContainsFunc(names, func(n string) bool { return spelling(n) == spelling(key) }) {
			continue
		}
		pos := r.pos(name)
		pos.Col += len([]rune(key))
		what := map[string]string{":": "no space after the colon of %q", "=": `"=" where a colon belongs, after %q`,
			" ": "no colon after %q"}[sign]
		if sign == ":" {
			pos.Col++
		}
		r.report(pos, at.String()+": "+fmt.Sprintf(what, short(key)), `"key: value"`)
		return key, &yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: strings.TrimSpace(value), Line: name.Line, Column: name.Column}
	}
	return "", nil
}

func unknownKey(name *yaml.Node, at where) string {
	return fmt.Sprintf("%s: unknown key %s", at, quoted(name.Value))
}

// renamed notes the first use of a key's old name.
func (r *reader) renamed(k *Key, name *yaml.Node) {
	if !k.was(name.Value) || r.old[k.Was] {
		return
	}
	r.old[k.Was] = true
	r.d.OldKeys.Add(problem.Problem{Pos: r.pos(name),
		What: fmt.Sprintf("%q is now %q; still read in this version; `fmt` writes the new one", k.Was, k.Name)})
}
