package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
	"fusewright/library"
)

// passOf is a rule at work on an example, with its solutions at nominal alone.
func passOf(t *testing.T, r *Rule, snippet string) *Pass {
	t.Helper()
	d, err := design.Read("pinned.yaml", []byte(example.Design(snippet)), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
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

// A start passes every fuse above its load, wherever the smallest stands; of those
// that may open the nearest is named, and a factory fuse hides none.
func TestStartPassesEveryFuse(t *testing.T) {
	for name, c := range map[string]struct{ far, near, tap, want string }{
		"the smaller one near":      {"30 A", "10 A", "20 A", "pump fuse"},
		"the smaller one far":       {"10 A", "30 A", "20 A", "main fuse"},
		"both":                      {"10 A", "10 A", "20 A", "pump fuse"},
		"below a smaller factory's": {"30 A", "10 A", "5 A", "pump fuse"},
		"none":                      {"40 A", "40 A", "20 A", ""},
	} {
		p := passOf(t, fuseInrush, fmt.Sprintf(`
fuses:
  main fuse: {type: blade C, rating: %s, at: battery tray, fed by: keyed feed, wire: {size: 10 mm², length: 100 mm}}
  pump fuse: {type: blade C, rating: %s, at: battery tray, fed by: main fuse, wire: {size: 10 mm², length: 100 mm}}
loads:
  bilge pump: {power: 72 W, behaves: motor, inrush: {peak: 8, time: 400 ms}, at: rear, fed by: pump fuse, returns to: frame}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: %s, spare: 15 A, supervised: no}
`, c.far, c.near, c.tap))
		found := p.run()
		if len(found) > 1 || (len(found) == 1) != (c.want != "") {
			t.Errorf("%s: %d findings", name, len(found))
		} else if c.want != "" && !strings.Contains(found[0].What, "("+c.want+", ") {
			t.Errorf("%s: %s", name, found[0].What)
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

// A fuse that breaks 1 000 A: up to a tenth above it is advice, and more on
// vehicles. Afloat a battery of 257 A cold cranking (5.4 V / 21 mΩ) asks 750 A of a
// branch, which is enough.
func TestBreakingCapacityAtTheEdge(t *testing.T) {
	p := passOf(t, fuseBreakingCapacity, "")
	ashore, boat := p.practice, *p.practice
	boat.Afloat = true
	use := func(x *library.Practice) { p.practice, p.d.Practice, p.found = x, x, nil }
	b := part(t, p, "lamp fuse").Branches[0]
	kind := *b.Fuse.Type
	kind.BreakingA = 1000
	b.Fuse.Type = &kind
	for fault, want := range map[float64]finding.Severity{999: none, 1000: none, 1001: finding.Advice, 1099: finding.Advice, 1101: finding.Danger} {
		p.in.Protection = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: fault}}}
		p.found = nil
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A", fault), p.found, min(want, finding.Advice))
		use(&boat)
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A on a boat's branch", fault), p.found, none)
		use(ashore)
	}
	// At the system's 12 V it breaks 2 000 A, 1 000 A only above 32 V. Of a battery
	// that has no cold-cranking current a boat asks all that a short draws.
	kind.Breaks = []library.BreaksAt{{UpToV: 14, BreakingA: 2000}, {UpToV: 32, BreakingA: 1500}}
	use(&boat)
	p.d.Battery.Chemistry = p.d.Library.Chemistry("LiFePO4")
	for fault, want := range map[float64]finding.Severity{2000: none, 2001: finding.Advice, 2999: finding.Advice, 3001: finding.Danger} {
		p.in.Protection = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: fault}}}
		p.found = nil
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A at 12 V", fault), p.found, want)
	}
	// A PTC behind the battery of a vehicle is not what factories build.
	use(ashore)
	kind.Kind, kind.Breaks = "ptc", nil
	for fault, want := range map[float64]finding.Severity{1000: none, 1001: finding.Advice, 1499: finding.Advice, 1501: finding.Danger} {
		p.in.Protection = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: fault}}}
		p.found = nil
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A at a PTC", fault), p.found, want)
	}
	// Nor do they build blade fuses behind a lithium pack of 30 Ah and more, or of what
	// resistance that one has: 0.06 Ω·Ah / 30 Ah and 2 mΩ of its board are 4 mΩ.
	kind.Kind, kind.Breaks = "fuse", nil
	for _, c := range []struct {
		ah, ohm, fault float64
		want           finding.Severity
	}{{29, 0.004, 1501, finding.Fault}, {31, 0.004, 1501, finding.Fault}, {29, 0.0041, 1501, finding.Advice}, {300, 0.0041, 1501, finding.Advice},
		{300, 0.0041, 4001, finding.Fault}} {
		p.in.Protection = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: c.fault}}}
		p.found, p.d.Battery.CapacityAh.Value, p.d.Battery.ResistanceOhm.Value = nil, c.ah, c.ohm
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A behind %g Ah of %g Ω", c.fault, c.ah, c.ohm), p.found, c.want)
	}
	p.d.Battery.ResistanceOhm = design.Quantity{}
	for _, c := range []struct {
		ah, fault float64
		want      finding.Severity
	}{{29.9, 1501, finding.Advice}, {29.9, 4000, finding.Advice}, {29.9, 4001, finding.Fault}, {30, 1000, none}, {30, 1499, finding.Advice},
		{30, 1501, finding.Fault}} {
		p.in.Protection = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: c.fault}}}
		p.found, p.d.Battery.CapacityAh.Value = nil, c.ah
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A behind %g Ah", c.fault, c.ah), p.found, c.want)
	}
	p.d.Battery.Chemistry = nil
	if got := p.openCircuitV(); math.Abs(got-12.8) > 1e-12 {
		t.Errorf("a battery of no known chemistry rests at %g V", got)
	}
}

// 4 A starting with six times and τ are more than 10 A for 1.204 τ, 294 τ A²s, here 5.8:
// 0.29 of a fuse that melts at 20 A²s, outlasted 10 000 times. 5 A starting with six times and
// τ = 50 ms pass a fuse of 20.5 A that opens later than that; of its kind the middle
// opens at the root of 20 ms · 125 ms, 50 ms.
func TestInrushAtTheEdge(t *testing.T) {
	p := passOf(t, fuseInrush, "")
	x := part(t, p, "tail lamp")
	l, b, fuse := accessory(x), loadBranch(x), part(t, p, "lamp fuse").Branches[0]
	for _, c := range []struct {
		name            string
		amps, peak, tau float64
		rating, melt    float64
		minS, maxS      float64
		want            finding.Severity
	}{
		{"5.8 of 21 A²s", 4, 6, 5.8 / 294, 10, 21, 2, 5, none},
		{"5.8 of 20 A²s, 0.29 exactly", 4, 6, 5.8 / 294, 10, 20.0001, 2, 5, none},
		{"5.8 of 19.9 A²s", 4, 6, 5.8 / 294, 10, 19.9, 2, 5, finding.Advice},
		{"opens before τ", 5, 6, 0.05, 20.5, 0, 0.0499, 5, finding.Advice},
		{"opens at τ", 5, 6, 0.05, 20.5, 0, 0.05, 5, finding.Advice},
		{"opens after τ", 5, 6, 0.05, 20.5, 0, 0.0501, 5, none},
		{"its middle opens before τ", 5, 6, 0.05, 20.5, 0, 0.02, 0.1249, finding.Fault},
		{"its middle opens after τ", 5, 6, 0.05, 20.5, 0, 0.02, 0.1251, finding.Advice},
	} {
		b.Load.PowerW, b.Load.RatedV = 12*c.amps, 12
		l.Inrush = library.Inrush{PeakRatio: c.peak, TauS: c.tau}
		fuse.Fuse.Type = &library.FuseType{Name: "made", Band: []library.TimePoint{{Multiple: 1, MinS: c.minS, MaxS: c.maxS}, {Multiple: 4, MinS: c.minS, MaxS: c.maxS}}}
		fuse.Fuse.Rating = &library.FuseRating{RatingA: c.rating, MeltI2t: c.melt}
		p.found = nil
		p.judgeInrush(x)
		says(t, c.name, p.found, c.want)
	}
}

// A limit of 100 mm before the fuse: up to twice that is a fault.
func TestFuseDistanceAtTheEdge(t *testing.T) {
	for mm, want := range map[int]finding.Severity{100: none, 101: finding.Fault, 200: finding.Fault, 201: finding.Danger} {
		p := passOf(t, fuseTooFar, fmt.Sprintf(`
limits: {fuse distance: 100 mm}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: %d mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`, mm))
		says(t, fmt.Sprintf("%d mm", mm), p.run(), want)
	}
}

// A critical load behind a fuse that carries more than its rating is a danger.
func TestUnderLoadAtTheRating(t *testing.T) {
	p := passOf(t, fuseUnderLoad, `
loads:
  tail lamp: {power: 5 W, behaves: resistor, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`)
	b := part(t, p, "lamp fuse").Branches[0]
	for amps, want := range map[float64]finding.Severity{1: none, 4.9: finding.Fault, 5: finding.Fault, 5.01: finding.Danger} {
		for _, s := range p.in.Solutions {
			s.BranchA[b.Index] = amps
		}
		p.found, p.facts = nil, newFacts(p.in)
		p.judgeUnderLoad(b)
		says(t, fmt.Sprintf("%g A", amps), p.found, want)
	}
}

// A type without a re-rating table, such as one of a user's own library, is not known
// above the 23 °C at which it is rated.
func TestReratingNotKnown(t *testing.T) {
	for ambient, want := range map[int]finding.Severity{23: none, 24: finding.Advice} {
		p := passOf(t, dataMissing, fmt.Sprintf("places: {battery tray: {ambient: %d °C}, rear: {ambient: 23 °C}}\n", ambient))
		fuse := part(t, p, "lamp fuse").Branches[0].Fuse
		kind := *fuse.Type
		kind.Rerating, fuse.Type = nil, &kind
		says(t, fmt.Sprintf("%d °C", ambient), p.run(), want)
	}
}

// A fuse must be made for the highest voltage; without charging for 1.2 times
// the system's.
func TestFuseVoltageAtTheEdge(t *testing.T) {
	p := passOf(t, fuseVoltage, "")
	b := part(t, p, "lamp fuse").Branches[0]
	kind := *b.Fuse.Type
	b.Fuse.Type = &kind
	high := p.d.HighestV()
	for volts, want := range map[float64]finding.Severity{high - 0.01: finding.Danger, high: none, high + 0.01: none} {
		kind.MaxV = volts
		says(t, fmt.Sprintf("%g V of %g V", volts, high), p.run(), want)
	}
	p.d.Charging = design.Charging{}
	for volts, want := range map[float64]finding.Severity{14.39: finding.Danger, 14.41: none} {
		kind.MaxV = volts
		says(t, fmt.Sprintf("%g V without charging", volts), p.run(), want)
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

// The machine should start after 14 days, and must after those that the design gives.
func TestStandbyDaysAtTheEdge(t *testing.T) {
	p := passOf(t, standbyDrain, "")
	drainFor := func(days float64) float64 { // by halving
		low, high := 0.0, 10.0
		for range 100 {
			mid := (low + high) / 2
			if budget.StandbyDays(p.d, mid) > days {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	for days, want := range map[float64]finding.Severity{13.9: finding.Advice, 14.1: none, 14.9: none, 30: none} {
		p.in.Budget.StandbyA = drainFor(days) + p.reportedDrainA()
		says(t, fmt.Sprintf("%g days", days), p.run(), want)
	}
	drain := drainFor(20)
	p.in.Budget.StandbyA = drain + p.reportedDrainA()
	p.d.Limits.StandbyDays = design.Quantity{Value: budget.StandbyDays(p.d, p.in.Budget.StandbyA-p.reportedDrainA()), Text: "given"}
	says(t, "exactly the days asked for", p.run(), none)
	p.d.Limits.StandbyDays.Value += 0.01
	says(t, "a little less than asked for", p.run(), finding.Fault)
}

// A situation that is not short is no deficit; below cruising speed one that
// breaks even up to it is advice.
func TestDeficitAtTheEdges(t *testing.T) {
	p := passOf(t, chargingDeficit, "")
	cruise := p.d.Charging.CruiseRPM.Value
	for _, c := range []struct {
		name                   string
		rpm, even, over, gives float64
		want                   finding.Severity
	}{
		{"nothing to spare", cruise - 500, cruise, 0, 0, none},
		{"nothing to spare, and the battery gives", cruise - 500, cruise - 600, 0, 0.01, finding.Advice}, {"short below cruise", cruise - 500, cruise, 1, 1, finding.Advice},
		{"even above cruise", cruise - 500, cruise + 1, 1, 1, finding.Fault}, {"at cruise", cruise, cruise, 1, 0, finding.Fault},
		{"at no speed", cruise - 500, math.NaN(), 1, 1, finding.Fault},
	} {
		p.in.Budget.Lines = []*budget.Line{{Situation: &design.Situation{Name: "s", EngineRPM: c.rpm}, Usable: true, SpareA: -c.over,
			BatteryA: c.gives, BreakEvenRPM: c.even, BatteryHours: 1}}
		says(t, c.name, p.run(), c.want)
	}
}

// The nominal demand is covered: what only the likely one exceeds is advice, and so
// is less to spare than the design asks for. 2 A are given by the limits.
func TestSpareAtTheEdges(t *testing.T) {
	p := passOf(t, chargingDeficit, "limits: {spare: 2 A}\n")
	for _, c := range []struct {
		name          string
		spare, likely float64 // of 10 A
		want          finding.Severity
		says          string
	}{
		{"ample", 3, 8, none, ""}, {"as asked for", 2, 10, none, ""},
		{"below what is asked for", 1.99, 10, finding.Advice, "1.99 A to spare, and the design asks for 2.00 A"},
		{"likely more than there is", 3, 10.01, finding.Advice, "likely to reach 10.0 A, 10 mA short"},
		{"short at nominal", -0.01, 11, finding.Fault, "10 mA short"},
	} {
		p.in.Budget.Lines = []*budget.Line{{Situation: &design.Situation{Name: "s", EngineRPM: 9000}, Usable: true, SpareA: c.spare,
			OutputA: 10, LikelyA: c.likely, BatteryA: -1, BreakEvenRPM: 1000, BatteryHours: 1}}
		found := p.run()
		says(t, c.name, found, c.want)
		if len(found) > 0 && !strings.Contains(found[0].What, c.says) {
			t.Errorf("%s: %s, want %q", c.name, found[0].What, c.says)
		}
	}
}

// A start of 120 A for 10 s asks AGM for 0.370 Ah back. The machine takes 90 W at
// 14.3 V, 6.29 A, and the tail lamp 0.50 A, of 14 A at idle: 7.21 A are 0.370 Ah in
// 185 s.
func TestRideGivesTheStartBack(t *testing.T) {
	for legs, want := range map[string]finding.Severity{
		"{lasts: 180 s, engine: idle, on: none}": finding.Advice,
		"{lasts: 190 s, engine: idle, on: none}": none,
		"{lasts: 190 s, engine: idle, on: none}, {lasts: 5 min, on: none}, {lasts: 10 s, engine: idle, on: none}":  finding.Advice,
		"{lasts: 190 s, engine: idle, on: none}, {lasts: 5 min, on: none}, {lasts: 4 min, engine: idle, on: none}": none,
		"{lasts: 1 h, on: none}": none, // no start
	} {
		p := passOf(t, chargingDeficit, "rides: {short: {legs: ["+legs+"]}}\n")
		p.in.Budget.Lines = nil
		says(t, legs, p.run(), want)
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

// A heater of 20 W left on unseen is a hazard, a motor always.
func TestRunsUnseenAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		behaves design.Behaviour
		watts   float64
		want    bool
	}{{design.Resistor, 19.9, false}, {design.Resistor, 20, true}, {design.Motor, 1, true}, {design.ConstantPower, 100, false}} {
		l := &design.Load{Behaves: c.behaves, PowerW: c.watts}
		b := &circuit.Branch{Load: &circuit.LoadSpec{Load: l, Behaves: c.behaves}, Part: &circuit.Part{Kind: circuit.Load, Source: l}}
		if got := runsUnseen(b); got != c.want {
			t.Errorf("%s of %g W: %t", c.behaves, c.watts, got)
		}
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

// A device protects from overload that is rated no higher than the wire carries and sure
// to open at 1.45 times that.
func TestCoordinatedAtTheEdge(t *testing.T) {
	p := passOf(t, fuseWireCurve, "")
	p.in.Faults = fault.Compute(p.c)
	w := p.c.Wires[1]
	laid := &p.laid.Wires[w.Index]
	leastA := p.in.Faults.LeastA(w)
	for _, c := range []struct {
		allowedA, ratingA, opens float64
		want                     bool
	}{{10, 10, 1.35, true}, {9.9, 10, 1.35, false}, {10, 10, 1.45, true}, {10, 10, 1.46, false}, {20, 10, 2.9, true}} {
		laid.AllowedA = c.allowedA
		dev := fusing.Device{Type: &library.FuseType{Name: "own", Band: []library.TimePoint{
			{Multiple: c.opens, MinS: 1, MaxS: 100}, {Multiple: 100, MinS: 1, MaxS: 100}}}, Rating: &library.FuseRating{RatingA: c.ratingA}}
		if got := p.coordinated(dev, w); got != c.want {
			t.Errorf("%+v: %t", c, got)
		}
		for standsS, burns := range map[float64]bool{5: true, 5.1: !c.want, 59.9: !c.want, 60: false} {
			f := &protection.Fuse{Device: dev, FaultA: leastA * 0.99, Branch: part(t, p, "lamp fuse").Branches[0]}
			of := &protection.Wire{Wire: w, Protection: fusing.Protection{HurtS: standsS}}
			if got := p.burns(f, of); got != burns {
				t.Errorf("%+v, stood %g s: burns %t", c, standsS, got)
			}
			if got := p.settled(f, of); got != (standsS == 60 && c.want) {
				t.Errorf("%+v, stood %g s: settled %t", c, standsS, got)
			}
		}
	}
}

// A stalled motor that is on for two minutes while a button is held is let go of before the
// wire takes harm after three, if its fuse opens in the end.
func TestStalledMotorIsLetGo(t *testing.T) {
	for _, c := range []struct {
		held    string
		onS     float64
		standsS float64
		opens   bool
		want    finding.Severity
	}{{"yes", 0, 180, true, finding.Fault}, {"yes", 120, 119, true, finding.Fault}, {"yes", 120, 120, true, finding.Fault},
		{"yes", 120, 121, true, finding.Advice}, {"no", 120, 121, true, finding.Fault}, {"yes", 120, 180, false, finding.Fault},
		{"yes", 30, 59, true, finding.Danger}} {
		p := passOf(t, overloadHurtsWire, `
switches:
  button: {rating: 20 A, momentary: `+c.held+`, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: motor, at: rear, fed by: button, wire: {size: 1 mm²}, returns to: frame}
`)
		blocked := loadBranch(part(t, p, "tail lamp"))
		blocked.Load.Load.OnForS = design.Quantity{}
		if c.onS > 0 {
			blocked.Load.Load.OnForS = design.Quantity{Value: c.onS, Text: "given"}
		}
		o := &overload.Overload{Blocked: blocked, StandsS: c.standsS}
		if c.opens {
			o.Device = &circuit.Branch{}
		}
		if got := p.overloadSeverity(o); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// What a wire stands for a minute is an overload of the loads: the rule says so.
func TestLongOverloadAtTheEdge(t *testing.T) {
	if !strings.Contains(fuseWireCurve.Severity, "for a minute or longer") || !strings.Contains(overloadHurtsWire.Severity, "a minute") {
		t.Errorf("the rules say %q and %q", fuseWireCurve.Severity, overloadHurtsWire.Severity)
	}
	p := passOf(t, fuseWireCurve, "")
	p.in.Faults = fault.Compute(p.c)
	w := p.c.Wires[1]
	f := &protection.Fuse{Branch: part(t, p, "lamp fuse").Branches[0]}
	for standsS, want := range map[float64][2]finding.Severity{59.9: {finding.Danger, finding.Danger},
		60: {finding.Advice, finding.Fault}, 60.1: {finding.Advice, finding.Fault}} {
		p.found = nil
		p.reportCurve(f, &protection.Wire{Wire: w, Protection: fusing.Protection{KnownWorstA: 20, KnownRatio: 0.5, HurtS: standsS, HurtA: 20}})
		says(t, fmt.Sprintf("%g s", standsS), p.found, want[0])
		p.found = nil
		p.reportOverload(w, &overload.Overload{Wire: w, Amps: 20, OpensS: 100, StandsS: standsS, Device: f.Branch})
		says(t, fmt.Sprintf("%g s of an overload", standsS), p.found, want[1])
	}
	for ruins, want := range map[bool]finding.Severity{false: finding.Fault, true: finding.Danger} {
		p.found = nil
		p.reportOverload(w, &overload.Overload{Wire: w, Amps: 20, OpensS: math.Inf(1), StandsS: 3600, Ruins: ruins})
		says(t, fmt.Sprintf("ruins %t", ruins), p.found, want)
	}
}

// A wire that may carry 10 A and comes to its class at 12 A: up to 15 A a device
// without an overload to its name is advice. One that comes to its class at 16 A
// only: up to that.
func TestLetsThroughAtTheEdge(t *testing.T) {
	p := passOf(t, fuseOverWire, "")
	w := p.c.Wires[1]
	laid := &p.laid.Wires[w.Index]
	laid.AllowedA = 10
	for _, c := range []struct {
		toClassA, throughA float64
		want               finding.Severity
	}{{12, 14.9, finding.Advice}, {12, 15, finding.Advice}, {12, 15.1, finding.Danger},
		{16, 15.1, finding.Advice}, {16, 16, finding.Advice}, {16, 16.1, finding.Danger}} {
		laid.ToClassA = c.toClassA
		if got := p.letsThrough(w, c.throughA, finding.Danger); got != c.want {
			t.Errorf("%g A through what bears %g A: %v, want %v", c.throughA, c.toClassA, got, c.want)
		}
	}
}

// A wire of 10 A before two fuses: the largest alone above 15 A is a danger, their
// sum above it a fault; up to 15 A both are advice, up to 10 A nothing.
func TestWireBeforeFuseAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		first, second float64
		want          finding.Severity
	}{{5, 5, none}, {5, 5.7, none}, {5, 5.8, finding.Advice}, {7.5, 7.5, finding.Advice}, {7.5, 7.6, finding.Fault}, {10, 10, finding.Fault},
		{10.1, 1, finding.Advice}, {15, 1, finding.Advice}, {15.1, 1, finding.Danger}} {
		p := passOf(t, wireBeforeFuse, `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: rear, fed by: stud, wire: {size: 1 mm², length: 100 mm}}
  stop fuse: {type: blade C, rating: 5 A, at: rear, fed by: stud, wire: {size: 1 mm², length: 100 mm}}
splices:
  stud: {at: rear, fed by: battery, wire: {size: 1 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  stop lamp: {power: 5 W, behaves: resistor, at: rear, fed by: stop fuse, wire: {size: 1 mm²}, returns to: frame}
`)
		for name, rating := range map[string]float64{"lamp fuse": c.first, "stop fuse": c.second} {
			part(t, p, name).Branches[0].Fuse.Rating = &library.FuseRating{RatingA: rating}
		}
		w := p.c.Wires[0]
		p.facts = newFacts(p.in)
		if got := len(p.firstFuses(w)); got != 2 {
			t.Fatalf("%s leads to %d fuses", w.Text(), got)
		}
		laid := &p.laid.Wires[w.Index]
		laid.AllowedA, laid.ToClassA = 10, 11
		p.judgeBeforeFuse(w)
		says(t, fmt.Sprintf("%+v", c), p.found, c.want)
	}
}

// A wire of 178 mm that leads to a fuse is its tail, one of 179 mm is none: seven
// inches are 177.8 mm.
func TestTailAtItsLength(t *testing.T) {
	p := passOf(t, fuseTooFar, "")
	w := p.c.Wires[0]
	for metres, want := range map[float64]bool{0.1: true, 0.1777: true, 0.1778: true, 0.179: false} {
		if w.LengthM = metres; p.c.Tail(w) != want {
			t.Errorf("%g m: a tail %v", metres, !want)
		}
	}
	if p.c.Tail(p.c.Wires[1]) {
		t.Error("a wire to a lamp is a tail")
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

// At the practice's ratio two fuses in series are far enough apart, below it not.
func TestGradingAtTheEdge(t *testing.T) {
	p := passOf(t, fuseGrading, "")
	down := part(t, p, "lamp fuse").Branches[0]
	up := p.above(down)
	for off, want := range map[float64]finding.Severity{-0.01: finding.Advice, 0: none, 0.01: none} {
		down.Fuse.Rating = &library.FuseRating{RatingA: 5}
		up.Fuse.Rating = &library.FuseRating{RatingA: p.practice.FuseRatio*5 + off}
		says(t, fmt.Sprintf("%g A from the ratio", off), p.run(), want)
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

// What is left of a limit is the limit less the value, of a floor the value less it.
func TestMarginsByHand(t *testing.T) {
	for _, c := range []struct {
		holds        func(*finding.Finding, string, float64, float64, string)
		value, limit float64
		margin       float64
	}{{atMost, 12, 10, -2}, {atMost, 10, 10, 0}, {atMost, 9, 10, 1}, {atLeast, 9, 10, -1}, {atLeast, 10, 10, 0}, {atLeast, 12, 10, 2}} {
		var f finding.Finding
		c.holds(&f, "x", c.value, c.limit, "A")
		if got := f.Numbers[2].Value; got != c.margin || f.Numbers[0].Value != c.value || f.Numbers[1].Value != c.limit {
			t.Errorf("%g against %g: %+v", c.value, c.limit, f.Numbers)
		}
		if beyond := f.Figure.Beyond(); beyond != -c.margin {
			t.Errorf("%g against %g is %g beyond", c.value, c.limit, beyond)
		}
	}
}

// A wire is overtaken when its device's latest opening comes no sooner than the time
// it stands, where that is published.
func TestOvertakenAtTheEdge(t *testing.T) {
	p := passOf(t, fuseWireCurve, "")
	tail, feed := p.c.Wires[0], p.c.Wires[1]
	if p.overtaken(&protection.Wire{Wire: tail, Protection: fusing.Protection{KnownRatio: 0.99, KnownWorstA: 20}}) {
		t.Error("overtaken before the fuse that protects it")
	}
	for ratio, want := range map[float64]bool{0.99: true, 1: true, 1.01: false} {
		w := &protection.Wire{Wire: feed, Protection: fusing.Protection{KnownRatio: ratio, KnownWorstA: 20}}
		if got := p.overtaken(w); got != want {
			t.Errorf("ratio %g: %t", ratio, got)
		}
	}
	if p.overtaken(&protection.Wire{Wire: p.c.Wires[0]}) {
		t.Error("overtaken where nothing is published")
	}
}

// Of the shorts that hurt a wire the one with the least margin is told, of equal
// ones the first.
func TestWorstShortAtTheEdge(t *testing.T) {
	p := passOf(t, shortOverheatsWire, "")
	w := p.c.Wires[1] // the first is the tail before the lamp fuse
	for _, c := range []struct {
		standS []float64 // of 1 s until the fuse opens
		want   int
	}{{[]float64{0.5, 0.4}, 1}, {[]float64{0.4, 0.5}, 0}, {[]float64{0.5, 0.5}, 0}} {
		p.in.Faults = &fault.Study{}
		for _, s := range c.standS {
			sh := &fault.Short{Fed: true}
			sh.Results[0] = fault.Result{Clearing: fault.Clearing{Device: w.Branch, SlowS: 1}, Worst: &fault.Heat{Wire: w, Seconds: 1, DamageS: s}}
			p.in.Faults.Shorts = append(p.in.Faults.Shorts, sh)
		}
		if got := p.worstShorts()[w.Index].short; got != p.in.Faults.Shorts[c.want] {
			t.Errorf("%v: another one", c.standS)
		}
	}
}

// Afloat a device that feeds others must break what a short draws, but for a tenth; one
// of 30 A and less, whose own resistance limits the short, but for half.
func TestBreakingOfAMainAtTheEdge(t *testing.T) {
	p := passOf(t, fuseBreakingCapacity, `
fuses:
  main: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: main, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "a test", own switch: yes}
`)
	boat := *p.practice
	boat.Afloat = true
	p.practice, p.d.Practice = &boat, &boat
	p.d.Battery.Chemistry = p.d.Library.Chemistry("LiFePO4")
	b := part(t, p, "main").Branches[0]
	kind := *b.Fuse.Type
	kind.BreakingA, kind.Breaks, b.Fuse.Type = 1000, nil, &kind
	for rating, above := range map[float64]map[float64]finding.Severity{
		31: {1000: none, 1001: finding.Advice, 1099: finding.Advice, 1101: finding.Danger},
		30: {1000: none, 1001: finding.Advice, 1499: finding.Advice, 1501: finding.Danger},
	} {
		size := *b.Fuse.Rating
		size.RatingA, b.Fuse.Rating = rating, &size
		for fault, want := range above {
			p.in.Protection, p.found = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: fault}}}, nil
			p.judgeBreaking(b)
			says(t, fmt.Sprintf("%g A, %g A", rating, fault), p.found, want)
		}
	}
}
