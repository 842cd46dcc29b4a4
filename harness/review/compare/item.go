package compare

import (
	"sort"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// thing is a part or wire with its properties in print order, and the figures
// whose rise or fall is of concern.
type thing struct {
	key        string // what makes it the same thing in both reviews
	kind, name string
	ref        string // designation in its circuit, or wire number; "" = none
	fields     []field
}

// field is a property as text; risk is +1 when a larger figure is a greater
// risk, -1 when a smaller one is, 0 when its figure says nothing.
type field struct {
	name, text string
	figure     float64
	risk       int
	length     bool // the figure is a length in metres
}

// items compares things by key, and notes those of another label.
func (c *Comparison) items(of func(*circuit.Circuit) []thing) []Item {
	old, changed := of(c.Old.Circuit), of(c.New.Circuit)
	before, after := byKey(old), byKey(changed)
	c.renumbered(before, changed)
	var list []Item
	for _, t := range changed {
		if was, ok := before[t.key]; !ok {
			list = append(list, Item{What: Added, Kind: t.kind, Name: t.name, Fields: differ(thing{}, t), NewRef: t.ref})
		} else if f := differ(was, t); len(f) > 0 {
			list = append(list, Item{What: Changed, Kind: t.kind, Name: t.name, Fields: f, Concern: concern(was, t),
				OldRef: was.ref, NewRef: t.ref})
		}
	}
	for _, t := range old {
		if _, ok := after[t.key]; !ok {
			list = append(list, Item{What: Removed, Kind: t.kind, Name: t.name, Fields: differ(t, thing{}), OldRef: t.ref})
		}
	}
	sort.SliceStable(list, func(i, j int) bool { return rank[list[i].What] < rank[list[j].What] })
	return byConcern(list, func(i Item) float64 { return i.Concern })
}

// renumbered notes what is there in both under two labels: a part that several
// entries of the design are about once.
func (c *Comparison) renumbered(before map[string]thing, changed []thing) {
	seen := map[string]bool{}
	for _, t := range changed {
		was := before[t.key].ref
		if was != "" && t.ref != "" && was != t.ref && !seen[t.ref] {
			c.Renumbered = append(c.Renumbered, Renumbering{t.kind, t.name, was, t.ref})
			seen[t.ref] = true
		}
	}
}

// rank puts changes before what is new and what is gone.
var rank = map[What]int{Changed: 0, Relabelled: 0, Judged: 0, Removed: 1, Added: 2}

func byKey(list []thing) map[string]thing {
	m := make(map[string]thing, len(list))
	for _, t := range list {
		m[t.key] = t
	}
	return m
}

// differ lists the properties that differ, in the order of the new thing.
func differ(old, changed thing) []Field {
	was := map[string]field{}
	for _, f := range old.fields {
		was[f.name] = f
	}
	is := map[string]bool{}
	var list []Field
	for _, f := range changed.fields {
		is[f.name] = true
		if o := was[f.name]; o.text != f.text {
			list = append(list, Field{f.name, o.text, f.text, o.lengthM(), f.lengthM()})
		}
	}
	for _, f := range old.fields {
		if !is[f.name] && f.text != "" {
			list = append(list, Field{Name: f.name, Old: f.text, oldM: f.lengthM()})
		}
	}
	return list
}

// lengthM is the length that a field gives, in metres; 0 = it gives none.
func (f field) lengthM() float64 {
	if f.length {
		return f.figure
	}
	return 0
}

// concern sums how far figures moved towards risk, as shares of what they were.
func concern(old, changed thing) float64 {
	was := map[string]field{}
	for _, f := range old.fields {
		was[f.name] = f
	}
	sum := 0.0
	for _, f := range changed.fields {
		o, ok := was[f.name]
		if !ok || f.risk == 0 || o.figure == f.figure || o.figure == 0 {
			continue
		}
		sum += float64(f.risk) * (f.figure - o.figure) / o.figure
	}
	return sum
}

// fields gathers properties; empty ones are left out.
type fields []field

func (l *fields) text(name, text string) {
	if text != "" {
		*l = append(*l, field{name: name, text: text})
	}
}

func (l *fields) figure(name, text string, figure float64, risk int) {
	*l = append(*l, field{name: name, text: text, figure: figure, risk: risk})
}

func (l *fields) lengthM(name string, m float64, risk int) {
	*l = append(*l, field{name, quantity.Format(m, quantity.Length), m, risk, true})
}

func (l *fields) yes(name string, is bool) {
	if is {
		l.text(name, "yes")
	}
}

func key(parts ...string) string { return strings.ToLower(strings.Join(parts, "\x00")) }
