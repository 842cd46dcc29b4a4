// Package cranking works out what a start of the engine leaves of the system voltage:
// what the battery's posts have while the starter turns, in mild air, in the cold and on
// a battery run down, and what each load that is left on gets meanwhile. The starter is
// taken as its cranking current out of the posts. Nothing is judged here.
package cranking

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// Case is a battery and an engine as they are started.
type Case struct {
	Name             string
	CelsiusC, Charge float64
	CurrentA         float64 // of the starter
	PostsV           float64 // while it turns, the least over the situations; NaN = not known
	// FirstV is what the posts have at the first moment, the starter still at rest.
	FirstV float64
	// What that comes from: the battery at rest, its resistance, and what the vehicle draws besides, 0 with a starter of the design.
	RestV, Ohm, VehicleA float64
	Loads                []Load // that are on in some situation, in the circuit's order
	// HeldV is PostsV with the voltage-sensing relays of links to further batteries still closed; NaN = there are none, or it is not known.
	HeldV   float64
	Helpers []Helper // further batteries, in the circuit's order
}

// LeastTurningV is what the posts must have for any starter to turn (our choice).
const LeastTurningV = 1.0

// Turns tells whether the starter turns, as far as is known.
func (k Case) Turns() bool { return !(k.PostsV < LeastTurningV) }

// Load is an accessory that is on while the engine is started.
type Load struct {
	Part  *circuit.Part
	Volts float64 // the least over the situations
	In    *design.Situation
}

// Study is every case; no cases where nothing charges, or no battery or starter is known.
type Study struct {
	Start  battery.Start
	LeastV float64 // that a sound start in mild air leaves at the posts
	RestV  float64 // of the full battery before it, in mild air
	BoardA float64 // that the battery's protection lets through; 0 = it has none
	Cases  []Case
	// Turning are the situations with the starter turning in the first case; Held the same with the sensing
	// relays of links held closed, none without such relays.
	Turning, Held []*solve.Solution

	sensing []*circuit.Branch
}

// Barred tells whether the battery's protection lets less through than the starter takes, by more than rounding.
func (s *Study) Barred() bool {
	return len(s.Cases) > 0 && s.BoardA > 0 && s.Start.CurrentA > s.BoardA*(1+1e-9)
}

// Fails is the first case that a battery at a temperature and charge is no better off in and in which the starter does not turn, the full one
// in mild air for all; nil = none.
func (s *Study) Fails(celsius, charge float64) *Case {
	for i := range s.Cases {
		if k := &s.Cases[i]; !k.Turns() && (i == 0 || celsius <= k.CelsiusC && charge <= k.Charge) {
			return k
		}
	}
	return nil
}

// Compute solves the situations in which the design's own starter turns. Of a design
// without one it solves those with the engine running as they are just before: the key on,
// the engine at rest, the same loads on, and the library's starter at the posts.
func Compute(c *circuit.Circuit) *Study {
	d := c.Design
	s := &Study{Start: battery.StartOf(d), LeastV: least12V * d.NominalV() / 12, BoardA: d.Battery.BoardA()}
	bank, own := battery.Of(d), s.Start.Own
	if bank == nil || s.Start.CurrentA == 0 || !own && s.Start.RatedV != d.NominalV() || !d.Charging.Present() {
		return s
	}
	s.RestV = bank.OpenCircuitV(1, MildC)
	plan, before, linkOhm := solve.Prepare(c), beforeStart(d, own), posts(c).LinkOhm()
	if len(before) == 0 {
		return s
	}
	s.sensing = sensing(c)
	for _, k := range []Case{
		{Name: "mild, full", CelsiusC: MildC, Charge: 1},
		{Name: "cold, full", CelsiusC: ColdC, Charge: 1},
		{Name: "mild, at the start reserve", CelsiusC: MildC, Charge: bank.StartReserve(MildC)},
	} {
		k.CurrentA = s.Start.CurrentA * Ratio(k.CelsiusC)
		k.RestV, k.Ohm = bank.OpenCircuitV(k.Charge, k.CelsiusC), bank.Ohm(k.Charge, k.CelsiusC)
		if !own {
			k.VehicleA = vehicleA(d)
		}
		turn := func(x *design.Situation, times float64, changes ...solve.Change) *solve.Solution {
			opt := solve.Options{NoCharging: true, BatteryOhm: k.Ohm, BatteryV: k.RestV, Changes: changes}
			opt.Pulled = pulledIn(plan.Network(x, opt).Solution())
			if own {
				opt.LoadFactor = func(b *circuit.Branch) float64 {
					if b.Load != nil && b.Load.Load != nil && isStarter(b.Load.Load) {
						return times * Ratio(k.CelsiusC)
					}
					return 1
				}
			} else {
				opt.Drawn = []solve.Draw{{Node: c.Positive(), Amps: math.Min(times*k.CurrentA+k.VehicleA, (k.RestV-LeastLeftV)/(k.Ohm+linkOhm))}}
			}
			return plan.Network(x, opt).Solution()
		}
		turning, held := k.solve(c, before, turn, max(s.Start.Peak, 1), closed(s.sensing))
		if k.help(c, turning, held); len(s.Cases) == 0 {
			s.Turning, s.Held = turning, held
		}
		s.Cases = append(s.Cases, k)
	}
	return s
}

// pulledIn tells of the coils that have pulled in before the voltage dips: a relay holds down to its
// drop-out voltage, which is far below that at which it pulls in.
func pulledIn(rest *solve.Solution) func(*circuit.Branch) bool {
	pulled := map[*circuit.Branch]bool{}
	for i, b := range rest.Circuit.Branches {
		if b.Closer != nil && rest.Status == solve.Converged && rest.Closed[i] && b.Closer.Coil != nil {
			pulled[b.Closer.Coil] = true
		}
	}
	return func(coil *circuit.Branch) bool { return pulled[coil] }
}

// beforeStart are the situations in which a starter of the design turns; without one,
// those with the engine running as they are while it is started.
func beforeStart(d *design.Design, own bool) []*design.Situation {
	var list []*design.Situation
	for _, s := range d.Situations {
		switch {
		case own && slices.ContainsFunc(s.On, isStarter):
			list = append(list, s)
		case !own && circuit.Running(s):
			before := *s
			before.EngineRPM = 0
			list = append(list, &before)
		}
	}
	return list
}

func isStarter(l *design.Load) bool { return l.Type != nil && l.Type.Starter }

// solve fills in the voltages of a case, and gives its solutions as they are and with changes, none without any; turn solves a
// situation with so many times the starter's current.
func (k *Case) solve(c *circuit.Circuit, before []*design.Situation, turn func(s *design.Situation, times float64, changes ...solve.Change) *solve.Solution, peak float64, changes []solve.Change) (list, held []*solve.Solution) {
	posts := posts(c)
	at := map[*circuit.Branch]int{}
	k.PostsV, k.FirstV, k.HeldV = math.NaN(), math.NaN(), math.NaN()
	for _, s := range before {
		turning := turn(s, 1)
		if list = append(list, turning); len(changes) > 0 {
			with := turn(s, 1, changes...)
			held, k.HeldV = append(held, with), lower(k.HeldV, volts(with, posts))
		}
		k.PostsV = lower(k.PostsV, volts(turning, posts))
		k.FirstV = lower(k.FirstV, volts(turn(s, peak), posts))
		for _, b := range c.Branches {
			if b.Load == nil || b.Load.Load == nil || b.Load.Standby || b.OfCharger() != nil || !turning.LoadOn[b.Index] || math.IsNaN(turning.LoadV(b)) {
				continue
			}
			i, known := at[b]
			if !known {
				i = len(k.Loads)
				at[b], k.Loads = i, append(k.Loads, Load{Part: b.Part, Volts: math.Inf(1)})
			}
			if v := volts(turning, b); v < k.Loads[i].Volts { // not of one that is not known
				k.Loads[i].Volts, k.Loads[i].In = v, s
			}
		}
	}
	return list, held
}

// posts is the first battery's branch.
func posts(c *circuit.Circuit) *circuit.Branch {
	return c.Branches[slices.IndexFunc(c.Branches, func(b *circuit.Branch) bool { return b.Kind == circuit.BatteryBranch })]
}

// vehicleA is what the vehicle's own loads draw that run with the engine: ignition and
// fuel pump do while it is started too, the others are taken so.
func vehicleA(d *design.Design) float64 {
	sum := 0.0
	for _, v := range d.VehicleLoads {
		if v.When != design.WhenRunning || len(v.In) > 0 {
			continue
		}
		a := v.CurrentA.Value
		if volts := d.Charging.RegulatedV.Value; v.PowerW.Given() && volts > 0 {
			a = v.PowerW.Value / volts
		}
		sum += a * v.Duty.Or(1)
	}
	return sum
}

// LeastLeftV is what a starter leaves of a battery at the least: it draws no more than
// the battery has.
const LeastLeftV = 0.01

// volts is the voltage across a branch; NaN of what has no operating point.
func volts(s *solve.Solution, b *circuit.Branch) float64 {
	if s.Status != solve.Converged {
		return math.NaN()
	}
	return s.LoadV(b)
}

// lower is the lower of two voltages, either of which may be not known.
func lower(a, b float64) float64 {
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}
