// Package spice writes a circuit in one situation as a SPICE netlist, so that
// any simulator of that family can check its operating point. Loads, battery
// and charging are behavioural current sources with the very laws, folds and
// limits of package solve; what a charger takes follows what it gives, and what it gives its
// panels. Contacts are written as they settle there, since an operating point has no history to
// pull a relay in, and so are chargers that do not start; branches that do not conduct, and islands
// without voltage, are left out.
//
// It solves nothing of its own and reads no results.
package spice

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// ErrUnsettled says that the relays of the circuit do not settle in the
// situation, so that there is no one network to write.
var ErrUnsettled = errors.New("relays do not settle, so there is no operating point to write")

// A load that is live but has no way back, switched in its return, is left hanging by its
// current source: simulators find no operating point without a path from there. The leak
// takes 60 nA at the most, which is below what they resolve.
const leakOhm, leakA = 1e9, 1e-9

// Write writes the netlist of a circuit in a situation. Node k of the circuit is
// node nK of the netlist, battery negative is node 0; branch k is RK (resistive)
// or BK with its ammeter VK. The same input gives the same bytes.
func Write(w io.Writer, c *circuit.Circuit, s *design.Situation, opt solve.Options) error {
	n := solve.Prepare(c).Network(s, opt)
	sol := n.Solution()
	if sol.Status == solve.Chattering {
		return fmt.Errorf("situation %q: %w", s.Name, ErrUnsettled)
	}
	out := bufio.NewWriter(w)
	heading(out, c, s)
	for _, b := range c.Branches {
		if k := b.Closer; k != nil && k.Latch != nil {
			state := map[bool]string{true: "closed", false: "open"}[sol.Closed[b.Index]]
			fmt.Fprintf(out, "* %s: %s as the last pulse left it; the coil's current does not tell\n", oneLine(b.Name), state)
		}
		if law, ok := n.Law(b); ok && b.A != b.B {
			follow, _ := n.Follows(b)
			branch(out, b, law, follow)
			if law.Kind != solve.Ohmic && b.B.Index != 0 && !b.FlowsOn() && math.Abs(sol.Amps(b)) < leakA {
				fmt.Fprintf(out, "* no way back: a leak that simulators need\nRL%d %s 0 %s\n", b.Index, node(b.B), number(leakOhm))
			}
		}
	}
	for i, short := range shorts(opt.Changes) {
		fmt.Fprintf(out, "* short\nRS%d %s %s %s\n", i, node(short.A), node(short.B), number(max(short.Ohm, 1e-6)))
	}
	for i, d := range opt.Drawn {
		fmt.Fprintf(out, "* drawn besides\nID%d %s 0 %s\n", i, node(d.Node), number(d.Amps))
	}
	guess(out, n, sol)
	fmt.Fprint(out, ".options reltol=1e-7 abstol=1e-10 vntol=1e-9 itl1=2000\n.op\n.end\n")
	return out.Flush()
}

func heading(out io.Writer, c *circuit.Circuit, s *design.Situation) {
	title := "circuit"
	if c.Design != nil && c.Design.Title.Value != "" {
		title = oneLine(c.Design.Title.Value)
	}
	fmt.Fprintf(out, "* %s\n* situation: %s\n", title, oneLine(s.Name))
	fmt.Fprint(out, "* A model, not the vehicle: local codes, the makers' instructions and licensed practice come first.\n")
}

// guess tells the simulator where to begin, to the nearest 0.1 mV: simulators
// take whole Newton steps, and between the regulator's limit and the battery's
// knee those can swing for ever. A .nodeset is let go before the final steps,
// so the result is the simulator's own.
func guess(out io.Writer, net *solve.Network, sol *solve.Solution) {
	for _, n := range sol.Circuit.Nodes[1:] {
		if v := sol.NodeV[n.Index]; !math.IsNaN(v) {
			fmt.Fprintf(out, ".nodeset v(%s)=%.4f\n", node(n), v)
		}
	}
	for _, b := range sol.Circuit.Branches {
		if law, ok := net.Law(b); ok && law.Kind != solve.Ohmic {
			fmt.Fprintf(out, ".nodeset v(m%d)=%.4f\n", b.Index, sol.NodeV[b.A.Index])
		}
	}
}

func shorts(changes []solve.Change) []solve.Change {
	var out []solve.Change
	for _, c := range changes {
		if c.Branch == nil && c.A != c.B {
			out = append(out, c)
		}
	}
	return out
}

func branch(out io.Writer, b *circuit.Branch, law solve.Law, follow solve.Follow) {
	fmt.Fprintf(out, "* %s: %s to %s\n", oneLine(b.Name), oneLine(b.A.Name), oneLine(b.B.Name))
	if law.Kind == solve.Ohmic {
		fmt.Fprintf(out, "R%d %s %s %s\n", b.Index, node(b.A), node(b.B), number(law.Ohm))
		return
	}
	v := voltage(b)
	text := expression(law, v)
	if follow.RatingA > 0 {
		text = following(law, v, follow)
	}
	fmt.Fprintf(out, "V%d %s m%d 0\n", b.Index, node(b.A), b.Index)
	fmt.Fprintf(out, "B%d m%d %s i=%s\n", b.Index, b.Index, node(b.B), text)
}

// following is the current of a charger's branch: the power at its input is that which its output
// wants, the limit of its output what its input or its panels have.
func following(l solve.Law, v string, f solve.Follow) string {
	if f.Other == nil {
		return charger(l, v, fmt.Sprintf("min(%s,%s/max(%s,%s))", number(f.RatingA), number(f.PowerW), v, number(f.LeastV)))
	}
	at := voltage(f.Other)
	if l.Kind == solve.Sparing {
		return sparing(l, v, fmt.Sprintf("(-(%s)*%s/%s)", expression(f.Law, at), at, number(f.Efficiency)))
	}
	return charger(l, v, fmt.Sprintf("min(%s,%s*%s*max(0,(%s-%s)/%s)/max(%s,%s))", number(f.RatingA), number(f.Efficiency), at, at,
		number(f.Law.EMFV), number(f.Law.Ohm), v, number(f.LeastV)))
}

// voltage is that across a branch, behind its ammeter.
func voltage(b *circuit.Branch) string {
	if b.B.Index != 0 {
		return fmt.Sprintf("v(m%d,%s)", b.Index, node(b.B))
	}
	return fmt.Sprintf("v(m%d)", b.Index)
}

// expression is the current of a law as a function of the voltage v.
func expression(l solve.Law, v string) string {
	switch l.Kind {
	case solve.Store:
		if l.EMFV < 0 { // posts swapped: the same law seen from the other side
			return "-(" + store(l, "(-"+v+")", -l.EMFV) + ")"
		}
		return store(l, v, l.EMFV)
	case solve.Lamp:
		cold := solve.Law{Kind: solve.Lamp, CurrentA: l.CurrentA, RatedV: l.RatedV, EdgeV: l.EdgeV}
		_, slope := cold.At(0)
		return fmt.Sprintf("abs(%[1]s) > %[2]s ? sgn(%[1]s)*%[3]s*pwr(abs(%[1]s)/%[4]s,%[5]s) : %[6]s*%[1]s",
			v, number(l.EdgeV), number(l.CurrentA), number(l.RatedV), number(solve.LampExponent), number(slope))
	case solve.Power:
		return power(l, v, number(l.PowerW))
	case solve.Fan:
		return fan(l, v)
	case solve.Torque:
		return fmt.Sprintf("%[2]s*max(-1,min(1,%[1]s/%[3]s))", v, number(l.CurrentA), number(l.EdgeV))
	case solve.Valve:
		if l.EMFV < 0 {
			return "-(" + valve(l, "(-"+v+")", -l.EMFV) + ")"
		}
		return valve(l, v, l.EMFV)
	case solve.Sparing:
		return sparing(l, v, number(l.PowerW))
	case solve.Charger:
		return charger(l, v, number(l.LimitA))
	}
	return "" // no law: the simulator refuses it
}

func fan(l solve.Law, v string) string {
	_, slope := l.At(0)
	e := l.RatedV - l.Ohm*l.CurrentA
	return fmt.Sprintf("abs(%[1]s) > %[2]s ? sgn(%[1]s)*%[3]s*pwr(2*abs(%[1]s)/(%[4]s+sqrt(%[5]s+%[6]s*abs(%[1]s))),2) : %[7]s*%[1]s",
		v, number(l.EdgeV), number(l.CurrentA), number(e), number(e*e), number(4*l.Ohm*l.CurrentA), number(slope))
}

func power(l solve.Law, v, watts string) string {
	return fmt.Sprintf("abs(%[1]s) > %[2]s ? %[3]s/%[1]s : %[3]s*%[1]s/%[4]s", v, number(l.EdgeV), watts, number(l.EdgeV*l.EdgeV))
}

func sparing(l solve.Law, v, watts string) string {
	return fmt.Sprintf("max(0,min((%[1]s-%[2]s)/%[3]s,%[4]s/max(%[1]s,%[2]s)))", v, number(l.EMFV), number(l.Ohm), watts)
}

func charger(l solve.Law, v, limit string) string {
	return fmt.Sprintf("-max(0,min(%s,(%s-%s)/%s))", limit, number(l.EMFV), v, number(l.Ohm))
}

func valve(l solve.Law, v string, knee float64) string {
	return fmt.Sprintf("%[1]s > %[2]s ? %[2]s/%[3]s+(%[1]s-%[2]s)/%[4]s : %[1]s/%[3]s", v, number(knee), number(l.ChargeOhm), number(l.Ohm))
}

func store(l solve.Law, v string, emf float64) string {
	return fmt.Sprintf("%[1]s > %[2]s ? min(%[3]s,(%[1]s-%[2]s)/%[4]s) : (%[1]s-%[2]s)/%[5]s",
		v, number(emf), number(l.LimitA), number(l.ChargeOhm), number(l.Ohm))
}

func node(n *circuit.Node) string {
	if n.Index == 0 {
		return "0"
	}
	return fmt.Sprintf("n%d", n.Index)
}

func number(x float64) string { return fmt.Sprintf("%.15g", x) }

// oneLine keeps names from the design inside their comment.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return ' '
		}
		return r
	}, s)
}
