package remedy

import (
	"fmt"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/rules"
)

// What a bus bar beside a crowded stud is taken to be: a small one, and as far from it
// (common practice, no source).
const (
	barA     = 100
	barWireM = 0.2
)

// bar takes the returns at a frame stud or the battery's negative post to a bus bar beside
// it, from which one wire goes on, the thinnest first. Straps and wires of other bars stay.
func (t *tester) bar(p *circuit.Part) ladder {
	stud := studOf(p)
	if stud == nil || len(stud.Wires) <= rules.MostOnStud(t.Design.Practice != nil && t.Design.Practice.Afloat) {
		return nil
	}
	var moved []*design.Feed
	var thickest *design.Feed
	for _, x := range t.Circuit.Parts {
		if _, ground := x.Source.(*design.Ground); ground || x.Source == nil {
			continue
		}
		for _, list := range design.Returns(x.Source) {
			for i := range *list {
				f := &(*list)[i]
				if !endsOn(f, p) || f.Wire.Size == nil {
					continue
				}
				moved = append(moved, f)
				if thickest == nil || f.Wire.Size.AreaMm2 > thickest.Wire.Size.AreaMm2 {
					thickest = f
				}
			}
		}
	}
	if len(moved) < 2 {
		return nil
	}
	var l ladder
	for _, size := range thickest.Wire.Type.Sizes {
		if size.AreaMm2 < thickest.Wire.Size.AreaMm2 || len(l) == mostBars {
			continue
		}
		wire := thickest.Wire
		wire.Size, wire.SizeAuto = size, false
		wire.LengthM = design.Quantity{Value: barWireM, Text: "short", Pos: p.Pos}
		l = append(l, &Trial{About: p.Name, Was: fmt.Sprintf("%d returns on it", len(moved)),
			Will: fmt.Sprintf("a bus bar for %d wires, %s, to it by %s of %s", len(moved), quantity.Plain(barA, quantity.Current), lengths.Of(t.Design).Text(barWireM), size.Label),
			put:  func() func() { return t.putBar(p, moved, wire) }})
	}
	return byDegree(l)
}

// mostBars is how many wires of a bar are tried.
const mostBars = 8

// studOf is the terminal of a part at which returns share a stud; nil when it has none.
func studOf(p *circuit.Part) *circuit.Terminal {
	switch x := p.Source.(type) {
	case *design.Ground:
		if x.Kind == design.FrameStud {
			return p.Terminals[0]
		}
	case *design.BatteryPart:
		return p.Terminal("-")
	}
	return nil
}

// endsOn tells whether a return goes to a part, which may be the battery.
func endsOn(f *design.Feed, p *circuit.Part) bool {
	if _, negative := f.From.Part.(*design.NegativePart); negative {
		return p.Kind == circuit.Battery
	}
	return f.From.Part == p.Source
}

// putBar puts the bar into the design and hangs the returns on it.
func (t *tester) putBar(p *circuit.Part, moved []*design.Feed, wire design.WireSpec) func() {
	to := moved[0].From
	x := &design.Ground{Kind: design.GroundBlock, LimitA: design.Quantity{Value: barA, Text: "bar", Pos: p.Pos},
		Returns: []design.Feed{{From: to, Wire: wire}}}
	x.Name, x.At, x.Pos = p.Name+" bar", p.Place, p.Pos
	backs := []func(){keep(&t.Design.Grounds, append(slices.Clone(t.Design.Grounds), x))}
	for _, f := range moved {
		backs = append(backs, keep(&f.From, design.Ref{Text: x.Name, Part: x, Pos: f.From.Pos}))
	}
	return func() {
		for _, back := range backs {
			back()
		}
	}
}
