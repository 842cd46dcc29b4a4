package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var loadOnSupervised = &Rule{
	Name:  "load-on-supervised",
	Title: "an accessory draws from a supervised circuit",
	Says:  "draws from a supervised circuit",
	Doc: "Accessories downstream of a tap whose current a data-bus module watches (`supervised: yes`), through " +
		"fuses, switches and relay contacts alike. Coils are coil-on-supervised, what returns through such a circuit " +
		"return-on-supervised. An accessory that another feed can supply as well is reported all the same. The " +
		"vehicle's own loads are not judged.",
	Formula: "none",
	Limits:  "none",
	Why: "the module takes the added current for a fault of its own lamp: it switches the output off, dims " +
		"it in steps or stores a fault code",
	Change:   "let the tap do no more than trigger a relay by an input that draws next to nothing, and feed the accessory by a fuse of its own",
	Severity: "fault",
	Source:   "common practice, no source",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 10 A, spare: 6 A, supervised: yes}
`,
	Mended: []string{"supervised: yes", "supervised: no"},
	Run: func(p *Pass) {
		for part, t := range each[*design.Tap](p.facts) {
			if !t.Supervised || len(part.Terminals) == 0 {
				continue
			}
			for _, b := range p.drawsBelow(part.Terminals[0].Node) {
				if b.Part != nil && b.Part.Kind == circuit.Load {
					fin := ofPart(finding.Fault, b.Part)
					fin.Cause = t.Name
					a := p.c.DrawA(b)
					decidedBy(&fin, "current", a, "A", figure.Larger)
					p.say(fin, "%s drawn by %s from %s, a supervised circuit", amps(a), b.Part.Name, t.Name)
				}
			}
		}
	},
}
