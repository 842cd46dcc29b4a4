package fault

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/library"
)

// The states of the source and the loom in which shorts are studied.
const (
	Strong = 0 // most current
	Weak   = 1 // least current
)

// What the states rest on; our choices, common practice without a source unless
// said otherwise.
const (
	// coldC is the conductor's temperature for the greatest current, and hot is
	// its class for the least (IEC 60909-0: 20 °C and end of the fault, from memory).
	coldC = 20.0
	// weakCharge is a battery that no longer starts an engine but still burns
	// wires.
	weakCharge = 0.2
	// trickleOhm across the posts keeps the battery on its discharging side: a
	// few milliamperes.
	trickleOhm = 5e3
)

// source is the battery and charging system in one state: an EMF behind a
// resistance, and, where it charges, never more than a stiff source of the
// regulated voltage gives. The truth lies on or below both: the charging system
// holds its voltage up to its limit and adds that limit to the battery beyond.
type source struct {
	emfV, ohm  float64
	regulatedV float64 // 0 = no charging
	words      string
}

// sources finds the strong and the weak source of a design.
func sources(c *circuit.Circuit) [2]source {
	d := c.Design
	class := d.NominalV() / 12
	full, fullOhm := 12.7*class, batteryOhm(c)
	low, lowOhm := 11.6*class, 2*fullOhm
	if b := battery.Of(d); b != nil {
		full, low = b.OpenCircuitV(1, battery.RatedC), b.OpenCircuitV(weakCharge, battery.RatedC)
		lowOhm = fullOhm * b.Ohm(weakCharge, battery.RatedC) / b.Ohm(1, battery.RatedC)
	}
	strong := source{emfV: full, ohm: fullOhm,
		words: fmt.Sprintf("full battery, %s behind %s", quantity.Format(full, quantity.Voltage), quantity.Format(fullOhm, quantity.Resistance))}
	if amps, _ := charging.MostA(&d.Charging); amps > 0 {
		if reg := d.Charging.RegulatedV.Or(0); reg > full {
			strong.regulatedV = reg
		}
		strong.emfV += amps * fullOhm
		strong.words += ", charging with " + quantity.Format(amps, quantity.Current)
	}
	strong.words += fmt.Sprintf("; wires at %.0f °C, new contacts, return bare metal at the battery", coldC)
	return [2]source{strong, {emfV: low, ohm: lowOhm,
		words: fmt.Sprintf("battery at %s, %s behind %s; wires at their class, aged contacts, %s", quantity.Format(weakCharge, quantity.Share),
			quantity.Format(low, quantity.Voltage), quantity.Format(lowOhm, quantity.Resistance), returnWords(c))}}
}

func batteryOhm(c *circuit.Circuit) float64 {
	if b := batteryOf(c); b != nil {
		return b.Ohm
	}
	return circuit.BatteryOhm
}

// links are those of the first battery.
func links(c *circuit.Circuit) []*circuit.Wire {
	if b := batteryOf(c); b != nil && b.Part != nil {
		return b.Part.LinkWires()
	}
	return nil
}

// batteryOf is the first battery's branch; nil of a circuit put together without one.
func batteryOf(c *circuit.Circuit) *circuit.Branch {
	for _, b := range c.Branches {
		if b.Kind == circuit.BatteryBranch {
			return b
		}
	}
	return nil
}

// converterLimit is the current to which a converter limits its output, over its rating; one that
// is weak gives its rating and no more. From memory: makers limit at 1.05 to 1.5 times it.
var converterLimit = [2]float64{Strong: 1.5, Weak: 1}

// limitA is the most that a converter drives into a short at a node; +Inf where a battery feeds it.
func limitA(c *circuit.Circuit, n *circuit.Node, state int) float64 {
	if p := c.ConverterOf(n); p != nil {
		return converterLimit[state] * p.Output().OfCharger().Type.RatingA
	}
	return math.Inf(1)
}

// loom is the network without loads, every contact closed, in one state.
type loom struct {
	c     *circuit.Circuit
	nets  []*net // of the source's two bounds; one without charging
	hot   bool
	state int

	feedOhm []float64 // by node, see feedOhms; of the weak state alone

	fewer map[string]*loom // with devices open, see without

	plan *solve.Plan
}

// net is one solved network with what its shorts need.
type net struct {
	*solve.Network
	response *solve.Response
	ohm      []float64 // by branch; +Inf = does not conduct
	of       Net
	opt      solve.Options
	others   map[string]*net // the same with diodes that block, see blocking
}

func newNet(plan *solve.Plan, opt solve.Options, of Net) *net {
	n := plan.Network(keyOn, opt)
	if r := n.Responder(); r != nil {
		return &net{n, r, n.Solution().Ohm, of, opt, map[string]*net{}}
	}
	return nil
}

// newLoom solves the network of a state.
func newLoom(plan *solve.Plan, c *circuit.Circuit, src source, state int, rest bool) *loom {
	l := &loom{c: c, hot: state == Weak, state: state, plan: plan}
	for i, opt := range options(c, src, state, rest) {
		if n := newNet(plan, opt, Net{State: state, Stiff: i > 0, Rest: rest}); n != nil {
			l.nets = append(l.nets, n)
		}
	}
	if l.hot && len(l.nets) > 0 {
		l.feedOhm = feedOhms(c, l.nets[0].ohm)
	}
	return l
}

// again gives the same looms with a memory of their own for another goroutine.
func again(looms [2][]*loom) (out [2][]*loom) {
	for state, list := range looms {
		for _, l := range list {
			own := &loom{c: l.c, hot: l.hot, state: l.state, feedOhm: l.feedOhm, plan: l.plan}
			for _, n := range l.nets {
				own.nets = append(own.nets, &net{n.Network, n.Responder(), n.ohm, n.of, n.opt, map[string]*net{}})
			}
			out[state] = append(out[state], own)
		}
	}
	return out
}

// keyOn is the situation that shorts are studied in; contacts are closed by
// options, and loads are left out.
var keyOn = &design.Situation{Name: "fault", Key: design.KeyOn}

// agedContacts multiplies every contact of the weak state: relays, switches,
// fuses with their holders, and wire ends on top of their aged figure. It is the
// library's tolerance of an aged contact, the larger of relay and switch.
func agedContacts(lib *library.Library) float64 {
	factor := 1.0
	for _, name := range []string{"aged relay contact", "aged switch contact"} {
		if t := lib.Tolerance(name); t != nil {
			factor = math.Max(factor, t.Value)
		}
	}
	return factor
}

// options are those of the source's bounds in a state. Contacts of relays stand
// as with every coil energised, or, with rest set, as with none: a change-over
// contact cannot close both ways, and of the halves of a reversing contactor the one
// that turns the motor round rests: a motor has its feed at one end.
func options(c *circuit.Circuit, src source, state int, rest bool) []solve.Options {
	opt := solve.Options{NoCharging: true, DiodesConduct: true, BatteryV: src.emfV, BatteryOhm: src.ohm,
		LoadFactor: func(*circuit.Branch) float64 { return 0 }, Changes: closed(c, rest)}
	if state == Weak {
		opt.Aged, opt.ContactFactor = true, agedContacts(c.Design.Library)
		opt.WireTempC = hottest
		opt.BanksDischarged = 1 - weakCharge
	}
	if !(src.regulatedV > 0) {
		return []solve.Options{opt}
	}
	stiff := opt
	stiff.BatteryV, stiff.BatteryOhm = src.regulatedV, circuit.ChargerOhm
	stiff.BankV = src.regulatedV
	for _, w := range links(c) { // it stands at the posts, the links behind it
		stiff.Changes = append(slices.Clone(stiff.Changes), solve.Short(w.Branch.A, w.Branch.B, circuit.LeastOhm))
	}
	return []solve.Options{opt, stiff}
}

// Options are what the solver took for a network of shorts.
func (s *Study) Options(n Net) solve.Options {
	list := options(s.Circuit, sources(s.Circuit)[n.State], n.State, n.Rest)
	opt := list[0]
	if n.Stiff {
		opt = list[len(list)-1]
	}
	return opened(opt, n.Blocking)
}

// hottest is the class of a wire's insulation, what its copper may reach in use.
func hottest(w *circuit.Wire) float64 {
	if t := w.Spec.Type; t != nil {
		return math.Max(t.ClassC, w.AmbientC)
	}
	return math.Max(coldC, w.AmbientC)
}

// closed are the changes that close what can be closed.
func closed(c *circuit.Circuit, rest bool) []solve.Change {
	out := []solve.Change{solve.Short(c.Positive(), c.Negative(), trickleOhm)}
	for _, b := range c.Branches {
		k, rest := b.Closer, rest || b.OfFarHalf()
		switch {
		case k == nil:
		case k.Break != nil && !rest, k.Coil != nil && rest:
			out = append(out, solve.OpenBranch(b))
		default:
			out = append(out, solve.CloseBranch(b))
		}
	}
	return out
}

// hasBreaks tells whether some relay has a break contact.
func hasBreaks(c *circuit.Circuit) bool {
	for _, b := range c.Branches {
		if b.Closer != nil && b.Closer.Break != nil {
			return true
		}
	}
	return false
}

// frameOhm is the greatest path back through the frame; false without a frame.
func frameOhm(c *circuit.Circuit) (ohm float64, frame bool) {
	for _, g := range c.Design.Grounds {
		if g.Kind == design.FrameStud {
			ohm, frame = math.Max(ohm, g.FrameOhm.Or(circuit.FrameOhm)), true
		}
	}
	return ohm, frame
}

func returnWords(c *circuit.Circuit) string {
	if _, frame := frameOhm(c); frame {
		return "return through the frame or the load's own wire"
	}
	return "return as long and as thick as the feed, or the load's own wire"
}

// assumedType is what a factory fuse is taken for, since the design gives its
// rating alone: the blade type of nearly all vehicles (common practice, no source).
const assumedType = "blade C"

// Device is the fuse of a branch where it stands; assumed tells that its type
// is not known.
func deviceType(c *circuit.Circuit, b *circuit.Branch) (t *library.FuseType, assumed bool) {
	if b.Fuse.Type != nil || !b.Fuse.Factory || c.Design.Library == nil {
		return b.Fuse.Type, false
	}
	return c.Design.Library.FuseType(assumedType), true
}
