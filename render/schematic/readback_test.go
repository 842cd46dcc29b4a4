package schematic

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/parts"
	"fusewright/render/symbol"
)

// seen is what a finished sheet shows of the wiring, read from its lines alone.
type seen struct {
	wires   map[string][][]scene.Point // by wire number: its conductors
	parts   map[string][]scene.Point   // by reference: ends of the lines in its symbol
	poles   map[string]int             // by wire number: where connectors part it
	grounds []mark
	heads   []mark // references in bold type
}

// mark is a place with what it says.
type mark struct {
	at   scene.Point
	says string
}

// look reads a sheet.
func look(s *scene.Sheet) *seen {
	v := &seen{wires: map[string][][]scene.Point{}, parts: map[string][]scene.Point{}, poles: map[string]int{}}
	var in *scene.Group // of the last conductor
	var open []*scene.Group
	pinned := false
	for _, item := range s.Items {
		switch {
		case item.Begin != nil:
			open = append(open, item.Begin)
			pinned = false
			continue
		case item.End:
			open = open[:len(open)-1]
			continue
		}
		if t := item.Text; t != nil && t.Face == scene.Bold && (len(open) == 0 || open[len(open)-1].Class != "part") {
			v.heads = append(v.heads, mark{t.At, t.String})
		}
		if item.Path == nil || len(open) == 0 {
			continue
		}
		g := open[len(open)-1]
		switch g.Class {
		case "wire":
			if item.Path.Stroke != nil && item.Path.Stroke.WidthMM == 0.5 {
				v.conductor(strings.TrimPrefix(g.ID, "wire-"), item.Path.Points, in == g)
				in = g
			}
		case "ground":
			if !pinned { // its first line begins at the pin
				v.grounds = append(v.grounds, mark{item.Path.Points[0], strings.TrimPrefix(g.Title, "to ")})
				pinned = true
			}
		case "part":
			ref, _, _ := strings.Cut(g.Title, " ")
			v.parts[ref] = append(v.parts[ref], item.Path.Points[0], item.Path.Points[len(item.Path.Points)-1])
		}
	}
	return v
}

// conductor notes a conductor of a wire, or the piece beyond a pole as one with that before it.
func (v *seen) conductor(number string, pts []scene.Point, goesOn bool) {
	list := v.wires[number]
	if goesOn {
		last := list[len(list)-1]
		if end := last[len(last)-1]; end.Y == pts[0].Y && math.Abs(math.Abs(end.X-pts[0].X)-symbol.M) < 0.01 {
			list[len(list)-1] = slices.Concat(last[:len(last)-1], pts[1:])
			v.poles[number]++
			return
		}
	}
	v.wires[number] = append(list, pts)
}

func same(a, b scene.Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 0.01 }

// checkReturns reads return wires back from the sheets: each begins at its part
// and ends at the sign of its ground. checkNets has read the feeds.
func checkReturns(d *paint.Drawing, sheets []*scene.Sheet) (faults []string) {
	var views []*seen
	for _, s := range sheets {
		views = append(views, look(s))
	}
	for _, w := range d.Circuit.Wires {
		if !parts.IsReturn(w) {
			continue
		}
		found := 0
		for i, v := range views {
			for _, line := range v.wires[w.Number] {
				found++
				if is := v.poles[w.Number]; is != len(w.Poles) {
					faults = append(faults, fmt.Sprintf("sheet %d: %s has %d poles, not %d", i+1, w.Number, is, len(w.Poles)))
				}
				if what := v.returnFault(d, w, line); what != "" {
					faults = append(faults, fmt.Sprintf("sheet %d: %s %s", i+1, w.Number, what))
				}
			}
		}
		if found != 1 {
			faults = append(faults, fmt.Sprintf("%s is drawn %d times", w.Number, found))
		}
	}
	sort.Strings(faults)
	return faults
}

// returnFault tells what is wrong with one return's line.
func (v *seen) returnFault(d *paint.Drawing, w *circuit.Wire, line []scene.Point) string {
	start, end := line[0], line[len(line)-1]
	if at := v.groundAt(end); at != d.GroundName(w.To) {
		return fmt.Sprintf("ends at %q, not at %q", at, d.GroundName(w.To))
	}
	if listed(w.From.Part) {
		if head := v.headOver(d, start); head != w.From.Part.Ref && !slices.ContainsFunc(v.parts[w.From.Part.Ref], func(q scene.Point) bool { return same(q, start) }) {
			return fmt.Sprintf("begins at %q, not at %q", head, w.From.Part.Ref)
		}
		return ""
	}
	for _, p := range v.parts[w.From.Part.Ref] {
		if same(p, start) {
			return ""
		}
	}
	for _, q := range d.Wiring.Returns[w.From.Part] { // branches off another return of the part
		for _, other := range v.wires[q.Number] {
			if q != w && onLine(start, other) {
				return ""
			}
		}
	}
	return fmt.Sprintf("does not begin at %s", w.From.Part.Ref)
}

// listed tells of parts whose cables to a ground or post stand in the list of grounds.
func listed(p *circuit.Part) bool {
	return p.Kind == circuit.Ground || p.Kind == circuit.Bank || p.Kind == circuit.Charger
}

func (v *seen) groundAt(p scene.Point) string {
	for _, g := range v.grounds {
		if same(g.at, p) {
			return g.says
		}
	}
	return ""
}

// headOver is the ground point whose entry in the list stands next above a
// place.
func (v *seen) headOver(d *paint.Drawing, p scene.Point) string {
	best, says := math.Inf(1), ""
	refs := map[string]bool{}
	for _, q := range d.Circuit.Parts {
		refs[q.Ref] = listed(q) || q.Kind == circuit.Battery
	}
	for _, h := range v.heads { // a sign may stand before it
		if dy := p.Y - h.at.Y; refs[h.says] && dy > 0 && dy < best && h.at.X > p.X && h.at.X < p.X+20 {
			best, says = dy, h.says
		}
	}
	return says
}

func onLine(p scene.Point, line []scene.Point) bool {
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		if p.X >= min(a.X, b.X)-0.01 && p.X <= max(a.X, b.X)+0.01 && p.Y >= min(a.Y, b.Y)-0.01 && p.Y <= max(a.Y, b.Y)+0.01 {
			return true
		}
	}
	return false
}

// checkDrawnAsRouted compares the line of every feed on the sheets with the way
// that checkNets has read.
func checkDrawnAsRouted(d *paint.Drawing, sheets []*scene.Sheet) (faults []string) {
	for i, p := range d.Pages {
		v := look(sheets[i])
		field := d.Field
		for _, l := range p.Lines {
			if l.In.Wire == nil {
				continue
			}
			lines := v.wires[l.In.Wire.Number]
			ok := len(lines) == 1 && len(lines[0]) == len(l.Pts)
			for k := 0; ok && k < len(l.Pts); k++ {
				ok = same(lines[0][k], scene.Point{X: field.X + float64(l.Pts[k].X)*symbol.M, Y: field.Y + float64(l.Pts[k].Y)*symbol.M})
			}
			if !ok {
				faults = append(faults, fmt.Sprintf("sheet %d: %s is not drawn as routed", i+1, l.In.Wire.Number))
			}
			if is, want := v.poles[l.In.Wire.Number], len(l.In.Wire.Poles); is != want {
				faults = append(faults, fmt.Sprintf("sheet %d: %s has %d poles, not %d", i+1, l.In.Wire.Number, is, want))
			}
		}
	}
	return faults
}
