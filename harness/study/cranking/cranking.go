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
	CurrentA         float64 // of the starter that turns
	FlowsA           float64 // through the starter: less where it stands
	PostsV           float64 // while it turns, the least over the situations; NaN = not known
	StarterV         float64 // at the starter: of the design's at its terminals, else at the posts
	NeedsV           float64 // at which it turns the engine
	// FirstV is what the posts have at the first moment, the starter still at rest.
	FirstV float64
	// What that comes from: the battery at rest, its resistance, and what the vehicle draws besides, 0 with a starter of the design.
	RestV, Ohm, VehicleA float64
	DrawnA               float64         // by starter and vehicle: less than theirs by a starter that stands; 0 with one of the design
	Loads                []Load          // that are on in some situation, in the circuit's order
	On                   []*circuit.Part // the loads but the starter that are on where the posts have PostsV
	Drops                []*circuit.Part // relays that let go meanwhile, in the circuit's order
	// HeldV is PostsV with the voltage-sensing relays of links to further batteries still closed; NaN = there are none, or it is not known.
	HeldV   float64
	Helpers []Helper // further batteries, in the circuit's order
}

// Turns tells whether the starter turns the engine, as far as is known.
func (k Case) Turns() bool { return !(k.StarterV < k.NeedsV) }

// assumedStart is the share of its minimum voltage below which a load resets for sure,
// where the starter is the library's and its current from memory (our choice).
const assumedStart = 0.95

// Resets tells of electronics that lose their memory or restart while the engine is started in mild air: they get less than they need.
// What needs more than the full battery has at rest is not the start's.
func (s *Study) Resets(x Load) bool {
	l, ok := x.Part.Source.(*design.Load)
	if !ok || l.Starts() || !l.Sign.Electronic() {
		return false
	}
	sure, needs := 1.0, l.NeedsV()
	if s.Start.Assumed {
		sure = assumedStart
	}
	const rounding = 1e-9
	return needs*sure > x.Volts*(1+rounding) && needs < s.RestV*(1-rounding)
}

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
	// Suits tells that the starter is known, or that a sound battery of this size, by its chemistry, starts well with the one that is assumed.
	Suits  bool
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
// without one it solves those with the key on and the engine at rest, where it has none those with the engine running as they are
// just before, and the library's starter at the posts. What is on for moments is not on: nobody hauls an anchor while cranking.
func Compute(c *circuit.Circuit) *Study {
	d := c.Design
	s := &Study{Start: battery.StartOf(d), LeastV: least12V * d.NominalV() / 12, BoardA: d.Battery.BoardA()}
	bank, own := battery.Of(d), s.Start.Own
	if bank == nil || s.Start.CurrentA == 0 || !own && s.Start.RatedV != d.NominalV() || !d.Charging.Present() {
		return s
	}
	s.RestV = bank.OpenCircuitV(1, MildC)
	s.Suits = !s.Start.Assumed || !s.Start.Large && s.RestV-(s.Start.CurrentA+vehicleA(d))*bank.Sound().Ohm(1, MildC) >= s.LeastV
	plan, before := solve.Prepare(c), beforeStart(c, own)
	if len(before) == 0 {
		return s
	}
	s.sensing = sensing(c)
	for _, k := range []Case{
		{Name: "mild, full", CelsiusC: MildC, Charge: 1},
		{Name: "cold, full", CelsiusC: ColdC, Charge: 1},
		{Name: "mild, at the start reserve", CelsiusC: MildC, Charge: bank.StartReserve(MildC)},
	} {
		k.CurrentA, k.NeedsV = s.Start.CurrentA*Ratio(k.CelsiusC), needsV(s.Start, d)
		k.RestV, k.Ohm = bank.OpenCircuitV(k.Charge, k.CelsiusC), bank.Ohm(k.Charge, k.CelsiusC)
		if k.FlowsA = k.CurrentA; !own {
			k.VehicleA = vehicleA(d)
		}
		// What a starter starves goes on along its fold: a start lasts seconds, and its voltage is wanted all the same.
		usual := solve.Options{NoCharging: true, BatteryOhm: k.Ohm, BatteryV: k.RestV, AcceptFolded: true}
		turn := func(x *design.Situation, times float64, changes ...solve.Change) (t turning) {
			opt := usual
			opt.Changes = changes
			var held *design.Situation
			held, t.rest, t.pulled = Begin(plan, x, opt)
			opt.Pulled = func(coil *circuit.Branch) bool { return t.pulled[coil] }
			if own {
				opt.LoadFactor = starting(times * Ratio(k.CelsiusC))
				t.Solution = plan.Network(held, opt).Solution()
				return t
			}
			full := times*k.CurrentA + k.VehicleA
			t.drawnA = full * standing(solve.TorqueEdge*s.Start.RatedV, func(share float64) float64 {
				opt.Drawn = []solve.Draw{{Node: c.Positive(), Amps: share * full}}
				t.Solution = plan.Network(x, opt).Solution()
				return volts(t.Solution, posts(c))
			})
			return t
		}
		turning, held := k.solve(c, before, turn, max(s.Start.Peak, 1), closed(s.sensing))
		if k.help(c, turning, held); len(s.Cases) == 0 {
			s.Turning, s.Held = turning, held
		}
		s.Cases = append(s.Cases, k)
	}
	return s
}

// turning is a situation with the starter turning.
type turning struct {
	*solve.Solution
	rest   *solve.Solution          // before it draws
	pulled map[*circuit.Branch]bool // coils that have pulled in there
	drawnA float64                  // by the library's starter and the vehicle
}

// on tells of a load that is on before or meanwhile.
func (t turning) on(b *circuit.Branch) bool { return t.LoadOn[b.Index] || t.rest.On(b) }

// loads are the accessories but the starter that are on.
func (t turning) loads() (list []*circuit.Part) {
	for _, b := range t.Circuit.Branches {
		if b.Load != nil && b.Load.Load != nil && !b.Load.Standby && b.OfCharger() == nil && !isStarterBranch(b) && t.on(b) {
			list = append(list, b.Part)
		}
	}
	return list
}

// volts is what a load has; nothing of one that went out.
func (t turning) volts(b *circuit.Branch) float64 {
	v := volts(t.Solution, b)
	if math.IsNaN(v) && t.Status == solve.Converged {
		return 0
	}
	return v
}

// Begin is a situation as the design's starter begins to turn in it: solved in the moment before it draws, with the coils that have
// pulled in by then; and the situation with the relays before the starter held.
func Begin(plan *solve.Plan, x *design.Situation, opt solve.Options) (held *design.Situation, rest *solve.Solution, pulled map[*circuit.Branch]bool) {
	opt.LoadFactor = starting(atRest)
	rest = plan.Network(x, opt).Solution()
	pulled = pulledIn(rest)
	return holding(rest.Circuit, x, pulled), rest, pulled
}

// pulledIn are the coils that have pulled in before the voltage dips: a relay holds down to its
// drop-out voltage, which is far below that at which it pulls in.
func pulledIn(rest *solve.Solution) map[*circuit.Branch]bool {
	pulled := map[*circuit.Branch]bool{}
	for i, b := range rest.Circuit.Branches {
		if b.Closer != nil && rest.Status == solve.Converged && rest.Closed[i] && b.Closer.Coil != nil {
			pulled[b.Closer.Coil] = true
		}
	}
	return pulled
}

// atRest is the share of its current that a starter draws in the moment before it turns.
const atRest = 1e-6

// starting has the design's starters draw so many times their current.
func starting(times float64) func(*circuit.Branch) float64 {
	return func(b *circuit.Branch) float64 {
		if isStarterBranch(b) {
			return times
		}
		return 1
	}
}

// Times is how many times its current each branch draws in a start at a temperature: a starter more in the cold.
func Times(celsius float64) func(*circuit.Branch) float64 { return starting(Ratio(celsius)) }

func isStarterBranch(b *circuit.Branch) bool {
	return b.Load != nil && b.Load.Load != nil && !b.Load.Standby && b.Load.Load.Starts()
}

// holding is a situation in which the relays before the starter stay closed once they have pulled in: one that lets go
// pulls in again at once, which has no operating point. Whether they let go is told by their coils.
func holding(c *circuit.Circuit, x *design.Situation, pulled map[*circuit.Branch]bool) *design.Situation {
	held := *x
	held.Held = slices.Clip(x.Held)
	for _, b := range c.Branches {
		if !isStarterBranch(b) {
			continue
		}
		for _, contact := range c.NeededBy(b) {
			if r, ok := contact.Part.Source.(*design.Relay); ok && contact.Closer.Coil != nil && pulled[contact.Closer.Coil] {
				held.Held = append(held.Held, r)
			}
		}
	}
	return &held
}

// standing is the share of its current that a starter draws of which the posts have postsV: all of it while it turns, and
// below the edge, where it stands and is its armature's resistance, as much as that lets through.
func standing(edgeV float64, postsV func(share float64) float64) float64 {
	if !(postsV(1) < edgeV) {
		return 1
	}
	low, high := 0.0, 1.0
	for range 30 {
		mid := (low + high) / 2
		if postsV(mid) > mid*edgeV {
			low = mid
		} else {
			high = mid
		}
	}
	postsV(low)
	return low
}

// needsV is at what voltage a starter turns the engine; the usual one's where its own is not known.
func needsV(s battery.Start, d *design.Design) float64 {
	if s.NeedsV > 0 {
		return s.NeedsV
	}
	return turns12V * d.NominalV() / 12
}

// beforeStart are the situations in which a starter of the design turns; without one, those with the key on and the engine at
// rest, else those with the engine running as they are before it does, in both without what is on for moments.
func beforeStart(c *circuit.Circuit, own bool) (list []*design.Situation) {
	pick := func(holds func(*design.Situation) bool) {
		for _, s := range c.Design.Situations {
			if holds(s) {
				list = append(list, s)
			}
		}
	}
	if own {
		pick((*design.Situation).Cranks)
		return list
	}
	if pick(func(s *design.Situation) bool { return s.Key == design.KeyOn && s.EngineRPM == 0 }); len(list) == 0 {
		pick(circuit.Running)
	}
	brief := c.ForMoments()
	for i, s := range list {
		before := *s
		before.EngineRPM, before.On = 0, slices.DeleteFunc(slices.Clone(s.On), brief)
		list[i] = &before
	}
	return list
}

// solve fills in the voltages of a case, and gives its solutions as they are and with changes, none without any; turn solves a
// situation with so many times the starter's current.
func (k *Case) solve(c *circuit.Circuit, before []*design.Situation, turn func(s *design.Situation, times float64, changes ...solve.Change) turning, peak float64, changes []solve.Change) (list, held []*solve.Solution) {
	posts := posts(c)
	at := map[*circuit.Branch]int{}
	k.PostsV, k.StarterV, k.FirstV, k.HeldV = math.NaN(), math.NaN(), math.NaN(), math.NaN()
	own := false
	for _, s := range before {
		turning := turn(s, 1)
		if list = append(list, turning.Solution); len(changes) > 0 {
			with := turn(s, 1, changes...).Solution
			held, k.HeldV = append(held, with), lower(k.HeldV, volts(with, posts))
		}
		v := volts(turning.Solution, posts)
		if !(v >= k.PostsV) {
			k.DrawnA, k.On = turning.drawnA, turning.loads()
			if turning.drawnA > 0 {
				k.FlowsA = k.CurrentA * turning.drawnA / (k.CurrentA + k.VehicleA)
			}
		}
		k.PostsV = lower(k.PostsV, v)
		k.FirstV = lower(k.FirstV, volts(turn(s, peak).Solution, posts))
		k.letGo(turning)
		for _, b := range c.Branches {
			if isStarterBranch(b) && turning.on(b) {
				if own = true; !(turning.volts(b) >= k.StarterV) {
					k.StarterV = turning.volts(b)
					if a := math.Abs(turning.Amps(b)); a < k.CurrentA {
						k.FlowsA = a
					}
				}
			}
			if b.Load == nil || b.Load.Load == nil || b.Load.Standby || b.OfCharger() != nil || !turning.on(b) || math.IsNaN(turning.rest.LoadV(b)) {
				continue
			}
			i, known := at[b]
			if !known {
				i = len(k.Loads)
				at[b], k.Loads = i, append(k.Loads, Load{Part: b.Part, Volts: math.Inf(1)})
			}
			if v := turning.volts(b); v < k.Loads[i].Volts { // not of one that is not known
				k.Loads[i].Volts, k.Loads[i].In = v, s
			}
		}
	}
	if !own {
		k.StarterV = k.PostsV
	}
	slices.SortStableFunc(k.Drops, func(a, b *circuit.Part) int { return a.Index - b.Index })
	return list, held
}

// letGo notes the relays that had pulled in before and do not hold.
func (k *Case) letGo(t turning) {
	for _, contact := range t.Circuit.Branches {
		if contact.Closer == nil || contact.Closer.Coil == nil || !t.pulled[contact.Closer.Coil] || contact.Closer.Coil.Senses() || t.Status != solve.Converged {
			continue
		}
		v := math.Abs(t.Volts(contact.Closer.Coil))
		if (!t.Closed[contact.Index] || v < t.DropOutV(contact.Closer.Coil)) && !slices.Contains(k.Drops, contact.Part) {
			k.Drops = append(k.Drops, contact.Part)
		}
	}
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
