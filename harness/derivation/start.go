package derivation

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/study/cranking"
)

// startV is what the posts of the full battery have in mild air while the starter turns; nil = not known.
func (b *book) startV() *value {
	const label, how = "voltage at the posts", "solved together: the starter and what else is on"
	bat, br := battery.Of(b.d), b.batteryBranch()
	if s := b.r.Cranking; s == nil || len(s.Cases) == 0 || bat == nil || br == nil {
		return nil
	}
	s := b.r.Cranking
	k := &s.Cases[0]
	v := b.view(0, 0)
	rest, inside := v.restMild(k), of("inside the battery, in mild air", ohms, k.Ohm, "{} × {}^(({} − {}) ÷ ({} − {}))", v.fullOhm(br),
		row("times in the cold of −18 °C", plain, v.chemistry(br).ColdOhmRatio, v.chemistry(br).Source),
		exactly("where resistance is given", celsius, battery.RatedC), exactly("mild air", celsius, k.CelsiusC),
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
		return of(label, volts, k.PostsV, "{} − {} × {}", rest, way, solved("current out of the battery", amps, (rest.v-k.PostsV)/way.v, how))
	}
	drawn := row("current of "+s.Start.Starter, amps, s.Start.CurrentA, s.Start.Source)
	if k.VehicleA > 0 {
		drawn = sum("starter and the vehicle's own loads", amps, k.CurrentA+k.VehicleA, drawn, b.vehicleRunning(k.VehicleA))
	}
	left := of("left by the starter", volts, rest.v-drawn.v*way.v, "{} − {} × {}", rest, drawn, way)
	if left.v < cranking.LeastLeftV {
		left = of("left by the starter, no less than nothing", volts, cranking.LeastLeftV, "greater of {} and {}", left,
			assumed("least that is reckoned with", volts, cranking.LeastLeftV, "a battery that a starter pulls to nothing"))
	}
	if less := left.v - k.PostsV; math.Abs(less) > 1e-9 {
		return of(label, volts, k.PostsV, "{} − {}", left, solved("less by what else is on", volts, less, how))
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

// restMild is the full battery at rest in mild air.
func (v *view) restMild(k *cranking.Case) *value {
	br := v.batteryBranch()
	chem := v.chemistry(br)
	warm := battery.New(v.store(br), v.d.NominalV()).OpenCircuitV(k.Charge, battery.RatedC)
	rest := v.restAt(chem, chem.Name+" at rest, full", k.Charge, warm)
	if rest.v == k.RestV {
		return rest
	}
	return of("battery at rest in mild air", volts, k.RestV, "{} + ({} − {}) × {}", rest, exactly("mild air", celsius, k.CelsiusC),
		exactly("where it rests so", celsius, battery.RatedC), row("more by kelvin", perVK, chem.OpenCircuitVPerC*v.d.NominalV()/12, chem.Source))
}

var perVK = &dimension{[]scale{{0, 1, "V/K"}}}
