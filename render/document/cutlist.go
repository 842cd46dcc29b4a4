package document

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/cutting"
	"fusewright/render/scene"
)

// CutListCSV writes one row per wire in wire order.
func CutListCSV(w io.Writer, rows []cutting.Row) error {
	head := []string{"wire", "size", "colour", "insulation", "cut length m", "from", "from place",
		"from terminal", "from strip mm", "to", "to place", "to terminal", "to strip mm", "runs", "label",
		"route m", "slack m", "service m", "strip m", "trim m", "tolerance m", "rounding m", "permitted over m"}
	var cells [][]string
	for _, r := range rows {
		cells = append(cells, []string{r.Number, r.Size, r.Colour, r.Insulation, metres(r.CutM),
			r.From.At, r.From.Place, crimpName(r.From), strip(r.From),
			r.To.At, r.To.Place, crimpName(r.To), strip(r.To), strings.Join(r.Runs, "; "), r.Label,
			metres(r.Parts.RouteM), metres(r.Parts.SlackM), metres(r.Parts.ServiceM), metres(r.Parts.StripM),
			metres(r.Parts.TrimM), fineMetres(r.Parts.ToleranceM), fineMetres(r.Parts.RoundingM), metres(r.Parts.BandM)})
	}
	return writeCSV(w, head, cells)
}

// CutList lays the cut list on pages, grouped by insulation, size and colour
// for one pass with the cutter, with a box to tick for each wire.
func CutList(r *harness.Review) []*scene.Sheet {
	b := newWideBook("Cut list", r)
	b.para(cutNote(), scene.TextStyle{SizeMM: textSizeMM, Colour: grey})
	t := b.newTable([]column{
		{head: "cut", wide: 9, align: scene.Middle},
		{head: "wire", wide: 11, face: scene.Bold},
		{head: "length m", wide: 17, align: scene.Right, face: scene.Bold},
		{head: "made of mm", wide: 42},
		{head: "from", wide: 44},
		{head: "terminal, strip", wide: 38},
		{head: "to", wide: 44},
		{head: "terminal, strip", wide: 38},
		{head: "runs", wide: 38},
		{head: "label", wide: 28},
	})
	last := ""
	for _, row := range cutting.BySizeAndColour(cutting.List(r.Circuit)) {
		if group := groupOf(r, row); group != last {
			t.group(group)
			last = group
		}
		t.row("", row.Number, metres(row.CutM), madeOf(row.Parts), endText(row.From), crimpText(row.From),
			endText(row.To), crimpText(row.To), strings.Join(row.Runs, "; "), row.Label)
		t.tick(0)
	}
	return b.finish()
}

// cutNote says what a cut length holds.
func cutNote() string {
	return fmt.Sprintf("Length = route + slack at both ends (r+s) + what slack lacks to renew each terminal %d times "+
		"(v; AC 43.13-1B par. 11-118) + strip at both ends (p) + %.0f mm to square off each end (t; common practice, no "+
		"source) + half the permitted over-length (m; %s: the finished wire may be that much longer, never shorter), "+
		"rounded up to the next %.0f mm. A length given by the design stands as r. Strip lengths are those of the "+
		"terminal; the terminal maker's figure goes before. Trim to the finished length on the board. Mark both ends "+
		"before the next cut.", cutting.Renewals, cutting.TrimM*1000, cutting.ToleranceSource, cutting.StepM*1000)
}

// madeOf is the parts of a cut length in millimetres; what is nothing is left
// out, but for a strip length that is not known.
func madeOf(b cutting.Breakdown) string {
	var out []string
	for _, part := range []struct {
		letter string
		m      float64
	}{{"r", b.RouteM}, {"s", b.SlackM}, {"v", b.ServiceM}, {"p", b.StripM}, {"t", b.TrimM}, {"m", b.ToleranceM}} {
		if part.m > 0 {
			out = append(out, part.letter+strconv.FormatFloat(math.Round(part.m*1e4)/10, 'f', -1, 64))
		}
	}
	text := strings.Join(out, " ")
	if !b.StripKnown {
		text += ", p not known"
	}
	return text
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

// fineMetres prints a length in metres to the tenth of a millimetre.
func fineMetres(m float64) string { return strconv.FormatFloat(m, 'f', 4, 64) }

// metres prints a length in metres to the millimetre.
func metres(m float64) string { return strconv.FormatFloat(m, 'f', 3, 64) }
