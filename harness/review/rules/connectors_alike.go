package rules

import (
	"slices"

	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var connectorsAlike = &Rule{
	Name:  "connectors-alike",
	Title: "two connectors at one place can be mated with each other",
	Says:  "can be mated with the wrong one",
	Doc: "Two connectors of the loom at one place, of one family and with as many ways, whose halves with sockets lie on the same side. " +
		"Plugs of accessories are not looked at: they hang at their own accessory.",
	Formula:  "none",
	Limits:   "none",
	Why:      "the loom goes together crosswise after a repair, and feeds meet returns",
	Change:   "use families or housings that differ, or turn one round with `sockets towards` where nothing stays live on that side; else mark both halves",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: hinged + `  hinge plug: {family: sealed 1.5, at: hinge}
  second plug: {family: sealed 1.5, at: hinge, takes: side lamp}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame}
  side lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, returns to: frame}
`,
	Mended: []string{"second plug: {family: sealed 1.5", "second plug: {family: sealed 2.8"},
	Run: func(p *Pass) {
		for _, x := range p.c.Inlines() {
			var others []string
			for _, y := range p.c.Inlines() {
				if x != y && alike(x, y) {
					others = append(others, y.Part.Name)
				}
			}
			if len(others) > 0 {
				fin := ofPart(finding.Advice, x.Part)
				fin.Leave = true
				slices.Sort(others)
				p.say(fin, "%s at %s can be mated with %s: %s", x.Part.Name, x.Part.Place.Name, wording.And(others), x.Part.Plug)
			}
		}
	},
}

// alike tells whether halves of two connectors fit each other.
func alike(x, y *circuit.Inline) bool {
	if x.Part.Place != y.Part.Place || x.Part.Plug.Family != y.Part.Plug.Family || x.Part.Plug.Ways != y.Part.Plug.Ways {
		return false
	}
	return slices.ContainsFunc(x.Sides[x.Sockets], func(b *circuit.Bundle) bool { return slices.Contains(y.Sides[y.Sockets], b) })
}
