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
	held  map[string]*heldLabel // by letter and what it stands for, not given yet
	taken map[string]bool
	next  map[string]int // by letter, the last one tried
}

// heldLabel is a label that the design holds, with the colour of its wire.
type heldLabel struct {
	*design.Number
	colour *design.Colour // nil = not said
}

// label gives everything its label. What `numbers` does not hold takes the next
// free one of its letter, in the order of the list.
func (b *builder) label(list []*named) {
	n := &numberer{b: b, held: map[string]*heldLabel{}, taken: map[string]bool{}, next: map[string]int{}}
	n.read(list)
	for _, x := range list {
		n.hold(x, x.exact)
	}
	n.several(list)
	for _, x := range list { // of a part with one wire of a role part and role are enough
		n.hold(x, x.name)
	}
	n.moved(list)
	n.leave()
	for _, x := range list {
		if *x.label == "" {
			n.give(x)
		}
	}
}

// read takes what the design holds, and reports labels of wires that stand for parts, of
// parts that stand for wires, and those that stand for the same as another one. A label
// whose part has another letter now stands for what is gone.
func (n *numberer) read(list []*named) {
	numbers := n.b.c.Design.Numbers.List
	if len(numbers) == 0 {
		return
	}
	wires := map[string]bool{}
	for _, x := range list {
		if x.kind == wireKind {
			wires[fold(x.name)], wires[fold(x.exact)] = true, true
		}
	}
	for i := range numbers {
		x := &heldLabel{Number: &numbers[i]}
		n.taken[x.Label] = true
		if x.Letter() == n.b.letter(wireKind) {
			_, x.colour = n.b.c.Design.Coloured(x.Of.Value)
		}
		key := n.keyOf(x.Number)
		_, of, _ := strings.Cut(key, " ")
		switch first := n.held[key]; {
		case x.Letter() == n.b.letter(wireKind) && !saysRole(of):
			n.b.report(x.Of.Pos, fmt.Sprintf("numbers: %s stands for %q, which is no wire", x.Label, x.Of.Value),
				"a part and the role of its wire, such as \"left lamp, feed\"")
		case x.Letter() != n.b.letter(wireKind) && wires[of]:
			n.b.report(x.Pos, fmt.Sprintf("numbers: %s stands for %q, which has another letter", x.Label, x.Of.Value),
				n.b.letter(wireKind)+" and a number, or no such line, which `fmt --number` then writes")
		case first != nil:
			n.b.problems.Add(problem.Problem{Pos: x.Pos, Also: &first.Pos, Expected: "one label for each",
				What: fmt.Sprintf("numbers: %s and %s both stand for %q", first.Label, x.Label, x.Of.Value)})
		default:
			n.held[key] = x
		}
	}
}

var roles = []Role{FeedWire, ReturnWire, CoilFeedWire, CoilReturnWire, LinkWire}

// saysRole tells whether a text names a wire by part and role.
func saysRole(text string) bool {
	_, role, _ := strings.Cut(text, ", ")
	return slices.ContainsFunc(roles, func(r Role) bool {
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
		if h.colour != nil {
			n.b.colours[h.Label] = *h.colour
		}
	}
}

// moved gives a wire that comes from elsewhere now, or goes elsewhere, the label that the
// design holds for its part and role, where both are the only ones left. Its colour is
// chosen anew.
func (n *numberer) moved(list []*named) {
	if len(n.held) == 0 {
		return
	}
	left, open := map[string][]string{}, map[string][]*named{}
	for key := range n.held {
		name := withoutEnd(key)
		left[name] = append(left[name], key)
	}
	for _, x := range list {
		if *x.label == "" && x.kind == wireKind {
			key := n.b.letter(x.kind) + " " + fold(x.name)
			open[key] = append(open[key], x)
		}
	}
	for name, wires := range open {
		if keys := left[name]; len(wires) == 1 && len(keys) == 1 {
			*wires[0].label = n.held[keys[0]].Label
			delete(n.held, keys[0])
		}
	}
}

// withoutEnd is what a label of a wire stands for, without the other end.
func withoutEnd(of string) string {
	for _, r := range roles {
		for _, way := range []string{" from ", " to "} {
			role := ", " + string(r)
			if i := strings.Index(of, role+way); i >= 0 {
				return of[:i+len(role)]
			}
		}
	}
	return of
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
		key := n.keyOf(&n.b.c.Design.Numbers.List[i])
		h := n.held[key]
		if names := ends[key]; h != nil && h.Number == &n.b.c.Design.Numbers.List[i] && len(names) > 1 {
			n.b.report(h.Of.Pos, fmt.Sprintf("numbers: %s stands for %q, of which there are %d", h.Label, h.Of.Value, len(names)),
				strings.Join(names, " or ")+", whichever is built with that label")
			delete(n.held, key)
		}
	}
}

// keyOf is the key of a label in held.
func (n *numberer) keyOf(x *design.Number) string {
	of := x.Of.Value
	if x.Letter() == n.b.letter(wireKind) {
		of, _ = n.b.c.Design.Coloured(of)
	}
	return x.Letter() + " " + fold(of)
}

// leave notes the labels whose part or wire is gone; those of an earlier
// revision are free again.
func (n *numberer) leave() {
	for i := range n.b.c.Design.Numbers.List {
		x := &n.b.c.Design.Numbers.List[i]
		if h := n.held[n.keyOf(x)]; h == nil || h.Number != x {
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

// Labels is what `numbers` of the design says when every label is to stay: parts, and
// wires with where they come from or go to and, where the design leaves it open, with
// their colour. What it says already in other spelling stays; what it lacks has no place
// in the file. Labels whose part or wire is gone are in it while they are not given again.
func (c *Circuit) Labels() []design.Number {
	var list []design.Number
	said := map[string]design.Number{}
	for _, x := range c.Design.Numbers.List {
		said[x.Label] = x
	}
	for _, x := range c.Gone {
		if c.Design.Lasting() {
			list = append(list, x)
		}
	}
	all := c.namedParts()
	for _, w := range c.Wires {
		all = append(all, namedWire(w.Role, w.From, w.To, &w.Number))
	}
	tellApart(all)
	wires := all[len(all)-len(c.Wires):]
	for i, w := range c.Wires {
		if w.Spec.ColourAuto && w.Spec.Colour.Base != nil {
			wires[i].exact += ", " + w.Spec.Colour.Code()
		}
	}
	for _, x := range all {
		is, ok := said[*x.label]
		if !ok || fold(is.Of.Value) != fold(x.exact) {
			is = design.Number{Label: *x.label, Of: design.Text{Value: x.exact}}
		}
		list = append(list, is)
	}
	slices.SortFunc(list, design.Number.Compare)
	return list
}

// GoneLoad is a part that the design no longer has, while its labels are kept.
type GoneLoad struct {
	design.Number           // its own label
	Feed          string    // number of its wire
	From          *Terminal // where that came from
}

// GoneLoads are what fed nothing further of what is gone: parts with a wire from a terminal
// that is still there, in the order of the labels.
func (c *Circuit) GoneLoads() (list []GoneLoad) {
	if len(c.Gone) == 0 || !c.Design.Lasting() {
		return nil
	}
	ends := map[string]*Terminal{}
	for _, p := range c.Parts {
		for _, t := range p.Terminals {
			if end := fold(endText(t)); ends[end] == nil || ends[end].Name == "in" {
				ends[end] = t
			}
		}
	}
	parts := map[string]design.Number{}
	for _, g := range c.Gone {
		parts[fold(g.Of.Value)] = g
	}
	for _, g := range c.Gone {
		of, _ := c.Design.Coloured(g.Of.Value)
		name, end, _ := strings.Cut(fold(of), ", "+string(FeedWire)+" from ")
		part, gone := parts[name]
		if from := ends[end]; gone && from != nil {
			list = append(list, GoneLoad{Number: part, Feed: g.Label, From: from})
			delete(parts, name)
		}
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
	if role == LinkWire {
		name := from.Part.Name + ", " + string(role)
		return &named{kind: wireKind, name: name, exact: name + " from " + from.Name, label: label}
	}
	far, other, way := to, from, " from "
	if role.Returns() {
		far, other, way = from, to, " to "
	}
	name := far.Part.Name + ", " + string(role)
	return &named{kind: wireKind, name: name, exact: name + way + endText(other), label: label}
}

// endText names an end of a wire: a splice or ground has one joint.
func endText(t *Terminal) string {
	if k := t.Part.Kind; k == Splice || k == Ground {
		return t.Part.Name
	}
	return t.Text()
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
