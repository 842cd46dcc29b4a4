package document

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/caution"
	"fusewright/harness/design/lengths"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
	"fusewright/harness/workshop/cutting"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// coverCautions stand on the cover; the bench test has its own for the work.
var coverCautions = []string{
	"An aid to judgement only. Local codes, the makers' instructions and licensed practice come first.",
	"Isolate the battery before work: negative off first, on last. No flame or spark near a charging battery.",
	"Not for brake, steering, airbag or other safety circuits.",
	"The rules see only what the design says: no finding does not mean safe. Do the bench test before you trust it.",
}

// cautionsFor is coverCautions, with that about petrol where the papers speak of it.
func cautionsFor(r *harness.Review) []string {
	list := slices.Clone(coverCautions)
	list[1] = r.Design.Cautioned(list[1])
	if r.Design.Afloat() {
		list[2] = "Not for helm, throttle, engine control or other safety circuits."
	}
	if r.Design.NamesPetrol() {
		list = append(list, caution.Petrol)
	}
	return list
}

// front is the first pages: what it is, the verdict, the three numbers that
// matter, the cautions, and the contents of the sections, the first of which
// begins on firstPage, and the legends of their sheets. contentsPage is where the
// contents begin.
func front(r *harness.Review, title string, sections []Section, firstPage int, legends []*scene.Sheet) (sheets []*scene.Sheet, contentsPage int) {
	b := newBook(title, r)
	b.head("What it is")
	b.para(whatItIs(r), large)
	for _, n := range r.Design.Notes {
		b.para(n.Value, italic)
	}
	if r.Design.Author.Given() {
		b.para("Drawn up by: "+r.Design.Author.Value, quiet)
	}
	b.head("Verdict")
	b.verdict(r)
	b.head("Three numbers that matter")
	b.figures(worstDrop(r), tightestSpare(r), parkedDays(r))
	b.lookFirst(r, sections, firstPage)
	b.head("Cautions")
	b.bullets(cautionsFor(r), large)
	b.head("Contents")
	below := 0.0
	for _, l := range legends {
		below += aboveLegendMM + l.HeightMM
	}
	contentsPage = b.contents(sections, firstPage, below)
	for _, l := range legends {
		b.need(aboveLegendMM + l.HeightMM)
		b.sheet().Put(l, scene.Point{X: b.left(), Y: b.y + aboveLegendMM})
		b.y += aboveLegendMM + l.HeightMM
	}
	return b.finish(), contentsPage
}

// coverSizeMM is the text of the cover.
const coverSizeMM = 3.4

// whatItIs is the harness in one or two sentences.
func whatItIs(r *harness.Review) string {
	d, c := r.Design, r.Circuit
	fuses, lengthM := 0, 0.0
	for _, b := range c.Branches {
		if b.Fuse != nil && !b.Fuse.Factory {
			fuses++
		}
	}
	for _, w := range c.Wires {
		lengthM += cutting.LengthM(w)
	}
	what := "An accessory harness"
	if v := d.SystemV.Value; v > 0 {
		what = fmt.Sprintf("A %s accessory harness", quantity.Plain(v, quantity.Voltage))
	}
	if d.Vehicle.Value != "" {
		what += " for " + d.Vehicle.Value
	}
	what = strings.TrimRight(what, ".") + ". " + wording.Count(len(d.Loads), "load", "loads") + ", " + wording.Count(fuses, "fuse", "fuses") + ", " +
		wording.Count(len(d.Relays), "relay", "relays") + ", " +
		fmt.Sprintf("%s of wire in %s", lengths.Of(d).Amount(lengthM)+" "+lengths.Of(d).Large(), wording.Count(len(c.Wires), "piece", "pieces"))
	if d.Practice != nil {
		what += ", by " + d.Practice.Name + " practice"
	}
	what += "."
	if batteries := batteryWords(d); batteries != "" {
		what += " " + batteries
		if d.Charging.Present() {
			what += fmt.Sprintf(", charging regulated at %s", quantity.Format(d.Charging.RegulatedV.Value, quantity.Voltage))
		}
		what += "."
	}
	return what
}

// batteryWords names each battery; "" where nothing is known of them.
func batteryWords(d *design.Design) string {
	words := func(x *design.Battery) string {
		if !x.CapacityAh.Given() {
			return ""
		}
		text := " " + x.Times() + quantity.Plain(x.CapacityAh.Value, quantity.Charge)
		if x.Chemistry != nil {
			text += " " + x.Chemistry.Name
		}
		return text
	}
	first := words(&d.Battery)
	if !d.HasBanks() {
		if first == "" {
			return ""
		}
		return "Battery" + first
	}
	list := []string{"first" + first}
	for _, b := range d.Batteries {
		list = append(list, b.Name+words(&b.Store))
	}
	return "Batteries: " + wording.And(list)
}

// verdict is the findings in words, and the gravest of them.
func (b *book) verdict(r *harness.Review) {
	n := report.CountsOf(r.Findings)
	var worst, accepted []string
	for _, f := range r.Findings {
		switch {
		case f.Accepted != "" && f.Severity == finding.Danger:
			accepted = append(accepted, fmt.Sprintf("%d, accepted danger: %s (%s)", f.Number, f.What, f.Accepted))
		case f.Accepted == "" && f.Severity > finding.Advice && len(worst) < 3:
			worst = append(worst, fmt.Sprintf("%d, %s: %s", f.Number, f.Severity, f.What))
		}
	}
	worst = append(worst, accepted...)
	worst = worst[:min(len(worst), 5)]
	text := "No rule of this program objects to the design as described."
	switch {
	case n.Danger > 0:
		text = "Do not build it as it is: " + wording.Count(n.Danger, "finding says", "findings say") +
			" that it can burn, stay live or leave a critical load dead."
	case n.Fault > 0:
		text = "Not ready to build: " + wording.Count(n.Fault, "finding says", "findings say") +
			" that something will not work as described or runs outside its rating."
	case n.Advice > 0:
		text = "No open danger and no open fault. " + wording.Count(n.Advice, "point", "points") + " of advice."
	}
	if burns := len(accepted); burns > 0 {
		text += " " + wording.Count(burns, "danger is", "dangers are") + " accepted by the design: read why before you build it."
	}
	b.para(text, heading)
	if n.Accepted > 0 {
		b.para(wording.Count(n.Accepted, "finding is", "findings are")+" accepted by the design with a reason; they are listed with the others.", large)
	}
	if len(worst) > 0 {
		b.bullets(worst, plain)
	}
}

// lookFirst says what to look at first, and on which pages.
func (b *book) lookFirst(r *harness.Review, sections []Section, firstPage int) {
	page := map[string]int{}
	for at, i := firstPage, 0; i < len(sections); i++ {
		page[sections[i].Title] = at
		at += len(sections[i].Sheets)
	}
	var items []string
	for _, look := range []struct{ paper, words string }{
		{"Findings", wording.Count(len(r.Findings), "finding", "findings") + ", the worst first, each with its remedy"},
		{"Schematic", "the schematic; the findings are numbered where they are"},
		{"Fault and protection study", "what no fuse clears, and what is close"},
		{"Cut list", "the order of work, from the reel to the bench"},
		{"Bench test", "the test before the panels go back"},
		{"Bill of materials", "what to buy"},
	} {
		if at, ok := page[look.paper]; ok && len(items) < 4 {
			items = append(items, fmt.Sprintf("page %d: %s", at, look.words))
		}
	}
	if len(items) > 0 {
		b.head("What to look at first")
		b.bullets(items, plain)
	}
}

// coverFigure is one number of the cover with what it means.
type coverFigure struct{ name, value, words string }

// figures draws three numbers side by side.
func (b *book) figures(list ...coverFigure) {
	const gap = 5.0
	wide := (b.width() - gap*float64(len(list)-1)) / float64(len(list))
	high := 31.0
	for _, f := range list { // what is said of a number is not cut
		high = max(high, 18.5+scene.LineHeightMM(smallSizeMM)*float64(len(scene.Wrap(f.words, smallSizeMM, wide-6, scene.Regular))))
	}
	b.need(high + 3)
	pen := scene.Pen(thinMM)
	for i, f := range list {
		at := scene.Rect{X: b.left() + (wide+gap)*float64(i), Y: b.y, W: wide, H: high}
		b.sheet().Rect(at, &pen, nil)
		b.sheet().TextIn(scene.Rect{X: at.X + 3, Y: at.Y + 2, W: wide - 6, H: 4.5}, f.name, quiet)
		size := scene.FitSizeMM(f.value, 7.5, headSizeMM, wide-6, scene.Bold)
		b.sheet().TextIn(scene.Rect{X: at.X + 3, Y: at.Y + 6.5, W: wide - 6, H: 9}, f.value,
			scene.TextStyle{SizeMM: size, Face: scene.Bold, Colour: ink})
		lines := scene.Wrap(f.words, smallSizeMM, wide-6, scene.Regular)
		for k, line := range lines {
			y := at.Y + 16.5 + scene.CapHeightMM(smallSizeMM, scene.Regular) + float64(k)*scene.LineHeightMM(smallSizeMM)
			b.sheet().TextAt(scene.Point{X: at.X + 3, Y: y}, line, small)
		}
	}
	b.y += high + 3
}

// worstDrop is the circuit whose wires use most of their permitted voltage drop at nominal, which the rules hold against the limit.
func worstDrop(r *harness.Review) coverFigure {
	f := coverFigure{"voltage drop nearest to its limit", "–", "No load draws current in any situation that could be solved."}
	corners := report.NewCorners(r)
	if corners == nil {
		return f
	}
	worst := -1.0
	for _, l := range corners.Loads {
		if l.Drop.Corner == nil || l.Drop.Nominal == nil || l.Wires.Nominal == nil || l.LimitS == nil || !(*l.LimitS > 0) ||
			*l.Wires.Nominal / *l.LimitS <= worst {
			continue
		}
		worst = *l.Wires.Nominal / *l.LimitS
		value, limit := quantity.Against(*l.Wires.Nominal, *l.LimitS, quantity.Share)
		f.value = value
		f.words = fmt.Sprintf("of the system voltage at nominal, in the wires to %s in %s; %s allowed. With fuses and contacts %s, in the worst case %s.",
			l.Part, l.Wires.Situation, limit, quantity.Format(*l.Drop.Nominal, quantity.Share), quantity.Format(*l.Drop.Corner, quantity.Share))
	}
	return f
}

// tightestSpare is the situation with the engine running that leaves least.
func tightestSpare(r *harness.Review) coverFigure {
	f := coverFigure{"charging, tightest situation", "–", "No situation runs the engine, or the design gives no charging output."}
	if r.Budget == nil {
		return f
	}
	least := math.Inf(1)
	for _, l := range report.BudgetOf(r).Lines {
		if l.SpareA == nil || l.EngineRPM == 0 || *l.SpareA >= least {
			continue
		}
		least = *l.SpareA
		f.value = ampere(math.Abs(least)) + " spare"
		f.words = fmt.Sprintf("of %s at %s in %s, on average, duty counted; nothing is drawn from the battery.", ampere(*l.OutputA), report.Engine(l.EngineRPM), l.Situation)
		if least < 0 {
			f.value = ampere(-least) + " short"
			f.words = fmt.Sprintf("at %s in %s; the battery gives %s.", report.Engine(l.EngineRPM), l.Situation, l.Lasts())
		}
	}
	return f
}

// parkedDays is how long the battery starts the engine after parking.
func parkedDays(r *harness.Review) coverFigure {
	f := coverFigure{"engine still starts after, " + r.Design.Spoken().Parked, "–", "The design gives no battery capacity."}
	if r.Budget == nil || math.IsNaN(r.Budget.StandbyDays) {
		return f
	}
	if math.IsInf(r.Budget.StandbyDays, 1) {
		return coverFigure{f.name, "no limit", "Nothing is drawn with the key off, and self-discharge is not known."}
	}
	f.value = quantity.Format(r.Budget.StandbyDays*86400, quantity.Duration)
	f.words = fmt.Sprintf("from full, with %s drawn with the key off and self-discharge counted.", ampere(r.Budget.StandbyA))
	f.words += report.BudgetOf(r).FurtherParked()
	if unsolved := unsolvedNames(r); unsolved != "" {
		f.words += " Without: " + unsolved + "."
	}
	return f
}

// unsolvedNames lists the key-off situations without a result.
func unsolvedNames(r *harness.Review) string {
	var names []string
	for _, s := range r.Solutions {
		if s.Status != solve.Converged && s.Situation.EngineRPM == 0 {
			names = append(names, s.Situation.Name)
		}
	}
	return strings.Join(names, ", ")
}
