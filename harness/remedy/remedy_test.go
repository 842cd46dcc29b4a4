package remedy_test

import (
	"bytes"
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/example"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/remedy"
	"fusewright/harness/review/finding"
	"fusewright/harness/sizing"
)

// TestLeavesTheDesign: after all trials the design is as before, the review of it the
// same, every open finding stands under one cause, and a second run says the same.
func TestLeavesTheDesign(t *testing.T) {
	files, _ := filepath.Glob("../../testdata/corpus/fault/*.yaml")
	if len(files) < 50 {
		t.Fatalf("only %d designs", len(files))
	}
	tried, mended := 0, 0
	for i, file := range files {
		if i%3 != 0 { // a third of them, for time
			continue
		}
		src := buildtest.File(t, file)
		r, fresh := reviewtest.Of(t, src), reviewtest.Of(t, src)
		p := r.Remedies()
		again, err := harness.Assess(r.Design)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := words(again.Findings), words(fresh.Findings); !slices.Equal(got, want) {
			t.Errorf("%s: after the trials\n%q\nbefore\n%q", file, got, want)
		}
		if !sizing.SameValues(r.Design, fresh.Design) {
			t.Errorf("%s: the trials changed the design", file)
		}
		under := 0
		of := map[int]*remedy.Cause{} // where no change mends any
		for _, c := range p.Causes {
			for _, f := range c.Findings {
				if o := of[f.Number]; c.Remedy == nil && o != nil && o != c {
					t.Errorf("%s: %d, %s, stands under two causes", file, f.Number, f.Rule)
				}
				if c.Remedy == nil {
					of[f.Number] = c
				}
			}
			under += len(c.Findings)
			if c.Remedy != nil {
				mended++
			}
		}
		if open := open(r.Findings); under != open {
			t.Errorf("%s: %d findings under causes, %d open", file, under, open)
		}
		if plan, want := said(fresh.Remedies()), said(p); plan != want {
			t.Errorf("%s: a second run says\n%s\nthe first\n%s", file, plan, want)
		}
		tried += p.Trials
	}
	if tried < 100 || mended < 10 {
		t.Errorf("only %d changes tried, %d causes mended", tried, mended)
	}
}

func open(list []*finding.Finding) int {
	return finding.Count(list, finding.Danger) + finding.Count(list, finding.Fault) + finding.Count(list, finding.Advice)
}

func words(list []*finding.Finding) []string {
	var out []string
	for _, f := range finding.All(list) {
		out = append(out, f.Severity.String()+" "+f.Rule+": "+f.What+" "+f.Accepted)
	}
	return out
}

func said(p *remedy.Plan) string {
	var b strings.Builder
	for _, c := range p.Causes {
		for _, x := range append([]*remedy.Trial{c.Remedy}, c.Tried...) {
			if x != nil {
				fmt.Fprintln(&b, x.About, x.Was, x.Will, len(x.Mends), len(x.Eases), len(x.Breaks))
			}
		}
		fmt.Fprintln(&b, words(c.Findings))
	}
	return b.String()
}

// lampWith is a lamp behind a fuse with its wires as given.
func lampWith(fuse, feed, coil string) []byte {
	return []byte(`
fusewright: 1
title: One lamp
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 14 Ah, rate: 10 h, resistance: 10 mΩ, at: battery}
charging: {regulated: 14.2 V, output: {1200 rpm: 12 A, 3000 rpm: 24 A}, idle: 1200 rpm, cruise: 3000 rpm, hot derating: 10 %}
vehicle loads: {ignition: 60 W}
places: {battery: {ambient: 45 °C}, rear: {ambient: 40 °C}}
runs: [{from: battery, to: rear, length: 2 m, cover: corrugated conduit}]
wire: {insulation: ISO 6722 thin wall class B, size: 1.5 mm², colour: RD, return colour: BK}
taps: {pilot: {at: battery, hot: key, fuse: 10 A, spare: 500 mA, supervised: no}}
fuses: {f: ` + fuse + `}
relays: {k: {form: mini make, at: battery, fed by: f, coil: {fed by: pilot, returns to: battery negative, ` + coil + `}}}
loads: {lamp: {type: LED auxiliary lamp, plug: sealed 1.5, at: rear, fed by: k, wire: ` + feed + `, returns to: battery negative}}
`)
}

// TestRemedies are single faults with the change that a fitter would make, by hand.
func TestRemedies(t *testing.T) {
	for _, c := range []struct {
		name, fuse, feed, coil string
		rule, about, will      string // of the first cause
		form                   string // of the relay; "" = mini make
	}{
		{"fuse too far", "{type: blade C, rating: 5 A, at: battery, fed by: battery, wire: {length: 600 mm}}",
			"{}", "suppressed by: resistor", "fuse-too-far", "f, wire", "178 mm long", ""},
		{"coil bare", "{type: blade C, rating: 5 A, at: battery, fed by: battery, wire: {length: 150 mm}}",
			"{}", "suppressed by: none", "coil-unsuppressed", "k, coil", "with a resistor", ""},
		{"fuse too large", "{type: blade C, rating: 30 A, at: battery, fed by: battery, wire: {length: 150 mm, size: 4 mm²}}",
			"{size: 0.75 mm²}", "suppressed by: resistor", "fuse-over-wire", "f", "blade C 10 A", ""},
		{"a coil for 24 V", "{type: blade C, rating: 5 A, at: battery, fed by: battery, wire: {length: 150 mm}}",
			"{}", "suppressed by: resistor", "relay-coil-voltage", "k", "mini make 12 V", "mini make 24 V"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := reviewtest.Of(t, bytes.Replace(lampWith(c.fuse, c.feed, c.coil), []byte("form: mini make,"), []byte("form: "+cmp.Or(c.form, "mini make")+","), 1))
			p := r.Remedies()
			for _, cause := range p.Causes {
				for _, f := range cause.Findings {
					if f.Rule != c.rule {
						continue
					}
					if cause.Remedy == nil {
						t.Fatalf("no remedy for %s", f.What)
					}
					if got := cause.Remedy; got.About != c.about || got.Will != c.will {
						t.Errorf("%s: %s, want %s: %s", got.About, got.Will, c.about, c.will)
					}
					return
				}
			}
			t.Fatalf("no %s in %q", c.rule, words(r.Findings))
		})
	}
}

// TestUntried: a cause against which no change is known says so, and one that changes were
// tried against without success does not.
func TestUntried(t *testing.T) {
	for _, x := range []struct {
		file, rule string
		want       bool
	}{
		{"fuse-at-the-lamp-end", "fuse-too-far", false},
		{"fuse-at-the-lamp-end", "data-missing", true},
		{"joint-fed-by-nothing", "fed-by-nothing", true},
		{"relay-on-the-header-bracket", "insulation-class", false},
		{"grips-on-the-glovebox-feed", "tap-over-spare", true},
	} {
		src := buildtest.File(t, "../../testdata/corpus/fault/"+x.file+".yaml")
		seen := false
		for _, c := range reviewtest.Of(t, src).Remedies().Causes {
			if c.Findings[0].Rule != x.rule {
				continue
			}
			seen = true
			if c.Remedy != nil || c.Untried != x.want {
				t.Errorf("%s, %s: untried %v, remedy %v", x.file, x.rule, c.Untried, c.Remedy)
			}
		}
		if !seen {
			t.Errorf("%s has no %s", x.file, x.rule)
		}
	}
}

// TestFittedFuseStays: no larger fuse is put in for one that is there already, and what is said
// is to feed the horn over a fuse of its own; a fuse of the builder's is.
func TestFittedFuseStays(t *testing.T) {
	const text = `
fuses:
  horn fuse: {type: blade C, rating: 10 A, at: battery tray, fed by: keyed feed, wire: {size: 2.5 mm², length: 100 mm}, fitted: FITTED}
taps:
  keyed feed: {at: battery tray, hot: key, fuse: 30 A, spare: 25 A, supervised: no}
loads:
  horn: {current: 14 A, behaves: resistor, at: rear, fed by: horn fuse, wire: {size: 2.5 mm²}, returns to: frame, return wire: {size: 2.5 mm²}}
`
	for fitted, larger := range map[string]bool{"no": true, "yes": false} {
		r := reviewtest.Of(t, []byte(example.Design(strings.ReplaceAll(text, "FITTED", fitted))))
		found := false
		for _, c := range r.Remedies().Causes {
			for _, f := range c.Findings {
				if f.Rule != "fuse-under-load" {
					continue
				}
				found = true
				if up := c.Remedy != nil && c.Remedy.About == "horn fuse"; up != larger || strings.Contains(f.Change, "a fuse of its own") == larger {
					t.Errorf("fitted %s: larger %t, %q", fitted, up, f.Change)
				}
			}
		}
		if !found {
			t.Errorf("fitted %s: nothing found", fitted)
		}
	}
}
