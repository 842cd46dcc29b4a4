package report

import (
	"strings"

	"fusewright/harness/design/quantity"
)

// Tables lists the corner tables in print order.
func (rep *CornerReport) Tables() []*Table {
	if rep == nil {
		return nil
	}
	return []*Table{rep.loadsTable(), rep.wiresTable(), rep.fusesTable()}
}

func (rep *CornerReport) loadsTable() *Table {
	t := newTable("load", "of", ">drop", ">worst", ">limit", ">volts", ">worst", "worst with", "worst in")
	for _, l := range rep.Loads {
		drop, limit := against(l.Drop.Corner, l.LimitS, quantity.Share)
		t.add(l.Ref, l.Part, share(l.Drop.Nominal), drop, limit,
			volts(l.Volts.Nominal), volts(l.Volts.Corner), briefState(l.Drop.State), l.Drop.Situation)
	}
	t.Note = rep.note()
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
	return t.titled("Wires: current, what they may carry, for good or in the time that they are on (by heat balance and by table, at nominal values), "+
		"and how warm they get", "no wire carries current")
}

func (rep *CornerReport) fusesTable() *Table {
	t := newTable("fuse", "at", ">rating", ">carries", ">worst", ">may carry", ">worst", "worst with", "worst in")
	for _, f := range rep.Fuses {
		carries, bears := against(f.Amperes.Nominal, f.BearsA, quantity.Current)
		worst, bearsWorst := against(f.Amperes.Corner, f.BearsCornerA, quantity.Current)
		t.add(f.Ref, f.Part, rating(f.RatingA), carries, worst, bears, bearsWorst, briefState(f.Amperes.State), f.Amperes.Situation)
	}
	if len(rep.Unsettled) > 0 {
		t.Note = "no result: " + strings.Join(rep.Unsettled, "; ")
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
