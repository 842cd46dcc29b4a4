package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var coilHeldTooLong = &Rule{
	Name:  "coil-held-too-long",
	Title: "a short-time coil is held for longer than its maximum",
	Says:  "its coil is held too long",
	Doc: "Relay forms whose coil is rated for a short time only, such as starter and winch contactors, in every situation " +
		"in which the coil is live: it is held as long as the longest of the loads that its contact feeds there, without limit " +
		"where one has no `on for`. A coil behind a momentary switch with nothing on behind its contact is let go in time. The coil of one that " +
		"latches takes a pulse: it is held without limit wherever no momentary switch stands before it.",
	Formula:  "longest time on of what the contact feeds ≤ the longest that the coil may be live",
	Limits:   "the relay form in the library (`coil on s`)",
	Why:      "the coil is wound for seconds of pull: held, it overheats, shorts and burns",
	Change:   "fit a form for continuous duty, or say with `on for` how long the load is on",
	Severity: "danger",
	Source:   "the form's own figure in the library",
	Bad: `
relays:
  lamp relay: {form: short-time contactor 150 A 12 V, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode, wire: {size: 1 mm², length: 100 mm}, return wire: {size: 1 mm², length: 100 mm}}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"short-time contactor 150 A 12 V", "mini make"},
	Run: func(p *Pass) {
		for part, r := range each[*design.Relay](p.facts) {
			if r.Form != nil && r.Form.CoilOnS > 0 && p.coilOf[part.Index] != nil {
				p.judgeHeld(part, r.Form)
			}
		}
	},
}

func (p *Pass) judgeHeld(part *circuit.Part, form *library.RelayForm) {
	held, in := 0.0, (*solve.Solution)(nil)
	for _, s := range p.usable {
		if t := p.heldS(s, part, form); t > held {
			held, in = t, s
		}
	}
	if in == nil || !over(held, form.CoilOnS) {
		return
	}
	fin := ofPart(finding.Danger, part)
	fin.Situation, fin.Source = in.Situation.Name, form.Source.String()
	most, text := quantity.Plain(form.CoilOnS, quantity.Duration), "on continuously"
	if !math.IsInf(held, 1) {
		text = "for " + quantity.Plain(held, quantity.Duration)
		atMost(&fin, "coil held", held, form.CoilOnS, "s")
	}
	p.say(fin, "the coil of %s is held %s; its maximum is %s", part.Name, text, most)
}

// heldS is how long a relay's coil is held in a situation, 0 where it is at rest.
func (p *Pass) heldS(s *solve.Solution, part *circuit.Part, form *library.RelayForm) float64 {
	coil := p.coilOf[part.Index]
	if latches(part) && p.stays(coil) {
		return math.Inf(1)
	}
	if !(math.Abs(s.Volts(coil)) > form.DropOutV) {
		return 0
	}
	longest, fed := 0.0, false
	for _, contact := range part.Branches {
		if contact.Closer == nil || contact.Closer.Coil != coil {
			continue
		}
		for _, b := range p.drawsOf(contact) {
			if b.Load != nil && s.LoadOn[b.Index] {
				longest, fed = math.Max(longest, b.Load.Load.LongestS()), true
			}
		}
	}
	if !fed && !p.letGo(coil) {
		return math.Inf(1)
	}
	return longest
}
