package report

import (
	"fmt"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/review/rules"
)

// Tables lists the corner tables in print order.
func (rep *CornerReport) Tables() []*Table {
	if rep == nil {
		return nil
	}
	return []*Table{rep.loadsTable(), rep.wiresTable(), rep.fusesTable()}
}

// loadsTable has a row of a load for each situation in which one of its figures
// is worst; all figures of a row are of that situation.
func (rep *CornerReport) loadsTable() *Table {
	t := newTable("load", "of", ">in wires", ">in all", ">worst", ">limit", ">volts", ">worst", "worst with", "in")
	for _, l := range rep.Loads {
		ref, part := l.Ref, l.Part
		for _, in := range l.in {
			wires, least := against(in.wires.Nominal, l.LimitS, quantity.Share)
			whole, limit := against(in.drop.Nominal, l.LimitS, quantity.Share)
			worst, most := against(in.drop.Corner, l.LimitS, quantity.Share)
			for _, text := range []string{limit, most} {
				if len(text) > len(least) {
					least = text
				}
			}
			with := briefState(in.drop.State)
			if other := briefState(in.volts.State); other != with {
				with += "; " + other
			}
			t.add(ref, part, wires, whole, worst, least, volts(in.volts.Nominal), volts(in.volts.Corner), with, in.drop.Situation)
			ref, part = "", ""
		}
	}
	t.Note = fmt.Sprintf("The limit holds for the wires at nominal values; with contacts and fuses the limit is %g times that; ", rules.MostWholeDrop) +
		"what exceeds it only in the worst case is advice. A load has a row for each situation in which one of its figures is worst. " + rep.note()
	return t.titled("Voltage lost and voltage left, at nominal values and in the worst case", "no load is on")
}

func (rep *CornerReport) wiresTable() *Table {
	t := newTable("wire", "size", ">carries", ">worst", ">may carry", ">worst", ">heat", ">table", "governs",
		">copper", ">worst", ">limit")
	for _, w := range rep.Wires {
		carries, may := against(w.Amperes.Nominal, w.Allowed.Amperes, quantity.Current)
		worst, mayWorst := against(w.Amperes.Corner, w.AllowedCorner.Amperes, quantity.Current)
		t.add(w.Number, w.Size, carries, worst, may, mayWorst, amps(w.Allowed.HeatA),
			amps(w.Allowed.TableA), strings.TrimSuffix(w.Allowed.Governs, " balance"),
			celsius(w.Celsius.Nominal), celsius(w.Celsius.Corner), celsius(w.Allowed.LimitC))
	}
	return t.titled("Wires: current, what they may carry, continuously or for the time they are on (by heat balance and by table, at nominal values), "+
		"and how warm they get", "no wire carries current")
}

func (rep *CornerReport) fusesTable() *Table {
	t := newTable("fuse", "at", ">rating", ">carries", ">worst", ">may carry", ">worst", "worst with", "worst in")
	for _, f := range rep.Fuses {
		carries, bears := against(f.Amperes.Nominal, f.BearsA, quantity.Current)
		worst, bearsWorst := against(f.Amperes.Corner, f.BearsCornerA, quantity.Current)
		t.add(f.Ref, f.Part, rating(f.RatingA), carries, worst, bears, bearsWorst, briefState(f.Amperes.State), f.Amperes.Situation)
	}
	t.Note = "may carry: the lesser of the practice's share of the rating and the maker's at the ambient; worst: at an ambient " +
		"that is not given, hotter by the tolerance"
	if len(rep.Unsettled) > 0 {
		t.Note += "; no result: " + strings.Join(rep.Unsettled, "; ")
	}
	return t.titled("Fuses: what they carry, and what they may carry continuously", "no fuses")
}

// note says what the worst case is.
func (rep *CornerReport) note() string {
	var parts []string
	for _, t := range rep.Tolerances {
		if t.Value == nil {
			continue
		}
		value := figureText(*t.Value, t.Unit)
		switch t.Unit {
		case "share":
			value = "+" + share(t.Value)
		case "times":
			value = "× " + times(t.Value)
		}
		parts = append(parts, t.Name+" "+value)
	}
	return "Worst case: the worst of a weak source (battery at its reserve for starting, regulator low, charging hot) with " +
		"aged contacts, and of a high source with aged or new contacts; places hotter, loads stronger. Tolerances, volts " +
		"for 12 V: " + strings.Join(parts, ", ") + "."
}

// briefState is a state in a word or two.
func briefState(state string) string {
	return strings.TrimSuffix(strings.Replace(state, " source,", ",", 1), " contacts")
}
