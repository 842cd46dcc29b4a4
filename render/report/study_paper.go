package report

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/wording"
)

// Harmless is the margin from which a cleared short, or a wire behind its fuse, is
// counted on paper and not listed: the wire stands ten times as long. Common
// practice, no source. The text and the JSON of the study have them all.
const Harmless = 10.0

// PaperTables are the tables of a study as its paper has them: one row of a wire for
// both its ends, equal rows joined, what is harmless counted.
func (rep *StudyReport) PaperTables() []*Table {
	tables := slices.Concat([]*Table{rep.shortsOnPaper(), fuseLoadsTable(rep), rep.fuseWiresOnPaper(), joined(fuseAboveTable(rep), 1),
		rep.lostOnPaper()}, abreastTables(rep), strungTables(rep), []*Table{weldedTable(rep), joined(exposedTable(rep), 1), startsTable(rep)})
	if rep.Corners != nil {
		tables = append(tables, rep.Corners.loadsTable(), joined(rep.Corners.wiresTable()), rep.Corners.fusesTable())
	}
	return tables
}

// shortsOnPaper has a row for each wire or part with a short that is not cleared, or
// by less than the harmless margin.
func (rep *StudyReport) shortsOnPaper() *Table {
	t := newTable("short", "where", ">greatest", ">least", "opens", ">latest", ">wire at", ">margin", "verdict")
	counted, refs := 0, []string{}
	for from := 0; from < len(rep.Shorts); {
		to := from
		for to < len(rep.Shorts) && rep.Shorts[to].Ref == rep.Shorts[from].Ref {
			to++
		}
		if list := rep.Shorts[from:to]; slices.ContainsFunc(list, func(s StudyShort) bool { return !s.isHarmless() }) {
			t.add(shortsRow(list)...)
		} else {
			counted += len(list)
			refs = append(refs, list[0].Ref)
		}
		from = to
	}
	if counted > 0 {
		t.Note = fmt.Sprintf("Not listed: %s that a fuse clears while every wire withstands it at least %g times as long, of %s.",
			wording.Count(counted, "short", "shorts"), Harmless, wording.And(refs))
	}
	for _, s := range rep.Shorts {
		if s.Verdict == string(stub) {
			t.Note += " Stub: from the battery to its first fuse, within the allowed length; nothing clears a short there, so protect it."
			break
		}
	}
	t.Note = strings.TrimSpace(t.Note)
	return t.titled("Bolted shorts: the worst of both ends and of both states of the source",
		"every short is cleared with a wide margin, or no wire is fed")
}

func (s StudyShort) isHarmless() bool {
	if s.Verdict == string(notFed) || s.Verdict == string(behind) {
		return true
	}
	if s.Verdict != string(cleared) {
		return false
	}
	for _, state := range []*ShortState{s.Greatest, s.Least} {
		if state != nil && state.Margin != nil && *state.Margin < Harmless {
			return false
		}
	}
	return true
}

// shortsRow joins the shorts of one wire: the greatest and the least current, and of
// all others the worst.
func shortsRow(list []StudyShort) []string {
	var greatest, least, latest, hottest, margin *float64
	var opens, verdicts []string
	never := false
	for _, s := range list {
		verdicts = withNew(verdicts, s.Verdict)
		for _, state := range []*ShortState{s.Greatest, s.Least} {
			if state == nil {
				continue
			}
			greatest, least = beyond(greatest, state.Amperes, 1), beyond(least, state.Amperes, -1)
			latest, hottest, margin = beyond(latest, state.SlowS, 1), beyond(hottest, state.EndC, 1), beyond(margin, state.Margin, -1)
			never = never || state.SlowS == nil
			opens = withNew(opens, stateCells(state)[1])
			if state.Wire != "" && state.EndC == nil {
				hottest = nil
			}
		}
	}
	if never {
		latest = nil
	}
	end := none
	if melts := slices.ContainsFunc(list, func(s StudyShort) bool { return s.melts() }); melts {
		end = celsius(nil)
	} else if hottest != nil {
		end = celsius(hottest)
	}
	where := whereOf(list[0])
	if len(list) > 1 {
		where = "near and far end"
	}
	if len(list) > 1 && list[0].At != "" {
		where = list[0].At + " to " + list[len(list)-1].At
	}
	return []string{list[0].Ref, where, amps(greatest), amps(least), strings.Join(opens, ", "), seconds(latest, "never"), end,
		times(margin), strings.Join(verdicts, ", ")}
}

// melts tells whether a wire has no end temperature in a state.
func (s StudyShort) melts() bool {
	for _, state := range []*ShortState{s.Greatest, s.Least} {
		if state != nil && state.Wire != "" && state.EndC == nil {
			return true
		}
	}
	return false
}

// beyond is the larger of two figures, or with a side of -1 the smaller; nil gives
// way.
func beyond(a, b *float64, side float64) *float64 {
	if a == nil || b != nil && *b*side > *a*side {
		return b
	}
	return a
}

func withNew(list []string, text string) []string {
	if slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}

// fuseWiresOnPaper has the worst wire of each fuse, and every other whose margin is
// not harmless.
func (rep *StudyReport) fuseWiresOnPaper() *Table {
	short := *rep
	short.Fuses = nil
	left := 0
	for _, f := range rep.Fuses {
		worst := -1
		for i, w := range f.Wires {
			if w.Margin != nil && (worst < 0 || *w.Margin < *f.Wires[worst].Margin) {
				worst = i
			}
		}
		var wires []FuseWire
		for i, w := range f.Wires {
			if i == worst || w.Margin == nil && len(w.Missing) > 0 || w.Margin != nil && *w.Margin < Harmless {
				wires = append(wires, w)
			}
		}
		left += len(f.Wires) - len(wires)
		f.Wires = wires
		short.Fuses = append(short.Fuses, f)
	}
	t := fuseWiresTable(&short)
	if left > 0 {
		t.Note = fmt.Sprintf("The worst wire of each fuse; not listed: %s that %s at least %g times as long as the fuse takes.",
			wording.Count(left, "more", "more"), map[bool]string{true: "stands", false: "stand"}[left == 1], Harmless)
	}
	return t
}

// lostOnPaper joins the parts on which the loss of a return has one effect.
func (rep *StudyReport) lostOnPaper() *Table {
	t := newTable("return", "of", "effect", "on")
	for _, l := range rep.Lost {
		var effects []string
		parts := map[string][]string{}
		for _, a := range l.Affected {
			effects = withNew(effects, a.Effect)
			text := a.Ref + " " + a.Part
			if a.Effect != "dead" {
				text += " (" + volts(a.BeforeV) + " → " + volts(a.AfterV) + " in " + a.Situation + ")"
			}
			parts[a.Effect] = append(parts[a.Effect], text)
		}
		ref, part := l.Ref, l.Part
		for _, e := range effects {
			t.add(ref, part, e, strings.Join(parts[e], ", "))
			ref, part = "", ""
		}
		if len(l.Unsolved) > 0 {
			t.add(ref, part, "no result", strings.Join(l.Unsolved, ", "))
			ref = ""
		}
		if ref != "" {
			t.add(ref, part, none, "")
		}
	}
	return t.titled("Returns lost, where several parts share one", "no return is shared")
}

// joined puts rows that are the same but for some columns into one: the first column,
// and the second where it differs, name all of them; the rest of what differs is that of
// the first row.
func joined(t *Table, differ ...int) *Table {
	out := *t
	out.Rows = nil
	at := map[string]int{}
	for _, row := range t.Rows {
		rest := slices.Clone(row)
		rest[0] = ""
		for _, i := range differ {
			rest[i] = ""
		}
		key := strings.Join(rest, "\x00")
		k, met := at[key]
		if !met {
			at[key] = len(out.Rows)
			out.Rows = append(out.Rows, slices.Clone(row))
			continue
		}
		if !slices.Contains(strings.Fields(out.Rows[k][0]), row[0]) {
			out.Rows[k][0] += " " + row[0]
			if slices.Contains(differ, 1) {
				out.Rows[k][1] += ", " + row[1]
			}
		}
	}
	return &out
}
