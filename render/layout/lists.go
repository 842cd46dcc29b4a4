package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/scene"
)

// runTable lists the runs of a section.
func runTable(u lengths.Unit, s *formboard.Section) *grid {
	g := &grid{title: "Runs", columns: []gridColumn{
		{head: "run", face: scene.Bold},
		{head: "from – to"},
		{head: u.Headed("length"), align: scene.Right},
		{head: u.Headed("Ø"), align: scene.Right},
		{head: "wires", align: scene.Right},
		{head: "numbers"},
		{head: "cover"},
		{head: "clamps, " + u.Words() + " from the first place"},
		{head: u.Headed("bend radius") + ", free / held"},
		{head: "remarks"},
	}}
	for _, r := range runsOf(s) {
		run := r.Bundle.Run
		bend := "not known"
		if r.Thick > 0 {
			bend = "≥ " + u.AtLeast(r.BendMm) + " / " + u.AtLeast(r.BendHeldMm)
		}
		length := u.Dim(r.Length)
		if text := run.LengthM.Text; text != "" && !strings.HasSuffix(text, u.Small()) {
			length += " (" + text + ")"
		}
		g.rows = append(g.rows, []string{number(r), run.From.Name + " – " + run.To.Name, length,
			diameterText(u, r.OuterMm), fmt.Sprint(len(r.Bundle.Wires)), wireNumbers(r), coverText(r),
			clampText(u, r), bend, remarks(r)})
	}
	return g
}

// runsOf are the runs of a section by number.
func runsOf(s *formboard.Section) []*formboard.Run {
	var out []*formboard.Run
	for _, l := range s.Limbs {
		out = append(out, l.Run)
	}
	slices.SortFunc(out, func(a, b *formboard.Run) int { return cmp.Compare(a.Number, b.Number) })
	return out
}

// notes say what the drawing rests on.
func (d *drawing) notes(p *picture) *grid {
	b, s, u := d.board, p.section, d.unit
	g := &grid{title: "Notes", columns: []gridColumn{{}}}
	add := func(format string, args ...any) { g.rows = append(g.rows, []string{fmt.Sprintf(format, args...)}) }
	add("Dimensions in %s, from nail to nail. Bands are drawn wider than the bundles; the number beside them is the diameter. "+
		"Clamps for which there is no room at this scale are in the table only.", u.Words())
	add("Clamp at least every %s %s (%s), first about %s %[2]s from a nail (from memory). Where clamps are more than "+
		"%[5]s %[2]s apart, tie between them (%[6]s).", atMost(u, b.Support.Mm), u.Small(), b.Support.Source, u.Near(formboard.FirstSupportMm),
		atMost(u, formboard.TieMm), formboard.TieSource)
	add("Minimum bend radius %d times the thickest wire, %d times where held: %s.", formboard.BendTimes,
		formboard.BendHeldTimes, formboard.BendSource)
	if p.lost > 0 {
		add("%s found no room in the picture; the tables have all of them.", wording.Count(p.lost, "name or length", "names or lengths"))
	}
	if !s.Even {
		add("This section is too crowded for even angles; its runs are fanned out.")
	}
	if s.Number > 1 {
		return g
	}
	if tooLong(d.review, b) {
		add("The loom would take more than %d pages at full size; they are not made.", mostPages)
	}
	for _, r := range b.Unused {
		add("Run %s (%s) holds no wires and is left out.", number(r), r.Bundle.Run.Name)
	}
	for _, n := range d.review.Design.Notes {
		add("%s", n.Value)
	}
	return g
}

// endsOf are the wire ends at each place of a board.
func endsOf(b *formboard.Board) map[*design.Place][]formboard.End {
	ends := map[*design.Place][]formboard.End{}
	for _, e := range b.Places {
		ends[e.Place] = e.Ends
	}
	return ends
}
