package circuit

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
)

// named is anything that has a label, with what `numbers` of a design calls it.
type named struct {
	kind  string // as the library's designators have it
	name  string // "left lamp", "rear 2", "left lamp, feed"
	exact string // of a wire: with its other end, "bus, feed from main"; else name
	label *string
}

// numberer gives labels: those that the design holds, and the next free ones.
type numberer struct {
	b     *builder
	held  map[string]*design.Number // by letter and what it stands for, not given yet
	taken map[string]bool
	next  map[string]int // by letter, the last one tried
}

// label gives everything its label. What `numbers` does not hold takes the next
// free one of its letter, in the order of the list.
func (b *builder) label(list []*named) {
	n := &numberer{b: b, held: map[string]*design.Number{}, taken: map[string]bool{}, next: map[string]int{}}
	n.read(list)
	for _, x := range list {
		n.hold(x, x.exact)
	}
	n.several(list)
	for _, x := range list { // of a part with one wire of a role part and role are enough
		n.hold(x, x.name)
	}
	n.leave()
	for _, x := range list {
		if *x.label == "" {
			n.give(x)
		}
	}
}

// read takes what the design holds, and reports labels that stand for what has
// another letter, or for the same as another one.
func (n *numberer) read(list []*named) {
	numbers := n.b.c.Design.Numbers.List
	if len(numbers) == 0 {
		return
	}
	letters := map[string][]string{} // by name
	for _, x := range list {
		for _, name := range []string{x.name, x.exact} {
			letters[fold(name)] = append(letters[fold(name)], n.b.letter(x.kind))
		}
	}
	for i := range numbers {
		x := &numbers[i]
		n.taken[x.Label] = true
		of := fold(x.Of.Value)
		want, key := letters[of], x.Letter()+" "+of
		switch first := n.held[key]; {
		case x.Letter() == n.b.letter(wireKind) && !saysRole(of):
			n.b.report(x.Of.Pos, fmt.Sprintf("numbers: %s stands for %q, which is no wire", x.Label, x.Of.Value),
				"a part and the role of its wire, such as \"left lamp, feed\"")
		case want != nil && !slices.Contains(want, x.Letter()):
			n.b.report(x.Pos, fmt.Sprintf("numbers: %s stands for %q, which has another letter", x.Label, x.Of.Value),
				want[0]+" and a number, or no such line, which `fmt --number` then writes")
		case first != nil:
			n.b.problems.Add(problem.Problem{Pos: x.Pos, Also: &first.Pos, Expected: "one label for each",
				What: fmt.Sprintf("numbers: %s and %s both stand for %q", first.Label, x.Label, x.Of.Value)})
		default:
			n.held[key] = x
		}
	}
}

// saysRole tells whether a text names a wire by part and role.
func saysRole(text string) bool {
	_, role, _ := strings.Cut(text, ", ")
	return slices.ContainsFunc([]Role{FeedWire, ReturnWire, CoilFeedWire, CoilReturnWire}, func(r Role) bool {
		return strings.Contains(role, string(r))
	})
}

// hold gives a thing the label that the design holds for a name of it.
func (n *numberer) hold(x *named, name string) {
	if len(n.held) == 0 || *x.label != "" {
		return
	}
	key := n.b.letter(x.kind) + " " + fold(name)
	if h := n.held[key]; h != nil {
		*x.label = h.Label
		delete(n.held, key)
	}
}

// several reports labels that stand for a wire by part and role where there are several of
// them: which one is built with the label only the builder knows.
func (n *numberer) several(list []*named) {
	if len(n.held) == 0 {
		return
	}
	ends := map[string][]string{}
	for _, x := range list {
		if *x.label == "" && x.kind == wireKind {
			key := n.b.letter(x.kind) + " " + fold(x.name)
			ends[key] = append(ends[key], strconv.Quote(x.exact))
		}
	}
	for i := range n.b.c.Design.Numbers.List {
		h := &n.b.c.Design.Numbers.List[i]
		key := h.Letter() + " " + fold(h.Of.Value)
		if names := ends[key]; n.held[key] == h && len(names) > 1 {
			n.b.report(h.Of.Pos, fmt.Sprintf("numbers: %s stands for %q, of which there are %d", h.Label, h.Of.Value, len(names)),
				strings.Join(names, " or ")+", whichever is built with that label")
			delete(n.held, key)
		}
	}
}

// leave notes the labels whose part or wire is gone; those of an earlier
// revision are free again.
func (n *numberer) leave() {
	for i := range n.b.c.Design.Numbers.List {
		x := &n.b.c.Design.Numbers.List[i]
		if n.held[x.Letter()+" "+fold(x.Of.Value)] != x {
			continue
		}
		n.b.c.Gone = append(n.b.c.Gone, *x)
		if !n.b.c.Design.Lasting() {
			delete(n.taken, x.Label)
		}
	}
}

// give gives a thing the next free label.
func (n *numberer) give(x *named) {
	letter := n.b.letter(x.kind)
	for {
		n.next[letter]++
		if label := letter + strconv.Itoa(n.next[letter]); !n.taken[label] {
			*x.label = label
			return
		}
	}
}

// fold makes names comparable, as the reader does.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// Labels is what `numbers` of the design says when every label is to stay: what
// it says now and, without a place in the file, what it lacks. Labels whose part
// or wire is gone are in it while they are not given again.
func (c *Circuit) Labels() []design.Number {
	var list []design.Number
	said := map[string]bool{}
	for _, x := range c.Design.Numbers.List {
		gone := slices.ContainsFunc(c.Gone, func(g design.Number) bool { return g.Label == x.Label })
		if !gone || c.Design.Lasting() {
			list = append(list, x)
			said[x.Label] = true
		}
	}
	all := c.namedParts()
	for _, w := range c.Wires {
		all = append(all, namedWire(w.Role, w.From, w.To, &w.Number))
	}
	tellApart(all)
	times := map[string]int{}
	for _, x := range all {
		times[fold(x.name)]++
	}
	for _, x := range all {
		if said[*x.label] {
			continue
		}
		of := x.name
		if times[fold(of)] > 1 {
			of = x.exact
		}
		list = append(list, design.Number{Label: *x.label, Of: design.Text{Value: of}})
	}
	return list
}

// namedParts are the parts, and then the fuses in the ways of blocks, since the
// person with the fuse box looks for them under the same letter.
func (c *Circuit) namedParts() (list []*named) {
	for _, p := range c.Parts {
		list = append(list, &named{kind: designatorKind(p), name: p.Name, exact: p.Name, label: &p.Ref})
	}
	for _, p := range c.Parts {
		for _, br := range p.Branches {
			if p.Kind == Block && br.Fuse != nil {
				name := p.Name + " " + br.B.Terminals[0].Name
				list = append(list, &named{kind: string(Fuse), name: name, exact: name, label: &br.Fuse.Ref})
			}
		}
	}
	return list
}

// wireKind is what the library's designators call a wire.
const wireKind = "wire"

func namedWire(role Role, from, to *Terminal, label *string) *named {
	far, other, way := to, from, " from "
	if role.Returns() {
		far, other, way = from, to, " to "
	}
	name := far.Part.Name + ", " + string(role)
	return &named{kind: wireKind, name: name, exact: name + way + other.Text(), label: label}
}

// tellApart counts wires that have both ends and the role in common.
func tellApart(list []*named) {
	seen := map[string]int{}
	for _, x := range list {
		key := fold(x.exact)
		if seen[key]++; seen[key] > 1 && x.kind == wireKind {
			x.exact += " (" + strconv.Itoa(seen[key]) + ")"
		}
	}
}
