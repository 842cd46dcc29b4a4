package whatif_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/proof/synth"
	"fusewright/harness/remedy/whatif"
	"fusewright/harness/review/compare"
	"fusewright/harness/review/finding"
	"fusewright/harness/study/budget"
)

func assess(src []byte) (*harness.Review, error) {
	d, err := design.Read("x.yaml", src, nil)
	if err != nil {
		return nil, err
	}
	return harness.Assess(d)
}

func open(t *testing.T, file string) (*harness.Review, []byte) {
	t.Helper()
	src, err := os.ReadFile("../../../designs/" + file)
	if err != nil {
		t.Fatal(err)
	}
	r, err := assess(src)
	if err != nil {
		t.Fatal(err)
	}
	return r, src
}

// Every line that changes is whole, comments and all, and stands where the new text has it.
func TestLinesToCopy(t *testing.T) {
	r, src := open(t, "fen-runner.yaml")
	for _, c := range []struct {
		name    string
		changes []whatif.Change
		was     []string // of the lines gone
		now     []string // of those put in
	}{
		{"a rating, in its short form, with its comment", []whatif.Change{{"blocks › rear › ways › 1 › fuse", "10 A"}},
			[]string{"      1: {fuse: 7.5 A}               # auxiliary lamps"}, []string{"      1: {fuse: 10 A}               # auxiliary lamps"}},
		{"a wire", []whatif.Change{{"switches › lamp switch › wire › size", "4 mm²"}},
			[]string{"  lamp switch: {type: sealed rocker 20 A, at: handlebar, fed by: rear 1, wire: {size: 2.5 mm², colour: YE}}"},
			[]string{"  lamp switch: {type: sealed rocker 20 A, at: handlebar, fed by: rear 1, wire: {size: 4 mm², colour: YE}}"}},
		{"a power", []whatif.Change{{"loads › heated grips › power", "30 W"}}, []string{"power: 36 W"}, []string{"power: 30 W"}},
		{"a power that the type gives", []whatif.Change{{"loads › left lamp › power", "24 W"}}, []string{"critical: yes}"}, []string{"critical: yes, power: 24 W}"}},
		{"off in a situation", []whatif.Change{{"situations › town, waiting › on › charger", "off"}},
			[]string{"on: [navigation, charger, left lamp, right lamp]"}, []string{"on: [navigation, left lamp, right lamp]"}},
		{"on and another off in one list", []whatif.Change{{"situations › town, waiting › on › heated grips", "on"}, {"situations › town, waiting › on › charger", "off"}},
			[]string{"on: [navigation, charger, left lamp, right lamp]"}, []string{"on: [navigation, left lamp, right lamp, heated grips]"}},
		{"off where all are on", []whatif.Change{{"situations › night cruise › on › box lamp", "off"}},
			[]string{"on: all}"}, []string{"on: [left lamp, right lamp, heated grips, navigation, charger]}"}},
	} {
		o, err := whatif.Try(r, src, c.changes, assess)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		text := strings.Split(string(o.Text), "\n")
		old := strings.Split(string(src), "\n")
		var was, now []string
		for _, l := range o.Lines {
			if l.New > 0 {
				now = append(now, l.Text)
				if text[l.New-1] != l.Text {
					t.Errorf("%s: line %d is %q, not %q", c.name, l.New, text[l.New-1], l.Text)
				}
				continue
			}
			was = append(was, l.Text)
			if old[l.Old-1] != l.Text {
				t.Errorf("%s: line %d was %q, not %q", c.name, l.Old, old[l.Old-1], l.Text)
			}
		}
		match := func(got, want []string) bool {
			return slices.EqualFunc(got, want, func(g, w string) bool { return strings.Contains(g, w) })
		}
		if !match(was, c.was) || !match(now, c.now) {
			t.Errorf("%s:\n-%q\n+%q", c.name, was, now)
		}
	}
}

// What cannot be is said, and nothing is tried.
func TestRefused(t *testing.T) {
	r, src := open(t, "fen-runner.yaml")
	for name, c := range map[string]struct {
		change whatif.Change
		says   string
	}{
		"no such place":        {whatif.Change{At: "loads › kettle › power", Value: "1 W"}, "nothing that can be changed"},
		"a size of no library": {whatif.Change{At: "switches › lamp switch › wire › size", Value: "3 mm²"}, "not for choice"},
		"a power of no unit":   {whatif.Change{At: "loads › heated grips › power", Value: "warm"}, "power"},
		"several lines":        {whatif.Change{At: "loads › heated grips › power", Value: "30 W\ntitle: x"}, "no value"},
		"more keys":            {whatif.Change{At: "loads › heated grips › power", Value: "30 W, critical: yes"}, "power"},
	} {
		_, err := whatif.Try(r, src, []whatif.Change{c.change}, assess)
		if err == nil || !whatif.IsWrong(err) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Before and after are what the comparison of the two files says, and the file as it was and as it would be.
func TestAgreesWithDiff(t *testing.T) {
	for file, every := range map[string]int{"fen-runner.yaml": 7, "reed-skiff.yaml": 9, "hay-wain.yaml": 60, "sedge-sloop.yaml": 60} {
		r, src := open(t, file)
		offers, err := whatif.Offers(r, src)
		if err != nil {
			t.Fatal(err)
		}
		tried, failed := 0, 0
		for i, o := range offers {
			if i%every != 0 { // a share of them, of every kind
				continue
			}
			at := slices.Index(o.Choices, o.Now)
			value := o.Choices[(at+1)%len(o.Choices)]
			out, err := whatif.Try(r, src, []whatif.Change{{At: o.ID, Value: value}}, assess)
			if err != nil {
				if failed++; !whatif.IsWrong(err) {
					t.Errorf("%s, %s to %s: %v", file, o.ID, value, err)
				}
				continue
			}
			tried++
			again, err := assess(out.Text)
			if err != nil {
				t.Fatal(err)
			}
			c := compare.Reviews(r, again)
			went, came := 0, 0
			for _, f := range c.Findings {
				switch {
				case f.What == compare.Removed && f.Old.Accepted == "":
					went++
				case f.What == compare.Added && f.New.Accepted == "":
					came++
				}
			}
			for _, f := range out.Findings {
				switch f.Became {
				case whatif.Mended:
					went--
				case whatif.New:
					came--
				}
			}
			if went != 0 || came != 0 {
				t.Errorf("%s, %s to %s: %d mended and %d new findings are missing", file, o.ID, value, went, came)
			}
			open := 0
			for _, f := range out.Findings {
				if f.Became != whatif.Mended && f.Finding.Accepted == "" {
					open++
				}
			}
			if want := finding.Count(again.Findings, finding.Danger) + finding.Count(again.Findings, finding.Fault) + finding.Count(again.Findings, finding.Advice); open < want {
				t.Errorf("%s, %s to %s: %d findings after, the check has %d", file, o.ID, value, open, want)
			}
			for _, a := range c.Budget {
				name, is := strings.CutPrefix(a.Name, "spare current, ")
				running := slices.ContainsFunc(again.Budget.Lines, func(l *budget.Line) bool { return l.Situation.Name == name && l.Situation.EngineRPM > 0 })
				if !is || a.What != compare.Changed || !running {
					continue
				}
				if !slices.ContainsFunc(out.Figures, func(f whatif.Figure) bool {
					return f.About == "spare, "+name && f.Was == a.Old && f.Now == a.New
				}) && len(c.Budget) <= 4 {
					t.Errorf("%s, %s to %s: spare in %s is not among the figures", file, o.ID, value, name)
				}
			}
		}
		t.Logf("%s: %d offers, %d tried, %d refused", file, len(offers), tried, failed)
	}
}

// The lamp switch's wire from 2.5 to 4 mm²: 1.5 mm² more copper of 8.89 g/cm³ over its cut length.
func TestCopperByHand(t *testing.T) {
	r, src := open(t, "fen-runner.yaml")
	o, err := whatif.Try(r, src, []whatif.Change{{"switches › lamp switch › wire › size", "4 mm²"}}, assess)
	if err != nil {
		t.Fatal(err)
	}
	was, now := o.CopperG()
	// Runs of 780 and 340 mm, twice 60 mm of slack and 45 mm for both ends; those of 4 mm² take 5 mm more.
	if g, want := now-was, 8.89*(4*1.290-2.5*1.285); math.Abs(g-want) > 0.01 {
		t.Errorf("%.3f g more, want %.3f", g, want)
	}
}

// Halogen lamps change for LED: type, and the power that the file gives of them.
func TestLEDInItsPlace(t *testing.T) {
	_, src := open(t, "fen-runner.yaml")
	text := strings.Replace(string(src), "left lamp: {type: LED auxiliary lamp,", "left lamp: {type: halogen lamp 55 W, power: 55 W,", 1)
	r, err := assess([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	o, err := whatif.Try(r, []byte(text), []whatif.Change{{"loads › left lamp › type", "LED auxiliary lamp"}}, assess)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(o.Text), "left lamp: {type: LED auxiliary lamp, power: 18 W,") {
		t.Error(o.Lines)
	}
}

// BenchmarkOffers is what a harness of a thousand wires offers: some 0.06 s of processor time (2026-11).
func BenchmarkOffers(b *testing.B) {
	src := synth.YAML(1000, 1)
	r, err := assess(src)
	if err != nil {
		b.Fatal(err)
	}
	b.ResetTimer()
	for range b.N {
		if _, err := whatif.Offers(r, src); err != nil {
			b.Fatal(err)
		}
	}
}
