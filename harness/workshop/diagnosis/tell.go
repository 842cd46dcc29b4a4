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

// Explanations beyond these are summed up.
const (
	mostShown  = 6
	leastShare = 0.01
)

// tell fills in what the network says; notFed is what stands first whatever it says, if anything.
func (m *model) tell(d *Diagnosis, notFed string) []*candidate {
	sound, fits := m.explain(d.Failed > len(d.Certain))
	list, share := candidates(sound, fits)
	d.Sound = share
	if len(list) == 0 {
		m.measured(d, sound, nil)
		return nil
	}
	var may []*candidate // of unexplained readings what their circuits hold
	if list[0].alike = list[0].likes(list); notFed != "" || likelier(share, list[0]) {
		d.Unexplained, d.Advice = cmp.Or(notFed, unexplained), ""
		in := m.inCircuit(sound)
		for _, c := range list {
			if c.share >= leastShare && !slices.ContainsFunc(c.faults, func(f *fault) bool { return f.branch != nil && !in[f.branch.Index] }) {
				may = append(may, c)
			}
		}
	} else {
		may, d.Advice = list, m.frameReading(list[0])+advice(list[0])
	}
	var shown []*candidate
	for i, c := range may {
		if i >= mostShown || c.share < leastShare && i > 0 {
			break
		}
		shown = append(shown, c)
		c.alike = c.likes(list)
		text, sums := m.sized(sound, c.fit)
		e := &Explanation{Share: c.share, Text: text, Fits: c.chol != nil && !m.poor(c.fit)}
		for _, f := range c.faults {
			e.Elements = append(e.Elements, m.ref(f))
		}
		for _, o := range c.alike {
			var refs []string
			for _, f := range o.faults {
				refs = append(refs, m.ref(f))
			}
			e.Alike = append(e.Alike, strings.Join(refs, " with "))
		}
		if i == 0 && d.Unexplained == "" {
			e.Sums = sums
			e.RuledOut = m.ruledOut(c, list)
		}
		d.Explanations = append(d.Explanations, e)
	}
	d.Next = m.next(shown)
	measuredBy := sound
	if share < criedShare && list[0].point != nil {
		measuredBy = list[0].fit
	}
	m.measured(d, measuredBy, unresolved(d, list))
	return list
}

// likes are the candidates that the readings cannot tell from one.
func (c *candidate) likes(list []*candidate) (alikes []*candidate) {
	for _, o := range list {
		if c != o && (len(o.faults) <= len(c.faults) || o.share >= leastShare) && alike(c.fit, o.fit) {
			alikes = append(alikes, o)
		}
	}
	return alikes
}

// ref is the designation of what a fault is of.
func (m *model) ref(f *fault) string {
	switch {
	case f.kind == wrongReading:
		return "reading " + m.sensors[f.reading].name()
	case f.kind == swappedWires:
		return f.branch.Wire.Number + " and " + f.other.Wire.Number
	case f.wire != nil:
		return f.wire.Number
	case f.branch.Fuse != nil && f.branch.Fuse.Ref != "":
		return f.branch.Fuse.Ref
	}
	return f.branch.Part.Ref
}

// name is a sensor's number, or where it was read.
func (s *sensor) name() string {
	if s.Check != nil {
		return s.Check.Number
	}
	return s.Reading.Check
}

// words says what faults are, as a sentence.
func (m *model) words(faults []*fault) string {
	var list []string
	for _, f := range faults {
		list = append(list, m.phrase(f))
	}
	text := wording.And(list)
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

func (m *model) phrase(f *fault) string {
	size := "about " + sizeText(f.size) + " too much"
	switch f.kind {
	case wrongReading:
		return "reading " + m.sensors[f.reading].name() + " itself is wrong: taken at another point or written down wrongly"
	case jointOfWire, jointAtPlug:
		return fmt.Sprintf("a bad joint at one end of %s, %s", m.wireName(f.wire), size)
	case thinnerWire:
		return fmt.Sprintf("a thinner wire than designed as %s, %s", m.wireName(f.wire), size)
	case brokenWire:
		return fmt.Sprintf("%s missing, broken or not seated", m.wireName(f.wire))
	case swappedWires:
		return fmt.Sprintf("%s and %s swapped at %s", f.branch.Wire.Number, f.other.Wire.Number, m.shared(f))
	case loadPower:
		return fmt.Sprintf("%s draws %s of its power: another load than designed, or set otherwise", m.partName(f.branch.Part), quantity.Format(f.size, quantity.Share))
	case deadLoad:
		return m.partName(f.branch.Part) + " draws nothing: dead, unplugged inside or switched off"
	case blownFuse:
		return m.ref(f) + " " + f.branch.Part.Name + " blown, missing or not seated"
	case stuckContact:
		return m.partName(f.branch.Part) + " closed where it should be open: welded, bridged or wired past"
	case coilBad:
		if f.open {
			return "the coil of " + m.partName(f.branch.Part) + " open"
		}
		return fmt.Sprintf("the coil of %s has %s of its resistance: a coil for another voltage", m.partName(f.branch.Part), quantity.Format(f.size, quantity.Share))
	case groundPoint:
		if f.open {
			return "no way from " + m.partName(f.branch.Part) + " to battery negative"
		}
		if m.throughFrame(f.branch) {
			return fmt.Sprintf("%s loose, painted or corroded, or the battery's earth strap or the frame between them, %s", m.partName(f.branch.Part), size)
		}
		return fmt.Sprintf("%s loose, painted or corroded, %s", m.partName(f.branch.Part), size)
	case fuseHolder:
		return fmt.Sprintf("%s %s, its contacts or holder, %s", m.ref(f), f.branch.Part.Name, size)
	}
	if f.open {
		return m.partName(f.branch.Part) + " does not close"
	}
	return fmt.Sprintf("the contact of %s, %s", m.partName(f.branch.Part), size)
}

func (m *model) partName(p *circuit.Part) string { return p.Ref + " " + p.Name }

// wireName is a wire with what it is for: "W16, the return of E1 left lamp".
func (m *model) wireName(w *circuit.Wire) string {
	owner := w.Owner()
	role := map[circuit.Role]string{circuit.FeedWire: "the feed", circuit.ReturnWire: "the return", circuit.CoilFeedWire: "the coil's feed", circuit.CoilReturnWire: "the coil's return"}[w.Role]
	return fmt.Sprintf("%s, %s of %s", w.Number, role, m.partName(owner))
}

func (m *model) shared(f *fault) string {
	a, z := f.branch.Wire, f.other.Wire
	for _, t := range []*circuit.Terminal{a.From, a.To} {
		if t.Part == z.From.Part || t.Part == z.To.Part {
			return m.partName(t.Part)
		}
	}
	return "one end"
}

// strongest is the sensor that a fault moves most, by its own noise; -1 = none.
func (m *model) strongest(sound, f *fit, of func(*sensor) bool) int {
	at, most := -1, 0.0
	for i, s := range m.sensors {
		if x := math.Abs(f.pred[i]-sound.pred[i]) / noise(m.meter, s.gain, s.y); of(s) && x > most {
			at, most = i, x
		}
	}
	return at
}

// ruledOut are the elements on the way to the load that reads wrong which would not explain the
// readings, and which readings that pass bound.
func (m *model) ruledOut(top *candidate, list []*candidate) (refs []string) {
	if len(top.faults) != 1 || top.faults[0].kind == wrongReading || top.point == nil || top.chol == nil {
		return nil
	}
	live := slices.IndexFunc(list, func(c *candidate) bool { return c.share >= leastShare && len(c.faults) > 1 })
	if live >= 0 {
		return nil
	}
	may := map[*circuit.Branch]bool{}
	for _, c := range list {
		if c.share > 1e-3 {
			for _, f := range c.faults {
				may[f.branch] = true
			}
		}
	}
	for _, b := range m.c.Branches {
		if b.Load == nil || b.Load.Load == nil || b.Load.Standby {
			continue
		}
		way := m.c.Needed(b)
		if !way[top.faults[0].branch.Index] {
			continue
		}
		unbounded := map[string]bool{}
		for _, x := range m.c.Branches {
			if way[x.Index] && !may[x] && x.Conductor() {
				r := m.ref(&fault{kind: contactBad, branch: x, wire: x.Wire})
				if unbounded[r] = unbounded[r] || !m.bounds(top, x); !slices.Contains(refs, r) {
					refs = append(refs, r)
				}
			}
		}
		return slices.DeleteFunc(refs, func(r string) bool { return unbounded[r] })
	}
	return nil
}

// notes says what the shares rest on and what was not told.
func (m *model) notes(d *Diagnosis, placed []*readings.Placed) {
	if len(d.Explanations) > 0 {
		d.Notes = append(d.Notes, "Sizes come from the readings. How often each kind of fault occurs is from memory: of explanations that the readings hardly "+
			"tell apart the order may well be another.")
		if !d.Explanations[0].Fits && d.Unexplained == "" {
			d.Notes = append(d.Notes, fmt.Sprintf("None of %s and %s that were tried explains all readings as well as the meter should let it: look for more than two faults, "+
				"or for a reading at another point than the sheet says.", wording.Count(m.singles, "single fault", "single faults"), wording.Count(m.pairs, "pair", "pairs")))
		}
	}
	for i, p := range placed {
		if p.Was != "" {
			d.Notes = append(d.Notes, fmt.Sprintf("Check %s is numbered %s now.", p.Was, d.Readings[i].Check))
		}
	}
	left := 0
	for _, p := range placed {
		if p.Section != nil && (p.Section.Kind == bench.Charging || p.Section.Kind == bench.Live) {
			left++
		}
	}
	if left > 0 {
		d.Notes = append(d.Notes, wording.Count(left, "reading", "readings")+" with the engine running or of chargers are held against their bounds alone.")
	}
}
