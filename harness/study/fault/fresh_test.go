package fault

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/spice"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/synth"
)

// shortOhm is what the compared shorts have, so that their current can be read
// off a voltage.
const shortOhm = 0.005

// ends are the points of a circuit that are nodes: wire ends, and across loads.
func ends(c *circuit.Circuit) []point {
	var out []point
	for _, w := range c.Wires {
		if w.Branch.Feeds() {
			out = append(out, point{wire: w, share: 1, draws: split(w, 1)}, point{wire: w, share: 0, draws: split(w, 0)})
		}
	}
	for _, b := range loads(c) {
		plus, minus := b.Part.Terminal("+").Node, b.Part.Terminal("-").Node
		out = append(out, point{share: 1, back: minus, draws: []solve.Draw{{Node: plus, Amps: 1}, {Node: minus, Amps: -1}}})
	}
	return out
}

// between are the two nodes that a point shorts.
func (p point) between(c *circuit.Circuit) (a, b *circuit.Node) {
	b = c.Negative()
	if p.back != nil {
		b = p.back
	}
	for _, d := range p.draws {
		if d.Amps == 1 {
			a = d.Node
		}
	}
	return a, b
}

// The update finds for every short what a network built afresh with the short
// in it gives, on realistic harnesses and on odd ones whose feeds meet again.
func TestShortsEqualFreshNetworks(t *testing.T) {
	compared, farthest := 0, 0.0
	for seed := range int64(30) {
		for _, src := range [][]byte{synth.Random(seed), synth.YAML(40, seed)} {
			c := buildtest.Circuit(t, src)
			sources := sources(c)
			plan := solve.Prepare(c)
			for state := range sources {
				l := newLoom(plan, c, sources[state], state, false)
				for _, p := range ends(c) {
					f, ok := l.current(p, shortOhm)
					want := fresh(c, p, options(c, sources[state], state, false))
					if !ok {
						if want > liveV/shortOhm { // not fed: a few millivolts at the most
							t.Errorf("seed %d: not fed, where a fresh network has %g A", seed, want)
						}
						continue
					}
					compared++
					share := math.Abs(f.amps-want) / want
					farthest = math.Max(farthest, share)
					if !(share <= 1e-6) {
						t.Errorf("seed %d, state %d: %.9g A, fresh network %.9g A", seed, state, f.amps, want)
					}
				}
			}
		}
	}
	t.Logf("%d shorts, farthest %.2g", compared, farthest)
	if compared < 2000 {
		t.Errorf("only %d shorts compared", compared)
	}
}

// fresh is the least current over the source's bounds, each network built with
// the short in it.
func fresh(c *circuit.Circuit, p point, opts []solve.Options) float64 {
	least := math.Inf(1)
	a, b := p.between(c)
	for _, opt := range opts {
		opt.Changes = append(opt.Changes[:len(opt.Changes):len(opt.Changes)], solve.Short(a, b, shortOhm))
		s := solve.Solve(c, keyOn, opt)
		v := s.NodeV[a.Index] - s.NodeV[b.Index]
		if math.IsNaN(v) {
			v = 0
		}
		least = math.Min(least, v/shortOhm)
	}
	return least
}

// The operating point of shorted netlists in ngspice: the voltage left across
// the short, so its current, within 0.1 %.
func TestShortsAgainstNgspice(t *testing.T) {
	program := referencetest.Program(t, "ngspice")
	compared, farthest := 0, 0.0
	for seed := range int64(8) {
		c := buildtest.Circuit(t, synth.YAML(24, seed))
		sources := sources(c)
		plan := solve.Prepare(c)
		for state := range sources {
			l := newLoom(plan, c, sources[state], state, false)
			for k, p := range ends(c) {
				if k%7 != int(seed%7) { // a sample: each needs a run of the simulator
					continue
				}
				f, ok := l.current(p, shortOhm)
				if !ok {
					continue
				}
				least := math.Inf(1)
				for _, opt := range options(c, sources[state], state, false) {
					least = math.Min(least, simulate(t, program, c, p, opt))
				}
				compared++
				share := math.Abs(f.amps-least) / least
				farthest = math.Max(farthest, share)
				if !(share <= 1e-3) {
					t.Errorf("seed %d, state %d, short %d: %.6g A, ngspice %.6g A", seed, state, k, f.amps, least)
				}
			}
		}
	}
	t.Logf("%d shorts, farthest %.2g", compared, farthest)
	if compared < 50 {
		t.Errorf("only %d shorts compared", compared)
	}
}

var printed = regexp.MustCompile(`(?m)^v\(n?\d+(?:,n?\d+)?\) = (\S+)`)

// simulate is the current of a short by ngspice.
func simulate(t *testing.T, program string, c *circuit.Circuit, p point, opt solve.Options) float64 {
	t.Helper()
	a, b := p.between(c)
	opt.Changes = append(opt.Changes[:len(opt.Changes):len(opt.Changes)], solve.Short(a, b, shortOhm))
	var deck bytes.Buffer
	if err := spice.Write(&deck, c, keyOn, opt); err != nil {
		t.Fatal(err)
	}
	across := fmt.Sprintf("v(n%d)", a.Index)
	if b.Index > 0 {
		across = fmt.Sprintf("v(n%d,n%d)", a.Index, b.Index)
	}
	text := bytes.Replace(deck.Bytes(), []byte(".op\n.end\n"),
		[]byte(".control\nset numdgt=12\nop\nprint "+across+"\nquit\n.endc\n.end\n"), 1)
	file := filepath.Join(t.TempDir(), "short.cir")
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	out, _ := exec.Command(program, "-b", "-n", file).CombinedOutput()
	m := printed.FindSubmatch(out)
	if m == nil {
		t.Fatalf("ngspice printed no voltage:\n%s", out)
	}
	v, err := strconv.ParseFloat(string(m[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v / shortOhm
}
