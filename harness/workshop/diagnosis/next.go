package diagnosis

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
)

// Next is the one further reading that tells most.
type Next struct {
	// Check is how it is written into the readings: "E1 − to G1 −", with In the situation; of one
	// without power, Check is the number in the bench test.
	Check    string    `json:"check"`
	In       string    `json:"in"`
	How      string    `json:"how"`
	Outcomes []Outcome `json:"outcomes"`
}

// Outcome is what the reading may be, and what that would mean.
type Outcome struct {
	Reads string  `json:"reads"`
	Means string  `json:"means"`
	Share float64 `json:"share"` // of that meaning, once it reads so
}

// A reading is worth asking for from so many bits on. Between how many points it is looked for.
const (
	leastBits  = 0.1
	mostPoints = 160
	quadrature = 240
)

// trial is one reading that might be taken.
type trial struct {
	probe bench.Probe
	state int
	check string
	in    string
	how   string
	mean  []float64 // by candidate
	sd    []float64
	bits  float64
	unit  quantity.Dimension
	scale int
}

// next finds the reading that tells the likeliest explanations apart best: of those that can be
// taken from outside, by how much it is expected to lessen what is not known (mutual information,
// Shannon 1948).
func (m *model) next(list []*candidate) *Next {
	var few []*candidate
	for _, c := range list {
		if c.point != nil && c.chol != nil && !slices.ContainsFunc(c.faults, func(f *fault) bool { return f.kind == wrongReading }) {
			few = append(few, c)
		}
	}
	if len(few) < 2 {
		return nil
	}
	weight := make([]float64, len(few))
	sum := 0.0
	for _, c := range few {
		sum += c.share
	}
	for i, c := range few {
		weight[i] = c.share / sum
	}
	var best *trial
	for _, t := range m.trials(few) {
		t.mean, t.sd = make([]float64, len(few)), make([]float64, len(few))
		for i, c := range few {
			t.mean[i], t.sd[i] = m.expect(c, t)
		}
		if t.bits = information(weight, t.mean, t.sd); best == nil || t.bits > best.bits*1.02 {
			best = t
		}
	}
	if best == nil || best.bits < leastBits {
		return nil
	}
	return &Next{Check: best.check, In: best.in, How: best.how, Outcomes: m.outcomes(best, few, weight)}
}

// expect is what a trial would read with an explanation, and how sure that is: of its own digits and
// of what a sound harness spreads by in resistances and powers.
func (m *model) expect(c *candidate, t *trial) (mean, sd float64) {
	s := &sensor{probe: &t.probe, state: t.state, gain: t.scale, y: 0, Placed: &readings.Placed{Reading: &readings.Reading{}}}
	mean = m.predict(s, c.point)
	sd = noise(m.meter, t.scale, mean)
	if t.state >= 0 { // what joints of its way spread by: a fifth of what it shows where that is little
		sd = math.Hypot(sd, math.Min(0.15*math.Abs(mean), 0.1))
	}
	return mean, math.Hypot(sd, 0.02*math.Abs(mean))
}

// information is the expected gain in bits of a reading with a mean and spread under each explanation.
func information(weight, mean, sd []float64) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range mean {
		low, high = math.Min(low, mean[i]-4*sd[i]), math.Max(high, mean[i]+4*sd[i])
	}
	apart := 0.0
	for i := range mean {
		for j := range mean {
			apart = math.Max(apart, math.Abs(mean[i]-mean[j])/math.Hypot(sd[i], sd[j]))
		}
	}
	if apart < 0.5 {
		return 0
	}
	bits := 0.0
	p := make([]float64, len(mean))
	for i := range mean { // a grid about each mean, so that narrow ones are met
		for k := range quadrature / 10 {
			z := -4 + 8*(float64(k)+0.5)/(quadrature/10)
			y, all := mean[i]+z*sd[i], 0.0
			for j := range mean {
				d := (y - mean[j]) / sd[j]
				p[j] = weight[j] * math.Exp(-d*d/2) / sd[j]
				all += p[j]
			}
			share := math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) * 8 / (quadrature / 10)
			if p[i] > 0 {
				bits += weight[i] * share * math.Log2(p[i]/all/weight[i])
			}
		}
	}
	return bits
}

// trials are the readings that can be taken: volts from every terminal to battery negative in the
// states that were read, and each wire from end to end without power.
func (m *model) trials(few []*candidate) (list []*trial) {
	states := map[int]bool{}
	for i, s := range m.sensors {
		if s.state >= 0 && math.Abs(s.y-few[0].pred[i]) < math.Inf(1) {
			states[s.state] = true
		}
	}
	for k, st := range m.states {
		if !states[k] || st.label == string(bench.FirstPower) || st.label == string(bench.Live) {
			continue
		}
		for _, n := range m.c.Nodes[1:] {
			if len(list) >= mostPoints || len(n.Terminals) == 0 {
				continue
			}
			t := n.Terminals[0]
			switch t.Part.Kind {
			case circuit.Battery, circuit.Bank, circuit.Generator, circuit.VehicleLoads:
				continue
			}
			list = append(list, &trial{probe: bench.Probe{Volts: []bench.Span{{Plus: n, Minus: m.c.Negative()}}, Situation: st.situation, Options: st.opt}, state: k,
				check: terminalName(t) + to + m.minus(), in: st.label, how: m.leads(t), unit: quantity.Voltage, scale: volts})
		}
	}
	for _, w := range m.c.Wires {
		for _, piece := range w.Cut() {
			list = append(list, &trial{probe: bench.Probe{Wire: piece}, state: -1, check: piece.Number, in: string(bench.Continuity),
				how:  fmt.Sprintf("Power off and %s undone at both ends: ohms of %s from end to end, leads subtracted.", piece.Number, piece.Number),
				unit: quantity.Resistance, scale: ohms})
		}
	}
	return list
}

// minus is the battery's negative post as it is written.
func (m *model) minus() string { return m.c.Positive().Terminals[0].Part.Ref + " −" }

// leads says where the leads of a voltmeter go.
func (m *model) leads(t *circuit.Terminal) string {
	at := "red on " + terminalName(t) + " of " + t.Part.Name
	if len(t.Part.Terminals) == 1 {
		at = "red on " + t.Part.Ref + " " + t.Part.Name
	}
	if t.Part.Plug != nil && len(t.Wires) > 0 {
		at = "red into the back of the plug of " + t.Part.Ref + " beside the " + colourOf(t.Wires[0]) + " wire"
	}
	return "Black on the battery's negative post, " + at + ". Do not pierce insulation."
}

func colourOf(w *circuit.Wire) string {
	if code := w.Spec.Colour.Code(); code != "" {
		return code
	}
	return w.Number
}

// outcomes gathers what a reading may be by means that lie together.
func (m *model) outcomes(t *trial, few []*candidate, weight []float64) (list []Outcome) {
	order := make([]int, len(few))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(t.mean[b], t.mean[a]) })
	var groups [][]int
	for _, i := range order {
		last := len(groups) - 1
		if last >= 0 {
			o := groups[last][0]
			if math.Abs(t.mean[i]-t.mean[o]) < 2*math.Max(t.sd[i], t.sd[o]) {
				groups[last] = append(groups[last], i)
				continue
			}
		}
		groups = append(groups, []int{i})
	}
	for _, g := range groups {
		at := g[0]
		for _, i := range g {
			if weight[i] > weight[at] {
				at = i
			}
		}
		all, those := 0.0, 0.0
		for j := range few {
			d := (t.mean[at] - t.mean[j]) / t.sd[j]
			p := weight[j] * math.Exp(-d*d/2) / t.sd[j]
			if all += p; slices.Contains(g, j) {
				those += p
			}
		}
		var names []string
		for _, i := range g {
			var refs []string
			for _, f := range few[i].faults {
				refs = append(refs, m.ref(f))
			}
			names = append(names, strings.Join(refs, " with "))
		}
		reads := "about " + meterText(t.mean[at], t.unit)
		if t.unit == quantity.Resistance && t.mean[at] >= openOhm {
			reads = readings.Open
		}
		list = append(list, Outcome{Reads: reads, Means: wording.Or(names), Share: those / all})
	}
	return list
}
