package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var dataMissing = &Rule{
	Name:  "data-missing",
	Title: "a number the review needs is not given",
	Says:  "data missing",
	Doc: "What other rules had to leave out or assume: the battery's internal resistance, the negative cable of a further battery, the charging output when hot, the ambient of " +
		"a place that wires or parts are in or pass, the place of a part, the fuse before a tap, whether it is supervised and what it can spare " +
		"when something draws from it, whether a coil is suppressed, the limit of a switch, a block or a " +
		"shared ground, " +
		"what the vehicle itself draws with a condition that a tap is live with, such as its main beam, whether petrol vapour can gather in the engine, tank or bilge space of a boat, unless it is said to have a diesel, an outboard or an electric motor, " +
		"how a motor starts, a load that draws more at rest than in use, a situation in which a motor runs in reverse, opening times, inrush, temperature derating, contact figures or currents of wires that the library does not hold. One finding per gap.",
	Formula:  "none",
	Limits:   "none",
	Why:      "a check made on an assumed number proves nothing, and one left out even less",
	Change:   "measure or look it up and write it into the design",
	Severity: "advice; fault of the fuse before a tap that is always hot: there may be none",
	Source:   "common practice, no source",
	Bad: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, at: battery tray}
`,
	Good: `
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 12 mΩ, at: battery tray}
`,
	Run: func(p *Pass) {
		if b := p.d.Battery; !b.ResistanceOhm.Given() {
			p.reportMissing("battery", b.Pos, "the battery's internal resistance is not given; "+
				p.assumedResistance()+" is assumed")
		}
		if c := &p.d.Charging; c.Present() && !c.HotDerating.Given() && c.Kind == nil {
			p.reportMissing("charging", c.Output[0].RPM.Pos,
				"the charging output when hot is not given; makers' curves are taken cold")
		}
		p.missingAmbients()
		p.missingVapour()
		p.missingOfConditions()
		for _, part := range p.c.Parts {
			p.missingOf(part)
		}
		p.missingAllowed()
		p.missingTimes()
		p.missingReratings()
		if f := p.in.Faults; f != nil && f.Unfollowed {
			p.reportMissing("rings", p.d.Battery.Pos, "so many fuses stand in rings or side by side that shorts there are judged with all of them in, and none is taken out")
		}
	},
}

func (p *Pass) reportMissing(part string, pos problem.Pos, what string) {
	p.report(finding.Finding{Severity: finding.Advice, Part: part, Ref: part, Pos: pos, What: what})
}

func (p *Pass) assumedResistance() string {
	if p.battery == nil {
		return "a usual value"
	}
	return assumedOhm(p.battery, &p.d.Battery)
}

// assumedOhm is a battery's resistance, of those in series that of each.
func assumedOhm(b *circuit.Branch, store *design.Battery) string {
	text := fmt.Sprintf("%.3g mΩ", b.Ohm*1000/float64(store.Count()))
	if store.InSeries > 0 {
		text += " each"
	}
	return text
}

// missingAmbients reports places without an ambient in which a part stands, or
// that a wire ends at or passes.
func (p *Pass) missingAmbients() {
	used := map[*design.Place]bool{}
	for _, part := range p.c.Parts {
		if part.Place != nil {
			used[part.Place] = true
		}
	}
	for _, b := range p.c.Bundles {
		if len(b.Wires) > 0 {
			used[b.Run.From], used[b.Run.To] = true, true
		}
	}
	for _, place := range p.d.Places {
		if used[place] && !place.AmbientC.Given() {
			p.reportMissing(place.Name, place.Pos, fmt.Sprintf("the ambient of %s is not given; %s is assumed",
				place.Name, celsius(circuit.PlaceAmbientC(place))))
		}
	}
}

// Words in which a design says that a boat's engine is outside, and where vapour would gather. 33 CFR
// 183 subpart I, which asks for ignition protection, binds boats with petrol engines other
// than outboards; a tank of petrol is one on any boat.
var (
	outsideWords = []string{"outboard"}
	tankWords    = []string{"tank", "fuel", "petrol", "gasoline"}
	vapourWords  = append([]string{"engine", "bilge"}, tankWords...)
)

// missingVapour asks once whether petrol vapour can gather in a boat, as long as a place
// where it is likely does not say so itself, yes or no: the answer of another settles
// nothing.
func (p *Pass) missingVapour() {
	if !p.practice.Afloat {
		return
	}
	says := p.d.Title.Value + " " + p.d.Vehicle.Value
	petrol, words := p.d.SaysPetrol(), vapourWords
	if hasAny(outsideWords, says) || p.d.SaysNoPetrol() {
		petrol, words = false, tankWords
	}
	likely := false
	for _, x := range p.d.Places {
		if !hasAny(words, x.Name) {
			continue
		}
		if likely = true; !vapourSaid(x) {
			p.askVapour(x.Name, x.Pos, "in "+x.Name)
			return
		}
	}
	if petrol && !likely && !slices.ContainsFunc(p.d.Places, vapourSaid) {
		p.askVapour("vehicle", p.d.Vehicle.Pos, "at one of the places")
	}
}

// vapourSaid tells whether a place says whether petrol vapour can gather in it.
func vapourSaid(x *design.Place) bool { return x.VapourGiven }

func (p *Pass) askVapour(part string, pos problem.Pos, where string) {
	p.report(finding.Finding{Severity: finding.Advice, Part: part, Ref: part, Pos: pos,
		What:   "whether petrol vapour can gather " + where + " is not said: nothing there is judged as a source of sparks",
		Why:    sparkInVapour.Why,
		Change: "write `petrol vapour: yes` or `no` at the place", Source: sparkInVapour.Source})
}

func hasAny(words []string, text string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return named(w, text) })
}

// missingOf reports the gaps of one part.
func (p *Pass) missingOf(part *circuit.Part) {
	sayAs := func(severity finding.Severity, format string, args ...any) {
		p.report(finding.Finding{Severity: severity, Part: part.Name, Ref: part.Ref, Pos: part.Pos,
			What: fmt.Sprintf(format, args...)})
	}
	say := func(format string, args ...any) { sayAs(finding.Advice, format, args...) }
	if part.Place == nil && part.Pos.Line > 0 && p.heatMatters(part) {
		say("the place of %s is not given; %s is assumed", part.Name, celsius(part.AmbientC()))
	}
	switch s := part.Source.(type) {
	case *design.Tap:
		if len(p.drawsBelow(part.Terminals[0].Node)) == 0 {
			return
		}
		if !s.FuseA.Given() {
			sayAs(graver(s.Hot == design.WhenAlways, finding.Advice, finding.Fault),
				"the factory fuse before %s is not given, so neither is whether it suits the wires from there", s.Name)
		}
		if !s.SpareA.Given() {
			say("what %s can spare is not given; %s is drawn from it", s.Name, amps(p.tapAmps(part)(corner.AtNominal).Nominal))
		}
		if !s.SupervisedGiven {
			say("whether %s is supervised is not given", s.Name)
		}
	case *design.Bank:
		if !s.Store.ResistanceOhm.Given() {
			say("the internal resistance of %s is not given; %s is assumed", s.Name, assumedOhm(part.Branches[0], &s.Store))
		}
		if len(s.Returns) == 0 {
			p.report(finding.Finding{Severity: finding.Advice, Part: part.Name, Ref: part.Ref, Pos: part.Pos,
				What:   fmt.Sprintf("the negative cable of %s is not given: no resistance is assumed for it, and it is in no cut list or bill", part.Name),
				Change: "write `returns to: battery negative`, or the ground that it is joined to, with its `return wire`"})
		}
	case *design.Relay:
		if s.Coil.Suppressed == "" && (s.Form == nil || !s.Form.Senses) {
			say("the suppression of the coil of %s is not given", s.Name)
		}
		if s.Form != nil && s.Form.BreakA <= 0 && p.breaks(part) {
			say("the break contact rating of %s is not in the library", s.Name)
		}
	case *design.Switch:
		if s.Type == nil && !s.RatingA.Given() {
			say("neither type nor rating of %s is given", s.Name)
		}
	case *design.Block:
		if s.WayLimitA() <= 0 || s.TotalLimitA() <= 0 {
			say("the way limit or total limit of %s is not given", s.Name)
		}
	case *design.Load:
		if b := loadBranch(part); b != nil && s.StartAssumed {
			say("the start current of %s is not given; %s, %.3g times what it runs with, is assumed", s.Name,
				amps(p.c.DrawA(b)*s.Inrush.PeakRatio), s.Inrush.PeakRatio)
		}
		if b := loadBranch(part); b != nil && over(s.StandbyA.Value, p.c.DrawA(b)) {
			rest, use := quantity.Against(s.StandbyA.Value, p.c.DrawA(b), quantity.Current)
			say("%s: %s at rest but only %s in use; which of the two is right?", s.Name, rest, use)
		}
		p.missingTurn(part, say)
	case *design.Ground:
		if n := returnsTo(part); n > 1 && !s.LimitA.Given() {
			say("the limit of %s is not given, and %d returns meet there", s.Name, n)
		}
	}
}

// missingTurn reports a motor that runs one way only in the situations: what carries
// its current the other way round is not judged then.
func (p *Pass) missingTurn(part *circuit.Part, say func(string, ...any)) {
	b := loadBranch(part)
	if b == nil || !b.Load.Reverses || onOneHalf(b) || len(p.usable) == 0 {
		return
	}
	turns := func(s *solve.Solution) bool { return s.Amps(b) < 0 }
	if !slices.ContainsFunc(p.usable, turns) {
		say("no situation runs %s in reverse", part.Name)
	}
}

// heatMatters tells whether a part, or a wire that goes by its name, is judged by
// the heat of its place, and nothing else says how hot that is.
func (p *Pass) heatMatters(part *circuit.Part) bool {
	switch part.Kind {
	case circuit.Fuse, circuit.Relay, circuit.Block:
		return true
	}
	for _, t := range part.Terminals {
		for _, w := range t.Wires {
			if w.AmbientAt == "" && wireOwner(w) == part {
				return true
			}
		}
	}
	return false
}

// breaks tells whether something draws through a relay's break contact.
func (p *Pass) breaks(part *circuit.Part) bool {
	for _, b := range part.Branches {
		if b.Closer != nil && b.Closer.Break != nil && len(p.drawsOf(b)) > 0 {
			return true
		}
	}
	return false
}

// returnsTo is how many wires bring current back to a ground.
func returnsTo(part *circuit.Part) int {
	n := 0
	for _, t := range part.Terminals {
		n += len(wiresTo(t))
	}
	return n
}

// missingAllowed reports what the library lacks for the currents that wires may
// carry.
func (p *Pass) missingAllowed() {
	for _, w := range p.c.Wires {
		a := p.allowed(w)
		for _, gap := range a.Missing {
			f := ofWire(finding.Advice, w)
			f.Cause = gap
			f.What = fmt.Sprintf("the rating of %s is by heat balance alone: %s", w.Text(), gap)
			if !a.known() {
				f.What = fmt.Sprintf("the rating of %s is not known: %s", w.Text(), gap)
			}
			p.report(f)
		}
	}
}

// missingReratings reports fuse types of which the library does not say what they
// carry in a hot place, where one stands in such.
func (p *Pass) missingReratings() {
	for _, b := range p.fuses() {
		d := b.Device(p.ambientRiseK())
		if _, known := d.Share(); known || d.AmbientC <= fusing.RatedC {
			continue
		}
		f := ofFuse(finding.Advice, b)
		f.Cause = "re-rating of " + d.Type.Name
		p.say(f, "the rating of %s at %s is not known: no temperature derating is published for %s",
			fuseText(b), celsius(d.AmbientC), d.Type.Name)
	}
}

// missingTimes reports fuse types that have no fast edge although a load with
// a starting current hangs on one.
func (p *Pass) missingTimes() {
	said := map[*circuit.Branch]bool{}
	for _, part := range p.partsOf(circuit.Load) {
		for _, s := range p.starts(part) {
			if s.EdgeKnown || !math.IsNaN(s.MeltShare) || said[s.fuse] {
				continue
			}
			said[s.fuse] = true
			f := ofFuse(finding.Advice, s.fuse)
			f.Cause = "times of " + s.fuse.Fuse.Type.Name
			p.say(f, "whether %s holds through the start of %s is not known: %s", fuseText(s.fuse), part.Name, s.Note)
		}
	}
}
