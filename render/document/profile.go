package document

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/render/chart"
	"fusewright/render/scene"
)

// profileMM is the height of one picture, of which two stand beside each other, and
// tightProfileMM where that saves a page, and keyedProfileMM that of one whose names find
// no place beside their lines.
const profileMM, tightProfileMM, keyedProfileMM = 25.0, 22.0, 36.0

// profile is the way of one load's current in the situation where it loses most.
type profile struct {
	part  *circuit.Part
	load  *circuit.Branch
	in    *solve.Solution
	there []*circuit.Branch // battery to load
	back  []*circuit.Branch // load to battery negative
	lostV float64
	limit float64  // V
	same  []string // loads with the same figures, and by what they are reached
}

// alike leaves one picture of those with the same figures, which names the others.
func alike(r *harness.Review, list []*profile, usual string) (out []*profile) {
	first := map[string]*profile{}
	for _, p := range list {
		names, nominal, worst := p.figures(r)
		key := strings.Join(append(p.facts(usual), strings.Join(nominal, " "), strings.Join(worst, " "), quantity.Fixed(p.limit, 3)), "|")
		q := first[key]
		if q == nil {
			first[key], out = p, append(out, p)
			continue
		}
		own, _, _ := q.figures(r)
		var by []string
		for i, name := range names {
			if name != own[i] {
				by = append(by, name)
			}
		}
		q.same = append(q.same, fmt.Sprintf("%s %s (%s)", p.part.Ref, p.part.Name, strings.Join(by, " ")))
	}
	return out
}

// Profiles draws the voltage lost along the circuit of each load, from the
// battery through each connection to the load and back, in the situation where
// it loses most, with the figure of each connection, nominal and in the worst case.
func Profiles(r *harness.Review) ([]*scene.Sheet, error) {
	return pulledBack(func() *book { return newBook("Voltage along each circuit", r) }, func(b *book) error {
		b.para("Volts lost since the battery's positive post, from point to point along the circuit, in the situation where most is lost. "+
			"What is lost in all and what the load gets is in the heading; after the load the return adds its part. "+
			"The dashed line is the limit for this circuit. The solid line is nominal; below it what each connection loses, "+
			"at nominal and in its own worst case.", smallQuiet)
		var drawn []*profile
		var never []string
		for _, part := range r.Circuit.Parts {
			if part.Kind != circuit.Load {
				continue
			}
			if p := profileOf(r, part); p != nil {
				drawn = append(drawn, p)
			} else {
				never = append(never, part.Ref+" "+part.Name)
			}
		}
		usual := usualOf(drawn)
		if usual != "" {
			b.para("Where a heading names no situation it is "+usual+".", smallQuiet)
		}
		b.inColumns(2)
		for _, p := range alike(r, drawn, usual) {
			if err := b.profile(r, p, usual); err != nil {
				return fmt.Errorf("voltage along the circuit of %s: %w", p.part.Name, err)
			}
		}
		b.inColumns(1)
		if len(drawn) == 0 {
			b.para("No load draws current in any situation.", plain)
		}
		if len(never) > 0 && len(drawn) > 0 {
			b.para("On in no situation, so not drawn: "+strings.Join(never, ", ")+".", plain)
		}
		return nil
	})
}

// Under a picture stand so many connections beside each other as have room; before them
// what the rows are.
const rowHeadMM = 13.5

// inRow is how many columns of figures stand beside each other, equally wide.
func (b *book) inRow(figures ...string) int {
	return max(1, int((b.width()-rowHeadMM)/(longestMM(figures, scene.Bold)+2*padMM+figureGapMM)))
}

// figureGapMM keeps figures of neighbouring columns apart.
const figureGapMM = 0.7

// profile draws one load's picture with its figures.
func (b *book) profile(r *harness.Review, p *profile, usual string) error {
	title := p.title(usual)
	lines := len(scene.Wrap(title, smallSizeMM, b.width(), scene.Bold))
	names, nominal, worst := p.figures(r)
	inRow := b.inRow(slices.Concat(names, nominal, worst)...)
	rows := (len(names) + inRow - 1) / inRow
	inRow = max((len(names)+rows-1)/rows, inRow/2) // full rows, and a short one no wider than half
	line := scene.LineHeightMM(smallSizeMM)
	plot := p.plot(b.sheet().UniqueID("profile-" + p.part.Ref))
	plotMM := profileMM
	if b.tight {
		plotMM = tightProfileMM
	}
	if plot.Draw(&scene.Sheet{}, scene.Rect{W: b.width(), H: plotMM}) != nil {
		plotMM = keyedProfileMM
	}
	high := float64(lines)*line + plotMM + 1 + float64(3*rows)*(line+tightEdgeMM)
	if len(p.same) > 0 {
		high += 0.5 + line*float64(len(scene.Wrap(sameText(p), smallSizeMM, b.width(), scene.Regular)))
	}
	b.need(min(high, b.pageBottom()-marginMM-headingMM))
	b.paraIn(title, scene.TextStyle{SizeMM: smallSizeMM, Face: scene.Bold, Colour: ink}, b.left(), b.width())
	if err := plot.Draw(b.sheet(), scene.Rect{X: b.left(), Y: b.y, W: b.width(), H: plotMM}); err != nil {
		return err
	}
	b.y += plotMM + 1
	defer func(tight bool) { b.tight = tight }(b.tight)
	b.tight = true
	for from := 0; from < len(names); from += inRow {
		to := min(from+inRow, len(names))
		columns := []column{{head: "mV", wide: rowHeadMM}}
		for i := range inRow {
			c := column{wide: (b.width() - rowHeadMM) / float64(inRow), align: scene.Right}
			if from+i < to {
				c.head = names[from+i]
			}
			columns = append(columns, c)
		}
		t := b.tableAt(b.left(), b.width(), columns)
		t.head()
		blank := make([]string, inRow-(to-from))
		t.row(append(append([]string{"nominal"}, nominal[from:to]...), blank...)...)
		t.row(append(append([]string{"worst"}, worst[from:to]...), blank...)...)
	}
	if len(p.same) > 0 {
		b.y += 0.5
		b.paraIn(sameText(p), small, b.left(), b.width())
	}
	b.y += 2.5
	return nil
}

func sameText(p *profile) string { return "The same: " + strings.Join(p.same, ", ") + "." }

// figures are the names of the connections along a circuit with what each loses, in
// millivolts.
func (p *profile) figures(r *harness.Review) (names, nominal, worst []string) {
	situation := slices.Index(r.Solutions, p.in)
	for _, b := range slices.Concat(p.there, p.back) {
		names = append(names, elementName(b))
		most := math.Abs(p.in.Volts(b))
		nominal = append(nominal, quantity.Fixed(1000*most, 0))
		known := false
		for _, state := range corner.Corners {
			if r.Corners == nil || situation < 0 || situation >= len(r.Corners.Results[state]) {
				continue
			}
			result := r.Corners.Results[state][situation]
			if result == nil || result.Solution == nil || result.Solution.Status != solve.Converged {
				continue
			}
			known = true
			most = max(most, math.Abs(result.Solution.Volts(b)))
		}
		if text := "–"; !known {
			worst = append(worst, text)
		} else {
			worst = append(worst, quantity.Fixed(1000*most, 0))
		}
	}
	return names, nominal, worst
}

// profileOf finds where a load loses most; nil when it never draws.
func profileOf(r *harness.Review, part *circuit.Part) *profile {
	var load *circuit.Branch
	for _, br := range part.Branches {
		if br.Load != nil && !br.Load.Standby {
			load = br
		}
	}
	plus, minus := part.Terminal("+"), part.Terminal("-")
	if load == nil || plus == nil || minus == nil {
		return nil
	}
	var best *profile
	for _, s := range r.Solutions {
		if s.Status != solve.Converged || !s.LoadOn[load.Index] || math.Abs(s.Amps(load)) < 1e-3 {
			continue
		}
		lost := s.PostsV(load) - s.OthersV(load) - (s.NodeV[plus.Node.Index] - s.NodeV[minus.Node.Index])
		if load.Load.Reverses && s.Volts(load) < 0 { // what is drawn is the way of its other run
			continue
		}
		if best == nil || lost > best.lostV {
			best = &profile{part: part, load: load, in: s, lostV: lost}
		}
	}
	if best == nil {
		return nil
	}
	other := func(b *circuit.Branch) bool { return b.Load != nil } // in series with it: no loss
	best.there = slices.DeleteFunc(r.Circuit.MainFeed(plus.Node).Branches, other)
	best.back = slices.DeleteFunc(r.Circuit.MainReturn(minus.Node, r.Circuit.Home(plus.Node)).Branches, other)
	if l, ok := part.Source.(*design.Load); ok {
		share, _ := corner.HeldDrop(r.Design, l)
		best.limit = share * r.Design.NominalV()
	}
	return best
}

// usualOf is the situation in which most loads lose most; "" when it is that of one or two.
func usualOf(list []*profile) (usual string) {
	count := map[string]int{}
	for _, p := range list {
		name := p.in.Situation.Name
		if count[name]++; count[name] > max(2, count[usual]) {
			usual = name
		}
	}
	return usual
}

// title is the load, with its facts.
func (p *profile) title(usual string) string {
	return wording.Present(append([]string{p.part.Ref + " " + p.part.Name}, p.facts(usual)...), " · ")
}

// facts are where it loses most if that is not the usual situation, how much, and what
// it gets there.
func (p *profile) facts(usual string) []string {
	volts := p.in.NodeV[p.part.Terminal("+").Node.Index] - p.in.NodeV[p.part.Terminal("-").Node.Index]
	var where []string
	if name := p.in.Situation.Name; name != usual {
		where = append(where, name)
	}
	return []string{strings.Join(append(where, p.positions()...), ", "),
		fmt.Sprintf("loses %s, gets %s at %s", quantity.Format(p.lostV, quantity.Voltage), quantity.Format(volts, quantity.Voltage), ampere(math.Abs(p.in.Amps(p.load))))}
}

// positions are those of the switches in the load's way that have several: "S2 at anchor".
func (p *profile) positions() (list []string) {
	at, _ := circuit.Positions(p.in.Circuit, p.in.Situation)
	for _, b := range slices.Concat(p.there, p.back) {
		if b.Closer == nil || b.Closer.Switch == nil {
			continue
		}
		sw := b.Closer.Switch
		if sw.Pole != nil {
			sw = sw.Pole
		}
		if position := at[sw]; position != "" {
			list = append(list, b.Part.Ref+" at "+position)
		}
	}
	return list
}

// plot is the picture of a profile. Elements stand side by side at equal widths; the
// figures below name them, in the same order.
func (p *profile) plot(id string) *chart.Plot {
	line := chart.Curve{Name: "", Heavy: true, Markers: true, X: []float64{0}, Y: []float64{0}}
	var ticks []chart.Tick
	lost, x := 0.0, 0.0
	add := func(b *circuit.Branch) {
		lost += math.Abs(p.in.Volts(b))
		ticks = append(ticks, chart.Tick{At: x + 0.5})
		x++
		line.X, line.Y = append(line.X, x), append(line.Y, lost)
	}
	for _, b := range p.there {
		add(b)
	}
	from := x
	ticks = append(ticks, chart.Tick{At: x + 0.5})
	x++
	line.X, line.Y = append(line.X, x), append(line.Y, lost)
	for _, b := range p.back {
		add(b)
	}
	plot := &chart.Plot{ID: id,
		Desc:   fmt.Sprintf("Voltage lost along the circuit of %s in situation %s", p.part.Name, p.in.Situation.Name),
		X:      chart.Axis{Min: 0, Max: x, Ticks: ticks},
		Y:      chart.Axis{FromZero: true},
		Curves: []chart.Curve{line},
		Spans:  spans(from, x),
	}
	if p.limit > 0 {
		plot.Levels = []chart.Level{{Name: "limit " + quantity.Format(p.limit, quantity.Voltage), At: p.limit}}
	}
	return plot
}

// spans name the feed, the load and the way back.
func spans(load, end float64) []chart.Span {
	list := []chart.Span{{From: load, To: load + 1}}
	if load > 0 {
		list = append([]chart.Span{{Name: "feed", From: 0, To: load}}, list...)
	}
	if end > load+1 {
		list = append(list, chart.Span{Name: "return", From: load + 1, To: end})
	}
	return list
}

// elementName is the reference of a branch as the drawing shows it.
func elementName(b *circuit.Branch) string {
	switch {
	case b.Wire != nil:
		return b.Wire.Number
	case b.Fuse != nil && b.Fuse.Ref != "":
		return b.Fuse.Ref
	case b.Part != nil:
		return b.Part.Ref
	}
	return b.Name
}
