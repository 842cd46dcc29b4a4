package diagnosis

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/design/problem"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// typed are readings as on a command line, in a situation.
func typed(t testing.TB, in string, texts ...string) *readings.File {
	t.Helper()
	f := &readings.File{}
	for _, text := range texts {
		r, err := readings.Argument(text, in)
		if err != nil {
			t.Fatal(err)
		}
		f.Readings = append(f.Readings, r)
	}
	return f
}

// A lamp that reads 0.8 V too low while its twin is right: its own feed or its own return, which
// the readings cannot tell apart, and one reading that can.
func TestOneLampLow(t *testing.T) {
	c, test := load(t, "fen-runner")
	taken := []string{"10.1=14.21V", "10.2=7.4A", "10.3=14.12V", "10.7=13.21V", "10.8=14.00V"}
	d, err := Of(c, test, typed(t, "night cruise", taken...))
	if err != nil {
		t.Fatal(err)
	}
	if !d.Wrong || d.Failed != 1 || d.Passed != 4 {
		t.Errorf("wrong %v, %d failed, %d passed", d.Wrong, d.Failed, d.Passed)
	}
	top, second := d.Explanations[0], d.Explanations[1]
	names := []string{top.Elements[0], second.Elements[0]}
	slices.Sort(names)
	if !slices.Equal(names, []string{"W16", "W6"}) || math.Abs(top.Share-second.Share) > 0.02 || !slices.Equal(top.Alike, second.Elements) {
		t.Errorf("%+v\n%+v", top, second)
	}
	if want := []Sum{
		{"lost, read", "14.21 V − 13.21 V", "1.00 V", "between the posts and E1, in night cruise"},
		{"lost as built", "", "0.20 V", "what a sound one loses with these currents"},
		{"too much", "1.00 V − 0.20 V", "0.80 V", ""},
		{"current", "18 W ÷ 13.21 V", "1.36 A", "it keeps its power"},
		{"resistance", "0.80 V ÷ 1.36 A", "0.59 Ω", ""},
		{"heat in the joint", "0.80 V × 1.36 A", "1.1 W", ""},
	}; !slices.Equal(top.Sums, want) {
		t.Errorf("sums %+v", top.Sums)
	}
	for _, e := range d.Explanations[:2] { // all readings together give 0.58 Ω, which is the same but for rounding
		if !strings.Contains(e.Text, "about 0.59 Ω too much") {
			t.Errorf("not the size of the sums: %s", e.Text)
		}
	}
	for _, sound := range []string{"W1", "F1", "W4", "S1", "W5"} {
		if !slices.Contains(top.RuledOut, sound) {
			t.Errorf("%s is not ruled out: %v", sound, top.RuledOut)
		}
	}
	if d.Next == nil || d.Next.Check != "E1 − to G1 −" || len(d.Next.Outcomes) != 2 || d.Next.Outcomes[0].Means != "W16" || d.Next.Outcomes[1].Means != "W6" {
		t.Fatalf("next %+v", d.Next)
	}
	for reads, name := range map[string]string{"0.82V": "W16", "32mV": "W6"} {
		d, err := Of(c, test, typed(t, "night cruise", append(slices.Clone(taken), d.Next.Check+"="+reads)...))
		if err != nil {
			t.Fatal(err)
		}
		if e := d.Explanations[0]; e.Elements[0] != name || e.Share < 0.95 {
			t.Errorf("then %s: %+v", reads, e)
		}
	}
	text, err := json.Marshal(d)
	if err != nil || !strings.Contains(string(text), `"elements":["W`) {
		t.Errorf("%s, %v", text, err)
	}
}

var product = regexp.MustCompile(`^([\d.]+) \S+ ([−÷×]) ([\d.]+) \S+$`)

// Every sum is worked out again from its own digits.
func TestSumsMultiplyOut(t *testing.T) {
	checked := 0
	for _, name := range []string{"fen-runner", "hay-wain"} {
		c, test := load(t, name)
		class := library.Default().Meter(UsualMeter)
		suspects := newModel(c, class, library.Default()).suspects()
		for seed := range uint64(12) {
			rng := rand.New(rand.NewPCG(seed, 5))
			var f *fault
			for f == nil || !f.resistive() || f.open || f.kind == thinnerWire {
				f = suspects[rng.IntN(len(suspects))]
			}
			w := newWorld(c, rng, f.sized(byLog(rng, 0.3, 2)))
			d, err := Of(c, test, &readings.File{Readings: w.read(test, newGauge(rng, class, false), harnessOnly)})
			if err != nil {
				t.Fatal(err)
			}
			if len(d.Explanations) == 0 {
				continue
			}
			for _, s := range d.Explanations[0].Sums {
				p := product.FindStringSubmatch(s.Sum)
				if p == nil {
					if s.Sum != "" {
						t.Errorf("%q cannot be worked out", s.Sum)
					}
					continue
				}
				a, _ := strconv.ParseFloat(p[1], 64)
				b, _ := strconv.ParseFloat(p[3], 64)
				figure, _, _ := strings.Cut(s.Value, " ")
				value, _ := strconv.ParseFloat(figure, 64)
				decimals := 0
				if _, after, ok := strings.Cut(figure, "."); ok {
					decimals = len(after)
				}
				got := map[string]float64{"−": a - b, "÷": a / b, "×": a * b}[p[2]]
				if math.Abs(got-value) > 0.5000001*math.Pow(10, -float64(decimals)) {
					t.Errorf("%s = %s, and by its digits %g", s.Sum, s.Value, got)
				}
				checked++
			}
		}
	}
	if checked < 20 {
		t.Errorf("only %d sums", checked)
	}
}

// Readings at, below and above their bounds; volts below the posts by what was read there.
func TestJudged(t *testing.T) {
	c, test := load(t, "fen-runner")
	class := library.Default().Meter(UsualMeter)
	check := map[string]*bench.Check{}
	for _, s := range test.Sections {
		for _, x := range s.Checks() {
			check[x.Number] = x
		}
	}
	lamp := check["10.7"]
	more := 2*3.5*0.01 - bench.VoltFixedV // two readings, three digits and a half of the 60 V scale of 6000 counts
	wire := check["1.2"]
	ohm := math.Ceil(wire.PlainHigh*100) / 100
	for _, x := range []struct {
		name    string
		check   *bench.Check
		posts   float64
		reads   float64
		verdict Verdict
	}{
		{"at the least", lamp, 14, 14 - lamp.High + 1e-9, Pass}, {"below", lamp, 14, 14 - lamp.High - 1e-6, Doubtful},
		{"as far as the meter may be off", lamp, 14, 14 - lamp.High - more + 1e-9, Doubtful}, {"beyond", lamp, 14, 14 - lamp.High - more - 1e-6, Fail},
		{"at the most", lamp, 14, 14 - lamp.Low - 1e-9, Pass}, {"above", lamp, 14, 14 - lamp.Low + more + 1e-6, Fail},
		{"with other posts", lamp, 13.7, 13.7 - lamp.High + 1e-9, Pass},
		{"a wire at its most", wire, 14, ohm, Pass}, {"a wire above", wire, 14, ohm + 0.2 - 1e-6, Doubtful}, {"a wire far above", wire, 14, ohm + 0.2 + 1e-6, Fail},
	} {
		f := &readings.File{Readings: []*readings.Reading{{Check: "10.1", Value: x.posts, Quantity: lamp.Quantity}, {Check: x.check.Number, Value: x.reads, Quantity: x.check.Quantity}}}
		placed, problems := readings.Match(test, f.Readings)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		if got := judge(placed, class)[1]; got.Verdict != x.verdict {
			t.Errorf("%s: %+v", x.name, got)
		}
	}
	d, err := Of(c, test, typed(t, "", "10.7=13.9V", "2.3=5A", "2.4=7.5A", "2.5=wrong", "3.1=300kΩ", "4.1=80Ω"))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []Verdict{NotJudged, Fail, Pass, Fail, Fail, Pass} {
		if d.Readings[i].Verdict != want {
			t.Errorf("%+v, want %s", d.Readings[i], want)
		}
	}
	if len(d.Certain) != 3 || !strings.Contains(d.Certain[0], "must be 3 A violet") {
		t.Errorf("certain: %q", d.Certain)
	}
	if d, err = Of(c, test, typed(t, "", "1.1=open")); err != nil {
		t.Fatal(err)
	}
	if e := d.Explanations[0]; e.Elements[0] != "W1" || !strings.Contains(e.Text, "missing, broken or not seated") || len(e.RuledOut) != 0 {
		t.Errorf("%+v", e)
	}
}

// What is in the holders: F1 (20 A) feeds F3 and F4 (7.5 A each), F2 (3 A) is of a smaller form, and W8 behind F4
// carries 16.0 A.
func TestHolders(t *testing.T) {
	c, test := load(t, "fen-runner")
	for _, x := range []struct{ in, want, not string }{
		{"2.2=20A 2.5=7.5A", "", "."},
		{"2.2=7.5A 2.5=20A", "F1 and F4 are swapped: 7.5 A is in the holder of F1 main (check 2.2), and 20 A in that of F4", "Danger"}, // F1 with 7.5 A guards W8
		{"2.1=7.5A 2.5=10A", "X1.F1 and F4 are swapped", "Danger"},
		{"2.5=20A", "Danger: 2.5, F4 rear 2, way 2 of X2, under seat: 20 A is in it and must be 7.5 A brown, blade C. That is more than W8 OG 1.5 mm² behind F4 may carry (16.0 A)", "swapped"},
		{"2.5=15A", "2.5, F4", "Danger"}, {"2.5=15.9A", "2.5, F4", "Danger"}, {"2.5=16.1A", "Danger: 2.5", ""},
		{"2.2=15A 2.5=20A", "2.5, F4", "Danger"}, {"2.2=25A 2.5=20A", "Danger: 2.5, F4", ""},
		{"2.3=7.5A 2.4=3A", "2.3, F2", "swapped"}, // another form
		{"2.4=5A 2.7=7.5A 2.6=5A", "F3 and F6 are swapped", "Danger"},
		{"2.4=wrong", "2.4, F3 rear 1, way 1 of X2, under seat: reads wrong and must be 7.5 A", "Danger"},
	} {
		d, err := Of(c, test, typed(t, "", strings.Fields(x.in)...))
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(d.Certain, "\n"); !strings.Contains(got, x.want) || x.not != "" && strings.Contains(got, x.not) {
			t.Errorf("%s: %s", x.in, got)
		}
	}
}

// Posts that read nothing, or the wrong way round, are put right first: nothing is held against them.
func TestPostsOutOfBounds(t *testing.T) {
	c, test := load(t, "fen-runner")
	for _, posts := range []string{"0V", "-14.1V"} {
		d, err := Of(c, test, typed(t, "", "10.1="+posts, "10.2=0A", "10.7=13.6V"))
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range []Verdict{Fail, NotJudged, NotJudged} {
			if d.Readings[i].Verdict != want {
				t.Errorf("%s: %+v, want %s", posts, d.Readings[i], want)
			}
		}
		if !d.Wrong || len(d.Certain) != 1 || !strings.Contains(d.Certain[0], "Supply or lead first") || len(d.Explanations)+len(d.Measured) != 0 {
			t.Errorf("%s: %+v", posts, d)
		}
	}
	for _, x := range []struct {
		volts float64
		out   bool
	}{{6, false}, {5.999, true}, {22.5, false}, {22.501, true}} { // 12 to 15 V may stand there
		p := &readings.Placed{Reading: &readings.Reading{Value: x.volts}, Check: &bench.Check{Low: 12, High: 15}}
		if noSupply(p) != x.out {
			t.Errorf("%g V: %v", x.volts, !x.out)
		}
	}
}

func TestBadReadings(t *testing.T) {
	c, test := load(t, "fen-runner")
	for _, x := range []struct{ text, in, meter, want string }{
		{"10.1=14V", "", "comon", `did you mean "common"?`},
		{"E1 - to G1 -=1V", "night cruse", "", `there is no situation "night cruse" (did you mean "night cruise"?)`},
		{"E1 - to G1 -=1V", "", "", "the situation is not said"},
		{"E99 - to G1 -=1V", "parked", "", `there is no terminal "E99 −"`},
		{"round W77=1A", "parked", "", `there is no wire and no source "W77"`},
		{"lamp=1V", "parked", "", `"lamp" is no check`},
	} {
		f := typed(t, x.in, x.text)
		f.Meter = x.meter
		if _, err := Of(c, test, f); err == nil || !strings.Contains(err.Error(), x.want) {
			t.Errorf("%s: %v", x.text, err)
		}
	}
}

// More readings than anybody takes are refused, in lines that can be read.
func TestTooManyReadings(t *testing.T) {
	c, test := load(t, "fen-runner")
	own, unknown := &readings.File{}, &readings.File{}
	for i := range mostOwn {
		own.Readings = append(own.Readings, &readings.Reading{Check: "round W6", In: "night cruise", Engine: 1000 + float64(i), Quantity: "current", Value: 1.4})
	}
	if m := newModel(c, library.Default().Meter(UsualMeter), library.Default()); len(m.take(test, mustMatch(t, test, own))) > 0 {
		t.Error("as many as may be are refused")
	}
	own.Readings = append(own.Readings, own.Readings[0])
	if _, err := Of(c, test, own); err == nil || !strings.Contains(err.Error(), "101 readings of your own (expected at most 100 beside") {
		t.Error(err)
	}
	for i := range 9000 {
		unknown.Readings = append(unknown.Readings, &readings.Reading{Check: "99." + strconv.Itoa(i), Quantity: "voltage", Pos: problem.Pos{File: "r", Line: i + 1}})
	}
	if _, err := Of(c, test, unknown); err == nil || strings.Count(err.Error(), "\n") != 100 || !strings.HasSuffix(err.Error(), "and 8900 more") {
		t.Error(err)
	}
}

func mustMatch(t testing.TB, test *bench.Test, f *readings.File) []*readings.Placed {
	t.Helper()
	placed, problems := readings.Match(test, f.Readings)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return placed
}

// How a reading moves with each resistance and load, by one solution of the network, against two
// solutions with the branch a little changed.
func TestSlopes(t *testing.T) {
	compared := 0
	for _, name := range []string{"fen-runner", "hay-wain"} {
		c, test := load(t, name)
		rng := rand.New(rand.NewPCG(1, 1))
		w := newWorld(c, rng)
		placed, problems := readings.Match(test, w.read(test, newGauge(rng, library.Default().Meter(UsualMeter), false), harnessOnly))
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		m := newModel(c, library.Default().Meter(UsualMeter), library.Default())
		m.take(test, placed)
		m.settle()
		p := m.solved(nil)
		m.slope(p)
		for _, f := range m.suspects() {
			if !f.free || f.kind == coilBad {
				continue
			}
			step := 1e-4
			size, back := step, -step
			if f.times() {
				size, back = 1+step, 1-step
			}
			up, down := m.solved(p, f.sized(size)), m.solved(p, f.sized(back))
			for i, s := range m.sensors {
				if s.state < 0 && s.probe.Wire != nil && s.probe.Wire != f.wire || s.state >= 0 && s.probe.Volts != nil && len(s.probe.Volts) > 1 {
					continue
				}
				want := (up.pred[i] - down.pred[i]) / (2 * step)
				if got := p.slopes[i][f.branch.Index]; math.Abs(got-want) > 1e-3*math.Abs(want)+2e-4 {
					t.Errorf("%s: check %s by %s: %g, by difference %g", name, s.name(), f.branch.Name, got, want)
				} else if math.Abs(want) > 1e-2 {
					compared++
				}
			}
		}
	}
	if compared < 300 {
		t.Errorf("only %d slopes compared", compared)
	}
}

// A state that a break is said to leave alone is left alone: what carries nothing may still be what a
// converter measures from.
func TestBreaksThatChangeNothing(t *testing.T) {
	for _, name := range []string{"fen-runner", "hay-wain"} {
		c, test := load(t, name)
		w := newWorld(c, rand.New(rand.NewPCG(1, 1)))
		placed, _ := readings.Match(test, w.read(test, newGauge(w.rng, library.Default().Meter(UsualMeter), false), harnessOnly))
		m := newModel(c, library.Default().Meter(UsualMeter), library.Default())
		m.take(test, placed)
		m.settle()
		sound := m.solved(nil)
		for _, f := range m.suspects() {
			if !f.open || f.branch.Kind == circuit.LoadBranch {
				continue
			}
			short, full := m.solved(sound, f), m.solved(nil, f)
			for i, s := range m.sensors {
				if math.Abs(short.pred[i]-full.pred[i]) > noise(m.meter, s.gain, full.pred[i]) {
					t.Errorf("%s, %s: check %s is taken as %g, and is %g", name, show([]*fault{f}), s.name(), short.pred[i], full.pred[i])
				}
			}
		}
	}
}
