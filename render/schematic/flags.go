package schematic

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// flagR is the radius of a flag.
const flagR = 2.2

// marked is an entry of the list that numbered signs stand for: the findings of
// a part or wire, the most severe first, or a change. Parts and wires with the
// same findings of one cause share an entry.
type marked struct {
	number   int
	refs     []string           // parts and wires that carry the sign
	findings []*finding.Finding // of the first of them
	first    int                // of the findings, its place in the review
	change   *Change            // nil of findings
	asWas    bool               // of a change: the sign stands on the earlier design
}

// flags numbers what has findings, in the order of the review, or what changed.
// Measures in mm.
type flags struct {
	list  []*marked
	byRef map[string]int
	kinds map[string]ChangeKind // of every part and wire that changed

	changes *Changes // nil on the usual drawing
	asWas   bool     // the earlier design of a comparison

	wide  float64 // room of a sign in a line of text
	half  float64 // half its height
	rise  float64 // from a line of text up to its middle
	drop  float64 // by which a caption with a sign stands lower
	above float64 // by which it stands higher over an outline
	lift  float64 // by which it reaches higher there
	atop  bool    // over an outline the sign stands above the words, not before them
	halo  float64 // room of what is drawn round a part
}

// findingFlags numbers what has findings; bare leaves all out.
func findingFlags(review *harness.Review, bare bool) *flags {
	f := &flags{byRef: map[string]int{}, wide: 5.4, half: flagR, rise: capMM/2 + 0.45, drop: 1.3, lift: 1.5, above: 1.2}
	if bare {
		return f
	}
	refs := map[string]string{}
	for _, p := range review.Circuit.Parts {
		refs[p.Name] = p.Ref
	}
	f.list = gather(review.Findings, func(x *finding.Finding) string {
		if x.Ref == "" {
			return refs[x.Part]
		}
		return x.Ref
	})
	for n, m := range f.list {
		m.number = n + 1
		for _, ref := range m.refs {
			f.byRef[ref] = m.number
		}
	}
	return f
}

// gather makes an entry of what is found on each part and wire. Those on which the
// same is found from the same causes share one, with what is said of the worst.
func gather(list []*finding.Finding, refOf func(*finding.Finding) string) []*marked {
	group, rank := make([]int, len(list)), make([]int, len(list)) // and the place in it
	for n, g := range finding.Groups(list) {
		for k, i := range g {
			group[i], rank[i] = n, k
		}
	}
	var refs []string
	on := map[string][]int{}
	for i, x := range list {
		ref := refOf(x)
		if on[ref] == nil {
			refs = append(refs, ref)
		}
		on[ref] = append(on[ref], i)
	}
	// Parts of one entry, the worst first.
	slices.SortStableFunc(refs, func(a, b string) int { return cmp.Compare(rank[on[a][0]], rank[on[b][0]]) })
	var out []*marked
	same := map[string]*marked{}
	for _, ref := range refs {
		var causes []int
		for _, i := range on[ref] {
			causes = append(causes, group[i])
		}
		m := same[fmt.Sprint(causes)]
		if m == nil {
			m = &marked{first: on[ref][0]}
			for _, i := range on[ref] {
				m.findings = append(m.findings, list[i])
			}
			same[fmt.Sprint(causes)] = m
			out = append(out, m)
		}
		m.refs = append(m.refs, ref)
	}
	slices.SortFunc(out, func(a, b *marked) int { return cmp.Compare(a.first, b.first) })
	return out
}

func (f *flags) ofPart(p *circuit.Part) int { return f.ofRef(p.Ref) }
func (f *flags) ofWire(w *circuit.Wire) int { return f.ofRef(w.Number) }

func (f *flags) ofRef(ref string) int {
	if ref == "" {
		return 0
	}
	return f.byRef[ref]
}

// dropFor is by how much a caption with a sign stands lower, in mm; 0 is no sign.
func (f *flags) dropFor(number int) float64 {
	if number == 0 {
		return 0
	}
	return f.drop
}

func (f *flags) dropOf(p *circuit.Part) float64 { return f.dropFor(f.ofPart(p)) }

// surrounded tells whether something is drawn round a part.
func (f *flags) surrounded(p *circuit.Part) bool {
	kind := f.kinds[p.Ref]
	return kind != "" && kind != Judged
}

// haloOf is the room of what is drawn round a part, in modules.
func (f *flags) haloOf(p *circuit.Part) float64 {
	if !f.surrounded(p) {
		return 0
	}
	return f.halo / symbol.M
}

// leadGap is the room between a part and the labels of its wires for what is
// drawn round it, in modules.
func (f *flags) leadGap(p *circuit.Part) int {
	if !f.surrounded(p) {
		return 0
	}
	return 1
}

// The colours of flags; the shape alone tells the severity too.
var (
	dangerRed   = scene.RGB{R: 170, G: 20, B: 20}
	faultOrange = scene.RGB{R: 176, G: 84, B: 0}
	adviceBlue  = scene.RGB{R: 20, G: 70, B: 160}
	white       = scene.RGB{R: 255, G: 255, B: 255}
)

func drawFlag(sheet *scene.Sheet, m *marked, x, y float64) {
	if m.change != nil {
		drawDelta(sheet, m, x, y)
		return
	}
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
