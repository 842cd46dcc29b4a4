package derivation

import (
	"fmt"
	"math"
	"strconv"

	"fusewright/harness/design"
	"fusewright/harness/formula/bundle"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/warm"
	"fusewright/library"
)

// text0 is a number without unit as a formula has it.
func text0(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// allowed is what a wire may carry where it is laid.
func (b *book) allowed(w *circuit.Wire) *value {
	l := &b.set().Model.Wires[w.Index]
	label := "may be carried by " + w.Number
	if !l.Known {
		return solved(label, amps, 0, "not known: the library has no diameters for it")
	}
	heat := b.byHeat(w, l)
	if math.IsNaN(l.TableA) {
		heat.label = label + ", by the heat balance"
		return heat
	}
	table := b.byTable(w, l)
	if l.AllowedA < math.Min(l.HeatA, l.TableA) {
		first := solved("thinner than the table's thinnest, which carries", amps, l.AllowedA, l.Source)
		return of(label, amps, l.AllowedA, "smaller of {} and {} and {}", heat, table, first)
	}
	x := of(label, amps, l.AllowedA, "smaller of {} and {}", heat, table)
	return x.by(map[string]*value{conductor.GovernsHeat: heat, conductor.GovernsTable: table}[l.Governs])
}

// byHeat is what the heat balance allows.
func (b *book) byHeat(w *circuit.Wire, l *warm.Laid) *value {
	v := b.view(0, corner.Nominal)
	held := l.Balance().Hold(l.LimitC)
	limit := b.limitC(w, l)
	loss := v.lossOf(w, held, v.ambientC(w))
	alone := of("alone in still air, at its limit", amps, l.FreeAirA, "√({} ÷ {})", loss, v.hotMetre(w, held, limit))
	if l.FreeAirA == 0 {
		alone = solved("alone: its place is as hot as its limit", amps, 0, "no room to warm up")
	}
	return b.reduced("by the heat balance", alone, l, l.HeatA)
}

// limitC is the conductor's limit: class less margin.
func (b *book) limitC(w *circuit.Wire, l *warm.Laid) *value {
	t := w.Spec.Type
	class := row("class of "+t.Name, celsius, t.ClassC, t.Source)
	if b.d.Practice == nil || b.d.Practice.HotSpotMarginC == 0 {
		return class
	}
	return of("conductor at its limit", celsius, l.LimitC, "{} − {}", class,
		row("margin kept to the class", kelvin, b.d.Practice.HotSpotMarginC, b.d.Practice.Source["margin to class K"]))
}

// byTable is what the practice's table allows.
func (b *book) byTable(w *circuit.Wire, l *warm.Laid) *value {
	base := reading("by the table, before reductions", l.Read, l.Table, w, b.view(0, corner.Nominal).ambientC(w))
	if l.AmbientShare != 1 {
		base = of("by the table, in this place", amps, l.TableBaseA*l.AmbientShare, "{} × {}", base, b.ambientShare(w, l))
	}
	return b.reduced("by "+l.Table.Name, base, l, l.TableA)
}

// reading is how a table was read.
func reading(label string, r conductor.Reading, t *library.CurrentTable, w *circuit.Wire, ambient *value) *value {
	size := w.Spec.Size
	area := row("copper area of "+size.Label, mm2, size.AreaMm2, size.Source)
	at := func(label string, x float64) *value { return row(label, amps, x, t.Source) }
	rows := func(label string, r conductor.Reading) *value {
		if r.X1 == r.X2 {
			return at(label+", its row", r.Y1)
		}
		low, high := at(label+", row below", r.Y1), at(label+", row above", r.Y2)
		x1, x2 := row("area of the row below", mm2, r.X1, t.Source), row("area of the row above", mm2, r.X2, t.Source)
		return of(label, amps, r.Value(), "{} × ({} ÷ {})^(ln({} ÷ {}) ÷ ln({} ÷ {}))", low, area, x1, high, low, x2, x1)
	}
	if r.Low == nil {
		return rows(label, r)
	}
	rise := of("rise that the class leaves", kelvin, r.X, "{} − {}", row("class of "+w.Spec.Type.Name, celsius, w.Spec.Type.ClassC, w.Spec.Type.Source), ambient)
	column := func(k float64) *value { return row("column of the table", kelvin, k, t.Source) }
	low := rows(fmt.Sprintf("at %s K", text0(r.X1)), *r.Low)
	if r.Root {
		return of(label, amps, r.Value(), "{} × √({} ÷ {})", low, rise, column(r.X1))
	}
	high := rows(fmt.Sprintf("at %s K", text0(r.X2)), *r.High)
	return of(label, amps, r.Value(), "{} × ({} ÷ {})^(ln({} ÷ {}) ÷ ln({} ÷ {}))", low, rise, column(r.X1), high, low, column(r.X2), column(r.X1))
}

// ambientShare corrects a table for a place hotter than its own.
func (b *book) ambientShare(w *circuit.Wire, l *warm.Laid) *value {
	t := l.Table
	class := row("class of the column", celsius, l.TableClassC, t.Source)
	base := row("ambient of the table", celsius, t.AmbientC, t.Source)
	x := of("what the hot place leaves", plain, l.AmbientShare, "√(({} − {}) ÷ ({} − {}))", class, b.view(0, corner.Nominal).ambientC(w), class, base)
	if !x.holds() {
		return solved("what the hot place leaves", plain, l.AmbientShare, "the table's own factor at its hot place: "+t.HotSource.String())
	}
	return x
}

// reduced takes off what bundle, cover and altitude take, and adds what a short time on gives.
func (b *book) reduced(label string, alone *value, l *warm.Laid, whole float64) *value {
	from, formula, good := []*value{alone}, "{}", alone.v
	factor := func(label string, share float64, x *value) {
		if share != 1 {
			x.label, x.v, x.dim = label, share, plain
			from, formula, good = append(from, x), formula+" × {}", good*share
		}
	}
	factor("left by the wires beside it", l.BundleShare, b.bundleShare(l))
	factor("left by its cover", l.CoverShare, coverShare(l))
	factor("left by thin air", l.AltShare, solved("", plain, 0, "altitude of the design"))
	x := alone
	if len(from) > 1 {
		x = of(label, amps, good, formula, from...)
	}
	p := l.Pulse
	switch {
	case math.Abs(whole-good) <= 1e-9*good:
		x.label = label
		return x
	case p.Gain > 1 && math.Abs(pulsed(p, good)-whole) <= 1e-9*whole:
		if p.SteadyA == 0 {
			return of(label+", for its time on", amps, whole, "{} × {}", x, b.gain(l)).by(x)
		}
		return of(label+", for its time on", amps, whole, "√({}² + {}² × ({}² − {}²))", steady(p), b.gain(l), x, steady(p)).by(x)
	}
	return solved(label+", for its time on", amps, whole, "part of its current flows for good, part for a time")
}

func pulsed(p bundle.Pulse, a float64) float64 {
	return math.Sqrt(p.SteadyA*p.SteadyA + p.Gain*p.Gain*(a*a-p.SteadyA*p.SteadyA))
}

func steady(p bundle.Pulse) *value {
	return solved("of it, flowing for good", amps, p.SteadyA, "what is on without a limit of time")
}

// gain is how much more than for good a wire may carry in its time on.
func (b *book) gain(l *warm.Laid) *value {
	const label = "gain by its time on"
	g, t := l.Pulse.Gain, l.Wire.Branch.TimeOn
	on, every := b.cycle(t)
	if mean := of(label+": the mean heat governs", plain, g, "√({} ÷ {})", every, on); mean.holds() {
		return mean
	}
	tau := oneConstant(g, t.OnS, t.EveryS)
	constant := solved("time constant of the wire", seconds, tau, "heat stored over heat given off by its whole balance: fitted to settled cycles of on and off")
	x := of(label, plain, g, "√((1 − e^(−{} ÷ {})) ÷ (1 − e^(−{} ÷ {})))", every, constant, on, constant)
	return x.sourced("a body with one time constant, on and off: textbook, from memory").orSolved("the most that a time on may give: beyond it contacts and crimps govern")
}

// oneConstant is the time constant in s with which a body that is on for a time, every so
// often, may be heated by so many times the current that it may have for good.
func oneConstant(gain, onS, everyS float64) float64 {
	low, high := math.Log(1e-3*onS), math.Log(1e6*everyS)
	for range 200 {
		mid := (low + high) / 2
		if tau := math.Exp(mid); math.Sqrt(math.Expm1(-everyS/tau)/math.Expm1(-onS/tau)) < gain {
			low = mid
		} else {
			high = mid
		}
	}
	return math.Exp((low + high) / 2)
}

// cycle is how long at a time and how often a wire's current flows, as its loads have it.
func (b *book) cycle(t circuit.TimeOn) (on, every *value) {
	on, every = solved("on for, of its loads together", seconds, t.OnS, "one after the other"), solved("from one start to the next", seconds, t.EveryS, "of its loads")
	for _, br := range b.c.Branches {
		if br.Load == nil || br.Load.Load == nil || br.Load.Load.EveryS.Value != t.EveryS {
			continue
		}
		if every = everyOf(br.Load.Load); br.Load.Load.OnForS.Value == t.OnS {
			return onFor(br.Load.Load), every
		}
	}
	return on, every
}

// onFor is how long at a time a load is on: by the design, by its duty, or usual for its type.
func onFor(l *design.Load) *value {
	const label = "is on for"
	switch {
	case l.Cycles:
		return of(label, seconds, l.OnForS.Value, "{} × {}", given("share of the time", percent, l.Duty), everyOf(l))
	case l.OnForS.Pos.Line == 0 && l.Type != nil:
		return row(label+", "+l.Type.Name, seconds, l.OnForS.Value, l.Type.Source)
	}
	return given(label, seconds, l.OnForS)
}

// everyOf is the time from one start of a load to the next.
func everyOf(l *design.Load) *value {
	const label = "from one start to the next"
	switch {
	case l.EveryS.Pos.Line > 0:
		return given(label, seconds, l.EveryS)
	case l.Cycles:
		return row(label+", duty type S3", seconds, l.EveryS.Value, library.Source{Text: "IEC 60034-1", Certainty: library.FromMemory})
	case l.Type != nil && l.Type.EveryS == l.EveryS.Value:
		return row(label+", "+l.Type.Name, seconds, l.EveryS.Value, l.Type.Source)
	}
	return of(label, seconds, l.EveryS.Value, "{} ÷ {}", onFor(l), given("share of the time", percent, l.Duty))
}

func (b *book) bundleShare(l *warm.Laid) *value {
	source := l.BundleSource
	if source == "" {
		source = "heat of the run with all its wires, solved together; no more than the practice's factor"
	}
	return solved("", plain, 0, source)
}

func coverShare(l *warm.Laid) *value {
	if l.In != nil && l.In.Run.Cover != nil {
		x := row("", plain, 0, l.In.Run.Cover.Source)
		return x
	}
	return solved("", plain, 0, "")
}
