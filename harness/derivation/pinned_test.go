package derivation

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/fault"
)

func TestCopperWords(t *testing.T) {
	for share, want := range map[float64]bool{0.33: true, 0.332: true, 1.0 / 3: false, 0.34: false} {
		if got := copperWords([]Rest{{On: "crimps", Share: 1 - share}, {On: "copper", Share: share}}); (got != "") != want {
			t.Errorf("copper loses %g: %q", share, got)
		}
	}
}

// Of 4 V one is unsure: a margin of less than that is none, on either side of the limit.
func TestNoMargin(t *testing.T) {
	for limit, none := range map[float64]bool{4.99: true, 5.01: false, 3.01: true, 2.99: false} {
		root := sum("lost", volts, 4, &value{v: 3, dim: volts, rests: shares{onPublished: 1}}, &value{v: 1, dim: volts, rests: shares{onNothing: 1}})
		tree := &Tree{}
		if tree.noMargin(root, exactly("limit", volts, limit)); (len(tree.Notes) > 0) != none {
			t.Errorf("4 V of %g V: %q", limit, tree.Notes)
		}
	}
}

// Half a per cent is no difference.
func TestSameOhm(t *testing.T) {
	for total, want := range map[float64]bool{99.49: false, 99.5: true, 100: true, 100.5: true, 100.51: false} {
		if got := same(total, 100); got != want {
			t.Errorf("%g Ω beside 100 Ω: the same %t", total, got)
		}
	}
}

// Less than a hundredth of the volts at a short is what relay coils take of the source's, 14 V; more is another source.
func TestOpenVolts(t *testing.T) {
	v := &view{book: &book{c: &circuit.Circuit{Nodes: []*circuit.Node{{}, {}}}, d: &design.Design{}}, net: fault.Net{Stiff: true}, opt: solve.Options{BatteryV: 14}}
	for open, want := range map[float64]string{14: "", 13.87: "{} − {}", 13.855: ""} {
		if got := v.openV(open); got.formula != want {
			t.Errorf("%g V: %q, want %q", open, got.formula, want)
		}
	}
}

// A word typed well counts 1, one of four letters or more typed nearly well 0.7, and each that the name has besides takes off 0.1.
func TestLikeness(t *testing.T) {
	name := strings.Fields("drop of left lamp")
	for question, want := range map[string]float64{"drop of left lamp": 4, "drop of left lmap": 3.7, "drop lamp": 1.8, "dro": -0.4, "pump": 0.4, "F9": -0.4, "drop of the left lamp": 4} {
		if got := likeness(strings.Fields(question), name); math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: %g, want %g", question, got, want)
		}
	}
}

// Three at most are offered, none of less than 0.5, nor of less than 0.7 of the best.
func TestOffered(t *testing.T) {
	for want, scores := range map[string][]float64{
		"": {0.49}, "0": {0.5, 0.3}, "012": {1, 1, 1, 1}, "20": {1.4, 1.39, 2}, "10": {0.5, 0.6, 0.49}, "1": {0.5, 0.8},
	} {
		var list []choice
		for i, score := range scores {
			list = append(list, choice{&Asked{What: strconv.Itoa(i)}, score})
		}
		if got := strings.Join(offered(list), ""); got != want {
			t.Errorf("%v: %q offered, want %q", scores, got, want)
		}
	}
}

func TestDuring(t *testing.T) {
	for name, want := range map[string]string{"night cruise": "in night cruise", "at anchor": "at anchor", "under way": "under way", "atlas": "in atlas"} {
		if got := during(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

// A value keeps its own unit in a sum of two, and takes that of a long sum of which most have it.
func TestUnitsInSums(t *testing.T) {
	small := func() *value { return solved("s", amps, 0.0012, "") }
	large := func() *value { return solved("l", amps, 1.5, "") }
	long := sum("sum", amps, 3.0012, large(), large(), small())
	if settle(long); long.printed() != "1.500 + 1.500 + 0.001" {
		t.Errorf("%s", long.printed())
	}
	short := sum("sum", amps, 1.5012, large(), small())
	if settle(short); short.printed() != "1.500 A + 1 mA" {
		t.Errorf("%s", short.printed())
	}
}

// A body of 100 s that is on for 60 s of every 600 s may have √((1 − e^−6) ÷ (1 − e^−0.6)) =
// √(0.997521 ÷ 0.451188) = 1.486901 times the current.
func TestOneConstant(t *testing.T) {
	if got := oneConstant(1.486901, 60, 600); math.Abs(got-100) > 0.01 {
		t.Errorf("%g s, want 100 s", got)
	}
}

// BenchmarkLongSum gives digits to a sum of hundreds of terms of which a power asks for all that
// there are.
func BenchmarkLongSum(b *testing.B) {
	for b.Loop() {
		var terms []*value
		total := 0.0
		for i := range 333 {
			x := solved("one", amps, 0.1+0.01*math.Sqrt(float64(i)), "")
			terms, total = append(terms, x), total+x.v
		}
		settle(of("power", plain, math.Pow(total, 6), "{}^6", sum("all", amps, total, terms...)))
	}
}
