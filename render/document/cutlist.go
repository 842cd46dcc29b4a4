package document

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/wording"
	"fusewright/harness/workshop/cutting"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// CutListCSV writes one row per wire in wire order. Lengths are in the unit that
// their column names; where the sheet has feet, the last column is the cut
// length as the paper has it.
func CutListCSV(w io.Writer, u lengths.Unit, rows []cutting.Row) error {
	head := []string{"wire", "size", "colour", "insulation", "cut length m", "from", "from place",
		"from terminal", "from strip mm", "to", "to place", "to terminal", "to strip mm", "runs", "label",
		"route m", "slack m", "service m", "strip m", "trim m", "tolerance m", "rounding m", "permitted over m",
		"from plug", "to plug", "length from", "from mark", "to mark"}
	if u.Feet() {
		head = append(head, "cut length ft in")
	}
	var cells [][]string
	for _, r := range rows {
		row := []string{r.Number, r.Size, r.Colour, r.Insulation, metres(r.CutM),
			r.From.At, r.From.Place, r.From.Crimp(), strip(r.From),
			r.To.At, r.To.Place, r.To.Crimp(), strip(r.To), strings.Join(r.Runs, "; "), r.Label,
			metres(r.Parts.RouteM), metres(r.Parts.SlackM), metres(r.Parts.ServiceM), metres(r.Parts.StripM),
			metres(r.Parts.TrimM), fineMetres(r.Parts.ToleranceM), fineMetres(r.Parts.RoundingM), metres(r.Parts.BandM),
			r.From.Plug, r.To.Plug, r.LengthFrom(), r.From.Mark, r.To.Mark}
		if u.Feet() {
			row = append(row, u.Cut(r.CutM))
		}
		cells = append(cells, row)
	}
	return writeCSV(w, head, cells)
}

// CutList lays the cut list on pages: the order of work, which is read first, each wire with
// its length and its ends, the terminals and runs that the list names by letter and
// number, and a pull sheet by size and colour for the cutter.
func CutList(r *harness.Review) []*scene.Sheet {
	u, rows := lengths.Of(r.Design), cutting.BySizeAndColour(cutting.List(r.Circuit))
	fill := func(b *book) error {
		crimps, runs := crimpsOf(rows), runNumbers(r)
		if err := b.columns(3, func() error { orderOfWork(b, rows); return nil }); err != nil {
			return err
		}
		b.para(cutNote(u), smallQuiet)
		if there := r.Circuit.FittedWires(); len(there) > 0 {
			b.para("Already fitted and not cut: "+wording.And(there)+".", smallQuiet)
		}
		b.lay(wireTable(r, rows, crimps, runs), column{head: "cut", wide: 8, align: scene.Middle, first: true})
		b.inColumns(3)
		b.keyed("Terminals, by the letter in the list", crimps.names, letter)
		b.keyed("Runs, by the number in the list", runNames(r), func(i int) string { return strconv.Itoa(runs[r.Circuit.Bundles[i].Run.Name]) })
		b.head("From the reels")
		b.lay(pullSheet(u, rows))
		b.inColumns(1)
		return nil
	}
	sheets, _ := pulledBack(func() *book { return newWideBook("Cut list", r) }, fill)
	return sheets
}

// wireTable is a row for each wire, by insulation and size.
func wireTable(r *harness.Review, rows []cutting.Row, crimps *lettered, runs map[string]int) *report.Table {
	u := lengths.Of(r.Design)
	t := report.NewTable("wire", "colour", ">length", ">route + slack + ends + over, "+u.Words(), "from", "crimp", ">"+u.Headed("strip"),
		"to", "crimp", ">"+u.Headed("strip"), "runs", "label")
	last := ""
	for _, row := range rows {
		if group := row.Size + " · " + row.Insulation; group != last {
			t.Group(group)
			last = group
		}
		t.Add(row.Number, row.Colour, u.Cut(row.CutM), madeOf(u, row.Parts), endText(row.From), crimps.of(row.From),
			stripText(u, row.From), endText(row.To), crimps.of(row.To), stripText(u, row.To), laidIn(row, runs), row.Label)
	}
	return t
}

// lettered gives crimp parts letters in the order in which they are met.
type lettered struct{ names []string }

func crimpsOf(rows []cutting.Row) *lettered {
	l := &lettered{}
	for _, row := range rows {
		l.of(row.From)
		l.of(row.To)
	}
	return l
}

func (l *lettered) of(e cutting.End) string {
	name := crimpWork(e)
	at := slices.Index(l.names, name)
	if at < 0 {
		at = len(l.names)
		l.names = append(l.names, name)
	}
	return letter(at)
}

// letter counts a to z, aa to az and so on.
func letter(i int) string {
	text := string(rune('a' + i%26))
	if i >= 26 {
		text = letter(i/26-1) + text
	}
	return text
}

// runNumbers are the numbers of the layout by the run's name.
func runNumbers(r *harness.Review) map[string]int {
	numbers := map[string]int{}
	for i, b := range r.Circuit.Bundles {
		numbers[b.Run.Name] = i + 1
	}
	return numbers
}

func runNames(r *harness.Review) []string {
	var names []string
	for _, b := range r.Circuit.Bundles {
		names = append(names, b.Run.Name)
	}
	return names
}

// keyed lists names behind their letter or number.
func (b *book) keyed(title string, names []string, key func(int) string) {
	if len(names) == 0 {
		return
	}
	b.head(title)
	for i, name := range names {
		step := scene.LineHeightMM(smallSizeMM)
		b.need(step)
		b.sheet().TextAt(scene.Point{X: b.left() + 1, Y: b.y + scene.AscentMM(smallSizeMM, scene.Bold)}, key(i),
			scene.TextStyle{SizeMM: smallSizeMM, Face: scene.Bold, Colour: ink})
		b.paraIn(name, small, b.left()+8, b.width()-8)
	}
}

// pullSheet is what the cutter draws from each reel: pieces and their sum.
func pullSheet(u lengths.Unit, rows []cutting.Row) *report.Table {
	t := report.NewTable("size", "colour", ">pieces", ">in all, "+u.Large(), ">longest")
	for from := 0; from < len(rows); {
		first, to, sum, longest := rows[from], from, 0.0, 0.0
		if from == 0 || rows[from-1].Insulation != first.Insulation {
			t.Group(first.Insulation)
		}
		for ; to < len(rows) && rows[to].Size == first.Size && rows[to].Colour == first.Colour && rows[to].Insulation == first.Insulation; to++ {
			sum += rows[to].CutM
			longest = max(longest, rows[to].CutM)
		}
		t.Add(first.Size, colourName(first), strconv.Itoa(to-from), u.Amount(math.Ceil(100*sum-1e-9)/100), u.Cut(longest))
		from = to
	}
	return t
}

// laidIn is the runs of a wire, or that its length rests on slack alone.
func laidIn(row cutting.Row, numbers map[string]int) string {
	if row.Wire.SlackOnly() {
		return "slack only"
	}
	var list []string
	for _, name := range row.Runs {
		list = append(list, strconv.Itoa(numbers[name]))
	}
	return strings.Join(list, " ")
}

// cutNote says what a cut length holds.
func cutNote(u lengths.Unit) string {
	rounding := fmt.Sprintf("rounded up to %.0f mm", cutting.StepM*1000)
	if u.Feet() {
		rounding = "rounded up to 1/8 in"
	}
	return fmt.Sprintf("Length = route + slack at both ends, enough to renew each terminal %d times (AC 43.13-1B par. "+
		"11-118) + ends: strip lengths and %s to square off each end (common practice, no source) + over: half the "+
		"permitted over-length (%s: the finished wire may be longer by twice that, never shorter); %s. A length that the "+
		"design gives is shown as route; “slack only”: both ends are at one place and the design gives no length, so the route "+
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

// colourName is the code with its words: "YERD yellow and red".
func colourName(row cutting.Row) string {
	colour := row.Colour
	if base := row.Wire.Spec.Colour.Base; base != nil {
		colour += " " + base.Name
		if tracer := row.Wire.Spec.Colour.Tracer; tracer != nil {
			colour += " and " + tracer.Name
		}
	}
	return colour
}

func endText(e cutting.End) string {
	text := e.At
	if e.Mark != "" {
		text += " (" + e.Mark + ")"
	}
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
		return "seal first, " + e.Crimp()
	}
	return e.Crimp()
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
