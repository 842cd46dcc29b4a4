package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseOverAccessory = &Rule{
	Name:  "fuse-over-accessory",
	Title: "a fuse is larger than an accessory or its lead allows",
	Says:  "fuse larger than the accessory allows",
	Doc: "The nearest fuse upstream of each accessory against the largest that its maker allows (`maximum fuse`) and against " +
		"what the lead that it comes with may carry (`lead`), taken as a wire of the same insulation as the one that feeds " +
		"it, alone at the accessory's place. Where the design says neither, the library's usual ones hold for small electronics and lamps; " +
		"other accessories are not judged. A usual largest fuse is no maker's: to pass it is advice.",
	Formula:  "rating ≤ maximum fuse; rating ≤ share × allowed current of the lead",
	Limits:   "the maker's largest fuse; the practice's fuse share of wire and, for a fault, most fuse share of wire",
	Why:      "a fuse that suits the harness may be far too large for the thin lead and the electronics behind it",
	Change:   "give the accessory a fuse of its own, no larger than its maker and its lead allow",
	Severity: "fault; advice above a largest fuse that is only usual, and up to the most share of the lead's current; danger when a short in the lead may damage it before the fuse opens, in less than a minute",
	Source: "33 CFR 183.455(c)(1): up to 150 % of the conductor's current (one source); the maker's largest fuse: " +
		"common practice, no source",
	Mend: MendFuse,
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 15 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, maximum fuse: 5 A, at: rear, fed by: lamp fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 25 A, spare: 10 A, supervised: no}
`,
	Mended: []string{"blade C, rating: 15 A", "blade C, rating: 5 A"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if l, b := accessory(part), loadBranch(part); l != nil && b != nil {
				if g := p.guards[b.A.Index]; g.known() {
					p.judgeMostFuse(part, g, p.judgeLead(part, g))
				}
			}
		}
	},
}

// judgeMostFuse holds a fuse against the largest of an accessory; one that is only
// usual has nothing to add where the lead is too thin already.
func (p *Pass) judgeMostFuse(part *circuit.Part, g guard, thinLead bool) {
	most := accessory(part).MostFuseA
	said := most.Pos.Line > 0
	if !most.Given() || !over(g.A, most.Value) || thinLead && !said {
		return
	}
	fin := p.ofAccessory(graver(said, finding.Advice, finding.Fault), part, g.fuse)
	atMost(&fin, "fuse rating", g.A, most.Value, "A")
	what := "whose maker allows a maximum of " + rated(most.Value)
	if !said {
		what = "where " + rated(most.Value) + " is the usual maximum"
		fin.Source = usualSource
		fin.Change = "give the accessory a fuse of its own, or write the `maximum fuse` that its maker allows"
	}
	p.say(fin, "%s %s %s, %s", g.text(), g.verb("feeds", "feed"), part.Name, what)
}

// usualSource is the source of the leads and largest fuses of the library's loads.
const usualSource = "common practice, no source"

// ofAccessory is a finding of the fuse, or where that is the machine's of the
// accessory.
func (p *Pass) ofAccessory(s finding.Severity, part *circuit.Part, fuse *circuit.Branch) finding.Finding {
	if fuse.Fuse.Factory {
		return ofPart(s, part)
	}
	fin := ofFuse(s, fuse)
	fin.Cause = part.Name
	return fin
}

// judgeLead holds it against the lead, and tells whether that is too thin.
func (p *Pass) judgeLead(part *circuit.Part, g guard) bool {
	feed, area := feedOf(part), accessory(part).Lead.AreaMm2
	if feed == nil || !area.Given() {
		return false
	}
	lead := p.laid.Lead(feed, part.AmbientC(), area.Value)
	limit := p.practice.FuseWireShare * lead.AllowedA
	if !lead.Known || !over(g.A, limit) {
		return false
	}
	fin := p.ofAccessory(finding.Fault, part, g.fuse)
	if !over(g.A, p.practice.MostFuseWireShare*lead.AllowedA) {
		fin.Severity, fin.Leave = finding.Advice, true
	}
	atMost(&fin, "fuse rating", g.A, limit, "A")
	fin.What = fmt.Sprintf("%s %s %s, whose %s lead may carry %s at %s, taken as %s",
		g.text(), g.verb("feeds", "feed"), part.Name, quantity.Format(area.Value, quantity.Area),
		allowance{lead.Laid}.textFor(g.A), celsius(lead.AmbientC), feed.Spec.Type.Name)
	if area.Pos.Line == 0 {
		fin.Source = usualSource + " for the lead; " + p.rule.Source
		fin.Change = "give the accessory a fuse of its own, no larger than its lead allows, or write the `lead` that it has"
	}
	if s := p.leadHurtS(feed, g.fuse, lead.StandsS); s < longOverloadS && fin.Severity == finding.Fault {
		fin.Severity = finding.Danger
		fin.What += fmt.Sprintf("; a short may damage it after %s, before the fuse opens", duration(s))
	}
	p.report(fin)
	return true
}

// leadHurtS is the shortest for which a lead stands a current at which the fuse may
// open too late, up to that of a short at its near end; +Inf = it is protected, or
// no short is known.
func (p *Pass) leadHurtS(feed *circuit.Wire, fuse *circuit.Branch, standsS func(amps float64) float64) float64 {
	if p.in.Faults == nil {
		return math.Inf(1)
	}
	device, _ := p.in.Faults.Device(fuse)
	most := 0.0
	for _, sh := range p.in.Faults.OfWire(feed) {
		if sh.Fed {
			most = math.Max(most, sh.Results[0].CurrentA)
		}
	}
	return fusing.ProtectsWire(device, standsS, most).HurtS
}

// feedOf is the wire that feeds an accessory; nil without one of a known type.
func feedOf(part *circuit.Part) *circuit.Wire {
	if plus := part.Terminal("+"); plus != nil {
		for _, w := range plus.Wires {
			if w.To == plus && w.Spec.Type != nil {
				return w
			}
		}
	}
	return nil
}
