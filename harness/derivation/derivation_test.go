package derivation_test

import (
	"encoding/json"
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/derivation"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/finding"
	"fusewright/harness/workshop/cutting"
	"fusewright/library"
)

func reviewOf(t testing.TB, file string) *harness.Review {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(file, src, library.Default())
	if err != nil {
		return nil
	}
	r, err := harness.Assess(d)
	if err != nil {
		return nil
	}
	return r
}

func of(t *testing.T, r *harness.Review, what string) *derivation.Tree {
	t.Helper()
	tree, err := derivation.Of(r, what)
	if err != nil {
		t.Fatal(err)
	}
	return tree
}

var demos = []string{"fen-runner", "reed-skiff", "sedge-sloop", "hay-wain"}

// The figure that is explained is the one that the review has.
func TestFiguresOfTheReview(t *testing.T) {
	compared := 0
	for _, demo := range demos {
		r := reviewOf(t, "../../designs/"+demo+".yaml")
		s := r.Corners
		names := derivation.Names(r)
		same := func(what string, want float64) {
			t.Helper()
			if !slices.Contains(names, what) {
				return
			}
			compared++
			tree := of(t, r, what)
			scale := map[string]float64{"mV": 1e-3, "mA": 1e-3, "mΩ": 1e-3}[tree.Root.Unit]
			if scale == 0 {
				scale = 1
			}
			if got := tree.Root.Number * scale; math.Abs(got-want) > 1e-9*math.Abs(want) {
				t.Errorf("%s, %s: %.10g, the review has %.10g", demo, what, got, want)
			}
		}
		for _, b := range r.Circuit.Branches {
			if b.Kind != circuit.LoadBranch || b.Load.Load == nil || b.Load.Standby {
				continue
			}
			on := func(i int) bool { return s.Solution(i).LoadOn[b.Index] }
			drop, _ := s.WorstIn(1, corner.AtWorst, on, func(i int) corner.Value { return s.Drop(i, b) })
			same("drop of "+b.Part.Name, drop.Corner)
			least, _ := s.WorstIn(-1, corner.AtWorst, on, func(i int) corner.Value { return s.LoadV(i, b) })
			same("volts at "+b.Part.Name, least.Corner)
		}
		for _, w := range r.Circuit.Wires {
			always := func(int) bool { return true }
			hot, _ := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.WireC(i, w) })
			same("temperature of "+w.Number, hot.Corner)
			most, _ := s.WorstIn(1, corner.AtWorst, always, func(i int) corner.Value { return s.Amps(i, w.Branch) })
			same("current of "+w.Number, most.Corner)
			same("allowed current of "+w.Number, s.Model.Wires[w.Index].AllowedA)
			same("cut length of "+w.Number, cutting.LengthM(w))
		}
		for _, l := range r.Budget.Lines {
			same("spare in "+l.Situation.Name, l.SpareA)
		}
		same("days parked", r.Budget.StandbyDays)
	}
	if compared < 500 {
		t.Errorf("%d figures compared", compared)
	}
}

// A finding is explained by its own figure and limit.
func TestFindings(t *testing.T) {
	derived := 0
	for _, demo := range demos {
		r := reviewOf(t, "../../designs/"+demo+".yaml")
		for _, f := range r.Findings {
			tree := of(t, r, "finding "+numberOf(f.Number))
			if !f.Figure.Given() || tree.Line != f.Pos.Line {
				continue
			}
			if tree.Root.Formula != "" {
				derived++
			}
			if got := base(tree.Root); math.Abs(got-f.Figure.Value) > 1e-6*math.Abs(f.Figure.Value) {
				t.Errorf("%s, finding %d: %g, its figure is %g", demo, f.Number, got, f.Figure.Value)
			}
			if tree.Limit != nil && math.Abs(base(tree.Limit)-f.Figure.Limit) > 1e-6*math.Abs(f.Figure.Limit) {
				t.Errorf("%s, finding %d: limit %g, want %g", demo, f.Number, base(tree.Limit), f.Figure.Limit)
			}
		}
	}
	if derived < 14 {
		t.Errorf("%d findings have a derived figure", derived)
	}
}

// The figures of these rules stand with their steps, down to what the design and the library say: each can be done again by hand.
func TestFindingsByHand(t *testing.T) {
	for _, rule := range []string{"starter-does-not-turn", "short-too-weak", "start-over-link", "switch-overload"} {
		r := reviewOf(t, "../../testdata/rules/"+rule+".yaml")
		found := 0
		for _, f := range r.Findings {
			if f.Rule != rule {
				continue
			}
			found++
			tree := of(t, r, "finding "+numberOf(f.Number))
			if off, bare := offIn(tree.Root), bareIn(tree.Root); tree.Root.Formula == "" || off != nil || bare != nil {
				t.Errorf("%s: %s = %q, off %v, from nowhere %v", rule, tree.Root.Label, tree.Root.Formula, off, bare)
			}
			if got := base(tree.Root); math.Abs(got-f.Figure.Value) > 1e-6*math.Abs(f.Figure.Value) {
				t.Errorf("%s: %g, its figure is %g", rule, got, f.Figure.Value)
			}
		}
		if found == 0 {
			t.Errorf("%s: nothing is found", rule)
		}
	}
}

// A link between batteries in series is named in what lies before a short and in what the posts lose while the starter turns.
func TestLinkIsNamed(t *testing.T) {
	text := strings.Replace(string(example.Design("battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 6 mΩ, in series: 2, link: {size: 1 mm², length: 9 m}, at: battery tray}\n")), "system: 12 V", "system: 24 V", 1)
	d, err := design.Read("series.yaml", []byte(text), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	link := r.Circuit.Wires[slices.IndexFunc(r.Circuit.Wires, func(w *circuit.Wire) bool { return w.Role == circuit.LinkWire })].Number
	named := 0
	for _, what := range derivation.Names(r) {
		starter := strings.HasPrefix(what, "finding ") && strings.Contains(asJSON(t, of(t, r, what)), "does not turn the engine")
		if !starter && !strings.HasPrefix(what, "prospective short at ") {
			continue
		}
		tree := of(t, r, what)
		if off := offIn(tree.Root); off != nil || !strings.Contains(asJSON(t, tree), "resistance of "+link) {
			t.Errorf("%s: does not name link %s, or is off: %v", what, link, off)
		}
		named++
	}
	if named < 3 {
		t.Errorf("%d figures", named)
	}
}

func numberOf(n int) string {
	return strings.TrimLeft(string(rune('0'+n/10))+string(rune('0'+n%10)), "0")
}

func base(s *derivation.Step) float64 {
	return s.Number * map[string]float64{"mV": 1e-3, "mA": 1e-3, "mΩ": 1e-3, "ms": 1e-3, "%": 1e-2, "V": 1, "A": 1, "Ω": 1, "s": 1, "m": 1, "": 1}[s.Unit]
}

// What people type for a figure is taken for it where every word is accounted for; else the
// nearest are offered, the likeliest first.
func TestAskedOtherwise(t *testing.T) {
	for _, demo := range []struct {
		name        string
		taken, near map[string]string // figure; the first offered, "" = none
	}{{"fen-runner", map[string]string{
		"drop left lamp": "drop of left lamp", "Drop of the LEFT lamp": "drop of left lamp", "drop of E1": "drop of left lamp",
		"voltage drop of left lamp": "drop of left lamp", "voltage drop E1": "drop of left lamp", "drop at heated grips": "drop of heated grips",
		"limit drop of left lamp": "limit of left lamp", "Voltage at left lamp?": "volts at left lamp", "left lamp voltage": "volts at left lamp",
		"amps of left lamp": "current of left lamp", "what does left lamp draw": "current of left lamp",
		"rating of main": "rating of F1", "fuse rating of F3": "rating of F3", "fuse of left lamp": "rating of F3", "fuse of E1": "rating of F3",
		"time to open F3": "time to open of F3", "time to open main": "time to open of F1", "when does F3 blow?": "time to open of F3",
		"why does F3 not open": "time to open of F3", "weakest short of F3": "time to open of F3",
		"why is W7 2.5 mm²": "allowed current of W7", "is W7 thick enough": "allowed current of W7", "size of W7": "allowed current of W7",
		"ampacity of W7": "allowed current of W7", "W7 allowed current": "allowed current of W7", "allowed current of w7": "allowed current of W7",
		"wire of left lamp": "allowed current of W6", "how thick is the wire of left lamp": "allowed current of W6",
		"what is the current in w7": "current of W7", "current of wire W7": "current of W7", "how hot does W7 get": "temperature of W7",
		"contacts of W7": "crimps of W7", "length of W4": "cut length of W4", "how long is W4": "cut length of W4",
		"short circuit at W7": "prospective short at W7", "greatest short W 7": "greatest short at W7", "max short W7": "greatest short at W7",
		"spare at idle": "spare in town, waiting", "spare at cruise": "spare in night cruise", "charging at idle": "spare in town, waiting",
		"parked": "days parked", "standby time": "days parked", "how long can it stand parked": "days parked",
	}, map[string]string{
		"drop of left lmap": "drop of left lamp", "drop of heatd grips": "drop of heated grips", "allowed curent of W7": "allowed current of W7",
		"timeto open of F3": "time to open of F3", "prospectiv short at W7": "prospective short at W7", "cut lenght of W4": "cut length of W4",
		"spare in night cruse": "spare in night cruise", "left lamp": "drop of left lamp", "F3": "rating of F3", "drop": "drop of left lamp",
		"battery life": "hours in stopped, lights out", "99": "", "finding 0": "", "W99": "", "alternator output": "", "": "", "²": "",
	}}, {"sedge-sloop", map[string]string{
		"hours at anchor": "hours at anchor", "hours of house at anchor": "hours of house at anchor",
		"how long does house last at anchor": "hours of house at anchor", "temperature of windlass": "temperature of W40",
	}, map[string]string{"hours of starter at anchor": "hours at anchor", "current of anchor lmap": "current of anchor lamp"}}, {"hay-wain", map[string]string{
		"fuse of booster": "rating of F1", "wire of booster": "allowed current of W2",
		"time to open booster end": "time to open of F2", "hours of house parked": "hours of house in parked",
	}, nil}, {"reed-skiff", map[string]string{"finding no. 1": "finding 1", "#1": "finding 1", "1": "finding 1"}, nil}} {
		r := reviewOf(t, "../../designs/"+demo.name+".yaml")
		for asked, want := range demo.taken {
			if got, err := derivation.Of(r, asked); err != nil || got.What != want {
				t.Errorf("%q is taken for %v (%v), want %q", asked, got, err, want)
			}
		}
		for asked, want := range demo.near {
			_, err := derivation.Of(r, asked)
			var miss *derivation.Unknown
			if !errors.As(err, &miss) || want != "" && (len(miss.Nearest) == 0 || miss.Nearest[0] != want) || want == "" && len(miss.Nearest) > 0 {
				t.Errorf("%q: %v, want %q offered", asked, err, want)
			}
		}
	}
}

// A resistor is asked for by its heat, I²·R of what flows, which decides its finding too; of what is near a miss only figures of the part that is named are offered.
func TestAskedOfAResistor(t *testing.T) {
	r := reviewOf(t, "../../testdata/rules/ok/two-speeds.yaml")
	for _, asked := range []string{"heat of pad dropper", "power of pad dropper", "how warm does the pad dropper get", "heat of R2"} {
		got := of(t, r, asked)
		a, ohm := got.Root.From[0], got.Root.From[1]
		if want := base(a) * base(a) * 2; got.What != "heat of pad dropper" || base(ohm) != 2 || math.Abs(got.Root.Number-want) > 0.01*want || got.Limit == nil || got.Limit.Number != 50 {
			t.Errorf("%q: %s %+v, by hand %g", asked, got.What, got.Root, want)
		}
	}
	var miss *derivation.Unknown
	if _, err := derivation.Of(r, "colour of pad dropper"); !errors.As(err, &miss) || len(miss.Nearest) == 0 ||
		slices.ContainsFunc(miss.Nearest, func(name string) bool { return !strings.HasSuffix(name, " pad dropper") }) {
		t.Errorf("%v", err)
	}
}

// machineWithIsolator is a ketch with an isolator, a fan behind a resistor and a pump with two feeds.
func machineWithIsolator(t *testing.T) *harness.Review {
	t.Helper()
	file := "../../testdata/corpus/clean/teal-ketch.yaml"
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text, _, _ := strings.Cut(string(src), "\nrides:")
	text = strings.Replace(text, "switches:\n", `resistors:
  dropper: {resistance: 1 Ω, rating: 50 W, thermal fuse: yes, at: saloon, fed by: panel 3, wire: {size: 2.5 mm²}}
switches:
  bilge: {type: rocker 16 A, at: saloon, fed by: panel 4, wire: {size: 2.5 mm²}, positions: [manual, off, automatic]}
  float: {type: float switch 15 A, at: locker, fed by: bilge automatic, wire: {size: 2.5 mm²}}
`, 1)
	text = strings.Replace(text, "loads:\n  fridge", `loads:
  fan: {power: 40 W, rated at: 13 V, behaves: motor, at: saloon, fed by: dropper, wire: {size: 2.5 mm²}, returns to: bar, return wire: {size: 4 mm²}}
  bilge pump: {type: bilge pump large, at: locker, fed by: [bilge manual, float], wire: {size: 6 mm²}, returns to: bar, return wire: {size: 6 mm²}}
  fridge`, 1)
	text = strings.Replace(text, "3: spare, 4: spare", "3: 10 A, 4: 15 A", 1) + `
situations:
  cruise: {engine: cruise, on: [fridge, fan]}
  at anchor: {key: off, on: [fridge]}
  pumping: {key: off, on: [bilge pump], closed: [float]}
`
	d, err := design.Read(file, []byte(text), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Each is asked as the builder of the machine would: of the two speeds of a motor, of an isolator, of one battery of several, of
// a tap and of a start.
func TestAskedOfAWholeMachine(t *testing.T) {
	for _, c := range []struct{ file, asked, want string }{
		{"testdata/rules/ok/two-speeds.yaml", "blower current on low", "current of blower on low"},
		{"testdata/rules/ok/two-speeds.yaml", "how much does the blower draw on high", "current of blower on high"},
		{"testdata/rules/ok/two-speeds.yaml", "seat pad current on low", "current of seat pad on low"},
		{"testdata/rules/ok/two-speeds.yaml", "how much is drawn from pilot's spare", ""},
		{"testdata/rules/ok/two-speeds.yaml", "spare of pilot", "spare of pilot"},
		{"ISOLATOR", "drop over isolator", "drop of isolator"},
		{"ISOLATOR", "current through the isolator", "current of isolator"},
		{"ISOLATOR", "how hot does the resistor get", "heat of dropper"},
		{"ISOLATOR", "charging current of house", "charging current of house"},
		{"ISOLATOR", "how long does the house battery last at anchor", "hours of house at anchor"},
		{"ISOLATOR", "how long does the house battery last when pumping", "hours of house in pumping"},
		{"ISOLATOR", "start voltage", "volts at start"},
		{"ISOLATOR", "what does the battery see at start", "volts at start"},
		{"ISOLATOR", "why is the bilge pump wire 10 AWG", "allowed current of W15"},
		{"designs/fen-runner.yaml", "spare of tail lamp feed", "spare of tail lamp feed"},
		{"designs/reed-skiff.yaml", "how long can the radio play", "hours of radio"},
		{"designs/reed-skiff.yaml", "how long can the plotter run", "hours in night cutting"},
	} {
		r := machineWithIsolator(t)
		if c.file != "ISOLATOR" {
			r = reviewOf(t, "../../"+c.file)
		}
		got, err := derivation.Of(r, c.asked)
		switch {
		case c.want == "" && err == nil || c.want != "" && (err != nil || got.What != c.want):
			t.Errorf("%q is taken for %v (%v), want %q", c.asked, got, err, c.want)
		case err == nil && (offIn(got.Root) != nil || bareIn(got.Root) != nil):
			t.Errorf("%q: off or from nowhere: %s", c.asked, asJSON(t, got))
		}
	}
}

// The figures behind them, by hand: what a tap spares is its spare less what is drawn; a fan behind 0.6 Ω and its wires draws
// less than at full speed by the law that the solver has; an isolator loses its knee and its slope.
func TestFiguresOfAWholeMachine(t *testing.T) {
	r := reviewOf(t, "../../testdata/rules/ok/two-speeds.yaml")
	spare := of(t, r, "spare of pilot").Root
	if want := base(spare.From[0]) - base(spare.From[1]); base(spare.From[0]) != 1 || math.Abs(base(spare)-want) > 1e-9 || want < 0.7 || want > 0.9 {
		t.Errorf("pilot spares %+v", spare)
	}
	low, high := of(t, r, "current of blower on low"), of(t, r, "current of blower on high")
	if l, h := base(low.Root), base(high.Root); low.Situation != "slow" || !strings.HasPrefix(high.Situation, "fast") || !(l < h) || math.Abs(l-base(of(t, r, "current of dropper").Root)) > 1e-9 {
		t.Errorf("blower: %g A in %s, %g A in %s", l, low.Situation, h, high.Situation)
	}
	r = machineWithIsolator(t)
	drop := of(t, r, "drop of isolator").Root
	if want := base(drop.From[0]) + base(drop.From[1])*base(drop.From[2]); math.Abs(base(drop)-want) > 1e-3 || want < 0.6 || want > 1.1 {
		t.Errorf("isolator loses %+v", drop)
	}
	into := of(t, r, "charging current of house")
	most := 0.0
	for _, l := range r.Budget.Lines {
		most = max(most, -l.Banks[0].A)
	}
	if got := base(into.Root); math.Abs(got-most) > 1e-6*most || most == 0 {
		t.Errorf("charging current %g A, the budget has %g A", got, most)
	}
	start := of(t, r, "volts at start")
	if got, want := base(start.Root), r.Cranking.Cases[0].PostsV; math.Abs(got-want) > 1e-9 {
		t.Errorf("%g V at a start, want %g V", got, want)
	}
	// 60 W at 12 V a tenth of the time out of 60 Ah are 0.2 of it in a day; a flooded battery loses 15 % in a month at 20 °C, 1.41
	// times as much at 25 °C: ln((1 + 0.2 / 0.00766) / (0.6 + 0.2 / 0.00766)) / 0.00766 = 1.94 days.
	hours := of(t, reviewOf(t, "../../designs/reed-skiff.yaml"), "hours of radio")
	if len(hours.Answer) == 0 || !strings.Contains(hours.Answer[0], "radio") || math.Abs(hours.Root.Number-46.57) > 0.01 {
		t.Errorf("%+v", hours)
	}
}

// The limit is that which the rules hold: afloat 3 % for navigation lamps, radios, blowers and bilge pumps, of their wires at
// nominal, which decides; a drop that passes is not said to be too much. The two leads of a motor that is turned the other way
// round are its own.
func TestLimitIsTheOneHeld(t *testing.T) {
	r := reviewOf(t, "../../designs/sedge-sloop.yaml")
	for load, share := range map[string]float64{"anchor lamp": 3, "refrigerator": 10, "windlass": 10} {
		limit := of(t, r, "limit of "+load)
		if got := limit.Root.From[0]; got.Number != share {
			t.Errorf("%s: %s, want %g %%", load, got.Value, share)
		}
		drop := of(t, r, "drop of "+load)
		found := slices.ContainsFunc(r.Findings, func(f *finding.Finding) bool { return f.Rule == "voltage-drop" && f.Part == load })
		said := strings.Join(drop.Answer, " ")
		if strings.Contains(said, "too much") != found || !strings.Contains(said, "at nominal, which decides") {
			t.Errorf("%s: %q, found %t", load, said, found)
		}
		var labels func(s *derivation.Step)
		labels = func(s *derivation.Step) {
			if strings.Contains(s.Label, "relay coils") {
				t.Errorf("%s: %s %s", load, s.Value, s.Label)
			}
			for _, x := range s.From {
				labels(x)
			}
		}
		labels(drop.Root)
	}
}

// A review that is open gives the same derivation as one with all its stages, and runs no more
// of them than the figure takes.
func TestOpenReview(t *testing.T) {
	for _, demo := range demos {
		file := "../../designs/" + demo + ".yaml"
		whole := reviewOf(t, file)
		for i, name := range derivation.Names(whole) {
			if i%40 != 0 {
				continue
			}
			open, err := harness.Open(whole.Design)
			if err != nil {
				t.Fatal(err)
			}
			got, want := of(t, open, name), of(t, whole, name)
			if a, b := asJSON(t, got), asJSON(t, want); a != b {
				t.Errorf("%s, %s: %s\nwant %s", demo, name, a, b)
			}
			if kind, _, _ := strings.Cut(name, " "); kind != "finding" && open.Findings != nil || kind == "drop" && open.Faults != nil || kind == "greatest" && open.Corners != nil {
				t.Errorf("%s, %s: ran stages that it does not need", demo, name)
			}
		}
		open, err := harness.Open(whole.Design)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := derivation.Of(open, "drop of left lmap"); err == nil || open.Findings != nil || open.Faults != nil {
			t.Errorf("%s: a miss ran stages that it does not need", demo)
		}
	}
}

func asJSON(t *testing.T, x any) string {
	t.Helper()
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var designs = flag.String("designs", "", "derive every figure of the designs of this pattern")

// TestEveryFigureHolds derives every figure of designs as people get them wrong: each formula
// gives its value, and nothing panics. By itself a few; with -designs as many as one likes.
func TestEveryFigureHolds(t *testing.T) {
	pattern, most := "../../testdata/corpus/fault/*.yaml", 6
	if *designs != "" {
		pattern, most = *designs, math.MaxInt
	}
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) == 0 {
		t.Fatalf("no designs: %v", err)
	}
	figures := 0
	for i, file := range files {
		if i%max(1, len(files)/most) != 0 {
			continue
		}
		r := reviewOf(t, file)
		if r == nil {
			continue
		}
		for _, name := range derivation.Names(r) {
			tree := of(t, r, name)
			figures++
			for _, s := range append([]*derivation.Step{tree.Root, tree.Limit}, tree.Also...) {
				if off := offIn(s); off != nil {
					t.Errorf("%s, %s: %s  %s = %s", file, name, off.Value, off.Label, off.Formula)
				}
				if bare := bareIn(s); bare != nil && len(s.From) > 0 {
					t.Errorf("%s, %s: %s  %s is from nowhere", file, name, bare.Value, bare.Label)
				}
			}
		}
	}
	t.Logf("%d figures", figures)
}

// offIn is a step whose formula does not give its value; nil = none.
func offIn(s *derivation.Step) *derivation.Step {
	if s == nil || s.Off {
		return s
	}
	for _, k := range s.From {
		if off := offIn(k); off != nil {
			return off
		}
	}
	return nil
}

// bareIn is a leaf of which nothing says where it is from; nil = none.
func bareIn(s *derivation.Step) *derivation.Step {
	if s == nil || s.Above {
		return nil
	}
	if len(s.From) == 0 && s.First() == s && s.Source == "" && s.Line == 0 && s.Formula == "" {
		return s
	}
	for _, k := range s.From {
		if bare := bareIn(k); bare != nil {
			return bare
		}
	}
	return nil
}

// BenchmarkOf is a figure of each kind from a review that is open, the stages that it takes
// included: what why costs beyond reading the design. "list" is naming all.
func BenchmarkOf(b *testing.B) {
	ask := func(name string, d *design.Design, what string) {
		b.Run(name+"/"+what, func(b *testing.B) {
			for b.Loop() {
				r, err := harness.Open(d)
				if err != nil {
					b.Fatal(err)
				}
				if what == "list" {
					derivation.Names(r)
				} else if _, err := derivation.Of(r, what); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	for _, demo := range demos {
		d := reviewOf(b, "../../designs/"+demo+".yaml").Design
		for _, what := range []string{"list", "drop of E1", "time to open of F1", "days parked"} {
			ask(demo, d, what)
		}
	}
	// Hundreds of loads that draw all the time: a sum of as many terms.
	d, err := design.Read("wide.yaml", synth.WideBlock.YAML(666, 1), library.Default())
	if err != nil {
		b.Fatal(err)
	}
	for _, what := range []string{"list", "days parked"} {
		ask("wide-block-666", d, what)
	}
}

// A lamp's own lead is copper there and back, 2 × 0.017241 × 1.2 ÷ 0.75 = 55.17 mΩ at 20 °C, and no number as long as the
// machine has it.
func TestOwnLeadIsTakenApart(t *testing.T) {
	d, err := design.Read("lead.yaml", []byte(example.Design("loads:\n  tail lamp: {power: 30 W, behaves: constant power, lead: {size: 0.75 mm², length: 1.2 m}, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}\n")), library.Default())
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(of(t, r, "drop of tail lamp"))
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(text), "2 × 0.017241 Ω·mm²/m × 1.2 m ÷ 0.75 mm²") {
		t.Errorf("%s", text)
	}
}
