package rules

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/battery"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

// partCharge is the charge at which a sensing relay must have parted its batteries: a lead battery's surface
// charge is gone there; our choice.
const partCharge = 0.9

var sensingRelayStays = &Rule{
	Name:  "sensing-relay-stays",
	Title: "a voltage-sensing relay does not part its batteries once the engine has stopped",
	Says:  "stays closed with the engine stopped",
	Doc: "Each voltage-sensing relay in a link, in every situation with the engine stopped and neither sun nor shore power in which it would stand open, solved again as the engine left it: closed, " +
		"every battery at nine tenths of its charge. Where one of them rests above the voltage at which the relay opens, as lithium does, it holds the " +
		"relay by itself. The charge at which it lets go, and what then passes the link with the first battery full, are said.",
	Formula:  "charge at which it opens ≥ 90 %",
	Limits:   "voltages of the relay and resting volts of the batteries, in the library; 90 %, where the surface charge of a lead battery is gone, is our choice",
	Why:      "one battery goes on feeding the other and all that it feeds, and the starter then draws from both over the link and its fuses",
	Change:   "use a DC-DC charger, or a relay that opens above the volts at which the battery rests, or that follows the engine",
	Severity: "fault: the relay is there to part them",
	Source:   "relay thresholds: sellers' pages (two sources); LiFePO4 resting volts: voltage reference table (one source)",
	Bad:      strings.NewReplacer("12 mΩ", "20 mΩ", "20 A", "40 A", "4 mm²", "6 mm²").Replace(relayLink("LiFePO4", "20 A", "")),
	Mended:   []string{"house: {chemistry: LiFePO4, capacity: 14 Ah,", "house: {chemistry: AGM, capacity: 14 Ah,"},
	Run: func(p *Pass) {
		told := map[*circuit.Part]bool{}
		for part, link := range p.links() {
			for _, x := range p.c.Sensing(link) {
				if !told[x.Part] {
					told[x.Part] = p.judgeStays(part, link, x)
				}
			}
		}
	},
}

// relayLink is a link of a house battery over a sensing relay.
func relayLink(chemistry, houseEnd, charge string) string {
	return strings.NewReplacer("CHEMISTRY", chemistry, "HOUSE-END", houseEnd, "CHARGE", charge).Replace(`
batteries:
  house: {chemistry: CHEMISTRY, capacity: 14 Ah, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  house end: {type: blade C, rating: HOUSE-END, at: rear, fed by: charging relay, wire: {size: 4 mm²}}
relays:
  charging relay: {form: voltage-sensing relay, at: battery tray, fed by: start end, wire: {size: 4 mm², length: 100 mm}, coil: {returns to: frame, return wire: {size: 1 mm²}}}
situations:
  parked: {key: off}
  riding: {engine: cruise, on: []CHARGE}
`)
}

// judgeStays reports a relay's contact in the link of a battery that stays closed once the engine
// has stopped; it tells whether it did.
func (p *Pass) judgeStays(part *circuit.Part, link, contact *circuit.Branch) bool {
	s := p.staysAfterStop(contact)
	if s != nil {
		p.reportStays(s, part, link, contact)
	}
	return s != nil
}

// staysAfterStop is the parked machine, or else the first situation with the engine stopped, in which a sensing relay stays closed;
// nil = none. In the sun or on shore power a charger holds it, as it should.
func (p *Pass) staysAfterStop(contact *circuit.Branch) *solve.Solution {
	list := p.usable
	if parked := budget.Parked(p.c, p.in.Solutions); parked != nil {
		list = append([]*solve.Solution{parked}, list...)
	}
	for _, s := range list {
		if s.Situation.EngineRPM == 0 && s.Situation.Sun == 0 && !s.Situation.Shore && !s.Closed[contact.Index] && p.staysClosed(s, contact, partCharge, partCharge) {
			return s
		}
	}
	return nil
}

// afterEngine is a situation as the engine left it, sensing relays closed, with the first battery and
// the further ones at a charge.
func (p *Pass) afterEngine(s *solve.Solution, first, further float64) *solve.Solution {
	opt := solve.Options{Pulled: (*circuit.Branch).Senses, Discharged: 1 - first, BankCharge: map[*design.Bank]float64{}}
	for _, bank := range each[*design.Bank](p.facts) {
		opt.BankCharge[bank] = further
	}
	return s.Again(opt)
}

func (p *Pass) staysClosed(s *solve.Solution, contact *circuit.Branch, first, further float64) bool {
	after := p.afterEngine(s, first, further)
	return after.Status == solve.Converged && after.Closed[contact.Index]
}

// letsGo is the charge of the first battery, or of the further ones, at which a contact opens, within a hundredth.
func (p *Pass) letsGo(s *solve.Solution, contact *circuit.Branch, first bool) float64 {
	low, high := 0.0, partCharge
	for high-low > 0.01 {
		mid := (low + high) / 2
		charges := [2]float64{partCharge, mid}
		if first {
			charges = [2]float64{mid, partCharge}
		}
		if p.staysClosed(s, contact, charges[0], charges[1]) {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

func (p *Pass) reportStays(s *solve.Solution, part *circuit.Part, link, contact *circuit.Branch) {
	fin := ofPart(finding.Fault, contact.Part)
	fin.Situation = s.Situation.Name
	full, form := p.afterEngine(s, 1, partCharge), contact.Part.Source.(*design.Relay).Form
	passes := full.LinkA(p.c, link)
	what := fmt.Sprintf("%s gives the battery and what it feeds %s", part.Name, amps(-passes))
	if passes > 0 {
		what = fmt.Sprintf("the battery gives %s and its loads %s", part.Name, amps(passes))
	}
	bank := part.Source.(*design.Bank)
	first := battery.New(&bank.Store, p.d.NominalV()).OpenCircuitV(partCharge, battery.RatedC) < form.DropOutV
	holder := part.Name
	if first {
		holder = "the battery"
	}
	goes := p.letsGo(s, contact, first)
	atLeast(&fin, "charge at which it opens", math.Round(100*goes), 100*partCharge, "%")
	p.say(fin, "%s stays closed in %q once the engine has closed it: %s holds it at %s and it opens at %s, with about %s of the charge left; meanwhile %s",
		contact.Part.Name, s.Situation.Name, holder, volts(full.Volts(contact.Closer.Coil)), volts(form.DropOutV), quantity.Plain(math.Round(100*goes)/100, quantity.Share), what)
}
