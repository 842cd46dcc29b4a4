package rules

import (
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/formula/battery"
	"fusewright/harness/formula/charging"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var chargedTooFast = &Rule{
	Name:  "charged-too-fast",
	Title: "a battery gets more charging current than its kind should",
	Says:  "charged with more current than it should get",
	Doc: "What all chargers of a battery give together, each at its rated current, or that of its panels where that is less: those that run with the engine beside the panels, and " +
		"those on shore power beside the panels. Of a battery with a protection of its own, lithium, also what the charging system gives it, by itself or over a link " +
		"that is closed with the engine running; a lead battery takes that for minutes only, and is not judged by it.",
	Formula: "sum of the chargers ≤ capacity · share; over a link the smaller of the output and what the resistances let through at half charge",
	Limits: "`charge share` of the chemistry, in the library: flooded 0.2, AGM 0.4, gel 0.2, LiFePO4 1 of the capacity per hour; the " +
		"battery maker's figure comes first",
	Why:      "lead heats, gasses and sheds its plates; the protection of lithium switches off under way, and without one its cells age",
	Change:   "fit smaller chargers, set them to less current, or fit a larger battery",
	Severity: "advice: makers differ",
	Source:   "AGM and flooded: charge timing note (one source); gel and LiFePO4: from memory",
	Bad: `
batteries:
  house: {chemistry: AGM, capacity: 20 Ah, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
chargers:
  roof: {type: MPPT controller 20 A, panel: 140 W, at: rear, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: roof, wire: {size: 4 mm²}}
situations:
  parked: {key: off, sun: 100 %}
  riding: {engine: cruise, on: []}
`,
	Mended: []string{"panel: 140 W", "panel: 120 W"},
	Run: func(p *Pass) {
		if p.battery != nil {
			p.judgeChargeRate(p.battery.Part, nil, &p.d.Battery)
		}
		for part, bank := range each[*design.Bank](p.facts) {
			p.judgeChargeRate(part, bank, &bank.Store)
		}
	},
}

// judgeChargeRate is of one battery; bank nil = the first.
func (p *Pass) judgeChargeRate(part *circuit.Part, bank *design.Bank, store *design.Battery) {
	b := battery.New(store, p.d.NominalV())
	if b == nil {
		return
	}
	var engine, shore summed
	for charger, x := range each[*design.Charger](p.facts) {
		switch {
		case x.Converts() || p.c.Charged(charger) != bank:
		case x.FromBattery():
			engine.add(x.Name, chargerA(x))
		case x.PanelW.Value == 0:
			shore.add(x.Name, chargerA(x))
		default:
			engine.add(x.Name, chargerA(x))
			shore.add(x.Name, chargerA(x))
		}
	}
	if store.BoardA() > 0 {
		engine.add("the charging system", p.chargedByEngineA(part, bank))
	}
	most := engine
	if shore.amps > engine.amps {
		most = shore
	}
	limit := b.MostChargeA(battery.RatedC)
	if !over(most.amps, limit) {
		return
	}
	slices.Sort(most.names) // whatever the order they are written in
	fin := ofPart(finding.Advice, part)
	fin.Leave = true
	atMost(&fin, "charging current", most.amps, limit, "A")
	gives, to := "gives", batteryName(part)
	if len(most.names) > 1 {
		gives = "together give"
	}
	p.say(fin, "%s %s %s up to %s; %s of %s should get %s", wording.And(most.names), gives, to, amps(most.amps),
		store.Chemistry.Name, quantity.Plain(b.CapacityAh(), quantity.Charge), quantity.Plain(limit, quantity.Current))
}

// summed is what several chargers give at once.
type summed struct {
	amps  float64
	names []string
}

func (t *summed) add(name string, amps float64) {
	if amps > leastChargeA {
		t.amps, t.names = t.amps+amps, append(t.names, name)
	}
}

// panelA is the current that the panels of a controller give at their rated power; +Inf of what has none.
func panelA(x *design.Charger) float64 {
	switch {
	case x.Type.From != "panel":
		return math.Inf(1)
	case x.Type.Tracks:
		return x.PanelW.Value * x.Type.Efficiency / x.HeldV()
	}
	return x.PanelW.Value / (solve.PanelWorksV * x.Type.Volts)
}

// chargerA is the most that a charger gives.
func chargerA(x *design.Charger) float64 { return math.Min(x.Type.RatingA, panelA(x)) }

// halfCharge is how full a battery is taken to be that is charged in earnest.
const halfCharge = 0.5

// chargedByEngineA is the most that the charging system gives a battery without a charger between: the first
// battery its greatest hot output, a further one what its links carry in the situations with the engine running.
func (p *Pass) chargedByEngineA(part *circuit.Part, bank *design.Bank) (most float64) {
	_, outputA := charging.MostA(&p.d.Charging)
	if bank == nil {
		return outputA
	}
	for _, s := range p.usable {
		if !p.engineCharges(s) {
			continue
		}
		rush := s.Again(solve.Options{Rush: true, Changes: p.heldClosed(s), BankCharge: map[*design.Bank]float64{bank: halfCharge}})
		if rush.Status != solve.Converged {
			continue
		}
		most = max(most, min(p.fromEngineA(rush, part.Terminal("+").Node), charging.OutputA(p.d, s.Situation.EngineRPM)))
	}
	return most
}
