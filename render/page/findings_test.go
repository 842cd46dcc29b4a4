package page

import (
	"math"
	"slices"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/outlook"
	"fusewright/library"
)

// What a finding is about is marked in the drawing though it is no part, and its cause is headed by a sentence: its own, or where that is long its rule's.
func TestFindingsWithoutAPart(t *testing.T) {
	r := reviewtest.File(t, "../../designs/reed-skiff.yaml")
	r.Remedies()
	m := Of(r, nil)
	of := func(rule, about string) Finding {
		t.Helper()
		i := slices.IndexFunc(m.Findings, func(f Finding) bool { return f.Rule == rule && f.About == about })
		if i < 0 {
			t.Fatalf("no finding %s of %s", rule, about)
		}
		return m.Findings[i]
	}
	if f := of("chafing-run", "console - mast"); !slices.Equal(f.Marks, []string{"W6", "W12", "W23", "W24"}) {
		t.Errorf("the run has %q", f.Marks)
	}
	if f := of("fuse-grading", "F5 panel 2"); f.Part != "F5" {
		t.Errorf("the fuse in a way is %q on the drawing", f.Part)
	}
	for about, start := range map[string]string{"hauling": "situation hauling", "night cutting": "situation night cutting"} {
		if f := of("charging-deficit", about); f.Start != start {
			t.Errorf("%s begins the planner with %q", about, f.Start)
		}
	}
	plan := PlannerOf(r)
	for _, f := range m.Findings {
		if f.Start != "" && !slices.ContainsFunc(plan.Starts, func(s Start) bool { return s.ID == f.Start }) {
			t.Errorf("the planner does not begin with %q", f.Start)
		}
	}
	heads := map[string][2]string{}
	for _, c := range m.Causes {
		heads[c.Of] = [2]string{c.Title, c.Rule}
	}
	long := "Two fuses in series are too close in rating"
	for thing, want := range map[string][2]string{
		"Float, wire: no fuse": {"Wire W18 (14 AWG, battery to float) has no fuse between the battery and its end", "A conductor has no overcurrent protection"},
		"F5 panel 2":           {long, long},
	} {
		if heads[thing] != want {
			t.Errorf("%q is headed %q, want %q", thing, heads[thing], want)
		}
	}
}

// A figure above its limit is as grave as the worst open finding of its part, and advice where none is.
func TestGravest(t *testing.T) {
	list := []*finding.Finding{{Ref: "F1", Severity: finding.Fault}, {Ref: "F1", Severity: finding.Advice}, {Ref: "F2", Severity: finding.Danger}, {Ref: "F3", Severity: finding.Danger, Accepted: "seen"}}
	for ref, want := range map[string]finding.Severity{"F1": finding.Fault, "F2": finding.Danger, "F3": finding.Advice, "F4": finding.Advice} {
		if got := gravest(list, ref); got != want.String() {
			t.Errorf("%s: %s, want %s", ref, got, want)
		}
	}
}

// What is above its limit at worst alone is advice, at nominal a fault; what burns, or fails what must not, a danger.
func TestOverLimit(t *testing.T) {
	drop := func(critical bool, nominal, worst float64) string {
		return overLimit(outlook.Load{Load: &design.Load{Critical: critical}, LimitV: 0.36, DropV: corner.Value{Nominal: nominal, Corner: worst}})
	}
	for _, c := range []struct {
		name           string
		critical       bool
		nominal, worst float64
		want           string
	}{
		{"at the limit", true, 0.30, 0.36, ""}, {"at worst above", true, 0.36, 0.361, "advice"}, {"above", true, 0.361, 0.5, "fault"},
		{"critical at twice", true, 0.72, 0.9, "fault"}, {"critical above twice", true, 0.721, 0.9, "danger"}, {"another above twice", false, 0.721, 0.9, "fault"},
	} {
		if got := drop(c.critical, c.nominal, c.worst); got != c.want {
			t.Errorf("drop %s: %q, want %q", c.name, got, c.want)
		}
	}
	wire := &circuit.Branch{Wire: &circuit.Wire{Spec: design.WireSpec{Type: &library.WireType{ClassC: 105}}}}
	for _, c := range []struct {
		name                string
		branch              *circuit.Branch
		nominal, worst, hot float64
		want                string
	}{
		{"at what it may carry", wire, 9, 10, 100, ""}, {"at worst above", wire, 10, 10.1, 104, "advice"}, {"above", wire, 10.1, 11, 105, "fault"},
		{"hotter than its class", wire, 10.1, 11, 105.1, "danger"}, {"a fuse above", &circuit.Branch{}, 10.1, 11, math.NaN(), "fault"},
	} {
		rows := loadings([]outlook.Loading{{Branch: c.branch, A: corner.Value{Nominal: c.nominal, Corner: c.worst}, MayA: 10, Share: c.nominal / 10, C: c.hot}})
		if rows[0].Over != c.want {
			t.Errorf("%s: %q, want %q", c.name, rows[0].Over, c.want)
		}
	}
}
