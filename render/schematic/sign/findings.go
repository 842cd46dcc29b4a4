// Package sign numbers what has findings, or what changed, and draws the numbered
// signs, with the bands and clouds of what changed. Measures in millimetres.
package sign

import (
	"cmp"
	"fmt"
	"slices"

	"fusewright/harness"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
	"fusewright/render/scene"
	"fusewright/render/schematic/lettering"
	"fusewright/render/symbol"
)

// Radius is the radius of a flag.
const Radius = 2.2

// Entry is an entry of the list that numbered signs stand for: the findings of
// a part or wire, the most severe first, or a change. Parts and wires with the
// same findings of one cause share an entry.
type Entry struct {
	Number   int
	Refs     []string           // parts and wires that carry the sign
	Findings []*finding.Finding // of the first of them
	first    int                // of the findings, its place in the review
	Change   *Change            // nil of findings
	AsWas    bool               // of a change: the sign stands on the earlier design
}

// Signs numbers what has findings, in the order of the review, or what changed.
// Measures in mm.
type Signs struct {
	List  []*Entry
	byRef map[string]int
	Kinds map[string]ChangeKind // of every part and wire that changed

	Changes *Changes // nil on the usual drawing
	Hidden  bool     // their room is kept, so that all stands where it does with them
	AsWas   bool     // the earlier design of a comparison

	Wide  float64 // room of a sign in a line of text
	Half  float64 // half its height
	Rise  float64 // from a line of text up to its middle
	Drop  float64 // by which a caption with a sign stands lower
	Above float64 // by which it stands higher over an outline
	Lift  float64 // by which it reaches higher there
	Atop  bool    // over an outline the sign stands above the words, not before them
	halo  float64 // room of what is drawn round a part
}

// OfFindings numbers what has findings; bare leaves all out.
func OfFindings(review *harness.Review, bare bool) *Signs {
	f := &Signs{byRef: map[string]int{}, Wide: 5.4, Half: Radius, Rise: lettering.CapMM/2 + 0.45, Drop: 1.3, Lift: 1.5, Above: 1.2}
	if bare {
		return f
	}
	refs := map[string]string{}
	for _, p := range review.Circuit.Parts {
		refs[p.Name] = p.Ref
	}
	f.List = gather(review.Findings, func(x *finding.Finding) string {
		if x.Ref == "" {
			return refs[x.Part]
		}
		return x.Ref
	})
	for n, m := range f.List {
		m.Number = n + 1
		for _, ref := range m.Refs {
			f.byRef[ref] = m.Number
		}
	}
	return f
}

// gather makes an entry of what is found on each part and wire. Those on which the
// same is found from the same causes share one, with what is said of the worst.
func gather(list []*finding.Finding, refOf func(*finding.Finding) string) []*Entry {
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
	var out []*Entry
	same := map[string]*Entry{}
	for _, ref := range refs {
		var causes []int
		for _, i := range on[ref] {
			causes = append(causes, group[i])
		}
		m := same[fmt.Sprint(causes)]
		if m == nil {
			m = &Entry{first: on[ref][0]}
			for _, i := range on[ref] {
				m.Findings = append(m.Findings, list[i])
			}
			same[fmt.Sprint(causes)] = m
			out = append(out, m)
		}
		m.Refs = append(m.Refs, ref)
	}
	slices.SortFunc(out, func(a, b *Entry) int { return cmp.Compare(a.first, b.first) })
	return out
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

// Draw draws the sign of a number about a place, unless signs are hidden.
func (f *Signs) Draw(sheet *scene.Sheet, number int, x, y float64) {
	if !f.Hidden {
		Draw(sheet, f.List[number-1], x, y)
	}
}

// DropFor is by how much a caption with a sign stands lower, in mm; 0 is no sign.
func (f *Signs) DropFor(number int) float64 {
	if number == 0 {
		return 0
	}
	return f.Drop
}

func (f *Signs) DropOf(p *circuit.Part) float64 { return f.DropFor(f.OfPart(p)) }

// Surrounded tells whether something is drawn round a part.
func (f *Signs) Surrounded(p *circuit.Part) bool {
	kind := f.Kinds[p.Ref]
	return kind != "" && kind != Judged
}

// HaloOf is the room of what is drawn round a part, in modules.
func (f *Signs) HaloOf(p *circuit.Part) float64 {
	if !f.Surrounded(p) {
		return 0
	}
	return f.halo / symbol.M
}

// LeadGap is the room between a part and the labels of its wires for what is
// drawn round it, in modules.
func (f *Signs) LeadGap(p *circuit.Part) int {
	if !f.Surrounded(p) {
		return 0
	}
	return 1
}
