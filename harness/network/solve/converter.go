package solve

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// converter is a charger in a network: its output, and what it takes from the battery that
// feeds it, if one does.
type converter struct {
	out, in     int // branches; in -1 = no battery feeds it
	spec        *design.Charger
	on          bool
	heldBack    bool    // its input would be pulled below where it stops
	least, most float64 // between which the output lies that just does not
}

// maxTurns ends the search for what chargers give: halving takes some thirty turns, and
// the voltages settle a digit a turn.
const maxTurns = 200

// outputLeakOhm is what a charger's output takes above its voltage: too little to count.
const outputLeakOhm = 1e9

// evenShare is how nearly a charger's input follows its output.
const evenShare = 1e-10

// findConverters lists the chargers with their outputs at what their sources have.
func (n *Network) findConverters() {
	for _, p := range n.plan.circuit.Parts {
		out := p.Output()
		if out == nil {
			continue
		}
		k := converter{out: out.Index, in: -1, spec: p.Source.(*design.Charger)}
		if in := p.Converts(); in != nil {
			k.in = in.Index
		}
		n.converters = append(n.converters, k)
	}
}

// restConverters has every charger as before the first voltage is known: those on the sun or
// the mains give, those that a battery feeds are off.
func (n *Network) restConverters() {
	if b := n.plan.sensing; b != nil {
		n.laws[b.Index].EMFV = n.heldV()
	}
	for i := range n.converters {
		k := &n.converters[i]
		k.on, k.heldBack, k.least, k.most = k.in < 0, false, 0, k.spec.Type.RatingA
		n.setConverter(k, n.mostOf(k, k.spec.HeldV()), 0)
	}
}

// mostOf is the most that a charger gives at a voltage of what it charges.
func (n *Network) mostOf(k *converter, outV float64) float64 {
	t, share := k.spec.Type, k.spec.Gives(n.situation)
	if n.opt.SunOfDay && t.From == "panel" {
		share = n.situation.SunShare
	}
	if t.From != "panel" {
		return t.RatingA * share
	}
	powerW := k.spec.PanelW.Value * share
	if t.Tracks {
		return math.Min(t.RatingA, powerW*t.Efficiency/math.Max(outV, t.Volts/2))
	}
	return math.Min(t.RatingA, powerW/(PanelWorksV*t.Volts))
}

// PanelWorksV is the voltage at which a panel gives its rated power, over the nominal volts of
// what it charges without a tracking controller: 18.5 V of 36 cells for 12 V (a maker's data
// sheet of a 100 W panel; one source).
const PanelWorksV = 18.5 / 12

// setConverter sets what a charger gives at the most, and what it takes.
func (n *Network) setConverter(k *converter, mostA, takesW float64) {
	n.laws[k.out].LimitA = mostA
	n.present[k.out] = k.on && mostA > 0
	if k.in >= 0 {
		n.laws[k.in].PowerW = takesW
		n.present[k.in] = k.on && takesW > 0
	}
}

// operateConverters finds the operating point at which what chargers take follows what they give.
func (n *Network) operateConverters() {
	n.operate()
	for range maxTurns {
		moved := n.moveConverters()
		if moved == nil {
			return
		}
		n.operate()
	}
	if n.moveConverters() != nil {
		n.status, n.factored, n.why = Chattering, false, "a charger finds no current to settle at"
	}
}

// moveConverters has what chargers take follow what they give, at the present voltages, and
// tells whether any of it moved.
func (n *Network) moveConverters() *circuit.Branch {
	var moved *circuit.Branch
	for i := range n.converters {
		if k := &n.converters[i]; n.moveConverter(k) && moved == nil {
			moved = n.plan.circuit.Branches[k.out]
		}
	}
	if n.moveSensing() && moved == nil {
		moved = n.plan.sensing
	}
	return moved
}

func (n *Network) moveConverter(k *converter) bool {
	law := &n.laws[k.out]
	outV := n.v[n.from[k.out]] - n.v[n.to[k.out]]
	if k.in < 0 {
		mostA := n.mostOf(k, outV)
		moved := uneven(mostA, law.LimitA)
		n.setConverter(k, mostA, 0)
		return moved
	}
	inV := n.v[n.from[k.in]] - n.v[n.to[k.in]]
	if !k.on {
		if k.on = inV >= k.spec.Type.StartsV; k.on {
			n.setConverter(k, k.most, 0)
		}
		return k.on
	}
	amps, _ := law.At(outV)
	takesW := -amps * outV / k.spec.Type.Efficiency
	if uneven(takesW, n.laws[k.in].PowerW) {
		n.setConverter(k, law.LimitA, takesW)
		return true
	}
	return n.holdBack(k, inV)
}

// holdBack has a charger give less where it pulls its input below the voltage at which it
// stops, by halving; it tells whether that moved it.
func (n *Network) holdBack(k *converter, inV float64) bool {
	law := &n.laws[k.out]
	switch stops := k.spec.Type.StopsV; {
	case inV < stops:
		k.heldBack, k.most = true, law.LimitA
	case !k.heldBack:
		return false
	default:
		k.least = law.LimitA
	}
	if k.most-k.least < 1e-6*k.spec.Type.RatingA {
		return false
	}
	n.setConverter(k, (k.least+k.most)/2, n.laws[k.in].PowerW)
	return true
}

func uneven(a, b float64) bool {
	return math.Abs(a-b) > evenShare*math.Max(math.Abs(a), math.Abs(b))+1e-12
}
