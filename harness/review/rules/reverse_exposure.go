package rules

import (
	"fmt"

	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var reverseExposure = &Rule{
	Name:  "reverse-exposure",
	Title: "a battery connected the wrong way round damages a part",
	Says:  "not proof against a reversed battery",
	Doc: "What a reversed battery reaches at the moment it is connected, with the key off and every switch " +
		"open: loads that the design calls polarised, and coils with a diode across them, which then " +
		"conducts, where no fuse stands before it. Electronics of which the design does not say that they " +
		"are polarised, diodes behind a fuse and what needs the key or a switch are in the fault table only.",
	Formula:  "none: it is a question of topology",
	Limits:   "`polarised` of the load; `suppressed by: diode` of the coil",
	Why:      "batteries do get connected the wrong way round; the diode is a short and the electronics are lost",
	Change:   "feed it behind the key or a switch, or put a diode in its feed",
	Severity: "advice; fault for a diode that no fuse protects",
	Source: "ISO 16750-2, reversed voltage 14 V or 28 V for 60 s (from memory); diodes across coils: relay " +
		"data sheets (one source)",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 2 A, at: battery tray, fed by: battery, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "marks the parked machine", own switch: true}
  tracker: {power: 0.12 W, behaves: constant power, polarised: yes, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, stays live: "finds the stolen machine"}
`,
	Mended: []string{", polarised: yes", ""},
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, e := range p.in.Faults.Exposed {
			if e.Reached == fault.AtOnce && (e.Says || e.Diode && e.DiodeVia == nil) {
				p.reportReversed(e)
			}
		}
	},
}

func (p *Pass) reportReversed(e *fault.Exposure) {
	fin := ofPart(finding.Advice, e.Branch.Part)
	fin.What = fmt.Sprintf("a battery connected the wrong way round puts %s on %s at once",
		volts(p.in.Faults.Reverse.Volts), e.Branch.Part.Name)
	if e.Diode {
		fin.Severity = finding.Fault
		fin.What = fmt.Sprintf("a battery connected the wrong way round is shorted by the diode across the coil of %s, "+
			"and no fuse opens", e.Branch.Part.Name)
	}
	fin.Numbers = []finding.Number{{Name: "voltage", Value: p.in.Faults.Reverse.Volts, Unit: "V"}}
	p.report(fin)
}
