package sizing

import (
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// feedsOf are the feeds or returns of the design that a wire is one of.
func feedsOf(x *circuit.Wire) *[]design.Feed {
	owner := x.To.Part.Source
	if x.Role == circuit.ReturnWire || x.Role == circuit.CoilReturnWire {
		owner = x.From.Part.Source
	}
	switch p := owner.(type) {
	case *design.Fuse:
		return &p.FedBy
	case *design.Relay:
		switch x.Role {
		case circuit.CoilFeedWire:
			return &p.Coil.FedBy
		case circuit.CoilReturnWire:
			return &p.Coil.Returns
		}
		return &p.FedBy
	case *design.Block:
		return &p.FedBy
	case *design.Switch:
		return &p.FedBy
	case *design.Splice:
		return &p.FedBy
	case *design.Ground:
		return &p.Returns
	case *design.Load:
		if x.Role == circuit.ReturnWire {
			return &p.Returns
		}
		return &p.FedBy
	}
	return nil
}

// freeWires opens the given sizes of wires.
func freeWires(wires []*circuit.Wire) func() {
	var undo []func()
	for _, x := range wires {
		feeds := feedsOf(x)
		if feeds == nil {
			continue
		}
		for i := range *feeds {
			f := &(*feeds)[i]
			if f.Wire.SizeAuto {
				continue
			}
			was := f.Wire
			f.Wire.SizeAuto = true
			undo = append(undo, func() { f.Wire = was })
		}
	}
	return backward(undo)
}

// freeFuses opens the given ratings of all fuses, and the types of those that
// stand alone.
func freeFuses(d *design.Design, types bool) func() {
	var undo []func()
	for _, x := range d.Fuses {
		if (!x.RatingAuto || types && !x.TypeAuto) && x.Rating != nil {
			was := *x
			x.RatingAuto, x.TypeAuto = true, x.TypeAuto || types
			undo = append(undo, func() { *x = was })
		}
	}
	for _, b := range d.Blocks {
		for _, w := range b.Ways {
			if !w.FuseAuto && w.Fuse != nil {
				was := *w
				w.FuseAuto = true
				undo = append(undo, func() { *w = was })
			}
		}
	}
	return backward(undo)
}

// freeParts opens the given relay forms, block types and plugs.
func freeParts(d *design.Design) func() {
	var undo []func()
	for _, x := range d.Relays {
		if !x.FormAuto {
			was := *x
			x.FormAuto = true
			undo = append(undo, func() { *x = was })
		}
	}
	for _, x := range d.Blocks {
		if !x.TypeAuto {
			was := *x
			x.TypeAuto, x.WayA, x.TotalA = true, design.Quantity{}, design.Quantity{}
			undo = append(undo, func() { *x = was })
		}
	}
	free := func(x *design.Plugged) {
		if !x.PlugAuto && x.Plug != nil {
			was := *x
			x.PlugAuto = true
			undo = append(undo, func() { *x = was })
		}
	}
	for _, x := range d.Loads {
		free(&x.Plugged)
	}
	for _, x := range d.Switches {
		free(&x.Plugged)
	}
	return backward(undo)
}

// betterInsulation gives wires of open size an insulation of a higher class,
// where theirs is lower.
func betterInsulation(wires []*circuit.Wire, to *library.WireType) func() {
	var undo []func()
	for _, x := range wires {
		feeds := feedsOf(x)
		for i := 0; feeds != nil && i < len(*feeds); i++ {
			if f := &(*feeds)[i]; f.Wire.SizeAuto && f.Wire.Type != nil && f.Wire.Type.ClassC < to.ClassC {
				was := f.Wire
				f.Wire.Type, f.Wire.Size = to, to.SizeFor(was.Size.AreaMm2)
				undo = append(undo, func() { f.Wire = was })
			}
		}
	}
	return backward(undo)
}

// shorten scales the runs and given lengths of wires.
func shorten(wires []*circuit.Wire, share float64) func() {
	var undo []func()
	done := map[*design.Run]bool{}
	for _, x := range wires {
		for _, b := range x.Route {
			if run := b.Run; !done[run] {
				done[run] = true
				was := run.LengthM
				run.LengthM.Value *= share
				undo = append(undo, func() { run.LengthM = was })
			}
		}
		feeds := feedsOf(x)
		for i := 0; feeds != nil && i < len(*feeds); i++ {
			if f := &(*feeds)[i]; f.Wire.LengthM.Given() && f.From.Pos == x.Pos {
				was := f.Wire.LengthM
				f.Wire.LengthM.Value *= share
				undo = append(undo, func() { f.Wire.LengthM = was })
			}
		}
	}
	return backward(undo)
}

// toLED turns a filament lamp into an LED lamp of the same light.
func toLED(l *design.Load) func() {
	was := *l
	l.Behaves, l.PowerW = design.ConstantPower, l.PowerW*ledShare
	return func() { *l = was }
}

// double lays a second wire beside one.
func double(feeds *[]design.Feed) func() {
	was := *feeds
	*feeds = append(append([]design.Feed(nil), was...), was...)
	return func() { *feeds = was }
}

// backward undoes in the opposite order.
func backward(undo []func()) func() {
	return func() {
		for i := len(undo) - 1; i >= 0; i-- {
			undo[i]()
		}
	}
}
