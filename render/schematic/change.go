package schematic

import (
	"fmt"
	"slices"

	"fusewright/harness"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
)

// ChangeKind says how a part or wire changed.
type ChangeKind string

// The kinds of changes, each with a sign and a line of its own; see drawDelta.
const (
	Added   ChangeKind = "added"
	Removed ChangeKind = "removed"
	Changed ChangeKind = "changed"
	Judged  ChangeKind = "new finding" // itself as it was
)

// Changes is what differs between two designs, for the drawing of them.
type Changes struct {
	Was, Now string // how the title blocks call the other design: "revision A"
	List     []Change
}

// Change is one entry of the list of changes; its number is its place there,
// from 1.
type Change struct {
	Kind ChangeKind
	Name string // "lamp fuse"
	// Old and New are the parts and wires in each design that the entry is about,
	// by reference or wire number; the first carries the number.
	Old, New []string
	Text     string   // "rating 5 A → 30 A"
	Findings []string // that came with it: "new danger: fuse-over-wire: …"
	// Rewired tells that the drawing of the earlier design shows what words
	// cannot: something is gone or was connected to something else.
	Rewired bool
}

// DrawChanges makes the sheets of a design with what changed against an earlier
// one marked (Options.Changes). Where something is gone or was connected
// differently, those sheets of the earlier design follow that carry a mark.
func DrawChanges(earlier, now *harness.Review, opt Options) ([]*scene.Sheet, error) {
	if opt.Changes == nil || earlier == nil || earlier.Circuit == nil {
		return nil, fmt.Errorf("schematic: no earlier design to compare with")
	}
	if now == nil || now.Circuit == nil {
		return nil, fmt.Errorf("schematic: no circuit to draw")
	}
	d, err := planChanges(earlier, now, opt)
	if err != nil {
		return nil, err
	}
	sheets := d.paint()
	if d.earlier != nil {
		sheets = append(sheets, d.earlier.paint()...)
	}
	return sheets, nil
}

// planChanges lays out the sheets of both designs.
func planChanges(earlier, now *harness.Review, opt Options) (*drawing, error) {
	d, err := plan(now, opt)
	if err != nil || !opt.Changes.rewired() {
		return d, err
	}
	opt.asWas = true
	was, err := plan(earlier, opt)
	if err != nil {
		return nil, err
	}
	d.earlier = was
	was.first = len(d.pages) + len(d.extras)
	was.leaveOut()
	d.total = was.total
	return d, nil
}

func (c *Changes) rewired() bool {
	return slices.ContainsFunc(c.List, func(x Change) bool { return x.Rewired })
}

// leaveOut drops the pages without a mark and numbers the others.
func (d *drawing) leaveOut() {
	number := d.first
	for i := range len(d.pages) + len(d.extras) {
		if i < len(d.pages) && !d.bears(d.pages[i]) {
			d.numbers = append(d.numbers, 0)
			continue
		}
		number++
		d.numbers = append(d.numbers, number)
	}
	d.total = number
}

// bears tells whether a page carries a mark, in the circuit or in its list of
// grounds.
func (d *drawing) bears(p *page) bool {
	here := d.refsOn(p)
	grounds := slices.ContainsFunc(p.panels, func(q *panel) bool { return q.grounds })
	return slices.ContainsFunc(d.flags.list, func(m *marked) bool {
		return m.anyOf(here) || grounds && len(m.refs) > 0 && !d.drawn(m)
	})
}

// changeFlags are the signs of changes. What is only judged anew is not marked
// on the earlier design.
func changeFlags(c *Changes, asWas bool) *flags {
	f := &flags{byRef: map[string]int{}, kinds: map[string]ChangeKind{}, wide: 7.8, half: deltaH / 2,
		rise: deltaH/2 - deltaFoot, drop: 3.6, above: 1.9, lift: deltaH + 2.4, atop: true, halo: cloudReach + 0.2}
	for i := range c.List {
		x := &c.List[i]
		m := &marked{number: i + 1, refs: x.New, change: x, asWas: asWas}
		if asWas {
			m.refs = x.Old
		}
		for _, ref := range m.refs {
			f.kinds[ref] = x.Kind
		}
		if len(m.refs) > 0 {
			f.byRef[m.refs[0]] = m.number
		}
		f.list = append(f.list, m)
	}
	return f
}

// head names what an entry is about, with how the other design calls it.
func (c *Change) head(refs []string, asWas bool) string {
	return wording.Present(append(c.names(refs, asWas), string(c.Kind)), ", ")
}

// names are the parts and wires of an entry, or else its own name.
func (c *Change) names(refs []string, asWas bool) []string {
	names := append([]string{}, refs...)
	if len(refs) == 0 {
		names = append(append(names, c.New...), c.Old...)
	}
	if len(names) == 0 {
		names = []string{c.Name}
	}
	if len(c.Old) > 0 && len(c.New) > 0 && c.Old[0] != c.New[0] {
		names[0] = c.New[0] + " (was " + c.Old[0] + ")"
		if asWas {
			names[0] = c.Old[0] + " (now " + c.New[0] + ")"
		}
	}
	return names
}

// statements are the name with what differs, and what was found.
func (c *Change) statements() (list []string) {
	if len(c.Old)+len(c.New) > 0 || c.Text != "" { // else the head has the name
		list = []string{wording.Present([]string{c.Name, c.Text}, ": ")}
	}
	return append(list, c.Findings...)
}

// short is the most telling words of a change: its sign tells the kind.
func (c *Change) short() string {
	switch {
	case c.Kind == Added || c.Kind == Removed:
		return string(c.Kind) + ": " + c.Name
	case c.Kind == Changed:
		return wording.Present(append([]string{c.Text}, c.Findings...), "; ")
	}
	return wording.Present(c.Findings, "; ")
}

// placeOf is sheet and zone of what a change is about: in this drawing, else in
// that of the earlier design.
func (d *drawing) placeOf(m *marked) string {
	for _, ref := range m.refs {
		if c := d.cellOf(ref); c != nil {
			return d.where(c)
		}
	}
	if d.earlier != nil && !d.asWas {
		return d.earlier.placeOf(d.earlier.flags.list[m.number-1])
	}
	return ""
}

// cellOf is the cell that shows a part, a way's fuse or a wire.
func (d *drawing) cellOf(ref string) *cell {
	for _, p := range d.circuit.Parts {
		if p.Ref == ref && (p.Kind == circuit.Generator || p.Kind == circuit.VehicleLoads) {
			for _, c := range d.cells {
				if c.part.Kind == circuit.Battery {
					return c // they stand with it
				}
			}
		}
	}
	for _, p := range d.pages {
		for _, c := range p.cells {
			if c.kind == partCell && shows(c, ref) {
				return c
			}
		}
	}
	return nil
}

func shows(c *cell, ref string) bool {
	if c.part.Ref == ref {
		return true
	}
	for _, w := range c.ways {
		if w.ref == ref {
			return true
		}
	}
	for _, in := range c.inlets {
		if in.wire != nil && in.wire.Number == ref {
			return true
		}
	}
	for _, w := range c.returns {
		if w.Number == ref {
			return true
		}
	}
	return false
}

// subject is what the sheets show.
func (d *drawing) subject() string {
	switch {
	case d.asWas:
		return "as it was"
	case d.changes != nil:
		return "changes"
	}
	return "schematic"
}
