package rules

import (
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var lampSharesMotorFuse = &Rule{
	Name:  "lamp-shares-motor-fuse",
	Title: "a lamp that must stay lit shares its fuse",
	Says:  "shares its fuse",
	Doc: "Lamps that others steer or keep clear by: those whose library row says `must burn`, such as navigation and tail " +
		"lamps, and lamps that the design calls critical, such as a brake lamp; against motors whose nearest fuse is the same. " +
		"Other critical loads are advised on, and such lamps beside electronics that draw more, a cool box or a converter; afloat " +
		"beside other lamps that draw more too, since navigation lights have a circuit of their own. Of a lamp without a type nobody " +
		"can tell what it is for: beside a motor it is advised on. A horn cannot jam and is no such motor.",
	Formula:  "none: it is a question of topology",
	Limits:   "none",
	Why:      "the motor jams, the fuse opens as it should, and nobody sees the boat or the braking",
	Change:   "give the lamp a fuse of its own",
	Severity: "fault; advice for a critical load that is no lamp, for a lamp without a type, and beside what is no motor",
	Source:   "common practice, no source",
	Bad: `
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  tail lamp: {type: LED tail lamp, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
  pump: {current: 2 A, rated at: 12 V, behaves: motor, inrush: {peak: 3, time: 100 ms}, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}}
`,
	Mended: []string{"LED tail lamp", "LED auxiliary lamp"},
	Run: func(p *Pass) {
		for _, part := range p.partsOf(circuit.Load) {
			l, b := accessory(part), loadBranch(part)
			unknown := b != nil && l.Type == nil && l.IsLamp()
			if b == nil || l.Behaves == design.Motor || !l.MustBurn() && !l.Critical && !unknown {
				continue
			}
			p.judgeShared(part, b, graver(l.MustBurn(), finding.Advice, finding.Fault))
		}
	},
}

func (p *Pass) judgeShared(part *circuit.Part, b *circuit.Branch, severity finding.Severity) {
	fuses, _ := p.nearest.Above(b.A)
	for _, fuse := range fuses {
		others := p.loadsOn(fuse, func(l *design.Load) bool { return l.Behaves == design.Motor && l.Sign != design.SignHorn })
		if len(others) == 0 && severity == finding.Fault {
			severity = finding.Advice
			others = p.besideLamp(fuse, b)
		}
		if len(others) > 0 {
			fin := ofPart(severity, part)
			fin.Cause = fusePlace(fuse)
			p.say(fin, "a fault of %s opens %s and takes %s with it", wording.Or(names(others)), fuseText(fuse), part.Name)
		}
	}
}

// besideLamp are the loads that are no motors and draw more than a lamp which must burn, on
// its fuse: electronics, and afloat lamps that need not burn.
func (p *Pass) besideLamp(fuse, lamp *circuit.Branch) []*circuit.Branch {
	less := func(l *design.Load) bool {
		if l.IsLamp() {
			return p.practice.Afloat && !l.Critical && !l.MustBurn()
		}
		return l.Behaves == design.ConstantPower
	}
	return slices.DeleteFunc(p.loadsOn(fuse, less), func(x *circuit.Branch) bool {
		return p.c.DrawA(x) <= p.c.DrawA(lamp)
	})
}

// loadsOn lists the loads of a kind whose nearest fuse is this one.
func (p *Pass) loadsOn(fuse *circuit.Branch, kind func(*design.Load) bool) (list []*circuit.Branch) {
	for _, b := range p.c.BelowBranch(fuse).Loads {
		l := accessory(b.Part)
		if l == nil || b != loadBranch(b.Part) || !kind(l) {
			continue
		}
		if own, _ := p.nearest.Above(b.A); slices.Contains(own, fuse) {
			list = append(list, b)
		}
	}
	return list
}
