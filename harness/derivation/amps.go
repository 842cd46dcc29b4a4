package derivation

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/budget"
)

// sameA is the share by which currents may differ by rounding.
const sameA = 1e-10

// traceA is a current that no reckoning needs.
const traceA = 1e-9

// amps is the magnitude of a branch's current: that of what draws through it.
func (v *view) amps(b *circuit.Branch) *value {
	return once(v.amperes, b, func() *value {
		if b.Kind == circuit.LoadBranch {
			return v.loadAmps(b)
		}
		if b.OfCoil() {
			return v.coilAmps(b)
		}
		a := math.Abs(v.sol.BranchA[b.Index])
		if b.Wire != nil && b.Wire.Role == circuit.LinkWire {
			return solved("current of "+b.Name, amps, a, "solved together: all that goes through the batteries in series that it links")
		}
		users := v.users(b)
		total := 0.0
		var list []*value
		for _, u := range users {
			total += math.Abs(v.sol.BranchA[u.Index])
			list = append(list, v.amps(u))
		}
		if len(list) == 0 || math.Abs(total-a) > 1e-6*a+traceA {
			return solved("current of "+b.Name, amps, a, "solved together: it shares its load with another way")
		}
		if rest := a - total; math.Abs(rest) > sameA*a {
			list = append(list, solved("what leaks past what is off", amps, rest, "solved together"))
		}
		if len(list) == 1 {
			return list[0]
		}
		return sum("current of "+b.Name, amps, a, list...)
	})
}

// users are the loads and coils whose current flows through a branch, in the order of the
// circuit: those that current leads to from it and, of a return, those it comes from.
func (v *view) users(b *circuit.Branch) []*circuit.Branch {
	into, out := b.A, b.B
	if v.sol.BranchA[b.Index] < 0 {
		into, out = out, into
	}
	list := v.drawing(out, true, b)
	if against := v.drawing(into, false, b); b.Returns() && len(against) > 0 || len(list) == 0 {
		return against // of a motor that runs the other way round its feed returns, and its return feeds
	}
	return list
}

// drawing are the loads and coils reached from a node along the current, or against it.
func (v *view) drawing(start *circuit.Node, along bool, not *circuit.Branch) (list []*circuit.Branch) {
	seen := map[*circuit.Node]bool{start: true}
	for queue := []*circuit.Node{start}; len(queue) > 0; queue = queue[1:] {
		n := queue[0]
		if n != start && (v.c.IsPost(n) || n == v.c.Negative()) {
			continue
		}
		for _, b := range n.Branches {
			a := v.sol.BranchA[b.Index]
			if b == not || math.IsNaN(a) || math.Abs(a) < traceA || (a > 0) == (b.A == n) != along {
				continue
			}
			if b.Kind == circuit.LoadBranch || b.OfCoil() {
				if !slices.Contains(list, b) {
					list = append(list, b)
				}
				continue
			}
			next := b.A
			if next == n {
				next = b.B
			}
			if !seen[next] {
				seen[next] = true
				queue = append(queue, next)
			}
		}
	}
	slices.SortFunc(list, func(x, y *circuit.Branch) int { return x.Index - y.Index })
	return list
}

func (v *view) coilAmps(b *circuit.Branch) *value {
	return of("coil of "+b.Part.Ref, amps, math.Abs(v.sol.BranchA[b.Index]), "{} ÷ {}",
		solved("volts at the coil", volts, math.Abs(v.sol.Volts(b)), "solved together"), newOhm(b)).orSolved("electronics, by its data sheet")
}

// loadAmps is what a load draws, by its behaviour.
func (v *view) loadAmps(b *circuit.Branch) *value {
	a, law := math.Abs(v.sol.BranchA[b.Index]), v.laws[b.Index]
	name := "current of " + loadName(b)
	u := v.loadV(b)
	if u.v < 0 {
		u = solved("volts at "+loadName(b)+", the other way round", volts, -u.v, "solved together")
	}
	if b.Part != nil && b.Part.Kind == circuit.Charger && b == b.Part.Converts() {
		return v.inputAmps(b, name, a, u)
	}
	switch power := v.power(b); {
	case law.Kind == solve.Power && u.v > law.EdgeV:
		return of(name, amps, a, "{} ÷ {}", power, u)
	case law.Kind == solve.Torque && u.v > law.EdgeV:
		return of(name+", a motor's", amps, a, "{} ÷ {}", power, v.ratedV(b))
	case law.Kind == solve.Fan && u.v > law.EdgeV:
		return v.fanAmps(b, name, a, u)
	case law.Kind == solve.Lamp && u.v > law.EdgeV:
		return of(name+", a filament's", amps, a, "{} ÷ {} × ({} ÷ {})^0.55", power, v.ratedV(b), u, v.ratedV(b))
	case law.Kind == solve.Ohmic:
		hot := of("resistance of "+loadName(b), ohms, law.Ohm, "{}² ÷ {}", v.ratedV(b), power)
		return of(name, amps, a, "{} ÷ {}", u, hot)
	}
	return solved(name, amps, a, "solved together")
}

// fanAmps is what a motor behind a dropping resistor draws, which is taken as a fan.
func (v *view) fanAmps(b *circuit.Branch, name string, a float64, u *value) *value {
	law, l := v.laws[b.Index], b.Load.Load
	rated := of("rated current of "+loadName(b), amps, law.CurrentA, "{} ÷ {}", v.power(b), v.ratedV(b))
	stall := v.tolerance("stalled motor", "stalled, times its running current", plain)
	if stall.v != b.Load.FanStall {
		stall = row("stalled, times its running current", plain, l.Inrush.PeakRatio, l.Inrush.Source)
	}
	winding := of("winding of "+loadName(b), ohms, law.Ohm, "{} ÷ ({} × {})", v.ratedV(b), stall, rated)
	turning := of("left for turning at its rated speed", volts, law.RatedV-law.Ohm*law.CurrentA, "{} − {} × {}", v.ratedV(b), winding, rated)
	speed := of("speed of "+loadName(b)+", torque by its square", plain, math.Sqrt(a/law.CurrentA), "2 × {} ÷ ({} + √({}² + 4 × {} × {} × {}))", u, turning, turning, winding, rated, u).
		sourced("laws of direct-current motors and of fans, from memory")
	return of(name+", a fan's", amps, a, "{} × {}²", rated, speed)
}

// inputAmps is what a charger takes for what it gives.
func (v *view) inputAmps(b *circuit.Branch, name string, a float64, u *value) *value {
	out := b.Part.Output()
	spec, ok := b.Part.Source.(*design.Charger)
	if out == nil || !ok {
		return solved(name, amps, a, "solved together with what it gives")
	}
	return of(name, amps, a, "{} × {} ÷ {} ÷ {}", solved("volts that it gives", volts, math.Abs(v.sol.Volts(out)), "solved together"),
		solved("current that it gives", amps, math.Abs(v.sol.BranchA[out.Index]), "solved together"),
		row("efficiency of "+spec.Type.Name, percent, spec.Type.Efficiency, spec.Type.Source), u).orSolved("solved together with what it gives")
}

// loadV is the volts at a load.
func (v *view) loadV(b *circuit.Branch) *value {
	return once(v.voltsAt, b, func() *value {
		if plus, minus := v.c.Supply(b.A); b.A == plus && b.B == minus {
			return v.postsHere(b)
		}
		return solved("volts at "+loadName(b), volts, v.sol.LoadV(b), "solved together")
	})
}

func loadName(b *circuit.Branch) string {
	switch {
	case b.Load != nil && b.Load.Vehicle != nil:
		return b.Load.Vehicle.Name
	case b.Load != nil && b.Load.Standby:
		return b.Part.Name + ", off"
	}
	return b.Part.Name
}

// power is what a load takes at its rated voltage in a state.
func (v *view) power(b *circuit.Branch) *value {
	p := solve.PowerOf(b, &v.opt)
	rated := v.ratedW(b)
	from, formula := []*value{rated}, "{}"
	if p.Average != 1 {
		from, formula = append(from, v.duty(b)), formula+" × {}"
	}
	if p.Factor != 1 {
		from, formula = append(from, v.high(b, p.Factor)), formula+" × {}"
	}
	if len(from) == 1 {
		return rated
	}
	return of("power of "+loadName(b)+" here", watts, p.W(), formula, from...).by(rated)
}

func (v *view) duty(b *circuit.Branch) *value {
	if x := b.Load.Vehicle; x != nil && x.Duty.Given() {
		return given("share of the time", percent, x.Duty)
	}
	if x := b.Load.Load; x != nil && x.Duty.Pos.Line > 0 {
		return given("share of the time", percent, x.Duty)
	}
	return assumed("share of the time", percent, b.Load.Average(), "usual for such a load")
}

// high is by how much a load may draw more than it should.
func (v *view) high(b *circuit.Branch, factor float64) *value {
	if v.mean {
		return v.average(b.Load.Load, factor)
	}
	return v.highest(b, factor)
}

// highest is the most over the rated power.
func (b *book) highest(load *circuit.Branch, factor float64) *value {
	l := load.Load.Load
	switch {
	case l != nil && l.Tolerance.Given():
		return of("at the most", plain, factor, "1 + {}", given("tolerance of its power", percent, l.Tolerance))
	case l != nil && !load.Load.Standby && l.MostW > l.PowerW:
		return of("at the most", plain, factor, "{} ÷ {}", row("most that its type may draw", watts, l.MostW, l.Type.Most.Source), b.ratedW(load))
	}
	return of("at the most", plain, factor, "1 + {}", b.tolerance("power of "+string(load.Load.Behaves), "power above what is rated", percent))
}

// average is the share of a situation for which a load draws: its own, or that of the load in
// series with it that draws least.
func (v *view) average(l *design.Load, share float64) *value {
	lasts := budget.LastsS(v.d, v.sol.Situation)
	for _, x := range l.InSeries() {
		label := "share of the time"
		if x != l {
			label += " of " + x.Name + ", in series with it"
		}
		switch {
		case x.OnForS.Given() && math.Abs(x.OnForS.Value/lasts-share) < 1e-12:
			return of(label, plain, share, "{} ÷ {}", onFor(x), assumed("the situation lasts", seconds, lasts, "taken where the design does not say"))
		case x.Duty.Value != share:
		case x.Duty.Pos.Line > 0:
			return given(label, percent, x.Duty)
		case x.Type != nil && x.Type.Duty == share:
			return row(label+", "+x.Type.Name, percent, share, x.Type.Source)
		}
	}
	return solved("share of the time", percent, share, "by how long and how often it is on")
}

// ratedV is where a load's power holds.
func (b *book) ratedV(load *circuit.Branch) *value {
	return once(b.rated, load, func() *value { return b.ratedVolts(load) })
}

func (b *book) ratedVolts(load *circuit.Branch) *value {
	l := load.Load.Load
	if l == nil {
		return b.vehicleV()
	}
	if _, _, _, q := l.Said(); q.Given() {
		return given("rated at", volts, q)
	}
	if l.Type != nil && l.Type.RatedV == l.RatedV {
		return row("rated at, "+l.Type.Name, volts, l.RatedV, l.Type.Source)
	}
	return b.nominalV(load)
}

// nominalV is the nominal voltage of what feeds a load or coil: the system's, or its converter's.
func (b *book) nominalV(fed *circuit.Branch) *value {
	if p := b.c.ConverterOf(fed.A); p != nil {
		t := p.Output().OfCharger().Type
		return row("nominal voltage of "+p.Name+", "+t.Name, volts, t.Volts, t.Source)
	}
	return given("system voltage", volts, b.d.SystemV)
}

func solvedExact(label string, dim *dimension, v float64) *value {
	x := solved(label, dim, v, "")
	x.exact = true
	return x
}

// ratedW is the power that the design or the library gives.
func (b *book) ratedW(load *circuit.Branch) *value {
	name := "power of " + loadName(load)
	switch l := load.Load.Load; {
	case load.Load.Vehicle != nil:
		return b.vehicleW(load.Load.Vehicle, name)
	case load.Load.Standby:
		return of(name, watts, load.Load.PowerW, "{} × {}", b.standbyA(load, l), b.ratedV(load))
	default:
		return b.accessoryW(load, l, name)
	}
}

// vehicleV is where the power of the machine's own loads holds.
func (b *book) vehicleV() *value {
	if q := b.d.Charging.RegulatedV; q.Given() {
		return given("regulated voltage", volts, q)
	}
	return given("system voltage", volts, b.d.SystemV)
}

func (b *book) standbyA(load *circuit.Branch, l *design.Load) *value {
	if x, ok := load.Part.Source.(*design.Charger); ok {
		return row("own draw, "+x.Type.Name, amps, l.StandbyA.Value, x.Type.Source)
	}
	if l.StandbyA.Pos.Line > 0 || l.Type == nil {
		return given("standby", amps, l.StandbyA)
	}
	return row("standby, "+l.Type.Name, amps, l.StandbyA.Value, l.Type.Source)
}

func (b *book) accessoryW(load *circuit.Branch, l *design.Load, name string) *value {
	power, current, resistance, _ := l.Said()
	switch t := l.Type; {
	case power.Given():
		return given(name, watts, power)
	case current.Given():
		return of(name, watts, l.PowerW, "{} × {}", given("current", amps, current), b.ratedV(load))
	case resistance.Given():
		return of(name, watts, l.PowerW, "{}² ÷ {}", b.ratedV(load), given("resistance", ohms, resistance))
	case t != nil && t.PowerW > 0:
		return row(name+", "+t.Name, watts, l.PowerW, t.Source)
	case t != nil && math.Abs(t.CurrentA*l.RatedV-l.PowerW) < 1e-9*l.PowerW:
		return of(name, watts, l.PowerW, "{} × {}", row("current of "+t.Name, amps, t.CurrentA, t.Source), b.ratedV(load))
	case t != nil:
		return row(name+", "+t.Name+" on this system", watts, l.PowerW, t.Source)
	}
	return solvedExact(name, watts, l.PowerW)
}

// vehicleW is the power of one of the machine's own loads.
func (b *book) vehicleW(l *design.VehicleLoad, name string) *value {
	if l.PowerW.Given() {
		return given(name, watts, l.PowerW)
	}
	return of(name, watts, b.d.VehicleW(l), "{} × {}", given("current", amps, l.CurrentA),
		b.vehicleV())
}
