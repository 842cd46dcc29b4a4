package rules

import (
	"iter"
	"slices"
	"sync"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/ride"
	"fusewright/library"
)

// facts is what several rules need of one design, worked out once.
type facts struct {
	in       *Input
	c        *circuit.Circuit
	d        *design.Design
	practice *library.Practice
	usable   []*solve.Solution // the converged ones, by the name of the situation

	positive *circuit.Node   // battery positive post
	battery  *circuit.Branch // its EMF branch; nil without a battery

	coils  map[*circuit.Branch]*circuit.Part // coil branches
	coilOf []*circuit.Branch                 // by part index; nil for others
	cold   []bool                            // nodes joined to battery negative

	guards    []guard                   // by node: what protects it from the source's side
	guardCold []guard                   // by node: what protects returns, from the loads' feeds
	linked    *circuit.Linked           // nil = one battery
	guardTap  map[*circuit.Branch]guard // of what is fed from the middle of a link
	rings     *circuit.Rings            // nil = none
	guardRing map[*circuit.Branch]guard // of what stands in a ring or hangs on one

	guardMachine map[*circuit.Branch]guard // of what the charging system's own stud feeds beside the batteries
	machineFed   []bool                    // by node: those it feeds

	nearest circuit.Guards // by branch: the fuses nearest above
	laid    *warm.Model    // wires where they are laid: allowed current

	aside map[*finding.Finding]aside // findings that another speaks for

	ridden func() []*ride.Result // see ride

	exclusive    *circuit.Exclusive // see apart; nil = not yet known
	keylessKnown *keylessLoads
	ever         *liveness // what can be live at all; see letGo
	heldOff      *liveness // what can be live with no momentary switch held; nil = not yet known
	offBoard     *liveness // what hands can make live with the key off, battery switches open; nil = not yet known
	stuckOn      []bool    // by part index: relays that nothing can release
	mark         []int     // visited stamps for walks
	markNumber   int
}

func newFacts(in *Input) *facts {
	c := in.Circuit
	f := &facts{in: in, c: c, d: c.Design, practice: c.Design.Practice,
		coils:  map[*circuit.Branch]*circuit.Part{},
		aside:  map[*finding.Finding]aside{},
		coilOf: make([]*circuit.Branch, len(c.Parts)),
		mark:   make([]int, len(c.Nodes))}
	f.ridden = sync.OnceValue(f.ride)
	go f.ridden()
	for _, s := range in.Solutions {
		if s.Status == solve.Converged {
			f.usable = append(f.usable, s)
		}
	}
	slices.SortStableFunc(f.usable, func(a, b *solve.Solution) int { return a.Situation.Compare(b.Situation) })
	f.findSource()
	f.findCoils()
	f.cold = f.flood(c.Nodes[0], (*circuit.Branch).TakesBack)
	f.linked, f.rings = c.Linked(), c.Rings()
	f.findGuards()
	f.findStuckRelays()
	f.findAllowances()
	return f
}

func (f *facts) findSource() {
	f.positive = f.c.Positive()
	for _, b := range f.c.Branches {
		if b.Kind == circuit.BatteryBranch {
			f.battery = b
			return
		}
	}
}

func (f *facts) findCoils() {
	for _, b := range f.c.Branches {
		if b.Closer == nil {
			continue
		}
		for _, coil := range []*circuit.Branch{b.Closer.Coil, b.Closer.Break} {
			if coil != nil {
				f.coils[coil] = coil.Part
				f.coilOf[coil.Part.Index] = coil
			}
		}
	}
}

// partsOf lists the parts of a kind in design order.
func (f *facts) partsOf(k circuit.Kind) []*circuit.Part {
	var list []*circuit.Part
	for _, p := range f.c.Parts {
		if p.Kind == k {
			list = append(list, p)
		}
	}
	return list
}

// each goes through the parts of a kind, with what the design says of them.
func each[S design.Part](f *facts) iter.Seq2[*circuit.Part, S] {
	return func(yield func(*circuit.Part, S) bool) {
		for _, p := range f.c.Parts {
			if s, ok := p.Source.(S); ok && !yield(p, s) {
				return
			}
		}
	}
}

// branchesOf lists the branches of a kind in order.
func (f *facts) branchesOf(k circuit.BranchKind) []*circuit.Branch {
	var list []*circuit.Branch
	for _, b := range f.c.Branches {
		if b.Kind == k {
			list = append(list, b)
		}
	}
	return list
}

// loadBranch is the branch in which an accessory draws; nil for other parts.
func loadBranch(p *circuit.Part) *circuit.Branch {
	for _, b := range p.Branches {
		if b.Load != nil && !b.Load.Standby {
			return b
		}
	}
	return nil
}

// accessory is the design's load of a circuit part, nil for other parts.
func accessory(p *circuit.Part) *design.Load {
	l, _ := p.Source.(*design.Load)
	return l
}

// wiresTo lists the wires that end at a terminal.
func wiresTo(t *circuit.Terminal) []*circuit.Wire {
	var list []*circuit.Wire
	if t == nil {
		return nil
	}
	for _, w := range t.Wires {
		if w.To == t {
			list = append(list, w)
		}
	}
	return list
}

// wiresFrom lists the wires that start at a terminal.
func wiresFrom(t *circuit.Terminal) []*circuit.Wire {
	var list []*circuit.Wire
	if t == nil {
		return nil
	}
	for _, w := range t.Wires {
		if w.From == t {
			list = append(list, w)
		}
	}
	return list
}

// limitSource prints where a limit of the practice comes from, or that the
// design sets it.
func (f *facts) limitSource(key string, given bool) string {
	if given {
		return "limit set by the design"
	}
	if s, ok := f.practice.Source[key]; ok {
		return s.String()
	}
	return ""
}
