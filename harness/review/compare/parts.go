package compare

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
)

// fuses are the overcurrent devices: those of their own and those of ways.
func fuses(c *circuit.Circuit) []thing {
	var list []thing
	for _, p := range c.Parts {
		switch x := p.Source.(type) {
		case *design.Fuse:
			f := fuseFields(x.Type.Name, x.Rating.RatingA)
			f.text("fed by", feeds(x.FedBy))
			f.text("returns to", feeds(x.Returns))
			if x.Post != nil {
				f.text("on post of", x.Post.PartName())
			}
			place(&f, p)
			list = append(list, thing{key("fuse", p.Name), "fuse", p.Name, p.Ref, f})
		case *design.Block:
			for _, w := range x.Ways {
				if w.Fuse != nil && w.FuseType != nil {
					f := fuseFields(w.FuseType.Name, w.Fuse.RatingA)
					name := p.Name + " " + w.Number
					list = append(list, thing{key("way", name), "fuse", name, wayRef(p, w.Number), f})
				}
			}
		}
	}
	return list
}

// wayRef is the designation of the fuse in a way of a block.
func wayRef(block *circuit.Part, way string) string {
	for _, t := range block.Terminals {
		if t.Name == way {
			return t.FuseRef
		}
	}
	return ""
}

func fuseFields(kind string, ratingA float64) fields {
	var f fields
	f.figure("rating", amps(ratingA), ratingA, +1)
	f.text("type", kind)
	return f
}

// parts are all other parts of the design.
func parts(c *circuit.Circuit) []thing {
	var list []thing
	for _, p := range c.Parts {
		if p.Source == nil {
			continue
		}
		if _, isFuse := p.Source.(*design.Fuse); isFuse {
			continue
		}
		var f fields
		properties(&f, p.Source)
		place(&f, p)
		if p.Plug != nil {
			f.text("plug", p.Plug.Family.Name)
		}
		list = append(list, thing{key(string(p.Kind), p.Name), string(p.Kind), p.Name, p.Ref, f})
	}
	return list
}

func place(f *fields, p *circuit.Part) {
	if p.Place != nil {
		f.text("at", p.Place.Name)
	}
	if s, ok := p.Source.(interface{ SaidSparkProof() bool }); ok {
		f.yes("ignition protected", s.SaidSparkProof())
	}
	if s, ok := p.Source.(interface{ SaidFitted() bool }); ok {
		f.yes("already fitted", s.SaidFitted())
	}
	if s, ok := p.Source.(interface{ LiveReason() string }); ok {
		f.text("stays live", s.LiveReason())
	}
}

func properties(f *fields, part design.Part) {
	switch x := part.(type) {
	case *design.Tap:
		f.text("hot", string(x.Hot))
		given(f, "factory fuse", x.FuseA, quantity.Current, +1)
		given(f, "spare", x.SpareA, quantity.Current, 0)
		f.yes("supervised", x.Supervised)
	case *design.Charging:
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
	case *design.Bank:
		*f = append(*f, batteryFields(&x.Store)...)
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
	case *design.Charger:
		f.text("type", x.Type.Name)
		given(f, "panel", x.PanelW, quantity.Power, 0)
		given(f, "output", x.OutputV, quantity.Voltage, 0)
		if x.FromEngine() {
			f.text("output by speed", curveText(x.Engine.Output))
		}
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
	case *design.Relay:
		f.text("form", x.Form.Name)
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
		if x.Half != nil {
			f.text("other half of", x.Half.Name)
		}
		f.yes("latches", x.Latches)
		given(f, "off delay", x.OffDelayS, quantity.Duration, 0)
		given(f, "on delay", x.OnDelayS, quantity.Duration, 0)
		f.text("coil fed by", feeds(x.Coil.FedBy))
		f.text("coil returns to", feeds(x.Coil.Returns))
		f.text("suppressed by", x.Coil.Suppressed)
	case *design.Block:
		blockProperties(f, x)
	case *design.Switch:
		if x.Type != nil {
			f.text("type", x.Type.Name)
		}
		given(f, "rating", x.RatingA, quantity.Current, -1)
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
		f.yes("momentary", x.Momentary)
		f.yes("key operated", x.KeyOperated)
		f.yes("machine operated", x.MachineOperated)
		for _, p := range x.Positions {
			f.text("position "+p.Name, wording.And(p.Outputs))
		}
		if x.Pole != nil {
			f.text("pole of", x.Pole.Name)
		}
	case *design.DroppingResistor:
		given(f, "resistance", x.Ohm, quantity.Resistance, 0)
		given(f, "rating", x.RatingW, quantity.Power, -1)
		f.yes("thermal fuse", x.Cutout)
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
	case *design.Diode:
		f.text("type", x.Type.Name)
		f.text("fed by", feeds(x.FedBy))
		f.text("returns to", feeds(x.Returns))
		f.yes("reversed", x.Reversed)
		if x.Isolates > 0 {
			f.text("outputs", strconv.Itoa(x.Isolates))
		}
	case *design.Load:
		loadProperties(f, x)
	case *design.Ground:
		f.text("kind", string(x.Kind))
		given(f, "limit", x.LimitA, quantity.Current, -1)
		given(f, "frame resistance", x.FrameOhm, quantity.Resistance, +1)
		f.text("returns to", feeds(x.Returns))
		f.yes("supervised", x.Supervised)
	case *design.Connector:
		var takes []string
		for _, p := range x.Takes {
			takes = append(takes, p.PartName())
		}
		if len(takes) == 0 {
			takes = []string{"every wire that passes and no other connector takes"}
		}
		f.text("takes", wording.And(takes))
		if x.Sockets != nil {
			f.text("sockets towards", x.Sockets.Name)
		}
	case *design.Splice:
		f.text("fed by", feeds(x.FedBy))
	}
}

func blockProperties(f *fields, x *design.Block) {
	if x.Type != nil {
		f.text("type", x.Type.Name)
	}
	// A limit that comes with the type is the same, whether that is written or chosen.
	f.limit("way limit", x.WayLimitA())
	f.limit("total limit", x.TotalLimitA())
	f.text("fed by", feeds(x.FedBy))
	for _, w := range x.Ways {
		switch {
		case w.Spare:
			f.text("way "+w.Number, "spare")
		case w.Fuse == nil:
			f.text("way "+w.Number, "no fuse")
		default:
			f.text("way "+w.Number, "fused")
		}
	}
}

func (l *fields) limit(name string, limitA float64) {
	if limitA > 0 {
		l.figure(name, amps(limitA), limitA, -1)
	}
}

func loadProperties(f *fields, x *design.Load) {
	given(f, "own lead", x.Lead.AreaMm2, quantity.Area, -1)
	given(f, "length of its own lead", x.Lead.LengthM, quantity.Length, +1)
	if x.Type != nil {
		f.text("type", x.Type.Name)
	}
	f.figure("power", fmt.Sprintf("%s at %s", quantity.Plain(x.PowerW, quantity.Power),
		quantity.Plain(x.RatedV, quantity.Voltage)), x.PowerW, +1)
	f.text("behaves", string(x.Behaves))
	if x.Before != nil {
		f.text("in series with", x.Before.Name)
	} else {
		f.text("fed by", feeds(x.FedBy))
	}
	f.text("returns to", feeds(x.Returns))
	f.yes("critical", x.Critical)
	f.yes("own switch", x.OwnSwitch)
	given(f, "minimum voltage", x.MinV, quantity.Voltage, 0)
	given(f, "maximum voltage", x.MaxV, quantity.Voltage, -1)
	given(f, "standby", x.StandbyA, quantity.Current, +1)
}

func given(f *fields, name string, q design.Quantity, dim quantity.Dimension, risk int) {
	switch {
	case !q.Given():
	case dim == quantity.Length:
		*f = append(*f, field{name, quantity.Plain(q.Value, dim), q.Value, risk, true})
	default:
		f.figure(name, quantity.Plain(q.Value, dim), q.Value, risk)
	}
}

// feeds names the sources of a part, or the grounds it returns to.
func feeds(list []design.Feed) string {
	names := make([]string, len(list))
	for i, f := range list {
		names[i] = f.From.Text
		if f.From.Part != nil {
			names[i] = strings.TrimSpace(f.From.Part.PartName() + " " + f.From.Terminal)
		}
	}
	return strings.Join(slices.Compact(names), ", ") // wires side by side are told with the wires
}

func amps(a float64) string { return quantity.Plain(a, quantity.Current) }
