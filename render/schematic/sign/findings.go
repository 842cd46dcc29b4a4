// Package sign numbers what has findings, or what changed, and draws the numbered
// signs, with the bands and clouds of what changed. Measures in millimetres.
package sign

import (
	"slices"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
)

// Radius is the radius of a flag.
const Radius = 2.2

// Entry is an entry of the list that numbered signs stand for: the findings of
// a part or wire, the most severe first, or a change. What is found on several parts
// for one cause has its sign at the worst of them; what follows from another finding has none.
type Entry struct {
	Number   int                // of the first finding, as everywhere; of changes their own
	Refs     []string           // the part or wire that carries the sign; several of a change
	Findings []*finding.Finding // the worst of each number
	Likewise []string           // other parts and wires of the first
	Follow   int                // how many further numbers follow from them
	Change   *compare.Mark      // nil of findings
}

// Signs numbers what has findings, in the order of the review. Measures in mm.
type Signs struct {
	List   []*Entry
	byRef  map[string]int
	Shapes bool // the shape tells the severity, for screens: see drawShape
	Hidden bool // their room is kept, so that all stands where it does with them
}

// Measures of a flag in a line of text and over an outline, in mm.
const (
	Wide  = 5.4                      // its room in a line
	Rise  = lettering.CapMM/2 + 0.45 // from the line up to its middle
	Drop  = 1.3                      // by which a caption with a flag stands lower
	Above = 1.2                      // by which it stands higher over an outline
	Lift  = 1.5                      // by which it reaches higher there
)

// OfFindings numbers what has findings; bare leaves all out.
func OfFindings(review *harness.Review, bare bool) *Signs {
	f := &Signs{byRef: map[string]int{}}
	if bare {
		return f
	}
	refs := map[string]string{}
	for _, p := range review.Circuit.Parts {
		refs[p.Name] = p.Ref
	}
	f.List = gather(review.Findings, review.Plan.Follows(), func(x *finding.Finding) string {
		if x.Ref == "" {
			return refs[x.Part]
		}
		return x.Ref
	})
	for _, m := range f.List {
		for _, ref := range m.Refs {
			f.byRef[ref] = m.Number
		}
	}
	return f
}

// gather makes an entry of what is found on each part and wire, in the order of the
// numbers. Findings of one number are an entry of the worst of them; follows tells which
// numbers follow from another, and are counted there.
func gather(list []*finding.Finding, follows map[int]int, refOf func(*finding.Finding) string) []*Entry {
	var out []*Entry
	at, of := map[string]*Entry{}, map[int]*Entry{}
	groups := finding.Groups(list)
	for _, g := range groups {
		worst := list[g[0]]
		if follows[worst.Number] != 0 {
			continue
		}
		ref := refOf(worst)
		m := at[ref]
		if m == nil {
			m = &Entry{Number: worst.Number, Refs: []string{ref}}
			for _, i := range g[1:] {
				m.Likewise = append(m.Likewise, refOf(list[i]))
			}
			at[ref] = m
			out = append(out, m)
		}
		m.Findings, of[worst.Number] = append(m.Findings, worst), m
	}
	for _, g := range groups {
		if m := of[follows[list[g[0]].Number]]; m != nil {
			m.Follow++
		}
	}
	return out
}

// Entry is the one of a number.
func (f *Signs) Entry(number int) *Entry {
	return f.List[slices.IndexFunc(f.List, func(m *Entry) bool { return m.Number == number })]
}

func (f *Signs) OfPart(p *circuit.Part) int { return f.OfRef(p.Ref) }
func (f *Signs) OfWire(w *circuit.Wire) int { return f.OfRef(w.Number) }

// OfRef is the number of the sign at a part or wire; 0 when it has none.
func (f *Signs) OfRef(ref string) int {
	if ref == "" {
		return 0
	}
	return f.byRef[ref]
}

// DropOf is DropFor of a part.
func (f *Signs) DropOf(p *circuit.Part) float64 { return DropFor(f.OfPart(p)) }

// Draw draws the sign of a number about a place, unless signs are hidden.
func (f *Signs) Draw(sheet *scene.Sheet, number int, x, y float64) {
	switch {
	case f.Hidden:
	case f.Shapes:
		m := f.Entry(number)
		drawShape(sheet, m, m.Findings[0], x, y)
	default:
		Draw(sheet, f.Entry(number), x, y)
	}
}

// DropFor is by how much a caption with a flag stands lower, in mm; 0 is no flag.
func DropFor(number int) float64 {
	if number == 0 {
		return 0
	}
	return Drop
}
