// Package solved words the solution of one situation for a study sheet: what
// flows in a wire, what is across a load.
package solved

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/render/schematic/parts"
)

// Values is a solved situation written into the drawing. A nil study writes
// nothing.
type Values struct{ solution *solve.Solution }

// In finds the solution of a situation by name.
func In(review *harness.Review, name string) (*Values, error) {
	var names []string
	for _, s := range review.Solutions {
		if s.Situation == nil {
			continue
		}
		if strings.EqualFold(s.Situation.Name, name) {
			return &Values{s}, nil
		}
		names = append(names, s.Situation.Name)
	}
	what := fmt.Sprintf("schematic: no situation %q (expected %s", name, strings.Join(names, ", "))
	if near := problem.Nearest(name, names); near != "" {
		what += fmt.Sprintf("; did you mean %q?", near)
	}
	return nil, fmt.Errorf("%s)", what)
}

// HeaviestSituation names the situation in which most current is drawn from
// battery and charging system together, of those that could be solved; "" when
// none could.
func HeaviestSituation(review *harness.Review) string {
	name, most := "", math.Inf(-1)
	for _, s := range review.Solutions {
		if s.Situation == nil || s.Status != solve.Converged {
			continue
		}
		if a := s.BatteryA + s.ChargingA; a > most {
			name, most = s.Situation.Name, a
		}
	}
	return name
}

// Name is that of the situation.
func (s *Values) Name() string { return s.solution.Situation.Name }

// valid tells whether there are numbers that may be shown.
func (s *Values) valid() bool { return s != nil && s.solution.Status == solve.Converged }

// volts prints a voltage against battery negative.
func (s *Values) volts(n *circuit.Node) string {
	if n == nil || !s.valid() {
		return "? V"
	}
	return voltText(s.solution.NodeV[n.Index])
}

func voltText(v float64) string {
	if math.IsNaN(v) {
		return "not joined"
	}
	return quantity.Format(v, quantity.Voltage)
}

func ampText(a float64) string { return quantity.Flow(a) }

// Wire is the current in a wire, and the volts at its end towards the load.
func (s *Values) Wire(w *circuit.Wire) string {
	if !s.valid() || w.Branch == nil {
		return "? A"
	}
	end := w.To
	if w.Role.Returns() {
		end = w.From
	}
	return ampText(s.solution.Amps(w.Branch)) + ", " + s.volts(end.Node)
}

// Part is what was solved at a part, in lines.
func (s *Values) Part(p *circuit.Part) []string {
	switch {
	case s == nil:
		return nil
	case !s.valid():
		return []string{"not solved"}
	}
	switch p.Kind {
	case circuit.Battery, circuit.Bank:
		return s.battery(p)
	case circuit.Relay:
		return []string{s.Contact(p), s.Coil(p)}
	}
	return []string{s.single(p)}
}

// single is what was solved at a part that needs one line.
func (s *Values) single(p *circuit.Part) string {
	switch p.Kind {
	case circuit.Generator:
		return "gives " + ampText(s.solution.ChargingA)
	case circuit.VehicleLoads:
		return ampText(s.loadA(p))
	case circuit.Block:
		return "bar " + s.volts(parts.BusOf(p).Node)
	case circuit.Fuse:
		if b := find(p, func(b *circuit.Branch) bool { return b.Fuse != nil }); b != nil {
			return s.share(b) + " of rating"
		}
	case circuit.Load:
		return s.load(p)
	case circuit.Switch:
		return s.Contact(p)
	case circuit.Tap:
		return wording.Present([]string{s.Contact(p), s.volts(p.Terminals[len(p.Terminals)-1].Node)}, ", ")
	case circuit.Splice:
		return s.volts(p.Terminals[0].Node)
	}
	return ""
}

func (s *Values) battery(p *circuit.Part) []string {
	b := branchOf(p, circuit.BatteryBranch)
	if b == nil {
		return nil
	}
	return []string{voltText(s.solution.Volts(b)), quantity.BatteryFlow(s.solution.Given(b))}
}

// branchOf is the first branch of a kind in a part; nil when it has none.
func branchOf(p *circuit.Part, kind circuit.BranchKind) *circuit.Branch {
	return find(p, func(b *circuit.Branch) bool { return b.Kind == kind })
}

func find(p *circuit.Part, meant func(*circuit.Branch) bool) *circuit.Branch {
	if i := slices.IndexFunc(p.Branches, meant); i >= 0 {
		return p.Branches[i]
	}
	return nil
}

// loadA is the sum of what the branches of a part draw.
func (s *Values) loadA(p *circuit.Part) (sum float64) {
	for _, b := range p.Branches {
		if b.Kind == circuit.LoadBranch {
			sum += s.solution.Amps(b)
		}
	}
	return sum
}

// load is the volts across a load and the power it takes.
func (s *Values) load(p *circuit.Part) string {
	on := false
	volts, watts := 0.0, 0.0
	for _, b := range p.Branches {
		if b.Kind != circuit.LoadBranch {
			continue
		}
		on = on || s.solution.LoadOn[b.Index]
		if v := s.solution.LoadV(b); !math.IsNaN(v) {
			volts = max(volts, v)
			watts += s.solution.Volts(b) * s.solution.Amps(b)
		}
	}
	if !on {
		return "off"
	}
	return voltText(volts) + ", " + quantity.Format(watts, quantity.Power)
}

// Contact tells whether the first contact of a part is closed.
func (s *Values) Contact(p *circuit.Part) string {
	b := branchOf(p, circuit.ContactBranch)
	switch {
	case !s.valid() || b == nil:
		return ""
	case b.Closer != nil && b.Closer.Output != "":
		return s.outputs(p)
	case s.solution.Closed[b.Index]:
		return "closed"
	}
	return "open"
}

// outputs is the position of a switch that has several: its name, or the outputs that are
// live by it.
func (s *Values) outputs(p *circuit.Part) string {
	if sw, ok := p.Source.(*design.Switch); ok {
		at, _ := circuit.Positions(s.solution.Circuit, s.solution.Situation)
		if name := at[sw.Lead()]; name != "" {
			return "at " + name
		}
	}
	var live []string
	for _, b := range p.Branches {
		if s.solution.Closed[b.Index] {
			live = append(live, b.Closer.Output)
		}
	}
	if live == nil {
		return "open"
	}
	return "at " + wording.And(live)
}

// Coil is the volts across a relay's coil.
func (s *Values) Coil(p *circuit.Part) string {
	b := branchOf(p, circuit.ResistorBranch)
	if !s.valid() || b == nil {
		return ""
	}
	return "coil " + voltText(s.solution.Volts(b))
}

// share is the current of a fuse in percent of its rating.
func (s *Values) share(b *circuit.Branch) string {
	if b.Fuse == nil || b.Fuse.Rating == nil || b.Fuse.Rating.RatingA <= 0 {
		return "? %"
	}
	return quantity.Format(math.Abs(s.solution.Amps(b))/b.Fuse.Rating.RatingA, quantity.Share)
}

// Way is the share of a way's fuse; "" when it has none.
func (s *Values) Way(p *circuit.Part, ref string) string {
	b := find(p, func(b *circuit.Branch) bool { return b.Fuse != nil && b.Fuse.Ref == ref })
	switch {
	case s == nil || ref == "":
		return ""
	case !s.valid():
		return "? %"
	case b == nil:
		return ""
	}
	return s.share(b)
}

// Note says what the values are.
func (s *Values) Note() string {
	sol := s.solution
	if !s.valid() {
		return fmt.Sprintf("No values: %s (%s).", sol.Status, sol.Why)
	}
	return fmt.Sprintf("Sloping: computed for “%s” at one moment, nominal values. On a wire: amperes, and volts to battery negative "+
		"at its end towards the load. At a fuse: current in percent of its rating. At a load: volts across it, watts.",
		s.Name())
}
