package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var partBelowFuse = &Rule{
	Name:  "part-below-fuse",
	Title: "a contact may carry less than its fuse lets through",
	Says:  "rated far below its fuse",
	Doc: "The nearest fuse upstream of each contact of a switch or relay, and of each wire at a plug, a connector or a splice of the design, against what the contact " +
		"may carry (resistive, at the ambient of a relay; of a contactor with ratings for a while, the highest of those). The loads in the design bound the current in use, which switch-overload, " +
		"relay-contact-overload, plug-overload and terminal-overload judge; here it is a fault of what it feeds, short of " +
		"a short, that the fuse does not see. Below twice the rating nothing is said. A battery switch is left out: " +
		"it carries far more for the time that a fuse takes; so is a contact that works coils alone. What the charging system feeds at its own stud, without a fuse or behind a larger one, counts at its cold output. One finding per part, for its weakest contact.",
	Formula:  "rating of the fuse, or cold output at the stud if less, < 2 × rating of the contact",
	Limits:   "twice the rating of the contact in the library or the design",
	Why:      "a motor that drags or a chafed lead draws more than the contact takes: it chars and melts while the fuse holds",
	Change:   "fit a smaller fuse, or a part of a higher rating",
	Severity: "fault above twice the rating; advice at it, which many makers fit",
	Source:   "common practice, no source",
	Bad: `
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 20 A, spare: 15 A, supervised: no}
fuses:
  lamp fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
switches:
  lamp switch: {type: handlebar rocker 5 A, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
loads:
  vest: {power: 40 W, behaves: resistor, at: rear, fed by: lamp switch, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"handlebar rocker 5 A", "sealed rocker 20 A"},
	Run: func(p *Pass) {
		for _, part := range p.c.Parts {
			p.judgeContactFuse(part)
		}
	},
}

// farBelow is from how many times a contact's rating a fuse is a fault.
const farBelow = 2.0

// weakContact is a contact with the fuse before it, or the charging system at its own stud that gives less.
type weakContact struct {
	limitA   float64
	fuse     *circuit.Branch // nil = none
	what     string
	machineA float64 // +Inf where a battery feeds it
}

func (p *Pass) weak(limitA float64, b *circuit.Branch, what string) weakContact {
	return weakContact{limitA, p.guardAt(b).fuse, what, p.machineA(b)}
}

// letsA is what is let through for good; 0 = not known.
func (w weakContact) letsA() float64 {
	if w.fuse != nil {
		return math.Min(fuseRating(w.fuse), w.machineA)
	}
	if math.IsInf(w.machineA, 1) {
		return 0
	}
	return w.machineA
}

func (w weakContact) share() float64 { return w.letsA() / w.limitA }

func (p *Pass) judgeContactFuse(part *circuit.Part) {
	var weakest weakContact
	for _, w := range append(p.ownContacts(part), p.endContacts(part)...) {
		if w.limitA > 0 && (weakest.limitA == 0 || w.share() > weakest.share()) {
			weakest = w
		}
	}
	if weakest.limitA == 0 || over(farBelow, weakest.share()) {
		return
	}
	fin := ofPart(graver(over(weakest.share(), farBelow), finding.Advice, finding.Fault), part)
	if a := weakest.machineA; weakest.fuse == nil || fuseRating(weakest.fuse) > a {
		atMost(&fin, "output of the charging system", a, farBelow*weakest.limitA, "A")
		p.say(fin, "%s of %s is rated %s; the charging system gives up to %s at its stud, and no fuse that opens stands between", weakest.what, part.Name, amps(weakest.limitA), amps(a))
		return
	}
	fin.Cause = fusePlace(weakest.fuse)
	atMost(&fin, "fuse rating", fuseRating(weakest.fuse), farBelow*weakest.limitA, "A")
	fin.Short = fmt.Sprintf("rated %s, behind %s", amps(weakest.limitA), fuseText(weakest.fuse))
	p.say(fin, "%s of %s is rated %s; %s upstream lets more through for a long time", weakest.what, part.Name,
		amps(weakest.limitA), fuseText(weakest.fuse))
}

// ownContacts are those inside a switch or relay.
func (p *Pass) ownContacts(part *circuit.Part) (list []weakContact) {
	for _, b := range part.Branches {
		if b.Closer == nil || isolates(b) || !p.feedsAccessory(b) {
			continue
		}
		a := 0.0
		switch s := part.Source.(type) {
		case *design.Switch:
			if a = s.RatingA.Value; !s.RatingA.Given() && s.Type != nil {
				a = s.Type.ResistiveA
			}
		case *design.Relay:
			if s.Form != nil && b.Kind == circuit.ContactBranch {
				r := RelayContact(s.Form, b, part.AmbientC())
				a = r.resistive * r.share
				for _, short := range s.Form.ShortTime { // a fault does not last for good
					a = max(a, short.CurrentA)
				}
			}
		}
		list = append(list, p.weak(a, b, "the contact"))
	}
	return list
}

// feedsAccessory tells whether more hangs on a contact than coils, which draw what they
// draw.
func (p *Pass) feedsAccessory(b *circuit.Branch) bool {
	return slices.ContainsFunc(p.drawsOf(b), func(x *circuit.Branch) bool { return p.coils[x] == nil })
}

// endContacts are those of its plug and of splices at its wires.
func (p *Pass) endContacts(part *circuit.Part) (list []weakContact) {
	if x := p.c.InlineOf(part); x != nil {
		for _, pole := range x.Poles {
			a, what, _ := contactLimit(part.Plug.Family, pole.Contact)
			list = append(list, p.weak(a, pole.Wire.Branch, what))
		}
		return list
	}
	if part.Plug == nil && part.Kind != circuit.Splice {
		return nil
	}
	for _, t := range part.Terminals {
		for _, w := range t.Wires {
			end := w.ToEnd
			if w.From == t {
				end = w.FromEnd
			}
			if end == nil || end.MaxA <= 0 {
				continue
			}
			a, what := end.MaxA, end.Name
			if part.Plug != nil {
				a, what = min(a, part.Plug.Family.MaxA), "the plug's "+end.Name
			}
			list = append(list, p.weak(a, w.Branch, what))
		}
	}
	return list
}
