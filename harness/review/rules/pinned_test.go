package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/fault"
	"fusewright/library"
)

// passOf is a rule at work on an example, with its solutions at nominal alone.
func passOf(t *testing.T, r *Rule, snippet string) *Pass {
	t.Helper()
	c := buildtest.Circuit(t, example.Design(snippet))
	in := &Input{Circuit: c, Solutions: solve.All(c, solve.Options{})}
	in.Budget = budget.Compute(c, in.Solutions)
	return &Pass{facts: newFacts(in), rule: r}
}

// run judges anew, after the figures have been set by hand.
func (p *Pass) run() []*finding.Finding {
	p.facts, p.found = newFacts(p.in), nil
	p.rule.Run(p)
	return p.found
}

// part is the part of a name.
func part(t *testing.T, p *Pass, name string) *circuit.Part {
	t.Helper()
	for _, x := range p.c.Parts {
		if x.Name == name {
			return x
		}
	}
	t.Fatalf("no part %q", name)
	return nil
}

// setVolts gives a branch a voltage in every solution.
func setVolts(p *Pass, b *circuit.Branch, volts float64) {
	for _, s := range p.in.Solutions {
		s.NodeV[b.A.Index] = s.NodeV[b.B.Index] + volts
	}
}

// says fails unless one finding of a severity is there, or none for 0.
func says(t *testing.T, what string, found []*finding.Finding, want finding.Severity) {
	t.Helper()
	var got finding.Severity
	if len(found) > 0 {
		got = found[0].Severity
	}
	if got != want || len(found) > 1 {
		t.Errorf("%s: %d findings, the first of severity %q, want %q", what, len(found), got, want)
	}
}

const none = finding.Severity(0)

func TestOverAtTheEdge(t *testing.T) {
	limit := 5.0
	for figure, want := range map[float64]bool{5: false, limit + 1e-9*math.Abs(limit): false, 5 + 5.3e-9: true, 5.01: true, 4.99: false} {
		if got := over(figure, limit); got != want {
			t.Errorf("%.12g over 5: %t", figure, got)
		}
	}
}

// lose lays the way of a part so that its wires lose some volts and what else is
// on it some others, in every situation.
func lose(p *Pass, x *circuit.Part, wiresV, othersV float64) {
	feed, back := p.c.MainFeed(x.Terminal("+").Node).Branches, p.c.MainReturn(x.Terminal("-").Node, p.c.Negative()).Branches
	wires := 0
	for _, b := range slices.Concat(feed, back) {
		if b.Wire != nil {
			wires++
		}
	}
	others := len(feed) + len(back) - wires
	for _, s := range p.in.Solutions {
		along := func(list []*circuit.Branch, volts float64) {
			for _, b := range list {
				s.NodeV[b.A.Index] = volts
				if b.Wire != nil {
					volts -= wiresV / float64(wires)
				} else {
					volts -= othersV / float64(others)
				}
				s.NodeV[b.B.Index] = volts
			}
		}
		along(feed, 12)
		lost := 0.0
		for _, b := range back {
			if b.Wire != nil {
				lost += wiresV / float64(wires)
			} else {
				lost += othersV / float64(others)
			}
		}
		along(back, lost)
	}
}

// A critical load may lose 3 % of 12 V, 0.36 V, in its wires; more than twice that is
// a danger. Contacts and fuses may bring it to 0.54 V, half as much again. What is
// on for long loses 4 %, 0.48 V, of the other loads' 10 % without advice.
func TestDropAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		critical, brief bool
		wires, others   float64
		want            finding.Severity
	}{
		{true, false, 0.359, 0, none}, {true, false, 0.361, 0, finding.Fault}, {true, false, 0.719, 0, finding.Fault},
		{true, false, 0.721, 0, finding.Danger}, {true, false, 2, 0, finding.Danger},
		{true, false, 0.1, 0.259, none}, {true, false, 0.1, 0.261, finding.Advice}, {true, false, 0.1, 0.439, finding.Advice},
		{true, false, 0.1, 0.441, finding.Fault}, {true, false, 0.1, 0.9, finding.Fault},
		{false, false, 0.479, 0, none}, {false, false, 0.481, 0, finding.Advice}, {false, false, 0.1, 0.5, none},
		{false, true, 0.481, 0, none}, {false, false, 1.199, 0, finding.Advice}, {false, false, 1.201, 0, finding.Fault},
		{false, false, 0.1, 1.101, finding.Advice}, {false, false, 0.1, 1.699, finding.Advice}, {false, false, 0.1, 1.701, finding.Fault},
	} {
		p := passOf(t, voltageDrop, "")
		x := part(t, p, "tail lamp")
		accessory(x).Critical = c.critical
		if c.brief {
			accessory(x).Duty.Value = 0.99
		}
		lose(p, x, c.wires, c.others)
		says(t, fmt.Sprintf("%+v", c), p.run(), c.want)
	}
}

// An element that takes two fifths of the drop or more is named.
func TestMostLostAtTheEdge(t *testing.T) {
	p := passOf(t, voltageDrop, "")
	x := part(t, p, "tail lamp")
	b, s := loadBranch(x), p.usable[0]
	feed, back := p.c.MainFeed(x.Terminal("+").Node).Branches, p.c.MainReturn(x.Terminal("-").Node, p.c.Negative()).Branches
	if len(feed)+len(back) < 5 {
		t.Fatalf("%d and %d branches on the way", len(feed), len(back))
	}
	for share, named := range map[float64]bool{0.39: false, 0.41: true, 0.43: true} {
		each := (1 - share) / float64(len(feed)+len(back)-1)
		along := func(list []*circuit.Branch, volts, largest float64) float64 {
			for i, b := range list {
				lost := each
				if i == slices.IndexFunc(list, func(b *circuit.Branch) bool { return b.Wire != nil }) && largest > 0 {
					lost = largest
				}
				s.NodeV[b.A.Index] = volts
				volts -= lost
				s.NodeV[b.B.Index] = volts
			}
			return volts
		}
		above := along(feed, 12, share)         // ends at the load
		along(back, each*float64(len(back)), 0) // ends at battery negative
		if got := p.mostLost(x, b, s.Situation) != ""; got != named {
			t.Errorf("%g of a volt lost in one element: named %t (%g V at the load)", share, got, above)
		}
	}
	// Wires that take less than half: what takes most beside them is listed.
	s.NodeV[feed[0].A.Index] = 12
	for _, way := range [][]*circuit.Branch{feed, back} {
		v := s.NodeV[way[0].A.Index]
		for _, b := range way {
			if b.Wire == nil {
				v -= 0.5
			} else {
				v -= 0.01
			}
			s.NodeV[b.B.Index] = v
		}
	}
	if got := p.mostLost(x, b, s.Situation); !strings.Contains(got, "; lost at nominal: X1 ") || !strings.Contains(got, ", wires ") {
		t.Errorf("where the volts go: %q", got)
	}
}

// Sizes are nominal: half a per cent below the least is still the least.
func TestLeastSizeAtTheEdge(t *testing.T) {
	p := passOf(t, wireBelowMinimum, "")
	least := p.practice.MinMm2
	for share, want := range map[float64]int{1: 0, 0.996: 0, 0.994: 1, 0.95: 1, 0.5: 1} {
		p.found = nil
		p.judgeMinimum(&circuit.Wire{Number: "W1", From: &circuit.Terminal{Part: &circuit.Part{}}, To: &circuit.Terminal{Part: &circuit.Part{}},
			Spec: design.WireSpec{Type: &library.WireType{}, Size: &library.WireSize{AreaMm2: share * least}}})
		if len(p.found) != want {
			t.Errorf("%g of the least: %d findings", share, len(p.found))
		}
	}
}

// Barrels and plugs take a hundredth less and more than their range.
func TestBarrelsAtTheEdge(t *testing.T) {
	p := passOf(t, noTerminalFits, "")
	barrel := &library.Terminal{MinMm2: 1, MaxMm2: 2}
	plug := &circuit.Plug{Family: &library.Connector{MinMm2: 1, MaxMm2: 2}}
	for mm2, fits := range map[float64]bool{0.985: false, 0.995: true, 1: true, 1.5: true, 2: true, 2.015: true, 2.03: false, 2.15: false} {
		p.found = nil
		at := &circuit.Terminal{Part: &circuit.Part{}}
		p.judgeEnd(&circuit.Wire{Number: "W1", From: at, To: at, Spec: design.WireSpec{Type: &library.WireType{}, Size: &library.WireSize{AreaMm2: mm2}}},
			at, barrel, barrel)
		if (len(p.found) == 0) != fits || outside(plug, mm2) == fits {
			t.Errorf("%g mm² in 1 to 2 mm²: %d findings, outside the plug %t", mm2, len(p.found), outside(plug, mm2))
		}
	}
	if outside(nil, 1) {
		t.Error("outside of no plug")
	}
}

const relayed = `
relays:
  lamp relay: {form: mini make, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`

func TestRelayPlaceAtTheEdge(t *testing.T) {
	p := passOf(t, relayTooHot, relayed)
	x := part(t, p, "lamp relay")
	most := x.Source.(*design.Relay).Form.MaxC
	for ambient, want := range map[float64]finding.Severity{most - 1: none, most: none, most + 1: finding.Fault} {
		x.Place.AmbientC = design.Quantity{Value: ambient, Text: "given"}
		says(t, fmt.Sprintf("%g °C", ambient), p.run(), want)
	}
}

// A coil of 8 V pull-in at 20 °C; below 1 V it counts as not supplied.
func TestPullInAtTheEdge(t *testing.T) {
	p := passOf(t, relayCoilVoltage, relayed)
	x := part(t, p, "lamp relay")
	x.Place.AmbientC = design.Quantity{Value: 20, Text: "20 °C"}
	need := x.Source.(*design.Relay).Form.PullInV
	coil := p.coilOf[x.Index]
	for volts, want := range map[float64]finding.Severity{0.99: none, 1.5: finding.Fault, need - 0.01: finding.Fault, need: none, need + 0.01: none} {
		for _, s := range p.in.Solutions {
			s.NodeV[coil.A.Index], s.NodeV[coil.B.Index] = volts, 0
		}
		says(t, fmt.Sprintf("%g V", volts), p.run(), want)
	}
}

// Insulation of 100 °C in a place of 100 °C is a danger, in one of 99 °C a fault.
func TestHotPlaceAtTheClass(t *testing.T) {
	p := passOf(t, insulationClass, "")
	w := p.c.Wires[0]
	if w.Spec.Type.ClassC != 100 || p.practice.HotSpotMarginC != 10 {
		t.Fatalf("class %g °C, margin %g K", w.Spec.Type.ClassC, p.practice.HotSpotMarginC)
	}
	for _, other := range p.c.Wires[1:] {
		other.AmbientC = 20
	}
	for ambient, want := range map[float64]finding.Severity{89.9: none, 90.1: finding.Fault, 99.9: finding.Fault, 100: finding.Danger,
		101: finding.Danger} {
		w.AmbientC, w.AmbientAt = ambient, "rear"
		says(t, fmt.Sprintf("%g °C", ambient), p.run(), want)
	}
}

// FAA AC 43.13-1B Table 11-4: lamps a fifth and motors half of the rating, on
// systems above 12 V an eighth and a third of its half.
func TestSwitchRatingsByHand(t *testing.T) {
	p := passOf(t, switchOverload, "")
	s := &design.Switch{RatingA: design.Quantity{Value: 48, Text: "48 A"}}
	for volts, want := range map[float64][3]float64{6: {48, 9.6, 24}, 12: {48, 9.6, 24}, 24: {24, 6, 16}} {
		p.d.SystemV = design.Quantity{Value: volts, Text: "given"}
		if r := p.switchRatings(s); [3]float64{r.resistive, r.lamp, r.motor} != want {
			t.Errorf("%g V: %+v, want %v", volts, r, want)
		}
	}
}

func TestWeakerEnd(t *testing.T) {
	ten, twenty, unknown := &library.Terminal{MaxA: 10}, &library.Terminal{MaxA: 20}, &library.Terminal{}
	for _, c := range []struct{ a, b, want *library.Terminal }{
		{ten, twenty, ten}, {twenty, ten, ten}, {nil, ten, ten}, {ten, nil, ten}, {unknown, twenty, twenty}, {nil, unknown, nil},
	} {
		if got := weaker(c.a, c.b); got != c.want {
			t.Errorf("of %+v and %+v: %+v", c.a, c.b, got)
		}
	}
}

// A load gets the least voltage it needs, and no more than 1.5 times its rated.
func TestLoadVoltagesAtTheEdge(t *testing.T) {
	const needy = `
loads:
  tail lamp: {power: 5 W, rated at: 12 V, behaves: resistor, minimum voltage: 10 V, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`
	low, high := passOf(t, loadUndervoltage, needy), passOf(t, loadOvervoltage, needy)
	for volts, want := range map[float64]finding.Severity{9.99: finding.Fault, 10: none, 12: none} {
		b := loadBranch(part(t, low, "tail lamp"))
		for _, s := range low.in.Solutions {
			s.NodeV[b.A.Index], s.NodeV[b.B.Index] = volts, 0
		}
		says(t, fmt.Sprintf("%g V of 10 V", volts), low.run(), want)
	}
	for volts, want := range map[float64]finding.Severity{17.9: none, 18: none, 18.1: finding.Fault} {
		setVolts(high, loadBranch(part(t, high, "tail lamp")), volts)
		says(t, fmt.Sprintf("%g V on 12 V", volts), high.run(), want)
	}
}

// A contact that may make 40 A closes on 20 A of a motor that starts with twice.
func TestWeldAtTheMakingCurrent(t *testing.T) {
	p := passOf(t, weldedContactLive, relayed)
	x := part(t, p, "lamp relay")
	form := *x.Source.(*design.Relay).Form
	x.Source.(*design.Relay).Form = &form
	l := &design.Load{Behaves: design.Motor, PowerW: 240, Inrush: library.Inrush{PeakRatio: 2, TauS: 0.1}}
	hot := &circuit.Branch{Load: &circuit.LoadSpec{Load: l, Behaves: design.Motor, PowerW: 240, RatedV: 12},
		Part: &circuit.Part{Kind: circuit.Load, Name: "pump", Source: l}}
	for makes, want := range map[float64]finding.Severity{39.9: finding.Advice, 40: none, 40.1: none} {
		form.MakingA, p.found = makes, nil
		p.judgeWeld(&fault.Welded{Contact: x.Branches[0], Hot: []fault.Hot{{Branch: hot}}})
		says(t, fmt.Sprintf("%g A", makes), p.found, want)
	}
}

// More than 1 V the wrong way round harms electronics.
func TestBackwardAtTheEdge(t *testing.T) {
	b := &circuit.Branch{Load: &circuit.LoadSpec{Load: &design.Load{}, Behaves: design.ConstantPower}}
	for volts, want := range map[float64]bool{-0.99: false, -1: false, -1.05: true, 5: false} {
		if got := harmed(&fault.Affected{Branch: b, AfterV: volts}); got != want {
			t.Errorf("%g V: harmed %t", volts, got)
		}
	}
}

// A contact of 5 A for motors: up to a third more is a matter of its life, more a fault.
func TestSwitchLifeAtTheEdge(t *testing.T) {
	p := passOf(t, switchOverload, `
loads:
  tail lamp: {current: 1 A, behaves: motor, at: rear, fed by: lamp switch, wire: {size: 1 mm²}, returns to: frame}
switches:
  lamp switch: {rating: 10 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
`)
	x := part(t, p, "lamp switch")
	b := x.Branches[0]
	for amps, want := range map[float64]finding.Severity{4.9: none, 5: none, 5.1: finding.Advice, 6.6: finding.Advice, 6.7: finding.Fault} {
		for _, s := range p.in.Solutions {
			for i := range s.BranchA {
				s.BranchA[i] = amps
			}
		}
		p.facts, p.found = newFacts(p.in), nil
		p.judgeSwitch(x, b, ContactRatings{resistive: 100, lamp: 5, motor: 5, share: 1})
		says(t, fmt.Sprintf("%g A", amps), p.found, want)
	}
}

// A way that may carry 10 A holds a fuse of 10 A and no larger one.
func TestWayAtItsLimit(t *testing.T) {
	for rating, want := range map[string]finding.Severity{"7.5 A": none, "10 A": none, "15 A": finding.Fault} {
		p := passOf(t, blockWayOverload, fmt.Sprintf(`
blocks:
  rear block: {way limit: 10 A, total limit: 30 A, at: rear, fed by: keyed feed, wire: {size: 6 mm²}, ways: {1: {type: blade C, fuse: %s}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rear block 1, wire: {size: 1 mm²}, returns to: frame}
`, rating))
		says(t, rating, p.run(), want)
	}
}
