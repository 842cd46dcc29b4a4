package rules

import (
	"fmt"
	"math"

	"fusewright/harness/design/figure"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

var fuseInrush = &Rule{
	Name:  "fuse-inrush",
	Title: "a fuse may open while a load starts",
	Says:  "may open while the load starts",
	Doc: "The starting current of each accessory, where the design or the library gives one or that of a motor is assumed, against the " +
		"fuses above it; of several the nearest that may open is named. Loads are taken to start one at a time, at their rated current. The " +
		"start must pass below the fuse's fastest opening, and where a melting I²t is published its heat " +
		"must be a share of it that the fuse survives 10 000 times, some starts a day for ten years " +
		"(sizing chooses for 100 000). A fault is a start that opens a fuse of the middle of its band; one that only the fastest " +
		"of its kind does not pass, that ages it, or that is assumed, is advice, and so is a nearest fuse " +
		"smaller than the one that makers of such a load fit. Where the fuse type has no published lower times, " +
		"data-missing says so.",
	Formula: "i(t) = I·(1 + (p − 1)·e^(−t/τ)); at each t the steady current of the same heat must open later " +
		"than t on the fast edge; ∫i²dt above the running current ≤ 0.29 × melting I²t",
	Limits: "the fuse type's time band; 0.29 of the melting I²t for 10 000 starts",
	Why: "the fuse opens at switch-on, or ages with every start and one day opens without " +
		"a fault",
	Change:   "fit a slower type or a larger rating that the wire still allows, or a soft start",
	Severity: "fault; advice when only the fastest of its kind opens, the starts age it, or the start is assumed",
	Source: "maker's guide to fuse selection, pulse chart (one source); makers' data sheets, " +
		"time-current tables (one source)",
	Mend: MendStart,
	Bad: `
fuses:
  pump fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}}
loads:
  bilge pump: {power: 72 W, behaves: motor, inrush: {peak: 8, time: 400 ms}, at: rear, fed by: pump fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 20 A, spare: 15 A, supervised: no}
`,
	Mended: []string{"peak: 8, time: 400 ms", "peak: 2, time: 40 ms"},
	Run: func(p *Pass) {
		for _, l := range p.partsOf(circuit.Load) {
			p.judgeInrush(l)
		}
	},
}

// fewStartsShare is the share of the melting I²t that a fuse outlasts 10 000
// times. Source: maker's guide to fuse selection, pulse chart (0.29; 0.22 for
// 100 000, electronic cartridge fuses).
const fewStartsShare = 0.29

// start is a fuse of the design against the start of a load that passes it.
type start struct {
	fuse *circuit.Branch
	fusing.Carrying
}

// starts are the fuses that a load's start passes, the nearest first; none for a
// load that starts with its running current.
func (p *Pass) starts(part *circuit.Part) (list []start) {
	l, b := accessory(part), loadBranch(part)
	if l == nil || b == nil || l.Inrush.PeakRatio <= 1 || l.Inrush.TauS <= 0 {
		return nil
	}
	for _, f := range p.nearest.Upstream(b) {
		if !f.Fuse.Factory && fuseRating(f) > 0 {
			list = append(list, start{f, fusing.Carries(f.Device(0), p.c.DrawA(b), l.Inrush)})
		}
	}
	return list
}

func (p *Pass) judgeInrush(part *circuit.Part) {
	var fuse *circuit.Branch
	var c fusing.Carrying
	opens := false
	for _, s := range p.starts(part) {
		if edge := s.EdgeKnown && s.Margin <= 1; !opens && edge || fuse == nil && s.MeltShare > fewStartsShare {
			fuse, c, opens = s.fuse, s.Carrying, edge
		}
	}
	if fuse == nil {
		p.judgeUsual(part)
		return
	}
	l, running := accessory(part), p.c.DrawA(loadBranch(part))
	fin := ofPart(graver(c.EdgeKnown && c.UsualMargin <= 1 && !l.StartAssumed, finding.Advice, finding.Fault), part)
	assumed := ""
	if l.StartAssumed {
		assumed = ", as assumed"
	}
	fin.What = fmt.Sprintf("%s draws %s as it starts%s; %s may open during the start", part.Name,
		amps(running*l.Inrush.PeakRatio), assumed, fuseText(fuse))
	if !opens {
		fin.What = fmt.Sprintf("each start of %s, peaking at %s%s, heats %s by %s of its melting I²t; "+
			"it will not last 10 000 starts", part.Name, amps(running*l.Inrush.PeakRatio), assumed,
			fuseText(fuse), share(c.MeltShare))
	}
	fin.Numbers = []finding.Number{{Name: "peak", Value: running * l.Inrush.PeakRatio, Unit: "A"}}
	if opens && !math.IsInf(c.Margin, 0) {
		fin.Numbers = append(fin.Numbers, finding.Number{Name: "soonest opening over elapsed time", Value: c.Margin},
			finding.Number{Name: "limit", Value: 1}, finding.Number{Name: "margin", Value: c.Margin - 1})
	}
	if !math.IsNaN(c.MeltShare) {
		fin.Numbers = append(fin.Numbers, finding.Number{Name: "share of melting I²t", Value: c.MeltShare})
	}
	if !opens {
		fin.Numbers = append(fin.Numbers, finding.Number{Name: "limit", Value: fewStartsShare},
			finding.Number{Name: "margin", Value: fewStartsShare - c.MeltShare})
	}
	fin.Change = besideFitted(fuse)
	fin.Figure = figure.New(c.Margin, 1, "", figure.Smaller)
	if !opens {
		fin.Figure = figure.New(c.MeltShare, fewStartsShare, "", figure.Larger)
	}
	p.report(fin)
}

// judgeUsual reports the nearest fuse of a load where it is smaller than the one that makers fit. Afloat one that breaks
// the short only since it is small has no larger of its type, and of another nothing is gained.
func (p *Pass) judgeUsual(part *circuit.Part) {
	l, b := accessory(part), loadBranch(part)
	if l == nil || b == nil {
		return
	}
	for _, f := range p.nearest.Upstream(b) {
		if fuseRating(f) <= 0 {
			continue
		}
		systemV := p.c.NominalAt(f.A)
		if least := l.UsualFuseA(systemV); !f.Fuse.Factory && over(least, fuseRating(f)) && !(p.practice.Afloat && p.behindA(f) > f.Fuse.Type.BreakingAt(systemV)) {
			fin := ofPart(finding.Advice, part)
			fin.Pos, fin.Change = f.Fuse.Pos, besideFitted(f)
			fin.Figure = figure.New(fuseRating(f)/least, 1, "", figure.Smaller)
			p.say(fin, "%s is smaller than the %s that makers of a %s fit", fuseText(f), amps(least), l.Type.Name)
		}
		return
	}
}
