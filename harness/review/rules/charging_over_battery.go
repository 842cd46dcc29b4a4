package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/review/finding"
)

var chargingOverBattery = &Rule{
	Name:  "charging-over-battery",
	Title: "the charging voltage is too high for the battery",
	Says:  "charging voltage too high for the battery",
	Doc: "The regulated voltage, and what a charger holds at the battery that it charges, against the highest charging voltage of the chemistry of each battery that the charge reaches, where the " +
		"library has one. That of lead batteries varies with temperature and maker: the library's is above " +
		"what any of them allows.",
	Formula:  "regulated voltage ≤ charge voltage of a 12 V battery · system voltage / 12 V",
	Limits:   "`most charge V` of the chemistry, in the library",
	Why:      "lithium: its protection cuts off under way, or its cells age and swell; lead: it gasses, dries out and swells",
	Change:   "fit a regulator made for this battery, or a battery made for this regulator",
	Severity: "fault",
	Source:   "LiFePO4 14.2 to 14.6 V, 3.65 V a cell (from memory); gel 14.1 to 14.4 V, presets of shore chargers (two sources); other lead batteries: common practice, no source; the battery maker's figure comes first",
	Bad: `
battery: {chemistry: LiFePO4, capacity: 12 Ah, resistance: 6 mΩ, at: battery tray}
charging:
  regulated: 14.8 V
  output: {1300 rpm: 14 A, 3000 rpm: 24 A, 6000 rpm: 28 A}
  idle: 1300 rpm
  cruise: 4000 rpm
  hot derating: 0 %
`,
	Mended: []string{"regulated: 14.8 V", "regulated: 14.6 V"},
	Run: func(p *Pass) {
		p.judgeChargers()
		if c := p.d.Charging; !c.Present() || !c.RegulatedV.Given() {
			return
		}
		p.judgeCharging(&p.d.Battery, "charging", finding.Finding{Part: "charging", Ref: "charging", Pos: p.d.Charging.RegulatedV.Pos})
		for part, bank := range each[*design.Bank](p.facts) {
			if p.chargedByEngine(part.Terminal("+").Node) {
				p.judgeCharging(&bank.Store, "charging of "+part.Name, ofPart(finding.Fault, part))
			}
		}
	},
}

// judgeCharging is of one battery that the charge reaches.
func (p *Pass) judgeCharging(b *design.Battery, what string, fin finding.Finding) {
	if b.Chemistry == nil || b.Chemistry.MostChargeV == 0 {
		return
	}
	volts, limit := p.d.Charging.RegulatedV.Value, b.Chemistry.MostChargeV*p.d.NominalV()/12
	if !over(volts, limit) {
		return
	}
	fin.Severity = finding.Fault
	atMost(&fin, "regulated voltage", volts, limit, "V")
	p.say(fin, "%s is regulated to %s; the maximum for %s is %s%s", what, voltsOver(volts, limit),
		b.Chemistry.Name, quantity.Plain(limit, quantity.Voltage), p.boardOpens(b, volts))
}

// judgeChargers holds what each charger is set to against the further battery that it charges.
func (p *Pass) judgeChargers() {
	for part, x := range each[*design.Charger](p.facts) {
		bank := p.c.Charged(part)
		if bank == nil || bank.Store.Chemistry.MostChargeV == 0 {
			continue
		}
		limit := bank.Store.Chemistry.MostChargeV * p.d.NominalV() / 12
		if !over(x.HeldV(), limit) {
			continue
		}
		fin := ofPart(finding.Fault, part)
		atMost(&fin, "charging voltage", x.HeldV(), limit, "V")
		p.say(fin, "%s holds %s at %s; the maximum for %s is %s%s", x.Name, voltsOver(x.HeldV(), limit), bank.Name,
			bank.Store.Chemistry.Name, quantity.Plain(limit, quantity.Voltage), p.boardOpens(&bank.Store, x.HeldV()))
	}
}

// boardHighV is the voltage above which the protection of a battery opens on a charge; +Inf of one without.
func (f *facts) boardHighV(b *design.Battery) float64 {
	if b.BoardA() == 0 || b.Chemistry == nil || b.Chemistry.BoardHighV == 0 {
		return math.Inf(1)
	}
	return b.Chemistry.BoardHighV * f.d.NominalV() / 12
}

// boardOpens says that a charging voltage opens the protection of a battery; "" = it does not.
func (p *Pass) boardOpens(b *design.Battery, chargeV float64) string {
	if highV := p.boardHighV(b); over(chargeV, highV) {
		return ", and its protection opens at " + quantity.Plain(highV, quantity.Voltage)
	}
	return ""
}
