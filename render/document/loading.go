package document

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/quantity"
	"fusewright/harness/formula/conductor"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/study/fault"
	"fusewright/render/chart"
	"fusewright/render/scene"
)

// Loading draws how far each wire is loaded in its worst situation, the hardest
// loaded first, as bars of the share of its allowed current.
func Loading(r *harness.Review) ([]*scene.Sheet, error) {
	b := newBook("Wire loading", r)
	b.para("The largest current of each wire over all situations, at nominal values (the worst case is in the findings), as a share of what it may carry, continuously or for the time it is on, at the hottest place it "+
		"passes, with the wires beside it and the cover of its run. The amperes and the situation are beside each bar.", quiet)
	known, unknown := ranked(loadings(r))
	known, slight := slightly(known)
	note := slightNote(slight)
	for len(known) > 0 {
		bars := &chart.Bars{ID: b.sheet().UniqueID("loading"), Desc: "Share of the allowed current of each wire, most heavily loaded first",
			Axis: chart.Axis{Title: "Share of allowed current", Unit: "%"}, Limit: 100, LimitName: "allowed", Bars: barsOf(known)}
		left, high := b.bottom()-b.y, barsHigh(bars, len(known))
		if noteMM := b.noteMM(note); high > left-noteMM && high-left < mostFurtherMM { // no page for a note, or a few bars
			left -= noteMM + scene.LineHeightMM(textSizeMM)*2
		}
		high = math.Min(left, high)
		drawn, err := bars.Draw(b.sheet(), scene.Rect{X: b.left(), Y: b.y, W: b.width(), H: high})
		if err != nil {
			return nil, fmt.Errorf("wire loading: %w", err)
		}
		b.y += high + 3
		if known = known[drawn:]; len(known) <= mostFurther {
			break
		}
		b.newPage()
	}
	if len(known) > 0 {
		var further []string
		for _, w := range known {
			further = append(further, w.wire.Number+" "+quantity.Format(w.share(), quantity.Share))
		}
		b.para("Then: "+strings.Join(further, ", ")+".", plain)
	}
	if note != "" {
		b.para(note, plain)
	}
	for _, w := range unknown {
		b.para(w.unbarred(), plain)
	}
	return b.finish(), nil
}

// mostFurther is how many wires without a bar are named below the last, mostFurtherMM
// what their bars would take.
const mostFurther, mostFurtherMM = 8, 20.0

// slightNote names the wires that carry next to nothing, or counts them where nobody would read
// their names; the first carries most.
func slightNote(slight []string) string {
	which := strings.Join(slight, ", ")
	switch n := len(slight); {
	case n == 0:
		return ""
	case n > mostBars:
		which = fmt.Sprintf("%d wires, %s the most", n, slight[0])
	}
	return fmt.Sprintf("Less than %s of what they may carry: %s.", quantity.Format(slightLoad, quantity.Share), which)
}

// noteMM is the height of a paragraph, with the space before and after it; 0 of none.
func (b *book) noteMM(text string) float64 {
	if text == "" {
		return 0
	}
	return 4.5 + scene.LineHeightMM(textSizeMM)*float64(len(scene.Wrap(text, textSizeMM, b.width(), scene.Regular)))
}

// loading is a wire with its largest current and what it may carry.
type loading struct {
	wire    *circuit.Wire
	worstA  float64
	in      *solve.Solution // where it flows; nil when it never does
	allowed conductor.Allowed
}

// share is the current as a share of the allowed one; NaN when that is not known,
// or nothing.
func (l *loading) share() float64 {
	if !(l.allowed.AllowedA > 0) {
		return math.NaN()
	}
	return l.worstA / l.allowed.AllowedA
}

// unbarred says why a wire has no bar.
func (l *loading) unbarred() string {
	if l.allowed.Nothing() {
		return fmt.Sprintf("%s carries %s and may carry nothing: its surroundings are as hot as its insulation allows. "+
			"See the findings.", wireName(l), ampere(l.worstA))
	}
	return fmt.Sprintf("%s carries %s; its allowed current is not known: data are missing. See the findings.",
		wireName(l), ampere(l.worstA))
}

// loadings takes the largest currents out of the solutions that converged.
func loadings(r *harness.Review) []*loading {
	bears := fault.NewWires(r.Circuit)
	if r.Faults != nil {
		bears = r.Faults.Wires
	}
	var list []*loading
	for _, w := range r.Circuit.Wires {
		row := &loading{wire: w, allowed: bears.Allowed(w)}
		for _, s := range r.Solutions {
			if a := math.Abs(s.Amps(w.Branch)); s.Status == solve.Converged && a > row.worstA {
				row.worstA, row.in = a, s
			}
		}
		list = append(list, row)
	}
	return list
}

// ranked puts the hardest loaded wires first, and apart those without a limit.
func ranked(wires []*loading) (known, unknown []*loading) {
	for _, w := range wires {
		if math.IsNaN(w.share()) {
			unknown = append(unknown, w)
		} else {
			known = append(known, w)
		}
	}
	sort.SliceStable(known, func(i, j int) bool { return known[i].share() > known[j].share() })
	return known, unknown
}

// slightLoad is the share below which wires have no bar where there are more than
// mostBars: a page of them.
const slightLoad, mostBars = 0.02, 50

// slightly parts the wires that are hardly loaded from the others.
func slightly(known []*loading) (barred []*loading, slight []string) {
	if len(known) <= mostBars {
		return known, nil
	}
	for _, w := range known {
		if w.share() < slightLoad {
			slight = append(slight, w.wire.Number)
		} else {
			barred = append(barred, w)
		}
	}
	return barred, slight
}

// barsHigh is the height that all bars take, in mm: the chart tells how many
// rows a height holds, so the least height that holds them is searched.
func barsHigh(bars *chart.Bars, count int) float64 {
	high := 20.0
	for bars.Rows(high) < count && high < 2000 {
		high += 2
	}
	return high
}

func barsOf(wires []*loading) []chart.Bar {
	var bars []chart.Bar
	for _, w := range wires {
		worst, allowed := quantity.Against(w.worstA, w.allowed.AllowedA, quantity.Current)
		text := fmt.Sprintf("%s, %s of %s", quantity.Format(w.share(), quantity.Share), worst, allowed)
		if w.in != nil {
			text += " (" + w.in.Situation.Name + ")"
		}
		bars = append(bars, chart.Bar{Name: wireName(w), Value: 100 * w.share(), Text: text})
	}
	return bars
}

// wireName is number, size and ends of a wire by reference.
func wireName(w *loading) string {
	size := ""
	if w.wire.Spec.Size != nil {
		size = w.wire.Spec.Size.Label + " "
	}
	return fmt.Sprintf("%s  %s%s to %s", w.wire.Number, size, w.wire.From.Part.Name, w.wire.To.Part.Name)
}
