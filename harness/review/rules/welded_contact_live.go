package rules

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var weldedContactLive = &Rule{
	Name:  "welded-contact-live",
	Title: "a relay contact that may weld would leave a heater or motor running",
	Says:  "stays on if the contact welds",
	Doc: "Each relay's make contact is taken as welded, with the key off. Reported when a heater of 20 W or " +
		"more, or a motor, then runs with no switch by hand between it and the battery, and the contact is " +
		"one that may weld: what starts together when it closes draws more than it may make. Everything " +
		"else that a welded contact leaves live is in the fault table. `stays live` on the part excuses it.",
	Formula: "Σ running current × starting ratio of the loads that start with the contact ≤ the contact's making current",
	Limits:  "the relay form's making current, its make rating where none is published; 20 W (our choice)",
	Why: "a contact that closes on too much current welds one day; a seat heater or a pump that runs on " +
		"overnight can start a fire",
	Change:   "put a switch in the part's own feed, spread the loads over two relays, or fit a stronger one",
	Severity: "advice: it is a suspicion",
	Source: "relay data sheets: contacts may weld when they close on more than their making current (one " +
		"source); the 20 W is our choice",
	Bad: `
fuses:
  main fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  seat relay: {form: micro make, at: battery tray, fed by: main fuse, wire: {size: 1.5 mm², length: 100 mm}, coil: {fed by: lamp fuse, wire: {length: 100 mm}, returns to: frame, suppressed by: resistor}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  flood: {power: 30 W, behaves: filament lamp, inrush: {peak: 20, time: 3 ms}, at: rear, fed by: seat relay, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 1.5 mm²}}
  heated seat: {power: 24 W, behaves: resistor, at: rear, fed by: seat relay, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 1.5 mm²}}
`,
	Good: `
fuses:
  main fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: battery, wire: {size: 1.5 mm², length: 100 mm}}
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
relays:
  seat relay: {form: micro make, at: battery tray, fed by: main fuse, wire: {size: 1.5 mm², length: 100 mm}, coil: {fed by: lamp fuse, wire: {length: 100 mm}, returns to: frame, suppressed by: resistor}}
switches:
  seat switch: {rating: 10 A, at: rear, fed by: seat relay, wire: {size: 1.5 mm²}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  flood: {power: 30 W, behaves: filament lamp, inrush: {peak: 20, time: 3 ms}, at: rear, fed by: seat relay, wire: {size: 1.5 mm²}, returns to: frame, return wire: {size: 1.5 mm²}}
  heated seat: {power: 24 W, behaves: resistor, at: rear, fed by: seat switch, wire: {size: 1.5 mm², length: 100 mm}, returns to: frame, return wire: {size: 1.5 mm²}}
`,
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, w := range p.in.Faults.Welded {
			p.judgeWeld(w)
		}
	},
}

// warmW is from where a heater left on unseen is dangerous.
const warmW = 20.0

func (p *Pass) judgeWeld(w *fault.Welded) {
	var left []*circuit.Branch
	watts := 0.0
	for _, h := range w.Hot {
		if !h.ByHand && runsUnseen(h.Branch) {
			left = append(left, h.Branch)
			watts += h.Branch.Load.PowerW
		}
	}
	startA, makeA := p.startA(w), makingA(w.Contact.Part)
	if len(left) == 0 || staysLive(w.Contact.Part) || makeA <= 0 || startA <= makeA {
		return
	}
	fin := ofPart(finding.Advice, w.Contact.Part)
	fin.What = fmt.Sprintf("contact %s may weld; then %s run with the key off and no switch stops them",
		w.Contact.Name, wording.Few(names(left), 4))
	if len(left) == 1 {
		fin.What = fmt.Sprintf("contact %s may weld; then %s runs with the key off and no switch stops it",
			w.Contact.Name, left[0].Part.Name)
	}
	atMost(&fin, "current when it closes", startA, makeA, "A")
	fin.Numbers = append(fin.Numbers, finding.Number{Name: "left on", Value: watts, Unit: "W"})
	p.report(fin)
}

// runsUnseen tells whether a load left on is a hazard.
func runsUnseen(b *circuit.Branch) bool {
	l := b.Load.Load
	return !staysLive(b.Part) && l.PowerW >= unseenW[l.Behaves]
}

// startA is what a contact closes on: everything behind it that no switch by
// hand holds off, each with its starting current; that a contact welds is a suspicion, and
// none is built on a start that is assumed.
func (p *Pass) startA(w *fault.Welded) float64 {
	sum := 0.0
	for _, h := range w.Hot {
		if h.ByHand {
			continue
		}
		times := 1.0
		if l := h.Branch.Load.Load; !l.StartAssumed {
			times = max(1, l.Inrush.PeakRatio)
		}
		sum += p.c.DrawA(h.Branch) * times
	}
	return sum
}

// makingA is what a relay's contact may close on: its making current, or its
// make rating where none is published; 0 = not known.
func makingA(part *circuit.Part) float64 {
	r, ok := part.Source.(*design.Relay)
	switch {
	case !ok || r.Form == nil:
		return 0
	case r.Form.MakingA > 0:
		return r.Form.MakingA
	}
	return r.Form.MakeA
}
