package rules_test

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

// TestEveryWireThatMeltsInARingIsADanger: random rings and fuses side by side of one to three bars, on the battery or
// on a further one linked to it, against a solver of its own. Each wire is shorted to the frame at either end, with all fuses in and with each out, in both states of the source;
// the fuses open one after another anywhere in their bands. What melts a wire before what feeds it has opened must be a danger at
// that wire, in a tail at least advice.
func TestEveryWireThatMeltsInARingIsADanger(t *testing.T) {
	for _, link := range []string{"", byRelay, bySwitch, byCharger} {
		meltInRings(t, link)
	}
}

func meltInRings(t *testing.T, link string) {
	melted, whole := 0, 0
	for seed := range int64(150) {
		r := rand.New(rand.NewSource(seed))
		src := ringOf(r, link)
		review := reviewtest.Of(t, src)
		c, study := review.Circuit, review.Faulted()
		said := map[string]finding.Severity{}
		for _, f := range finding.All(review.Findings) {
			for _, w := range c.Wires {
				if f.Ref == w.Number || f.Rule == "short-too-weak" && strings.Contains(f.What, "wire "+w.Number+" ") {
					said[w.Number] = max(said[w.Number], f.Severity)
				}
			}
		}
		none := true
		for _, w := range meltedIn(c, study, r) {
			least := finding.Danger
			if c.Tail(w.wire) {
				least = finding.Advice
			}
			melted, none = melted+1, false
			if said[w.wire.Number] < least {
				t.Errorf("seed %d: %s melts: %s; said is %v\n%s", seed, w.wire.Text(), w.how, said[w.wire.Number], src)
			}
		}
		if none {
			whole++
		}
	}
	if melted < 50 || whole < 10 {
		t.Errorf("%q: only %d wires melt, %d designs are whole", link, melted, whole)
	}
}

// The links of a house battery to the first one; what a charger itself gives is left out of the sums here.
const (
	links = "  start end: {type: class T, rating: 60 A, at: box, fed by: battery, wire: {size: 16 mm², length: 200 mm}, stays live: test}\n" +
		"  house end: {type: class T, rating: 60 A, at: box, fed by: link, wire: {size: 16 mm², length: 500 mm}, stays live: test}\n"
	atLink    = "at: box, fed by: start end, wire: {size: 16 mm², length: 1 m}"
	byRelay   = "relays:\n  link: {form: voltage-sensing relay, " + atLink + ", coil: {returns to: frame, return wire: {size: 1 mm², length: 300 mm}}}\n"
	bySwitch  = "switches:\n  link: {type: battery switch 300 A, " + atLink + "}\n"
	byCharger = "chargers:\n  link: {type: DC-DC charger 30 A, " + atLink + ", returns to: frame, return wire: {size: 10 mm², length: 400 mm}}\n"
)

// ringOf is a ring of bars between two fuses at a battery, joined with a fuse or without; with a link the battery is a
// further one, else the first.
func ringOf(r *rand.Rand, link string) string {
	sizes, amps := []string{"0.5 mm²", "0.75 mm²", "1 mm²", "1.5 mm²", "2.5 mm²", "4 mm²", "6 mm²"}, []int{5, 10, 15, 20, 25, 30}
	big := r.Intn(3) == 0 // most suit their fuses, so that some are whole
	size := func() string {
		if big {
			return sizes[5+r.Intn(2)]
		}
		return sizes[r.Intn(len(sizes))]
	}
	rating := func() int {
		if big {
			return amps[r.Intn(3)]
		}
		return amps[r.Intn(len(amps))]
	}
	wire := func() string { return fmt.Sprintf("wire: {size: %s, length: %d mm}", size(), 200+r.Intn(60)*100) }
	var fuses, splices, loads strings.Builder
	fuse := func(name, from string, rating int) {
		fmt.Fprintf(&fuses, "  %s: {type: blade C, rating: %d A, at: box, fed by: %s, %s, stays live: test}\n", name, rating, from, wire())
	}
	post, bank := "battery", ""
	if link != "" {
		post, bank = "house", "batteries:\n  house: {chemistry: AGM, capacity: 80 Ah, rate: 20 h, resistance: 5 mΩ, at: box, fed by: house end, wire: {size: 16 mm², length: 200 mm}, returns to: frame, return wire: {size: 16 mm², length: 200 mm}}\n"+link
		fuses.WriteString(links)
	}
	fuse("left", post, rating())
	fuse("right", post, rating())
	bars := 1 + r.Intn(3)
	from := "left"
	for i := range bars {
		bar := fmt.Sprintf("bar %d", i+1)
		feeds := from
		if i == bars-1 {
			feeds = "[" + from + ", right]"
		}
		fmt.Fprintf(&splices, "  %s: {at: box, fed by: %s, %s}\n", bar, feeds, wire())
		lamp := bar
		if r.Intn(3) > 0 {
			lamp = fmt.Sprintf("way %d", i+1)
			fuse(lamp, bar, 5)
		}
		fmt.Fprintf(&loads, "  lamp %d: {power: %d W, behaves: resistor, at: box, fed by: %s, %s, returns to: frame, return %s, stays live: test}\n", i+1, 5+r.Intn(20), lamp, wire(), wire())
		if from = bar; r.Intn(3) > 0 {
			from = fmt.Sprintf("joint %d", i+1)
			if i < bars-1 {
				fuse(from, bar, rating())
			} else {
				from = bar
			}
		}
	}
	return "fusewright: 1\ntitle: ring\nvehicle: invented\nsystem: 12 V\npractice: off-road\n" +
		"battery: {chemistry: AGM, capacity: 60 Ah, rate: 20 h, resistance: 6 mΩ, at: box}\nplaces: {box: {ambient: 30 °C}}\n" +
		"wire: {insulation: ISO 6722 thin wall class B}\ngrounds:\n  frame: {kind: frame stud, at: box, limit: 200 A, frame resistance: 3 mΩ}\n" + bank +
		"fuses:\n" + fuses.String() + "splices:\n" + splices.String() + "loads:\n" + loads.String()
}

type meltedWire struct {
	wire *circuit.Wire
	how  string
}

// meltedIn are the wires that a short somewhere melts, each once.
func meltedIn(c *circuit.Circuit, study *fault.Study, r *rand.Rand) (list []meltedWire) {
	fuses := []*circuit.Branch{nil}
	for _, b := range c.Branches {
		if b.Kind == circuit.FuseBranch {
			fuses = append(fuses, b)
		}
	}
	for state := range 2 {
		opt := study.Options(fault.Net{State: state})
		ohm := solve.Prepare(c).Network(&design.Situation{Name: "fault", Key: design.KeyOn}, opt).Solution().Ohm
		for _, w := range c.Wires {
			if !w.Branch.Feeds() {
				continue
			}
			for _, at := range []*circuit.Node{w.From.Node, w.To.Node} {
				if state == fault.Weak && at == w.To.Node && w.To.Part.Kind == circuit.Load {
					continue // through the load's own return, which the sum here has not
				}
				for _, out := range fuses {
					for try := range 3 {
						early := func() float64 { return 0 }
						if try > 0 {
							early = r.Float64
						}
						b := &burn{c: c, study: study, ohm: ohm, opt: opt, at: at, open: map[*circuit.Branch]bool{out: true}}
						if state == fault.Weak {
							b.backOhm = 3e-3
						}
						for _, x := range b.run(early) {
							if !slices.ContainsFunc(list, func(m meltedWire) bool { return m.wire == x }) {
								list = append(list, meltedWire{x, fmt.Sprintf("short at %s of %s, state %d, out %v", at.Terminals[0].Part.Name, w.Number, state, out)})
							}
						}
					}
				}
			}
		}
	}
	return list
}

// burn is one short that goes on until nothing feeds it.
type burn struct {
	c       *circuit.Circuit
	study   *fault.Study
	ohm     []float64
	opt     solve.Options
	backOhm float64
	at      *circuit.Node
	open    map[*circuit.Branch]bool
}

func (b *burn) run(early func() float64) (melted []*circuit.Wire) {
	fuse, wire := map[*circuit.Branch]float64{}, map[*circuit.Wire]float64{}
	late := map[*circuit.Branch]float64{} // where in its band each opens
	for range 10 {
		amps := b.solve()
		next, forS := (*circuit.Branch)(nil), math.Inf(1)
		takes := map[*circuit.Branch]float64{}
		flows := false
		for _, x := range b.c.Branches {
			if x.Kind != circuit.FuseBranch || b.open[x] || !(amps[x.Index] > 1) {
				continue
			}
			flows = true
			if _, ok := late[x]; !ok {
				late[x] = early()
			}
			d, _ := b.study.Device(x)
			o := d.Open(amps[x.Index])
			takes[x] = o.SlowS
			if fast := math.Max(o.FastS, 1e-4); late[x] > 0 && !math.IsInf(o.SlowS, 1) {
				takes[x] = fast * math.Pow(o.SlowS/fast, 1-late[x])
			}
			if left := (1 - fuse[x]) * takes[x]; left < forS {
				next, forS = x, left
			}
		}
		for _, w := range b.c.Wires {
			if !w.Branch.Feeds() || !b.fused(w, amps) {
				continue
			}
			was := wire[w]
			if stands := b.study.Wires.Stands(w)(amps[w.Branch.Index]); !math.IsInf(stands, 1) {
				wire[w] += forS / stands
			}
			if was < 1 && wire[w] >= 1 {
				melted = append(melted, w)
			}
		}
		if !flows || next == nil {
			return melted
		}
		for x, s := range takes {
			fuse[x] += forS / s
		}
		b.open[next] = true
	}
	return melted
}

// fused tells whether some current flows in a wire that is not before every fuse: what is, is another rule's.
func (b *burn) fused(w *circuit.Wire, amps []float64) bool {
	return amps[w.Branch.Index] > 1 && !b.c.IsPost(w.From.Node) && !b.c.IsPost(w.To.Node)
}

// solve gives the current of every branch by Gauss.
func (b *burn) solve() []float64 {
	n := len(b.c.Nodes)
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n+1)
		m[i][i] = 1e-9
	}
	add := func(i, k int, s float64) {
		m[i][i] += s
		m[k][k] += s
		m[i][k] -= s
		m[k][i] -= s
	}
	for _, x := range b.c.Branches {
		if r := b.ohm[x.Index]; x.Feeds() && !b.open[x] && r > 0 && !math.IsInf(r, 1) {
			add(x.A.Index, x.B.Index, 1/r)
		}
	}
	for _, x := range b.c.Branches {
		if x.Kind == circuit.BatteryBranch {
			post, emfV, innerOhm := x.A.Index, b.opt.BatteryV, b.opt.BatteryOhm
			if bank, further := x.Part.Source.(*design.Bank); further {
				store, charge := battery.New(&bank.Store, 12), 1-b.opt.BanksDischarged
				emfV, innerOhm = store.OpenCircuitV(charge, battery.RatedC), x.Ohm*store.Ohm(charge, battery.RatedC)/store.Ohm(1, battery.RatedC)
			}
			m[post][post] += 1 / innerOhm
			m[post][n] += emfV / innerOhm
		}
	}
	m[b.at.Index][b.at.Index] += 1 / math.Max(b.backOhm, 1e-6)
	for i := range n {
		p := i
		for k := i + 1; k < n; k++ {
			if math.Abs(m[k][i]) > math.Abs(m[p][i]) {
				p = k
			}
		}
		m[i], m[p] = m[p], m[i]
		for k := i + 1; k < n; k++ {
			f := m[k][i] / m[i][i]
			for j := i; j <= n; j++ {
				m[k][j] -= f * m[i][j]
			}
		}
	}
	v := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		v[i] = m[i][n]
		for k := i + 1; k < n; k++ {
			v[i] -= m[i][k] * v[k]
		}
		v[i] /= m[i][i]
	}
	amps := make([]float64, len(b.c.Branches))
	for _, x := range b.c.Branches {
		if r := b.ohm[x.Index]; x.Feeds() && !b.open[x] && r > 0 && !math.IsInf(r, 1) {
			amps[x.Index] = math.Abs(v[x.A.Index]-v[x.B.Index]) / r
		}
	}
	return amps
}
