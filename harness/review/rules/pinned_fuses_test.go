package rules

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
	"fusewright/library"
)

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

// A fuse-link of 5 A that breaks 1 000 A: on vehicles half more is as well as that, and what is above
// advice. Afloat a battery of 257 A cold cranking (5.4 V / 21 mΩ) asks 750 A of a
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
	for fault, want := range map[float64]finding.Severity{1000: none, 1001: none, 1500: none, 1501: finding.Advice} {
		p.in.Protection = &protection.Study{Fuses: []*protection.Fuse{{Branch: b, FaultA: fault}}}
		p.found = nil
		p.judgeBreaking(b)
		says(t, fmt.Sprintf("%g A", fault), p.found, want)
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
		for _, assumed := range []bool{false, true} {
			p.found, l.StartAssumed = nil, assumed
			p.judgeInrush(x)
			says(t, c.name, p.found, map[bool]finding.Severity{false: c.want, true: min(c.want, finding.Advice)}[assumed])
		}
	}
}

// Makers of a compressor fridge fit 15 A at 12 V, but no more than the fridge's own maker allows; a factory's fuse is not
// chosen here.
func TestSmallerThanMakersFit(t *testing.T) {
	for _, c := range []struct {
		rating, load string
		want         finding.Severity
	}{
		{"10 A", "type: compressor fridge", finding.Advice},
		{"15 A", "type: compressor fridge", none},
		{"10 A", "type: compressor fridge, maximum fuse: 10 A", none},
		{"7.5 A", "type: compressor fridge, maximum fuse: 10 A", finding.Advice},
		{"10 A", "power: 45 W, behaves: constant power", none},
	} {
		p := passOf(t, fuseInrush, fmt.Sprintf(`
fuses:
  lamp fuse: {type: blade C, rating: %s, at: battery tray, fed by: keyed feed, wire: {size: 4 mm², length: 100 mm}}
loads:
  fridge: {%s, at: rear, fed by: lamp fuse, wire: {size: 4 mm²}, returns to: frame}
`, c.rating, c.load))
		says(t, c.rating+" before "+c.load, p.run(), c.want)
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
