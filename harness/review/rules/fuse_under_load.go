package rules

import (
	"fmt"
	"math"
	"strings"

	"fusewright/harness/design/figure"
	"fusewright/harness/formula/fusing"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
)

var fuseUnderLoad = &Rule{
	Name:  "fuse-under-load",
	Title: "a fuse is too small for the current it carries continuously",
	Says:  "too small for what it carries",
	Doc: "The largest current of each fuse over all situations, at nominal values and in the worst case, " +
		"against what it may carry without ageing where it is. The practice's share is a margin for tolerances: it holds " +
		"at nominal; in the worst case the maker's share alone holds, as advice, which sizing heeds where that is likely too, " +
		"but for motors on for minutes at most, whose full pull lasts moments, and for what is given at its highest. It is for continuous load: of loads on for less than " +
		"three hours at once the rating carries all, and of what is `on for` a time `every` so often a slow device carries more, as long as its heat over the " +
		"cycles is no more than that of the allowed current and a typical one opens in no cycle. That the fastest of " +
		"its kind would open within five thirds of the time is advice; a device without a published middle of its band is judged as if it carried that continuously. A fuse that carries " +
		"current only while a `momentary` switch is held is judged by its rating. " +
		"Starting current is fuse-inrush; loads that no situation turns on together are " +
		"feed-fuse-under-branches. Factory fuses are judged by tap-over-spare.",
	Formula: "current ≤ rating × the smaller of the practice's load share and the maker's share at " +
		"the ambient; of pulses √(off² + (on² − off²)·(1 − e^(−on/τ))/(1 − e^(−every/τ))) ≤ that, τ from the middle of the opening band " +
		"at its first multiple; the heat x of dx/dt = ((I/I0)² − x)/τ below 1 in every cycle, τ such that one pulse opens as the curve has it",
	Limits: "the practice's load share of fuse; the fuse type's re-rating table",
	Why:    "run at its limit a fuse ages and opens on a warm day without any fault",
	Change: "fit the next larger fuse the wire allows, or share the loads between two fuses",
	Severity: "fault; danger when the current exceeds the rating and a critical load depends on the " +
		"fuse; advice when only the worst case passes the maker's share, or only the fastest of its kind opens in a cycle",
	Source: "makers' data sheets, blade fuses 32 V: continuous load against ambient (one source); " +
		"the share is from memory; cycles: one exponential (from memory), the mean heat as the duty tables of IS 9857 and NEC 630.11 (one source each)",
	Mend:  MendFuse,
	InUse: true,
	Bad: `
fuses:
  heat fuse: {type: blade C, rating: 3 A, at: battery tray, fed by: keyed feed, wire: {size: 1 mm², length: 100 mm}}
loads:
  warm vest: {power: 33 W, behaves: resistor, at: rear, fed by: heat fuse, wire: {size: 1.5 mm²}, returns to: frame}
`,
	Mended: []string{"rating: 3 A", "rating: 5 A"},
	Run: func(p *Pass) {
		for _, b := range p.fuses() {
			if fuseRating(b) > 0 {
				p.judgeUnderLoad(b)
			}
		}
	},
}

// anyCritical tells whether one of the loads is critical.
func anyCritical(draws []*circuit.Branch) bool {
	for _, b := range draws {
		if b.Load != nil && b.Load.Load != nil && b.Load.Load.Critical {
			return true
		}
	}
	return false
}

// underLoad holds a fuse's current against what it bears.
func (p *Pass) underLoad(b *circuit.Branch) verdict {
	rise := p.ambientRiseK()
	v := p.held("load share of fuse", p.cornerAmps(b), figure.Larger, whileOnA(b, p.continuousA(b, 0), 0), whileOnA(b, p.makersA(b, rise), rise),
		func(c cornered) finding.Severity {
			return graver(c.decisive() > fuseRating(b) && anyCritical(p.drawsOf(b)), finding.Fault, finding.Danger)
		})
	if v.severity == 0 && b.TimeOn.Timed() {
		return p.fastestOpens(b)
	}
	return v
}

// fastestOpens is the advice that the fastest of its kind opens under the pulses.
func (p *Pass) fastestOpens(b *circuit.Branch) verdict {
	c, device := p.cornerAmps(b)(corner.AtNominal), b.Device(0)
	if c.in == nil {
		return verdict{}
	}
	share, _ := device.Share()
	most := device.WhileOnA(pulses(b, math.Inf(1)), math.Min(p.continuousA(b, 0), share*fuseRating(b)), fusing.Fastest)
	if !over(c.Nominal, most) {
		return verdict{}
	}
	return verdict{c, most, finding.Advice}
}

func (p *Pass) judgeUnderLoad(b *circuit.Branch) {
	v := p.underLoad(b)
	if v.severity == 0 {
		return
	}
	at := b.Device(0)
	where := celsius(at.AmbientC)
	if hot := b.Device(p.ambientRiseK()).AmbientC; v.by == corner.AtWorst && hot > at.AmbientC {
		where = fmt.Sprintf("%s, the worst case for a place without an ambient, where %s is assumed,", celsius(hot), where)
	}
	fin := ofFuse(v.severity, b)
	fin.What = fmt.Sprintf("%s carries %s; at %s it may carry %s continuously",
		fuseText(b), v.split(amps), where, amps(v.limit))
	switch {
	case b.TimeOn.Timed():
		fin.What = fmt.Sprintf("%s carries %s%s; at %s it may carry %s at that duty%s", fuseText(b), v.split(amps),
			timesOn(b.TimeOn), where, amps(v.limit), v.inCycles(at, pulses(b, v.decisive())))
	case p.onlyHeld(b):
		fin.What = strings.TrimSuffix(fin.What, " continuously")
	}
	v.decides(&fin, "current", figure.Larger, 1, v.limit, "A")
	if v.by == corner.AtNominal || p.agesLikely(b, v) {
		fin.Leave = false // the next rating is fitted
	}
	fin.Source, fin.Change = p.limitSource("load share of fuse", false), besideFitted(b)
	p.report(fin)
}

// besideFitted is what to do where a fuse that is there already carries too much: it stays as it
// is, since what else it protects is not known. "" = what the rule says.
func besideFitted(fuse *circuit.Branch) string {
	if !fuse.Part.Fitted {
		return ""
	}
	return "leave " + fuse.Part.Name + " as it is: feed what is added from the battery over a fuse of its own, behind a relay that the old feed works"
}

// inCycles says what pulses do to a fuse.
func (v verdict) inCycles(d fusing.Device, p fusing.Pulses) string {
	by, which := fusing.Usual, "a typical one"
	if v.severity == finding.Advice && v.by == corner.AtNominal {
		by, which = fusing.Fastest, "the fastest one"
	}
	if opens := d.Pulsed(p, by); opens.Cycle > 0 {
		return fmt.Sprintf("; %s opens in the %s cycle, after %s", which, ordinal(opens.Cycle), duration(opens.AfterS))
	}
	return "; it heats like " + amps(d.ForGoodA(p)) + " continuously"
}

// ordinal is "1st", "2nd", "11th".
func ordinal(n int) string {
	end := "th"
	if n/10%10 != 1 && n%10 >= 1 && n%10 <= 3 {
		end = []string{"st", "nd", "rd"}[n%10-1]
	}
	return fmt.Sprint(n) + end
}

// agesLikely tells whether the tolerances are likely to load a fuse past what its maker
// lets it carry: the trade fits the next rating then. What is on for a time has no other
// margin, and a filament lamp may take a quarter more than it says.
func (p *Pass) agesLikely(b *circuit.Branch, v verdict) bool {
	return over(v.Likely, p.makersA(b, 0)) && !p.onlyHeld(b) && !p.margined(b)
}
