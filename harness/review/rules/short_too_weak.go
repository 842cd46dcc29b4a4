package rules

import (
	"fmt"
	"math"
	"slices"

	"fusewright/harness/design"
	"fusewright/harness/design/figure"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/fault"
)

var shortTooWeak = &Rule{
	Name:  "short-too-weak",
	Title: "a short may be too weak to open its fuse",
	Says:  "a short may not open its fuse",
	Doc: "A bolted short at every place of every wire and inside every load and coil, on a nearly empty " +
		"battery with hot wires and aged contacts and through the longest return. When its current is " +
		"below the least at which the fuse's published band says that it opens, it may flow indefinitely. " +
		"One that a resistor with a thermal fuse limits is cleared by that; one that a resistor is rated to bear, and keeps below what the wire may carry, harms nothing. One finding per wire or part, for its weakest short, those of one fuse printed together. Wires without a fuse are unfused-conductor.",
	Formula:  "I = Voc / (R battery + R feed hot + R contacts aged + R return) ≥ the current of the band's first upper limit",
	Limits:   "the fuse type's time band",
	Why:      "the fault is not cleared: it burns where it is and drains the battery",
	Change:   "shorten or thicken the feed, fix the return's resistance, or fit a smaller fuse",
	Severity: "fault; danger when the wire does not withstand the current for any time",
	Source: "46 CFR 183.380(d): a device that protects the conductor (one source); opening bands: makers' " +
		"data sheets (one source); fault current by Ohm's law",
	Mend: MendShort,
	Bad: `
grounds:
  frame: {kind: frame stud, at: battery tray, limit: 60 A, frame resistance: 1.8 Ω}
loads:
  tail lamp: {power: 1 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame}
`,
	Mended: []string{"resistance: 1.8 Ω", "resistance: 20 mΩ"},
	Run: func(p *Pass) {
		weakest := map[any]*fault.Short{} // by wire, or by part for a short inside it
		var order []any
		for _, sh := range p.shorts() {
			r := &sh.Results[fault.Weak]
			if !sh.Fed || !r.TooWeak() || p.heldDown(sh) {
				continue
			}
			var of any = sh.Wire
			if sh.Wire == nil {
				of = sh.Part
			}
			was := weakest[of]
			if was == nil {
				order = append(order, of)
			}
			if was == nil || p.saysMore(r, &was.Results[fault.Weak]) {
				weakest[of] = sh
			}
		}
		for _, of := range order {
			p.reportWeak(weakest[of])
		}
	},
}

// heldDown tells of a short that resistors limit on every way to it, which bear it or the thermal fuses of which
// open, and that the wires withstand until then.
func (p *Pass) heldDown(sh *fault.Short) bool {
	at, b, bearsA := sh.Part, sh.Branch, math.MaxFloat64
	if sh.Wire != nil {
		at, b, bearsA = sh.Wire.To.Part, sh.Wire.Branch, p.allowed(sh.Wire).AllowedA
	}
	in := at.Inlet()
	if w := sh.Results[fault.Weak].Worst; in == nil || len(p.d.Resistors) == 0 || w != nil && !w.Survives() {
		return false
	}
	if p.heldDownA(b) <= bearsA {
		return true
	}
	limited := func(paths []circuit.Path) bool {
		return len(paths) > 0 && !slices.ContainsFunc(paths, func(path circuit.Path) bool {
			return !slices.ContainsFunc(path.Branches, func(b *circuit.Branch) bool {
				return b.Dropper() && b.Part.Source.(*design.DroppingResistor).Cutout
			})
		})
	}
	feeds, _ := p.c.FeedPaths(in.Node)
	if load := loadBranch(at); load != nil {
		returns, _ := p.c.ReturnPaths(load.B)
		return limited(feeds) || limited(returns)
	}
	return limited(feeds)
}

// saysMore tells whether one short says more of a wire or part than another: one
// that no other rule speaks for, and of such the weaker.
func (p *Pass) saysMore(r, was *fault.Result) bool {
	aside := func(r *fault.Result) bool { return r.Worst != nil && p.overFused(r.Worst.Wire) }
	if aside(r) != aside(was) {
		return aside(was)
	}
	return r.CurrentA < was.CurrentA
}

func (p *Pass) reportWeak(sh *fault.Short) {
	r := &sh.Results[fault.Weak]
	b := r.Device
	var fin finding.Finding
	if sh.Wire != nil {
		fin = ofWire(finding.Fault, sh.Wire)
	} else {
		fin = ofPart(finding.Fault, sh.Part)
	}
	fin.Cause, fin.Pos = fusePlace(b), b.Fuse.Pos
	fin.What = fmt.Sprintf("a short %s draws only %s, and %s may never open", where(sh), amps(r.CurrentA), fuseText(b))
	if r.Worst != nil && !r.Worst.Survives() {
		fin.Severity = finding.Danger
		fin.What += fmt.Sprintf("; %s withstands that for %s", r.Worst.Wire.Text(), duration(r.Worst.DamageS))
	}
	fin.Numbers = []finding.Number{{Name: "least prospective current", Value: r.CurrentA, Unit: "A"},
		{Name: "greatest", Value: sh.Results[fault.Strong].CurrentA, Unit: "A"}}
	fin.Figure = figure.New(r.CurrentA, fuseRating(b), "A", figure.Smaller)
	p.report(fin)
	if r.Worst != nil {
		p.standsAside(r.Worst.Wire, fuseOverWire, returnBelowFuse)
	}
}
