package fault
import ("testing";"fmt";"fusewright/harness/solve";"fusewright/harness/synth")
func TestZZ(t *testing.T) {
	for _, n := range []int{40,1000,10000} {
		c := load(t, synth.YAML(n, 1))
		s := &Study{Circuit: c}
		for _, b := range c.Branches { if b.Returns() { if p := stranded(c, b); len(p) > 1 { s.Lost = append(s.Lost, &Lost{Branch: b, Shared: p}) } } }
		plan := solve.Prepare(c)
		for _, sit := range c.Design.Situations {
			b := newBase(plan.Network(sit, solve.Options{AcceptFolded: true}), true)
			full, part, size := 0, 0, 0
			for _, l := range s.Lost { if l.mixed(b.before) { if p := b.local.Open(l.Branch); p == nil { full++ } else { part++; size += len(p.Branches()) } } }
			fmt.Println(n, sit.Name, "whole", full, "part", part, "branches", size)
		}
	}
}
