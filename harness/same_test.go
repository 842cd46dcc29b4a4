package harness_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/proof/mutant"
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
			line += fmt.Sprintf("; %s %.7g %s", n.Name, n.Value, n.Unit)
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

var anyName = regexp.MustCompile(`zq[0-9]+`)

// TestNamesDoNotMatter: with other names, in another order of the alphabet, the
// findings are the same but for the names, and but for the order in which a
// sentence lists several, which is that of the alphabet.
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
			for i, line := range lines {
				if strings.Contains(line, " others") { // a list cut short names the first of the alphabet
					line = anyName.ReplaceAllString(line, "")
				}
				words := strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(" ,;:()\"", r) })
				slices.Sort(words)
				lines[i] = strings.Join(words, " ")
			}
			slices.Sort(lines)
			said = append(said, strings.Join(lines, "\n"))
		}
		if said[0] != said[1] {
			t.Errorf("%s: %s", name, firstDifference(said[0], said[1]))
		}
	}
}
