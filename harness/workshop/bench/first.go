package bench

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// The supply that stands in for the battery at first power.
const (
	supplyShare = 1.05 // of the system voltage: a rested battery
	supplyOhm   = 0.010
	leastSetA   = 0.5  // smallest limit worth setting
	darkA       = 0.15 // below it a 21 W lamp in place of the fuse stays dark
)

// firstPower puts a limited supply or a lamp in place of each fuse that stands
// first behind the battery, the others of them out.
func (m *maker) firstPower() []*Section {
	first := m.firstFuses()
	s := &Section{Kind: FirstPower, Title: "First power: limited current in place of the first fuse"}
	if len(first) == 0 {
		s.Trouble = "No fuse comes first after the battery, so there is no safe place to limit the current. " +
			"Do not put power to this harness."
		return []*Section{s}
	}
	s.Setup = []string{
		fmt.Sprintf("Take out every fuse in this list. One at a time, put the supply's plus on the load side of its holder and its "+
			"minus on battery negative: %s, current limit as listed. Loads off at their own switches where they have one.",
			quantity.Plain(m.supplyV(), quantity.Voltage)),
		"Or with the battery: a 21 W filament lamp across the holder. It stays dark where the list says so; where it says " +
			"“supply only” the lamp would glow without fault.",
		"Stop when the supply goes into its limit, the reading exceeds the maximum, or anything gets warm. " +
			"When all are passed, the fuses go in.",
	}
	if m.c.Linked() != nil {
		s.Setup = append(s.Setup, "Of the fuses of a charging link, the load side is the one away from the battery at which the fuse stands. "+
			"Both stay out until each has passed: the other battery feeds the link too.")
	}
	unplugged := &Group{Title: "Key off, loads unplugged"}
	keyed := &Group{Title: "Key on, loads unplugged, every switch off"}
	plugged := &Group{Title: "Key on, loads plugged in, every switch off (only where that draws more)"}
	without := m.supplied(on, solve.Options{}, nil, first, false)
	for _, f := range first {
		rest, before, after := m.limited(off, f, first, false), m.limited(on, f, first, false), m.limited(on, f, first, true)
		unplugged.Checks = append(unplugged.Checks, rest)
		if m.wakes(without, f, first) {
			keyed.Checks = append(keyed.Checks, before)
		}
		if after.Text != "" || after.Nominal > before.Nominal+SupplyFixedA {
			plugged.Checks = append(plugged.Checks, after)
		}
	}
	s.Groups = []*Group{unplugged}
	for _, g := range []*Group{keyed, plugged} {
		if len(g.Checks) > 0 {
			s.Groups = append(s.Groups, g)
		}
	}
	return []*Section{s}
}

// wakes tells whether the key lets the supply in place of a fuse reach more than without
// it: what comes alive neither with the key off nor, with it on, without this fuse. Else the
// reading with the key off has shown all that there is behind it.
func (m *maker) wakes(without *solve.Solution, f *circuit.Branch, first []*circuit.Branch) bool {
	resting, keyed := m.supplied(off, solve.Options{}, f, first, false), m.supplied(on, solve.Options{}, f, first, false)
	if without.Status != solve.Converged || resting.Status != solve.Converged || keyed.Status != solve.Converged {
		return true
	}
	for i, v := range keyed.NodeV {
		if math.Abs(v) > deadV && !(math.Abs(resting.NodeV[i]) > deadV) && !(math.Abs(without.NodeV[i]) > deadV) {
			return true
		}
	}
	return false
}

// off and on are the states of the key at first power.
var off, on = &design.Situation{Name: "key off", Key: design.KeyOff}, &design.Situation{Name: "key on", Key: design.KeyOn}

func (m *maker) supplyV() float64 { return supplyShare * m.d.NominalV() }

// firstFuses are the fuses that current from a battery meets first, of a link one at each
// end; factory fuses belong to the machine.
func (m *maker) firstFuses() []*circuit.Branch {
	guards, linked := m.c.Guards(), m.c.Linked()
	var list []*circuit.Branch
	for _, b := range m.c.Branches {
		g := guards[b.Index]
		first := g.Bare && !g.Unfed || linked != nil && linked.Bare[b.Index]
		if first && b.Kind == circuit.FuseBranch && !b.Fuse.Factory {
			list = append(list, b)
		}
	}
	return list
}

// limited is the reading of the supply in place of one fuse, with the other
// first fuses out and the accessories plugged in or not.
func (m *maker) limited(state *design.Situation, f *circuit.Branch, first []*circuit.Branch, plugged bool) *Check {
	check := &Check{Ref: f.Fuse.Ref, Name: f.Part.Name, Quantity: quantity.Current,
		Nominal: nan(), Low: nan(), High: nan(), Basis: basisSupply}
	sp := spread{nominal: m.supplied(state, solve.Options{}, f, first, plugged)}
	if !sp.ok() {
		check.Text = "no result: " + string(sp.nominal.Status)
		return check
	}
	for corner := range 4 { // the supply is set as well as a regulator holds
		heavy, side := corner&1 != 0, float64(corner&2)-1
		opt := m.supply(m.corner(heavy, heavy), f, first, plugged)
		opt.BatteryV += side * m.tol.RegulatedV
		if sol := m.plan.Network(state, opt).Solution(); sol.Status == solve.Converged {
			sp.corners = append(sp.corners, sol)
		}
	}
	nominal, low, high := sp.of(func(s *solve.Solution) float64 { return math.Abs(s.Amps(f)) })
	check.Nominal = nominal
	check.Low, check.High = widen(low, high, SupplyShare, SupplyFixedA)
	check.Probe = &Probe{Amps: f, Situation: state, Options: m.supply(solve.Options{}, f, first, plugged)}
	check.SetA = setting(check.High, f.Fuse.Rating.RatingA)
	check.Where = "lamp dark"
	if check.High > darkA {
		check.Where = "supply only"
	}
	return check
}

// supplied solves the supply in place of one fuse, of none for nil.
func (m *maker) supplied(state *design.Situation, opt solve.Options, f *circuit.Branch, first []*circuit.Branch, plugged bool) *solve.Solution {
	return m.plan.Network(state, m.supply(opt, f, first, plugged)).Solution()
}

// supply are the options of that supply.
func (m *maker) supply(opt solve.Options, f *circuit.Branch, first []*circuit.Branch, plugged bool) solve.Options {
	for _, o := range first {
		if o != f {
			opt.Changes = append(opt.Changes, solve.OpenBranch(o))
		}
	}
	for _, b := range m.c.Branches {
		if !plugged && b.Load != nil && b.Load.Load != nil {
			opt.Changes = append(opt.Changes, solve.OpenBranch(b))
		}
	}
	opt.NoCharging, opt.BatteryV, opt.BatteryOhm = true, m.supplyV(), supplyOhm
	return opt
}

// setting is the limit of the supply: a fifth over the largest good reading, in
// steps of a tenth, and never above the fuse.
func setting(highA, fuseA float64) float64 {
	set := math.Max(leastSetA, math.Ceil(12*highA-1e-9)/10)
	if fuseA > 0 {
		set = math.Min(set, fuseA)
	}
	return set
}
