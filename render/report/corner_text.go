package report

import (
	"fmt"
	"io"
	"strings"
)

// Tables lists the corner tables in print order.
func (rep *CornerReport) Tables() []*Table {
	if rep == nil {
		return nil
	}
	return []*Table{rep.loadsTable(), rep.wiresTable(), rep.fusesTable()}
}

// WriteCorners prints the corner tables for people, within 110 columns.
func WriteCorners(w io.Writer, rep *CornerReport) error {
	var b strings.Builder
	for _, t := range rep.Tables() {
		t.write(&b)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func (rep *CornerReport) loadsTable() *Table {
	t := newTable("load", "of", ">drop", ">worst", ">limit", ">volts", ">worst", "worst with", "worst in")
	for _, l := range rep.Loads {
		t.add(l.Ref, l.Part, tenths(l.Drop.Nominal), tenths(l.Drop.Corner), tenths(l.LimitS),
			unit(l.Volts.Nominal, "V"), unit(l.Volts.Corner, "V"), briefState(l.Drop.State), l.Drop.Situation)
	}
	t.Note = rep.note()
	return t.titled("Voltage lost and voltage left, at nominal values and in the worst case", "no load is on")
}

func (rep *CornerReport) wiresTable() *Table {
	t := newTable("wire", "size", ">carries", ">worst", ">may carry", ">worst", ">heat", ">table", "governs",
		">copper", ">worst", ">limit")
	for _, w := range rep.Wires {
		t.add(w.Number, w.Size, unit(w.Amperes.Nominal, "A"), unit(w.Amperes.Corner, "A"),
			unit(w.Allowed.Amperes, "A"), unit(w.AllowedCorner.Amperes, "A"), unit(w.Allowed.HeatA, "A"),
			unit(w.Allowed.TableA, "A"), strings.TrimSuffix(w.Allowed.Governs, " balance"),
			celsius(w.Celsius.Nominal), celsius(w.Celsius.Corner), celsius(w.Allowed.LimitC))
	}
	return t.titled("Wires: current, what they may carry continuously (by heat balance and by table, at nominal values), "+
		"and how warm they get", "no wire carries current")
}

func (rep *CornerReport) fusesTable() *Table {
	t := newTable("fuse", "at", ">rating", ">carries", ">worst", ">may carry", ">worst", "worst with", "worst in")
	for _, f := range rep.Fuses {
		t.add(f.Ref, f.Part, unit(f.RatingA, "A"), unit(f.Amperes.Nominal, "A"), unit(f.Amperes.Corner, "A"),
			unit(f.BearsA, "A"), unit(f.BearsCornerA, "A"), briefState(f.Amperes.State), f.Amperes.Situation)
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
		value := fmt.Sprintf("%s %s", threeDigits(*t.Value), t.Unit)
		switch t.Unit {
		case "share":
			value = fmt.Sprintf("+%s %%", threeDigits(100**t.Value))
		case "times":
			value = "× " + threeDigits(*t.Value)
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

// tenths prints a share as percent with one decimal.
func tenths(v *float64) string {
	if v == nil {
		return "–"
	}
	return fmt.Sprintf("%.1f %%", 100**v)
}
