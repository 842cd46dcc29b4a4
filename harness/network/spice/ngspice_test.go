package spice_test

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/network/spice"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/referencetest"
	"fusewright/harness/proof/solvetest"
	"fusewright/harness/proof/synth"
	"fusewright/library"
)

// worst keeps the largest deviations over all networks.
type worst struct {
	sync.Mutex
	volts, share float64
	networks     int
	unsettled    int // relays chatter: there is no operating point to compare
	astray       int // what the simulator gives does not follow its own sources
}

// against compares one circuit in one situation; report collects failures.
func (w *worst) against(t *testing.T, program, dir, name string, c *circuit.Circuit, s *design.Situation, opt solve.Options) {
	n := solve.Prepare(c).Network(s, opt)
	sol := n.Solution()
	if sol.Status == solve.Chattering {
		w.Lock()
		defer w.Unlock()
		w.unsettled++
		return
	}
	if sol.Status != solve.Converged {
		t.Errorf("%s: %s: %s", name, sol.Status, sol.Why)
		return
	}
	var b bytes.Buffer
	if err := spice.Write(&b, c, s, opt); err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	got, err := referencetest.Simulate(program, dir, name, b.String())
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	w.Lock()
	defer w.Unlock()
	if !follows(c, n, got) {
		w.astray++
		return
	}
	w.networks++
	compared := 0
	for i, v := range sol.NodeV {
		if x, ok := got[fmt.Sprintf("v(n%d)", i)]; ok && !math.IsNaN(v) {
			compared++
			w.volts = max(w.volts, math.Abs(x-v))
			if !(math.Abs(x-v) <= 1e-3) {
				t.Errorf("%s: node %d at %.6f V, ngspice %.6f V", name, i, v, x)
			}
		}
	}
	for i, amps := range sol.BranchA {
		x, ok := got[fmt.Sprintf("i(v%d)", i)]
		if !ok {
			x, ok = got[fmt.Sprintf("i(@r%d[i])", i)]
		}
		if !ok && amps != 0 {
			t.Errorf("%s: ngspice has no current of branch %d (%s) with %g A", name, i, c.Branches[i].Name, amps)
		}
		if !ok {
			continue
		}
		compared++
		dev := math.Abs(x - amps)
		if math.Abs(amps) > 1e-3 {
			w.share = max(w.share, dev/math.Abs(amps))
		}
		if !(dev <= 1e-3*math.Abs(amps)+1e-7) { // 0.1 %; below 0.1 mA what the simulator resolves
			t.Errorf("%s: branch %d (%s) %.9g A, ngspice %.9g A", name, i, c.Branches[i].Name, amps, x)
		}
	}
	if compared < len(c.Nodes) {
		t.Errorf("%s: only %d values compared", name, compared)
	}
}

// follows tells whether each source of the netlist has the current that its own law gives at
// the voltage that the simulator reports: seldom one stops at a voltage that is no solution.
func follows(c *circuit.Circuit, n *solve.Network, got map[string]float64) bool {
	at := func(x *circuit.Node) float64 { return got[fmt.Sprintf("v(n%d)", x.Index)] } // 0 of battery negative
	for _, b := range c.Branches {
		law, ok := n.Law(b)
		amps, there := got[fmt.Sprintf("i(v%d)", b.Index)]
		if !ok || !there {
			continue
		}
		if want, _ := law.At(at(b.A) - at(b.B)); math.Abs(want-amps) > 1e-2*math.Abs(want)+1e-3 {
			return false
		}
	}
	return true
}

// Random networks of every kind of load, battery, charging and relay: node
// voltages within 1 mV and currents within 0.1 % of ngspice.
func TestRandomNetworksAgainstNgspice(t *testing.T) { againstNgspice(t, 20000, solvetest.Random) }

// The same with diodes, forward, blocking and reversed, and a switch with positions.
func TestRandomDiodesAgainstNgspice(t *testing.T) { againstNgspice(t, 30000, solvetest.RandomValves) }

// The same with further batteries.
func TestRandomBatteriesAgainstNgspice(t *testing.T) { againstNgspice(t, 40000, solvetest.RandomBanks) }

// The same with chargers of every kind beside the batteries.
func TestRandomChargersAgainstNgspice(t *testing.T) {
	againstNgspice(t, 50000, solvetest.RandomChargers)
}

// The same with converters that feed loads of a lower voltage.
func TestRandomConvertersAgainstNgspice(t *testing.T) {
	againstNgspice(t, 70000, solvetest.RandomConverters)
}

// The same with relays that latch or are held by their delay, a motor that runs either way, and a charging
// system at the end of its cable.
func TestRandomStaysAgainstNgspice(t *testing.T) {
	againstNgspice(t, 60000, solvetest.RandomStays)
}

// The same with an isolator at the charging system's own stud, and a second alternator.
func TestRandomStudsAgainstNgspice(t *testing.T) {
	againstNgspice(t, 80000, solvetest.RandomStuds)
}

// Odd designs, with wires side by side and loads that hang one on the other: read and built as
// any design is. Each seed is the next odd one that has an operating point.
func TestOddDesignsAgainstNgspice(t *testing.T) {
	againstNgspice(t, 0, func(seed uint64) (*circuit.Circuit, *design.Situation) {
		for k := int64(seed) * 10; ; k++ {
			d, err := design.Read("odd.yaml", synth.Random(k), library.Default())
			if err != nil {
				panic(err)
			}
			c, err := circuit.Build(d)
			if err != nil {
				panic(err)
			}
			sit := d.Situations[int(seed)%len(d.Situations)]
			if solve.Solve(c, sit, solve.Options{}).Status == solve.Converged {
				return c, sit
			}
		}
	})
}

func againstNgspice(t *testing.T, from uint64, random func(uint64) (*circuit.Circuit, *design.Situation)) {
	program, dir := referencetest.Program(t, "ngspice"), t.TempDir()
	count := uint64(300)
	if testing.Short() {
		count = 30
	}
	var w worst
	seeds := make(chan uint64)
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), 2) {
		wait.Go(func() {
			for seed := range seeds {
				c, sit := random(from + seed)
				w.against(t, program, dir, fmt.Sprintf("random%d", seed), c, sit, solve.Options{})
			}
		})
	}
	for seed := range count {
		seeds <- seed
	}
	close(seeds)
	wait.Wait()
	if left := w.unsettled + w.astray; uint64(left)*50 > count {
		t.Errorf("%d of %d networks are not compared", left, count)
	}
	t.Logf("%d networks: largest deviation %.3g V, %.3g of a current; %d chatter, %d where the simulator goes astray", w.networks, w.volts, w.share, w.unsettled, w.astray)
}

// Every demonstration design, and those with fuses and contacts in returns or connectors in the loom, in every
// situation of its own.
func TestDesignsAgainstNgspice(t *testing.T) {
	program, dir := referencetest.Program(t, "ngspice"), t.TempDir()
	files, err := filepath.Glob("../../../designs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no designs found", err)
	}
	for _, name := range []string{"fuse-in-return", "switched-in-return", "ok/connectors", "ok/chain-of-lamps", "ok/converter", "converter-overloaded", "parallel-wire-lost"} {
		files = append(files, "../../../testdata/rules/"+name+".yaml")
	}
	files = append(files, "../../../testdata/rules/ok/house-by-sensing-relay.yaml", "../../../testdata/rules/ok/two-speeds.yaml")
	files = append(files, "../../../testdata/rules/reversing-both-on.yaml") // a motor that runs either way
	var w worst
	for _, file := range files {
		c := buildtest.Circuit(t, buildtest.File(t, file))
		d := c.Design
		for i, s := range d.Situations {
			name := fmt.Sprintf("%s-%d", strings.TrimSuffix(filepath.Base(file), ".yaml"), i)
			w.against(t, program, dir, name, c, s, solve.Options{})
		}
	}
	t.Logf("%d operating points: largest deviation %.3g V, %.3g of a current", w.networks, w.volts, w.share)
}

// A ring with all its fuses, and with each of them out.
func TestRingAgainstNgspice(t *testing.T) {
	program, dir := referencetest.Program(t, "ngspice"), t.TempDir()
	c := buildtest.Circuit(t, buildtest.File(t, "../../../testdata/rules/ring-leg-lost.yaml"))
	rings := c.Rings()
	var w worst
	for i, s := range c.Design.Situations {
		if s.Key != design.KeyOn {
			continue
		}
		w.against(t, program, dir, fmt.Sprintf("ring-%d", i), c, s, solve.Options{})
		for _, b := range c.Branches {
			if b.Kind == circuit.FuseBranch && rings.In(b) {
				w.against(t, program, dir, fmt.Sprintf("ring-%d-%d", i, b.Index), c, s, solve.Options{Changes: []solve.Change{solve.OpenBranch(b)}})
			}
		}
	}
	if w.networks < 4 {
		t.Errorf("only %d operating points", w.networks)
	}
	t.Logf("%d operating points: largest deviation %.3g V, %.3g of a current", w.networks, w.volts, w.share)
}
