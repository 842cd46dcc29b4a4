package rules

import (
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var chargedInTheCold = &Rule{
	Name:  "charged-in-the-cold",
	Title: "a battery that takes no charge in the frost is charged on a ride",
	Says:  "takes no charge in the frost",
	Doc: "Legs of rides whose air is colder than a battery may be charged at, in which something would charge it: its posts stand above its resting " +
		"voltage. The ride reckons that it takes nothing, as a battery does whose protection stops it; one without protection takes it, and is harmed.",
	Formula:  "temperature of the leg ≥ lowest temperature for charging",
	Limits:   "`no charge below C` of the chemistry, in the library: LiFePO4 0 °C",
	Why:      "it arrives as empty as it left; without a protection lithium plates out in its cells, and they lose capacity for good",
	Change:   "keep the battery where it is warm, fit one that heats itself, or start such a day with a full one",
	Severity: "advice: the leg's air is not yet the cells'",
	Source:   "charge from 0 °C on: maker's manual of LiFePO4 packs (one source)",
	Bad: `
battery: {chemistry: LiFePO4, capacity: 12 Ah, resistance: 6 mΩ, at: battery tray}
rides:
  frost: {start charge: 80 %, legs: [{lasts: 1 h, engine: cruise, on: none, ambient: -5 °C}]}
situations:
  cruising: {engine: cruise, on: all}
`,
	Mended: []string{"ambient: -5 °C", "ambient: 0 °C"},
	Run: func(p *Pass) {
		for _, r := range p.ridden() {
			for i, cold := range r.Frosts {
				if i > 0 && r.Frosts[i-1].Battery == cold.Battery {
					continue
				}
				f := finding.Finding{Severity: finding.Advice, Leave: true, Part: r.Ride.Name, Ref: r.Ride.Name, Pos: r.Ride.Pos}
				atLeast(&f, "air of the leg", cold.AirC, cold.LeastC, "°C")
				p.say(f, "ride %s: in leg %d %s takes no charge: at %s it is below %s", r.Ride.Name, cold.Leg+1, cold.Battery,
					quantity.Plain(cold.AirC, quantity.Temperature), quantity.Plain(cold.LeastC, quantity.Temperature))
			}
		}
	},
}
