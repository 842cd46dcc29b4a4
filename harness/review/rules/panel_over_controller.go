package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var panelOverController = &Rule{
	Name:  "panel-over-controller",
	Title: "the panels are too large for their controller",
	Says:  "panels too large for it",
	Doc: "The rated power of the panels on each solar controller. One without tracking (PWM) passes the panels' current as it is; one that " +
		"tracks them (MPPT) takes no more than it can use, but of panels far above that it only wastes, and their current in a short may be above its limit.",
	Formula:  "PWM: panel power / (18.5 V / 12 V · nominal volts) ≤ rating; MPPT: panel power · efficiency / volts held ≤ 1.5 · rating",
	Limits:   "the controller's rating; 1.5 times it with tracking: our choice, makers allow some more panel than the rating uses (from memory)",
	Why:      "a PWM controller above its current overheats and fails; an MPPT controller gives no more than its rating, and its input may be overloaded",
	Change:   "fit a controller for the panels' current, or fewer panels; of an MPPT controller look up the maker's highest panel current and power",
	Severity: "fault without tracking; advice with it",
	Source:   "panel current at 18.5 V: a maker's data sheet of a 100 W panel (one source); oversizing: from memory",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 60 Ah, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
chargers:
  roof: {type: PWM controller 10 A, panel: 200 W, at: rear, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: roof, wire: {size: 4 mm²}}
`,
	Mended: []string{"panel: 200 W", "panel: 180 W"},
	Run: func(p *Pass) {
		for part, x := range each[*design.Charger](p.facts) {
			if x.Type.From != "panel" || x.TypeAuto {
				continue
			}
			amps, limit, severity := panelA(x), x.Type.RatingA, finding.Fault
			if x.Type.Tracks {
				limit, severity = mostOversized*x.Type.RatingA, finding.Advice
			}
			if !over(amps, limit) {
				continue
			}
			fin := ofPart(severity, part)
			fin.Figure = figure.New(amps, limit, "A", figure.Larger)
			p.reportPanel(fin, x, amps)
		}
	},
}

// mostOversized is how far above what a tracking controller can use panels go without advice; our choice.
const mostOversized = 1.5

func (p *Pass) reportPanel(fin finding.Finding, x *design.Charger, a float64) {
	does := "passes"
	if x.Type.Tracks {
		does = "could give"
	}
	p.say(fin, "with panels of %s %s %s %s, and it is made for %s", quantity.Plain(x.PanelW.Value, quantity.Power), x.Name, does, amps(a), amps(x.Type.RatingA))
}
