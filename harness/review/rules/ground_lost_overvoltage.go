package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var groundLostOvervoltage = &Rule{
	Name:  "ground-lost-overvoltage",
	Title: "a lost return puts reversed or excess voltage on a part",
	Says:  "wrong voltage if a return is lost",
	Doc: "Each return wire and frame stud that more than one part shares is opened in turn, in every " +
		"situation. Reported when a part gets more than its maximum voltage, or when one that the design " +
		"calls polarised, or that is electronics, gets more than 1 V the wrong way round. One finding per part, those of one " +
		"return printed together.",
	Formula:  "the whole network solved again with the return open",
	Limits:   "`maximum voltage` of the load, else what charging or a charger holds; of a charger 4/3 of its volts (from memory); 1 V reversed (our choice)",
	Why:      "a ground that works loose destroys equipment that is otherwise sound",
	Change:   "give the part a return of its own, or a diode in its feed",
	Severity: "fault, danger for a critical load; a step less for reversed voltage on what is electronics but not called polarised",
	Source:   "common practice, no source",
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
  rear block: {kind: ground block, at: rear, limit: 30 A, returns to: battery negative, wire: {size: 1.5 mm²}}
switches:
  flood switch: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  dash camera: {power: 5 W, behaves: constant power, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  right flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: frame}
situations:
  riding: {engine: cruise, on: [tail lamp]}
  working: {engine: idle, on: all}
accepted:
  - {rule: sneak-path, part: right flood, figure: 4.07 V, reason: "shown for the camera only"}
`,
	Good: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
  rear block: {kind: ground block, at: rear, limit: 30 A, returns to: battery negative, wire: {size: 1.5 mm²}}
switches:
  flood switch: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  dash camera: {power: 5 W, behaves: constant power, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: frame}
  right flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: frame}
situations:
  riding: {engine: cruise, on: [tail lamp]}
  working: {engine: idle, on: all}
`,
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, l := range p.in.Faults.Lost {
			for i := range l.Affected {
				if a := &l.Affected[i]; harmed(a) {
					p.reportSuffering(l, a)
				}
			}
		}
	},
}

// backwardV is how much voltage the wrong way round counts.
const backwardV = 1.0

// backwardLEDV is what an LED bears the wrong way round (data sheets of LEDs, from memory).
const backwardLEDV = 5.0

// harmed tells whether a part suffers from what it gets.
func harmed(a *fault.Affected) bool {
	if a.Effect == fault.Excessive {
		return true
	}
	least := backwardV
	if l := a.Branch.Load; l != nil && l.Load != nil && l.Load.Sign == design.SignLED {
		least = backwardLEDV
	}
	return a.AfterV < -least && touchy(a.Branch)
}

// touchy tells whether a load suffers from reversed voltage: the design says
// so, or it is electronics, of which nobody said that it does not.
func touchy(b *circuit.Branch) bool {
	return b.Load != nil && b.Load.Load != nil &&
		(b.Load.Load.Polarised || b.Load.Behaves == design.ConstantPower)
}

func (p *Pass) reportSuffering(l *fault.Lost, a *fault.Affected) {
	critical := a.Branch.Load != nil && a.Branch.Load.Load != nil && a.Branch.Load.Load.Critical
	severity := graver(critical, finding.Fault, finding.Danger)
	if a.AfterV < 0 && !a.Branch.Load.Load.Polarised { // that it suffers is only suspected
		severity = graver(critical, finding.Advice, finding.Fault)
	}
	fin := p.ofLost(severity, l, a)
	way := "reversed"
	if a.AfterV > 0 {
		way = p.overWhat(a)
	}
	fin.Numbers = []finding.Number{{Name: "voltage", Value: a.AfterV, Unit: "V"},
		{Name: "before", Value: a.BeforeV, Unit: "V"}}
	fin.Figure = figure.New(math.Abs(a.AfterV), math.NaN(), "V", figure.Larger)
	fin.Situation = a.Situation.Name
	p.say(fin, "with %s lost, %s gets %s, %s", returnText(l.Branch), a.Branch.Part.Name,
		volts(math.Abs(a.AfterV)), way)
}

// overWhat says which limit a voltage is over.
func (p *Pass) overWhat(a *fault.Affected) string {
	if load := a.Branch.Load; load != nil && load.Load != nil && load.Load.MaxV.Given() {
		return "above its maximum of " + volts(load.Load.MaxV.Value)
	}
	return "above the " + volts(p.d.HighestV()) + " of normal use"
}
