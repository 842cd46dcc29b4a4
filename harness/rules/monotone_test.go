package rules_test

import (
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/circuit"
	"fusewright/harness/corner"
	"fusewright/harness/design"
	"fusewright/harness/fault"
	"fusewright/harness/finding"
	"fusewright/harness/protection"
	"fusewright/harness/rules"
	"fusewright/harness/solve"
	"fusewright/harness/warm"
	"fusewright/library"
)

// dial changes one thing of a design in the unsafe direction.
type dial struct {
	name string
	// on are the parts that must not be judged milder: the one that is changed and
	// those that it serves; nil = all.
	on map[string]bool
	// at are the places of the dial, rising; set turns it there.
	at  []float64
	set func(*design.Design, float64)
	// fine tells that the dial can be set anywhere between.
	fine bool
	// eases are the rules that the change truly eases, with the reason.
	eases map[string]string
}

// verdict is the worst open severity by part, and by part and rule.
type verdict struct {
	x    float64
	part map[string]finding.Severity
	rule map[string]finding.Severity
}

func judgeAt(t testing.TB, file string, src []byte, d *dial, x float64) *verdict {
	des, err := design.Read(file, src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	d.set(des, x)
	v := &verdict{x, map[string]finding.Severity{}, map[string]finding.Severity{}}
	for _, f := range check(t, des) {
		if f.Accepted != "" || d.eases[f.Rule] != "" {
			continue
		}
		part := f.Part
		if f.Rule == "situation-unsolved" {
			part = "*"
		}
		v.part[part] = max(v.part[part], f.Severity)
		v.rule[part+"|"+f.Rule] = max(v.rule[part+"|"+f.Rule], f.Severity)
	}
	return v
}

// check is the whole way to the findings but for sizing, of which nothing is left.
func check(t testing.TB, d *design.Design) []*finding.Finding {
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	in := &rules.Input{Circuit: c, Corners: corner.Compute(c), Faults: fault.Compute(c)}
	in.Solutions = warm.Solutions(in.Corners.Results[corner.Nominal])
	in.Protection = protection.Compute(c, in.Solutions, in.Faults)
	return rules.Check(in)
}

var _ = solve.Converged

func (v *verdict) of(part string) finding.Severity { return max(v.part[part], v.part["*"]) }

// ofUnit is the worst at a part and at those that it serves.
func (v *verdict) ofUnit(d *design.Design, part string) finding.Severity {
	most := v.of(part)
	for name := range served(d, part) {
		most = max(most, v.of(name))
	}
	if i := strings.LastIndexByte(part, ' '); i > 0 && most < finding.Danger {
		most = max(most, v.ofUnit(d, part[:i])) // a way of a block
	}
	return most
}

// TestMono walks every dial.
func TestMono(t *testing.T) {
	n := 0
	for _, file := range os.Args[len(os.Args)-1:] {
		_ = file
	}
	for _, file := range monoFiles() {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		des, err := design.Read(file, src, library.Default())
		if err != nil {
			continue
		}
		for _, d := range dialsOf(des) {
			var list []*verdict
			for _, x := range d.at {
				list = append(list, judgeAt(t, file, src, d, x))
				n++
			}
			if d.fine {
				for i := 0; i+1 < len(list); i++ {
					a, b := list[i], list[i+1]
					for k := 0; k < 8 && !sameRules(a, b); k++ {
						m := judgeAt(t, file, src, d, (a.x+b.x)/2)
						n++
						list = append(list, m)
						if sameRules(a, m) {
							a = m
						} else {
							b = m
						}
					}
					slices.SortFunc(list, func(a, b *verdict) int { return int(math.Copysign(1, a.x-b.x)) })
					for i+1 < len(list) && list[i+1].x <= b.x {
						i++
					}
					i--
					if list[i].x >= b.x { break }
				}
			}
			for i := 1; i < len(list); i++ {
				a, b := list[i-1], list[i]
				for part := range a.part {
					if (d.on == nil || d.on[part]) && b.ofUnit(des, part) < a.of(part) {
						t.Errorf("%s: %s from %.9g to %.9g: %s goes from %v to %v\n\t%v\n\t%v", file, d.name, a.x, b.x, part, a.of(part), b.of(part), rulesAt(a, part), rulesAt(b, part))
					}
				}
			}
		}
	}
	t.Logf("%d designs judged", n)
}

func rulesAt(v *verdict, part string) (out []string) {
	for k, s := range v.rule {
		if len(k) > len(part) && k[:len(part)+1] == part+"|" {
			out = append(out, fmt.Sprint(k[len(part)+1:], "=", s))
		}
	}
	slices.Sort(out)
	return
}

func sameRules(a, b *verdict) bool {
	if len(a.rule) != len(b.rule) {
		return false
	}
	for k, s := range a.rule {
		if b.rule[k] != s {
			return false
		}
	}
	return true
}
