// Package schematic draws a circuit as sheets of standard symbols: fed from the
// left, loads at the right, each return ending in the sign of its ground point.
// It lays out and draws; it knows no physics and judges nothing.
//
// The work goes one way, a folder a step: parts and solved say what there is and
// what flows; lettering, sign and labels what is written at it; cell measures
// each thing, arrange places the cells on pages with the tracks of route, crossref
// numbers the sheets, legend and column set the lists beside the circuit, and
// paint draws it all as a scene.
package schematic

import (
	"cmp"
	"fmt"

	"fusewright/harness"
	"fusewright/harness/review/compare"
	"fusewright/render/frame"
	"fusewright/render/scene"
	"fusewright/render/schematic/arrange"
	"fusewright/render/schematic/crossref"
	"fusewright/render/schematic/labels"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/sign"
	"fusewright/render/schematic/solved"
	"fusewright/render/symbol"
)

// Options choose how the sheets look. The zero value is the usual drawing.
type Options struct {
	// Size is "A4", "A3", "Letter" or "Tabloid"; "" takes the design's, or A4.
	Size string
	// NoFindings leaves out flags and the list of findings, for the bench.
	NoFindings bool
	// Symbols is the family of symbols; nil takes the design's, or IEC 60617.
	Symbols *symbol.Set
	// Relays is "assembled" or "detached"; "" takes the design's, or assembled.
	Relays string
	// Situation names the situation whose solved values are written into the
	// drawing, a study sheet; "" leaves them out. A study has no findings on it.
	Situation string
}

// Draw makes the sheets of a reviewed design in order. Findings may be missing;
// the circuit must be there.
func Draw(review *harness.Review, opt Options) ([]*scene.Sheet, error) {
	d, err := Lay(review, opt)
	if err != nil {
		return nil, err
	}
	return d.Paint(), nil
}

// Lay lays the sheets out that Draw makes, for those who paint more than these: the
// legend, or the same places solved.
func Lay(review *harness.Review, opt Options) (*paint.Drawing, error) {
	if review == nil || review.Circuit == nil {
		return nil, fmt.Errorf("schematic: no circuit to draw")
	}
	return plan(review, opt)
}

// Solve turns a usual drawing into that with the solved values of a situation, at the same
// places or, where they have no room for the values, laid out anew. What was painted stays.
func Solve(d *paint.Drawing, review *harness.Review, situation string) (*paint.Drawing, error) {
	study, err := d.Studied(review, situation)
	if err != nil {
		return nil, err
	}
	if !d.Dress(study) {
		return laid(review, study, nil, d.Paper)
	}
	d.Lists.Again()
	return d, nil
}

// Larger gives the paper on which a design takes fewer sheets than it does now, A3 for A4
// and Tabloid for Letter, and how many; "" when it saves none.
func Larger(review *harness.Review, opt Options, now int) (size string, sheets int, err error) {
	if now < 2 {
		return "", now, nil
	}
	paper, err := frame.PaperOf(cmp.Or(opt.Size, review.Design.Sheet.Size))
	if opt.Size = map[string]string{"A4": "A3", "Letter": "Tabloid"}[paper.Name]; opt.Size == "" {
		return "", now, err
	}
	d, err := plan(review, opt)
	if err != nil || d.Count() >= now {
		return "", now, err
	}
	return opt.Size, d.Count(), nil
}

// plan lays all sheets out without drawing them. The same places serve with findings,
// without them and, where that costs no sheet, with the values of a situation.
func plan(review *harness.Review, opt Options) (*paint.Drawing, error) {
	l := labels.New(review.Circuit, opt.Symbols, opt.Relays, sign.OfFindings(review, false))
	paper, err := frame.PaperOf(cmp.Or(opt.Size, l.Design.Sheet.Size))
	if err != nil {
		return nil, fmt.Errorf("schematic: %w", err)
	}
	heaviest, err := l.Studied(review, solved.HeaviestSituation(review))
	if err != nil {
		return nil, err
	}
	d, err := laid(review, l, heaviest, paper)
	switch {
	case err != nil:
		return nil, err
	case opt.Situation != "":
		return Solve(d, review, opt.Situation)
	case opt.NoFindings:
		l.Signs.Hidden = true
		d.Lists.Again()
	}
	return d, nil
}

// laid lays sheets out in one way of drawing, with room for another.
func laid(review *harness.Review, l, twin *labels.Labels, paper frame.Paper) (*paint.Drawing, error) {
	if late := labels.LateIn(l.Circuit); len(late) > 0 && l.Left == nil {
		return added(review, l, twin, paper, late)
	}
	a, err := arrange.Circuit(l, paper, twin)
	if err == nil && l.Slots == labels.WholeSlots && a.HasSlots() {
		a, err = fewest(a, l, twin, paper)
	}
	if err != nil {
		return nil, err
	}
	d, err := composed(a, review)
	if err != nil {
		return nil, err
	}
	if a.Twin != nil && len(d.Lists.Extras) > 0 { // its room would cost a sheet
		return laid(review, l, nil, paper)
	}
	return d, nil
}

// added lays out what the design's numbers have, as it was laid out before, and then adds
// the rest: of the ways to do so, and all laid out anew, the one that moves least.
func added(review *harness.Review, l, twin *labels.Labels, paper frame.Paper, late map[string]bool) (*paint.Drawing, error) {
	before, err := leaving(review, l, twin, paper, late)
	if err != nil {
		return nil, err
	}
	best, err := leaving(review, l, twin, paper, map[string]bool{})
	if err != nil {
		return nil, err
	}
	for _, with := range []*labels.Labels{twin, nil} { // the room of a twin is worth less than places
		own := *l
		a, err := arrange.Add(before.Arrangement, &own, with)
		if err != nil {
			return nil, err
		}
		if a == nil {
			continue
		}
		d := paint.New(crossref.Of(a), review)
		if d.Moved(before.Arrangement) < best.Moved(before.Arrangement) {
			best = d
		}
	}
	return best, nil
}

// leaving lays sheets out without some parts and fuses.
func leaving(review *harness.Review, l, twin *labels.Labels, paper frame.Paper, left map[string]bool) (*paint.Drawing, error) {
	own := *l
	own.Left = left
	if twin != nil {
		with := *twin
		with.Left, twin = left, &with
	}
	return laid(review, &own, twin, paper)
}

// composed makes the lists of an arrangement: compacted, unless that takes sheets for lists.
func composed(a *arrange.Arrangement, review *harness.Review) (*paint.Drawing, error) {
	undo, err := a.Compact()
	if err != nil {
		return nil, err
	}
	d := paint.New(crossref.Of(a), review)
	if undo == nil || len(d.Lists.Extras)+len(d.Lists.Absent) == 0 {
		return d, nil
	}
	compact := d.Count() + len(d.Lists.Legend())
	if err := undo(); err != nil {
		return nil, err
	}
	if d = paint.New(crossref.Of(a), review); compact >= d.Count()+len(d.Lists.Legend()) {
		return d, nil
	}
	if err := undo(); err != nil { // without the air of the lists
		return nil, err
	}
	if _, err := a.Compact(); err != nil {
		return nil, err
	}
	return paint.New(crossref.Of(a), review), nil
}

// fewest is an arrangement with slots where they cost no sheet and leave none half empty:
// whole ones, else lean ones.
func fewest(whole *arrange.Arrangement, l, twin *labels.Labels, paper frame.Paper) (*arrange.Arrangement, error) {
	if len(whole.Pages) == 1 && !whole.HalfEmpty() {
		return whole, nil
	}
	with := func(slots labels.Slots) (*arrange.Arrangement, error) {
		own := *l
		own.Slots = slots
		return arrange.Circuit(&own, paper, twin)
	}
	none, err := with(labels.NoSlots)
	if err != nil {
		return nil, err
	}
	fits := func(a *arrange.Arrangement) bool { return len(a.Pages) <= len(none.Pages) && !a.HalfEmpty() }
	if fits(whole) {
		return whole, nil
	}
	if lean, err := with(labels.LeanSlots); err != nil || fits(lean) {
		return lean, err
	}
	return none, nil
}

// DrawChanges makes the sheets of the new design as Draw does, every part at the same place,
// with what changed marked in place of findings. was is how the title block calls the earlier
// design. A load that is gone is drawn where its slot is kept; what else is gone stands in
// the list of changes.
func DrawChanges(c *compare.Comparison, was string, opt Options) ([]*scene.Sheet, error) {
	d, err := planChanges(c, was, opt)
	if err != nil {
		return nil, err
	}
	return d.Paint(), nil
}

func planChanges(c *compare.Comparison, was string, opt Options) (*paint.Drawing, error) {
	opt.NoFindings, opt.Situation = true, ""
	d, err := Lay(c.New, opt)
	if err != nil {
		return nil, err
	}
	earlier := labels.New(c.Old.Circuit, d.Set, opt.Relays, sign.OfFindings(c.Old, true))
	earlier.Outlined, earlier.Lengths = d.Outlined, d.Lengths
	d.Labels.Marks = sign.MarksOf(c, was, d.Fill(earlier))
	d.Note()
	d.Lists.Again()
	return d, nil
}
