package diagnosis

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design/edit"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
)

// Measured is a figure of the design that the readings know better.
type Measured struct {
	What   string        `json:"what"`
	Was    string        `json:"was"`
	Value  string        `json:"value"`
	Within string        `json:"within"` // ±, twice the standard deviation
	From   string        `json:"from"`
	Set    []edit.Change `json:"set"`
}

// narrower is how much less uncertain a figure must have become to be offered.
const narrower = 0.6

// measured are loads, the machine's own draw and batteries as the readings have them, by the same
// least squares: what is uncertain moves to where the readings pull it. What a doubted reading or an
// unresolved fault bears on is withheld.
func (m *model) measured(d *Diagnosis, f *fit, live []*candidate) {
	if f.chol == nil || f.point == nil {
		return
	}
	var free [][]float64
	for _, x := range f.faults {
		if d := m.sizeOf(f.point, x); d != nil {
			free = append(free, d)
		}
	}
	for k := range m.spreads {
		s := &m.spreads[k]
		if s.branch == nil || s.source || s.sd == 0 || !s.load && s.branch.Kind != circuit.BatteryBranch || s.state >= 0 {
			continue
		}
		g := make([]float64, len(m.sensors))
		moves := false
		for i := range g {
			g[i] = f.grad[i][k]
			moves = moves || g[i] != 0
		}
		if !moves {
			continue
		}
		known := f.product(g, g)
		for _, d := range free { // what the size of a fault takes for itself
			x := f.product(g, d)
			known -= x * x / f.product(d, d)
		}
		left := 1 - known
		if !(left < narrower*narrower) {
			continue
		}
		shift := f.product(g, f.rest) * s.sd
		sd := s.sd * math.Sqrt(math.Max(left, 0))
		for _, x := range f.faults {
			if x.branch == s.branch {
				sd = math.NaN() // it is at fault, and no figure of the design
			}
		}
		x := m.offer(s, shift, sd)
		if x == nil || math.IsNaN(sd) {
			continue
		}
		if why := m.doubt(s, g, f, live); why != "" {
			d.Withheld = append(d.Withheld, &Withheld{x.What, why})
			continue
		}
		d.Measured = append(d.Measured, x)
	}
	m.charging(d, live)
}

// sizeOf is how the sensors move with a fault's free size; nil = it has none, or nothing moves.
func (m *model) sizeOf(p *point, f *fault) []float64 {
	if !f.free {
		return nil
	}
	d := m.direction(p, f)
	if !slices.ContainsFunc(d, func(x float64) bool { return x != 0 }) {
		return nil
	}
	return d
}

// offer makes the line of a figure.
func (m *model) offer(s *spread, shift, sd float64) *Measured {
	b := s.branch
	x := &Measured{From: "all readings together"}
	if s.load && !(1+shift > 0) {
		return nil
	}
	within := func(v float64) string { return "± " + quantity.Format(v, quantity.Share) }
	switch {
	case b.Load == nil:
		ohm := b.Ohm + shift
		if !(ohm > 0) {
			return nil
		}
		x.What, x.Was, x.Value, x.Within = "inner resistance of "+m.partName(b.Part), quantity.Format(b.Ohm, quantity.Resistance), quantity.Brief(ohm, quantity.Resistance), within(2*sd/ohm)
		if b.A == m.c.Positive() {
			x.Set = []edit.Change{{Path: []string{"battery"}, Key: "resistance", Value: x.Value}}
		} else {
			x.Set = []edit.Change{{Path: []string{"batteries", b.Part.Name}, Key: "resistance", Value: x.Value}}
		}
	case b.Load.Vehicle != nil:
		v := b.Load.Vehicle
		x.What, x.Within = "the machine's own draw: "+v.Name, within(2*sd/(1+shift))
		path := []string{"vehicle loads", v.Name}
		if v.CurrentA.Given() {
			x.Was, x.Value = v.CurrentA.Text, quantity.Brief(v.CurrentA.Value*(1+shift), quantity.Current)
			x.Set = []edit.Change{{Path: path, Key: "current", Value: x.Value}}
		} else {
			x.Was, x.Value = quantity.Brief(b.Load.PowerW, quantity.Power), quantity.Brief(b.Load.PowerW*(1+shift), quantity.Power)
			x.Set = []edit.Change{{Path: path, Key: "power", Value: x.Value}}
		}
	case b.Load.Load != nil && !b.Load.Standby:
		share := math.Max(0.01, 2*sd/(1+shift))
		x.What, x.Was, x.Value = "power of "+m.partName(b.Part), quantity.Brief(b.Load.PowerW, quantity.Power), quantity.Brief(b.Load.PowerW*(1+shift), quantity.Power)
		x.Within = within(share)
		path := []string{"loads", b.Load.Load.Name}
		x.Set = []edit.Change{{Path: path, Key: "power", Value: x.Value}, {Path: path, Key: "tolerance", Value: quantity.Brief(math.Ceil(100*share)/100, quantity.Share)}}
	default:
		return nil
	}
	return x
}

// charging are the regulated voltage and the output that were read on a drive.
func (m *model) charging(d *Diagnosis, live []*candidate) {
	regulated := m.c.Design.Charging.RegulatedV.Value
	for _, s := range append(slices.Clone(m.sensors), m.aside...) {
		if s.state < 0 || s.Check != nil || !(s.Reading.Engine > 0) || regulated == 0 {
			continue
		}
		at := quantity.Plain(s.Reading.Engine, quantity.Speed)
		if b := s.probe.Amps; b != nil && b.Kind == circuit.ChargerBranch {
			sd := math.Hypot(share(m.meter, s.gain)*s.y, noise(m.meter, s.gain, s.y))
			x := &Measured{What: "charging output at " + at, Was: "by the curve of the design", Value: quantity.Brief(s.y, quantity.Current),
				Within: "± " + quantity.Format(2*sd, quantity.Current), From: "reading " + s.name()}
			if posts := m.postsAt(s); posts > 0 && posts < regulated-m.tol.RegulatedV { // all that it can: else it gives what is asked for
				x.Set = []edit.Change{{Path: []string{"charging", "output"}, Key: at, Value: x.Value}}
			} else {
				x.From += fmt.Sprintf("; the posts are not below %s, so it may give more", quantity.Brief(regulated-m.tol.RegulatedV, quantity.Voltage))
			}
			if why := m.wrongOf(live, func(i int) bool { return m.sensors[i].state == s.state }); why != "" || !(s.y > 0) {
				d.Withheld = append(d.Withheld, &Withheld{x.What, cmp.Or(why, "reading "+s.name()+" shows nothing")})
			} else {
				d.Measured = append(d.Measured, x)
			}
		}
		if len(s.probe.Volts) == 1 && s.probe.Volts[0].Plus == m.c.Positive() && s.probe.Volts[0].Minus == m.c.Negative() && math.Abs(s.y-regulated) <= m.tol.RegulatedV {
			sd := math.Hypot(share(m.meter, volts)*s.y, noise(m.meter, volts, s.y))
			value := quantity.Brief(places(s.y, 1), quantity.Voltage)
			if why := m.wrongOf(live, func(i int) bool { return m.sensors[i] == s }); why != "" {
				d.Withheld = append(d.Withheld, &Withheld{"regulated voltage at " + at, why})
				continue
			}
			d.Measured = append(d.Measured, &Measured{What: "regulated voltage at " + at, Was: m.c.Design.Charging.RegulatedV.Text, Value: value,
				Within: "± " + quantity.Format(2*sd, quantity.Voltage), From: "reading " + s.name(),
				Set: []edit.Change{{Path: []string{"charging"}, Key: "regulated", Value: value}}})
		}
	}
}

// postsAt is what was read at the posts in the state of a sensor; 0 = nothing.
func (m *model) postsAt(s *sensor) float64 {
	for _, o := range m.sensors {
		if o.state == s.state && len(o.probe.Volts) == 1 && o.probe.Volts[0].Plus == m.c.Positive() && o.probe.Volts[0].Minus == m.c.Negative() {
			return o.y
		}
	}
	return 0
}
