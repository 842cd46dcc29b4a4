package protection_test

import (
	"fmt"
	"math"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/protection"
	"fusewright/library"
)

func study(t testing.TB, src []byte) (*protection.Study, *fault.Study) {
	t.Helper()
	c := buildtest.Circuit(t, src)
	faults := fault.Compute(c)
	return protection.Compute(c, solve.All(c, solve.Options{}), faults), faults
}

// A larger rating of a type never protects a wire that a smaller one does not.
func TestLargerFuseNeverPasses(t *testing.T) {
	lib := library.Default()
	rater := conductor.NewRater(lib, lib.Practice("marine"))
	pairs := 0
	for _, kind := range lib.FuseTypes {
		for _, wire := range lib.WireTypes {
			for i := 0; i < len(wire.Sizes); i += 2 {
				damage := rater.Damage(conductor.Conditions{Type: wire, Size: wire.Sizes[i], AmbientC: 40})
				failed := 0.0
				for _, r := range kind.Ratings {
					p := fusing.ProtectsWire(fusing.Device{Type: kind, Rating: r, AmbientC: 40}, damage.FaultTimeS, 600)
					pairs++
					if failed > 0 && p.Protects {
						t.Errorf("%s %g A protects %s %s, %g A does not", kind.Name, r.RatingA, wire.Name,
							wire.Sizes[i].Label, failed)
					}
					if !p.Protects && failed == 0 {
						failed = r.RatingA
					}
				}
			}
		}
	}
	if pairs < 1000 {
		t.Errorf("only %d pairs", pairs)
	}
}

// Every feed wire that a fuse guards and that is fed has a row, up to the greatest
// short along it; every fuse below another has a pair.
func TestRowsAreComplete(t *testing.T) {
	for seed := range int64(4) {
		s, faults := study(t, synth.YAML(150, seed))
		guards := s.Circuit.Guards()
		rows := map[*circuit.Wire]int{}
		for _, f := range s.Fuses {
			for _, w := range f.Wires {
				if w.Wire.Branch.Feeds() {
					rows[w.Wire]++
					most := 0.0
					for _, sh := range faults.OfWire(w.Wire) {
						most = math.Max(most, sh.Results[fault.Strong].CurrentA)
					}
					// A coil on the same fuse adds its own current.
					if far := faults.FarEnd(w.Wire).Results[fault.Strong].CurrentA; w.ToA > most*1.01 || w.ToA < far*0.99 {
						t.Errorf("seed %d: %s compared up to %.6g A, its shorts are %.6g to %.6g A", seed, w.Wire.Number,
							w.ToA, far, most)
					}
				}
			}
			if got, least := len(f.Above), len(guards[f.Branch.Index].Fuses); got < least {
				t.Errorf("seed %d: %s has %d devices above it, want %d or more", seed, f.Branch.Name, got, least)
			}
		}
		for _, w := range s.Circuit.Wires {
			if far := faults.FarEnd(w); far != nil && far.Fed && rows[w] != len(guards[w.Branch.Index].Fuses) {
				t.Errorf("seed %d: %s has %d rows for %d fuses", seed, w.Number, rows[w], len(guards[w.Branch.Index].Fuses))
			}
		}
	}
}

// By hand: a blade fuse of 10 A on 1 mm² (short-circuit limit by k²S²). Where the
// wire is heated within a second, margin is k²S² over the latest I²t.
func TestMarginByHand(t *testing.T) {
	s, faults := study(t, []byte(plain))
	f := s.Fuses[1]
	w := &f.Wires[0]
	damage := faults.Wires.Damage(w.Wire)
	amps := 150.0
	open := f.Device.Open(amps).SlowS
	limit := damage.ShortC
	start := faults.Wires.Allowed(w.Wire).LimitC
	size := w.Wire.Spec.Size
	stands := conductor.WithstandI2t(size.AreaMm2, start, limit) / (amps * amps) *
		conductor.CopperOhmMm2PerM / size.AreaMm2 / size.MaxOhmPerM
	if !(stands < 1) {
		t.Fatalf("%.3g s is not short", stands)
	}
	if got := damage.FaultTimeS(amps); math.Abs(got-stands) > 1e-9*stands {
		t.Errorf("wire stands %.6g s, by hand %.6g s", got, stands)
	}
	if ratio := stands / open; w.Ratio > ratio*(1+1e-9) {
		t.Errorf("worst margin %.6g is above the one at %g A, %.6g", w.Ratio, amps, ratio)
	}
	if f.Worst() == nil || !f.Worst().Protects {
		t.Errorf("10 A on 1 mm² protects: %+v", f.Worst())
	}
}

const plain = `fusewright: 1
title: plain
vehicle: invented machine
system: 12 V
practice: marine
battery: {chemistry: flooded, capacity: 40 Ah, resistance: 12 mΩ, at: box}
places:
  box: {ambient: 20 °C}
wire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}
fuses:
  main: {type: blade C, rating: 30 A, at: box, fed by: battery, wire: {size: 6 mm², length: 100 mm}}
  branch: {type: blade C, rating: 10 A, at: box, fed by: main, wire: {size: 6 mm², length: 100 mm}}
loads:
  lamp: {power: 55 W, behaves: filament lamp, inrush: {peak: 8, time: 3 ms}, at: box, fed by: branch, returns to: battery negative, wire: {length: 2 m}, return wire: {length: 2 m}}
situations:
  on: {key: on, engine: stopped, on: all}
`

func ExampleCompute() {
	d, err := design.Read("example.yaml", []byte(plain), library.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := circuit.Build(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	faults := fault.Compute(c)
	s := protection.Compute(c, solve.All(c, solve.Options{}), faults)
	f := s.Fuses[1]
	worst := f.Worst()
	fmt.Printf("%s protects %s %.0f times over at %.0f A; behind %s it is selective up to %.0f A\n", f.Branch.Name,
		worst.Wire.Number, worst.Ratio, worst.WorstA, f.Above[0].Above.Name, f.Above[0].UpToA)
	// Output: F2 protects W3 26 times over at 97 A; behind F1 it is selective up to 249 A
}

// The cable of a further battery's negative post stands with the fuses at its positive one: that of its
// link and that of what it feeds, each with what a short draws through it, 520 A and 420 A at most.
func TestNegativeCableOfAFurtherBattery(t *testing.T) {
	src := buildtest.File(t, "../../../testdata/rules/ok/house-by-sensing-relay.yaml")
	s, _ := study(t, src)
	got := map[string]float64{}
	for _, f := range s.Fuses {
		for _, w := range f.Wires {
			if w.Wire.From.Part.Name == "house" && w.Wire.Role.Returns() {
				got[f.Branch.Part.Name] = w.ToA
			}
		}
	}
	if len(got) != 2 || math.Abs(got["house end"]-520) > 1 || math.Abs(got["lamp end"]-420) > 1 {
		t.Errorf("by fuse: %v", got)
	}
}
