package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/review/finding"
)

var implausibleFigure = &Rule{
	Name:  "implausible-figure",
	Title: "a figure is hard to believe",
	Says:  "a figure that is hard to believe",
	Doc: "Figures that slip when they are written: the length of a run, longer than any vehicle of the practice has or no " +
		"longer than a wire is thick; the power of a load, eight times that of its library type or more, or an eighth or less; " +
		"an LED lamp of no type above 250 W, which the longest bars reach; a charging output that no vehicle of the practice gives; a battery's resistance twenty times the usual for its chemistry and capacity or more, or a twentieth or less; a regulated voltage below that of the full battery at rest. It is a question: the figure is " +
		"used as given, and what else follows from it is found by putting the value that may be meant in its place. " +
		"A type whose figure is the most that it draws says nothing of the usual.",
	Formula: "1/8 < power / usual power of the type < 8; 10 mm < run < longest of the practice; output ≤ most of the practice; 1/20 < battery resistance / usual < 20; regulated voltage > full battery at rest",
	Limits: "`longest run m` and `most charging A` of the practice in the library; factors of 8 and 20, 10 mm, 250 W: common " +
		"practice, no source",
	Why:      "one misplaced decimal point or unit upsets drops, fuses and the budget, and every figure that follows looks sound",
	Change:   "look at the part and write the right figure; when it is right, accept the finding with the reason",
	Severity: "advice",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {type: LED tail lamp, current: 2 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"current: 2 A", "power: 2 W"},
	Run: func(p *Pass) {
		for _, r := range p.d.Runs {
			p.judgeRunLength(r)
		}
		for part, l := range each[*design.Load](p.facts) {
			if f := p.askPower(l); f != nil {
				f.Part, f.Ref, f.Pos = part.Name, part.Ref, part.Pos
				p.report(*f)
			}
		}
		p.judgeOutput()
		p.judgeResistance(p.d.Battery, finding.Finding{Part: "battery", Ref: "battery"})
		for part, b := range each[*design.Bank](p.facts) {
			p.judgeResistance(b.Store, finding.Finding{Part: part.Name, Ref: part.Ref})
		}
		p.judgeRegulated()
	},
}

// What is hard to believe: a power so many times another, a run no longer than that,
// an LED lamp of more.
const (
	slipFactor  = 8.0
	shortestM   = 0.01
	ledMostW    = 250.0
	slipOfPoint = 10.0
	agedFactor  = 20.0 // old batteries, small packs and their boards have several times the usual
)

// slips are the factors by which a point, a unit of length or one of power slips.
var slips = [...]float64{10, 100, 1000}

func (p *Pass) judgeRunLength(r *design.Run) {
	m, most := r.LengthM.Value, p.practice.LongestRunM
	f := finding.Finding{Severity: finding.Advice, Part: r.Name, Ref: r.Name, Pos: r.LengthM.Pos, Leave: true}
	switch {
	case !r.LengthM.Given():
		return
	case over(m, most):
		meant := m / slips[len(slips)-1]
		for _, by := range slips {
			if m/by <= most {
				meant = m / by
				break
			}
		}
		f.Meant = &finding.Meant{Of: finding.Length, Value: meant, Text: p.length(meant)}
		atMost(&f, "length", m, most, "m")
		p.say(f, "run %q is %s long; under the practice %s hardly any is longer than %s: is %s meant?", r.Name, p.length(m),
			p.practice.Name, p.length(most), f.Meant.Text)
	case !over(m, shortestM):
		meant := m * slips[0]
		for _, by := range slips { // metres written as millimetres go before centimetres
			if m*by <= most {
				meant = m * by
			}
		}
		f.Meant = &finding.Meant{Of: finding.Length, Value: meant, Text: p.length(meant)}
		atLeast(&f, "length", m, shortestM, "m")
		p.say(f, "run %q is %s long, no more than a wire is thick: is %s meant?", r.Name, p.length(m), f.Meant.Text)
	}
}

// askPower is the question about a load's power; nil = it may well be so.
func (p *Pass) askPower(l *design.Load) *finding.Finding {
	watts := func(w float64) string { return quantity.Format(w, quantity.Power) }
	f := &finding.Finding{Severity: finding.Advice, Leave: true}
	usual := usualW(l)
	switch {
	case usual > 0 && !(l.PowerW < usual*slipFactor):
		atMost(f, "power", l.PowerW, usual*slipFactor, "W")
	case usual > 0 && !(l.PowerW > usual/slipFactor):
		atLeast(f, "power", l.PowerW, usual/slipFactor, "W")
	case l.Type == nil && l.Sign == design.SignLED && over(l.PowerW, ledMostW):
		atMost(f, "power", l.PowerW, ledMostW, "W")
		usual = l.PowerW / slipOfPoint
	default:
		return nil
	}
	meant := meantW(l, usual)
	f.Meant = &finding.Meant{Of: finding.Power, Value: meant, Text: watts(meant)}
	says := watts(l.PowerW)
	if a := l.SaidA(); a > 0 {
		says = fmt.Sprintf("%s at %s, %s", amps(a), volts(l.RatedV), says)
	}
	of := "few LED lamps draw more than " + watts(ledMostW)
	if l.Type != nil {
		of = l.Type.Name + " usually draws " + watts(usual)
	}
	f.What = fmt.Sprintf("%s draws %s; %s: is %s meant?", l.Name, says, of, f.Meant.Text)
	return f
}

// usualW is the usual power of a load's type; 0 = nothing says.
func usualW(l *design.Load) float64 {
	if l.Type == nil || l.Type.Highest {
		return 0
	}
	return max(l.Type.PowerW, l.Type.CurrentA*l.Type.RatedV)
}

// meantW is what a load's power may have been meant to be: the figure of its current in
// watts where that is usual, else what a slip makes of it.
func meantW(l *design.Load, usual float64) float64 {
	if a := l.SaidA(); a > usual/2 && a < usual*2 {
		return a // watts written as amperes
	}
	return slipTo(l.PowerW, usual)
}

// slipTo is what one slip of the point or the unit makes of a figure, that nearest the usual.
func slipTo(value, usual float64) float64 {
	best := value
	for _, by := range slips {
		for _, x := range []float64{value / by, value * by} {
			if math.Abs(math.Log(x/usual)) < math.Abs(math.Log(best/usual)) {
				best = x
			}
		}
	}
	return best
}

func (p *Pass) judgeOutput() {
	c := &p.d.Charging
	most := p.practice.MostChargingA * 12 / p.d.NominalV()
	for i := len(c.Output) - 1; i >= 0; i-- {
		a := c.Output[i].CurrentA
		if !over(a.Value, most) {
			continue
		}
		f := finding.Finding{Severity: finding.Advice, Part: "charging", Ref: "charging", Pos: a.Pos, Leave: true}
		f.Meant = &finding.Meant{Of: finding.Output, Value: a.Value / slipOfPoint, Text: amps(a.Value / slipOfPoint)}
		atMost(&f, "output", a.Value, most, "A")
		p.say(f, "charging gives %s at %s; under the practice %s hardly any gives more than %s: is %s meant?", amps(a.Value),
			quantity.Format(c.Output[i].RPM.Value, quantity.Speed), p.practice.Name, rated(most), f.Meant.Text)
		return
	}
}

// judgeResistance asks about a battery's resistance that is far from its chemistry's.
func (p *Pass) judgeResistance(bank design.Battery, f finding.Finding) {
	r := bank.ResistanceOhm
	bank.ResistanceOhm = design.Quantity{}
	usual := battery.New(&bank, p.d.NominalV())
	if !r.Given() || usual == nil || bank.Chemistry == nil {
		return
	}
	ohm := func(x float64) string { return quantity.Format(x, quantity.Resistance) }
	most := usual.Ohm(1, battery.RatedC) / float64(bank.Count())
	f.Severity, f.Pos, f.Leave = finding.Advice, r.Pos, true
	switch {
	case !(r.Value < most*agedFactor):
		atMost(&f, "resistance", r.Value, most*agedFactor, "Ω")
	case !(r.Value > most/agedFactor):
		atLeast(&f, "resistance", r.Value, most/agedFactor, "Ω")
	default:
		return
	}
	meant, name := slipTo(r.Value, most), f.Part
	if f.Part == "battery" {
		name = "the battery"
	}
	f.Meant = &finding.Meant{Of: finding.Resistance, Value: meant, Text: ohm(meant)}
	p.say(f, "%s's resistance is given as %s; one of its kind and size has about %s: is %s meant?", name, ohm(r.Value), ohm(most), f.Meant.Text)
}

// judgeRegulated asks about a regulated voltage that the full battery has at rest.
func (p *Pass) judgeRegulated() {
	v, bank := p.d.Charging.RegulatedV, battery.Of(p.d)
	if !v.Given() || bank == nil {
		return
	}
	full := bank.OpenCircuitV(1, battery.RatedC)
	if over(v.Value, full) {
		return
	}
	f := finding.Finding{Severity: finding.Advice, Part: "charging", Ref: "charging", Pos: v.Pos, Leave: true}
	atLeast(&f, "regulated voltage", v.Value, full, "V")
	text := fmt.Sprintf("charging is regulated to %s, and the full battery has %s at rest: it charges nothing", volts(v.Value), volts(full))
	for _, by := range []float64{2, 4, 0.5} { // that of another system
		if meant := v.Value * by; over(meant, full) && over(full*1.25, meant) {
			f.Meant = &finding.Meant{Of: finding.Regulated, Value: meant, Text: volts(meant)}
			text += ": is " + f.Meant.Text + " meant?"
			break
		}
	}
	p.say(f, "%s", text)
}
