package schematic

import (
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
	"math"
)

// wireLabel is what stands on a wire, in one line or two. On a study sheet the
// second line is what flows there.
func (l *labels) wireLabel(w *circuit.Wire, stacked bool) []string {
	first := []string{w.Number, w.Spec.Colour.Code()}
	var second []string
	if w.Spec.Size != nil {
		second = append(second, w.Spec.Size.Label)
	}
	if l.study != nil {
		return []string{wording.Present(append(first, second...), " "), l.study.wire(w)}
	}
	second = append(second, l.lengthText(w.LengthM))
	if stacked {
		return []string{wording.Present(first, " "), wording.Present(second, " ")}
	}
	return []string{wording.Present(append(first, second...), " ")}
}

// labelFace is the face and colour of a line of a wire's label.
func (l *labels) labelFace(line int) (scene.Face, scene.RGB) {
	if l.study != nil && line == 1 {
		return scene.Italic, studyBlue
	}
	return scene.Regular, scene.Ink
}

// labelW is the width of a wire's label, in mm.
func (l *labels) labelW(w *circuit.Wire, stacked bool) float64 {
	widest := 0.0
	for i, line := range l.wireLabel(w, stacked) {
		face, _ := l.labelFace(i)
		widest = max(widest, textW(line, face))
	}
	return widest
}

// lengthText is a wire length, slack included, in the design's unit; inches are rounded up, so
// that no wire is cut short.
func (l *labels) lengthText(lengthM float64) string {
	if lengthM <= 0 {
		return "length ?"
	}
	return lengths.In(l.lengths).Wire(lengthM)
}

// labelM is the room a wire's label needs along the wire.
func (l *labels) labelM(w *circuit.Wire) int { return l.labelMOf(w, l.stacked) }

// labelMOf is labelM for a label in two lines or in one.
func (l *labels) labelMOf(w *circuit.Wire, stacked bool) int {
	widest := l.labelW(w, stacked)
	if l.signs.ofWire(w) > 0 {
		widest += l.signs.wide
	}
	return inM(widest + 1.6)
}

// labelTop is the room a label needs above its wire.
func (l *labels) labelTop() float64 {
	if l.stacked {
		return (gapMM + capMM + lineMM + 0.3) / 2.5
	}
	return (gapMM + capMM + 0.3) / 2.5
}

// inletStep is the distance between two wires that come in at one terminal.
func (l *labels) inletStep() int {
	if l.stacked || len(l.signs.list) > 0 {
		return 3
	}
	return 2
}

// returnStep is the distance between two returns of one part.
func (l *labels) returnStep() int {
	return int(math.Ceil(groundDrop/symbol.M + l.labelTop()))
}

// returnRun is the length of the return wires, up to the ground's sign.
func (l *labels) returnRun(wires []*circuit.Wire) int { return l.returnRunOf(wires, l.stacked) }

// returnRunOf is returnRun for labels in two lines or in one.
func (l *labels) returnRunOf(wires []*circuit.Wire, stacked bool) (run int) {
	for _, w := range wires {
		run = max(run, l.labelMOf(w, stacked))
	}
	return run
}

// groundLeft is how far ground names and signs reach to the left of the sign's
// middle, in mm: names end flush with the sign's right edge.
func (l *labels) groundLeft(wires []*circuit.Wire) float64 {
	left := 1.3 * symbol.M
	for _, w := range wires {
		left = max(left, textW(l.groundName(w.To), scene.Regular)-symbol.M)
	}
	return left
}

// groundName is what stands at a return's sign: reference and name of the
// ground point.
func (l *labels) groundName(t *circuit.Terminal) string {
	p := t.Part
	switch p.Kind {
	case circuit.Ground:
		return scene.Ellipsis(wording.Present([]string{p.Ref, nameOf(p)}, " "), smallMM, 26, scene.Regular)
	case circuit.Battery:
		return p.Ref + " −"
	}
	return p.Ref + ":" + t.Name
}

// overhang is how far captions over an outline may reach beyond its cell: not at
// all when places are outlined, little when labels of two lines stand beside.
func (l *labels) overhang(modules int) int {
	switch {
	case l.outlined:
		return 0
	case l.stacked || l.signs.changes != nil:
		return min(modules, 1)
	}
	return modules
}

// groundDrop is how far a ground's sign and name reach below the wire, in mm.
const groundDrop = 1.75*symbol.M + 0.5 + capMM + descMM

// groundGap is the least room between a load's words and its ground's name, in
// mm.
const groundGap = 3.2

// wayDrop is by how much the sign of a change lowers what stands below a way, in
// modules. The sign of a finding fits in.
func (l *labels) wayDrop(w *way) int {
	if l.signs.changes == nil || l.signs.ofRef(w.ref) == 0 {
		return 0
	}
	return inM(l.signs.drop)
}
