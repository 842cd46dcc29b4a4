package rules_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/corner"
	"fusewright/harness/review/finding"
	"fusewright/harness/review/rules"
	"fusewright/harness/study/fault"
	"fusewright/harness/study/overload"
	"fusewright/harness/study/protection"
	"fusewright/library"
)

// -walk names designs by a glob under the repository to walk them all the way; the
// suite walks a few of the rules' own designs.
var walkGlob = flag.String("walk", "", "walk every dial of these designs, such as 'testdata/corpus/fault/*.yaml'")

// walked are the designs by kind of dial that the suite walks: each has findings,
// or stands just before them, that the dial moves.
var walked = map[string][]string{
	"ambient": {"insulation-class", "fuse-over-wire", "return-below-fuse", "fuse-wire-curve", "relay-contact-overload",
		"fuse-under-load", "chafing-run", "ok/covered-runs", "ok/marine", "relay-too-hot"},
	"length":  {"voltage-drop", "short-too-weak", "fuse-wire-curve", "load-undervoltage", "ok/ground-block"},
	"thinner": {"wire-below-minimum", "shared-return-thin", "fuse-over-wire", "ok/marine", "ok/plugs", "terminal-overload"},
	"power":   {"terminal-overload", "switch-overload", "block-overload", "tap-over-spare", "ok/keyed-relay", "fuse-inrush"},
	"rating":  {"fuse-over-wire", "fuse-wire-curve", "fuse-breaking-capacity", "block-way-overload", "ok/ground-block"},
	"cover":   {"chafing-run", "flexing-run", "ok/covered-runs"},
}

// TestNothingUnsafeIsMilder turns one thing of a design in the unsafe direction,
// past every limit on the way: no part may come out milder than before.
func TestNothingUnsafeIsMilder(t *testing.T) {
	for kind := range walked {
		for _, file := range walkFiles(t, kind) {
			t.Run(kind+"/"+strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
				t.Parallel()
				src, err := os.ReadFile(file)
				if err != nil {
					t.Fatal(err)
				}
				des, err := design.Read(file, src, library.Default())
				if err != nil {
					t.Skip("does not read")
				}
				w := walk{t: t, file: file, src: src, units: unitsOf(des)}
				for _, d := range dialsOf(des, kind) {
					w.turn(d)
				}
			})
		}
	}
}

func walkFiles(t *testing.T, kind string) (files []string) {
	if *walkGlob != "" {
		files, err := filepath.Glob("../../../" + *walkGlob)
		if err != nil || len(files) == 0 {
			t.Fatalf("no designs to walk: %v", err)
		}
		return files
	}
	for _, name := range walked[kind] {
		files = append(files, filepath.Join(casesDir, name+".yaml"))
	}
	return files
}

// walk turns the dials of one design.
type walk struct {
	t     *testing.T
	file  string
	src   []byte
	units map[string][]string
}

// judged is the worst severity by part, and by part and rule, at a place of a dial.
type judged struct {
	at         float64
	part, rule map[string]finding.Severity
	bound      map[string]finding.Severity // by part, of the rules that the dial does not ease
}

// everywhere is where a situation without an operating point counts: no number of
// it is used for any part.
const everywhere = "*"

func (w *walk) judge(d *dial, at float64) *judged {
	des, err := design.Read(w.file, w.src, library.Default())
	if err != nil {
		w.t.Fatal(err)
	}
	des.Accepted = nil
	d.set(des, at)
	j := &judged{at, map[string]finding.Severity{}, map[string]finding.Severity{}, map[string]finding.Severity{}}
	for _, f := range findings(w.t, des) {
		part := f.Part
		if f.Rule == "situation-unsolved" {
			part = everywhere
		}
		j.part[part] = max(j.part[part], f.Severity)
		if d.eases[f.Rule] == "" {
			j.bound[part] = max(j.bound[part], f.Severity)
		}
		j.rule[part+": "+f.Rule] = max(j.rule[part+": "+f.Rule], f.Severity)
	}
	return j
}

// findings is the whole way to them but for sizing, of which nothing is left open.
func findings(t testing.TB, d *design.Design) []*finding.Finding {
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	in := &rules.Input{Circuit: c, Corners: corner.Compute(c), Faults: fault.Compute(c)}
	in.Solutions = in.Corners.Every()
	in.Protection = protection.Compute(c, in.Solutions, in.Faults)
	in.Overloads = overload.Compute(c, in.Solutions, in.Faults)
	return rules.Check(in)
}

// halvings is how closely the place is searched at which a finding comes or goes.
const halvings = 5

// turn judges the design at every place of a dial and around every change.
func (w *walk) turn(d *dial) {
	var before *judged
	for _, at := range d.at {
		now := w.judge(d, at)
		if before != nil {
			w.between(d, before, now, halvings)
		}
		before = now
	}
}

func (w *walk) between(d *dial, a, b *judged, deep int) {
	if !d.fine || deep == 0 || same(a, b) {
		w.compare(d, a, b)
		return
	}
	middle := w.judge(d, (a.at+b.at)/2)
	w.between(d, a, middle, deep-1)
	w.between(d, middle, b, deep-1)
}

func same(a, b *judged) bool { return fmt.Sprint(a.rule) == fmt.Sprint(b.rule) }

// compare holds each part against itself one step on, with what it serves and the
// fuses before it: a danger of a wire may be said at either.
func (w *walk) compare(d *dial, a, b *judged) {
	for part, was := range a.bound {
		now := max(b.part[part], b.part[everywhere])
		for _, name := range w.units[part] {
			now = max(now, b.part[name])
		}
		if now < was {
			w.t.Errorf("%s, %s from %.9g to %.9g: %s was %v and is %v\n\t%v\n\t%v", w.file, d.name, a.at, b.at,
				part, was, now, at(a, part), at(b, part))
		}
	}
}

// at lists what is said of a part.
func at(j *judged, part string) (list []string) {
	for key, severity := range j.rule {
		if name, rule, _ := strings.Cut(key, ": "); name == part {
			list = append(list, rule+" "+severity.String())
		}
	}
	slices.Sort(list)
	return list
}
