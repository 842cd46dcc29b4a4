package rules

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var voltageDrop = &Rule{
	Name:  "voltage-drop",
	Title: "too much voltage is lost between battery and load",
	Says:  "too much voltage drop",
	Doc: "For every load that is on: the voltage at the battery's posts less the voltage at the load, so " +
		"feed and return together, with fuses, contacts and terminations and the lead that it comes with (`lead`, where its length is given), wires warm. Each feed of " +
		"a load that several switches feed is tried alone too. The worst " +
		"situation is reported, at nominal values, as is likely and in its worst case. The limits are defined for the " +
		"conductors at nominal values: what these lose there decides. When contacts and fuses take the whole drop above one and a half times the " +
		"limit it is a fault too; where it may be so as is likely, where they take it above the limit, or where one wire takes two fifths of it and it may be above the limit as is likely, it is advice, and so are wires that lose more than is usual for what is on for long, or than the load's maker asks (`drop aim`). On boats the wires of what the library calls `critical afloat` " +
		"(navigation lamps, VHF radio, bilge pumps, blower) are held to the limit of critical loads too, unless the design says whether they are `critical`: " +
		"advice above it, a fault above one and a half times. An element that " +
		"alone takes two fifths of the drop is named. A load that gets its current through a relay's coil loses nothing on the way: that is said in place of a drop.",
	Formula: "drop = (V battery − V load) / nominal system voltage",
	Limits: "the practice's limit for critical or other loads; `limits: drop critical`, `drop " +
		"other` of the design",
	Why: "lamps dim, motors stall and heat, electronics reset, and the lost power heats the " +
		"wires",
	Change:   "use a thicker feed and return, or shorten them",
	Severity: "fault; danger for a critical load at more than twice its limit; advice when contacts and fuses take it above the limit, or as is likely above one and a half times that",
	Source:   "ABYC E-11: 3 % critical, 10 % other, of the nominal voltage (two sources)",
	Mend:     MendDrop,
	Bad: `
loads:
  tail lamp: {power: 20 W, behaves: resistor, critical: yes, at: rear, fed by: lamp fuse, wire: {size: 0.75 mm², length: 8.5 m}, returns to: frame, return wire: {size: 1 mm²}}
fuses:
  lamp fuse: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
`,
	Mended: []string{", critical: yes", ""},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			if b := loadBranch(part); b != nil {
				p.judgeDrop(part, b)
			}
		}
	},
}

// dropOf is what is lost between the battery's posts and a load's terminals.
func (f *facts) dropOf(s *solve.Solution, b *circuit.Branch) float64 {
	return s.LostV(b)
}

// MostWholeDrop is the share of the limit up to which contacts and fuses may take
// the whole drop above it: the limit is that of the conductors.
const MostWholeDrop = 1.5

// mostByContacts is the share of a drop from which thicker wires are no remedy for what contacts and fuses take.
const mostByContacts = 0.5

func (p *Pass) judgeDrop(part *circuit.Part, b *circuit.Branch) {
	l := accessory(part)
	limit, given := p.dropLimit(l.Critical)
	kind, key := "not critical", "drop other"
	if l.Critical {
		kind, key = "critical", "drop critical"
	}
	whole, wires := p.worstDrop(b), p.wireDrop(part, b)
	if p.saysCoils(part, b, whole(corner.AtNominal)) {
		return
	}
	v := p.held("voltage drop", wires, figure.Larger, limit, math.Inf(1), func(c cornered) finding.Severity {
		return graver(l.Critical && c.decisive() > 2*limit, finding.Fault, finding.Danger)
	})
	byWires, judged := v.severity != 0, v
	if byWires {
		v = verdict{whole(v.by), limit, v.severity}
	} else {
		v = p.held("voltage drop", whole, figure.Larger, MostWholeDrop*limit, MostWholeDrop*limit, always(finding.Fault))
		likely := whole(corner.AtLikely)
		if v.severity == finding.Advice && !over(likely.Likely, MostWholeDrop*limit) {
			v = verdict{} // all tolerances at once
		}
		if v.severity == 0 && likely.in != nil && over(likely.Likely, limit) && p.lossOf(part, b, likely.in).byOneWire() {
			v = verdict{likely, limit, finding.Advice}
		}
		if nominal := whole(corner.AtNominal); v.severity == 0 && nominal.in != nil && over(nominal.Nominal, limit) {
			v = verdict{nominal, limit, finding.Advice}
		}
		judged = v
	}
	if v.severity < finding.Fault && p.judgeAim(part, b, wires(corner.AtNominal), limit) || v.severity == 0 {
		return
	}
	fin := ofPart(v.severity, part)
	print := against(limit, quantity.Share)
	lead, nominal := v.cornered, whole(corner.AtNominal)
	switch {
	case over(nominal.Nominal, limit):
		lead = nominal // the worst case is more of the same
	case v.severity == finding.Advice:
		lead = whole(corner.AtLikely) // by which it is one
	}
	_, most := quantity.Against(lead.decisive(), limit, quantity.Share)
	fin.What = fmt.Sprintf("drop to %s: %s, %s%s; %s at nominal in its wires (limit %s, %s)",
		part.Name, volts(lead.decisive()*p.c.NominalAt(b.A)), print(lead.decisive()), lead.said(print), print(wires(corner.AtNominal).Nominal), most, kind) +
		p.mostLost(part, b, lead.in)
	v.decides(&fin, "drop", figure.Larger, 100, limit, "%")
	if v.severity == finding.Advice {
		byContacts := 1 - wires(lead.by).decisive()/lead.decisive()
		fin.Leave = byContacts > mostByContacts // else thicker wires fix it
		fin.What += fmt.Sprintf("; contacts and fuses take %s of it", quantity.Format(byContacts, quantity.Share))
		if fin.Leave {
			fin.Change = "fewer contacts in the way, or shorter wires: thicker ones gain little"
		}
	}
	fin.Source = p.limitSource(key, given)
	bound := limit
	if !byWires && v.severity != finding.Advice {
		bound *= MostWholeDrop
	}
	fin.Unsourced = p.unsourcedDrop(p.lossFor(part, judged.cornered), byWires, judged.decisive()*p.c.NominalAt(b.A),
		(judged.decisive()-bound)*p.c.NominalAt(b.A))
	p.report(fin)
}

// leftByCoils is the share of the system voltage lost from which a load in series with a
// coil has no use of the rest, and seriesShare how much of its current such a coil carries.
const leftByCoils, seriesShare = 0.9, 0.5

// saysCoils reports a load that gets its current through coils in series with it: what is
// lost there is no drop, and may be more than there is, since the coils drive it backwards.
func (p *Pass) saysCoils(part *circuit.Part, load *circuit.Branch, whole cornered) bool {
	s := p.solutionOf(whole.in)
	if s == nil || whole.Nominal < leftByCoils {
		return false
	}
	var through []*circuit.Branch
	for coil := range p.coils {
		if math.Abs(s.BranchA[coil.Index]) >= seriesShare*math.Abs(s.BranchA[load.Index]) && s.BranchA[coil.Index] != 0 {
			through = append(through, coil)
		}
	}
	if len(through) == 0 {
		return false
	}
	fin := ofPart(graver(accessory(part).Critical, finding.Fault, finding.Danger), part)
	fin.Situation = whole.in.Name
	fin.Change = "feed load and coil each from the supply, and return each to a ground"
	p.say(fin, "%s is in series with the coil of %s and gets %s", part.Name, wording.And(names(through)), volts(math.Abs(s.LoadV(load))))
	return true
}

// judgeAim advises on a wire that is thick enough by its limit but thinner than the
// trade fits for what is on for long; false when it is not.
func (p *Pass) judgeAim(part *circuit.Part, load *circuit.Branch, wires cornered, limit float64) bool {
	aim, key := corner.DropAim(p.c, load)
	if wires.in == nil || aim >= limit || !over(wires.Nominal, aim) {
		return false
	}
	// What is critical by the library alone is a fault where no fitter would leave it.
	fin := ofPart(graver(key == corner.AimCritical && over(wires.Nominal, MostWholeDrop*aim), finding.Advice, finding.Fault), part)
	value, most := quantity.Against(wires.Nominal, aim, quantity.Share)
	fin.What = fmt.Sprintf("drop in the wires to %s: %s; %s is usual for %s", part.Name, value, most, aims[key])
	if key == corner.AimOwn && !aimOfType(accessory(part)) {
		fin.What = fmt.Sprintf("drop in the wires to %s: %s; the design asks for %s", part.Name, value, most)
	}
	atMost(&fin, "drop in its wires", 100*wires.Nominal, 100*aim, "%")
	fin.Situation = wires.in.Name
	_, given := p.dropLimit(true)
	if fin.Source = p.limitSource(key, given && key == corner.AimCritical); key == corner.AimOwn {
		fin.Source = aimSource(accessory(part))
	}
	p.report(fin)
	return true
}

// aimSource is where the aim of a load's own comes from.
func aimSource(l *design.Load) string {
	if aimOfType(l) {
		return l.Type.Aim.Source.String()
	}
	return "limit set by the design"
}

func aimOfType(l *design.Load) bool { return l.Type != nil && l.DropAim.Value == l.Type.Aim.Share }

// aims are what the aims of the practice hold for, in words.
var aims = map[string]string{
	corner.AimLong:       "a load on for long periods",
	corner.AimCritical:   "navigation lamps, radios, blowers and bilge pumps",
	corner.AimOwn:        "such a load, by its maker",
	corner.AimConverters: "a large load of constant power, whose electronics cut out on low volts",
}

// mostLost says where the volts go at nominal: the elements that take most and the
// wires together, where the wires take less than half; else the element that
// takes at least two fifths of the drop; "" when none does.
func (p *Pass) mostLost(part *circuit.Part, load *circuit.Branch, in *design.Situation) string {
	l := p.lossOf(part, load, in)
	switch {
	case l == nil:
		return ""
	case l.wires < l.whole/2:
		return l.text()
	case len(l.taking) > 0 && l.taken(l.taking[0]) >= mostShare*l.whole:
		return fmt.Sprintf("; %s alone takes %s at nominal", elementText(l.taking[0]), volts(l.taken(l.taking[0])))
	}
	return ""
}

// loss is where the volts of a load's way go at nominal.
type loss struct {
	in           *solve.Solution
	taking       []*circuit.Branch // the elements of the way, those that take most first
	wires, whole float64           // of its wires together, and in all, in volts
}

func (l *loss) taken(b *circuit.Branch) float64 { return math.Abs(l.in.Volts(b)) }

// lossOf is nil where the situation has no operating point.
func (p *Pass) lossOf(part *circuit.Part, load *circuit.Branch, in *design.Situation) *loss {
	s := p.solutionOf(in)
	if s == nil {
		return nil
	}
	l := &loss{in: s, whole: p.dropOf(s, load)}
	for _, way := range append(p.c.WaysIn(part, s.BranchA), circuit.Path{Branches: part.Leads()}) {
		for _, b := range way.Branches {
			if b.Load != nil || b.Dropper() || math.Abs(s.BranchA[b.Index]) < 0.01*math.Abs(s.BranchA[load.Index]) {
				continue // in series with it; an open contact: of a motor that runs the other way round
			}
			if l.taking = append(l.taking, b); b.Wire != nil || b.OfLead() {
				l.wires += l.taken(b)
			}
		}
	}
	slices.SortStableFunc(l.taking, func(a, b *circuit.Branch) int { return cmp.Compare(l.taken(b), l.taken(a)) })
	return l
}

// mostShare is the share of a drop from which one element is named.
const mostShare = 0.4

// byOneWire tells of one wire that takes such a share: it is thinner than the rest of the way.
func (l *loss) byOneWire() bool {
	return l != nil && len(l.taking) > 0 && l.taking[0].Wire != nil && l.taken(l.taking[0]) >= mostShare*l.whole
}

// text lists the elements other than wires that take most, and the wires together.
func (l *loss) text() string {
	var list []string
	for _, b := range l.taking {
		if b.Wire == nil && !b.OfLead() && len(list) < 3 {
			list = append(list, elementText(b)+" "+volts(l.taken(b)))
		}
	}
	return "; lost at nominal: " + strings.Join(append(list, "wires "+volts(l.wires)), ", ") + "; " + volts(l.whole) + " in all"
}

// solutionOf is the operating point of a situation; nil without one.
func (f *facts) solutionOf(in *design.Situation) *solve.Solution {
	for _, s := range f.allSolutions() {
		if s.Situation == in && s.Status == solve.Converged {
			return s
		}
	}
	return nil
}

// elementText is a branch of a circuit in words.
func elementText(b *circuit.Branch) string {
	switch {
	case b.Wire != nil:
		return b.Wire.Text()
	case b.Fuse != nil:
		return fuseText(b)
	case b.OfLead():
		return "its own lead"
	case b.Part != nil:
		return b.Part.Ref + " " + b.Part.Name
	}
	return b.Name
}

// worstDrop is the drop before a load as a share of the system voltage.
func (f *facts) worstDrop(b *circuit.Branch) measure {
	return f.dropShare(b, func(s *solve.Solution) float64 { return f.dropOf(s, b) })
}

// wireDrop is the part of it that the wires of the load's way take.
func (f *facts) wireDrop(part *circuit.Part, b *circuit.Branch) measure {
	way := f.c.WayConductors(part)
	return f.dropShare(b, func(s *solve.Solution) float64 {
		sum := 0.0
		for _, w := range way(s.BranchA) {
			sum += math.Abs(s.Volts(w))
		}
		return sum
	})
}

// dropShare is a drop while a load is on, as a share of the nominal voltage of what feeds it.
func (f *facts) dropShare(b *circuit.Branch, dropV func(*solve.Solution) float64) measure {
	on := func(s *solve.Solution) bool { return s.LoadOn[b.Index] }
	return f.figureOf(1, on, func(s *solve.Solution) float64 {
		if !on(s) {
			return 0
		}
		return dropV(s) / f.c.NominalAt(b.A)
	})
}

// dropLimit is the share of the system voltage a load's circuit may lose, and
// whether the design sets it.
func (f *facts) dropLimit(critical bool) (limit float64, given bool) {
	return corner.DropLimit(f.d, critical)
}
