package remedy

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
	"fusewright/harness/study/budget"
	"fusewright/harness/study/together"
)

const danger, fault, advice = finding.Danger, finding.Fault, finding.Advice

// amps is a finding of so many amperes against 10 A.
func amps(s finding.Severity, value float64) *finding.Finding {
	return &finding.Finding{Rule: "r", Part: "p", Severity: s,
		Figure: figure.Figure{Value: value, Limit: 10, Of: quantity.Current, Worse: figure.Larger}}
}

func some(list ...finding.Severity) (out []*finding.Finding) {
	for _, s := range list {
		out = append(out, &finding.Finding{Severity: s})
	}
	return out
}

// TestByHandNears: a finding 10 A beyond its limit comes nearer from 1 A on.
func TestByHandNears(t *testing.T) {
	f := amps(fault, 20)
	for _, c := range []struct {
		name string
		left *finding.Finding
		want bool
	}{
		{"gone", nil, true},
		{"below the share", amps(fault, 19.01), false},
		{"at the share", amps(fault, 19), true},
		{"above it", amps(fault, 18), true},
		{"further away", amps(fault, 21), false},
		{"milder, no nearer", amps(advice, 20), true},
		{"graver", amps(danger, 20), false},
		{"without a figure", &finding.Finding{Severity: fault}, true},
	} {
		x := &Trial{left: map[*finding.Finding]*finding.Finding{f: c.left}}
		if got := x.nears(f); got != c.want {
			t.Errorf("%s: %t", c.name, got)
		}
	}
}

// TestByHandTake: gone is mended, milder is eased, further beyond by more than a twentieth
// is worse; what it spoke for counts with it.
func TestByHandTake(t *testing.T) {
	spoken := &finding.Finding{Severity: danger}
	speaks := amps(danger, 20)
	speaks.Covers = []*finding.Finding{spoken}
	for _, c := range []struct {
		name                 string
		f, left, spoken      *finding.Finding
		mends, eases, worsen int
	}{
		{"gone", amps(fault, 20), nil, nil, 1, 0, 0},
		{"milder", amps(fault, 20), amps(advice, 20), nil, 0, 1, 0},
		{"as it was", amps(fault, 20), amps(fault, 20), nil, 0, 0, 0},
		{"at a twentieth", amps(fault, 20), amps(fault, 20.5), nil, 0, 0, 0},
		{"above a twentieth", amps(fault, 20), amps(fault, 20.51), nil, 0, 0, 1},
		{"what it spoke for is left", speaks, nil, amps(fault, 1), 0, 1, 0},
		{"as grave", speaks, nil, amps(danger, 1), 0, 0, 0},
	} {
		x := &Trial{}
		x.take(c.f, c.left, func(*finding.Finding) *finding.Finding { return c.spoken })
		if len(x.Mends) != c.mends || len(x.Eases) != c.eases || len(x.Worsens) != c.worsen {
			t.Errorf("%s: mends %d, eases %d, worsens %d", c.name, len(x.Mends), len(x.Eases), len(x.Worsens))
		}
	}
}

// TestByHandHolds: what a change brings is advice at most, and it and what gets worse are
// milder than what is mended.
func TestByHandHolds(t *testing.T) {
	for _, c := range []struct {
		name                   string
		mends, breaks, worsens []*finding.Finding
		want                   bool
	}{
		{"nothing mended", nil, nil, nil, false},
		{"mended", some(advice), nil, nil, true},
		{"advice for a fault", some(fault), some(advice), nil, true},
		{"advice for advice", some(advice), some(advice), nil, false},
		{"a fault for a danger", some(danger), some(fault), nil, false},
		{"a fault worse, a danger mended", some(danger), nil, some(fault), true},
		{"a fault worse, a fault mended", some(fault), nil, some(fault), false},
	} {
		if got := (&Trial{Mends: c.mends, Breaks: c.breaks, Worsens: c.worsens}).Holds(); got != c.want {
			t.Errorf("%s: %t", c.name, got)
		}
	}
}

// TestByHandBest: a mended danger goes before two mended faults, mended before eased; of
// equal ones the first that harms less.
func TestByHandBest(t *testing.T) {
	d, f, g := amps(danger, 20), amps(fault, 20), amps(fault, 30)
	list := func(x ...*finding.Finding) []*finding.Finding { return x }
	faults := &Trial{About: "two faults", Mends: list(f, g)}
	eased := &Trial{About: "eased", Mends: list(f), Eases: list(g)}
	for _, c := range []struct {
		name  string
		order []*Trial
		want  string
	}{
		{"none", nil, ""},
		{"danger first", []*Trial{faults, {About: "danger", Mends: list(d)}}, "danger"},
		{"mended before eased", []*Trial{eased, faults}, "two faults"},
		{"the first of equals", []*Trial{{About: "one", Mends: list(d)}, {About: "two", Mends: list(d)}}, "one"},
		{"less harm", []*Trial{{About: "one", Mends: list(d), Worsens: some(advice)}, {About: "two", Mends: list(d)}}, "two"},
		{"a decision is none", []*Trial{{About: "one", Mends: list(d, f), Decides: true}, faults}, "two faults"},
		{"what does not hold is none", []*Trial{{About: "one", Mends: list(d), Breaks: some(danger)}, faults}, "two faults"},
	} {
		t.Run(c.name, func(t *testing.T) {
			x := &tester{Input: &Input{Circuit: &circuit.Circuit{}}, order: c.order}
			got := ""
			if best := x.best(list(d, f, g)); best != nil {
				got = best.About
			}
			if got != c.want {
				t.Errorf("%q", got)
			}
		})
	}
}

// What is on at once at a part is not decided with the part.
func TestByHandByPart(t *testing.T) {
	x, y := amps(danger, 20), amps(fault, 20)
	x.Part, y.Part = "m", "m"
	both, other := &finding.Finding{Part: "m", Situation: "s"}, &finding.Finding{Part: "n"}
	list := byPart([]*finding.Finding{x, both, y, other})
	if len(list) != 3 || len(list[0].Findings) != 2 || list[1].Findings[0] != both || list[2].Findings[0] != other {
		t.Errorf("%d causes", len(list))
	}
}

// TestByHandOthers: beside the remedy, at most two that help, bring nothing as grave and
// leave less, the one that leaves least first.
func TestByHandOthers(t *testing.T) {
	f := amps(fault, 20)
	trial := func(about string, left int, breaks ...finding.Severity) *Trial {
		return &Trial{About: about, Mends: []*finding.Finding{f}, after: count{0, left}, Breaks: some(breaks...)}
	}
	remedy := trial("remedy", 0)
	x := &tester{before: count{0, 4}, order: []*Trial{remedy, trial("leaves 3", 3), trial("leaves 4", 4), trial("fault", 0, fault),
		trial("leaves 1", 1, advice), trial("leaves 2", 2), {About: "no help", after: count{}}}}
	var got []string
	for _, o := range x.others(&Cause{Findings: []*finding.Finding{f}, Remedy: remedy}) {
		got = append(got, o.About)
	}
	if !slices.Equal(got, []string{"leaves 1", "leaves 2"}) {
		t.Errorf("%q", got)
	}
	x.order = []*Trial{trial("leaves 4", 4)}
	if list := x.others(&Cause{Findings: []*finding.Finding{f}}); len(list) != 0 {
		t.Errorf("%s leaves as much as before", list[0].About)
	}
}

// testerOf is a tester of an example's sections.
func testerOf(t *testing.T, sections string) *tester {
	t.Helper()
	c := buildtest.Circuit(t, example.Design(sections))
	d := c.Design
	return newTester(&Input{Design: d, Circuit: c, Amps: func(*circuit.Branch) float64 { return 1 }})
}

// TestByHandTakes: a wire that its own size mends does not wait for its neighbour's; what
// all share may still take it.
func TestByHandTakes(t *testing.T) {
	x := testerOf(t, "")
	one, two := x.Circuit.Wires[1], x.Circuit.Wires[2] // fuse to lamp, lamp to frame
	size := func(w *circuit.Wire) *sizing.Value {
		return x.values[slices.IndexFunc(x.values, func(v *sizing.Value) bool { return v.Sets(w) })]
	}
	f := amps(fault, 20)
	f.Ref = two.Number
	neighbour := &Trial{Mends: []*finding.Finding{f}, sizes: []*sizing.Value{size(one)}}
	own := &Trial{Mends: []*finding.Finding{f}, sizes: []*sizing.Value{size(two)}}
	x.order = []*Trial{neighbour}
	if !x.takes(neighbour, f) {
		t.Error("nothing else mends it")
	}
	x.order = append(x.order, own)
	if x.takes(neighbour, f) || !x.takes(own, f) || !x.takes(&Trial{Eases: []*finding.Finding{f}}, f) || x.takes(&Trial{}, f) {
		t.Error("its own size mends it")
	}
	own.Breaks = some(danger)
	if !x.takes(neighbour, f) {
		t.Error("its own size does not hold")
	}
}

// TestByHandLadders: how many of each are tried, and that what a lamp shares with others
// comes after its own wire, what joints take most of not at all.
func TestByHandLadders(t *testing.T) {
	x := testerOf(t, `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 3 m}}
  short fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 30 mm}}
switches:
  rocker: {rating: 10 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm², length: 1 m}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: rocker, wire: {size: 1 mm², length: 2 m}, returns to: frame, return wire: {size: 1 mm², length: 4 m}}
  dome lamp: {power: 5 W, behaves: resistor, at: rear, fed by: short fuse, wire: {size: 1 mm², length: 2 m}, returns to: frame}
`)
	fuse := slices.IndexFunc(x.Circuit.Branches, func(b *circuit.Branch) bool { return b.Fuse != nil && b.Part.Name == "lamp fuse" })
	if up, down := x.ratings(x.Circuit.Branches[fuse], +1), x.ratings(x.Circuit.Branches[fuse], -1); len(up) != 5 || up[0].Will != "blade C 7.5 A" ||
		len(down) != 4 || down[0].Will != "blade C 4 A" || !up[0].degree {
		t.Errorf("%d ratings up, %d down", len(up), len(down))
	}
	if l := x.sizes(x.Circuit.Wires[0]); len(l) != 4 || l[0].Will != "1.5 mm²" || !l[0].degree {
		t.Errorf("%d sizes", len(l))
	}
	var got []string
	for _, part := range []string{"tail lamp", "dome lamp"} {
		for _, w := range x.lossyWires(&finding.Finding{Rule: "voltage-drop", Part: part}) {
			got = append(got, w.From.Part.Name+" - "+w.To.Part.Name)
		}
	}
	if want := []string{"tail lamp - frame", "rocker - tail lamp", "battery - lamp fuse", // of four the three that lose most
		"short fuse - dome lamp", "dome lamp - frame"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	dome := &finding.Finding{Rule: "voltage-drop", Part: "dome lamp"}
	w := x.lossyWires(dome)[1]
	for share, want := range map[float64]bool{0.99: true, 1: true, 1.01: false} {
		w.EndsOhm = share * w.ConductorOhm20
		if got := slices.Contains(x.lossyWires(dome), w); got != want {
			t.Errorf("joints of %g of the copper: tried %t", share, got)
		}
	}
	if l := x.lossyWires(&finding.Finding{Part: "tail lamp", Ref: "W1"}); l != nil {
		t.Error("a finding that names its wire is about that one")
	}
}

// TestByHandClimb: a ladder ends where the finding is mended, where a degree brings it no
// nearer, and where it brings something as grave; another kind of change is tried all the same.
func TestByHandClimb(t *testing.T) {
	for _, c := range []struct {
		name   string
		degree bool
		value  float64 // A of the finding with the change; 10 = gone
		brings finding.Severity
		want   int
	}{
		{"mended", true, 10, 0, 1},
		{"mended, with advice", true, 10, advice, 3},
		{"as grave", true, 10, fault, 1},
		{"no nearer", true, 20, 0, 1},
		{"nearer", true, 15, 0, 3},
		{"no nearer, of another kind", false, 20, 0, 3},
		{"as grave, of another kind", false, 15, fault, 3},
	} {
		x := testerOf(t, "")
		f := amps(fault, 20)
		x.open, x.same = []*finding.Finding{f}, byKey([]*finding.Finding{f})
		x.Judge = func() (list []*finding.Finding, built bool) {
			if c.value > 10 {
				list = append(list, amps(fault, c.value))
			}
			if c.brings != 0 {
				list = append(list, &finding.Finding{Rule: "other", Severity: c.brings})
			}
			return list, true
		}
		var l ladder
		for _, will := range []string{"1", "2", "3"} {
			l = append(l, &Trial{Will: will, degree: c.degree, put: func() func() { return func() {} }})
		}
		x.climb(f, []ladder{l})
		if len(x.order) != c.want {
			t.Errorf("%s: %d tried", c.name, len(x.order))
		}
	}
}

// TestByHandRun: what only the changed design has, or has graver, is brought; accepted and
// known findings are not counted; without time nothing is tried.
func TestByHandRun(t *testing.T) {
	x := testerOf(t, "")
	f := amps(fault, 20)
	x.open, x.same = []*finding.Finding{f}, byKey([]*finding.Finding{f})
	judged := func(list ...*finding.Finding) *Trial {
		x.Judge = func() ([]*finding.Finding, bool) { return list, true }
		one := &Trial{put: func() func() { return func() {} }}
		x.run(one)
		return one
	}
	accepted, known := amps(danger, 20), amps(danger, 20)
	accepted.Accepted, known.Known = "as it is", true
	if one := judged(accepted, known); len(one.Mends) != 1 || len(one.Breaks) != 0 || one.after != (count{}) {
		t.Errorf("accepted and known: %+v", one)
	}
	if one := judged(amps(fault, 20)); len(one.Breaks) != 0 || one.after != (count{0, 1}) {
		t.Errorf("the same: %+v", one)
	}
	if one := judged(amps(danger, 20)); len(one.Breaks) != 1 {
		t.Errorf("graver: %+v", one)
	}
	if one := judged(amps(fault, 20), amps(fault, 30)); len(one.Breaks) != 1 {
		t.Errorf("a second of the kind: %+v", one)
	}
	if x.left = 1; x.try(&Trial{Will: "a", put: func() func() { return func() {} }}) == nil || x.cut {
		t.Error("the last one is tried")
	}
	if x.try(&Trial{Will: "b"}) != nil || !x.cut {
		t.Error("one too many is tried")
	}
}

// TestByHandTime: a small design has 120 reviews, one of 100 wires 60.
func TestByHandTime(t *testing.T) {
	x := testerOf(t, "")
	for wires, want := range map[int]int{0: 120, 10: 120, 50: 120, 60: 100, 100: 60, 6000: 1, 6001: 0} {
		c := *x.Circuit
		c.Wires = make([]*circuit.Wire, wires)
		if got := reviewsFor(&c); got != want {
			t.Errorf("%d wires: %d reviews, want %d", wires, got, want)
		}
	}
}

// TestByHandFuseOfOthers: behind the 30 A of a heater of 20 A a lamp of 1 A gets a fuse of its
// own, no thicker wire; alone behind it, or taking 8 A, its wire or that fuse is changed.
func TestByHandFuseOfOthers(t *testing.T) {
	const loads = `
fuses:
  lamp fuse: {type: blade C, rating: 30 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
splices:
  joint: {at: rear, fed by: lamp fuse, wire: {size: 4 mm²}}
loads:
  tail lamp: {current: 1 A, behaves: resistor, at: rear, fed by: joint, wire: {size: 1 mm²}, returns to: frame}
  heater: {current: 20 A, behaves: resistor, at: rear, fed by: joint, wire: {size: 4 mm²}, returns to: frame}
`
	for _, c := range []struct {
		name, from, to string
		own            bool
	}{
		{"of others", "none", "none", true},
		{"at four times", "current: 1 A", "current: 7.5 A", false},
		{"below four times", "current: 1 A", "current: 7.4 A", true},
		{"alone", "current: 20 A", "current: 0.5 A", false},
	} {
		x := testerOf(t, strings.ReplaceAll(loads, c.from, c.to))
		at := slices.IndexFunc(x.Circuit.Wires, func(w *circuit.Wire) bool { return w.To.Part.Name == "tail lamp" })
		w := x.Circuit.Wires[at]
		if got := x.fuseIsNotItsOwn(w); got != c.own || (x.fused(w) != nil) != c.own {
			t.Errorf("%s: %t", c.name, got)
		}
	}
}

// TestByHandTogether: a wire that would be more than two sizes thicker than the other one of its
// load takes that one with it.
func TestByHandTogether(t *testing.T) {
	x := testerOf(t, "")
	var got []string
	for _, l := range x.sizes(x.Circuit.Wires[1]) { // fuse to lamp
		got = append(got, l.About+" "+l.Will)
	}
	if want := []string{"tail lamp, wire 1.5 mm²", "tail lamp, wire 2.5 mm²", "tail lamp, wire and return wire 4 mm²",
		"tail lamp, wire and return wire 6 mm²"}; !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// TestByHandAbout: a situation goes on without a load only where another one has it on too.
func TestByHandAbout(t *testing.T) {
	x := testerOf(t, "\nloads:\n  grips: {power: 30 W, symbol: heater, own switch: yes, at: rear, fed by: lamp fuse, returns to: frame}\n")
	lamp := x.Design.Loads[0]
	x.hands = together.Weigh(x.Circuit, nil, &budget.Budget{})
	day, night := &design.Situation{Name: "day"}, &design.Situation{Name: "night", On: []*design.Load{lamp}}
	x.Design.Situations = []*design.Situation{day, night}
	if l := x.without("night"); len(l) != 0 {
		t.Errorf("without what it is about: %s", l[0].Will)
	}
	day.On = night.On
	if l := x.without("night"); len(l) != 1 {
		t.Errorf("%d changes", len(l))
	}
}

// TestByHandBar: ashore five rings stay on a stud; six go to a bus bar whose wire is no
// thinner than the thickest of them, and when it is taken away they are as they were.
func TestByHandBar(t *testing.T) {
	six := "\nloads:\n"
	for i, size := range []string{"1 mm²", "2.5 mm²", "1 mm²", "1 mm²", "1 mm²", "1 mm²"} {
		six += fmt.Sprintf("  lamp %d: {power: 1 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame, return wire: {size: %s}}\n", i, size)
	}
	five := six[:strings.Index(six, "  lamp 5")]
	if l := testerOf(t, five).bar(frameOf(testerOf(t, five))); l != nil {
		t.Errorf("five: %s", l[0].Will)
	}
	x := testerOf(t, six)
	l := x.bar(frameOf(x))
	if len(l) == 0 || l[0].Will != "a bus bar for 6 wires, 100 A, to it by 200 mm of 2.5 mm²" {
		t.Fatalf("six: %v", l)
	}
	back := l[0].put()
	c, err := circuit.Build(x.Design)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range c.Parts {
		if p.Name == "frame" && len(p.Terminals[0].Wires) != 1 || p.Name == "frame bar" && len(p.Terminals[0].Wires) != 7 {
			t.Errorf("%s: %d rings", p.Name, len(p.Terminals[0].Wires))
		}
	}
	if back(); len(x.Design.Grounds) != 1 || x.Design.Loads[0].Returns[0].From.Part != x.Design.Grounds[0] {
		t.Errorf("the bar stayed")
	}
}

func frameOf(x *tester) *circuit.Part { return x.part("frame") }
