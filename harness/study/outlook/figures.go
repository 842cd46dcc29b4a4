package outlook

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/warm"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/together"
)

// Figures are the answer to a state. Currents in A, voltages in V, times in hours unless the
// name says otherwise.
type Figures struct {
	State State
	Words map[string]string // what every control is set to

	Trouble string // why there are no figures, in words; "" = there are
	*budget.Line
	// Hours are those that the battery covers what it gives, from the state's charge and at its
	// temperature down to Reserve; +Inf when it gives nothing, NaN without a capacity.
	Hours, Reserve float64
	// RunningA is the demand with the engine running, at any speed: what the output is held
	// against. With the engine stopped, what it would be at idle; NaN = none.
	RunningA     float64
	BreakEvenRPM float64
	Elsewhere    []Elsewhere
	Parked       Parked

	Drawn []Drawn // by control, then what has none
	Loads []Load
	Fuses []Loading
	Wires []Loading
	Sets  Sets
	Shed  []Step
	Apart []string // further batteries whose loads are no matter of the charging system: their chargers take no more for them
	Kept  []string // on, and never proposed to be switched off: critical, or what one sees and is seen by
}

// Elsewhere is the same at another engine speed.
type Elsewhere struct {
	Name        string // "idle", "cruise"
	SpeedPerMin float64
	SpareA      float64
}

// Parked is what standing leaves of a full battery.
type Parked struct {
	DrainA float64
	Charge float64 // NaN without a capacity
	Starts bool    // it is above the reserve
	Days   float64 // from full until it no longer starts; +Inf = for ever
}

// Drawn is what a control switches, at the posts, at the regulated voltage while the engine runs.
type Drawn struct {
	ID, Name string // ID "" = no control
	A        float64
	On       bool
}

// Load is a load with what it has.
type Load struct {
	Load     *design.Load
	Ref      string
	On       bool
	V, DropV corner.Value // of the drop both ways
	LimitV   float64      // of the drop
}

// Loading is a fuse or wire with what it carries of what it may.
type Loading struct {
	Ref, Name string
	Branch    *circuit.Branch
	A         corner.Value
	MayA      float64 // for good; in the worst case of a wire that of its hottest place
	Share     float64 // nominal of what it may; +Inf where it may carry nothing
	C         float64 // of a wire's conductor, at worst; NaN of a fuse
}

// Compute answers a state, which Check finds nothing wrong with.
func (p *Planner) Compute(s State) *Figures {
	if !s.KeyOn {
		s.SpeedPerMin = 0
	}
	f := &Figures{State: s, Words: p.Words(s), BreakEvenRPM: math.NaN(), RunningA: math.NaN()}
	x := p.situation(s)
	f.Parked = p.Standing(s)
	set := p.set.Of(p.plan, x)
	sol := set.Solution(0)
	if !set.Usable(0) {
		f.Trouble = sol.Trouble()
		return f
	}
	t := p.set.Tolerances
	f.Line = p.budget.Balance(sol, t, p.batteryOf(s))
	f.Hours = p.hoursLeft(s, f.BatteryA)
	if b := battery.Of(p.Circuit.Design); b != nil {
		f.Reserve = b.StartReserve(s.AirC)
	}
	p.atSpeeds(f, x)
	p.drawn(f)
	p.loads(f, set)
	p.loadings(f, set)
	p.choices(f, sol)
	return f
}

// balance is the balance of a situation at nominal; nil where it has none.
func (p *Planner) balance(s State, x *design.Situation) (*budget.Line, *solve.Solution) {
	r := p.set.Model.Solve(p.plan, x, solve.Options{}, nil)
	if !r.Usable() {
		return nil, r.Solution
	}
	return p.budget.Balance(r.Solution, p.set.Tolerances, p.batteryOf(s)), r.Solution
}

// atSpeeds holds the same against the output at idle and at cruise.
func (p *Planner) atSpeeds(f *Figures, x *design.Situation) {
	ch := &p.Circuit.Design.Charging
	if !ch.Present() || x.Key != design.KeyOn {
		return
	}
	if x.EngineRPM > 0 {
		f.RunningA, f.BreakEvenRPM = f.VehicleA+f.AccessoryA, f.Line.BreakEvenRPM
	}
	for _, at := range []struct {
		name string
		rpm  float64
	}{{"idle", ch.IdleRPM.Value}, {"cruise", ch.CruiseRPM.Value}} {
		if at.rpm == 0 || at.rpm == x.EngineRPM {
			continue
		}
		y := *x
		y.EngineRPM = at.rpm
		l, _ := p.balance(f.State, &y)
		if l == nil {
			continue
		}
		f.Elsewhere = append(f.Elsewhere, Elsewhere{at.name, at.rpm, l.SpareA})
		if math.IsNaN(f.RunningA) {
			f.RunningA, f.BreakEvenRPM = l.VehicleA+l.AccessoryA, l.BreakEvenRPM
		}
	}
}

// Standing is what a state's hours parked leave, which hangs on its air alone.
func (p *Planner) Standing(s State) Parked {
	d := p.Circuit.Design
	out := Parked{DrainA: p.budget.StandbyA, Charge: math.NaN(), Days: math.NaN()}
	if b := battery.Of(d); b != nil {
		out.Charge = b.ChargeAfter(1, out.DrainA, s.AirC, s.ParkedH/24)
		out.Starts = out.Charge >= b.StartReserve(s.AirC)
		out.Days = b.DaysToNoStart(out.DrainA, 1, s.AirC)
	}
	return out
}

// drawn shares the demand out to what switches it; what lies behind two controls counts with the
// last of them, its own switch.
func (p *Planner) drawn(f *Figures) {
	counted := map[*circuit.Branch]bool{}
	amps := func(b *circuit.Branch) float64 {
		if a := math.Abs(f.Held.BranchA[b.Index]); !math.IsNaN(a) {
			return a
		}
		return 0
	}
	rows := make([]Drawn, len(p.Controls))
	for i := len(p.Controls) - 1; i >= 0; i-- {
		c := p.Controls[i]
		sum, live := 0.0, false
		for _, b := range c.branch {
			if !counted[b] {
				counted[b] = true
				sum += amps(b)
			}
			live = live || amps(b) > 0
		}
		word := f.Words[c.ID]
		rows[i] = Drawn{c.ID, c.Title, sum, word != off && (live || c.Kind != ByHand || c.gives == nil)}
	}
	f.Drawn = rows
	coils := 0.0
	for _, b := range p.Circuit.Branches {
		switch l := b.Load; {
		case counted[b] || amps(b) == 0:
		case l != nil && l.Load != nil:
			if i := slices.IndexFunc(f.Drawn, func(d Drawn) bool { return d.ID == "" && d.Name == l.Load.Name }); i >= 0 {
				f.Drawn[i].A += amps(b)
				continue
			}
			f.Drawn = append(f.Drawn, Drawn{Name: l.Load.Name, A: amps(b), On: true})
		case b.OfCoil():
			coils += amps(b)
		}
	}
	if coils > 0 {
		f.Drawn = append(f.Drawn, Drawn{Name: "relay coils", A: coils, On: true})
	}
}

func (p *Planner) loads(f *Figures, set *corner.Set) {
	d := p.Circuit.Design
	for _, b := range p.Circuit.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby || b.Part == nil {
			continue
		}
		limit, _ := corner.DropLimit(d, b.Load.Load.Critical)
		x := Load{Load: b.Load.Load, Ref: b.Part.Ref, LimitV: limit * p.Circuit.NominalAt(b.A), On: set.Solution(0).LoadOn[b.Index]}
		if x.On {
			x.V, x.DropV = set.LoadV(0, b), set.Drop(0, b)
		}
		f.Loads = append(f.Loads, x)
	}
}

// loadings are fuses by what they bear for good and wires by what they may carry, the most loaded first.
func (p *Planner) loadings(f *Figures, set *corner.Set) {
	d := p.Circuit.Design
	share := func(a, may float64) float64 {
		if a == 0 {
			return 0
		}
		return a / may
	}
	for _, b := range p.Circuit.Branches {
		if may := corner.FuseBearsA(d, b, 0); may > 0 {
			v := set.Amps(0, b)
			f.Fuses = append(f.Fuses, Loading{b.Fuse.Ref, b.Way(), b, v, may, share(v.Nominal, may), math.NaN()})
		}
	}
	for i := range set.Model.Wires {
		if l := &set.Model.Wires[i]; l.Known {
			v := set.Amps(0, l.Wire.Branch)
			f.Wires = append(f.Wires, Loading{l.Wire.Number, l.Wire.Purpose(), l.Wire.Branch, v, l.AllowedA, share(v.Nominal, l.AllowedA), worstC(set, l)})
		}
	}
	for _, list := range [][]Loading{f.Fuses, f.Wires} {
		slices.SortStableFunc(list, func(a, b Loading) int {
			switch {
			case a.Share > b.Share:
				return -1
			case a.Share < b.Share:
				return 1
			}
			return 0
		})
	}
}

func worstC(set *corner.Set, l *warm.Laid) float64 { return set.WireC(0, l.Wire).Corner }

// choices are what may run together, and what to switch off first.
func (p *Planner) choices(f *Figures, sol *solve.Solution) {
	if !p.Circuit.Design.Charging.Present() {
		return
	}
	hands, shed := p.every, together.ShedStopped
	if f.State.SpeedPerMin > 0 {
		hands, shed = p.hands, together.Shed
		f.Apart = hands.Charged
		if hands.Why == "" {
			f.Sets = p.sets(hands.In(f.Line, sol, mostSets))
		}
	}
	on := hands.On(sol)
	may := shed(on)
	for _, i := range on {
		if !slices.Contains(may, i) {
			f.Kept = append(f.Kept, i.Name)
		}
	}
	f.Shed = p.shed(f, may)
	for _, i := range shed(hands.Items) {
		if !slices.Contains(on, i) {
			f.Shed = append(f.Shed, Step{Name: i.Name, Off: true})
		}
	}
}
