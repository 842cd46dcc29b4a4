package schematic

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/review/compare"
	"fusewright/library"
	"fusewright/render/scene"
	"fusewright/render/schematic/paint"
	"fusewright/render/schematic/sign"
	"fusewright/render/svg"
)

// oneChange are edits of the fixture, one for each kind of change.
var oneChange = []struct {
	name, old, new string
	want           string // kind, references and text of each entry
}{
	{"none", "", "", ""},
	{"part-added", "\n\ngrounds:", "\n  work lamp: {symbol: lamp, behaves: filament lamp, power: 21 W, at: mast, fed by: lamp switch, wire: {colour: YE}, returns to: bar}\n\ngrounds:",
		"renumbered [W7 W8 W9 W10 W11 W12 W13 W14 W15] [W8 W9 W10 W11 W12 W13 W14 W15 W17] W8–W15 were W7–W14 · W17 was W15\n" +
			"added [] [E4 W7 W16] power 21 W at 12 V · behaves filament lamp · fed by lamp switch · returns to bar · at mast"},
	{"part-removed", "  sprayer: {symbol: pump, behaves: motor, power: 60 W, at: mast, fed by: dash block 2, wire: {colour: GN}, returns to: bar}\n", "",
		"renumbered [W8 W9 W10 W11 W12 W14 W15] [W7 W8 W9 W10 W11 W12 W13] W7–W11 were W8–W12 · W12–W13 were W14–W15\n" +
			"removed [M1 W7 W13] [] power 60 W at 12 V · behaves motor · fed by dash block 2 · returns to bar · at mast"},
	{"wire-thicker", "fed by: main\n    wire: {size: 4 mm²", "fed by: main\n    wire: {size: 6 mm²", "changed [W2] [W2] size 4 mm² → 6 mm²"},
	{"fuse-larger", "1: {fuse: 10 A}", "1: {fuse: 15 A}", "changed [F2] [F2] rating 10 A → 15 A"},
	{"feed-moved", "at: mast, fed by: dash block 2", "at: mast, fed by: dash block 1", "changed [W7] [W7] from dash block 2 → dash block 1"},
	{"load-stronger", "power: 60 W", "power: 90 W", "changed [M1] [M1] power 60 W at 12 V → 90 W at 12 V"},
	{"relay", "suppressed by: resistor", "suppressed by: diode", "changed [K1] [K1] suppressed by resistor → diode"},
	{"surroundings", "mast: {ambient: 30 °C", "mast: {ambient: 45 °C", "changed [] [] ambient 30 °C → 45 °C"},
}

// Each kind of change makes one entry with its own sign and line, and the
// drawings of them are recorded (see TestGoldens).
func changeGoldens(t *testing.T, out map[string][]byte) {
	t.Helper()
	text, err := os.ReadFile("testdata/orchard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	before := reviewtest.Built(t, text)
	for _, c := range oneChange {
		if !strings.Contains(string(text), c.old) {
			t.Fatalf("%s: nothing to replace", c.name)
		}
		after := reviewtest.Built(t, bytes.Replace(text, []byte(c.old), []byte(c.new), 1))
		changes := compare.Reviews(before, after)
		var got []string
		for _, x := range changes.Marks() {
			got = append(got, fmt.Sprint(x.What, " ", x.Old, " ", x.New, " ", x.Text))
		}
		if s := strings.Join(got, "\n"); s != c.want {
			t.Errorf("%s: entries\n%s\nwant\n%s", c.name, s, c.want)
		}
		sheets, err := DrawChanges(changes, "revision A", Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(sheets) != 1 {
			t.Errorf("%s: %d sheets, want one", c.name, len(sheets))
		}
		for i, s := range sheets {
			var b bytes.Buffer
			if err := svg.Write(&b, s); err != nil {
				t.Fatal(err)
			}
			out[fmt.Sprintf("change-%s-%d.svg", c.name, i+1)] = b.Bytes()
		}
	}
}

// The kinds of changes differ in shape, not by colour alone.
func TestChangeSignsDifferInShape(t *testing.T) {
	shapes := map[string]compare.What{}
	for _, kind := range []compare.What{compare.Added, compare.Changed, compare.Removed, compare.Judged} {
		s := scene.NewSheet(100, 100, "")
		sign.DrawChange(s, &sign.Entry{Number: 7, Change: &compare.Mark{What: kind}}, 50, 50)
		sign.Band(s, kind, "W1", []scene.Point{{X: 10, Y: 20}, {X: 60, Y: 20}})
		var b strings.Builder
		for _, item := range s.Items {
			if p := item.Path; p != nil {
				full := p.Fill != nil && p.Fill.Colour != sign.White
				fmt.Fprint(&b, p.Verbs, p.Points, full, p.Stroke != nil && p.Stroke.Dash != nil, "\n")
			}
		}
		if other, ok := shapes[b.String()]; ok {
			t.Errorf("%s looks like %s in black and white", kind, other)
		}
		shapes[b.String()] = kind
	}
}

// What is drawn for changes keeps the rules of the drawing: on one edited
// design, and where nearly everything differs, on every size of paper and in
// every way of drawing it.
func TestChangesKeepTheRules(t *testing.T) {
	most := 24
	if testing.Short() {
		most = 8
	}
	for seed := range most {
		wires := 8 + seed*11%70
		text := synth.YAML(wires, int64(seed))
		other := synth.YAML(wires, int64(seed+100))
		if seed%2 == 0 {
			other = bytes.ReplaceAll(text, []byte("fuse: 10 A"), []byte("fuse: 15 A"))
			other = bytes.ReplaceAll(other, []byte("1.5 mm²"), []byte("2.5 mm²"))
		}
		earlier, now := assessed(t, "earlier.yaml", text), assessed(t, "now.yaml", other)
		changes := compare.Reviews(earlier, now)
		list := variants(now)[1:5]
		v := list[seed/2%len(list)]
		v.Size = []string{"A4", "A3", "Letter", "Tabloid"}[seed%4]
		t.Run(fmt.Sprintf("seed %d, %d wires, %s%s, %d changes", seed, wires, v.Size, v.name, len(changes.Marks())), func(t *testing.T) {
			for _, r := range []*harness.Review{earlier, now} {
				r.Design.Sheet.PlaceBoxes, r.Design.Sheet.Lengths = v.places, v.lengths
			}
			d, err := planChanges(changes, "revision A", v.Options)
			if err != nil {
				t.Fatal(err)
			}
			examine(t, d, 6)
		})
	}
}

// The drawing of changes is the sheet that the installer knows: every part stands exactly where
// the usual drawing has it, a load that is gone and whose slot is kept where it stood, and
// nearly every sign finds room.
func TestChangesStandAsDrawn(t *testing.T) {
	gone, filled, all, bare := 0, 0, 0, 0
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		before := reviewtest.Built(t, text)
		numbered := withNumbers(t, before, string(text))
		removal := edits{"remove a load, with numbers", func(_ string, n int) string { return remove(numbered, n) }}
		for _, e := range append(slices.Clone(singleEdits), removal) {
			for n := range 4 {
				now := reviewtest.Built(t, []byte(e.make(string(text), n)))
				d, err := planChanges(compare.Reviews(before, now), "revision A", Options{})
				if err != nil {
					t.Fatal(err)
				}
				plain, err := plan(now, Options{})
				if err != nil {
					t.Fatal(err)
				}
				usual, changed := placesOf(plain), placesOf(d)
				for part, at := range usual {
					if changed[part] != at {
						t.Errorf("%s, %s %d: %s stands at %v, usually at %v", name, e.name, n, part, changed[part], at)
					}
				}
				if len(d.Pages) != len(plain.Pages) {
					t.Errorf("%s, %s %d: %d pages, usually %d", name, e.name, n, len(d.Pages), len(plain.Pages))
				}
				bare += len(unsigned(d))
				all += len(d.Marks.List)
				if strings.HasPrefix(e.name, "remove a load, with") {
					earlier, err := plan(before, Options{})
					if err != nil {
						t.Fatal(err)
					}
					gone++
					for part, at := range placesOf(earlier) {
						if _, still := usual[part]; !still && stays(at, changed[part]) {
							filled++
						}
					}
				}
			}
		}
	}
	if filled*10 < gone*7 {
		t.Errorf("%d of %d loads that are gone are drawn where they stood", filled, gone)
	}
	if bare*30 > all {
		t.Errorf("%d of %d changes have no sign beside what they are about", bare, all)
	}
	t.Logf("%d of %d changes have no sign; %d of %d loads that are gone are drawn where they stood", bare, all, filled, gone)
}

// Where a load is gone from what people have drawn, the changes break no rule that the usual
// drawing keeps.
func TestChangesOfTheCorpus(t *testing.T) {
	files, err := filepath.Glob("../../testdata/corpus*/*/*.yaml")
	clean, _ := filepath.Glob("../../testdata/corpus-clean-trade/*.yaml")
	if files = append(files, clean...); err != nil || len(files) == 0 {
		t.Fatalf("no designs: %v", err)
	}
	drawn := 0
	for n := 0; n < len(files); n += 16 {
		text, err := os.ReadFile(files[n])
		if err != nil {
			t.Fatal(err)
		}
		if from, to := loads(string(text)); !strings.Contains(string(text), "\nloads:\n") || !loadLine.Match(text[from:to]) {
			continue
		}
		before := assessed(t, files[n], text)
		after, err := design.Read(files[n], []byte(remove(withNumbers(t, before, string(text)), n)), library.Default())
		if err != nil {
			continue // something else needs that load
		}
		now, err := harness.Assess(after)
		if err != nil {
			t.Fatal(err)
		}
		drawn++
		t.Run(filepath.Base(files[n]), func(t *testing.T) {
			plain, err := plan(now, Options{NoFindings: true})
			if err != nil {
				t.Fatal(err)
			}
			d, err := planChanges(compare.Reviews(before, now), "before", Options{})
			if err != nil {
				t.Fatal(err)
			}
			usual := faultsOf(plain)
			for _, f := range faultsOf(d) {
				if !slices.Contains(usual, f) {
					t.Error(f)
				}
			}
		})
	}
	if drawn < 8 {
		t.Errorf("%d drawings", drawn)
	}
}

// unsigned are the changes of what is drawn that have no sign beside it.
func unsigned(d *paint.Drawing) (list []*sign.Entry) {
	signs := map[string]bool{}
	for _, s := range d.Paint() {
		open := []string{""}
		for _, item := range s.Items {
			switch g := item.Begin; {
			case item.End:
				open = open[:len(open)-1]
			case g != nil && g.Class == "change" && open[len(open)-1] != "list":
				number, _, _ := strings.Cut(strings.TrimPrefix(g.Title, "change "), ":")
				signs[number] = true
				fallthrough
			case g != nil:
				open = append(open, g.Class)
			}
		}
	}
	for _, m := range d.Marks.List {
		if len(m.Refs) > 0 && m.Change.What != compare.Relabelled && d.Drawn(m) && !signs[fmt.Sprint(m.Number)] {
			list = append(list, m)
		}
	}
	return list
}
