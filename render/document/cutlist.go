package document

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/cutting"
	"fusewright/render/scene"
)

// CutListCSV writes one row per wire in wire order. Lengths are in the unit that
// their column names; where the sheet has feet, the last column is the cut
// length as the paper has it.
func CutListCSV(w io.Writer, u lengths.Unit, rows []cutting.Row) error {
	head := []string{"wire", "size", "colour", "insulation", "cut length m", "from", "from place",
		"from terminal", "from strip mm", "to", "to place", "to terminal", "to strip mm", "runs", "label",
		"route m", "slack m", "service m", "strip m", "trim m", "tolerance m", "rounding m", "permitted over m",
		"from plug", "to plug", "length from"}
	if u.Feet() {
		head = append(head, "cut length ft in")
	}
	var cells [][]string
	for _, r := range rows {
		row := []string{r.Number, r.Size, r.Colour, r.Insulation, metres(r.CutM),
			r.From.At, r.From.Place, crimpName(r.From), strip(r.From),
			r.To.At, r.To.Place, crimpName(r.To), strip(r.To), strings.Join(r.Runs, "; "), r.Label,
			metres(r.Parts.RouteM), metres(r.Parts.SlackM), metres(r.Parts.ServiceM), metres(r.Parts.StripM),
			metres(r.Parts.TrimM), fineMetres(r.Parts.ToleranceM), fineMetres(r.Parts.RoundingM), metres(r.Parts.BandM),
			r.From.Plug, r.To.Plug, r.LengthFrom()}
		if u.Feet() {
			row = append(row, u.Cut(r.CutM))
		}
		cells = append(cells, row)
	}
	return writeCSV(w, head, cells)
}

// CutList lays the cut list on pages, grouped by insulation, size and colour
// for one pass with the cutter, with a box to tick for each wire; then the
// order of work at the bench.
func CutList(r *harness.Review) []*scene.Sheet {
	b, u := newWideBook("Cut list", r), lengths.Of(r.Design)
	b.para(cutNote(u), quiet)
	strip := column{head: u.Headed("strip"), wide: 12, align: scene.Right}
	t := b.newTable([]column{
		{head: "cut", wide: 9, align: scene.Middle},
		{head: "wire", wide: 11, face: scene.Bold},
		{head: "length", wide: 22, align: scene.Right, face: scene.Bold},
		{head: "route + slack + ends + over, " + u.Words(), wide: 37},
		{head: "from", wide: 43},
		{head: "terminal", wide: 36},
		strip,
		{head: "to", wide: 43},
		{head: "terminal", wide: 36},
		strip,
		{head: "runs", wide: 35},
		{head: "label", wide: 26},
	})
	rows := cutting.BySizeAndColour(cutting.List(r.Circuit))
	last := ""
	for _, row := range rows {
		if group := groupOf(r, row); group != last {
			t.group(group)
			last = group
		}
		t.row("", row.Number, u.Cut(row.CutM), madeOf(u, row.Parts), endText(row.From), crimpWork(row.From),
			stripText(u, row.From), endText(row.To), crimpWork(row.To), stripText(u, row.To),
			laidIn(row), row.Label)
		t.tick(0)
	}
	orderOfWork(b, rows)
	return b.finish()
}

// laidIn is the runs of a wire, or that its length rests on slack alone.
func laidIn(row cutting.Row) string {
	if row.Wire.SlackOnly() {
		return "none: slack only"
	}
	return strings.Join(row.Runs, "; ")
}

// cutNote says what a cut length holds.
func cutNote(u lengths.Unit) string {
	rounding := fmt.Sprintf("rounded up to the next %.0f mm", cutting.StepM*1000)
	if u.Feet() {
		rounding += ", and of that to the next 1/8 in"
	}
	return fmt.Sprintf("Length = route + slack at both ends, enough to renew each terminal %d times (AC 43.13-1B par. "+
		"11-118) + ends: strip lengths and %s to square off each end (common practice, no source) + over: half the "+
		"permitted over-length (%s: the finished wire may be longer by twice that, never shorter); %s. A length that the "+
		"design gives stands as route; “slack only”: both ends are at one place and the design gives no length, so the way "+
		"between the parts is not counted: measure it. Strip lengths are those of the library's terminals; the maker's figure comes first.",
		cutting.Renewals, u.Near(cutting.TrimM*1000)+" "+u.Small(), cutting.ToleranceSource, rounding)
}

// madeOf is the parts of a cut length: route, slack, ends and over-length.
func madeOf(u lengths.Unit, b cutting.Breakdown) string {
	var out []string
	for _, m := range []float64{b.RouteM, b.SlackM + b.ServiceM, b.StripM + b.TrimM, b.ToleranceM} {
		out = append(out, u.Near(m*1000))
	}
	text := strings.Join(out, " + ")
	if !b.StripKnown {
		text += ", a strip length is not known"
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
	text := e.At
	if e.Place != "" {
		text += ", " + e.Place
	}
	if e.Plug != "" {
		text += ", plug " + e.Plug
	}
	return text
}

// crimpWork is the crimp part with what goes on the wire before it.
func crimpWork(e cutting.End) string {
	if e.Seal {
		return "seal first, " + crimpName(e)
	}
	return crimpName(e)
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

func stripText(u lengths.Unit, e cutting.End) string {
	if e.StripMm == 0 {
		return "?"
	}
	return u.Strip(e.StripMm)
}

func strip(e cutting.End) string {
	if e.StripMm == 0 {
		return ""
	}
	return strconv.FormatFloat(e.StripMm, 'f', -1, 64)
}

// fineMetres prints a length in metres to the tenth of a millimetre.
func fineMetres(m float64) string { return strconv.FormatFloat(math.Round(m*1e4)/1e4+0, 'f', 4, 64) } // + 0: no minus nought

// metres prints a length in metres to the millimetre.
func metres(m float64) string { return strconv.FormatFloat(m, 'f', 3, 64) }
