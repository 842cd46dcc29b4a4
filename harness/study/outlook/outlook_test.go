package outlook_test

import (
	"fmt"
	"math"
	"path/filepath"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/study/outlook"
	"fusewright/harness/study/ride"
)

// reviewOf reads a design file from the repository's root.
func reviewOf(tb testing.TB, file string) *harness.Review {
	tb.Helper()
	if reviews[file] == nil {
		src := buildtest.File(tb, filepath.Join("../../..", file))
		reviews[file] = reviewtest.Of(tb, src)
	}
	return reviews[file]
}

// reviews are those made already: a planner follows each ride once.
var reviews = map[string]*harness.Review{}

var demos = []string{"designs/fen-runner.yaml", "designs/hay-wain.yaml", "designs/reed-skiff.yaml", "designs/sedge-sloop.yaml"}

// The design's own situations are the budget's and the check's, figure by figure.
func TestOwnSituationsAgree(t *testing.T) {
	for _, file := range demos {
		r := reviewOf(t, file)
		p := r.Outlook()
		lines := append(r.Budget.Lines, r.Budget.KeyOff...)
		for i, s := range r.Design.Situations {
			f := p.Compute(p.Starts[i].State)
			if f.Trouble != "" {
				if r.Corners.Usable(i) {
					t.Errorf("%s, %s: %s", file, s.Name, f.Trouble)
				}
				continue
			}
			for _, l := range lines {
				if l.Situation != s {
					continue
				}
				for what, pair := range map[string][2]float64{"output": {f.OutputA, l.OutputA}, "spare": {f.SpareA, l.SpareA},
					"battery": {f.BatteryA, l.BatteryA}, "hours": {f.Hours, l.BatteryHours}, "likely": {f.LikelyA, l.LikelyA}, "even": {f.Line.BreakEvenRPM, l.BreakEvenRPM}} {
					if pair[0] != pair[1] && !(math.IsNaN(pair[0]) && math.IsNaN(pair[1])) {
						t.Errorf("%s, %s: %s %g, the budget has %g", file, s.Name, what, pair[0], pair[1])
					}
				}
			}
			for _, x := range f.Fuses {
				if want := r.Corners.Amps(i, x.Branch); x.A != want {
					t.Errorf("%s, %s, %s: %v, the check has %v", file, s.Name, x.Ref, x.A, want)
				}
			}
			for _, x := range f.Wires {
				if want := r.Corners.Amps(i, x.Branch); x.A != want {
					t.Errorf("%s, %s, %s: %v, the check has %v", file, s.Name, x.Ref, x.A, want)
				}
			}
			for _, x := range f.Loads {
				b := r.Circuit.PartOf(x.Load).Branches
				for _, b := range b {
					if b.Load != nil && !b.Load.Standby && x.On && x.DropV != r.Corners.Drop(i, b) {
						t.Errorf("%s, %s, %s: %v, the check has %v", file, s.Name, x.Ref, x.DropV, r.Corners.Drop(i, b))
					}
				}
			}
			if f.Parked.Days != r.Budget.StandbyDays || f.Parked.DrainA != r.Budget.StandbyA {
				t.Errorf("%s: parked %v, the budget has %g days", file, f.Parked, r.Budget.StandbyDays)
			}
		}
	}
}

// Saying every hand as it is gives the same state.
func TestEveryHandSaid(t *testing.T) {
	for _, file := range demos {
		r := reviewOf(t, file)
		p := r.Outlook()
		for _, start := range p.Starts {
			was := p.Compute(start.State)
			if was.Trouble != "" || start.State.SpeedPerMin == 0 {
				continue
			}
			s := start.State
			s.SpeedPerMin *= 1.0001 // so that it is a state of its own
			f := p.Compute(s)
			if math.Abs(f.VehicleA-was.VehicleA) > 1e-4 || math.Abs(f.AccessoryA-was.AccessoryA) > 1e-3*(1+was.AccessoryA) {
				t.Errorf("%s, %s: %g + %g A, by hand %g + %g A", file, start.Title, was.VehicleA, was.AccessoryA, f.VehicleA, f.AccessoryA)
			}
			for id, word := range was.Words {
				if f.Words[id] != word {
					t.Errorf("%s, %s: %s is %s, by hand %s", file, start.Title, id, word, f.Words[id])
				}
			}
		}
	}
}

// A leg begins as the ride has it there: within what warm wires and straight lines between tenths of a volt make.
func TestLegsAgree(t *testing.T) {
	for _, file := range demos {
		r := reviewOf(t, file)
		p := r.Outlook()
		at := len(r.Design.Situations)
		for _, x := range r.Design.Rides {
			done, err := ride.Simulate(r.Circuit, x, ride.Options{Tolerance: 1e-4})
			if err != nil {
				t.Fatal(err)
			}
			for i := range x.Legs {
				f := p.Compute(p.Starts[at].State)
				at++
				if i >= len(done.Legs) || f.Trouble != "" {
					continue
				}
				for _, point := range done.Points {
					if point.TimeS >= done.Legs[i].FromS-1e-9 && (i == 0 || point.TimeS > done.Legs[i].FromS-1e-9) {
						// of two points at one time, the later begins the leg
						next := point
						for _, q := range done.Points {
							if q.TimeS == point.TimeS {
								next = q
							}
						}
						if math.Abs(f.BatteryA-next.BatteryA) > 0.02*(1+math.Abs(next.LoadA)) || math.Abs(f.BusV-next.BusV) > 0.02*next.BusV {
							t.Errorf("%s, %s: %g A at %g V, the ride has %g A at %g V", file, p.Starts[at-1].Title, f.BatteryA, f.BusV, next.BatteryA, next.BusV)
						}
						break
					}
				}
			}
		}
	}
}

func BenchmarkTick(b *testing.B) {
	for _, file := range demos {
		r := reviewOf(b, file)
		p := r.Outlook()
		s := p.Starts[1].State
		b.Run(fmt.Sprintf("%s-%d-wires", r.Design.Title.Value[:8], len(r.Circuit.Wires)), func(b *testing.B) {
			for i := range b.N {
				s.SpeedPerMin = 1300 + float64(i%1000)
				p.Compute(s)
			}
		})
	}
}

func BenchmarkNew(b *testing.B) {
	for _, file := range demos {
		r := reviewOf(b, file)
		b.Run(filepath.Base(file), func(b *testing.B) {
			for range b.N {
				outlook.New(r.Circuit, r.Corners, r.Budget)
			}
		})
	}
}

// BenchmarkLarge is a tick of a harness of a thousand wires.
func BenchmarkLarge(b *testing.B) {
	r := reviewtest.Of(b, synth.YAML(1000, 1))
	p := r.Outlook()
	s := p.Starts[0].State
	for _, x := range p.Starts {
		if x.State.SpeedPerMin > 0 {
			s = x.State
		}
	}
	b.ResetTimer()
	for i := range b.N {
		s.SpeedPerMin = 1300 + float64(i%1000)
		p.Compute(s)
	}
}
