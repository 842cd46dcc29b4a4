package page_test

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/render/page"
	"fusewright/render/symbol"
)

// designs are the demos, and made-up ones of other forms.
func designs(t testing.TB) map[string][]byte {
	t.Helper()
	all := map[string][]byte{"made-up 60": synth.YAML(60, 7), "made-up 200": synth.YAML(200, 3)}
	files, _ := filepath.Glob("../../designs/*.yaml")
	for _, f := range files {
		all[filepath.Base(f)] = buildtest.File(t, f)
	}
	return all
}

var spot = regexp.MustCompile(`class="spot" data-of="([^"]*)"`)

// Whatever the page lights up or lets one choose stands in the drawing; what a finding is at has
// its flag.
func TestEverythingIsDrawn(t *testing.T) {
	all := designs(t)
	for _, form := range synth.Forms { // some of them too deep for one page
		all[string(form)] = form.YAML(100, 1)
	}
	for name, text := range all {
		r := reviewtest.Of(t, text)
		m := page.Of(r, nil)
		svg, err := page.Drawing(r)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		spots := map[string]bool{}
		for _, s := range spot.FindAllStringSubmatch(string(svg), -1) {
			spots[s[1]] = true
		}
		for _, w := range m.Circuits {
			for _, mark := range slices.Concat(w.Out, w.Back) {
				if !spots[mark] && !hidden(m, mark) {
					t.Errorf("%s: %s, on the way of %s, is not drawn", name, mark, w.Of)
				}
			}
			if len(w.Out) < 3 || len(w.Back) < 1 {
				t.Errorf("%s: the way of %s is %v and %v", name, w.Of, w.Out, w.Back)
			}
		}
		for _, p := range m.Parts {
			if !spots[p.ID] && !hidden(m, p.ID) {
				t.Errorf("%s: %s %s cannot be chosen", name, p.ID, p.Name)
			}
		}
		for _, f := range m.Findings {
			if f.Part != "" && !hidden(m, f.Part) && !regexp.MustCompile(`id="flag-`+regexp.QuoteMeta(itoa(f.Number))+`(-\d+)?"`).Match(svg) {
				t.Errorf("%s: finding %d at %s has no flag", name, f.Number, f.Part)
			}
		}
	}
}

var (
	group = regexp.MustCompile(`(?s)class="spot" data-of="([^"]*)">(.*?)</g>`)
	line  = regexp.MustCompile(`d="([^"]*)" stroke`)
	point = regexp.MustCompile(`[ML](-?[\d.]+) (-?[\d.]+)`)
)

// The way out that is lit up hangs together: each element begins within a module of the grid of
// where the one before it ends. From the battery to a tap it is the factory's own and not drawn.
func TestWaysHangTogether(t *testing.T) {
	for name, text := range designs(t) {
		r := reviewtest.Of(t, text)
		svg, err := page.Drawing(r)
		if err != nil {
			t.Fatal(err)
		}
		ways := map[string][][2]float64{}
		for _, g := range group.FindAllStringSubmatch(string(svg), -1) {
			for _, l := range line.FindAllStringSubmatch(g[2], -1) {
				for _, p := range point.FindAllStringSubmatch(l[1], -1) {
					x, _ := strconv.ParseFloat(p[1], 64)
					y, _ := strconv.ParseFloat(p[2], 64)
					ways[g[1]] = append(ways[g[1]], [2]float64{x, y})
				}
			}
		}
		m := page.Of(r, nil)
		for _, w := range m.Circuits {
			last := ""
			for _, mark := range w.Out {
				if len(ways[mark]) == 0 {
					continue
				}
				tap := slices.ContainsFunc(m.Parts, func(p page.Part) bool { return p.ID == mark && p.Kind == "tap" })
				if gap := apart(ways[last], ways[mark]); last != "" && !tap && gap > symbol.M+1e-6 {
					t.Errorf("%s, %s: %.1f mm between %s and %s", name, w.Of, gap, last, mark)
				}
				last = mark
			}
		}
	}
}

// apart is the distance between the nearest points of two ways.
func apart(a, b [][2]float64) float64 {
	least := math.Inf(1)
	for _, p := range a {
		for _, q := range b {
			least = min(least, math.Hypot(p[0]-q[0], p[1]-q[1]))
		}
	}
	return least
}

func itoa(n int) string { b, _ := json.Marshal(n); return string(b) }

// hidden tells of what a drawing has no line of: the factory's fuse in a tap, the frame behind a
// ground's sign, a connector of the loom, which is drawn in the wire it parts.
func hidden(m *page.Model, mark string) bool {
	ref, _, _ := strings.Cut(mark, ".")
	for _, p := range m.Parts {
		if p.ID == ref && (p.Kind == "tap" && ref != mark || p.Kind == "ground" || p.Kind == "connector") {
			return true
		}
	}
	return false
}

// Every circuit that the page may ask for can be asked for, in every situation, and its elements
// are those of its way.
func TestCircuits(t *testing.T) {
	for name, text := range designs(t) {
		r := reviewtest.Of(t, text)
		for _, w := range page.Of(r, nil).Circuits {
			for i := range r.Design.Situations {
				c := page.CircuitOf(r, w.Of, i)
				if c == nil || c.Situation != r.Design.Situations[i].Name || c.Turn < 1 || c.Turn >= len(c.Steps)+1 {
					t.Errorf("%s: the circuit of %s in situation %d: %+v", name, w.Of, i, c)
				}
			}
			if c := page.CircuitOf(r, w.Of, -1); c.Way.In != w.In {
				t.Errorf("%s: %s loses most in situation %d and %d", name, w.Of, c.Way.In, w.In)
			}
		}
		if page.CircuitOf(r, "no such thing", 0) != nil {
			t.Error("the circuit of nothing")
		}
	}
}

// The model is the same bytes for the same design, and names nothing beyond its folder.
func TestModelIsSteady(t *testing.T) {
	for name, text := range designs(t) {
		one, err := json.Marshal(page.Of(reviewtest.Of(t, text), nil))
		if err != nil {
			t.Fatal(err)
		}
		if two, _ := json.Marshal(page.Of(reviewtest.Of(t, text), nil)); string(one) != string(two) {
			t.Errorf("%s: another model the second time", name)
		}
	}
}

// Documents, styles and modules name nothing that would have to be fetched elsewhere, and have no
// script or style that the page's policy refuses.
func TestAssetsStandAlone(t *testing.T) {
	files, err := filepath.Glob("assets/*")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d assets, %v", len(files), err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		bare := strings.ReplaceAll(string(text), "http://www.w3.org/2000/svg", "")
		for _, no := range []string{"http://", "https://", "//cdn", "@import", "innerHTML", "outerHTML", "insertAdjacentHTML", "eval(", "new Function", " style=", "onclick=\"", "document.write"} {
			if strings.Contains(bare, no) {
				t.Errorf("%s has %q", f, no)
			}
		}
		if strings.HasSuffix(f, ".html") && regexp.MustCompile(`<script(?: [^>]*)?>[^<]`).Match(text) {
			t.Errorf("%s has a script in it", f)
		}
	}
}
