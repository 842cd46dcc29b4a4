package diagnosis

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// fault is one thing that may be wrong: a change of the circuit.
type fault struct {
	kind    string // of the library's suspicions
	branch  *circuit.Branch
	wire    *circuit.Wire // of wires: the piece
	other   *circuit.Branch
	reading int // of a wrong reading: which sensor
	// size is the ohms that a joint has too many, or the factor of a load's power or a coil's resistance.
	size   float64
	free   bool // the size is to be found
	open   bool // broken altogether
	odds   float64
	number int // among the suspects, from 1
}

// What a suspicion does to the circuit.
const (
	jointOfWire  = "joint of a wire"
	jointAtPlug  = "joint at a plug"
	brokenWire   = "broken wire"
	thinnerWire  = "thinner wire"
	swappedWires = "swapped wires"
	groundPoint  = "ground point"
	fuseHolder   = "fuse holder"
	blownFuse    = "blown fuse"
	contactBad   = "contact"
	stuckContact = "stuck contact"
	coilBad      = "coil"
	loadPower    = "power of a load"
	deadLoad     = "dead load"
	wrongReading = "wrong reading"
)

// Sizes that are tried, and between which they are taken to lie evenly by their logarithm.
const (
	leastOhm, mostOhm     = 0.015, 30.0
	leastTimes, mostTimes = 0.1, 8.0
)

// resistive tells of faults that put ohms into a branch.
func (f *fault) resistive() bool {
	return slices.Contains([]string{jointOfWire, jointAtPlug, thinnerWire, groundPoint, fuseHolder, contactBad}, f.kind)
}

// times tells of faults that multiply a resistance or a power.
func (f *fault) times() bool { return f.kind == coilBad || f.kind == loadPower }

// sized is the fault with a size.
func (f *fault) sized(size float64) *fault {
	g := *f
	g.size = size
	return &g
}

// limits are between which sizes a fault is looked for.
func (f *fault) limits() (least, most float64) {
	if f.times() {
		return leastTimes, mostTimes
	}
	return leastOhm, mostOhm
}

// inert tells that a fault changes nothing at an operating point.
func (f *fault) inert(sol *solve.Solution) bool {
	switch f.kind {
	case stuckContact:
		return sol.Closed[f.branch.Index] && !f.changesOver()
	case swappedWires:
		return false
	case wrongReading:
		return true
	}
	return sol.BranchA[f.branch.Index] == 0 && !(f.open && (f.returns() || live(sol, f.branch.A) || live(sol, f.branch.B)))
}

// changesOver tells of a contact that shares a point with another of its part: welded, it meets the other at
// rest, though it is closed as designed once the coil has pulled in.
func (f *fault) changesOver() bool {
	b := f.branch
	return slices.ContainsFunc(b.Part.Branches, func(o *circuit.Branch) bool {
		return o != b && o.Kind == circuit.ContactBranch && (o.A == b.A || o.B == b.B || o.A == b.B || o.B == b.A)
	})
}

// live tells of a point with a voltage, which what hangs on it without drawing has as well.
func live(sol *solve.Solution, n *circuit.Node) bool { return math.Abs(sol.NodeV[n.Index]) > 1e-6 }

// returns tells of a way back that others than loads measure from: a converter that rests by what it
// reads wakes when its minus floats, though nothing flowed there.
func (f *fault) returns() bool {
	if f.wire != nil {
		return f.wire.Role == circuit.ReturnWire && f.wire.Owner().Kind != circuit.Load
	}
	return f.branch.Part != nil && f.branch.Part.Kind == circuit.Ground
}

// asDesigned is the resistance of a branch.
func asDesigned(b *circuit.Branch) float64 { return b.Ohm }

// change puts faults into the options of a state; made is what a branch has without them.
func change(opt solve.Options, faults []*fault, made func(*circuit.Branch) float64) solve.Options {
	opt.AcceptFolded = true
	opt.Changes = slices.Clip(opt.Changes)
	for _, f := range faults {
		b := f.branch
		switch {
		case f.open:
			opt.Changes = append(opt.Changes, solve.OpenBranch(b))
		case f.resistive():
			opt.Changes = append(opt.Changes, solve.SetOhm(b, made(b)+f.size))
		case f.kind == stuckContact:
			opt.Changes = append(opt.Changes, solve.CloseBranch(b))
		case f.kind == coilBad:
			opt.Changes = append(opt.Changes, solve.SetOhm(b, made(b)*f.size))
		case f.kind == loadPower:
			was := opt.LoadFactor
			opt.LoadFactor = func(o *circuit.Branch) float64 {
				k := 1.0
				if was != nil {
					k = was(o)
				}
				if o == b {
					k *= f.size
				}
				return k
			}
		case f.kind == swappedWires:
			a, z := b.Wire, f.other.Wire
			an, zn := nearEnd(a, z)
			opt.Changes = append(opt.Changes, solve.OpenBranch(b), solve.OpenBranch(f.other),
				solve.Short(zn, farEnd(a, an), made(b)), solve.Short(an, farEnd(z, zn), made(f.other)))
			for _, load := range f.reversed() { // electronics the wrong way round draw nothing, at best
				opt.Changes = append(opt.Changes, solve.OpenBranch(load))
			}
		}
	}
	return opt
}

// reversed are the loads of constant power whose plus and minus are swapped.
func (f *fault) reversed() (list []*circuit.Branch) {
	a, z := nearEnd(f.branch.Wire, f.other.Wire)
	for _, n := range []*circuit.Node{a, z} {
		for _, t := range n.Terminals {
			if t.Part.Kind != circuit.Load {
				continue
			}
			for _, b := range t.Part.Branches {
				if b.Load != nil && b.Load.Behaves == design.ConstantPower && !slices.Contains(list, b) {
					list = append(list, b)
				}
			}
		}
	}
	return list
}

// nearEnd are the nodes at the part that two swapped wires share.
func nearEnd(a, z *circuit.Wire) (an, zn *circuit.Node) {
	for _, t := range []*circuit.Terminal{a.From, a.To} {
		for _, o := range []*circuit.Terminal{z.From, z.To} {
			if t.Part == o.Part && t.Node != o.Node {
				return t.Node, o.Node
			}
		}
	}
	return a.From.Node, z.From.Node
}

func farEnd(w *circuit.Wire, near *circuit.Node) *circuit.Node {
	if w.From.Node == near {
		return w.To.Node
	}
	return w.From.Node
}

// withOhm is the resistance of a branch, or of a piece of its wire, with faults; ohm is that without.
func withOhm(faults []*fault, b *circuit.Branch, w *circuit.Wire, ohm float64) float64 {
	for _, f := range faults {
		if f.branch != b && f.other != b || w != nil && f.wire != nil && f.wire != w {
			continue
		}
		switch {
		case f.open, f.kind == swappedWires:
			return math.Inf(1)
		case f.resistive():
			ohm += f.size
		case f.kind == coilBad:
			ohm *= f.size
		}
	}
	return ohm
}
