package formboard

import (
	"sort"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// gatherEnds lists the wire ends by place: those out of the first run first,
// then by wire, and those of wires within the place last.
func (b *Board) gatherEnds(c *circuit.Circuit) {
	runs := map[*circuit.Bundle]*Run{}
	for _, r := range b.Runs {
		runs[r.Bundle] = r
	}
	at := map[*design.Place]*Ends{}
	for _, p := range c.Design.Places {
		at[p] = &Ends{Place: p}
	}
	for _, w := range c.ToCut() {
		for _, first := range []bool{true, false} {
			e := newEnd(w, first, runs)
			if list := at[e.Terminal.Part.Place]; list != nil {
				list.Ends = append(list.Ends, e)
			} else {
				b.Nowhere = append(b.Nowhere, e)
			}
		}
	}
	for _, p := range c.Design.Places {
		list := at[p].Ends
		if len(list) == 0 {
			continue
		}
		sort.SliceStable(list, func(i, j int) bool { return list[i].rank() < list[j].rank() })
		b.Places = append(b.Places, at[p])
	}
}

// rank sorts ends by run, those without one last.
func (e End) rank() int {
	if e.Via == nil {
		return int(^uint(0) >> 1)
	}
	return e.Via.Number
}

func newEnd(w *circuit.Wire, first bool, runs map[*circuit.Bundle]*Run) End {
	e := End{Wire: w, AtFrom: first, Terminal: w.To}
	if first {
		e.Terminal = w.From
	}
	if len(w.Route) == 0 {
		e.FreeMm = w.LengthM * 1000
		return e
	}
	last := w.Route[len(w.Route)-1]
	if first {
		last = w.Route[0]
	}
	e.Via = runs[last]
	_, wayM := w.ApartM()
	e.FreeMm, e.Short = (w.LengthM-wayM)/2*1000, w.TooShort()
	if e.FreeMm < 0 {
		e.FreeMm, e.Beside = 0, !e.Short
	}
	return e
}
