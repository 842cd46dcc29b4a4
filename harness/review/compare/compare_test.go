package compare_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"fusewright/harness/design/figure"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"

	"github.com/google/go-cmp/cmp"
)

// lamp is a small clean design; the cases change a line of it.
const lamp = `fusewright: 1
title: Lamp
system: 12 V
practice: motorcycle
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 14 mΩ, at: tray}
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm}
places: {tray: {ambient: 40 °C}, rear: {ambient: 35 °C}}
runs: [{from: tray, to: rear, length: 600 mm}]
taps: {key: {at: tray, hot: key, fuse: 40 A, spare: 6 A, supervised: no}}
grounds: {frame: {kind: frame stud, at: tray, limit: 60 A, frame resistance: 2 mΩ}}
fuses:
  lamp fuse: {type: blade C, rating: 5 A, at: tray, fed by: key, wire: {size: 6 mm², length: 100 mm}}
loads:
  lamp: {power: 20 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, returns to: frame, return wire: {size: 1 mm²}}
`

func TestReviews(t *testing.T) {
	const horn = "  horn: {power: 10 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, " +
		"returns to: frame, return wire: {size: 1 mm²}}\n"
	tests := []struct {
		name     string
		old, new string // replaced in the design
		want     []string
	}{
		{"nothing", "", "", nil},
		{"a comment", "title: Lamp\n", "# moved\ntitle: Lamp\n", nil},
		{"a larger fuse", "rating: 5 A", "rating: 30 A", []string{
			"finding added fuse-over-wire lamp", "finding added return-below-fuse lamp", "finding added fuse-grading lamp fuse",
			"fuse changed lamp fuse: rating 5 A>30 A",
			"buy added fuses: blade C 30 A, green", "buy removed fuses: blade C 5 A, tan"}},
		{"a longer wire", "fed by: lamp fuse, wire: {size: 1 mm²}", "fed by: lamp fuse, wire: {size: 1 mm², length: 1.2 m}",
			[]string{"wire changed lamp: cut length 745 mm>1.25 m", "buy changed wire: ISO 6722 thin wall class B, 1 mm², RD"}},
		{"another place of the ground", "kind: frame stud, at: tray, limit: 60 A", "kind: frame stud, at: tray, limit: 50 A",
			[]string{"part changed frame: limit 60 A>50 A"}},
		{"a smaller battery", "capacity: 12 Ah", "capacity: 8 Ah", []string{
			"part changed of the design: capacity 12 Ah>8 Ah"}},
		{"a hotter place", "rear: {ambient: 35 °C}", "rear: {ambient: 50 °C, wet: yes}",
			[]string{"part changed rear: ambient 35 °C>50 °C · wet >yes"}},
		{"a longer run", "length: 600 mm", "length: 900 mm", []string{
			"wire changed lamp: cut length 745 mm>1.04 m", "part changed tray - rear: length 600 mm>900 mm"}},
		{"less charging", "6000 rpm: 28 A", "6000 rpm: 20 A", []string{
			"budget changed spare current, cruise", "part changed of the design: output 1300 rpm: 14 A, 6000 rpm: 28 A>"}},
		{"without a return", ", returns to: frame, return wire: {size: 1 mm²}}", "}", []string{
			"finding added no-way-back lamp",
			"wire removed lamp: from lamp> · to frame 31> · size 1 mm²> · cut length 745 mm>",
			"part changed lamp: returns to frame>"}},
		{"one load more", "loads:\n", "loads:\n" + horn, []string{
			"wire added horn: from >lamp fuse · to >horn · size >1 mm² · cut length >745 mm",
			"wire added horn: from >horn · to >frame 31 · size >1 mm² · cut length >745 mm",
			"part added horn: power >10 W at 12 V · behaves >resistor · fed by >lamp fuse · returns to >frame"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !strings.Contains(lamp, test.old) {
				t.Fatalf("nothing to replace: %q", test.old)
			}
			changed := strings.Replace(lamp, test.old, test.new, 1)
			c := compare.Reviews(reviewtest.Of(t, lamp), reviewtest.Of(t, changed))
			got := lines(c)
			for _, want := range test.want {
				if !containsPrefix(got, want) {
					t.Errorf("lacks %q in:\n%s", want, strings.Join(got, "\n"))
				}
			}
			if same := len(test.want) == 0; same != c.Same() {
				t.Errorf("Same() = %v:\n%s", c.Same(), strings.Join(got, "\n"))
			}
		})
	}
}

// A design with covers of one kind in two sizes is as it was, compared with itself, and
// each size is a line of its own.
func TestSameCovers(t *testing.T) {
	two := strings.NewReplacer(
		"rear: {ambient: 35 °C}", "rear: {ambient: 35 °C}, side: {ambient: 35 °C}",
		"length: 600 mm}]", "length: 600 mm, cover: braided sleeve}, {from: tray, to: side, length: 900 mm, cover: braided sleeve}]",
		"loads:\n", "loads:\n  heater: {power: 20 W, behaves: resistor, at: side, fed by: lamp fuse, wire: {size: 16 mm²}, "+
			"returns to: frame, return wire: {size: 16 mm²}}\n").Replace(lamp)
	if c := compare.Reviews(reviewtest.Of(t, two), reviewtest.Of(t, two)); !c.Same() {
		t.Errorf("compared with itself: %q", lines(c))
	}
	got := lines(compare.Reviews(reviewtest.Of(t, lamp), reviewtest.Of(t, two)))
	for _, size := range []string{"6 mm", "15 mm"} {
		if want := "buy added sleeves and conduit: braided sleeve, bundle up to " + size; !containsPrefix(got, want) {
			t.Errorf("lacks %q: %q", want, got)
		}
	}
}

// Compared the other way round, what was added is removed.
func TestReviewsMirror(t *testing.T) {
	a := reviewtest.Of(t, lamp)
	b := reviewtest.Of(t, strings.Replace(lamp, "rating: 5 A", "rating: 30 A", 1))
	there, back := compare.Reviews(a, b), compare.Reviews(b, a)
	if len(there.NewFindings()) == 0 || len(back.NewFindings()) != 0 {
		t.Errorf("new findings: %d there, %d back", len(there.NewFindings()), len(back.NewFindings()))
	}
	if len(there.Findings) != len(back.Findings) || len(there.Purchase) != len(back.Purchase) {
		t.Errorf("%d and %d findings, %d and %d lines to buy differ", len(there.Findings), len(back.Findings),
			len(there.Purchase), len(back.Purchase))
	}
}

// A change towards risk stands before one away from it.
func TestOrder(t *testing.T) {
	text := strings.Replace(lamp, "fuses:\n", "fuses:\n  calm: {type: blade C, rating: 10 A, at: tray, fed by: key, "+
		"wire: {size: 6 mm², length: 100 mm}}\n", 1)
	changed := strings.Replace(strings.Replace(text, "rating: 10 A", "rating: 7.5 A", 1), "rating: 5 A", "rating: 7.5 A", 1)
	c := compare.Reviews(reviewtest.Of(t, text), reviewtest.Of(t, changed))
	if len(c.Fuses) != 2 || c.Fuses[0].Name != "lamp fuse" || c.Fuses[0].Concern <= 0 || c.Fuses[1].Concern >= 0 {
		t.Errorf("fuses in the order %+v", c.Fuses)
	}
}

func TestBaseline(t *testing.T) {
	at := func(rule, part string, s finding.Severity, accepted string) *finding.Finding {
		return &finding.Finding{Rule: rule, Part: part, Severity: s, Accepted: accepted}
	}
	base := compare.NewBaseline([]*finding.Finding{
		at("a", "x", finding.Fault, ""), at("a", "x", finding.Fault, ""), at("b", "y", finding.Advice, ""),
		at("c", "z", finding.Danger, "meant")})
	if len(base.Entries) != 3 {
		t.Fatalf("%d entries, want 3: accepted findings are not taken down", len(base.Entries))
	}
	now := []*finding.Finding{
		at("a", "x", finding.Advice, ""), // a third one
		at("a", "x", finding.Fault, ""),  // known
		at("a", "x", finding.Fault, ""),  // known
		at("b", "y", finding.Fault, ""),  // graver than it was
		at("c", "z", finding.Danger, "")} // no longer accepted
	unused := base.MarkKnown(now)
	if diff := cmp.Diff([]bool{false, true, true, false, false}, known(now)); diff != "" {
		t.Errorf("known (-want +got):\n%s", diff)
	}
	if len(unused) != 1 || unused[0].Rule != "b" {
		t.Errorf("unused: %v", unused)
	}
}

func known(list []*finding.Finding) []bool {
	var out []bool
	for _, f := range list {
		out = append(out, f.Known)
	}
	return out
}

// A baseline knows a finding up to its figure, and each wire of a part for itself.
func TestBaselineFigures(t *testing.T) {
	at := func(wire string, value, limit float64) *finding.Finding {
		return &finding.Finding{Rule: "a", Part: "x", Wire: wire, Severity: finding.Danger,
			Figure: figure.New(value, limit, "A", figure.Larger)}
	}
	tests := []struct {
		name string
		was  []*finding.Finding
		now  []*finding.Finding
		want []bool
	}{
		{"the same", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("feed", 30, 16)}, []bool{true}},
		{"better", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("feed", 30, 20)}, []bool{true}},
		{"worse by a twentieth", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("feed", 31.5, 16)}, []bool{true}},
		{"worse by more", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("feed", 31.6, 16)}, []bool{false}},
		{"a thinner wire", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("feed", 30, 10)}, []bool{false}},
		{"another wire", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("return", 30, 16)}, []bool{false}},
		{"two feeds, one worse", []*finding.Finding{at("feed", 30, 16), at("feed", 30, 20)},
			[]*finding.Finding{at("feed", 30, 20), at("feed", 30, 10)}, []bool{true, false}},
		{"the mild one takes the mild entry", []*finding.Finding{at("feed", 30, 16), at("feed", 30, 20)},
			[]*finding.Finding{at("feed", 30, 20), at("feed", 30, 16)}, []bool{true, true}},
		{"no figure any more", []*finding.Finding{at("feed", 30, 16)}, []*finding.Finding{at("feed", math.Inf(1), 16)}, []bool{false}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			text, err := json.Marshal(compare.NewBaseline(tt.was))
			if err != nil {
				t.Fatal(err)
			}
			base, err := compare.ReadBaseline("b.json", text)
			if err != nil {
				t.Fatal(err)
			}
			base.MarkKnown(tt.now)
			if diff := cmp.Diff(tt.want, known(tt.now)); diff != "" {
				t.Errorf("known (-want +got):\n%s", diff)
			}
		})
	}
}

// A wire that gets thinner behind the same fuse changes its finding.
func TestWorseFigure(t *testing.T) {
	old := strings.Replace(lamp, "rating: 5 A", "rating: 30 A", 1)
	thinner := strings.Replace(old, "fed by: lamp fuse, wire: {size: 1 mm²}", "fed by: lamp fuse, wire: {size: 0.5 mm²}", 1)
	for _, tt := range []struct {
		name     string
		old, new string
		worse    int
	}{{"thinner", old, thinner, 1}, {"thicker", thinner, old, 0}} {
		c := compare.Reviews(reviewtest.Of(t, tt.old), reviewtest.Of(t, tt.new))
		worse := 0
		for _, f := range c.Findings {
			if f.Worse && f.What == compare.Changed && f.New.Rule == "fuse-over-wire" && f.New.Wire == "feed" {
				worse++
			}
		}
		if worse != tt.worse {
			t.Errorf("%s: %d findings of the wire with a worse figure, want %d: %v", tt.name, worse, tt.worse, c.Findings)
		}
	}
}

func TestReadBaseline(t *testing.T) {
	good := `{"fusewright_baseline": 2, "findings": [{"rule": "a", "part": "x", "severity": "fault"}]}`
	if b, err := compare.ReadBaseline("b.json", []byte(good)); err != nil || len(b.Entries) != 1 {
		t.Errorf("a good baseline: %v, %v", b, err)
	}
	for name, text := range map[string]string{
		"not JSON": "title: x", "empty": "", "another version": `{"fusewright_baseline": 1}`, "null": "null",
		"no rule":    `{"fusewright_baseline": 2, "findings": [{"part": "x", "severity": "fault"}]}`,
		"a severity": `{"fusewright_baseline": 2, "findings": [{"rule": "a", "severity": "grave"}]}`,
	} {
		if _, err := compare.ReadBaseline("b.json", []byte(text)); err == nil || !strings.HasPrefix(err.Error(), "b.json: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// lines prints a comparison, one difference a line.
func lines(c *compare.Comparison) []string {
	var out []string
	for _, f := range c.Findings {
		of := f.New
		if of == nil {
			of = f.Old
		}
		out = append(out, fmt.Sprintf("finding %s %s %s", f.What, of.Rule, of.Part))
	}
	for kind, list := range map[string][]compare.Item{"fuse": c.Fuses, "part": c.Parts, "wire": c.Wires} {
		for _, i := range list {
			var fields []string
			for _, f := range i.Fields {
				fields = append(fields, f.Name+" "+f.Old+">"+f.New)
			}
			out = append(out, fmt.Sprintf("%s %s %s: %s", kind, i.What, i.Name, strings.Join(fields, " · ")))
		}
	}
	for _, a := range c.Budget {
		out = append(out, fmt.Sprintf("budget %s %s %.3g>%.3g", a.What, a.Name, a.Old, a.New))
	}
	for _, a := range c.Purchase {
		if math.IsNaN(a.Old) && math.IsNaN(a.New) {
			out = append(out, "buy nothing twice")
		}
		out = append(out, fmt.Sprintf("buy %s %s", a.What, a.Name))
	}
	return out
}

func containsPrefix(list []string, want string) bool {
	for _, s := range list {
		if strings.HasPrefix(s, want) {
			return true
		}
	}
	return false
}

// What is there in both under another label is listed, by part and by role; a wire
// that goes leaves the other feed of its part alone.
func TestRenumbered(t *testing.T) {
	const horn = "  horn: {power: 10 W, behaves: resistor, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}, " +
		"returns to: frame, return wire: {size: 1 mm²}}\n"
	more := strings.Replace(lamp, "loads:\n", "loads:\n"+horn, 1)
	const held = "numbers: {E1: lamp, W2: \"lamp, feed\", W3: \"lamp, return\"}\n"
	two := strings.Replace(lamp, "fed by: lamp fuse", "fed by: [lamp fuse, key]", 1) +
		"numbers: {W2: \"lamp, feed from lamp fuse\", W4: \"lamp, feed\"}\n"
	one := strings.Replace(two, "[lamp fuse, key]", "key", 1)
	tests := []struct {
		name     string
		old, new string
		want     []compare.Renumbering
	}{
		{"the same", lamp, lamp, nil},
		{"a load before it", lamp, more, []compare.Renumbering{{"load", "lamp", "E1", "E2"},
			{"feed", "lamp", "W2", "W3"}, {"return", "lamp", "W3", "W5"}}},
		{"a load before it, numbers held", lamp + held, more + held, nil},
		{"numbers held later", lamp, more + held, nil},
		{"the first of two feeds gone", two, one, nil},
		{"a label given by hand", lamp, lamp + "numbers: {W9: \"lamp, feed\"}\n", []compare.Renumbering{
			{"return", "lamp", "W3", "W2"}, {"feed", "lamp", "W2", "W9"}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c := compare.Reviews(reviewtest.Of(t, tt.old), reviewtest.Of(t, tt.new))
			if diff := cmp.Diff(tt.want, c.Renumbered); diff != "" {
				t.Errorf("renumbered (-want +got):\n%s", diff)
			}
			if c.Same() && len(tt.want) > 0 {
				t.Error("nothing differs")
			}
		})
	}
}
