package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

var coilWeakWhenHot = &Rule{
	Name:  "coil-weak-when-hot",
	Title: "a hot coil does not pull in on a weak battery",
	Says:  "may not pull in hot on a weak battery",
	Doc: "Every coil that is live in a situation with the engine stopped: its share of the battery's voltage at the lowest " +
		"supply, against the pull-in voltage of a coil as warm as the relay's place. The coil's own heat is left out: it makes it " +
		"worse. What lacks voltage on a battery that still starts the engine is relay-coil-voltage's, a place beyond the form's highest ambient relay-too-hot's.",
	Formula:  "V coil / V battery × lowest supply ≥ V pull-in at 20 °C × (1 + 0.00393·(T − 20))",
	Limits:   "pull-in voltage of the relay form; lowest supply of the library, 10.5 V of 12 V",
	Why:      "after a hot stop the relay does not pull in, and what it feeds stays dead",
	Change:   "move the relay to a cooler place, or fit a relay that pulls in at a lower voltage",
	Severity: "fault when it feeds a critical load; else advice",
	Source: "lowest supply: ISO 16750-2:2010, code D (two sources); pull-in 8 V of 12 V and coil resistance against temperature: " +
		"makers' data sheets, mini and micro relays (two sources)",
	Bad: `
places:
  battery tray: {ambient: 40 °C}
  rear: {ambient: 35 °C}
  engine: {ambient: 115 °C}
runs:
  - {from: battery tray, to: rear, length: 600 mm}
  - {from: battery tray, to: engine, length: 600 mm, cover: heat sleeve}
wire: {insulation: ISO 6722 thin wall class D, size: 1 mm²}
relays:
  lamp relay: {form: mini make, at: engine, fed by: lamp fuse, coil: {fed by: lamp fuse, returns to: frame, suppressed by: diode}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp relay, returns to: frame}
`,
	Mended: []string{"form: mini make, at: engine", "form: mini make, at: battery tray"},
	Run: func(p *Pass) {
		lowest := corner.TolerancesOf(p.d).LowestV
		for part, r := range each[*design.Relay](p.facts) {
			if coil := p.coilOf[part.Index]; coil != nil && r.Form != nil && !r.Form.Senses && r.Form.CoilV == p.d.CoilV(r) && r.CoilBy == nil && !(part.AmbientC() > r.Form.MaxC) {
				p.judgeWeak(part, r.Form, coil, lowest)
			}
		}
	},
}

func (p *Pass) judgeWeak(part *circuit.Part, form *library.RelayForm, coil *circuit.Branch, lowestV float64) {
	if p.pullIn(part, form).severity != 0 {
		return // what lacks voltage already is relay-coil-voltage's
	}
	need := p.pullInV(part, form, corner.AtNominal)
	var at *solve.Solution
	least := math.Inf(1)
	for _, s := range p.usable {
		v := math.Abs(s.Volts(coil))
		bus := s.PostsV(coil)
		if s.Situation.EngineRPM > 0 || v < need || bus <= 0 {
			continue // not supplied
		}
		if weak := v / bus * lowestV; weak < least {
			least, at = weak, s
		}
	}
	if at == nil || least >= need {
		return
	}
	fin := ofPart(graver(p.feedsCritical(part), finding.Advice, finding.Fault), part)
	value, most := quantity.Against(least, need, quantity.Voltage)
	atLeast(&fin, "coil voltage", least, need, "V")
	fin.Situation = at.Situation.Name
	p.say(fin, "on a battery down to %s the coil of %s gets %s and needs %s to pull in at %s",
		volts(lowestV), part.Name, value, most, celsius(part.AmbientC()))
}

// feedsCritical tells whether a critical load hangs on a relay's contacts.
func (p *Pass) feedsCritical(relay *circuit.Part) bool {
	for _, contact := range relay.Branches {
		if contact.Closer == nil {
			continue
		}
		for _, b := range p.drawsOf(contact) {
			if b.Load != nil && b.Load.Load.Critical {
				return true
			}
		}
	}
	return false
}
