package library

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/design/problem"
	"fusewright/harness/proof/fuzztest"

	"github.com/google/go-cmp/cmp"
)

func TestOwnFileAddsAndReplaces(t *testing.T) {
	lib, err := Load("testdata/own_parts.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if w := lib.WireType("silicone"); w == nil || w.ClassC != 180 || w.Size("2.5 mm2") == nil {
		t.Errorf("wire type by alias: got %+v", w)
	}
	lamp := lib.Load("forest lamp")
	if lamp == nil || lamp.PowerW != 27 || lamp.Inrush.PeakRatio != 6 {
		t.Fatalf("load: got %+v", lamp)
	}
	want := Source{Text: "measured with a current clamp", Certainty: UserData}
	if diff := cmp.Diff(want, lamp.Inrush.Source); diff != "" {
		t.Errorf("source of the inrush (-want +got):\n%s", diff)
	}
	ring := lib.Terminal("ring M6 blue")
	if ring == nil || ring.MaxA != 25 || ring.Source.Certainty != UserData {
		t.Errorf("replaced terminal: got %+v", ring)
	}
	if got := lib.TerminalFor("ring M6", 2); got != ring {
		t.Errorf("the replacing row does not stand where the old one stood: %+v", got)
	}
	if n, m := len(lib.Terminals), len(Default().Terminals); n != m {
		t.Errorf("%d terminals after a replacement, want %d", n, m)
	}
	if old := Default().Terminal("ring M6 blue"); old.MaxA == 25 {
		t.Error("the shared default library was changed")
	}
}

// head begins every file of the table below, three lines long.
const head = "fusewright library: 1\nsource: bench sheet\ncertainty: user data\n"

func TestBadFilesSayWhereAndWhat(t *testing.T) {
	cover := "covers:\n  - {name: x, kind: sleeve, max C: 90, current factor: 0.9"
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"empty", "", []string{"f.yaml:1:1: the file is empty (expected a YAML file of parts)"}},
		{"only a comment", "# nothing\n", []string{"the file is empty"}},
		{"not YAML", "a: [1,\n", []string{"f.yaml:", "not YAML"}},
		{"a list", "- 1\n", []string{"f.yaml:1:1: the file is a list (expected a mapping of keys and values)"}},
		{"two documents", head + "---\na: 1\n", []string{"more than one YAML document"}},
		{"practice not said to be afloat or not", head + "practices:\n  - {name: ferry}\n",
			[]string{`f.yaml:5:5: "afloat" is missing`}},
		{"practice neither afloat nor not", head + "practices:\n  - {name: ferry, afloat: often}\n",
			[]string{`f.yaml:5:27: "afloat" is "often" (expected true or false)`}},
		{"practice with an unknown wire", head + "practices:\n  - {name: ferry, afloat: true, usual wire: SAE J1128 TXS}\n",
			[]string{`f.yaml:5:45: unknown wire type "SAE J1128 TXS"`}},
		{"no version", "covers: []\n", []string{"\"fusewright library\" is missing (expected `fusewright library: 1`)"}},
		{"other version", "fusewright library: 9\n", []string{`f.yaml:1:21: unknown library format version "9" (expected 1)`}},
		{"unknown list", head + "cover: []\n", []string{`f.yaml:4:1: unknown key "cover" (did you mean "covers"?)`}},
		{"unknown key", head + cover + ", curent factor: 1}\n",
			[]string{`f.yaml:5:61: unknown key "curent factor" (did you mean "current factor"?)`}},
		{"missing key", head + "covers:\n  - {name: x, max C: 90}\n",
			[]string{`f.yaml:5:5: "current factor" is missing`}},
		{"two mistakes at once", head + "covers:\n  - {name: x, kind: slave, max C: hot, current factor: 1}\n",
			[]string{`unknown kind "slave" (did you mean "sleeve"?)`, `"max C" is "hot" (expected a number from 40 to 1200)`}},
		{"out of range", head + "covers:\n  - {name: x, max C: 90000, current factor: 1}\n",
			[]string{`f.yaml:5:22: "max C" is out of range: 90000 (expected a number from 40 to 1200)`}},
		{"not finite", head + "covers:\n  - {name: x, max C: .inf, current factor: 1}\n", []string{`"max C" is ".inf"`}},
		{"not a number", head + "covers:\n  - {name: x, max C: .nan, current factor: 1}\n", []string{`"max C" is ".nan"`}},
		{"overflow", head + "covers:\n  - {name: x, max C: 1e999, current factor: 1}\n", []string{`out of range: 1e999`}},
		{"duplicate key", head + cover + ", name: y}\n", []string{`key "name" is given twice (see f.yaml:5:6)`}},
		{"duplicate name", head + cover + "}\n  - {name: X, max C: 90, current factor: 1}\n",
			[]string{`f.yaml:6:5: the name "X" is already taken in covers`, `see f.yaml:5:5`}},
		{"alias taken", head + cover + "}\n  - {name: y, aliases: [x], max C: 90, current factor: 1}\n",
			[]string{`the name "x" is already taken`}},
		{"nothing to replace", head + cover + ", replaces: true}\n", []string{`nothing to replace`}},
		{"anchor", head + "covers: &a []\n", []string{"f.yaml:4:9: anchors and aliases are not taken"}},
		{"anchor bomb", head + "a: &a [x]\nb: &b [*a, *a]\nc: [*b, *b]\n", []string{"anchors and aliases"}},
		{"on for, and not how often", head + "loads:\n  - {name: x, behaves: motor, current A: 1, rated V: 12, on for s: 5}\n",
			[]string{`"on for s" and "every s" go together`}},
		{"on for longer than every", head + "loads:\n  - {name: x, behaves: motor, current A: 1, rated V: 12, on for s: 61, every s: 60}\n",
			[]string{`"on for s" and "every s" go together`}},
		{"unknown figure", head + "loads:\n  - {name: x, behaves: motor, current A: 1, rated V: 12, figure: hightest}\n",
			[]string{`unknown figure "hightest" (did you mean "highest"?)`}},
		{"lead without a size", head + "loads:\n  - {name: x, behaves: motor, current A: 1, rated V: 12, lead: {length m: 1}}\n",
			[]string{`"mm2" is missing`}},
		{"breaking capacities out of order", head + "fuse types:\n  - {name: x, kind: fuse, max V: 58, breaking A: 10, mounting: ring M8, ratings: [{rating A: 5}], breaks: [{up to V: 32, breaking A: 20}, {up to V: 14, breaking A: 30}]}\n",
			[]string{`"breaks" do not ascend: 14 comes after 32`}},
		{"no source", "fusewright library: 1\n" + cover + "}\n", []string{`"source" is missing`}},
		{"no certainty", "fusewright library: 1\nsource: bench\n" + cover + "}\n", []string{`"certainty" is missing`}},
		{"unknown certainty", "fusewright library: 1\nsource: bench\ncertainty: one sauce\n",
			[]string{`unknown certainty "one sauce" (did you mean "one source"?)`}},
		{"sizes out of order", head + "insulations:\n  - {name: PVC, resistivity K m per W: 5, emissivity: 0.9}\n" +
			"wire types:\n  - name: w\n    continuous C: 90\n    material: PVC\n    sizes:\n" +
			"      - {size: 2 mm², area mm2: 2, ohm per km: 9, conductor mm: 2, outer mm: 3}\n" +
			"      - {size: 1 mm², area mm2: 1, ohm per km: 18, conductor mm: 2, outer mm: 3}\n",
			[]string{`"sizes" do not ascend: 1 comes after 2`}},
		{"bare size", head + "insulations:\n  - {name: PVC, resistivity K m per W: 5, emissivity: 0.9}\n" +
			"wire types:\n  - name: w\n    continuous C: 90\n    material: PCV\n    sizes:\n" +
			"      - {size: 16, area mm2: 2, ohm per km: 9, conductor mm: 4, outer mm: 3}\n",
			[]string{`"16" is not a size`, `unknown insulation "PCV" (did you mean "PVC"?)`, "less than the conductor's"}},
		{"power and current", head + "loads:\n  - {name: l, behaves: motor, power W: 1, current A: 1, rated V: 12}\n",
			[]string{`give either "power W" or "current A"`}},
		{"family without its use", head + "connector families:\n  - {name: c, ways: [], min mm2: 1, max mm2: 2, max A: 5, contact mohm: 1, seals per: 0}\n",
			[]string{`"pin kind" is missing`, `"ways" is empty`, `"seals per" is out of range`}},
		{"bad rgb", head + "colours:\n  - {code: XX, name: x, rgb: red}\n", []string{`"red" is not a colour value`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Parse("f.yaml", []byte(c.text))
			list, ok := err.(problem.List)
			if !ok {
				t.Fatalf("error is %T %v, want a problem.List", err, err)
			}
			for _, p := range list {
				if p.Pos.Line < 1 || p.Pos.Col < 1 || p.Pos.File != "f.yaml" {
					t.Errorf("no place: %+v", p)
				}
			}
			for _, w := range c.want {
				if !strings.Contains(err.Error(), w) {
					t.Errorf("no %q in\n%v", w, err)
				}
			}
		})
	}
}

func TestLimits(t *testing.T) {
	big := []byte(head + "# " + strings.Repeat("x", MaxFileBytes))
	if _, err := Parse("f.yaml", big); err == nil || !strings.Contains(err.Error(), "larger than 4 MiB") {
		t.Errorf("large file: %v", err)
	}
	many := head + "covers:\n" + strings.Repeat("  - 1\n", maxEntries+1)
	if _, err := Parse("f.yaml", []byte(many)); err == nil || !strings.Contains(err.Error(), "at most 2000") {
		t.Errorf("long list: %v", err)
	}
	faults := head + "covers:\n" + strings.Repeat("  - 1\n", maxEntries)
	_, err := Parse("f.yaml", []byte(faults))
	if list, ok := err.(problem.List); !ok || len(list) != maxProblems {
		t.Errorf("%d problems listed, want %d", len(list), maxProblems)
	}
}

func TestUnreadableFiles(t *testing.T) {
	dir := t.TempDir()
	if _, err := Load(dir); err == nil || !strings.Contains(err.Error(), "not a regular file") {
		t.Errorf("folder: %v", err)
	}
	_, err := Load(filepath.Join(dir, "none.yaml"), dir)
	if list, ok := err.(problem.List); !ok || len(list) != 2 {
		t.Errorf("two unreadable files give %v", err)
	}
}

func FuzzParse(f *testing.F) {
	own, err := os.ReadFile("testdata/own_parts.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(own)
	for _, name := range []string{"fuse.yaml", "relay.yaml", "practice.yaml", "wire_sae.yaml"} {
		src, err := embedded.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(src[:min(len(src), 2000)])
	}
	f.Add([]byte(head + "a: &a [*a]\n"))
	f.Fuzz(func(t *testing.T, src []byte) {
		fuzztest.Within(t, func() {
			lib, err := Parse("f.yaml", src)
			if (lib == nil) == (err == nil) {
				t.Fatalf("library %v and error %v", lib, err)
			}
			if list, ok := err.(problem.List); err != nil && (!ok || len(list) == 0) {
				t.Fatalf("error is %T %v", err, err)
			}
			if err != nil && strings.ContainsAny(err.Error(), "\x1b\x00\u202e") {
				t.Fatalf("a message that steers a terminal: %q", err)
			}
		})
	})
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := Load(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLookups(b *testing.B) {
	lib := Default()
	for b.Loop() {
		w := lib.WireType("ISO 6722 thin wall class C")
		lib.TerminalFor("pin 10", w.Size("16 mm²").AreaMm2)
	}
}
