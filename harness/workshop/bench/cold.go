package bench

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/library"
)

// The bench is taken to be between these temperatures.
const (
	benchLowC, benchHighC = 10.0, 35.0
	CoilTolerance         = 0.10 // of a relay coil at 20 °C; common practice, no source
	ResistorTolerance     = 0.10 // of a dropping resistor, cold or hot; common practice, no source
	IsolationOhm          = 1e6  // least from a feed to the frame; common practice, no source
)

const (
	basisWire = "wires: the standard's maximum resistance at 20 °C with both ends as new; maximum: 35 °C by copper's " +
		"0.393 % a kelvin (IEC 60028), ends aged as their data say or twice the new figure (common practice, no source), " +
		"1 % and 0.1 mΩ; a two-wire meter: 1 % and 0.2 Ω with its leads subtracted (common practice, no source)"
	basisIsolation = "isolation: 1 MΩ (common practice, no source); dry PVC and polyethylene give far more"
	basisFuse      = "fuses: the design; body colours by the fuse standard of the library"
	basisCoil      = "coils: data at 20 °C ±10 % (common practice, no source), 10 to 35 °C by copper's 0.393 % a kelvin " +
		"(IEC 60028), 1 % and 0.2 Ω for the meter (common practice, no source)"
	basisResistor = "resistors: the design, ±10 % (common practice, no source), 1 % and 0.2 Ω for a two-wire meter with its leads " +
		"subtracted (common practice, no source)"
	basisReturn = "returns: resistances of the way back, as for wires; 1 % and 0.2 Ω for a two-wire meter with its leads " +
		"subtracted (common practice, no source)"
)

func nan() float64 { return math.NaN() }

// continuity lists every wire once, under the plug or part at which a person holds
// a probe while the other goes from end to end.
func (m *maker) continuity() *Section {
	s := &Section{Kind: Continuity, Title: "Before power: continuity, plug by plug",
		Setup: []string{"Battery off, all fuses out" + m.relaysOut() + ". Short the meter's leads and subtract what it shows. " +
			"One probe at the plug or part, the other at the far end of each of its wires in turn; move the wire at both ends while reading.",
			"A two-wire meter finds open wires and bad crimps of a few tenths of an ohm. For a finer figure: 1 A from the supply " +
				"and millivolts at the ends; the figures are in the test report as JSON."}}
	if len(m.c.Inlines()) > 0 {
		s.Setup = append(s.Setup, "The connectors of the loom apart: each half is read by itself, on its own contacts. Then mate them, and read "+
			"the polarity below through them.")
	}
	if slices.ContainsFunc(m.c.Wires, func(w *circuit.Wire) bool { return w.Spec.Parallel > 1 }) {
		s.Setup = append(s.Setup, "Of wires side by side take one end off and read each alone; in use a clamp must read the same on each.")
	}
	at := map[*circuit.Part]*Group{}
	wires := m.cut()
	held := held(wires)
	for i, w := range wires {
		p := held[i]
		if at[p] == nil {
			at[p] = &Group{Title: p.Ref + " " + p.Name + ", " + place(p)}
			s.Groups = append(s.Groups, at[p])
		}
		at[p].Checks = append(at[p].Checks, m.through(w, p))
	}
	return s
}

// cut are the wires, parted ones in pieces.
func (m *maker) cut() (list []*circuit.Wire) {
	for _, w := range m.c.Wires {
		list = append(list, w.Cut()...)
	}
	return list
}

// held is, by the place of a wire in the list, the part at which it is probed: that
// of its two which has more wires, the one nearer the source where both have as many.
func held(wires []*circuit.Wire) []*circuit.Part {
	count := map[*circuit.Part]int{}
	for _, w := range wires {
		count[w.From.Part]++
		if w.To.Part != w.From.Part {
			count[w.To.Part]++
		}
	}
	list := make([]*circuit.Part, len(wires))
	for i, w := range wires {
		list[i] = w.From.Part
		if count[w.To.Part] > count[w.From.Part] {
			list[i] = w.To.Part
		}
	}
	return list
}

// through is the resistance of a wire from end to end, said from the part held.
func (m *maker) through(w *circuit.Wire, held *circuit.Part) *Check {
	near, far := w.From, w.To
	if held == w.To.Part {
		near, far = far, near
	}
	hot := highOhm(w)
	_, high := widen(0, hot, FineOhmShare, FineOhmFixed)
	_, plain := widen(0, hot, OhmShare, OhmFixed)
	return &Check{Ref: w.Number, Name: w.Look(), Where: contact(near) + " to " + short(far),
		Quantity: quantity.Resistance, Nominal: w.ConductorOhm20 + w.EndsOhm, Low: nan(), High: high,
		PlainHigh: plain, Basis: basisWire, Probe: &Probe{Wire: w}}
}

// highOhm is the most that a wire may read: warm, its ends and the contacts on its way aged.
func highOhm(w *circuit.Wire) float64 {
	ohm := conductor.AtTemperature(w.ConductorOhm20, benchHighC) + agedOhm(w.FromEnd) + agedOhm(w.ToEnd)
	for _, p := range w.Poles {
		ohm += agedOhm(p.Contact)
	}
	return ohm
}

// agedOhm is a termination at the end of its life, or twice the new figure.
func agedOhm(t *library.Terminal) float64 {
	switch {
	case t == nil:
		return ContactHigh * circuit.EndOhm
	case t.AgedOhm > 0:
		return t.AgedOhm
	}
	return ContactHigh * t.ContactOhm
}

// isolation lists the stretches of feed between first fuses and relay contacts, each
// of which is one conductor against the frame while the other fuses are in.
func (m *maker) isolation() *Section {
	s := &Section{Kind: Isolation, Title: "Before power: isolation to frame and battery negative",
		Setup: []string{"Battery off, the first fuses still out and the others in" + m.relaysOut() + ", loads unplugged, switches on. One lead on bare " +
			"frame metal, and again on the battery's negative lead. One reading is for everything behind its terminal; where it is low, pull " +
			"the fuses on the way one by one until it rises."}}
	g := &Group{}
	seen := make([]bool, len(m.c.Nodes))
	m.first = m.firstFuses()
	for _, w := range m.c.Wires {
		if !w.Branch.Feeds() || seen[w.From.Node.Index] {
			continue
		}
		wires := m.island(w.From.Node, seen)
		where := "wire"
		if len(wires) > 1 {
			where = "wires"
		}
		for _, each := range wires {
			for _, piece := range each.Cut() {
				where += " " + piece.Number
			}
		}
		if w.From.Part.Kind == circuit.Tap {
			where += ", tap undone"
		}
		if r, ok := w.From.Part.Source.(*design.Relay); ok && r.Rests && len(r.Form.TabMm) == 0 {
			where += ", undone at " + w.From.Part.Ref // which rests on the return
		}
		g.Checks = append(g.Checks, &Check{Ref: w.From.Part.Ref, Name: within(w.From), Where: where + " to frame",
			Quantity: quantity.Resistance, Nominal: math.Inf(1), Low: IsolationOhm, High: nan(), Basis: basisIsolation})
	}
	s.Groups = []*Group{g}
	return s
}

// island marks the nodes that are one conductor with a node while first fuses and
// relays are out and switches on, and lists its wires in order of number.
func (m *maker) island(start *circuit.Node, seen []bool) []*circuit.Wire {
	in := map[*circuit.Wire]bool{}
	seen[start.Index] = true
	for queue := []*circuit.Node{start}; len(queue) > 0; queue = queue[1:] {
		for _, b := range queue[0].Branches {
			if !m.stretch(b) {
				continue
			}
			if b.Wire != nil {
				in[b.Wire] = true
			}
			for _, n := range []*circuit.Node{b.A, b.B} {
				if !seen[n.Index] {
					seen[n.Index] = true
					queue = append(queue, n)
				}
			}
		}
	}
	var wires []*circuit.Wire
	for _, w := range m.c.Wires {
		if in[w] {
			wires = append(wires, w)
		}
	}
	return wires
}

// stretch tells whether a feed goes on through a branch with first fuses and relays out.
func (m *maker) stretch(b *circuit.Branch) bool {
	switch b.Kind {
	case circuit.FuseBranch:
		return b.Feeds() && !b.Fuse.Factory && !slices.Contains(m.first, b)
	case circuit.DiodeBranch, circuit.LoadBranch:
		return false
	case circuit.ContactBranch:
		return b.Closer != nil && b.Closer.Switch != nil
	}
	return b.Feeds()
}

// fuses lists every protection with what must be in its place.
func (m *maker) fuses() *Section {
	s := &Section{Kind: Fuses, Title: "Before power: fuses in their places",
		Setup: []string{"Put the fuses in one by one and read the figure on each. Leave the first fuse behind each battery out."}}
	if ends := m.linkEnds(); len(ends) > 0 {
		s.Setup = append(s.Setup, "At the battery that a link or a charger feeds: "+wording.And(ends)+". Fitted, it makes the lead live from that battery, "+
			"with all else off: in last, out first.")
	}
	g := &Group{}
	for _, b := range m.c.Branches {
		if b.Fuse == nil {
			continue
		}
		ref, name := b.Fuse.Ref, b.Part.Name
		if ref == "" {
			ref = b.Part.Ref
		}
		where := place(b.Part)
		if b.Part.Kind == circuit.Block {
			name = b.Part.Name + " " + b.B.Terminals[0].Name
			where = "way " + b.B.Terminals[0].Name + " of " + b.Part.Ref + ", " + where
		}
		g.Checks = append(g.Checks, &Check{Ref: ref, Name: name, Where: where, Quantity: quantity.Current,
			Nominal: b.Fuse.Rating.RatingA, Low: nan(), High: nan(), Text: fuseText(b.Fuse), Basis: basisFuse, Holder: b})
	}
	s.Groups = []*Group{g}
	if len(g.Checks) == 0 {
		s.Trouble = "The design has no fuse. Do not put power to it."
	}
	return s
}

// linkEnds names the fuses at the batteries that links and chargers feed.
func (m *maker) linkEnds() (names []string) {
	linked := m.c.Linked()
	for _, b := range m.c.Branches {
		if linked != nil && b.Kind == circuit.FuseBranch && linked.Bare[b.Index] {
			names = append(names, b.Fuse.Ref+" "+b.Part.Name)
		}
	}
	return names
}

func place(p *circuit.Part) string {
	if p.Place == nil {
		return "place not given"
	}
	return p.Place.Name
}

// fuseText is what is printed on a fuse and its colour.
func fuseText(f *circuit.FuseSpec) string {
	text := quantity.Plain(f.Rating.RatingA, quantity.Current)
	if f.Factory {
		return text + ", factory fuse"
	}
	if f.Rating.Colour != "" {
		text += " " + f.Rating.Colour
	}
	if f.Type != nil {
		text += ", " + f.Type.Name
	}
	return text
}

// coils lists the relay coils with their resistance.
func (m *maker) coils() []*Section {
	g := &Group{}
	setup := []string{}
	say := func(text string) {
		if !slices.Contains(setup, text) {
			setup = append(setup, text)
		}
	}
	for _, p := range m.c.Parts {
		if p.Kind != circuit.Relay || p.Coil() == nil || p.Coil().Senses() {
			continue
		}
		how := ", relay out"
		if bolted(p) {
			how = ", leads off"
			say("One that is bolted: the leads of its coil off, at its own terminals.")
		} else {
			say("Relay out of its socket, at its own terminals.")
		}
		nominal := parallel(p, 1, 20)
		low, high := widen(parallel(p, 1-CoilTolerance, benchLowC), parallel(p, 1+CoilTolerance, benchHighC), OhmShare, OhmFixed)
		check := &Check{Ref: p.Ref, Name: p.Name, Where: "terminals 86 to 85" + how, Quantity: quantity.Resistance,
			Nominal: nominal, Low: low, High: high, Basis: basisCoil, Probe: &Probe{Coil: p}}
		switch kind := m.suppression(p); kind {
		case "diode", "zener":
			check.Where += fmt.Sprintf("; red on 85, then on 86: the %s may lower the first", kind)
		case "resistor":
			check.Where += "; resistor in parallel counted"
		}
		g.Checks = append(g.Checks, check)
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Coils, Title: "Before power: relay coils", Groups: []*Group{g}, Setup: setup}}
}

// resistors lists the resistors of the design with their resistance.
func (m *maker) resistors() []*Section {
	g := &Group{}
	for _, p := range m.c.Parts {
		x, ok := p.Source.(*design.DroppingResistor)
		if !ok {
			continue
		}
		low, high := widen(x.Ohm.Value*(1-ResistorTolerance), x.Ohm.Value*(1+ResistorTolerance), OhmShare, OhmFixed)
		g.Checks = append(g.Checks, &Check{Ref: p.Ref, Name: p.Name, Where: "in to out", Quantity: quantity.Resistance,
			Nominal: x.Ohm.Value, Low: low, High: high, Basis: basisResistor})
	}
	if len(g.Checks) == 0 {
		return nil
	}
	return []*Section{{Kind: Resistors, Title: "Before power: resistors", Groups: []*Group{g},
		Setup: []string{"Battery off, one lead of the resistor off: what bypasses it would be read with it. It gets hot in use: keep leads and sleeves off it."}}}
}

// relaysOut is what of the relays is undone for the readings without power, as words behind others.
func (m *maker) relaysOut() string {
	text := ""
	for _, kind := range []struct {
		bolted bool
		words  string
	}{{false, ", relays out of their sockets"}, {true, ", the coils of bolted relays undone"}} {
		if slices.ContainsFunc(m.c.Parts, func(p *circuit.Part) bool { return p.Kind == circuit.Relay && bolted(p) == kind.bolted }) {
			text += kind.words
		}
	}
	return text
}

// bolted tells of a relay that no socket holds.
func bolted(p *circuit.Part) bool {
	r, ok := p.Source.(*design.Relay)
	return ok && r.Form != nil && len(r.Form.TabMm) == 0
}

// parallel is a coil with the resistor across it, in ohms: the coil of the share
// of its data, warm.
func parallel(p *circuit.Part, share, celsius float64) float64 {
	siemens := 0.0
	for _, b := range p.Branches {
		switch {
		case b == p.Coil():
			siemens += 1 / conductor.AtTemperature(b.Ohm*share, celsius)
		case b.Kind == circuit.ResistorBranch:
			siemens += 1 / (b.Ohm * share)
		}
	}
	return 1 / siemens
}
