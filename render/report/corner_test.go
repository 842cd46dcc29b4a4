package report_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/network/solve"
	"fusewright/library"
	"fusewright/render/report"
)

func reviewOf(t *testing.T, file string) *harness.Review {
	t.Helper()
	r, err := reviewIf(file)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// reviewIf is the review of a design that may be one to be refused.
func reviewIf(file string) (*harness.Review, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	d, err := design.Read(file, src, library.Default())
	if err != nil {
		return nil, err
	}
	return harness.Assess(d)
}

func same(t *testing.T, what string, got *float64, want float64) {
	t.Helper()
	if got == nil || math.Abs(*got-want) > 1e-8*math.Abs(want) {
		t.Errorf("%s: %v, want %g", what, got, want)
	}
}

// TestCornersOfReview: the corner tables and the rows of the report carry the
// review's figures, each of the situation that is named.
func TestCornersOfReview(t *testing.T) {
	r := reviewOf(t, "../../designs/fen-runner.yaml")
	index := map[string]int{}
	for i, s := range r.Design.Situations {
		index[s.Name] = i
	}
	rep := report.NewCorners(r)
	if len(rep.Loads) != 6 || len(rep.Fuses) != 7 || len(rep.Wires) != len(r.Circuit.Wires) || len(rep.Unsettled) > 0 {
		t.Fatalf("%d loads, %d fuses, %d wires, unsettled: %q", len(rep.Loads), len(rep.Fuses), len(rep.Wires), rep.Unsettled)
	}
	full := report.New(r)
	for k, row := range rep.Wires {
		w := r.Circuit.Wires[k]
		v := r.Corners.Amps(index[row.Amperes.Situation], w.Branch)
		same(t, row.Number+" amperes", row.Amperes.Nominal, v.Nominal)
		same(t, row.Number+" amperes at the corner", row.Amperes.Corner, v.Corner)
		for i := range full.Situations {
			if x := r.Corners.Amps(i, w.Branch); x.Corner > v.Corner {
				t.Errorf("%s: worse in %s", row.Number, full.Situations[i].Name)
			}
			same(t, row.Number+" temperature", full.Situations[i].Wires[k].ConductorC,
				r.Corners.Results[corner.Nominal][i].WireC[w.Index])
		}
		same(t, row.Number+" may", row.Allowed.Amperes, math.Min(*row.Allowed.HeatA, *row.Allowed.TableA))
		// A place whose ambient is given is no hotter at the corner.
		may, atCorner := *full.Wires[k].Allowed.Amperes, *full.Wires[k].AllowedCorner.Amperes
		if full.Wires[k].Number != row.Number || atCorner > may || (atCorner == may) != w.AmbientKnown {
			t.Errorf("%s: allowed %g A, at the corner %g A", row.Number, may, atCorner)
		}
	}
	for _, l := range rep.Loads {
		if !(*l.Drop.Corner > *l.Drop.Nominal && *l.Volts.Corner < *l.Volts.Nominal && *l.Drop.Corner < *l.LimitS) {
			t.Errorf("%s: drop %v to %v of %v", l.Ref, *l.Drop.Nominal, *l.Drop.Corner, *l.LimitS)
		}
	}
}

// TestOneSituationARow: every figure of a row of the voltage table is of the
// situation that the row names, and the row that decides is among them.
func TestOneSituationARow(t *testing.T) {
	r := reviewOf(t, "../../designs/fen-runner.yaml")
	index, load := map[string]int{}, map[string]*circuit.Branch{}
	for i, s := range r.Design.Situations {
		index[s.Name] = i
	}
	for _, b := range r.Circuit.Branches {
		if b.Kind == circuit.LoadBranch && b.Load.Load != nil && !b.Load.Standby {
			load[b.Part.Ref] = b
		}
	}
	rep := report.NewCorners(r)
	rows, ref := rep.Tables()[0].Rows, ""
	for _, row := range rows {
		if row[0] != "" {
			ref = row[0]
		}
		i, b := index[row[9]], load[ref]
		v := r.Corners.LoadV(i, b)
		wires := r.Corners.Figure(i, 1, func(s *solve.Solution) float64 { return report.WayDropV(s, b, r.Circuit.WayWires(b.Part)) }).Nominal / 12
		for k, want := range map[int]string{2: quantity.Format(wires, quantity.Share),
			6: quantity.Format(v.Nominal, quantity.Voltage), 7: quantity.Format(v.Corner, quantity.Voltage)} {
			if row[k] != want {
				t.Errorf("%s in %s: %s, want %s", ref, row[9], row[k], want)
			}
		}
	}
	if len(rows) <= len(rep.Loads) { // the lamps lose most in one situation and have least in another
		t.Errorf("%d rows of %d loads", len(rows), len(rep.Loads))
	}
	for _, l := range rep.Loads {
		if !(*l.Wires.Nominal > 0 && *l.Wires.Nominal < *l.Drop.Nominal) {
			t.Errorf("%s: its wires lose %g of %g", l.Ref, *l.Wires.Nominal, *l.Drop.Nominal)
		}
	}
}

// TestCornersText: the three tables of a study, within 110 columns, end with what a corner is.
func TestCornersText(t *testing.T) {
	r := reviewOf(t, "../../designs/reed-skiff.yaml")
	var b strings.Builder
	if err := report.WriteStudy(&b, report.NewStudy(r)); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Voltage lost", "Wires: current", "Fuses: what they carry", "weak, aged", "lowest supply 10.5 V"} {
		if !strings.Contains(strings.Join(strings.Fields(b.String()), " "), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
	for line := range strings.Lines(b.String()) {
		if n := len([]rune(strings.TrimRight(line, "\n"))); n > 110 {
			t.Errorf("%d columns: %s", n, line)
		}
	}
}
