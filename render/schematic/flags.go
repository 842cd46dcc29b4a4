package schematic

import (
	"strconv"

	"fusewright/harness"
	"fusewright/harness/circuit"
	"fusewright/harness/finding"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// Flags mark parts and wires with findings: flagMM is the room of one in a line
// of text, flagR its radius.
const (
	flagMM = 5.4
	flagR  = 2.2
)

// marked is a part or wire with its findings, the most severe first.
type marked struct {
	number   int
	ref      string
	findings []*finding.Finding
}

// flags numbers what has findings, in the order of the review.
type flags struct {
	list  []*marked
	byRef map[string]int
}

func newFlags(review *harness.Review, opt Options) *flags {
	f := &flags{byRef: map[string]int{}}
	if opt.NoFindings {
		return f
	}
	refs := map[string]string{}
	for _, p := range review.Circuit.Parts {
		refs[p.Name] = p.Ref
	}
	for _, x := range review.Findings {
		ref := x.Ref
		if ref == "" {
			ref = refs[x.Part]
		}
		n := f.byRef[ref]
		if n == 0 {
			n = len(f.list) + 1
			f.byRef[ref] = n
			f.list = append(f.list, &marked{number: n, ref: ref})
		}
		f.list[n-1].findings = append(f.list[n-1].findings, x)
	}
	return f
}

func (f *flags) ofPart(p *circuit.Part) int { return f.ofRef(p.Ref) }
func (f *flags) ofWire(w *circuit.Wire) int { return f.ofRef(w.Number) }

func (f *flags) ofRef(ref string) int {
	if ref == "" {
		return 0
	}
	return f.byRef[ref]
}

// The colours of flags; the shape alone tells the severity too.
var (
	dangerRed   = scene.RGB{R: 170, G: 20, B: 20}
	faultOrange = scene.RGB{R: 176, G: 84, B: 0}
	adviceBlue  = scene.RGB{R: 20, G: 70, B: 160}
	white       = scene.RGB{R: 255, G: 255, B: 255}
)

// flag draws a numbered flag: danger filled, fault a thick ring, advice a thin
// ring, accepted a dashed ring.
func (a *painter) flag(number int, x, y float64) { drawFlag(a.sheet, a.flags.list[number-1], x, y) }

func drawFlag(sheet *scene.Sheet, m *marked, x, y float64) {
	worst := m.findings[0]
	ring, fill, ink := scene.Pen(symbol.ThinMM), scene.Paint(white), scene.Ink
	switch {
	case worst.Accepted != "":
		ring = scene.Pen(0.3).Dashed(0.9, 0.6)
	case worst.Severity == finding.Danger:
		ring, fill, ink = scene.Pen(symbol.LineMM).In(dangerRed), scene.Paint(dangerRed), white
	case worst.Severity == finding.Fault:
		ring, ink = scene.Pen(0.7).In(faultOrange), faultOrange
	default:
		ring, ink = scene.Pen(0.3).In(adviceBlue), adviceBlue
	}
	radius := flagR
	if m.number > 99 {
		radius = flagR + 0.4
	}
	sheet.Begin(scene.Group{ID: sheet.UniqueID("flag-" + strconv.Itoa(m.number)), Class: "finding",
		Title: "finding " + strconv.Itoa(m.number) + ": " + worst.Rule, Desc: worst.What})
	sheet.Circle(scene.Point{X: x, Y: y}, radius, &ring, fill)
	sheet.TextAt(scene.Point{X: x, Y: y + capMM/2}, strconv.Itoa(m.number),
		scene.TextStyle{SizeMM: smallMM, Face: scene.Bold, Align: scene.Middle, Colour: ink})
	sheet.End()
}

// severityWord is the word for the worst finding of a mark.
func (m *marked) severityWord() string {
	if m.findings[0].Accepted != "" {
		return "accepted"
	}
	return m.findings[0].Severity.String()
}
