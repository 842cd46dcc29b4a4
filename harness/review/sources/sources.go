// Package sources lists where the numbers of a design come from: every source
// of the library rows that its circuit uses, with how sure each is and what it
// is used for, and the values taken for want of data. It reads circuits and
// computes nothing.
package sources

import (
	"slices"
	"sort"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/library"
)

// Use is one source with what the design takes from it.
type Use struct {
	Source library.Source
	For    []string // "wire ISO 6722 thin wall class B", "fuse blade C 15 A", in the order met
}

// Assumption is a value taken from common practice for want of data.
type Assumption struct {
	What string   // in words
	At   []string // branches that rest on it
}

// Of lists the sources of a circuit, surest first and then by their text.
func Of(c *circuit.Circuit) []*Use {
	g := &gatherer{byKey: map[library.Source]*Use{}, seen: map[string]bool{}}
	g.practice(c.Design)
	for _, w := range c.Wires {
		g.wire(c.Design.Library, w)
	}
	for _, b := range c.Branches {
		if b.Fuse != nil {
			g.fuse(b.Fuse)
		}
	}
	for _, p := range c.Parts {
		g.part(p)
	}
	for _, b := range c.Bundles {
		if cover := b.Run.Cover; cover != nil {
			g.add(cover.Source, "cover "+cover.Name)
		}
	}
	if chem := c.Design.Battery.Chemistry; chem != nil {
		g.add(chem.Source, "battery "+chem.Name)
	}
	if kind := c.Design.Charging.Kind; kind != nil {
		g.add(kind.Source, "charging by "+kind.Name)
	}
	for _, row := range corner.TolerancesOf(c.Design).Rows {
		g.add(row.Source, "tolerance of "+row.Name)
	}
	sort.SliceStable(g.uses, func(i, j int) bool {
		a, b := g.uses[i].Source, g.uses[j].Source
		if ra, rb := rank(a), rank(b); ra != rb {
			return ra < rb
		}
		return a.Text < b.Text
	})
	return g.uses
}

// rank is the place of a certainty, surest first; unknown ones last.
func rank(s library.Source) int {
	if i := slices.Index(library.Certainties, s.Certainty); i >= 0 {
		return i
	}
	return len(library.Certainties)
}

// Assumptions lists what the circuit's resistances rest on where neither the
// design nor the library gives them.
func Assumptions(c *circuit.Circuit) []*Assumption {
	by := map[string]*Assumption{}
	var list []*Assumption
	for _, b := range c.Branches {
		if b.Assumed == "" {
			continue
		}
		a := by[b.Assumed]
		if a == nil {
			a = &Assumption{What: b.Assumed}
			by[b.Assumed] = a
			list = append(list, a)
		}
		a.At = append(a.At, b.Name)
	}
	return list
}

// gatherer collects uses, each once.
type gatherer struct {
	uses  []*Use
	byKey map[library.Source]*Use
	seen  map[string]bool
}

func (g *gatherer) add(s library.Source, what string) {
	if s.Text == "" {
		return
	}
	u := g.byKey[s]
	if u == nil {
		u = &Use{Source: s}
		g.byKey[s] = u
		g.uses = append(g.uses, u)
	}
	if key := s.Certainty + "\x00" + s.Text + "\x00" + what; !g.seen[key] {
		g.seen[key] = true
		u.For = append(u.For, what)
	}
}

// practice adds the limits of the practice and its current table.
func (g *gatherer) practice(d *design.Design) {
	p := d.Practice
	if p == nil {
		return
	}
	var keys []string
	for k := range p.Source {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	for _, k := range keys {
		g.add(p.Source[k], "practice "+p.Name+", "+k)
	}
	if t := d.Library.CurrentTable(p.Ampacity); t != nil {
		g.add(t.Source, "current table "+t.Name)
		g.add(t.HotSource, "current table "+t.Name+", hot places")
		g.add(t.BundleSource, "current table "+t.Name+", bundles")
	}
}

func (g *gatherer) wire(lib *library.Library, w *circuit.Wire) {
	if t := w.Spec.Type; t != nil {
		g.add(t.Source, "wire "+t.Name)
		if size := w.Spec.Size; size != nil {
			g.add(size.Source, "wire "+t.Name+" "+size.Label)
		}
		if m := lib.Insulation(t.Material); m != nil {
			g.add(m.Source, "insulation "+m.Name)
		}
	}
	for _, end := range append(w.Contacts(), w.Crimp(true), w.Crimp(false)) {
		if end != nil {
			g.add(end.Source, "terminal "+end.Name)
		}
	}
	for _, colour := range []*library.Colour{w.Spec.Colour.Base, w.Spec.Colour.Tracer} {
		if colour != nil {
			g.add(colour.Source, "colour "+colour.Code)
		}
	}
}

func (g *gatherer) fuse(f *circuit.FuseSpec) {
	if f.Type == nil {
		return
	}
	g.add(f.Type.Source, "fuse "+f.Type.Name)
	if f.Rating == nil {
		return
	}
	g.add(f.Rating.Source, "fuse "+f.Type.Name+" ratings")
	for _, point := range f.Type.BandFor(f.Rating.RatingA) {
		g.add(point.Source, "fuse "+f.Type.Name+" opening times")
	}
}

func (g *gatherer) part(p *circuit.Part) {
	if p.Plug != nil {
		g.add(p.Plug.Family.Source, "connector family "+p.Plug.Family.Name)
	}
	switch src := p.Source.(type) {
	case *design.Relay:
		if src.Form != nil {
			g.add(src.Form.Source, "relay "+src.Form.Name)
		}
	case *design.Block:
		if src.Type != nil {
			g.add(src.Type.Source, "block "+src.Type.Name)
		}
	case *design.Switch:
		if src.Type != nil {
			g.add(src.Type.Source, "switch "+src.Type.Name)
		}
	case *design.Bank:
		g.add(src.Store.Chemistry.Source, "battery "+src.Store.Chemistry.Name)
	case *design.Charger:
		g.add(src.Type.Source, "charger "+src.Type.Name)
		if src.Type.Wire.Mm2 > 0 {
			g.add(src.Type.Wire.Source, "charger "+src.Type.Name+", least wire")
		}
		if kind := src.Engine.Kind; kind != nil {
			g.add(kind.Source, "charging by "+kind.Name)
		}
	case *design.Diode:
		g.add(src.Type.Source, "diode "+src.Type.Name)
	case *design.Load:
		if src.Type != nil {
			g.add(src.Type.Source, "load "+src.Type.Name)
			g.add(src.Type.Inrush.Source, "load "+src.Type.Name+", inrush")
			if src.Type.Aim.Share > 0 {
				g.add(src.Type.Aim.Source, "load "+src.Type.Name+", drop aim")
			}
			if src.LeastMm2.Given() && src.LeastMm2.Pos.Line == 0 {
				g.add(src.Type.Wire.Source, "load "+src.Type.Name+", least wire")
			}
			if src.MostW > 0 {
				g.add(src.Type.Most.Source, "load "+src.Type.Name+", highest power")
			}
		}
	}
}
