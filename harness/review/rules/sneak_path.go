package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var sneakPath = &Rule{
	Name:  "sneak-path",
	Title: "with a return lost, current finds a way back through another part",
	Says:  "finds another way back if a return is lost",
	Doc: "Each return wire and frame stud that more than one part shares is opened in turn, in every " +
		"situation. Reported when a load that was off gets a tenth of its voltage or more, or a relay " +
		"that was at rest pulls in, because the current of another part goes back through it. Parts " +
		"that only stop working are in the fault table. One finding per part, those of one return printed together. A part that suffers from reversed or too much " +
		"voltage is ground-lost-overvoltage.",
	Formula: "the whole network solved again with the return open",
	Limits:  "a tenth of the load's rated voltage; pull-in voltage of the relay",
	Why: "a loose ground shows as lamps that glow with the switch off and gear that starts by itself, " +
		"and nobody looks at the ground",
	Change:   "give the part a return of its own, or take the parts to grounds that cannot fail together",
	Severity: "fault; advice where only LED lamps or electronics would have to pass it backwards, none where each of them is `polarised`",
	Source:   "common practice, no source",
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 2 mΩ}
  rear block: {kind: ground block, at: rear, limit: 30 A, returns to: battery negative, wire: {size: 1.5 mm²}}
switches:
  flood switch: {rating: 10 A, at: battery tray, fed by: lamp fuse, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {power: 5 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  left flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}
  right flood: {power: 10 W, behaves: resistor, at: rear, fed by: flood switch, wire: {size: 1 mm²}, returns to: frame}
situations:
  riding: {engine: cruise, on: [tail lamp]}
  working: {engine: idle, on: all}
`,
	Mended: []string{
		"fuse, wire: {size: 1 mm²}, returns to: rear block, return wire: {length: 100 mm}}", "fuse, wire: {size: 1 mm²}, returns to: frame}",
		"to: frame}", "to: rear block, return wire: {length: 100 mm}}",
	},
	Run: func(p *Pass) {
		if p.in.Faults == nil {
			return
		}
		for _, l := range p.in.Faults.Lost {
			for i := range l.Affected {
				if a := &l.Affected[i]; !harmed(a) && !dark(a) && !a.Branch.Senses() && (a.Effect == fault.Woken || a.Effect == fault.Pulled) {
					p.reportSneak(l, a)
				}
			}
		}
	},
}

// dark tells of an LED that gets its voltage the wrong way round: it stays dark.
func dark(a *fault.Affected) bool {
	l := a.Branch.Load
	return a.AfterV < 0 && l != nil && l.Load != nil && l.Load.Sign == design.SignLED
}

func (p *Pass) reportSneak(l *fault.Lost, a *fault.Affected) {
	through, severity := sneaksThrough(l, a)
	if severity == 0 {
		return
	}
	fin := p.ofLost(severity, l, a)
	decidedBy(&fin, "voltage of a part that is off", math.Abs(a.AfterV), "V", figure.Larger)
	fin.Situation = a.Situation.Name
	way := "current goes back through "
	if severity == finding.Advice {
		way = "if they pass current backwards, it goes through "
		fin.Change = "try it, the return off: a lamp of LEDs or electronics with a diode before it stays dark; say `polarised: yes` of what lets nothing back, or give the part a return of its own"
	}
	p.say(fin, "with %s lost, %s gets %s though it is off: %s", returnText(l.Branch), a.Branch.Part.Name, volts(math.Abs(a.AfterV)), way+wording.Few(through, 3))
}

// sneaksThrough are the parts that the current of a woken part goes through backwards, itself where none is known, and how sure that
// is: a fault where one passes it either way, advice where only LEDs or electronics would have to, nothing where all say that they are
// polarised.
func sneaksThrough(l *fault.Lost, a *fault.Affected) (through []string, severity finding.Severity) {
	const sure = finding.Fault
	if a.AfterV < 0 {
		return []string{"it"}, sure
	}
	for i := range l.Affected {
		x := &l.Affected[i]
		if x.AfterV >= 0 || x.Branch == a.Branch {
			continue
		}
		through = append(through, x.Branch.Part.Name)
		switch load := x.Branch.Load; {
		case load == nil || load.Load == nil || load.Reverses:
			severity = sure
		case load.Load.Polarised:
		case load.Behaves != design.ConstantPower && load.Load.Sign != design.SignLED:
			severity = sure
		case severity != sure:
			severity = finding.Advice
		}
	}
	if len(through) == 0 {
		return []string{"another part"}, sure
	}
	return through, severity
}

// ofLost starts a finding about a part that suffers when a return is lost; it
// points at the return.
func (p *Pass) ofLost(s finding.Severity, l *fault.Lost, a *fault.Affected) finding.Finding {
	f := ofPart(s, a.Branch.Part)
	f.Cause = returnText(l.Branch)
	if w := l.Branch.Wire; w != nil {
		f.Pos = w.Pos
	} else {
		f.Pos = l.Branch.Part.Pos
	}
	return f
}

func returnText(b *circuit.Branch) string {
	if b.Wire != nil {
		return "return " + b.Wire.Text()
	}
	if b.Part.InReturn {
		return string(b.Part.Kind) + " " + b.Part.Name
	}
	return "the frame path of " + b.Part.Name
}
