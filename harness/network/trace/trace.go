// Package trace follows the circuit of what draws: from the battery's positive post out to it
// and back to the negative one, with what each element on the way carries and loses.
package trace

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
)

// Step is an element on the way.
type Step struct {
	Branch *circuit.Branch
	From   *circuit.Node // at which the way comes to it
	To     *circuit.Node
	Back   bool    // on the way back
	AfterV float64 // behind it, against battery negative; NaN = not joined
	A      float64 // through it, whatever the direction
	LostV  float64 // along the way at nominal
	WorstV float64 // in the state in which the whole way loses most
	MayA   float64 // what it may carry for good where it is; 0 = not known
	// Fuse is the nearest one before it, itself when it is one; nil = none, or on the way
	// back, where what several fuses feed may flow.
	Fuse   *circuit.Branch
	Shared bool // on the way back: what another fuse feeds flows here too
}

// Circuit is the way out to what draws, and back.
type Circuit struct {
	Draw      *circuit.Branch
	Situation int
	Solved    bool // there is an operating point; else the figures are NaN
	On        bool // it draws
	Steps     []Step
	Out       int          // how many steps lead out; what draws stands behind them
	Whole     bool         // the way begins and ends at a battery
	Volts     corner.Value // across it
	A         float64
	SupplyV   float64 // across the battery that feeds it
	Drop      corner.Value
	LimitV    float64 // what the way may lose; 0 = no limit
}

// Draws are what circuits are followed for: accessories and the coils of relays.
func Draws(c *circuit.Circuit) (list []*circuit.Branch) {
	for _, b := range c.Branches {
		accessory := b.Load != nil && b.Load.Load != nil && !b.Load.Standby
		if accessory || b.IsCoil() && !b.Senses() {
			list = append(list, b)
		}
	}
	return list
}

// Tracer follows the circuits of a design.
type Tracer struct {
	set    *corner.Set
	c      *circuit.Circuit
	guards circuit.Guards
}

// New makes a tracer of what was solved.
func New(set *corner.Set) *Tracer {
	c := set.Model.Circuit
	return &Tracer{set, c, c.Guards()}
}

// Worst is the situation in which the way of what draws loses most; 0 where it is never on.
func (t *Tracer) Worst(draw *circuit.Branch) int {
	most, in := 0.0, 0
	for i := range t.c.Design.Situations {
		if !t.set.Usable(i) {
			continue
		}
		if v := t.drop(draw, i).Corner; v > most {
			most, in = v, i
		}
	}
	return in
}

// drop is what the way loses; the corner's own figure for accessories.
func (t *Tracer) drop(draw *circuit.Branch, situation int) corner.Value {
	if draw.Load != nil {
		return t.set.Drop(situation, draw)
	}
	plus, minus := t.c.Supply(draw.A)
	return t.set.Figure(situation, 1, func(s *solve.Solution) float64 {
		v := s.NodeV[plus.Index] - s.NodeV[minus.Index] - s.Volts(draw)
		if math.Abs(s.Amps(draw)) < idleA || math.IsNaN(v) {
			return 0
		}
		return v
	})
}

// idleA is below what a coil does not draw.
const idleA = 1e-6

// Of follows the circuit of what draws in a situation.
func (t *Tracer) Of(draw *circuit.Branch, situation int) *Circuit {
	s := t.set.Solution(situation)
	x := &Circuit{Draw: draw, Situation: situation, Solved: t.set.Usable(situation), A: math.Abs(s.Amps(draw))}
	feed, back := t.feed(draw.A, s), t.back(draw, s)
	if l := draw.Load; l != nil && l.Reverses && s.Amps(draw) < 0 { // out and back by each other's wires
		feed, back = t.flow(draw, draw.B, s, -1), t.flow(draw, draw.A, s, 1)
		slices.Reverse(feed.Branches)
	}
	x.Whole = feed.Whole && back.Whole
	plus, minus := t.c.Supply(draw.A)
	x.SupplyV = s.NodeV[plus.Index] - s.NodeV[minus.Index]
	worst := s
	if x.Solved {
		x.Drop = t.drop(draw, situation)
		x.Volts = t.volts(draw, situation)
		worst = t.set.Results[x.Drop.At][situation].Solution
		x.On = s.LoadOn[draw.Index] || draw.Load == nil && x.A > idleA
	}
	if l := draw.Load; l != nil && l.Load != nil {
		limit, _ := corner.DropLimit(t.c.Design, l.Load.Critical)
		x.LimitV = limit * t.c.Design.NominalV()
	}
	x.add(t, feed.Branches, false, s, worst)
	x.Out = len(x.Steps)
	x.add(t, back.Branches, true, s, worst)
	return x
}

func (t *Tracer) volts(draw *circuit.Branch, situation int) corner.Value {
	if draw.Load != nil {
		return t.set.LoadV(situation, draw)
	}
	return t.set.Figure(situation, -1, func(s *solve.Solution) float64 {
		if v := s.Volts(draw); !math.IsNaN(v) {
			return v
		}
		return 0
	})
}

// feed is the way from a battery to a node; where several part, by the one that carries most.
func (t *Tracer) feed(to *circuit.Node, s *solve.Solution) circuit.Path {
	var p circuit.Path
	for !t.c.IsPost(to) && len(p.Branches) < len(t.c.Branches) {
		var most *circuit.Branch
		for _, b := range to.FedBy() {
			if most == nil || math.Abs(s.Amps(b)) > math.Abs(s.Amps(most)) {
				most = b
			}
		}
		if most == nil {
			break
		}
		p.Branches = append([]*circuit.Branch{most}, p.Branches...)
		to = most.A
	}
	p.Whole = t.c.IsPost(to)
	return p
}

// flow follows the greatest current from an end of what draws to a post: with it (sense 1), or
// against it to where it comes from.
func (t *Tracer) flow(draw *circuit.Branch, n *circuit.Node, s *solve.Solution, sense float64) circuit.Path {
	var p circuit.Path
	home := t.c.Home(draw.A)
	end := func() bool { return sense < 0 && t.c.IsPost(n) || sense > 0 && (n == home || n == t.c.Negative()) }
	for !end() && len(p.Branches) < len(t.c.Branches) {
		var next *circuit.Branch
		most := idleA
		for _, b := range n.Branches {
			a := sense * s.Amps(b)
			if b.B == n {
				a = -a
			}
			if b != draw && b.Conductor() && a > most {
				next, most = b, a
			}
		}
		if next == nil {
			break
		}
		p.Branches = append(p.Branches, next)
		if n == next.A {
			n = next.B
		} else {
			n = next.A
		}
	}
	p.Whole = end()
	return p
}

// back is the way home, by what carries most.
func (t *Tracer) back(draw *circuit.Branch, s *solve.Solution) circuit.Path {
	return t.c.HeaviestReturn(draw.B, t.c.Home(draw.A), s.BranchA)
}

// add puts branches on the way, each from where the last one ended.
func (x *Circuit) add(t *Tracer, list []*circuit.Branch, back bool, s, worst *solve.Solution) {
	var fuse *circuit.Branch
	if n := len(x.Steps); n > 0 {
		fuse = x.Steps[n-1].Fuse
	}
	var at *circuit.Node
	for i, b := range list {
		from, to := b.A, b.B
		switch {
		case at == nil && i+1 < len(list) && (b.A == list[i+1].A || b.A == list[i+1].B) && b.B != list[i+1].A && b.B != list[i+1].B,
			at != nil && b.B == at:
			from, to = b.B, b.A
		}
		at = to
		if b.Kind == circuit.FuseBranch {
			fuse = b
		}
		step := Step{Branch: b, From: from, To: to, Back: back, AfterV: s.NodeV[to.Index], A: math.Abs(s.Amps(b)),
			LostV: s.NodeV[from.Index] - s.NodeV[to.Index], WorstV: worst.NodeV[from.Index] - worst.NodeV[to.Index],
			MayA: t.may(b), Fuse: fuse}
		if back && t.shared(b, fuse) {
			step.Fuse, step.Shared = nil, true
		}
		x.Steps = append(x.Steps, step)
	}
}

// shared tells whether something behind another fuse returns by a branch too.
func (t *Tracer) shared(b, fuse *circuit.Branch) bool {
	for _, d := range t.c.DrawsBack(b) {
		above, bare := t.guards.Above(d.A)
		if bare || len(above) != 1 || above[0] != fuse {
			return true
		}
	}
	return false
}

// may is what a branch may carry for good where it stands, in amperes; 0 = not known.
func (t *Tracer) may(b *circuit.Branch) float64 {
	switch {
	case b.Wire != nil:
		if l := &t.set.Model.Wires[b.Wire.Index]; l.Known {
			return l.AllowedA
		}
	case b.Fuse != nil && b.Fuse.Type != nil:
		return corner.FuseBearsA(t.c.Design, b, 0)
	case b.Fuse != nil && b.Fuse.Rating != nil:
		return b.Fuse.Rating.RatingA
	case b.Part == nil:
		return 0
	}
	switch p := b.Part.Source.(type) {
	case *design.Relay:
		if p.Form != nil && b.Closer != nil {
			if b.Closer.Break != nil {
				return p.Form.BreakA * p.Form.Share(b.Part.AmbientC())
			}
			return p.Form.MakeA * p.Form.Share(b.Part.AmbientC())
		}
	case *design.Switch:
		if !p.RatingA.Given() && p.Type != nil {
			return p.Type.ResistiveA
		}
		return p.RatingA.Or(0)
	case *design.Ground:
		return p.LimitA.Or(0)
	}
	return 0
}
