package rules

import (
	"fusewright/harness/design/wording"
	"fusewright/harness/review/finding"
)

var connectorLivePins = &Rule{
	Name:  "connector-live-pins",
	Title: "live pins stand bare when a connector is apart",
	Says:  "a live pin when it is apart",
	Doc: "Each feed that a connector in the loom parts and that the battery still reaches when the halves are apart, with every contact " +
		"closed: it should end in a socket there, whose housing nothing touches. Left to itself the half on whose side the most such feeds " +
		"are has the sockets; where feeds stay live on both sides no turning helps. A feed that comes back through the connector it went " +
		"out by is dead when that is apart, and is not meant.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "a pin that stands out touches frame, tool or finger while the other half is off, and blows the fuse or worse",
	Change:   "turn the connector round (`sockets towards`), or lead what is live from the other side through a connector of its own",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: hinged + `  hinge plug: {family: sealed 1.5, at: hinge, sockets towards: rear}
`,
	Mended: []string{", sockets towards: rear", ""},
	Run: func(p *Pass) {
		for _, x := range p.c.Inlines() {
			for _, pole := range x.Poles {
				if !pole.Live || pole.NearSide() == x.Sockets {
					continue
				}
				fin := ofWire(finding.Advice, pole.Wire)
				fin.Leave, fin.Cause = true, x.Part.Name
				p.say(fin, "%s ends in a pin at %s on the side where it stays live, towards %s", pole.Wire.Text(), x.Part.Name,
					wording.And(x.Towards(1-x.Sockets)))
			}
		}
	},
}

// hinged begins the examples of connectors in the loom.
const hinged = `
places:
  battery tray: {ambient: 40 °C}
  hinge: {ambient: 35 °C}
  rear: {ambient: 35 °C}
runs:
  - {from: battery tray, to: hinge, length: 400 mm}
  - {from: hinge, to: rear, length: 200 mm}
partings:
`
