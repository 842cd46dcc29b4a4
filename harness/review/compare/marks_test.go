package compare_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/compare"
)

// A drawing lists each thing once: a part with its wires, a connection where its
// wire is, and a finding where it is found; the worst first.
func TestMarks(t *testing.T) {
	const horn = "  horn: {power: 10 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 6 mm²}, " +
		"returns to: frame, return wire: {size: 6 mm²}}\n"
	tests := []struct {
		name     string
		old, new string // replaced in the design
		want     []string
	}{
		{"nothing", "", "", nil},
		{"a larger fuse", "rating: 5 A", "rating: 30 A", []string{
			"judged anew|lamp|[]|[W2]||new danger: fuse-over-wire",
			"judged anew|lamp|[]|[W3]||new danger: return-below-fuse",
			"changed|fuse lamp fuse|[F1]|[F1]|rating 5 A → 30 A|new advice: fuse-grading"}},
		{"a load with its wires", "loads:\n", "loads:\n" + horn, []string{
			"renumbered|labels of a built loom|[E1 W2 W3]|[E2 W3 W5]|E2 was E1 · W3 was W2 · W5 was W3|",
			"added|horn|[]|[E1 W2 W4]|power 10 W at 12 V · behaves resistor · fed by lamp fuse · returns to frame · at rear|"}},
		{"another feed", "fed by: lamp fuse", "fed by: key", []string{
			"changed|feed of lamp|[W2]|[W2]|from lamp fuse → key · cut length 745 mm → 755 mm|new danger: fuse-over-wire",
			"judged anew|lamp|[]|[W3]||new danger: return-below-fuse"}},
		{"a thinner wire, crimps that follow left out, its length to cut not", "wire: {size: 6 mm², length: 100 mm}", "wire: {size: 4 mm², length: 100 mm}", []string{
			"changed|feed of lamp fuse|[W1]|[W1]|size 6 mm² → 4 mm² · cut length 145 mm → 140 mm|"}},
		{"battery and charging", "capacity: 12 Ah, rate: 10 h, resistance: 14 mΩ", "capacity: 14 Ah, rate: 10 h, resistance: 14 mΩ", []string{
			"changed|battery|[G1]|[G1]|capacity 12 Ah → 14 Ah|"}},
		{"a place, which is not drawn", "rear: {ambient: 35 °C}", "rear: {ambient: 50 °C}", []string{
			"changed|place rear|[]|[]|ambient 35 °C → 50 °C|"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if !strings.Contains(lamp, tt.old) {
				t.Fatal("nothing to replace")
			}
			c := compare.Reviews(reviewtest.Of(t, lamp), reviewtest.Of(t, strings.Replace(lamp, tt.old, tt.new, 1)))
			var got []string
			for _, m := range c.Marks() {
				var rules []string
				for _, f := range m.Findings {
					parts := strings.SplitN(f, ": ", 3)
					rules = append(rules, strings.Join(parts[:2], ": "))
				}
				line := fmt.Sprintf("%s|%s|%v|%v|%s|%s", m.What, m.Name, m.Old, m.New, m.Text, strings.Join(rules, ", "))
				got = append(got, line)
			}
			if !slices.Equal(got, tt.want) {
				t.Errorf("marks\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(tt.want, "\n"))
			}
		})
	}
}

// A part that went takes its wires and what was found on it along.
func TestMarksOfWhatIsGone(t *testing.T) {
	const horn = "  horn: {power: 10 W, behaves: resistor, at: rear, fed by: key, wire: {size: 1 mm²}, " +
		"returns to: frame, return wire: {size: 1 mm²}}\n"
	with := reviewtest.Of(t, strings.Replace(lamp, "loads:\n", "loads:\n"+horn, 1))
	marks := compare.Reviews(with, reviewtest.Of(t, lamp)).Marks()
	if len(marks) != 2 || marks[0].Name != "labels of a built loom" {
		t.Fatalf("%d marks, want two, that of labels first", len(marks))
	}
	m := marks[1]
	if m.What != compare.Removed || len(m.Old) != 3 || len(m.New) != 0 ||
		!slices.Contains(m.Findings, "no longer danger: fuse-over-wire") {
		t.Errorf("got %+v", m)
	}
}
