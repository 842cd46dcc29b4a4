package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"fusewright/harness/quantity"
)

// WriteStudy prints the fault table and the protection table for people, within
// 110 columns.
func WriteStudy(w io.Writer, rep *StudyReport) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", nameOf(rep.Design))
	b.WriteString(wrap("greatest: ", rep.Greatest))
	b.WriteString(wrap("least:    ", rep.Least))
	writeShorts(&b, rep)
	writeFuseLoads(&b, rep)
	writeFuseWires(&b, rep)
	writeFuseAbove(&b, rep)
	writeLost(&b, rep)
	writeWelded(&b, rep)
	writeExposed(&b, rep)
	b.WriteString("\n" + wrap("", Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

// grid is a table of text. Columns whose head begins with ">" stand to the
// right.
type grid struct {
	heads []string
	right []bool
	rows  [][]string
}

func newGrid(heads ...string) *grid {
	g := &grid{}
	for _, h := range heads {
		text, right := strings.CutPrefix(h, ">")
		g.heads, g.right = append(g.heads, text), append(g.right, right)
	}
	return g
}

func (g *grid) add(cells ...string) { g.rows = append(g.rows, cells) }

// write prints the table under a title; nothing of one without rows but what
// is said instead.
func (g *grid) write(b *strings.Builder, title, none string) {
	fmt.Fprintf(b, "\n%s\n", title)
	if len(g.rows) == 0 {
		fmt.Fprintf(b, "  %s\n", none)
		return
	}
	wide := make([]int, len(g.heads))
	for _, row := range append([][]string{g.heads}, g.rows...) {
		for i, cell := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	for _, row := range append([][]string{g.heads}, g.rows...) {
		line := " "
		for i, cell := range row {
			gap := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if g.right[i] {
				line += " " + gap + cell
			} else {
				line += " " + cell + gap
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

func writeShorts(b *strings.Builder, rep *StudyReport) {
	g := newGrid("short", "where", ">greatest", "opens", ">latest", ">wire at", ">least", "opens", ">latest", ">wire at",
		">margin", "verdict")
	for _, s := range rep.Shorts {
		big, small := stateCells(s.Greatest), stateCells(s.Least)
		g.add(s.Ref, cut(whereOf(s), 22), big[0], big[1], big[2], big[3], small[0], small[1], small[2], small[3],
			leastMargin(s), s.Verdict)
	}
	g.write(b, "Bolted shorts: current, the fuse that clears it, its latest opening, the hottest wire by then",
		"no wire is fed")
}

// whereOf is a short's place: "far end, fork"; inside a part, the part.
func whereOf(s StudyShort) string {
	switch {
	case s.Where == "inside":
		return "in " + s.Part
	case s.Where == "between":
		return "at " + s.At
	case s.At == "":
		return s.Where
	}
	return s.Where + ", " + s.At
}

func stateCells(s *ShortState) [4]string {
	if s == nil {
		return [4]string{"–", "–", "–", "–"}
	}
	opens, end := s.Opens, "–"
	if opens == "" {
		opens = "none"
	}
	if s.Assumed {
		opens += "*"
	}
	if s.Wire != "" {
		end = celsius(s.EndC)
	}
	return [4]string{unit(s.Amperes, "A"), opens, seconds(s.SlowS, "never"), end}
}

// leastMargin is the smaller margin of both states: the time that the hottest
// wire stands over the time that the current flows.
func leastMargin(s StudyShort) string {
	least := ""
	was := 0.0
	for _, st := range []*ShortState{s.Greatest, s.Least} {
		if st == nil || st.Margin == nil {
			continue
		}
		if least == "" || *st.Margin < was {
			was, least = *st.Margin, times(st.Margin)
		}
	}
	if least == "" {
		return "–"
	}
	return least
}

func writeFuseLoads(b *strings.Builder, rep *StudyReport) {
	g := newGrid("fuse", "at", "type", ">rating", ">ambient", ">carries", ">runs", ">share", ">short behind", "start", ">margin")
	for _, f := range rep.Fuses {
		load, margin := worstStart(f)
		kind := f.Type
		if f.Assumed {
			kind += "*"
		}
		g.add(f.Ref, cut(f.Part, 18), kind, unit(f.RatingA, "A"), celsius(f.AmbientC), unit(f.CarriesA, "A"),
			unit(f.RunsA, "A"), percentOf(f.Share), unit(f.BehindA, "A"), cut(load, 16), margin)
	}
	g.write(b, "Fuses and their loads: continuous current at the ambient; the start that leaves least "+
		"(soonest opening ÷ time)", "no fuses")
	if anyAssumed(rep) {
		b.WriteString(wrap("  * ", "a factory fuse: its type is not given and taken as a blade fuse"))
	}
}

func anyAssumed(rep *StudyReport) bool {
	for _, f := range rep.Fuses {
		if f.Assumed {
			return true
		}
	}
	return false
}

// worstStart is the start with the least margin.
func worstStart(f StudyFuse) (load, margin string) {
	var least *float64
	load, margin = "–", "–"
	for _, s := range f.Starts {
		if s.Margin != nil && (least == nil || *s.Margin < *least) {
			least, load, margin = s.Margin, s.Load, times(s.Margin)
			if !s.Holds {
				margin += " !"
			}
		}
	}
	return load, margin
}

func writeFuseWires(b *strings.Builder, rep *StudyReport) {
	g := newGrid("fuse", "wire", "size", ">from", ">to", ">worst at", ">opens by", ">stands", ">margin", ">published", "")
	for _, f := range rep.Fuses {
		for _, w := range f.Wires {
			mark := ""
			switch {
			case w.Margin != nil && *w.Margin <= 1 && w.Known:
				mark = "hurt"
			case w.Margin != nil && *w.Margin <= 1:
				mark = "may never open"
			case w.Parallel:
				mark = "other feeds"
			}
			g.add(f.Ref, w.Wire, w.Size, unit(w.FromA, "A"), unit(w.ToA, "A"), unit(w.WorstA, "A"),
				seconds(w.OpensS, "never"), seconds(w.StandsS, "for good"), times(w.Margin), times(w.KnownMin), mark)
		}
	}
	g.write(b, "Fuses and their wires, at every current from the rating to the bolted short: the worst (margin = "+
		"stands ÷ opens by);\n  published: the least margin over currents for which the latest opening is published",
		"no fuse protects a wire")
}

func writeFuseAbove(b *strings.Builder, rep *StudyReport) {
	g := newGrid("fuse", "above", ">selective up to", "at shorts", ">at", ">lower by", ">upper from", "by", "note")
	for _, f := range rep.Fuses {
		for _, a := range f.Above {
			g.add(f.Ref, a.Ref, unit(a.UpToA, "A"), a.Verdict, unit(a.AtA, "A"), seconds(a.LowerS, "never"),
				seconds(a.UpperS, "never"), a.By, cut(a.Note, 34))
		}
	}
	g.write(b, "Fuses in series: by the edges of their bands, and at the shorts this circuit can have",
		"no two fuses stand in series")
}

func writeLost(b *strings.Builder, rep *StudyReport) {
	g := newGrid("return", "of", "part", "effect", ">before", ">after", "worst in")
	for _, l := range rep.Lost {
		if len(l.Affected) == 0 {
			g.add(l.Ref, cut(l.Part, 20), "–", "none", "", "", strings.Join(l.Unsolved, ", "))
		}
		for i, a := range l.Affected {
			ref, part := l.Ref, l.Part
			if i > 0 {
				ref, part = "", ""
			}
			g.add(ref, cut(part, 20), cut(a.Ref+" "+a.Part, 26), a.Effect, unit(a.BeforeV, "V"), unit(a.AfterV, "V"),
				cut(a.Situation, 24))
		}
	}
	g.write(b, "Returns lost, where several parts share one", "no return is shared")
}

func writeWelded(b *strings.Builder, rep *StudyReport) {
	g := newGrid("contact", "of", ">draws", "live with the key off", "and with a switch closed")
	for _, w := range rep.Welded {
		g.add(w.Contact, cut(w.Part, 18), unit(w.DrawA, "A"), cut(orNone(w.Live), 34), cut(orNone(w.ByHand), 34))
	}
	g.write(b, "Relay contacts welded", "no relays")
}

func writeExposed(b *strings.Builder, rep *StudyReport) {
	g := newGrid("part", "", ">gets", ">bears", "regulator failed high", "reversed battery", "suffers")
	for _, e := range rep.Exposed {
		g.add(e.Ref, cut(e.Part, 24), unit(e.HighV, "V"), unit(e.BearsV, "V"), e.High, e.Reached, e.Suffers)
	}
	title := fmt.Sprintf("Regulator failed high (%s for %s) and battery reversed (%s for %s)", unit(rep.High.Volts, "V"),
		seconds(rep.High.Seconds, ""), unit(rep.Reverse.Volts, "V"), seconds(rep.Reverse.Seconds, ""))
	g.write(b, title, "no accessories")
}

func orNone(list []string) string {
	if len(list) == 0 {
		return "nothing"
	}
	return strings.Join(list, ", ")
}

// cut shortens text to so many characters.
func cut(s string, most int) string {
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return string(r[:most-1]) + "…"
}

func seconds(v *float64, none string) string {
	if v == nil {
		return none
	}
	return quantity.Format(*v, quantity.Duration)
}

func celsius(v *float64) string {
	if v == nil {
		return "melts"
	}
	return fmt.Sprintf("%.0f °C", *v)
}

func percentOf(v *float64) string {
	if v == nil {
		return "–"
	}
	return fmt.Sprintf("%.0f %%", 100**v)
}

// times prints a ratio: three digits below a hundred.
func times(v *float64) string {
	switch {
	case v == nil:
		return "–"
	case *v >= 100:
		return fmt.Sprintf("%.0f", *v)
	}
	return threeDigits(*v)
}
