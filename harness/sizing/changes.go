package sizing

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// undo takes back changes to a design, the last first.
type undo []func()

// keep notes what a thing is before it is changed.
func keep[T any](u *undo, of *T) {
	was := *of
	*u = append(*u, func() { *of = was })
}

func (u undo) all() {
	for _, back := range slices.Backward(u) {
		back()
	}
}

// eachFeed goes through the feeds and returns that wires are among, each wire's.
func (s *search) eachFeed(wires []*circuit.Wire, do func(x *circuit.Wire, f *design.Feed)) {
	for _, x := range wires {
		if l, ok := s.homes[homeOf(x)]; ok {
			for i := range *l.feeds {
				do(x, &(*l.feeds)[i])
			}
		}
	}
}

// freeWires opens the given sizes of wires.
func (s *search) freeWires(u *undo, wires []*circuit.Wire) {
	s.eachFeed(wires, func(_ *circuit.Wire, f *design.Feed) {
		if !f.Wire.SizeAuto {
			keep(u, &f.Wire)
			f.Wire.SizeAuto = true
		}
	})
}

// freeFuses opens the given ratings of all fuses, and the types of those that
// stand alone.
func freeFuses(u *undo, d *design.Design, types bool) {
	for _, x := range d.Fuses {
		if (!x.RatingAuto || types && !x.TypeAuto) && x.Rating != nil {
			keep(u, x)
			x.RatingAuto, x.TypeAuto = true, x.TypeAuto || types
		}
	}
	for _, b := range d.Blocks {
		for _, w := range b.Ways {
			if !w.FuseAuto && w.Fuse != nil {
				keep(u, w)
				w.FuseAuto = true
			}
		}
	}
}

// freeParts opens the given relay forms, block types and plugs.
func freeParts(u *undo, d *design.Design) {
	for _, x := range d.Relays {
		if !x.FormAuto && !x.Form.Reversing {
			keep(u, x)
			x.FormAuto = true
		}
	}
	for _, x := range d.Blocks {
		if !x.TypeAuto {
			keep(u, x)
			x.TypeAuto, x.WayA, x.TotalA = true, design.Quantity{}, design.Quantity{}
		}
	}
	free := func(x *design.Plugged) {
		if !x.PlugAuto && x.Plug != nil {
			keep(u, x)
			x.PlugAuto = true
		}
	}
	for _, x := range d.Loads {
		free(&x.Plugged)
	}
	for _, x := range d.Switches {
		free(&x.Plugged)
	}
	for _, x := range d.Partings {
		free(&x.Plugged)
	}
}

// betterInsulation gives wires of open size an insulation of a higher class,
// where theirs is lower.
func (s *search) betterInsulation(u *undo, wires []*circuit.Wire, to *library.WireType) {
	s.eachFeed(wires, func(_ *circuit.Wire, f *design.Feed) {
		if f.Wire.SizeAuto && f.Wire.Type != nil && f.Wire.Type.ClassC < to.ClassC {
			keep(u, &f.Wire)
			f.Wire.Type, f.Wire.Size = to, to.SizeFor(f.Wire.Size.AreaMm2)
		}
	})
}

// shorten scales the runs and given lengths of wires.
func (s *search) shorten(u *undo, wires []*circuit.Wire, share float64) {
	done := map[*design.Run]bool{}
	for _, x := range wires {
		for _, b := range x.Route {
			if run := b.Run; !done[run] {
				done[run] = true
				keep(u, &run.LengthM)
				run.LengthM.Value *= share
			}
		}
	}
	s.eachFeed(wires, func(x *circuit.Wire, f *design.Feed) {
		if f.Wire.LengthM.Given() && f.From.Pos == x.Pos {
			keep(u, &f.Wire.LengthM)
			f.Wire.LengthM.Value *= share
		}
	})
}

// toLED turns a filament lamp into an LED lamp of the same light.
func toLED(u *undo, l *design.Load) {
	keep(u, l)
	l.Behaves, l.PowerW = design.ConstantPower, l.PowerW*ledShare
}

// double lays a second wire beside one.
func double(u *undo, feeds *[]design.Feed) {
	keep(u, feeds)
	*feeds = slices.Concat(*feeds, *feeds)
}
