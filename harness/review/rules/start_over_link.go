package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/library"
)

// shortOverload is what a contact bears for a time over its continuous rating at overloadC where its own figures are not known.
// Source: data sheet of plug-in relays in the ISO 7588-1 outline, short-time overload (one source); of others common practice, no source.
var shortOverload = []library.CarriesFor{{CurrentA: 6, S: 0.1}, {CurrentA: 3.5, S: 0.5}, {CurrentA: 2, S: 5}, {CurrentA: 1.35, S: 1800}}

const (
	overloadC = 85
	// boardTrips is the share of what its protection lets through for good at which it opens in a fraction of a second: 130 to 170 A
	// of a board of 75 A, within 90 ms (data sheet, one source). From 1.1 times on others open after 5 to 30 s (from memory).
	boardTrips = 2
)

var startOverLink = &Rule{
	Name:  "start-over-link",
	Title: "a further battery helps to start the engine over a link that does not bear it",
	Says:  "does not bear a start of the engine",
	Doc: "Each link to a further battery that conducts while the starter turns, in mild air on full batteries: a relay that the key pulls in, a switch that is closed. " +
		"And those over a voltage-sensing relay, solved again with it still closed, as it is soon after a stop, on sun or shore power, and with lithium for good (sensing-relay-stays). " +
		"What the further battery then gives is held against the opening curves of the fuses on its way, over the time of a long start, against what contacts bear so long, or until a fuse surely opens, and " +
		"against the protection of that battery where no fuse opens first. The first moment of a start is not judged.",
	Formula: "opening time of the fuse ≥ time of a start; current ≤ what the contact bears for it; current of the battery ≤ current of its protection",
	Limits: "the time that the starter is on, and the middle of the fuse's band, surely its latest; short-time ratings of the library, else 1.35 times the contact's, surely not 2 times; " +
		"`board` of the battery, surely not twice that",
	Why:    "the stiffer battery gives the greater part of the starter's current, whatever its link is made for",
	Change: "have the relay open while the starter turns, by its start input or a coil that is live only while the engine charges, or use a DC-DC charger; else make fuses, contacts and cable fit for the start",
	Severity: "fault where something surely gives way over a link that a situation closes, or a relay that stays closed; advice where it is only likely, where it is sure over a relay that is closed soon after a stop, " +
		"and where the starter is assumed",
	Source: "Ohm's law; short-time overload of plug-in relays and thresholds of a lithium board: data sheets (one source each); currents of starters: library",
	Bad: strings.NewReplacer("12 mΩ", "20 mΩ", "voltage-sensing relay", "contactor 85 A", "coil: {returns", "coil: {fed by: lamp fuse, wire: {size: 1 mm²}, suppressed by: diode, returns").
		Replace(relayLink("LiFePO4", "20 A", "")),
	Mended: []string{"20 A", "40 A", "4 mm²", "6 mm²"},
	Run: func(p *Pass) {
		s := p.in.Cranking
		if s == nil || len(s.Cases) == 0 || !(s.Start.Seconds > 0) {
			return
		}
		for part, link := range p.links() {
			contacts := p.c.Sensing(link)
			if !p.judgeStartOver(part, link, s.Turning, "its link", true) && len(contacts) > 0 {
				relay, stays := contacts[0].Part.Name, true
				for _, x := range contacts {
					stays = stays && p.staysAfterStop(x) != nil
				}
				how := relay + ", still closed as soon after a stop"
				if stays {
					how = relay + ", which stays closed"
				}
				p.judgeStartOver(part, link, s.Held, how, stays)
			}
		}
	},
}

// startOver is a further battery that helps to start the engine over a link.
type startOver struct {
	part    *circuit.Part
	in      *solve.Solution
	givesA  float64 // over the link
	how     string  // over what
	sure    bool    // it does at every start
	lastsS  float64 // of the current: the start, or until a fuse surely opens
	startsS float64
}

// judgeStartOver holds a link against what it carries in starts where it carries most; it tells whether it carries anything.
func (p *Pass) judgeStartOver(part *circuit.Part, link *circuit.Branch, starts []*solve.Solution, how string, sure bool) bool {
	x := startOver{part: part, how: how, sure: sure, startsS: p.in.Cranking.Start.Seconds}
	for _, s := range starts {
		if a := -s.LinkA(p.c, link); s.Status == solve.Converged && a > max(x.givesA, leastChargeA) {
			x.in, x.givesA = s, a
		}
	}
	if x.in == nil {
		return false
	}
	way := append(p.c.MainFeed(link.A).Branches, link)
	way = append(way, p.c.MainReturn(part.Terminal("-").Node, p.c.Negative()).Branches...)
	x.lastsS = x.startsS
	for _, b := range way {
		if fuse := b.Fuse != nil && b.Fuse.Rating != nil && !b.Fuse.Auto; fuse {
			x.lastsS = min(x.lastsS, b.Device(0).Open(x.in.Amps(b)).SlowS)
			p.judgeFuseAtStart(b, x)
		}
	}
	for _, b := range way {
		if b.Kind == circuit.ContactBranch {
			p.judgeContactAtStart(b, x)
		}
	}
	if x.lastsS == x.startsS {
		p.judgeBoardAtStart(x)
	}
	return true
}

// atStart is a finding about a part of the link, a fault where something is sure; ok is false of what is only likely over a link
// that is closed only soon after a stop: two suspicions are not worth a word.
func (p *Pass) atStart(part *circuit.Part, x startOver, sure bool) (fin finding.Finding, ok bool) {
	fin = ofPart(graver(sure && x.sure && !p.in.Cranking.Start.Assumed, finding.Advice, finding.Fault), part)
	fin.Situation, fin.Cause, fin.Leave = x.in.Situation.Name, "start over the link of "+x.part.Name, true
	return fin, sure || x.sure
}

// gives words what the further battery does.
func (p *Pass) gives(x startOver, a float64) string {
	return fmt.Sprintf("in a start by %s, %s gives %s over %s", strings.TrimSuffix(starterName(p.in.Cranking.Start), ","), x.part.Name, amps(a), x.how)
}

func (p *Pass) judgeFuseAtStart(b *circuit.Branch, x startOver) {
	a := math.Abs(x.in.Amps(b))
	open := b.Device(0).Open(a)
	opens, does := open.SlowS, "opens within "
	sure := !over(opens, x.startsS)
	if !sure && open.FastKnown {
		opens, does = math.Sqrt(open.FastS*open.SlowS), "opens after about "
	}
	fin, ok := p.atStart(b.Part, x, sure)
	if !ok || over(opens, x.startsS) {
		return
	}
	fin.Why = "the battery is no longer charged over the link, and nothing shows it"
	atLeast(&fin, "time to open", opens, x.startsS, "s")
	p.say(fin, "%s: %s %s%s; a long start takes %s", p.gives(x, a), fuseText(b), does, quantity.Format(opens, quantity.Duration), quantity.Plain(x.startsS, quantity.Duration))
}

func (p *Pass) judgeContactAtStart(b *circuit.Branch, x startOver) {
	bears, fails := bornAtStart(b, x.lastsS)
	a := math.Abs(x.in.Amps(b))
	fin, ok := p.atStart(b.Part, x, over(a, fails))
	if !ok || bears == 0 || !over(a, bears) {
		return
	}
	fin.Why = "contacts overheat and weld: the batteries then stay joined, and one runs the other down"
	atMost(&fin, "current of the contact", a, bears, "A")
	p.say(fin, "%s: %s bears %s for %s", p.gives(x, a), b.Part.Name, ampsOver(bears, a), quantity.Format(x.lastsS, quantity.Duration))
}

// bornAtStart is what a closed contact bears for a time, and what it surely does not; 0 = not known.
func bornAtStart(b *circuit.Branch, s float64) (bears, fails float64) {
	r := ContactRatings{resistive: linkContactA(b), share: 1}
	if relay, ok := b.Part.Source.(*design.Relay); ok && relay.Form != nil {
		r = RelayContact(relay.Form, b, max(b.Part.AmbientC(), overloadC))
	}
	rows, times := r.short, 1.0
	if len(rows) == 0 {
		rows, times = shortOverload, r.resistive
	}
	bears, fails = r.resistive, math.Inf(1)
	for _, row := range slices.Backward(rows) {
		if row.S >= s {
			bears = max(r.resistive, row.CurrentA*times)
		} else if math.IsInf(fails, 1) {
			fails = row.CurrentA * times
		}
	}
	return bears * r.share, fails * r.share
}

func (p *Pass) judgeBoardAtStart(x startOver) {
	limit, a := x.part.Source.(*design.Bank).Store.BoardA(), x.in.Given(x.part.Branches[0])
	fin, ok := p.atStart(x.part, x, over(a, boardTrips*limit))
	if !ok || limit == 0 || !over(a, limit) {
		return
	}
	fin.Why = "its protection switches the battery off, and all that it feeds goes out as the engine starts"
	fin.Change = "have the relay open while the starter turns, or use a DC-DC charger; more fuse or cable does not help"
	atMost(&fin, "current out of the battery", a, limit, "A")
	p.say(fin, "%s; its protection lets %s through", p.gives(x, a), quantity.Plain(limit, quantity.Current))
}
