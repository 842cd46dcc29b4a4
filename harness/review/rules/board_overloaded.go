package rules

import (
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var boardOverloaded = &Rule{
	Name:  "board-overloaded",
	Title: "the loads take more than a lithium battery's protection lets through",
	Says:  "too much for the battery's protection",
	Doc: "The greatest current out of each lithium battery in every situation, and of the first one that of a start of the engine, against what its " +
		"protection, the board in series with its cells, lets through for good. It may bear more for seconds; makers differ, and none is promised.",
	Formula:  "current of the battery ≤ current of its protection",
	Limits:   "`board` of the battery; without it, of a house pack of 30 Ah and more as many amperes as its Ah (from memory: boards of 50, 100 and 200 A on packs of as many Ah)",
	Why:      "it switches the battery off, and all that it feeds goes out at once; it may stay off until the loads are removed",
	Change:   "fit a battery whose protection bears it, run fewer loads at once, or start the engine from a lead battery",
	Severity: "fault; advice for the start where the starter is assumed",
	Source:   "thresholds of boards and packs: makers' data sheets (one source each); rating by capacity: from memory",
	Bad: `
batteries:
  house: {chemistry: LiFePO4, capacity: 14 Ah, board: 5 A, resistance: 12 mΩ, at: rear, fed by: house end, wire: {size: 4 mm², length: 100 mm}, returns to: frame, return wire: {size: 4 mm²}}
chargers:
  booster: {type: DC-DC charger 10 A, at: rear, fed by: start end, wire: {size: 4 mm²}, returns to: frame, return wire: {size: 4 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
  start end: {type: blade C, rating: 20 A, at: battery tray, fed by: battery, wire: {size: 4 mm², length: 100 mm}}
  house end: {type: blade C, rating: 20 A, at: rear, fed by: booster, wire: {size: 4 mm²}}
  lamp end: {type: blade C, rating: 15 A, at: rear, fed by: house, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  cabin lamp: {power: 100 W, behaves: resistor, at: rear, fed by: lamp end, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}, own switch: true, stays live: "lights the camp"}
situations:
  at camp: {key: off, on: [cabin lamp]}
  riding: {engine: cruise, on: []}
`,
	Mended: []string{"board: 5 A", "board: 14 A"},
	Run: func(p *Pass) {
		if p.battery != nil {
			p.judgeBoard(p.battery.Part, p.battery, &p.d.Battery)
			p.judgeStartOnBoard()
		}
		for part, bank := range each[*design.Bank](p.facts) {
			p.judgeBoard(part, part.Branches[0], &bank.Store)
		}
	},
}

func (p *Pass) judgeBoard(part *circuit.Part, b *circuit.Branch, store *design.Battery) {
	limit, most, in := store.BoardA(), 0.0, ""
	for _, s := range p.usable {
		if a := s.Given(b); a > most {
			most, in = a, s.Situation.Name
		}
	}
	if limit == 0 || !over(most, limit) {
		return
	}
	fin := ofPart(finding.Fault, part)
	fin.Situation = in
	atMost(&fin, "current out of the battery", most, limit, "A")
	p.say(fin, "%s gives %s in %q; its protection lets %s through and then switches it off", batteryName(part), amps(most), in, quantity.Plain(limit, quantity.Current))
}

// judgeStartOnBoard is of an engine that is started from a battery with a board.
func (p *Pass) judgeStartOnBoard() {
	if p.in.Cranking == nil || p.in.Cranking.Start.Own || !p.in.Cranking.Barred() { // the design's own starter is on in a situation
		return
	}
	start, limit := p.in.Cranking.Start, p.in.Cranking.BoardA
	fin := ofPart(graver(start.Assumed, finding.Fault, finding.Advice), p.battery.Part)
	fin.Leave = true
	atMost(&fin, "current of the starter", start.CurrentA, limit, "A")
	p.say(fin, "%s takes %s; the battery's protection lets %s through", starterName(start), amps(start.CurrentA), quantity.Plain(limit, quantity.Current))
}

// batteryName is how a sentence begins with a battery.
func batteryName(part *circuit.Part) string {
	if part.Kind == circuit.Bank {
		return part.Name
	}
	return "the battery"
}
