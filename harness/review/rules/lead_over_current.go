package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var leadOverCurrent = &Rule{
	Name:  "lead-over-current",
	Title: "an accessory draws more than its own lead may carry",
	Says:  "more current than its own lead may carry",
	Doc: "The largest current of every accessory over all situations against what the lead that it comes with (`lead`) may carry, " +
		"taken as a wire of the same insulation as the one that feeds it, alone at the accessory's place. An accessory whose `lead` the design does not " +
		"give is not judged.",
	Formula: "current ≤ allowed current of the lead, the smaller of the heat balance at class less margin and the practice's table",
	Limits:  "heat balance, or the practice's current table where it has one",
	Why:     "the lead is the thinnest conductor of its circuit, and the only one that no change of the harness makes thicker",
	Change:  "shorten the lead to its plug and go on with a thicker wire, or use an accessory whose lead suits its power; check that size and power are as written",
	Severity: "fault; danger when the lead passes its insulation class as is likely; " +
		"advice when only the worst case exceeds the limit",
	Source: "heat balance of one wire in still air (Churchill-Chu 1975, IEC 60287 scheme), or the practice's table",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 15 A, spare: 6 A, supervised: no}
fuses:
  lamp fuse: {type: blade C, rating: 7.5 A, at: battery tray, fed by: keyed feed, wire: {size: 1.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 48 W, behaves: resistor, lead: {size: 0.14 mm²}, at: rear, fed by: lamp fuse, wire: {size: 1.5 mm²}, returns to: frame}
accepted:
  - {rule: fuse-over-accessory, part: lamp fuse, severity: danger, figure: 7.5 A of 4.01 A, reason: "shown for the lead's current only"}
`,
	Mended: []string{"power: 48 W", "power: 5 W"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if l, b := accessory(part), loadBranch(part); l != nil && b != nil && l.Lead.AreaMm2.Pos.Line > 0 {
				p.judgeLeadCurrent(part, b)
			}
		}
	},
}

func (p *Pass) judgeLeadCurrent(part *circuit.Part, b *circuit.Branch) {
	feed, area := feedOf(part), accessory(part).Lead.AreaMm2
	if feed == nil {
		return
	}
	lead := p.laid.Lead(feed, part.AmbientC(), area.Value)
	hot := lead
	if p.in.Corners != nil {
		hot = p.in.Corners.Hot.Lead(feed, part.AmbientC(), area.Value)
	}
	if !lead.Known {
		return
	}
	v := p.held("allowed current", p.cornerAmps(b), figure.Larger, math.Max(lead.AllowedA, traceA), math.Max(hot.AllowedA, traceA), always(finding.Fault))
	if v.severity == 0 {
		return
	}
	if v.severity != finding.Advice && v.Likely > lead.ToClassA {
		v.severity = finding.Danger
	}
	fin := ofPart(v.severity, part)
	a := allowance{lead.Laid}
	fin.What = fmt.Sprintf("%s draws %s, whose %s lead may carry %s at %s, taken as %s", part.Name, v.split(against(a.AllowedA, quantity.Current)),
		quantity.Format(area.Value, quantity.Area), a.textFor(v.decisive()), celsius(lead.AmbientC), feed.Spec.Type.Name)
	v.decides(&fin, "current", figure.Larger, 1, a.AllowedA, "A")
	p.report(fin)
}
