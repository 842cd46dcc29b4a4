package ride

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
)

// network is the balance of several batteries in one leg. No voltage of one post says what all
// of them give, so each moment is a solution of the whole network. Relays and chargers are in it as
// the moment before left them.
type network struct {
	c     *circuit.Circuit
	plan  *solve.Plan
	leg   *design.Situation
	opt   solve.Options
	banks []*bank
	last  *solve.Solution // of the last balance; opt.After is that of the last moment
	why   string          // what it could not do
	steps *int            // of the solver, counted
}

// store is a battery on a ride, the first one or a further one, with its protection.
type store struct {
	*battery.Battery
	of                    *design.Battery
	boardLowV, boardHighV float64
}

// storeOf is a battery of a system voltage; its Battery is nil where no capacity is known.
func storeOf(of *design.Battery, systemV float64) store {
	s := store{Battery: battery.New(of, systemV), of: of}
	if of.Chemistry != nil {
		s.boardLowV, s.boardHighV = of.Chemistry.BoardLowV*(systemV/12), of.Chemistry.BoardHighV*(systemV/12)
	}
	return s
}

// bank is a further battery on a ride.
type bank struct {
	store
	source *design.Bank
	branch *circuit.Branch
	charge float64
	apart  Cause  // why nothing is taken out of it until something charges it: see opens
	why    string // the same in words
}

// banksOf are the further batteries of which a capacity is known, as full as the ride begins with them.
func banksOf(c *circuit.Circuit, r *design.Ride) (list []*bank) {
	for _, p := range c.Parts {
		b, ok := p.Source.(*design.Bank)
		if !ok {
			continue
		}
		if of := storeOf(&b.Store, c.Design.NominalV()); of.Battery != nil {
			x := &bank{store: of, source: b, branch: p.Branches[0], charge: 1}
			if said, ok := r.Charge[b]; ok {
				x.charge = said
			}
			list = append(list, x)
		}
	}
	return list
}

func (s *simulation) newNetwork(l *Leg) *network {
	for _, b := range s.banks {
		if b.apart != Empty { // a protection closes when what opened it is gone
			b.apart = Gives
		}
	}
	n := &network{c: s.c, plan: s.plan, banks: s.banks, steps: &s.result.Effort}
	n.opt = solve.Options{After: s.after}
	n.warm(l.BatteryC)
	return n
}

func (n *network) balance(charge float64, banks []float64) (p Point, ok bool) {
	opt := n.opt
	opt.Discharged, opt.BankCharge = 1-charge, map[*design.Bank]float64{}
	opt.Changes = slices.Clip(opt.Changes)
	for i, b := range n.banks {
		opt.BankCharge[b.source] = min(max(banks[i], 0), 1)
		if b.apart != Gives {
			opt.Changes = append(opt.Changes, solve.OpenBranch(b.branch))
		}
	}
	s := n.plan.Network(n.leg, opt).Solution()
	*n.steps += s.Iterations
	n.why = ""
	if s.Status != solve.Converged {
		n.why = s.Trouble()
		opt.AcceptFolded = true
		s = n.plan.Network(n.leg, opt).Solution()
		*n.steps += s.Iterations
	} else if s.Hunts != nil && s.Hunts.Part != nil {
		n.why = s.Hunts.Part.Name + " opens whenever it has closed, and is taken as open"
	}
	n.last = s
	p = Point{Charge: charge, BusV: s.NodeV[n.c.Positive().Index], BatteryA: s.BatteryA, ChargingA: s.ChargingA, LoadA: loadA(s)}
	for i, b := range n.banks {
		p.Banks = append(p.Banks, BankPoint{Charge: banks[i], V: s.Volts(b.branch), A: s.Given(b.branch)})
	}
	return p, s.Status == solve.Converged
}

// loadA is what all loads and coils draw, on whatever battery; what a charger takes from one battery for another is theirs.
func loadA(s *solve.Solution) (sum float64) {
	for _, b := range s.Circuit.Branches {
		a := math.Abs(s.BranchA[b.Index])
		if (b.Load != nil || b.OfCoil()) && !b.Follows() && s.Circuit.ConverterOf(b.A) == nil && !math.IsNaN(a) && !feedsCharger(b) {
			sum += a
		}
	}
	return sum
}

// feedsCharger tells of the input of a charger that a battery feeds.
func feedsCharger(b *circuit.Branch) bool {
	if b.Part == nil || b.Part.Converts() != b {
		return false
	}
	x, ok := b.Part.Source.(*design.Charger)
	return ok && !x.Converts()
}

func (n *network) light(sun bool) { n.opt.Night = !sun }

func (n *network) warm(celsius float64) { n.opt.BatteryK = celsius - battery.RatedC }

func (n *network) troubleAt(float64) string { return n.why }

// moved tells whether relays, chargers or empty batteries are otherwise than in the moment before.
func (n *network) moved(p Point, celsius float64) bool {
	for i, b := range n.banks {
		if b.turns(p.Banks[i], celsius) {
			return true
		}
	}
	if n.opt.After == nil {
		return false
	}
	for _, b := range n.c.Branches {
		i := b.Index
		if n.last.Closed[i] != n.opt.After.Closed[i] || b.Kind == circuit.OutputBranch && math.IsInf(n.last.Ohm[i], 1) != math.IsInf(n.opt.After.Ohm[i], 1) {
			return true
		}
	}
	return false
}

// turns tells of a battery that begins to give nothing, or could be charged again.
func (b *bank) turns(p BankPoint, celsius float64) bool {
	if b.apart != Gives {
		return p.V > b.OpenCircuitV(max(p.Charge, 0), celsius) && !b.overcharged(p)
	}
	cause, _ := b.opens(p, celsius)
	return cause != Gives
}

// opens is why a battery gives no more, also as words behind its name. A lithium battery's protection
// switches it off on too much current, and on too low or too high a voltage.
func (b *store) opens(p BankPoint, celsius float64) (Cause, string) {
	switch boardA := b.of.BoardA(); {
	case b.overcharged(p):
		return Overcharged, "switches itself off above " + quantity.Plain(b.boardHighV, quantity.Voltage)
	case p.A <= 0:
		return Gives, ""
	case p.Charge <= b.EmptyCharge(celsius):
		return Empty, b.emptyWhy(celsius)
	case boardA > 0 && p.A > boardA:
		return Overloaded, fmt.Sprintf("switches itself off: %s through a protection of %s", quantity.Format(p.A, quantity.Current), quantity.Plain(boardA, quantity.Current))
	case boardA > 0 && p.V < b.boardLowV:
		return TooLow, "switches itself off below " + quantity.Plain(b.boardLowV, quantity.Voltage)
	}
	return Gives, ""
}

// emptyWhy says that a battery gives no more; in the cold it does so with charge left.
func (b *store) emptyWhy(celsius float64) string {
	if left := b.EmptyCharge(celsius); left >= coldLeft {
		return fmt.Sprintf("gives no more: at %s %s of its charge stays in it", quantity.Format(celsius, quantity.Temperature), quantity.Format(left, quantity.Share))
	}
	return "is empty"
}

// coldLeft is the charge left in the cold that is worth a word; our choice.
const coldLeft = 0.05

// overcharged tells whether a battery with a protection has more than that lets charge it.
func (b *store) overcharged(p BankPoint) bool {
	return b.of.BoardA() > 0 && b.boardHighV > 0 && p.V > b.boardHighV
}

// take makes a moment that from which the next begins; it tells whether a battery turned in it.
func (n *network) take(p Point, celsius float64) (turned bool) {
	n.opt.After = n.last
	for i, b := range n.banks {
		b.charge = p.Banks[i].Charge
		if b.turns(p.Banks[i], celsius) {
			turned = true
			if b.apart == Gives {
				b.apart, b.why = b.opens(p.Banks[i], celsius)
			} else {
				b.apart = Gives
			}
		}
	}
	return turned
}
