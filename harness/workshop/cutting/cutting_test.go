package cutting_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/workshop/cutting"
)

// TestBandAgainstTable holds the tolerances against the published table, at
// both ends of each of its rows.
func TestBandAgainstTable(t *testing.T) {
	f, err := os.Open("testdata/length_tolerance.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 6 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		from, _ := strconv.ParseFloat(row[0], 64)
		to, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			if got := cutting.Band(10); row[2] != "5 %" || math.Abs(got-0.5) > 1e-12 {
				t.Errorf("10 m: %g m, want %s", got, row[2])
			}
			continue
		}
		plus, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range []float64{from + 0.001, to} {
			if got := cutting.Band(m); math.Abs(got-plus/1000) > 1e-12 {
				t.Errorf("%g m: %g m, want %g mm", m, got, plus)
			}
		}
	}
}

// TestPartsAddUp holds every cut length of the demo designs against the sum of
// its parts, and the finished length inside the permitted band.
func TestPartsAddUp(t *testing.T) {
	for _, file := range []string{"../../../designs/fen-runner.yaml", "../../../designs/reed-skiff.yaml"} {
		for _, row := range cutting.List(buildtest.Circuit(t, buildtest.File(t, file))) {
			p := row.Parts
			sum := p.RouteM + p.SlackM + p.ServiceM + p.StripM + p.TrimM + p.ToleranceM + p.RoundingM
			if math.Abs(sum-row.CutM) > 1e-9 || math.Abs(p.RouteM+p.SlackM-row.Wire.LengthM) > 1e-9 {
				t.Errorf("%s %s: parts give %g m, cut %g m; route and slack %g m, wire %g m", file, row.Number,
					sum, row.CutM, p.RouteM+p.SlackM, row.Wire.LengthM)
			}
			if steps := row.CutM / cutting.StepM; math.Abs(steps-math.Round(steps)) > 1e-6 || p.RoundingM < -1e-9 || p.RoundingM > cutting.StepM {
				t.Errorf("%s: cut %g m, rounding %g m", row.Number, row.CutM, p.RoundingM)
			}
			finished := row.CutM - p.StripM - p.TrimM - p.ServiceM
			if over := finished - row.Wire.LengthM; over < 0 || over > p.BandM {
				t.Errorf("%s: %g m over, at most %g m", row.Number, over, p.BandM)
			}
		}
	}
}

// TestWorkedExample is done by hand: 780 + 340 mm of runs, 60 mm of slack at
// each end, ring and receptacle stripped 7 mm each, 3 mm squared off at each
// end, 25 mm to the middle of the 50 mm band: 1285, already a step of 5 mm.
func TestWorkedExample(t *testing.T) {
	for _, row := range cutting.List(buildtest.Circuit(t, buildtest.File(t, "testdata/lamps.yaml"))) {
		if row.Number == "W4" {
			if math.Abs(row.CutM-1.285) > 1e-9 {
				t.Errorf("W4 is cut to %g m, want 1.285 m: %+v", row.CutM, row.Parts)
			}
			return
		}
	}
	t.Error("no W4")
}

func TestRoundUp(t *testing.T) {
	for _, test := range []struct{ m, want float64 }{{0.605, 0.605}, {0.6051, 0.61}, {0, 0}, {0.001, 0.005}} {
		if got := cutting.RoundUp(test.m); math.Abs(got-test.want) > 1e-12 {
			t.Errorf("RoundUp(%g) = %g, want %g", test.m, got, test.want)
		}
	}
}

// TestLengthFrom: what a length rests on is said, slack alone above all.
func TestLengthFrom(t *testing.T) {
	from := map[string]string{}
	for _, r := range cutting.List(buildtest.Circuit(t, buildtest.File(t, "../../../testdata/reports/two-fuses.yaml"))) {
		from[r.From.At+" to "+r.To.At] = r.LengthFrom()
	}
	for wire, want := range map[string]string{
		"G1:+ battery to F1:in main":         "design", // length: 150 mm
		"F1:out main to K1:30 gear":          "runs",   // box to panel
		"K1:87 gear to F2:in lamps":          "design",
		"F2:out lamps to E2:+ compass lamp":  "slack only", // both at the panel
		"E2:- compass lamp to X2:31 bus":     "slack only",
		"S1:out bow switch to E1:+ bow lamp": "runs",
	} {
		if from[wire] != want {
			t.Errorf("%s: %q, want %q in %v", wire, from[wire], want, from)
		}
	}
}
