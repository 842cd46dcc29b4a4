package harness_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"testing"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/mutant"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// TestJoint: a joint in a wire takes from every load no more than
// its own resistance times the current, and no finding gets milder.
func TestJoint(t *testing.T) {
	lib := library.Default()
	joints := 0
	for name, src := range heldDesigns(t) {
		was, err := assess(src, lib)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if was.Sizing != nil {
			continue // other lengths may be given other sizes
		}
		for i, w := range was.Circuit.Wires {
			if w.Role != circuit.FeedWire || i%3 != 0 { // a third of them is enough
				continue
			}
			if slices.ContainsFunc(w.To.Part.Branches, func(b *circuit.Branch) bool { return b.Load != nil && b.Load.Reverses }) {
				continue // a joint there would stand between the halves of its contactor
			}
			const joint = "the joint"
			const tailM = 0.01 // short, as it lies outside the runs and is cooler
			before := strconv.FormatFloat(w.LengthM-tailM, 'f', -1, 64) + " m"
			text, err := mutant.Jointed(src, lib, w.To.Part.Name, joint, before, "10 mm")
			if err != nil {
				continue // a coil, a way, or several feeds
			}
			now, err := assess(text, lib)
			if err != nil {
				t.Errorf("%s, %s: %v", name, w.To.Part.Name, err)
				continue
			}
			joints++
			if worse := droppedMore(was, now, w, joint); worse != "" {
				t.Errorf("%s, joint before %s: %s", name, w.To.Part.Name, worse)
			}
			for _, f := range was.Findings {
				if !stillFound(f, now.Findings, joint) {
					t.Errorf("%s, joint before %s: gone or milder: %s: %s: %s", name, w.To.Part.Name, f.Severity, f.Rule, f.What)
				}
			}
		}
	}
	t.Logf("%d joints", joints)
	if joints < 50 {
		t.Errorf("%d joints", joints)
	}
}

// droppedMore says where a load has less or more voltage than the ends and the
// joint that came into a wire can explain, with a tenth on top for what the loads
// draw at the other voltage. A load of constant power that has lost a seventh of its
// voltage already multiplies whatever is added, so it is left out.
func droppedMore(was, now *harness.Review, w *circuit.Wire, joint string) string {
	for i, s := range was.Solutions {
		after := now.Solutions[i]
		if s.Status != solve.Converged || after.Status != solve.Converged {
			continue
		}
		most := 1.1*(jointV(now, after, joint)-w.EndsOhm*math.Abs(s.Amps(w.Branch))) + 1e-5
		then := loadVolts(now, after)
		for name, v := range loadVolts(was, s) {
			if math.Abs(v-then[name]) > most && math.Abs(v) > 0.85*highestV(s) {
				return fmt.Sprintf("%s has %.4f V and then %.4f V in %s, of which the joint explains %.4f V",
					name, v, then[name], s.Situation.Name, most)
			}
		}
	}
	return ""
}

// highestV is the voltage of the source, as nothing has more.
func highestV(s *solve.Solution) (v float64) {
	for _, x := range s.NodeV {
		if x > v { // a floating node is no number
			v = x
		}
	}
	return v
}

// jointV is what a joint and the ends of its wires take, as warm as the wires are.
func jointV(r *harness.Review, s *solve.Solution, joint string) (v float64) {
	for _, w := range r.Circuit.Wires {
		if w.From.Part.Name == joint || w.To.Part.Name == joint {
			v += w.EndsOhm * s.Ohm[w.Branch.Index] / w.Branch.Ohm * math.Abs(s.Amps(w.Branch))
		}
	}
	for _, b := range r.Circuit.Branches {
		if b.Part != nil && b.Part.Name == joint {
			v += math.Abs(s.Volts(b))
		}
	}
	return v
}

func loadVolts(r *harness.Review, s *solve.Solution) map[string]float64 {
	list := map[string]float64{}
	for _, b := range r.Circuit.Branches {
		if b.Kind == circuit.LoadBranch {
			list[b.Part.Name+" "+b.Name] = s.Volts(b)
		}
	}
	return list
}

// stillFound tells whether a finding is among others, of the same part or of the
// joint that its wire now leads to, and at least as grave.
func stillFound(f *finding.Finding, list []*finding.Finding, joint string) bool {
	switch f.Rule {
	case "fuse-breaking-capacity":
		return true // the short behind more resistance is smaller indeed
	case "ring-below-stud":
		return true // the wire with that end has its end at the joint
	}
	return slices.ContainsFunc(list, func(g *finding.Finding) bool {
		return g.Rule == f.Rule && cmp.Compare(g.Severity, f.Severity) >= 0 && (g.Part == f.Part || g.Part == joint)
	})
}
