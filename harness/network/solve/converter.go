package solve

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// converter is a charger in a network: its output, and what it takes from the battery that
// feeds it, if one does.
type converter struct {
	out, in int // branches; in -1 = no battery feeds it
	spec    *design.Charger
	on      bool
	most    damped // of what it gives, in amperes
	takes   damped // of what its input takes, in watts
}

// damped is a figure on the way to where it settles.
type damped struct {
	moved float64 // by how much it was to move last
	share float64 // of the way that it goes; 0 = all of it
}

// The search for what chargers give: the voltages settle a digit a turn. What has not after
// calmTurns swings about its goal: it moves less far from then on, see damped, and settles at calmShare,
// since rounding alone may keep it from coming nearer.
const (
	calmTurns = 20
	maxTurns  = 100
	calmShare = 1e-8
)

// spareOhm is the slope with which a charger's input takes hold above the voltage at which it
// stops: 50 A raise it by 0.5 mV.
const spareOhm = 1e-5

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
		if x := out.OfCharger(); n.opt.DiodesConduct && x.Converts() {
			n.laws[out.Index] = Law{Kind: folded, Ohm: out.Ohm, EMFV: x.HeldV()}
			continue
		}
		k := converter{out: out.Index, in: -1, spec: p.Source.(*design.Charger)}
		if in := p.Converts(); in != nil {
			k.in = in.Index
			n.laws[k.in] = Law{Kind: Sparing, EMFV: k.spec.Type.StopsV, Ohm: spareOhm}
		}
		n.converters = append(n.converters, k)
	}
}

// restConverters has every charger as before the first voltage is known: those on the sun or
// the mains give, those that a battery feeds are off, or as they were.
func (n *Network) restConverters() {
	if b := n.plan.sensing; b != nil {
		n.laws[b.Index].EMFV = n.heldV()
	}
	for i := range n.converters {
		k := &n.converters[i]
		k.on = k.in < 0 || n.opt.After != nil && !math.IsInf(n.opt.After.Ohm[k.out], 1)
		n.setConverter(k, n.mostOf(k, k.spec.HeldV()), 0)
	}
}

// mostOf is the most that a charger gives at a voltage of what it charges.
func (n *Network) mostOf(k *converter, outV float64) float64 {
	switch t := k.spec.Type; {
	case k.spec.FromEngine():
		return n.engineA(&k.spec.Engine)
	case t.From != "panel":
		return t.RatingA * n.shareOf(k)
	case t.Tracks:
		return math.Min(t.RatingA, n.trackedW(k)/math.Max(outV, t.Volts/2))
	default:
		return math.Min(t.RatingA, k.spec.PanelW.Value*n.shareOf(k)/(PanelWorksV*t.Volts))
	}
}

// shareOf is the share of its power that a charger's source has.
func (n *Network) shareOf(k *converter) float64 {
	if n.opt.Night && k.spec.Type.From == "panel" {
		return 0
	}
	return k.spec.Gives(n.situation)
}

// trackedW is what a charger that tracks gives of its panels' power.
func (n *Network) trackedW(k *converter) float64 {
	return k.spec.PanelW.Value * n.shareOf(k) * k.spec.Type.Efficiency
}

// PanelWorksV is the voltage at which a panel gives its rated power, over the nominal volts of
// what it charges without a tracking controller: 18.5 V of 36 cells for 12 V (a maker's data
// sheet of a 100 W panel; one source).
const PanelWorksV = 18.5 / 12

// setConverter sets what a charger gives at the most, and what it takes.
func (n *Network) setConverter(k *converter, mostA, takesW float64) {
	n.laws[k.out].LimitA = mostA
	n.present[k.out] = k.on && (mostA > 0 || k.in >= 0)
	if k.in >= 0 {
		n.laws[k.in].PowerW = takesW
		n.present[k.in] = k.on && takesW > 0
	}
}

// operateConverters finds the operating point at which what chargers take follows what they give.
func (n *Network) operateConverters() {
	for i := range n.converters {
		n.converters[i].most, n.converters[i].takes = damped{}, damped{}
	}
	n.operate()
	for turn := range maxTurns {
		if n.moveConverters(turn) == nil {
			return
		}
		n.operate()
	}
	if n.moveConverters(maxTurns) != nil {
		n.status, n.factored, n.why = Chattering, false, "a charger finds no current to settle at"
	}
}

// moveConverters has what chargers take follow what they give, at the present voltages, and
// tells whether any of it moved.
func (n *Network) moveConverters(turn int) *circuit.Branch {
	var moved *circuit.Branch
	for i := range n.converters {
		if k := &n.converters[i]; n.moveConverter(k, turn) && moved == nil {
			moved = n.plan.circuit.Branches[k.out]
		}
	}
	if n.moveSensing(turn) && moved == nil {
		moved = n.plan.sensing
	}
	return moved
}

func (n *Network) moveConverter(k *converter, turn int) bool {
	law := &n.laws[k.out]
	outV := n.v[n.from[k.out]] - n.v[n.to[k.out]]
	if k.in < 0 {
		mostA := n.mostOf(k, outV)
		moved := uneven(mostA, law.LimitA, turn)
		n.setConverter(k, k.most.next(law.LimitA, mostA, turn), 0)
		return moved
	}
	inV := n.v[n.from[k.in]] - n.v[n.to[k.in]]
	if !k.on {
		if k.on = inV >= k.spec.Type.StartsV; k.on {
			n.setConverter(k, k.spec.Type.RatingA, 0)
		}
		return k.on
	}
	if inV <= k.spec.Type.StopsV {
		k.on = false
		n.setConverter(k, 0, 0)
		return true
	}
	mostA, wantsW := k.spec.Type.RatingA, k.wantsW(law, outV)
	if takes, slope := n.laws[k.in].At(inV); slope >= 0 && n.laws[k.in].PowerW > 0 { // it spares its input
		mostA = math.Min(mostA, takes*inV*k.spec.Type.Efficiency/math.Max(outV, k.spec.Type.Volts/2))
	}
	moved := uneven(mostA, law.LimitA, turn) || uneven(wantsW, n.laws[k.in].PowerW, turn)
	n.setConverter(k, k.most.next(law.LimitA, mostA, turn), k.takes.next(n.laws[k.in].PowerW, wantsW, turn))
	return moved
}

// next is where a figure goes next on the way from one value to another: a part of it once it has swung for
// long, a smaller one with each swing, since a small change may flip what the whole network does.
func (d *damped) next(was, will float64, turn int) float64 {
	swings := (will-was)*d.moved < 0
	d.moved = will - was
	switch {
	case turn < calmTurns:
		return will
	case swings || d.share == 0:
		d.share = or(d.share, 1) / 2
	default:
		d.share = min(1.5*d.share, 1)
	}
	return was + d.share*(will-was)
}

// wantsW is the power that the output would take from the input at a voltage, up to the rating.
func (k *converter) wantsW(law *Law, outV float64) float64 {
	full := *law
	full.LimitA = k.spec.Type.RatingA
	amps, _ := full.At(outV)
	return math.Max(-amps*outV/k.spec.Type.Efficiency, 0)
}

func uneven(a, b float64, turn int) bool {
	share := evenShare
	if turn >= calmTurns {
		share = calmShare
	}
	return math.Abs(a-b) > share*math.Max(math.Abs(a), math.Abs(b))+1e-12
}

// Follow is how a charger's branch follows another voltage or current of the network.
type Follow struct {
	Other      *circuit.Branch // of one that a battery feeds: its output for the input, its input for the output
	Law        Law             // of the other, as far as the rating goes
	Efficiency float64         // output power over input power
	PowerW     float64         // of one that tracks its panels: what it gives, as far as RatingA goes
	RatingA    float64
	LeastV     float64 // below this volts count as this
}

// Follows tells how the branch of a charger that gives follows the network; false = its law says all.
func (n *Network) Follows(b *circuit.Branch) (Follow, bool) {
	for i := range n.converters {
		k := &n.converters[i]
		t := k.spec.Type
		f := Follow{Efficiency: t.Efficiency, RatingA: t.RatingA, LeastV: t.Volts / 2}
		switch {
		case b.Index != k.out && b.Index != k.in:
			continue
		case k.in >= 0 && n.present[k.in]:
			other := k.in + k.out - b.Index
			f.Other, f.Law = n.plan.circuit.Branches[other], n.laws[other]
			if other == k.out {
				f.Law.LimitA = t.RatingA
			}
			return f, true
		case t.Tracks:
			f.PowerW = n.trackedW(k)
			return f, true
		}
	}
	return Follow{}, false
}
