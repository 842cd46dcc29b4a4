package layout

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/scene"
)

// runTable lists the runs of a section.
func runTable(u lengths.Unit, s *formboard.Section) *grid {
	g := &grid{title: "Runs", columns: []gridColumn{
		{head: "run", wide: 9, face: scene.Bold},
		{head: "from – to", wide: 40},
		{head: u.Headed("length"), wide: 24, align: scene.Right},
		{head: u.Headed("Ø"), wide: 12, align: scene.Right},
		{head: "wires", wide: 12, align: scene.Right},
		{head: "numbers", wide: 52},
		{head: "cover", wide: 28},
		{head: "clamps, " + u.Words() + " from the first place", wide: 34},
		{head: u.Headed("bend radius") + ", free / held", wide: 24},
		{head: "remarks", wide: 44},
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
			diameterText(u, r.OuterMm), fmt.Sprint(len(r.Bundle.Wires)), wireNumbers(r.Bundle.Wires), coverText(r),
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
	g := &grid{title: "Notes", columns: []gridColumn{{wide: 1}}}
	add := func(format string, args ...any) { g.rows = append(g.rows, []string{fmt.Sprintf(format, args...)}) }
	add("Dimensions in %s, from nail to nail. Bands are drawn wider than the bundles; the number beside them is the diameter. "+
		"Clamps that the scale leaves no room for are in the table only.", u.Words())
	add("Clamps at most %s %s apart: %s; the first about %s %[2]s from a nail, from memory. Where clamps stand more than "+
		"%[5]s %[2]s apart, ties between: %[6]s.", u.Dim(b.Support.Mm), u.Small(), b.Support.Source, u.Near(formboard.FirstSupportMm),
		u.Near(formboard.TieMm), formboard.TieSource)
	add("Least bend radius %d times the thickest wire, %d times where held: %s.", formboard.BendTimes,
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
	if tooLong(b) {
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

// endTables list the wire ends at the places of a section: those that come out
// of its runs, and in the first section of a place those of wires within it.
func (d *drawing) endTables(s *formboard.Section) []*grid {
	here := map[*formboard.Run]bool{}
	for _, l := range s.Limbs {
		here[l.Run] = true
	}
	var grids []*grid
	done := map[*design.Place]bool{}
	for _, spot := range s.Spots {
		if done[spot.Place] {
			continue
		}
		done[spot.Place] = true
		var ends []formboard.End
		for _, e := range d.ends[spot.Place] {
			if here[e.Via] || e.Via == nil && d.sectionOf(spot.Place) == s {
				ends = append(ends, e)
			}
		}
		grids = append(grids, endTable(d.unit, spot.Place.Name, ends))
	}
	return grids
}

// endsOf are the wire ends at each place of a board.
func endsOf(b *formboard.Board) map[*design.Place][]formboard.End {
	ends := map[*design.Place][]formboard.End{}
	for _, e := range b.Places {
		ends[e.Place] = e.Ends
	}
	return ends
}

// sectionOf is the first section with a place in it; nil when none has it.
func (d *drawing) sectionOf(p *design.Place) *formboard.Section {
	for _, s := range d.board.Sections {
		if slices.ContainsFunc(s.Spots, func(spot *formboard.Spot) bool { return spot.Place == p }) {
			return s
		}
	}
	return nil
}

// endTable lists wire ends.
func endTable(u lengths.Unit, place string, ends []formboard.End) *grid {
	g := &grid{title: fmt.Sprintf("Ends at %s: %d", place, len(ends)), columns: []gridColumn{
		{head: "wire", wide: 11, face: scene.Bold},
		{head: "colour, size", wide: 24},
		{head: "part and terminal", wide: 33},
		{head: "crimp part, strip", wide: 52},
		{head: "run", wide: 8},
		{head: u.Headed("stands out"), wide: 14, align: scene.Right},
	}}
	for _, e := range ends {
		via := "–"
		if e.Via != nil {
			via = number(e.Via)
		}
		free := u.Near(e.FreeMm)
		if e.Via == nil {
			free = "all " + free
		}
		if e.Short {
			free = "too short"
		}
		g.rows = append(g.rows, []string{e.Wire.Number, e.Wire.Look(), e.Terminal.Address(), crimpText(u, e), via, free})
	}
	return g
}

// crimpText is the crimp part of an end with its strip length and the family of
// the plug that it goes into.
func crimpText(u lengths.Unit, e formboard.End) string {
	crimp := e.Wire.Crimp(e.AtFrom)
	switch {
	case crimp == nil && e.Terminal.Jointed:
		return "none fits " + circuit.JointEnd
	case crimp == nil && e.Terminal.Kind == "":
		return "not known"
	case crimp == nil:
		return "none fits " + e.Terminal.Kind
	}
	text := crimp.Name
	if plug := e.Terminal.Part.Plug; plug != nil {
		text += " in " + plug.Family.Name
	}
	if crimp.StripMm > 0 {
		text += ", " + u.Strip(crimp.StripMm) + " " + u.Small()
	}
	return text
}
