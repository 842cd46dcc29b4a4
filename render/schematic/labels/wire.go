package labels

import (
	"math"
	"slices"

	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/cutting"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
	"fusewright/render/schematic/parts"
	"fusewright/render/schematic/sign"
	"fusewright/render/symbol"
)

// WireLabel is what stands on a wire, in one line or two. On a study sheet the
// second line is what flows there.
func (l *Labels) WireLabel(w *circuit.Wire, stacked bool) []string {
	first := []string{w.Number}
	if w.Spec.Size != nil {
		first = append(first, w.Spec.Size.Label)
	}
	second := []string{w.Spec.Colour.Code()}
	if l.Study != nil {
		return []string{wording.Present(append(first, second...), " "), l.Study.Wire(w)}
	}
	second = append(second, l.lengthText(w))
	for _, p := range w.Poles {
		second = append(second, p.Near.Part.Ref+":"+p.Near.Name)
	}
	if stacked {
		return []string{wording.Present(first, " "), wording.Present(second, " ")}
	}
	return []string{wording.Present(append(first, second...), " ")}
}

// LabelFace is the face and colour of a line of a wire's label.
func (l *Labels) LabelFace(line int) (scene.Face, scene.RGB) {
	if l.Study != nil && line == 1 {
		return scene.Italic, lettering.StudyBlue
	}
	return scene.Regular, scene.Ink
}

// LabelW is the width of a wire's label, in mm.
func (l *Labels) LabelW(w *circuit.Wire, stacked bool) float64 {
	widest := 0.0
	for i, line := range l.WireLabel(w, stacked) {
		face, _ := l.LabelFace(i)
		widest = max(widest, lettering.TextW(line, face))
	}
	return widest
}

// lengthText is the length to cut of a wire, as the cut list has it.
func (l *Labels) lengthText(w *circuit.Wire) string {
	if w.LengthM <= 0 {
		return "length ?"
	}
	return lengths.In(l.Lengths).Cut(cutting.LengthM(w))
}

// LabelM is the room a wire's label needs along the wire, in two lines or in one.
func (l *Labels) LabelM(w *circuit.Wire, stacked bool) int { return l.labelM(w, stacked, 0) }

// InletM is LabelM before what a wire comes in at: its length stays clear of the number
// of a relay's terminal.
func (l *Labels) InletM(w *circuit.Wire, at *circuit.Part, stacked bool) int {
	if at.Kind == circuit.Relay {
		return l.labelM(w, stacked, lettering.TextMM-labelSide)
	}
	return l.labelM(w, stacked, 0)
}

// labelSide is the room at each end of a label, in mm.
const labelSide = 0.8

func (l *Labels) labelM(w *circuit.Wire, stacked bool, more float64) int {
	widest := l.LabelW(w, stacked) + more + PolesMM(w)
	if l.Signs.OfWire(w) > 0 {
		widest += sign.Wide
	}
	return lettering.InM(widest + 2*labelSide)
}

// PoleM is the room of a connector's pole on a wire, in modules: its sign and air.
const PoleM = 1.4

// PoleGap is from where the label may begin to the first pole, in modules.
const PoleGap = 0.5

// PolesMM is the room of the poles on a wire, before its label, in mm.
func PolesMM(w *circuit.Wire) float64 {
	if len(w.Poles) == 0 {
		return 0
	}
	return (PoleM*float64(len(w.Poles)) + PoleGap) * symbol.M
}

// LabelTop is the room a label needs above its wire.
func (l *Labels) LabelTop() float64 {
	top := lettering.GapMM + lettering.CapMM + labelAir
	if l.Stacked {
		top += lettering.LineMM
	}
	return top / symbol.M
}

// InletStep is the distance between two wires that come in at one terminal.
func (l *Labels) InletStep() int {
	if l.Stacked || len(l.Signs.List) > 0 {
		return 3
	}
	return 2
}

// ReturnStep is the distance between two returns of one part.
func (l *Labels) ReturnStep() int {
	return int(math.Ceil(GroundRoom/symbol.M + l.LabelTop()))
}

// LoadRows are the rows from a load with its return to the next.
func (l *Labels) LoadRows() int { return l.ReturnStep() }

// ReturnRun is the length of the return wires, up to the ground's sign, with labels
// in two lines or in one.
func (l *Labels) ReturnRun(wires []*circuit.Wire, stacked bool) (run int) {
	for _, w := range wires {
		run = max(run, l.LabelM(w, stacked))
	}
	run = max(run, lettering.InM(l.GroundLeft(wires)+0.3)) // no name under what the wire comes from
	if l.Outlined {                                        // the outline may end before the ground, behind every label
		run += lettering.InM(l.groundSide() + symbol.M)
	}
	return run
}

// Abroad tells, where places are outlined, of returns whose grounds stand at other places
// than what they come from: the outline ends before their signs.
func (l *Labels) Abroad(wires []*circuit.Wire) bool {
	return l.Outlined && slices.ContainsFunc(wires, func(w *circuit.Wire) bool { return w.To.Part.Place != w.From.Part.Place })
}

// groundSide is the widest that a ground and its name reach to the left, in mm.
func (l *Labels) groundSide() (side float64) {
	for _, p := range l.Circuit.Parts {
		for _, w := range l.Wiring.Landed[p] {
			side = max(side, l.GroundLeft([]*circuit.Wire{w}))
			break // all land at one part
		}
	}
	return side
}

// OutlineM is from the right edge of a column of loads back to the outline of a place
// whose grounds stand elsewhere, in modules.
func (l *Labels) OutlineM() float64 { return 1 + l.groundSide()/symbol.M + 0.4 }

// GroundLeft is how far ground names and signs reach to the left of the sign's
// middle, in mm: names end flush with the sign's right edge.
func (l *Labels) GroundLeft(wires []*circuit.Wire) float64 {
	left := 1.3 * symbol.M
	for _, w := range wires {
		left = max(left, lettering.TextW(l.GroundName(w.To), scene.Regular)-symbol.M)
	}
	return left
}

// mostGroundMM is the longest that reference and name of a ground point get.
const mostGroundMM = 32

// GroundName is what stands at a return's sign: reference and name of the
// ground point.
func (l *Labels) GroundName(t *circuit.Terminal) string {
	p := t.Part
	switch p.Kind {
	case circuit.Ground:
		return scene.Ellipsis(wording.Present([]string{p.Ref, parts.NameOf(p)}, " "), lettering.SmallMM, mostGroundMM, scene.Regular)
	case circuit.Battery, circuit.Bank, circuit.Load:
		return parts.BatteryPostText(p)
	}
	return p.Ref + ":" + t.Name
}

// Overhang is how far captions over an outline may reach beyond its cell: not at
// all when places are outlined, little when labels of two lines stand beside.
func (l *Labels) Overhang(modules int) int {
	switch {
	case l.Outlined:
		return 0
	case l.Stacked:
		return min(modules, 1)
	}
	return modules
}

// GroundBase is the baseline of a ground's name under its sign, GroundDrop how far the
// name reaches below the wire, and GroundRoom the room that leaves a text height above
// the label of the next row; in mm.
const (
	GroundBase = 1.6*symbol.M + 0.5 + lettering.CapMM
	GroundDrop = GroundBase + lettering.DescMM
	GroundRoom = GroundBase + lettering.TextMM - labelAir
)

// labelAir is the room above the label of a wire, in mm.
const labelAir = 0.3

// GroundGap is the least room between a load's words and its ground's name, in
// mm.
const GroundGap = 3.2
