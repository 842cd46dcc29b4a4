package derivation

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/study/cranking"
	"fusewright/library"
)

// startVs are what the posts of the full battery, and the design's own starter, have while it turns, in mild air and in the cold;
// none where that is not known.
func (b *book) startVs() (list []*value) {
	s, br := b.r.Cranking, b.batteryBranch()
	if s == nil || battery.Of(b.d) == nil || br == nil {
		return nil
	}
	for i := range s.Cases[:min(2, len(s.Cases))] {
		k := &s.Cases[i]
		posts := b.startV(s, k, br)
		list = append(list, posts)
		if lost := k.PostsV - k.StarterV; lost > 0 {
			list = append(list, of("voltage at the starter", volts, k.StarterV, "{} − {}", posts, solved("lost between posts and starter", volts, lost, startHow)))
		}
	}
	return list
}

// startLimits are what such volts are held against.
func (b *book) startLimits() (list []*value) {
	s := b.r.Cranking
	return []*value{row("needs at least, "+s.Start.Starter, volts, s.Cases[0].NeedsV, s.Start.Source),
		row("left by a sound start", volts, s.LeastV, library.Source{Text: "car service manual of 1998, 1.9 l engine", Certainty: library.OneSource})}
}

const startHow = "solved together: the starter and what else is on"

// startV is what the posts have in a case.
func (b *book) startV(s *cranking.Study, k *cranking.Case, br *circuit.Branch) *value {
	const label, air = "voltage at the posts", "air of the start"
	v := b.view(0, 0)
	rest, inside := v.restAtStart(k), of("inside the battery, as warm as the air", ohms, k.Ohm, "{} × {}^(({} − {}) ÷ ({} − {}))", v.fullOhm(br),
		row("times in the cold of −18 °C", plain, v.chemistry(br).ColdOhmRatio, v.chemistry(br).Source),
		exactly("where resistance is given", celsius, battery.RatedC), exactly(air, celsius, k.CelsiusC),
		exactly("where resistance is given", celsius, battery.RatedC), exactly("cold of a cranking test", celsius, -18))
	way := inside
	if links := br.Part.LinkWires(); len(links) > 0 {
		list := []*value{inside}
		for _, w := range links {
			list = append(list, of("resistance of "+w.Number, ohms, w.Branch.Ohm, "{} + {}", coldConductor(w), v.endsOhm(w, false)))
		}
		way = sum("battery and its links", ohms, k.Ohm+br.LinkOhm(), list...)
	}
	if s.Start.Own {
		return of(label, volts, k.PostsV, "{} − {} × {}", rest, way, solved("current out of the battery", amps, (rest.v-k.PostsV)/way.v, startHow))
	}
	drawn := row("current of "+s.Start.Starter, amps, s.Start.CurrentA, s.Start.Source)
	if k.CurrentA != s.Start.CurrentA {
		drawn = of("current in the cold", amps, k.CurrentA, "{} × {}", drawn, row("times in the cold", plain, cranking.Ratio(k.CelsiusC),
			library.Source{Text: "car service manual of 1998, 1.9 l engine", Certainty: library.OneSource}))
	}
	if k.VehicleA > 0 {
		drawn = sum("starter and the vehicle's own loads", amps, k.CurrentA+k.VehicleA, drawn, b.vehicleRunning(k.VehicleA))
	}
	if k.DrawnA < drawn.v {
		drawn = solved("drawn by a starter that stands, with the vehicle's own loads", amps, k.DrawnA, "its volts over its resistance, solved together")
	}
	left := of("left by the starter", volts, rest.v-drawn.v*way.v, "{} − {} × {}", rest, drawn, way)
	if less := left.v - k.PostsV; math.Abs(less) > 1e-9 {
		return of(label, volts, k.PostsV, "{} − {}", left, solved("less by what else is on", volts, less, startHow))
	}
	left.label = label
	return left
}

// vehicleRunning is what the vehicle's own loads draw that run with the engine.
func (b *book) vehicleRunning(totalA float64) *value {
	const label = "vehicle's own loads"
	var list []*value
	total := 0.0
	for _, l := range b.d.VehicleLoads {
		if l.When != design.WhenRunning || len(l.In) > 0 {
			continue
		}
		x := given(l.Name, amps, l.CurrentA)
		if l.PowerW.Given() {
			x = of(l.Name, amps, l.PowerW.Value/b.vehicleV().v, "{} ÷ {}", given("power", watts, l.PowerW), b.vehicleV())
		}
		if l.Duty.Given() {
			x = of(l.Name+", on average", amps, x.v*l.Duty.Value, "{} × {}", x, given("share of the time", plain, l.Duty))
		}
		list, total = append(list, x), total+x.v
	}
	if len(list) == 0 || !as(total, totalA) {
		return solved(label, amps, totalA, "vehicle loads of the design, those that run with the engine")
	}
	if len(list) == 1 {
		return list[0]
	}
	return sum(label, amps, totalA, list...)
}

// restAtStart is the battery at rest before a start.
func (v *view) restAtStart(k *cranking.Case) *value {
	br := v.batteryBranch()
	chem := v.chemistry(br)
	warm := battery.New(v.store(br), v.d.NominalV()).OpenCircuitV(k.Charge, battery.RatedC)
	rest := v.restAt(chem, chem.Name+" at rest, full", k.Charge, warm)
	if rest.v == k.RestV {
		return rest
	}
	return of("battery at rest in the air of the start", volts, k.RestV, "{} + ({} − {}) × {}", rest, exactly("air of the start", celsius, k.CelsiusC),
		exactly("where it rests so", celsius, battery.RatedC), row("more by kelvin", perVK, chem.OpenCircuitVPerC*v.d.NominalV()/12, chem.Source))
}

var perVK = &dimension{[]scale{{0, 1, "V/K"}}}
