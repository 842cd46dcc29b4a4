package document

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/cutting"
	"fusewright/render/scene"
)

// CutListCSV writes one row per wire in wire order.
func CutListCSV(w io.Writer, rows []cutting.Row) error {
	head := []string{"wire", "size", "colour", "insulation", "cut length m", "from", "from place",
		"from terminal", "from strip mm", "to", "to place", "to terminal", "to strip mm", "runs", "label"}
	var cells [][]string
	for _, r := range rows {
		cells = append(cells, []string{r.Number, r.Size, r.Colour, r.Insulation, metres(r.CutM),
			r.From.At, r.From.Place, crimpName(r.From), strip(r.From),
			r.To.At, r.To.Place, crimpName(r.To), strip(r.To), strings.Join(r.Runs, "; "), r.Label})
	}
	return writeCSV(w, head, cells)
}

// CutList lays the cut list on pages, grouped by insulation, size and colour
// for one pass with the cutter, with a box to tick for each wire.
func CutList(r *harness.Review) []*scene.Sheet {
	b := newWideBook("Cut list", r)
	b.para(fmt.Sprintf("Cut lengths hold the slack at both ends and are rounded up to the next %.0f mm. "+
		"Strip lengths are those of the terminal; the terminal maker's figure goes before. "+
		"Mark both ends before the next cut.", cutting.StepM*1000),
		scene.TextStyle{SizeMM: textSizeMM, Colour: grey})
	t := b.newTable([]column{
		{head: "cut", wide: 9, align: scene.Middle},
		{head: "wire", wide: 11, face: scene.Bold},
		{head: "length m", wide: 17, align: scene.Right, face: scene.Bold},
		{head: "from", wide: 50},
		{head: "terminal, strip", wide: 42},
		{head: "to", wide: 50},
		{head: "terminal, strip", wide: 42},
		{head: "runs", wide: 48},
		{head: "label", wide: 32},
	})
	last := ""
	for _, row := range cutting.BySizeAndColour(cutting.List(r.Circuit)) {
		if group := groupOf(r, row); group != last {
			t.group(group)
			last = group
		}
		t.row("", row.Number, metres(row.CutM), endText(row.From), crimpText(row.From),
			endText(row.To), crimpText(row.To), strings.Join(row.Runs, "; "), row.Label)
		t.tick(0)
	}
	return b.finish()
}

func groupOf(r *harness.Review, row cutting.Row) string {
	colour := row.Colour
	if base := row.Wire.Spec.Colour.Base; base != nil {
		colour += " " + base.Name
		if tracer := row.Wire.Spec.Colour.Tracer; tracer != nil {
			colour += " and " + tracer.Name
		}
	}
	return fmt.Sprintf("%s · %s · %s", row.Size, colour, row.Insulation)
}

func endText(e cutting.End) string {
	if e.Place == "" {
		return e.At
	}
	return e.At + ", " + e.Place
}

func crimpName(e cutting.End) string {
	if e.Terminal != nil {
		return e.Terminal.Name
	}
	if e.Kind != "" {
		return "none fits " + e.Kind
	}
	return "not known"
}

func crimpText(e cutting.End) string {
	if e.StripMm > 0 {
		return crimpName(e) + ", " + strip(e) + " mm"
	}
	return crimpName(e)
}

func strip(e cutting.End) string {
	if e.StripMm == 0 {
		return ""
	}
	return strconv.FormatFloat(e.StripMm, 'f', -1, 64)
}

// metres prints a length in metres to the millimetre.
func metres(m float64) string { return strconv.FormatFloat(m, 'f', 3, 64) }
