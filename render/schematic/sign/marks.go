package sign

import (
	"slices"

	"fusewright/harness/network/circuit"
	"fusewright/harness/review/compare"
	"fusewright/render/scene"
)

// Marks draw what changed on a finished sheet: bands under everything, and a numbered
// sign where the sheet has room for it, so that all stands where it does without them.
// The zero value and nil draw nothing.
type Marks struct {
	List    []*Entry
	Was     string // how the title block calls the earlier design
	Earlier *circuit.Circuit
	kinds   map[string]compare.What // of every part and wire that changed
	byRef   map[string]*Entry       // of those that carry a sign
	was     map[string]bool         // labels that are new ones

	under   *scene.Sheet // bands of the sheet being drawn
	from    int          // where they go among its items
	anchors []anchor
}

// anchor is what a sign belongs to.
type anchor struct {
	of  *Entry
	pts []scene.Point
}

// MarksOf are the marks of a comparison; was is how the title block calls the earlier design.
// kept are the parts and wires that are gone and still drawn, where their room is kept.
func MarksOf(c *compare.Comparison, was string, kept map[string]bool) *Marks {
	f := &Marks{Was: was, Earlier: c.Old.Circuit, kinds: map[string]compare.What{}, byRef: map[string]*Entry{}, was: map[string]bool{}}
	for i, x := range c.Marks() {
		m := &Entry{Number: i + 1, Refs: x.New, Change: x}
		f.List = append(f.List, m)
		if x.What == compare.Removed {
			m.Refs = slices.DeleteFunc(slices.Clone(x.Old), func(ref string) bool { return !kept[ref] })
		}
		for _, ref := range m.Refs {
			if x.What == compare.Relabelled {
				f.was[ref] = true
			} else {
				f.kinds[ref] = x.What
			}
		}
		if len(m.Refs) > 0 && x.What != compare.Relabelled {
			f.byRef[m.Refs[0]] = m
		}
	}
	return f
}

// Begin starts a sheet: what was drawn on it lies under the bands, what comes lies over them.
func (f *Marks) Begin(sheet *scene.Sheet) {
	if f != nil {
		f.under, f.from, f.anchors = scene.NewSheet(sheet.WidthMM, sheet.HeightMM, ""), len(sheet.Items), nil
	}
}

// Line marks a wire or way along its line.
func (f *Marks) Line(ref string, pts ...scene.Point) {
	if f == nil || ref == "" {
		return
	}
	Band(f.under, f.kinds[ref], ref, pts)
	f.anchor(ref, pts...)
}

// anchor notes where a sign belongs.
func (f *Marks) anchor(ref string, pts ...scene.Point) {
	if m := f.byRef[ref]; m != nil {
		f.anchors = append(f.anchors, anchor{m, pts})
	}
}

// Box marks a part round its box.
func (f *Marks) Box(ref string, r scene.Rect) {
	if f == nil {
		return
	}
	r = r.Grow(0.2)
	pts := []scene.Point{{X: r.X, Y: r.Y}, {X: r.Right(), Y: r.Y}, {X: r.Right(), Y: r.Bottom()}, {X: r.X, Y: r.Bottom()}, {X: r.X, Y: r.Y}}
	if f.kinds[ref] != compare.Removed {
		f.Line(ref, pts...)
		return
	}
	CrossOut(f.under, ref, r)
	f.anchor(ref, pts...)
}

// Label marks a label that is another one than before, behind its words.
func (f *Marks) Label(ref string, r scene.Rect) {
	if f == nil || !f.was[ref] {
		return
	}
	f.under.Begin(scene.Group{ID: f.under.UniqueID("label-was-" + ref), Class: "band", Title: ref + " " + string(compare.Relabelled)})
	f.under.RoundRect(r.Grow(0.4), 0.8, nil, scene.Paint(bandTints[compare.Changed]))
	f.under.End()
}

// End puts the bands under what was drawn since Begin, and signs within some areas, where
// they find room near what they belong to.
func (f *Marks) End(sheet *scene.Sheet, areas ...scene.Rect) {
	if f == nil {
		return
	}
	sheet.Under(f.from, f.under)
	room := spaceOn(sheet, sheet.Items[f.from:], areas)
	for _, a := range f.anchors {
		spot, from, ok := room.nearest(a.pts)
		if !ok { // the band and the list tell it alone
			continue
		}
		if to := edge(spot, from); away(to, from) > leaderMin {
			sheet.Begin(scene.Group{ID: sheet.UniqueID("leader-" + a.of.Refs[0]), Class: "leader"})
			sheet.Line(to, from, scene.Pen(leaderMM).In(changeColours[a.of.Change.What]))
			sheet.End()
		}
		DrawChange(sheet, a.of, spot.Centre().X, spot.Centre().Y)
		room.signs = append(room.signs, spot.Grow(signAir))
	}
}
