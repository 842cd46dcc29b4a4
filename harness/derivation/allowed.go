package derivation

import (
	"fmt"
	"math"
	"strconv"

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
		return of(label+", for its time on", amps, whole, "√({}² + {}² × ({}² − {}²))", steady(p), gain(p), x, steady(p))
	}
	return solved(label+", for its time on", amps, whole, "part of its current flows for good, part for a time")
}

func pulsed(p bundle.Pulse, a float64) float64 {
	return math.Sqrt(p.SteadyA*p.SteadyA + p.Gain*p.Gain*(a*a-p.SteadyA*p.SteadyA))
}

func steady(p bundle.Pulse) *value {
	return solved("of it, flowing for good", amps, p.SteadyA, "what is on without a limit of time")
}

func gain(p bundle.Pulse) *value {
	return solved("gain by its time on", plain, p.Gain, "settled cycles of on and off, heat stored by the wire")
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
