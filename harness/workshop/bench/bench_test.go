package bench_test

import (
	"fmt"
	"math"
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/workshop/bench"
	"fusewright/library"
)

// tiny is a fuse, a resistor of 2 Ω and its return. Everything that the design
// can say is said, so that the readings can be worked out by hand.
const tiny = `
fusewright: 1
title: tiny
vehicle: invented
revision: A
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, resistance: 10 mΩ}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  f: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 2 m}}
switches:
  s: {rating: 10 A, fed by: f, wire: {length: 1 m}}
loads:
  heater: {resistance: 2 Ω, rated at: 12 V, tolerance: 10 %, fed by: s, wire: {length: 3 m}, returns to: battery negative, return wire: {length: 5 m}}
situations:
  heating: {key: on, on: [heater]}
  parked: {key: off}
`

func read(t testing.TB, src string) *circuit.Circuit {
	t.Helper()
	c := buildtest.Circuit(t, src)
	return c
}

// find is the check of a section kind with the reference and a word in its
// number, name or place; it fails when there is none or more than one.
func find(t *testing.T, test *bench.Test, kind bench.Kind, ref, word string) *bench.Check {
	t.Helper()
	var found []*bench.Check
	for _, s := range test.Sections {
		for _, c := range s.Checks() {
			if s.Kind == kind && c.Ref == ref && strings.Contains(c.Number+" "+c.Name+" "+c.Where, word) {
				found = append(found, c)
			}
		}
	}
	if len(found) != 1 {
		t.Fatalf("%d checks of %s in %s with %q", len(found), ref, kind, word)
	}
	return found[0]
}

// TestTinyByHand works the readings of the tiny circuit out on paper.
//
// ISO 6722-1 Table 4: 1 mm² has at most 18.5 mΩ/m at 20 °C. The heater is 2 Ω.
// The ends, the fuse and the switch are what the circuit says of them. The
// battery is 0.2 discharged, its voltage and resistance by the chemistry's table.
func TestTinyByHand(t *testing.T) {
	c := read(t, tiny)
	test := bench.Make(c)
	const perM = 18.5e-3
	metres := map[string]float64{"W1": 2, "W2": 1, "W3": 3, "W4": 5}
	ohm := map[string]float64{}
	way := 0.0
	for _, w := range c.Wires {
		ohm[w.Number] = metres[w.Number]*perM + w.EndsOhm
		way += ohm[w.Number]
		got := find(t, test, bench.Continuity, w.Number, "")
		near(t, w.Number+" continuity", got.Nominal, ohm[w.Number])
		if !(got.High > got.Nominal) || !(got.PlainHigh > 0.2) {
			t.Errorf("%s: bounds %g and %g", w.Number, got.High, got.PlainHigh)
		}
	}
	for _, b := range c.Branches {
		if b.Kind == circuit.FuseBranch || b.Kind == circuit.ContactBranch {
			way += b.Ohm
			ohm[b.Part.Ref] = b.Ohm
		}
	}
	// One loop: battery, wires, fuse, switch and heater in series. The battery's
	// resistance grows in a straight line from full to empty.
	chemistry := c.Design.Battery.Chemistry
	emf, inner := chemistry.OpenCircuitV(0.8), 0.010*(1+(chemistry.EmptyOhmRatio-1)*0.2)
	amps := emf / (inner + way + 2)
	near(t, "battery posts", find(t, test, bench.InUse, "G1", "posts").Nominal, emf-inner*amps)
	near(t, "main feed", find(t, test, bench.InUse, "W1", "main feed").Nominal, amps)
	heater := find(t, test, bench.InUse, "E1", "heater")
	if !heater.Below {
		t.Fatal("the heater's voltage is not given as below the battery's")
	}
	near(t, "heater below the battery", heater.Nominal, way*amps)
	near(t, "heater shows", heater.ShowsV, 2*amps)

	// At 0.2 Ω it draws enough for the drops of its connections to be asked for.
	strong := bench.Make(read(t, strings.Replace(tiny, "resistance: 2 Ω", "resistance: 0.2 Ω", 1)))
	strongA := emf / (inner + way + 0.2)
	near(t, "drop over F1", find(t, strong, bench.InUse, "F1", "in to out").Nominal, ohm["F1"]*strongA)
	near(t, "drop over W4", find(t, strong, bench.InUse, "W4", "E1 −").Nominal, ohm["W4"]*strongA)

	// The heater with 10 % more power is 2/1.1 Ω; with half the contacts, wires at
	// 10 °C and a full battery that is the largest current. The clamp adds 2.5 %
	// of it and 0.1 A.
	ends := 0.0
	for _, w := range c.Wires {
		ends += w.EndsOhm
	}
	contacts := ends + ohm["F1"] + ohm["S1"]
	most := chemistry.OpenCircuitV(1) / (0.010 + (way-contacts)*(1-0.00393*10) + contacts/2 + 2/1.1)
	near(t, "main feed, most", find(t, test, bench.InUse, "W1", "main feed").High, most*1.025+0.1)

	if got := find(t, test, bench.Parked, "G1", "all that is drawn"); got.Nominal != 0 || got.High > 25e-6 {
		t.Errorf("parked: %g A, at most %g A", got.Nominal, got.High)
	}
	if got := find(t, test, bench.Parked, "E1", "heater"); got.Below || got.Nominal != 0 || got.High != 0.3 {
		t.Errorf("heater parked: %+v", got)
	}
	first := find(t, test, bench.FirstPower, "F1", "4.1 ")
	if first.Nominal != 0 || first.SetA != 0.5 {
		t.Errorf("first power: %g A with the limit at %g A", first.Nominal, first.SetA)
	}
}

// near fails when a value is not within a millionth of what is wanted.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-6*math.Abs(want)) {
		t.Errorf("%s: %.9g, by hand %.9g", what, got, want)
	}
}

// TestBoundsHoldTheNominal: of every reading of many harnesses the nominal value
// lies inside its bounds, bounds are not negative, and each says what it rests on.
func TestBoundsHoldTheNominal(t *testing.T) {
	for name, c := range circuits(t) {
		for _, s := range bench.Make(c).Sections {
			for _, check := range s.Checks() {
				where := fmt.Sprintf("%s, %s %s %s", name, check.Number, check.Ref, check.Name)
				if check.Basis == "" {
					t.Errorf("%s: no basis", where)
				}
				if check.Text != "" {
					continue
				}
				low, high := check.Low, check.High
				if math.IsNaN(low) {
					low = math.Inf(-1)
				}
				if math.IsNaN(high) {
					high = math.Inf(1)
				}
				// A load may stand above the battery's posts by a hair where a splice
				// joins it to the tap; all else is inside.
				if check.Nominal < low-1e-9 || check.Nominal > high+1e-9 || check.Low < 0 {
					t.Errorf("%s: %g is not in %g to %g", where, check.Nominal, check.Low, check.High)
				}
			}
		}
	}
}

// TestEverythingIsTested: every wire has its continuity, every feed wire stands in
// one isolation check, every fuse in the list of fuses, the volts of every load
// once where it is on and, of one that never is, once with the key off and once with it on; every connection has a
// drop or is said to have none.
func TestEverythingIsTested(t *testing.T) {
	for name, c := range circuits(t) {
		test := bench.Make(c)
		by := map[bench.Kind]map[string]int{}
		isolated := map[string]int{}
		lit, read := map[string][]string{}, map[bool][]string{}
		for _, s := range test.Sections {
			if by[s.Kind] == nil {
				by[s.Kind] = map[string]int{}
			}
			for _, check := range s.Checks() {
				by[s.Kind][check.Ref]++
				if s.Kind == bench.Isolation {
					for _, word := range strings.FieldsFunc(check.Where, func(r rune) bool { return r == ' ' || r == ',' }) {
						isolated[word]++
					}
				}
			}
			if s.Situation == nil || s.Trouble != "" {
				continue
			}
			for _, check := range s.Checks() {
				if check.Below {
					lit[check.Ref] = append(lit[check.Ref], check.Where)
				}
				off := s.Situation.Key == design.KeyOff
				read[off] = append(read[off], strings.Fields(check.Ref)...)
			}
		}
		for _, p := range c.Parts {
			if p.Kind != circuit.Load && p.Kind != circuit.Block {
				continue
			}
			if ways := slices.Compact(slices.Sorted(slices.Values(lit[p.Ref]))); len(ways) != len(lit[p.Ref]) {
				t.Errorf("%s: the volts of %s are read %d times", name, p.Name, len(lit[p.Ref]))
			}
			for off, refs := range read {
				if len(lit[p.Ref]) == 0 && !slices.Contains(refs, p.Ref) {
					t.Errorf("%s, key off %v: %s is missing", name, off, p.Name)
				}
			}
		}
		missing := strings.Join(test.Missing, " ")
		for _, w := range c.Wires {
			if by[bench.Continuity][w.Number] != 1 {
				t.Errorf("%s: %d continuity checks of %s", name, by[bench.Continuity][w.Number], w.Number)
			}
			if w.Branch.Feeds() && isolated[w.Number] != 1 {
				t.Errorf("%s: feed %s in %d isolation checks", name, w.Number, isolated[w.Number])
			}
			if by[bench.InUse][w.Number]+by[bench.Parked][w.Number] == 0 && !strings.Contains(missing, w.Number) {
				t.Errorf("%s: no drop of %s, and nothing said of it", name, w.Number)
			}
		}
		for _, b := range c.Branches {
			if b.Fuse == nil {
				continue
			}
			if ref := b.Fuse.Ref; ref != "" && by[bench.Fuses][ref] != 1 {
				t.Errorf("%s: fuse %s listed %d times", name, ref, by[bench.Fuses][ref])
			}
		}
		if len(test.Cautions) < 6 || !strings.Contains(test.Cautions[0], "Isolate the battery") {
			t.Errorf("%s: cautions %q", name, test.Cautions)
		}
	}
}

func circuits(t testing.TB) map[string]*circuit.Circuit {
	t.Helper()
	list := map[string]*circuit.Circuit{"tiny": read(t, tiny)}
	for _, name := range []string{"fen-runner.yaml", "reed-skiff.yaml"} {
		src, err := os.ReadFile("../../../designs/" + name)
		if err != nil {
			t.Fatal(err)
		}
		list[name] = read(t, string(src))
	}
	for _, wires := range []int{3, 12, 40, 120} {
		list[fmt.Sprint("synth ", wires)] = read(t, string(synth.YAML(wires, 7)))
	}
	for seed := range int64(12) {
		list[fmt.Sprint("random ", seed)] = read(t, string(synth.Random(seed)))
	}
	return list
}

// TestNoFuseNoPower: a harness without a first fuse gets no first power.
func TestNoFuseNoPower(t *testing.T) {
	c := read(t, strings.NewReplacer("fuses:\n  f: {type: blade C, rating: 10 A, fed by: battery, wire: {length: 2 m}}\n", "",
		"fed by: f,", "fed by: battery,").Replace(tiny))
	seen := false
	for _, s := range bench.Make(c).Sections {
		if s.Kind != bench.FirstPower {
			continue
		}
		seen = true
		if !strings.Contains(s.Trouble, "Do not put power to this harness") || len(s.Checks()) > 0 {
			t.Errorf("first power without a fuse: %+v", s)
		}
	}
	if !seen {
		t.Error("no section on first power")
	}
}

// TestSameTwice: the same circuit gives the same test.
func TestSameTwice(t *testing.T) {
	src := string(synth.YAML(80, 3))
	a, b := bench.Make(read(t, src)), bench.Make(read(t, src))
	for i, s := range a.Sections {
		for k, check := range s.Checks() {
			other := b.Sections[i].Checks()[k]
			check.Probe, other.Probe, check.Supply, other.Supply, check.Holder, other.Holder = nil, nil, nil, nil, nil, nil // pointers into either circuit
			if fmt.Sprintf("%+v", *check) != fmt.Sprintf("%+v", *other) {
				t.Fatalf("%+v\n%+v", *check, *other)
			}
		}
	}
	if !reflect.DeepEqual(a.Missing, b.Missing) {
		t.Error("missing differs")
	}
}

func ExampleMake() {
	d, err := design.Read("tiny.yaml", []byte(tiny), library.Default())
	if err != nil {
		panic(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		panic(err)
	}
	for _, s := range bench.Make(c).Sections {
		if s.Kind == bench.InUse {
			check := s.Checks()[1]
			fmt.Println(check.Name, quantity.Format(check.Low, check.Quantity), quantity.Format(check.High, check.Quantity))
		}
	}
	// Output: main feed 4.71 A 6.55 A
}

func BenchmarkMake40(b *testing.B) {
	c := read(b, string(synth.YAML(40, 1)))
	for b.Loop() {
		bench.Make(c)
	}
}

func BenchmarkMake1000(b *testing.B) {
	c := read(b, string(synth.YAML(1000, 1)))
	for b.Loop() {
		bench.Make(c)
	}
}

// TestHighestVoltageIsTheDesigns: the caution of 48 V systems names the voltage
// that the rules go by; below 48 V there is none.
func TestHighestVoltageIsTheDesigns(t *testing.T) {
	for system, want := range map[string]string{"12 V": "", "24 V": "", "48 V": "reaches 57.6 V in normal use"} {
		src := strings.NewReplacer("system: 12 V", "system: "+system, "rated at: 12 V", "rated at: "+system).Replace(tiny)
		text := strings.Join(bench.Make(read(t, src)).Cautions, " ")
		if got := strings.Contains(text, "in normal use"); got != (want != "") || !strings.Contains(text, want) {
			t.Errorf("%s: %s", system, text)
		}
	}
}
