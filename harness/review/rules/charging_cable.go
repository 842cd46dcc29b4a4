package rules

import (
	"math"
	"slices"

	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// chargingCable is the way between the charging system and the batteries that the design
// says: the branches between the machine and the posts, then its return; nil where it says none.
func (f *facts) chargingCable() (way []*circuit.Branch) {
	for _, part := range f.partsOf(circuit.Generator) {
		way = append(way, f.fromStud()...)
		for n := part.Terminal("B+").Node; !f.c.IsPost(n) && len(n.FedBy()) > 0; n = n.FedBy()[0].A {
			way = append(way, n.FedBy()[0])
		}
		way = append(way, f.machineReturn(part)...)
	}
	return way
}

func (f *facts) machineReturn(part *circuit.Part) (way []*circuit.Branch) {
	for n := part.Terminal("B-").Node; n != f.c.Negative() && len(n.ReturnsBy()) > 0; n = n.ReturnsBy()[0].B {
		way = append(way, n.ReturnsBy()[0])
	}
	return way
}

// fromStud are the branches that lead from the charging system's own stud to the posts.
func (f *facts) fromStud() (list []*circuit.Branch) {
	for _, b := range f.waysFromStudAll() {
		for _, x := range append(f.c.MainFeed(b.A).Branches, b) {
			if !slices.Contains(list, x) {
				list = append(list, x)
			}
		}
	}
	return list
}

// waysFromStudAll are waysFromStud of every post.
func (f *facts) waysFromStudAll() (list []*circuit.Branch) {
	for _, post := range f.c.Posts() {
		list = append(list, f.waysFromStud(post)...)
	}
	return list
}

// waysFromStud are the branches by which a post is charged from the charging system's own stud.
func (f *facts) waysFromStud(post *circuit.Node) (list []*circuit.Branch) {
	for _, b := range post.FedBy() {
		if slices.ContainsFunc(f.c.ChargersAbove(b.A), (*circuit.Part).Studded) {
			list = append(list, b)
		}
	}
	return list
}

// chargedByEngine tells of a post that the charging system reaches without a charger between.
func (f *facts) chargedByEngine(post *circuit.Node) bool {
	return len(f.c.Links(post))+len(f.waysFromStud(post)) > 0
}

// fromEngineA is what a further battery's post takes from the charging system in a solution.
func (f *facts) fromEngineA(s *solve.Solution, post *circuit.Node) (amps float64) {
	for _, b := range f.c.Links(post) {
		amps += s.LinkA(f.c, b)
	}
	for _, b := range f.waysFromStud(post) {
		amps += s.Amps(b)
	}
	return amps
}

// chargerCable is the way between the output of a charger and the battery that it charges, and back; of a converter
// all before the fuses of what it feeds.
func (f *facts) chargerCable(out *circuit.Branch) (way []*circuit.Branch) {
	plus, minus := f.c.Supply(out.A)
	if out.OfCharger().Converts() {
		way, minus = f.unfusedFrom(out.A), f.c.Negative()
	}
	for n := out.A; n != plus && len(n.FeedsOn()) > 0 && !f.c.IsPost(n); n = n.FeedsOn()[0].B {
		way = append(way, n.FeedsOn()[0])
	}
	for n := out.B; n != minus && n != f.c.Negative() && len(n.ReturnsBy()) > 0; n = n.ReturnsBy()[0].B {
		way = append(way, n.ReturnsBy()[0])
	}
	return way
}

// unfusedFrom are the branches that a node feeds, but for fuses and what is behind them.
func (f *facts) unfusedFrom(n *circuit.Node) (list []*circuit.Branch) {
	f.below(n, func(b *circuit.Branch) bool {
		fused := b.Kind == circuit.FuseBranch
		if !fused && b.Feeds() {
			list = append(list, b)
		}
		return !fused
	})
	return list
}

// chargeLost is what a battery misses of the voltage at the charging system's stud at its greatest hot output.
type chargeLost struct {
	battery *circuit.Part
	volts   float64
	kneeV   float64 // of them what diodes lose at any current
	diode   *circuit.Part
	wire    *circuit.Wire
}

// chargingLost is that of each battery whose way the design says.
func (f *facts) chargingLost() (list []chargeLost) {
	_, hotA := charging.MostA(&f.d.Charging)
	add := func(battery *circuit.Part, way []*circuit.Branch) {
		x := chargeLost{battery: battery}
		if x.volts, x.wire = f.lostAlong(way, hotA); x.wire == nil {
			return
		}
		for _, b := range way {
			if b.Diode != nil {
				x.kneeV, x.diode = x.kneeV+b.Diode.Type.KneeV, b.Part
			}
		}
		list = append(list, x)
	}
	stud := f.c.Stud()
	if stud == nil {
		add(f.battery.Part, f.chargingCable())
		return list
	}
	back := f.machineReturn(f.partsOf(circuit.Generator)[0])
	for _, post := range f.c.Posts() {
		for _, b := range f.waysFromStud(post) {
			add(storeAt(post), slices.Concat(f.c.MainFeed(b.A).Branches, []*circuit.Branch{b}, back))
		}
	}
	return list
}

// storeAt is the battery with a post at a node.
func storeAt(post *circuit.Node) *circuit.Part {
	i := slices.IndexFunc(post.Branches, func(b *circuit.Branch) bool { return b.Kind == circuit.BatteryBranch && b.A == post })
	return post.Branches[i].Part
}

// lostAlong is what a way loses of a current, contacts and fuses included, its wires as warm as the
// current makes them, and the wire that loses most.
func (f *facts) lostAlong(way []*circuit.Branch, amps float64) (lostV float64, most *circuit.Wire) {
	worst := math.Inf(-1)
	for _, b := range way {
		ohm := f.laid.Ohm(b, amps)
		if lostV += ohm * amps; b.Diode != nil {
			lostV += b.Diode.Type.KneeV
		}
		if b.Wire != nil && ohm > worst {
			worst, most = ohm, b.Wire
		}
	}
	return lostV, most
}
