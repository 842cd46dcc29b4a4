package schematic

import (
	"bytes"
	"flag"
	"fmt"
	"html/template"
	"maps"
	"os"
	"path/filepath"
	"sort"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/reviewtest"
	"fusewright/render/svg"
)

var lookAt = flag.String("look", "", "folder for a page that shows every golden drawing before and after")

// goldens are the fixtures drawn in every way that no solution goes into, on
// which other stages' numbers would tell.
func goldens(t *testing.T) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	for _, name := range []string{"orchard", "corners", "back", "steps"} {
		text, err := os.ReadFile("testdata/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		review := reviewtest.Built(t, text)
		list := variants(review)
		if name == "corners" || name == "steps" {
			list = list[:1] // the geometry of the first, which is large, is checked elsewhere
		}
		for _, v := range list {
			for i, s := range laidOut(t, review, v).Paint() {
				var b bytes.Buffer
				if err := svg.Write(&b, s); err != nil {
					t.Fatal(err)
				}
				out[fmt.Sprintf("%s%s-%d.svg", name, v.name, i+1)] = b.Bytes()
			}
		}
	}
	changeGoldens(t, out)
	return out
}

// The drawings of the fixtures are recorded. After a change look at both with
// -look FOLDER, and record the new ones with -update.
func TestGoldens(t *testing.T) {
	const folder = "testdata/golden"
	now := goldens(t)
	before := map[string][]byte{}
	recorded, _ := filepath.Glob(folder + "/*.svg")
	for _, file := range recorded {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		before[filepath.Base(file)] = text
	}
	if *lookAt != "" {
		writePage(t, *lookAt, maps.Clone(before), maps.Clone(now))
	}
	if *update {
		record(t, folder, before, now)
		return
	}
	for _, name := range names(before, now) {
		switch {
		case before[name] == nil:
			t.Errorf("%s is not recorded", name)
		case now[name] == nil:
			t.Errorf("%s is recorded but not drawn any more", name)
		case !bytes.Equal(before[name], now[name]):
			t.Errorf("%s changed: look at it with -look FOLDER", name)
		}
	}
}

func record(t *testing.T, folder string, before, now map[string][]byte) {
	t.Helper()
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range names(before, now) {
		file := filepath.Join(folder, name)
		var err error
		if now[name] == nil {
			err = os.Remove(file)
		} else {
			err = os.WriteFile(file, now[name], 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

// names are the keys of both, sorted.
func names(a, b map[string][]byte) []string {
	all := map[string]bool{}
	for n := range a {
		all[n] = true
	}
	for n := range b {
		all[n] = true
	}
	var list []string
	for n := range all {
		list = append(list, n)
	}
	sort.Strings(list)
	return list
}

var beforeAfter = template.Must(template.New("before and after").Parse(`<!doctype html>
<meta charset="utf-8"><title>Drawings before and after</title>
<style>body{font:14px sans-serif;margin:1em}figure{display:inline-block;width:48%;margin:0 1% 1em 0}img{width:100%;border:1px solid #999}h2.same{color:#777}</style>
<h1>Drawings before and after</h1>
{{range .}}<h2 class="{{.State}}">{{.Name}}: {{.State}}</h2>
<figure><figcaption>before</figcaption>{{if .Before}}<img alt="" src="before/{{.Name}}">{{else}}none{{end}}</figure>
<figure><figcaption>after</figcaption>{{if .After}}<img alt="" src="after/{{.Name}}">{{else}}none{{end}}</figure>
{{end}}`))

// writePage writes the drawings and a page that shows them side by side, the
// changed ones first. The demo designs stand beside what the folder held of
// them from the run before.
func writePage(t *testing.T, folder string, before, now map[string][]byte) {
	t.Helper()
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		demoDrawings(t, folder, demo(t, name), name, before, now)
	}
	type row struct {
		Name, State   string
		Before, After bool
	}
	var changed, same []row
	for _, sub := range []string{"before", "after"} {
		if err := os.MkdirAll(filepath.Join(folder, sub), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range names(before, now) {
		r := row{name, "changed", before[name] != nil, now[name] != nil}
		for sub, text := range map[string][]byte{"before": before[name], "after": now[name]} {
			if text == nil {
				continue
			}
			if err := os.WriteFile(filepath.Join(folder, sub, name), text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if bytes.Equal(before[name], now[name]) {
			r.State = "same"
			same = append(same, r)
		} else {
			changed = append(changed, r)
		}
	}
	var b bytes.Buffer
	if err := beforeAfter.Execute(&b, append(changed, same...)); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(folder, "index.html"), b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}

// demoDrawings adds a demo design in every way of drawing it; what the last run
// drew is before. They are not recorded, since findings and values change with
// other stages.
func demoDrawings(t *testing.T, folder string, review *harness.Review, name string, before, now map[string][]byte) {
	t.Helper()
	for _, v := range variants(review) {
		for i, s := range laidOut(t, review, v).Paint() {
			var b bytes.Buffer
			if err := svg.Write(&b, s); err != nil {
				t.Fatal(err)
			}
			file := fmt.Sprintf("demo-%s%s-%d.svg", name, v.name, i+1)
			now[file] = b.Bytes()
			if old, err := os.ReadFile(filepath.Join(folder, "after", file)); err == nil {
				before[file] = old
			}
		}
	}
}
