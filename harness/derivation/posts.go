package derivation

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// postsV is the volts at the posts of the battery that feeds a load.
func (v *view) postsV(load *circuit.Branch) *value {
	plus, minus := v.c.Supply(load.A)
	x, ok := v.posts[plus]
	if !ok { // it is there before it is worked out: what is drawn hangs on it
		x = &value{label: "volts at the battery's posts", dim: volts, v: v.sol.NodeV[plus.Index] - v.sol.NodeV[minus.Index]}
		v.posts[plus] = x
		*x = *v.postsAt(plus, minus)
	}
	return x
}

// postsHere is the same of a load across the posts, whose current is part of what sets them.
func (v *view) postsHere(load *circuit.Branch) *value {
	if v.across == nil {
		x := v.postsV(load)
		if x.mark == Yours {
			return x
		}
		v.across = solved("volts across the posts", volts, x.v, "solved together").checked(x)
	}
	return v.across
}

// postsAt is what regulator or battery leave at the posts.
func (v *view) postsAt(plus, minus *circuit.Node) *value {
	const label = "volts at the battery's posts"
	u := v.sol.NodeV[plus.Index] - v.sol.NodeV[minus.Index]
	if x := v.c.ConverterOf(plus); x != nil {
		return solved("volts at the output of "+x.Name, volts, u, "solved together: what it holds, its limit and its loads")
	}
	if q := v.d.Charging.RegulatedV; v.mean && q.Given() && math.Abs(u-q.Value) < heldV {
		x := given("volts at the battery's posts, held by the regulator", volts, q)
		x.v, x.exact = u, false
		return x
	}
	if plus == v.c.Positive() {
		if b := v.between(circuit.ChargerBranch, plus, minus); b != nil && v.sol.ChargingA > 0 && v.sol.ChargingA < v.laws[b.Index].LimitA {
			return of(label, volts, u, "{} − {} × {}", v.regulatedV(v.laws[b.Index].EMFV),
				assumed("the regulator's own", ohms, v.laws[b.Index].Ohm, "taken small: the voltage that the design gives holds at the posts"),
				solved("current of the charging system", amps, v.sol.ChargingA, "solved together: loads and battery")).orSolved("solved together")
		}
	}
	b := v.between(circuit.BatteryBranch, plus, minus)
	if b == nil || !(v.sol.Given(b) > 0) {
		return solved(label, volts, u, "solved together: battery, charging and loads")
	}
	law := v.laws[b.Index]
	return of(label, volts, u, "{} − {} × {}", v.restV(b, law.EMFV), v.innerOhm(b, law.Ohm), v.givenA(b)).orSolved("solved together")
}

// heldV is how near the budget holds the posts to the regulated voltage.
const heldV = 1e-3

func (v *view) between(kind circuit.BranchKind, plus, minus *circuit.Node) *circuit.Branch {
	for _, b := range plus.Branches {
		if b.Kind == kind && b.A == plus && b.B == minus {
			return b
		}
	}
	return nil
}

// regulatedV is the voltage that the regulator holds in a state.
func (v *view) regulatedV(held float64) *value {
	q := v.d.Charging.RegulatedV
	if !q.Given() {
		return assumed("regulated voltage", volts, held, "usual where the design gives none")
	}
	said := given("regulated voltage", volts, q)
	switch off := v.tolerance("regulated voltage", "it may be off by", volts); {
	case held == q.Value:
		return said
	case held < q.Value:
		off.v *= v.d.NominalV() / 12
		return of("regulated voltage, low", volts, held, "{} − {}", said, off).orSolved("lowest supply of the class")
	default:
		off.v *= v.d.NominalV() / 12
		return of("regulated voltage, high", volts, held, "{} + {}", said, off).orSolved("highest supply of the class")
	}
}

func (b *book) store(br *circuit.Branch) *design.Battery {
	if bank, ok := br.Part.Source.(*design.Bank); ok {
		return &bank.Store
	}
	return &b.d.Battery
}

func (b *book) chemistry(br *circuit.Branch) *library.Chemistry { return b.store(br).Chemistry }

// restV is the battery's voltage without load, at the charge that it has in a state.
func (v *view) restV(b *circuit.Branch, emfV float64) *value {
	label := "battery at rest"
	chem := v.chemistry(b)
	if chem == nil {
		return assumed(label, volts, emfV, "a usual battery: the design names no chemistry")
	}
	if bat := battery.New(v.store(b), v.d.NominalV()); bat != nil {
		for _, charge := range v.charges(b, chem) {
			if math.Abs(bat.OpenCircuitV(charge, battery.RatedC)-emfV) < 1e-9 {
				return v.restAt(chem, fmt.Sprintf("%s at rest, %.0f %% charged", chem.Name, 100*charge), charge, emfV)
			}
		}
	}
	x := row(label, volts, emfV, chem.Source)
	x.exact = false
	return x
}

// charges are the states of charge that a battery may have in a view.
func (v *view) charges(b *circuit.Branch, chem *library.Chemistry) []float64 {
	list := []float64{1, chem.StartReserve, 0.2, 1 - v.opt.Discharged, 1 - v.opt.BanksDischarged}
	if bank, ok := b.Part.Source.(*design.Bank); ok {
		list = append(list, v.sol.Situation.ChargeOf(bank))
	}
	return list
}

// restAt is the resting voltage at a charge, read between two rows of the chemistry.
func (v *view) restAt(chem *library.Chemistry, label string, charge, emfV float64) *value {
	class := v.d.NominalV() / 12
	point := func(p library.VoltsAt) *value {
		return row(fmt.Sprintf("%s at rest, %.0f %% charged", chem.Name, 100*p.Charge), volts, class*p.Volts, chem.Source)
	}
	rows := chem.OpenCircuit
	for i, p := range rows {
		if p.Charge == charge || i == len(rows)-1 || i == 0 && charge < p.Charge {
			x := point(p)
			x.label = label
			return x
		}
		if next := rows[i+1]; charge < next.Charge {
			low := point(p)
			return of(label, volts, emfV, fmt.Sprintf("{} + ({} − {}) × (%s − %s) ÷ (%s − %s)", text0(charge), text0(p.Charge), text0(next.Charge), text0(p.Charge)),
				low, point(next), low)
		}
	}
	return row(label, volts, emfV, chem.Source)
}

// innerOhm is a battery's resistance in a state.
func (v *view) innerOhm(b *circuit.Branch, ohm float64) *value {
	said := v.store(b).ResistanceOhm
	full := v.fullOhm(b)
	if math.Abs(full.v-ohm) < 1e-12 {
		return full
	}
	from := library.Source{}
	if chem := v.chemistry(b); chem != nil {
		from = chem.Source
	}
	_ = said
	return of("inside the battery, not full", ohms, ohm, "{} × {}", full, row("how much more when not full", plain, ohm/full.v, from))
}

func (v *view) fullOhm(b *circuit.Branch) *value {
	store := v.store(b)
	if q := store.ResistanceOhm; q.Given() {
		each := given("inside the battery", ohms, q)
		if store.InSeries == 0 {
			return each
		}
		return of("inside all batteries in series", ohms, store.GivenOhm(), "{} × {}", exactly("batteries in series", plain, float64(store.InSeries)), each)
	}
	if store.Chemistry != nil && store.CapacityAh.Given() {
		return row("inside the battery, usual of its size", ohms, b.Ohm, store.Chemistry.Source)
	}
	return assumed("inside the battery", ohms, b.Ohm, "a mid-sized motorcycle battery, from memory")
}

// givenA is the current that a battery gives.
func (v *view) givenA(b *circuit.Branch) *value {
	x, ok := v.amperes[b]
	if !ok { // it is there before it is worked out: what is drawn hangs on the posts, and they on it
		x = &value{label: "current out of the battery", dim: amps, v: v.sol.Given(b)}
		v.amperes[b] = x
		*x = *v.givenOf(b)
	}
	return x
}

// givenOf is all that is drawn, less what charging gives.
func (v *view) givenOf(b *circuit.Branch) *value {
	const label = "current out of the battery"
	a := v.sol.Given(b)
	how := "solved together: loads, charging and battery"
	if v.d.HasBanks() {
		return v.givenBy(b, a)
	}
	var from []*value
	formula := ""
	for _, x := range v.c.Branches {
		if y := math.Abs(v.sol.BranchA[x.Index]); (x.Kind == circuit.LoadBranch || x.OfCoil()) && y > traceA {
			if len(from) > 0 {
				formula += " + "
			}
			from, formula = append(from, v.amps(x)), formula+"{}"
		}
	}
	if v.sol.ChargingA > 0 {
		from, formula = append(from, solved("current of the charging system", amps, v.sol.ChargingA, "at its limit, or solved together")), formula+" − {}"
	}
	switch {
	case len(from) == 0:
		return solved(label, amps, a, how)
	case len(from) == 1 && math.Abs(from[0].v-a) < 1e-9*a:
		return from[0]
	}
	return of(label, amps, a, formula, from...).orSolved(how)
}

// batteryBranch is the first battery.
func (b *book) batteryBranch() *circuit.Branch {
	for _, x := range b.c.Positive().Branches {
		if x.Kind == circuit.BatteryBranch {
			return x
		}
	}
	return nil
}

// givenBy is what one of several batteries gives: what draws by the ways from its post.
func (v *view) givenBy(b *circuit.Branch, a float64) *value {
	const label = "current out of it"
	total := 0.0
	var list []*value
	for _, u := range v.drawing(b.A, true, b) {
		list, total = append(list, v.amps(u)), total+math.Abs(v.sol.BranchA[u.Index])
	}
	if len(list) < 2 || math.Abs(total-a) > 1e-6*a {
		return solved(label, amps, a, "solved together: batteries, chargers and loads")
	}
	if rest := a - total; math.Abs(rest) > sameA*a {
		list = append(list, solved("what leaks past what is off", amps, rest, "solved together"))
	}
	return sum(label, amps, a, list...)
}
