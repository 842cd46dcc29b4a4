package schematic

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/cell"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/route"
)

// checkNets reads the wiring back from the lines of all pages and compares it
// with the circuit: which terminals each line's end touches, joined across
// flags by the terminal they name.
func checkNets(d *paint.Drawing) (faults []string) {
	for _, p := range d.Pages {
		join := newUnion()
		var segs [][2]route.Spot
		for _, l := range p.Lines {
			for k := 1; k < len(l.Pts); k++ {
				segs = append(segs, [2]route.Spot{l.Pts[k-1], l.Pts[k]})
			}
		}
		for _, c := range p.Cells {
			if o := c.Onward(); o != nil { // within the cell, round below
				down := route.Spot{X: c.X - 1, Y: o.Y()}
				segs = append(segs, [2]route.Spot{{X: c.X - 1, Y: c.Rows[0].Y}, down}, [2]route.Spot{down, {X: c.X + o.Dx, Y: o.Y()}})
			}
		}
		for i, a := range segs {
			for j, b := range segs[:i] {
				// Lines join where an end of one lies on the other; a crossing joins nothing.
				if route.Between(a[0], b[0], b[1]) || route.Between(a[1], b[0], b[1]) || route.Between(b[0], a[0], a[1]) || route.Between(b[1], a[0], a[1]) {
					join.merge(i, j)
				}
			}
		}
		at := func(q route.Spot) int {
			for i, s := range segs {
				if route.Between(q, s[0], s[1]) {
					return join.root(i)
				}
			}
			return -1
		}
		// names of the terminals found on each joined set of lines
		found := map[int]map[string]bool{}
		note := func(q route.Spot, name string) {
			i := at(q)
			if i < 0 {
				faults = append(faults, fmt.Sprintf("sheet %d: nothing drawn at %s (%v)", p.Index+1, name, q))
				return
			}
			if found[i] == nil {
				found[i] = map[string]bool{}
			}
			found[i][name] = true
		}
		want := map[string]map[string]bool{}
		expect := func(source, name string) {
			if want[source] == nil {
				want[source] = map[string]bool{source: true}
			}
			want[source][name] = true
		}
		for _, c := range p.Cells {
			if c.Empty {
				continue
			}
			for _, o := range c.Outlets {
				if c.Kind == cell.In || usedHere(d, p, o.Term) {
					note(route.Spot{X: c.X + o.Dx, Y: o.Y()}, keyOf(c, o.Term))
				}
			}
			for _, in := range c.Inlets {
				pin := route.Spot{X: c.X + in.Dx, Y: in.Y()}
				if cell.FirstOf(in) != in {
					pin.X = c.X - 1
				}
				name := keyOf(c, in.Term)
				if c.Kind == cell.Part && (c.Part.Kind == circuit.Splice || c.Part.Kind == circuit.Block || c.Part.Kind == circuit.Bank) {
					name += fmt.Sprint(" in ", c.Piece) // its symbol joins the two sides, its bar the pieces
				}
				if c.Plugged() {
					name += " by " + in.Wire.Number // its symbol joins them behind the poles
				}
				note(pin, name)
				source := "T " + terminalKey(in.Source)
				if c.Kind == cell.Part && d.ComesByFlag(p, in) {
					source = "F " + terminalKey(in.Source)
				}
				expect(source, name)
			}
		}
		// A terminal fed from several sources joins them all.
		merged := mergeSets(want)
		got := map[string]bool{}
		for _, set := range found {
			got[setKey(set)] = true
		}
		for _, set := range merged {
			if k := setKey(set); !got[k] {
				faults = append(faults, fmt.Sprintf("sheet %d: the circuit joins %s, the drawing does not", p.Index+1, k))
			}
		}
		if len(got) != len(merged) {
			faults = append(faults, fmt.Sprintf("sheet %d: %d nets drawn, %d in the circuit", p.Index+1, len(got), len(merged)))
		}
	}
	return faults
}

func usedHere(d *paint.Drawing, p *arrange.Page, t *circuit.Terminal) bool {
	return slices.ContainsFunc(d.Feeds[t], func(in *cell.Inlet) bool { return !in.Cell.Empty })
}

func terminalKey(t *circuit.Terminal) string { return t.Part.Ref + ":" + t.Name }

// keyOf names a connection point: terminals of parts by themselves, flags by
// their terminal.
func keyOf(c *cell.Cell, t *circuit.Terminal) string {
	switch c.Kind {
	case cell.In:
		return "F " + terminalKey(t)
	case cell.Out:
		return "G " + terminalKey(t)
	}
	return "T " + terminalKey(t)
}

func setKey(set map[string]bool) string {
	var names []string
	for n := range set {
		names = append(names, n)
	}
	sort.Strings(names)
	return strings.Join(names, " + ")
}

// mergeSets joins sets that share a name.
func mergeSets(want map[string]map[string]bool) []map[string]bool {
	var out []map[string]bool
	var keys []string
	for k := range want {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	for _, k := range keys {
		set := want[k]
		var rest []map[string]bool
		for _, o := range out {
			shared := false
			for n := range o {
				shared = shared || set[n]
			}
			if !shared {
				rest = append(rest, o)
				continue
			}
			for n := range o {
				set[n] = true
			}
		}
		out = append(rest, set)
	}
	return out
}

type union struct{ up map[int]int }

func newUnion() *union { return &union{map[int]int{}} }

func (u *union) root(i int) int {
	for {
		up, ok := u.up[i]
		if !ok {
			return i
		}
		i = up
	}
}

func (u *union) merge(i, j int) {
	a, b := u.root(i), u.root(j)
	if a != b {
		u.up[a] = b
	}
}
