package harness_test

import (
	"cmp"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/circuit"
	"fusewright/harness/design"
	"fusewright/harness/edit"
	"fusewright/harness/finding"
	"fusewright/harness/mutant"
	"fusewright/harness/quantity"
	"fusewright/harness/solve"
	"fusewright/library"
)

// The properties are held against small designs, one that triggers each rule,
// and the demo designs, or against those named.
var held = flag.String("designs", "../testdata/rules/*.yaml ../designs/*.yaml", "designs that the properties are held against")

func heldDesigns(t *testing.T) map[string][]byte {
	t.Helper()
	texts := map[string][]byte{}
	for _, pattern := range strings.Fields(*held) {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("no designs in %s: %v", pattern, err)
		}
		for _, file := range files {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			texts[filepath.Base(file)] = src
		}
	}
	return texts
}

func assess(src []byte, lib *library.Library) (*harness.Review, error) {
	d, err := design.Read("same.yaml", src, lib)
	if err != nil {
		return nil, err
	}
	return harness.Assess(d)
}

// saying is all that the findings say but where they stand in the file, and the
// voltage at every load in every situation.
func saying(r *harness.Review, names *strings.Replacer) string {
	var lines []string
	for _, f := range r.Findings {
		if f.Situation == mutant.Again || f.Part == mutant.Again {
			continue // of the situation that came to it
		}
		line := fmt.Sprintf("%s: %s of %s %s: %s in %q; %s; %s; accepted %q", f.Severity, f.Rule, f.Part, f.Ref, f.What,
			f.Situation, f.Why, f.Change, f.Accepted)
		for _, n := range f.Numbers {
			line += fmt.Sprintf("; %s %.9g %s", n.Name, n.Value, n.Unit)
		}
		lines = append(lines, names.Replace(line))
	}
	for i, s := range r.Solutions {
		if i > 0 && s.Situation.Name == mutant.Again {
			continue
		}
		for _, b := range r.Circuit.Branches {
			if b.Kind == circuit.LoadBranch {
				lines = append(lines, names.Replace(fmt.Sprintf("%s: %s has %s", s.Situation.Name, b.Part.Name, volts(s, b))))
			}
		}
	}
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}

func volts(s *solve.Solution, b *circuit.Branch) string {
	if s.Status != solve.Converged {
		return "no solution"
	}
	v := s.Volts(b)
	if math.Abs(v) < 1e-6 {
		v = 0
	}
	return strconv.FormatFloat(v, 'g', 8, 64) + " V"
}

var asNamed = strings.NewReplacer()

// TestSameMeaning: the same design written otherwise has the same findings and
// figures.
func TestSameMeaning(t *testing.T) {
	lib := library.Default()
	ways := map[string]func([]byte) ([]byte, error){"tidied": edit.Tidy}
	for _, way := range mutant.Sames() {
		ways[way.Name] = func(src []byte) ([]byte, error) { return way.Make(src, lib) }
	}
	for name, src := range heldDesigns(t) {
		was, err := assess(src, lib)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		want := saying(was, asNamed)
		for way, make := range ways {
			text, err := make(src)
			if err != nil {
				t.Fatalf("%s, %s: %v", name, way, err)
			}
			now, err := assess(text, lib)
			if err != nil {
				t.Errorf("%s, %s: %v\n%s", name, way, err, text)
				continue
			}
			if got := saying(now, asNamed); got != want {
				t.Errorf("%s, %s: %s", name, way, firstDifference(want, got))
			}
		}
	}
}

// firstDifference shows the lines that only one of two texts has.
func firstDifference(want, got string) string {
	a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
	only := func(of, not []string) string {
		for _, line := range of {
			if !slices.Contains(not, line) {
				return line
			}
		}
		return "nothing more"
	}
	return "\nwas " + only(a, b) + "\nnow " + only(b, a)
}

// TestNamesDoNotMatter: with other names, in another order of the alphabet, the
// findings are the same but for the names.
func TestNamesDoNotMatter(t *testing.T) {
	lib := library.Default()
	up := func(i int) string { return fmt.Sprintf("zq%03d", i) }
	down := func(i int) string { return fmt.Sprintf("xk%03d", 999-i) }
	var pairs []string
	for i := range 200 {
		pairs = append(pairs, down(i), up(i))
	}
	back := strings.NewReplacer(pairs...)
	for name, src := range heldDesigns(t) {
		var said []string
		for _, to := range []func(int) string{up, down} {
			text, err := mutant.Renamed(src, lib, to)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			r, err := assess(text, lib)
			if err != nil {
				t.Fatalf("%s: %v\n%s", name, err, text)
			}
			lines := strings.Split(saying(r, back), "\n")
			slices.Sort(lines) // as the names sort now
			said = append(said, strings.Join(lines, "\n"))
		}
		if said[0] != said[1] {
			t.Errorf("%s: %s", name, firstDifference(said[0], said[1]))
		}
	}
}

// TestJoint: a joint in a wire takes from every load no more than
// its own resistance times the current, and no finding gets milder.
func TestJoint(t *testing.T) {
	lib := library.Default()
	joints := 0
	for name, src := range heldDesigns(t) {
		was, err := assess(src, lib)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if was.Sizing != nil {
			continue // other lengths may be given other sizes
		}
		for i, w := range was.Circuit.Wires {
			if w.Role != circuit.FeedWire || i%3 != 0 { // a third of them is enough
				continue
			}
			const joint = "the joint"
			const tailM = 0.01 // short, as it lies outside the runs and is cooler
			before := strconv.FormatFloat(w.LengthM-tailM, 'f', -1, 64) + " m"
			text, err := mutant.Jointed(src, lib, w.To.Part.Name, joint, before, "10 mm")
			if err != nil {
				continue // a coil, a way, or several feeds
			}
			now, err := assess(text, lib)
			if err != nil {
				t.Errorf("%s, %s: %v", name, w.To.Part.Name, err)
				continue
			}
			joints++
			if worse := droppedMore(was, now, w, joint); worse != "" {
				t.Errorf("%s, joint before %s: %s", name, w.To.Part.Name, worse)
			}
			for _, f := range was.Findings {
				if !stillFound(f, now.Findings, joint) {
					t.Errorf("%s, joint before %s: gone or milder: %s: %s: %s", name, w.To.Part.Name, f.Severity, f.Rule, f.What)
				}
			}
		}
	}
	t.Logf("%d joints", joints)
	if joints < 50 {
		t.Errorf("%d joints", joints)
	}
}

// droppedMore says where a load has less or more voltage than the ends and the
// joint that came into a wire can explain, with a tenth on top for what the loads
// draw at the other voltage.
func droppedMore(was, now *harness.Review, w *circuit.Wire, joint string) string {
	for i, s := range was.Solutions {
		after := now.Solutions[i]
		if s.Status != solve.Converged || after.Status != solve.Converged {
			continue
		}
		most := 1.1*(jointV(now, after, joint)-w.EndsOhm*math.Abs(s.Amps(w.Branch))) + 1e-5
		then := loadVolts(now, after)
		for name, v := range loadVolts(was, s) {
			if math.Abs(v-then[name]) > most {
				return fmt.Sprintf("%s has %.4f V and then %.4f V in %s, of which the joint explains %.4f V",
					name, v, then[name], s.Situation.Name, most)
			}
		}
	}
	return ""
}

// jointV is what a joint and the ends of its wires take, as warm as the wires are.
func jointV(r *harness.Review, s *solve.Solution, joint string) (v float64) {
	for _, w := range r.Circuit.Wires {
		if w.From.Part.Name == joint || w.To.Part.Name == joint {
			v += w.EndsOhm * s.Ohm[w.Branch.Index] / w.Branch.Ohm * math.Abs(s.Amps(w.Branch))
		}
	}
	for _, b := range r.Circuit.Branches {
		if b.Part != nil && b.Part.Name == joint {
			v += math.Abs(s.Volts(b))
		}
	}
	return v
}

func loadVolts(r *harness.Review, s *solve.Solution) map[string]float64 {
	list := map[string]float64{}
	for _, b := range r.Circuit.Branches {
		if b.Kind == circuit.LoadBranch {
			list[b.Part.Name+" "+b.Name] = s.Volts(b)
		}
	}
	return list
}

// stillFound tells whether a finding is among others, of the same part or of the
// joint that its wire now leads to, and at least as grave.
func stillFound(f *finding.Finding, list []*finding.Finding, joint string) bool {
	if f.Rule == "fuse-breaking-capacity" {
		return true // the short behind more resistance is smaller indeed
	}
	return slices.ContainsFunc(list, func(g *finding.Finding) bool {
		return g.Rule == f.Rule && cmp.Compare(g.Severity, f.Severity) >= 0 && (g.Part == f.Part || g.Part == joint)
	})
}

// gauges are the sizes of two invented wire types, one of which names its sizes
// by gauge and the other by the same areas.
var gauges = map[string]int{"0.35 mm²": 22, "0.5 mm²": 20, "0.75 mm²": 19, "1 mm²": 18, "1.5 mm²": 16, "2 mm²": 15,
	"2.5 mm²": 14, "3 mm²": 13, "4 mm²": 12, "6 mm²": 10, "10 mm²": 8, "16 mm²": 6, "25 mm²": 4, "35 mm²": 2}

var sizes = regexp.MustCompile(`(?i)[0-9./]+ ?(mm[²2]|awg)`)

// twoTypes is a library file with both, and how a size of the one is written in
// the other.
func twoTypes() (text string, toGauge, toArea func(string) string, asArea *strings.Replacer) {
	var b strings.Builder
	b.WriteString("fusewright library: 1\nsource: invented\ncertainty: user data\nwire types:\n")
	area := func(g int) string { return strconv.FormatFloat(quantity.GaugeAreaMm2(g), 'f', 4, 64) + " mm²" }
	sizes := slices.SortedFunc(maps.Values(gauges), func(a, b int) int { return b - a })
	var pairs []string
	for _, kind := range []struct {
		name, system string
		label        func(int) string
	}{{"made up gauge", "AWG", quantity.GaugeLabel}, {"made up areas", "metric", area}} {
		fmt.Fprintf(&b, "  - name: %s\n    standard: none\n    continuous C: 105\n    overload C: 130\n    short circuit C: 200\n"+
			"    material: XLPE\n    gauge system: %s\n    sizes:\n", kind.name, kind.system)
		for _, g := range sizes {
			a := strings.TrimSuffix(area(g), " mm²")
			mm2, _ := strconv.ParseFloat(a, 64) // just written
			fmt.Fprintf(&b, "      - {size: %s, area mm2: %s, ohm per km: %.4f, conductor mm: %.3f, outer mm: %.3f}\n",
				kind.label(g), a, 17.241/mm2, 1.3*math.Sqrt(mm2), 1.3*math.Sqrt(mm2)+1)
		}
	}
	for _, g := range sizes {
		pairs = append(pairs, quantity.GaugeLabel(g), area(g))
	}
	pairs = append(pairs, "made up gauge", "made up areas")
	return b.String(), func(s string) string { return quantity.GaugeLabel(gauges[s]) },
		func(s string) string { return area(gauges[s]) }, strings.NewReplacer(pairs...)
}

// TestGaugeIsAnArea: a wire named by its gauge is judged as one of the same
// copper that is named by its area.
func TestGaugeIsAnArea(t *testing.T) {
	text, toGauge, toArea, asArea := twoTypes()
	lib, err := library.LoadTexts(library.Text{File: "two.yaml", Data: []byte(text)})
	if err != nil {
		t.Fatal(err)
	}
	compared := 0
	for name, src := range heldDesigns(t) {
		if slices.ContainsFunc(sizes.FindAllString(string(src), -1), func(s string) bool { return gauges[s] == 0 }) {
			continue // not in the table above
		}
		var said []string
		for insulation, to := range map[string]func(string) string{"made up gauge": toGauge, "made up areas": toArea} {
			design, err := mutant.Rewired(src, lib, insulation, to)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			r, err := assess(design, lib)
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			said = append(said, saying(r, asArea))
		}
		if compared++; said[0] != said[1] {
			t.Errorf("%s: %s", name, firstDifference(said[0], said[1]))
		}
	}
	t.Logf("%d designs compared", compared)
	if compared < 40 {
		t.Errorf("%d designs compared", compared)
	}
}
