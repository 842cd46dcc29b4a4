package diagnosis

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// sums write out how the size of one bad joint follows from the reading that shows it most. Every
// value is worked out from the rounded ones before it, so that the lines multiply out. The second return
// is the size they come to, in ohms; 0 = none.
func (m *model) sums(sound, f *fit) ([]Sum, float64) {
	if len(f.faults) != 1 || f.point == nil || !f.faults[0].resistive() || f.faults[0].open {
		return nil, 0
	}
	i := m.strongest(sound, f, func(s *sensor) bool {
		return s.state < 0 && s.probe.Coil == nil || s.Check != nil && s.Check.Below
	})
	if i < 0 {
		return nil, 0
	}
	s := m.sensors[i]
	if s.state < 0 {
		read, built := places(s.y, 2), places(sound.pred[i], 2)
		if math.IsInf(s.Value, 0) || read == built {
			return nil, 0
		}
		ohm := places(read-built, 2)
		return []Sum{{"too much", ohmText(read) + " − " + ohmText(built), ohmText(ohm), "read at check " + s.name() + ", less what it has as built"}}, ohm
	}
	return m.lost(f, s)
}

// sameSize is how far the size by one reading and by all may lie apart, by rounding, to be said as one.
const sameSize, sameSizeOhm = 0.05, 0.01

// sized says the size of a fault once: as the sums come to it where all readings together give the
// same but for rounding; else those get a line of their own.
func (m *model) sized(sound, f *fit) (text string, sums []Sum) {
	sums, ohm := m.sums(sound, f)
	if ohm <= 0 {
		return m.words(f.faults), sums
	}
	size := f.faults[0].size
	if math.Abs(ohm-size) <= math.Max(sameSizeOhm, sameSize*size) {
		return m.words([]*fault{f.faults[0].sized(ohm)}), sums
	}
	return m.words(f.faults), append(sums, Sum{"by all readings together", "", sizeText(size), "the likeliest size"})
}

// lost are the sums of a load's or block's volts below the posts.
func (m *model) lost(f *fit, s *sensor) (list []Sum, ohm float64) {
	if s.Check == nil || !s.Check.Below {
		return nil, 0
	}
	posts := m.postsRead(s)
	if posts == nil {
		return nil, 0
	}
	fault := f.faults[0]
	sol := f.sols[s.state]
	amps := math.Abs(sol.Amps(fault.branch))
	from, at := places(posts.y, 2), places(s.y, 2)
	read := places(from-at, 2)
	built := places(f.pred[m.index(posts)]-f.pred[m.index(s)]-amps*fault.size, 2)
	extra := places(read-built, 2)
	if built < 0 || !(extra > 0) {
		return nil, 0
	}
	volts := func(v float64) string { return quantity.Fixed(v, 2) + " V" }
	list = append(list, Sum{"lost, read", volts(from) + " − " + volts(at), volts(read), "between the posts and " + s.Check.Ref + ", in " + m.states[s.state].label},
		Sum{"lost as built", "", volts(built), "what a sound one loses with these currents"},
		Sum{"too much", volts(read) + " − " + volts(built), volts(extra), ""})
	current, sum, note := places(amps, 2), "", "by the circuit, with this fault"
	if load := m.only(fault.branch, s); load != nil && load.Load.Behaves == design.ConstantPower {
		sum, note = quantity.Brief(load.Load.PowerW, quantity.Power)+" ÷ "+volts(at), "it keeps its power"
		current = places(load.Load.PowerW/at, 2)
	}
	if !(current > 0) {
		return list, 0
	}
	amp := quantity.Fixed(current, 2) + " A"
	ohm = places(extra/current, 2)
	return append(list, Sum{"current", sum, amp, note},
		Sum{"resistance", volts(extra) + " ÷ " + amp, ohmText(ohm), ""},
		Sum{"heat in the joint", volts(extra) + " × " + amp, quantity.Fixed(extra*current, 1) + " W", ""}), ohm
}

// only is the load that a branch serves alone, at which a sensor reads; nil = it serves more.
func (m *model) only(b *circuit.Branch, s *sensor) *circuit.Branch {
	for _, x := range m.c.Branches {
		if x.Load == nil || x.Load.Standby || x.Part == nil || s.Check == nil || x.Part.Ref != s.Check.Ref {
			continue
		}
		if b.Wire != nil && b.Wire.Owner() == x.Part {
			return x
		}
	}
	return nil
}

// postsRead is the reading at the posts against which a sensor is.
func (m *model) postsRead(s *sensor) *sensor {
	for _, p := range m.sensors {
		if p.state == s.state && p.Check != nil && p.Check.Posts() && p.probe.Volts[0].Plus == s.Check.Supply {
			return p
		}
	}
	return nil
}

func (m *model) index(s *sensor) int {
	for i, x := range m.sensors {
		if x == s {
			return i
		}
	}
	return -1
}

// sizeText is the size of a joint in two figures.
func sizeText(v float64) string {
	if v >= 0.1 {
		return ohmText(places(v, 2))
	}
	return quantity.Brief(places(v, 3), quantity.Resistance)
}

func ohmText(v float64) string { return quantity.Fixed(v, 2) + " Ω" }

// places rounds to so many decimals.
func places(v float64, n int) float64 {
	k := math.Pow(10, float64(n))
	return math.Round(v*k) / k
}
