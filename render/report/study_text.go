package report

import (
	"cmp"
	"fmt"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"io"
	"slices"
	"strings"
)

// Tables lists the tables of a study in print order.
func (rep *StudyReport) Tables() []*Table {
	return slices.Concat([]*Table{shortsTable(rep), fuseLoadsTable(rep), fuseWiresTable(rep), fuseAboveTable(rep), lostTable(rep)},
		abreastTables(rep), strungTables(rep), []*Table{weldedTable(rep), exposedTable(rep), startsTable(rep)}, rep.Corners.Tables())
}

// abreastTables is the table of wires side by side, where there are any.
func abreastTables(rep *StudyReport) []*Table {
	if len(rep.Abreast) == 0 {
		return nil
	}
	t := newTable("lost", "left", ">carries before", ">and then", "in", "without a result")
	for _, a := range rep.Abreast {
		t.add(a.Lost, a.Left, amps(a.BeforeA), amps(a.AfterA), a.Situation, strings.Join(a.Unsolved, ", "))
	}
	return []*Table{t.titled("Of several wires side by side one lost: what the rest carry, at nominal values; the fuse sees no difference", "")}
}

// strungTables is the table of loads in series, where there are any.
func strungTables(rep *StudyReport) []*Table {
	if len(rep.Strung) == 0 {
		return nil
	}
	t := newTable("fault of", "part", "which", "then suffers", ">had", ">gets", ">bears", "in", "without a result")
	for _, x := range rep.Strung {
		t.add(x.Ref, x.Part, x.Fault, cmp.Or(x.Suffers, "none is on"), volts(x.BeforeV), volts(x.AfterV), volts(x.BearsV), x.Situation, strings.Join(x.Unsolved, ", "))
	}
	return []*Table{t.titled("Loads in series: one shorted, or the wire behind one against the frame, at nominal values", "")}
}

// WriteStudy prints the fault table and the protection table for people, within
// 110 columns.
func WriteStudy(w io.Writer, rep *StudyReport) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", nameOf(rep.Design))
	b.WriteString(wrap("greatest: ", rep.Greatest))
	b.WriteString(wrap("least:    ", rep.Least))
	b.WriteString("\n")
	for _, line := range rep.Summary() {
		b.WriteString(wrap("  - ", line))
	}
	for _, t := range rep.Tables() {
		t.write(&b)
	}
	b.WriteString("\n" + wrap("", rep.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

func shortsTable(rep *StudyReport) *Table {
	t := newTable("short", "where", ">greatest", "opens", ">latest", ">wire at", ">least", "opens", ">latest", ">wire at",
		">margin", "verdict")
	for _, s := range rep.Shorts {
		big, small := stateCells(s.Greatest), stateCells(s.Least)
		t.add(s.Ref, whereOf(s), big[0], big[1], big[2], big[3], small[0], small[1], small[2], small[3],
			leastMargin(s), s.Verdict)
		if s.Verdict == string(stub) {
			t.Note = "stub: from the battery to its first fuse, within the allowed length; nothing clears a short there, so protect it"
		}
	}
	return t.titled("Bolted shorts: current, the fuse that clears it, its latest opening, the hottest wire by then",
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
	return [4]string{amps(s.Amperes), opens, seconds(s.SlowS, "never"), end}
}

// leastMargin is the smaller margin of both states: the time that the hottest
// wire stands over the time that the current flows.
func leastMargin(s StudyShort) string {
	var least *float64
	for _, st := range []*ShortState{s.Greatest, s.Least} {
		if st != nil && st.Margin != nil && (least == nil || *st.Margin < *least) {
			least = st.Margin
		}
	}
	return times(least)
}

func fuseLoadsTable(rep *StudyReport) *Table {
	t := newTable("fuse", "at", "type", ">rating", ">ambient", ">may carry", ">carries", ">share", ">short behind", "start", ">margin")
	for _, f := range rep.Fuses {
		load, margin := worstStart(f)
		kind := f.Type
		if f.Assumed {
			kind += "*"
		}
		runs, carries := against(f.RunsA, f.CarriesA, quantity.Current)
		t.add(f.Ref, f.Part, kind, rating(f.RatingA), celsius(f.AmbientC), carries, runs, share(f.Share), amps(f.BehindA), load, margin)
	}
	t.Note = fmt.Sprintf("may carry: by the maker's table at the ambient (%s where the design gives none), before the practice's share",
		quantity.Format(circuit.DefaultAmbientC, quantity.Temperature))
	if anyAssumed(rep) {
		t.Note += "; * a factory fuse: its type is not given; a blade fuse is assumed"
	}
	return t.titled("Fuses and their loads: continuous current at the ambient; the start nearest to opening "+
		"the fuse (margin = soonest opening ÷ time)", "no fuses")
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
	load, margin = none, none
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

func fuseWiresTable(rep *StudyReport) *Table {
	t := newTable("fuse", "wire", "size", ">from", ">to", ">worst at", ">opens by", ">stands", ">margin", ">published", "")
	for _, f := range rep.Fuses {
		for _, w := range f.Wires {
			mark := ""
			switch {
			case w.Margin != nil && *w.Margin <= 1 && w.Known:
				mark = "damaged"
			case w.Margin != nil && *w.Margin <= 1:
				mark = "may never open"
			case w.Parallel:
				mark = "other feeds"
			}
			t.add(f.Ref, w.Wire, w.Size, amps(w.FromA), amps(w.ToA), amps(w.WorstA),
				seconds(w.OpensS, "never"), seconds(w.StandsS, "no limit"), times(w.Margin), times(w.KnownMin), mark)
		}
	}
	return t.titled("Fuses and their wires, at every current from the rating to the bolted short: the worst (margin = "+
		"withstands ÷ opens by); published: the minimum margin over currents for which the latest opening is published; "+
		"fuse-wire-curve says nothing where a smaller fuse further up opens in time, nor of overloads of a minute or more where the "+
		"fuse is rated no higher than the wire carries",
		"no fuse protects a wire")
}

// marked puts a remark into the note below the table, once, and gives its mark.
func (t *Table) marked(note string) string {
	if note == "" {
		return ""
	}
	list := strings.Split(t.Note, "; ")
	if t.Note == "" {
		list = nil
	}
	at := slices.IndexFunc(list, func(text string) bool { return strings.TrimLeft(text, "* ") == note })
	if at < 0 {
		at = len(list)
		t.Note = strings.Join(append(list, strings.Repeat("*", at+1)+" "+note), "; ")
	}
	return strings.Repeat("*", at+1)
}

// mostFed is how many of what a fuse feeds are named in a table.
const mostFed = 2

func fuseAboveTable(rep *StudyReport) *Table {
	t := newTable("fuse", "feeds", "above", ">selective up to", "at shorts", ">at", ">lower by", ">upper from", "by")
	for _, f := range rep.Fuses {
		for _, a := range f.Above {
			t.add(f.Ref, wording.Some(f.Feeds, mostFed), a.Ref+" "+a.Part, amps(a.UpToA), a.Verdict+t.marked(a.Note), amps(a.AtA), seconds(a.LowerS, "never"),
				seconds(a.UpperS, "never"), a.By)
		}
	}
	return t.titled("Fuses in series: by the edges of their bands, and at the shorts this circuit can have",
		"no two fuses are in series")
}

func lostTable(rep *StudyReport) *Table {
	t := newTable("return", "of", "part", "effect", ">before", ">after", "worst in")
	for _, l := range rep.Lost {
		ref, part := l.Ref, l.Part
		for _, a := range l.Affected {
			t.add(ref, part, a.Ref+" "+a.Part, a.Effect, volts(a.BeforeV), volts(a.AfterV),
				a.Situation)
			ref, part = "", ""
		}
		for _, s := range l.Unsolved {
			t.add(ref, part, "", "no result", "", "", s)
			ref, part = "", ""
		}
		if ref != "" {
			t.add(ref, part, "", "none", "", "", "")
		}
	}
	return t.titled("Returns lost, where several parts share one", "no return is shared")
}

func weldedTable(rep *StudyReport) *Table {
	t := newTable("contact", "of", ">draws", "live with the key off", "and with a switch closed")
	for _, w := range rep.Welded {
		t.add(w.Contact, w.Part, amps(w.DrawA), orNone(w.Live), orNone(w.ByHand))
	}
	return t.titled("Relay contacts welded", "no relays")
}

func exposedTable(rep *StudyReport) *Table {
	t := newTable("part", "", ">gets", ">withstands", "regulator failed high", "reversed battery", "suffers")
	for _, e := range rep.Exposed {
		gets, bears := against(e.HighV, e.BearsV, quantity.Voltage)
		high := e.High
		if e.AsIfOn {
			high += "; in no situation*"
			t.Note = "* on in no situation with the engine running: judged as if it were on"
		}
		t.add(e.Ref, e.Part, gets, bears, high, e.Reached, e.Suffers)
	}
	title := fmt.Sprintf("Regulator failed high (%s for %s) and battery reversed (%s for %s)", volts(rep.High.Volts),
		seconds(rep.High.Seconds, ""), volts(rep.Reverse.Volts), seconds(rep.Reverse.Seconds, ""))
	return t.titled(title, "no accessories")
}

func orNone(list []string) string {
	if len(list) == 0 {
		return "nothing"
	}
	return strings.Join(list, ", ")
}
