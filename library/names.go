package library

import (
	"fmt"
	"strings"

	"fusewright/harness/design/problem"
)

// entry is a name already taken in a list.
type entry struct {
	index int
	pos   problem.Pos
	keys  []string // every key of the row in the table of names
}

// add puts a row into its list under its name and aliases. A name already
// taken is a problem, unless the row says that it replaces the earlier one.
func add[T any](m *row, kind string, list []*T, item *T, name string, aliases []string) []*T {
	e := &entry{index: len(list), pos: m.r.pos(m.node)}
	replaces := m.yes("replaces")
	if replaces {
		old, ok := m.r.names[kind+"/"+fold(name)]
		if !ok {
			m.r.report(m.node, fmt.Sprintf("nothing to replace: no %q of that name in %s", name, kind),
				"the name of an earlier row", "")
			return list
		}
		e.index = old.index
		for _, k := range old.keys {
			delete(m.r.names, k)
		}
	}
	for _, n := range append([]string{name}, aliases...) {
		m.take(kind, n, e)
	}
	if replaces {
		list[e.index] = item
		return list
	}
	return append(list, item)
}

// take registers a name of a row.
func (m *row) take(kind, name string, e *entry) {
	if fold(name) == "" {
		return // reported as missing already
	}
	key := kind + "/" + fold(name)
	old, taken := m.r.names[key]
	switch {
	case !taken:
		m.r.names[key] = e
		e.keys = append(e.keys, key)
	case old != e:
		m.r.add(problem.Problem{Pos: e.pos,
			What:     fmt.Sprintf("the name %q is already taken in %s", shorten(name), kind),
			Expected: "another name, or \"replaces: true\" to take its place", Also: &old.pos})
	}
}

// fold makes names comparable: lower case, one space between words, hyphens as
// spaces, without the degree sign, and mm² as mm2.
func fold(s string) string {
	s = strings.ToLower(s)
	s = folder.Replace(s)
	return strings.Join(strings.Fields(s), " ")
}

var folder = strings.NewReplacer("°", "", "²", "2", "-", " ", "_", " ", "\u00a0", " ")

// find returns the row with a name or alias; nil when there is none. Exact
// names are tried first, since they are the usual case and quick.
func find[T any](list []*T, name string, names func(*T) (string, []string)) *T {
	for _, item := range list {
		if n, _ := names(item); n == name {
			return item
		}
	}
	want := fold(name)
	if want == "" {
		return nil
	}
	for _, item := range list {
		n, aliases := names(item)
		if fold(n) == want {
			return item
		}
		for _, a := range aliases {
			if fold(a) == want {
				return item
			}
		}
	}
	return nil
}

// namesOf lists the names in file order.
func namesOf[T any](list []*T, names func(*T) (string, []string)) []string {
	out := make([]string, len(list))
	for i, item := range list {
		out[i], _ = names(item)
	}
	return out
}
