package edit

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/proof/buildtest"
	"fusewright/harness/proof/fuzztest"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"
)

const sample = `# head
loads:
  left lamp:            # by the fork
    type: halogen lamp 35 W   # with its own plug
    fed by: rear 1

  grips: {type: heated grips,   fed by: rear 2, wire: {colour: OG, size: auto}}  # flow
  horn: {type: horn,
    fed by: rear 3}
  empty: {}
blocks:
  rear: {ways: {1: auto, 2: {fuse: auto}, 3: {}}}
runs:
  - {from: a, to: b}
  - from: b
    to: c
    near:
      what: pipe
fuses:
  main:
    fed by: battery`

func TestSet(t *testing.T) {
	cases := []struct {
		name    string
		changes []Change
		want    []string // lines that come instead of lines; "-" = goes, "+" = comes
	}{
		{"block record, new key", []Change{{[]string{"loads", "left lamp"}, "sign", "lamp", nil}},
			[]string{"+    sign: lamp"}},
		{"block record, key there, comment kept", []Change{{[]string{"loads", "Left  Lamp"}, "type", "bulb 5 W", nil}},
			[]string{"-    type: halogen lamp 35 W   # with its own plug", "+    type: bulb 5 W   # with its own plug"}},
		{"new record in a block record", []Change{{[]string{"loads", "left lamp", "wire"}, "size", "1.5 mm²", nil}},
			[]string{"+    wire: {size: 1.5 mm²}"}},
		{"new record with two keys", []Change{{[]string{"loads", "left lamp", "wire"}, "size", "1 mm²", nil},
			{[]string{"loads", "left lamp", "wire"}, "colour", "RD", nil}},
			[]string{"+    wire: {size: 1 mm², colour: RD}"}},
		{"flow record, key there", []Change{{[]string{"loads", "grips", "wire"}, "size", "0.75 mm²", nil}},
			[]string{"-  grips: {type: heated grips,   fed by: rear 2, wire: {colour: OG, size: auto}}  # flow",
				"+  grips: {type: heated grips,   fed by: rear 2, wire: {colour: OG, size: 0.75 mm²}}  # flow"}},
		{"flow record of two lines, two new records", []Change{{[]string{"loads", "horn", "wire"}, "size", "1 mm²", nil},
			{[]string{"loads", "horn", "return wire"}, "size", "2 mm²", nil}},
			[]string{"-    fed by: rear 3}", "+    fed by: rear 3, wire: {size: 1 mm²}, return wire: {size: 2 mm²}}"}},
		{"empty flow record, two keys", []Change{{[]string{"loads", "empty"}, "type", "horn", nil}, {[]string{"loads", "empty"}, "at", "bar", nil}},
			[]string{"-  empty: {}", "+  empty: {type: horn, at: bar}"}},
		{"short form and records of ways", []Change{{[]string{"blocks", "rear", "ways", "1"}, "fuse", "5 A", nil},
			{[]string{"blocks", "rear", "ways", "2"}, "fuse", "7.5 A", nil}, {[]string{"blocks", "rear", "ways", "3"}, "fuse", "3 A", nil}},
			[]string{"-  rear: {ways: {1: auto, 2: {fuse: auto}, 3: {}}}", "+  rear: {ways: {1: 5 A, 2: {fuse: 7.5 A}, 3: {fuse: 3 A}}}"}},
		{"list items in flow and block form", []Change{{[]string{"runs", "0"}, "cover", "braided sleeve", nil},
			{[]string{"runs", "1"}, "cover", "spiral wrap", nil}},
			[]string{"-  - {from: a, to: b}", "+  - {from: a, to: b, cover: braided sleeve}", "+    cover: spiral wrap"}},
		{"last line without a line end", []Change{{[]string{"fuses", "main"}, "rating", "15 A", nil}},
			[]string{"+    rating: 15 A"}},
		{"a value that needs quotes", []Change{{[]string{"fuses", "main"}, "label", "a: b, c", nil}},
			[]string{`+    label: "a: b, c"`}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := Set([]byte(sample), c.changes)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(c.want, changed(Diff("x", []byte(sample), got))); diff != "" {
				t.Errorf("(-want +got)\n%s\n%s", diff, got)
			}
			again, err := Set(got, c.changes)
			if err != nil || string(again) != string(got) {
				t.Errorf("setting the same again gives %v\n%s", err, again)
			}
			crlf := strings.ReplaceAll(sample, "\n", "\r\n")
			windows, err := Set([]byte(crlf), c.changes)
			if err != nil || strings.ReplaceAll(string(windows), "\r\n", "\n") != string(got) ||
				strings.Contains(strings.ReplaceAll(string(windows), "\r\n", ""), "\n") {
				t.Errorf("with CRLF: %v\n%q", err, windows)
			}
		})
	}
}

// changed keeps the lines of a difference that changed.
func changed(diff string) []string {
	var list []string
	for _, line := range strings.Split(diff, "\n") {
		if len(line) > 0 && strings.ContainsRune("+-", rune(line[0])) &&
			!strings.HasPrefix(line, "---") && !strings.HasPrefix(line, "+++") {
			list = append(list, line)
		}
	}
	return list
}

func TestSetRefuses(t *testing.T) {
	const shared = "loads:\n  a: {wire: &w {colour: RD}}\n  b: {wire: *w}\n  c: {wire: {size: &s 1 mm²}}\n"
	cases := []struct {
		name, src string
		changes   []Change
		want      string
	}{
		{"no such record", sample, []Change{{[]string{"loads", "nobody", "wire"}, "size", "1 mm²", nil}}, `there is no "nobody"`},
		{"an anchor that would need two values", shared, []Change{{[]string{"loads", "a", "wire"}, "size", "1 mm²", nil},
			{[]string{"loads", "b", "wire"}, "size", "2 mm²", nil}}, "shared by an anchor"},
		{"a shared value", shared, []Change{{[]string{"loads", "c", "wire"}, "size", "1 mm²", nil}}, "shared by an anchor"},
		{"a record where a value should be", sample, []Change{{[]string{"loads"}, "grips", "x", nil}}, "a record or list"},
		{"not YAML", "a: [", []Change{{[]string{"a"}, "b", "c", nil}}, "yaml"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if _, err := Set([]byte(c.src), c.changes); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q", err, c.want)
			}
		})
	}
	if got, err := Set([]byte(shared), []Change{{[]string{"loads", "a", "wire"}, "size", "1 mm²", nil},
		{[]string{"loads", "b", "wire"}, "size", "1 mm²", nil}}); err != nil || !strings.Contains(string(got), "&w {colour: RD, size: 1 mm²}") {
		t.Errorf("one value through an anchor: %v\n%s", err, got)
	}
}

func TestTidy(t *testing.T) {
	const was = "fusewright:   1\ntitle: \"x:  y\"\t\nsystem: 12V\npractice: motorcycle\r\n\n\n\n" +
		"battery: { chemistry: AGM,capacity: 14Ah , rate: 10 hours, resistance: 9mohm, at: tray, }  # note  \n" +
		"places: {tray: {ambient: 45C}, [unknown]: x}\n"
	const want = "fusewright: 1\ntitle: \"x:  y\"\nsystem: 12 V\npractice: motorcycle\n\n" +
		"battery: {chemistry: AGM, capacity: 14 Ah, rate: 10 h, resistance: 9 mΩ, at: tray}  # note\n" +
		"places: {tray: {ambient: 45 °C}}\n"
	got, err := Tidy([]byte(strings.Replace(was, ", [unknown]: x", "", 1)))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, string(got)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// A design saved with the line ends of Windows is tidied as any other, and keeps them.
func TestTidyWindowsLines(t *testing.T) {
	files, err := filepath.Glob("../../../designs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no designs: %v", err)
	}
	for _, file := range files {
		src := buildtest.File(t, file)
		want, err := Tidy(src)
		if err != nil {
			t.Fatal(err)
		}
		got, err := Tidy([]byte(strings.ReplaceAll(string(src), "\n", "\r\n")))
		if err != nil {
			t.Errorf("%s: %v", file, err)
		} else if diff := cmp.Diff(strings.ReplaceAll(string(want), "\n", "\r\n"), string(got)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", file, diff)
		}
	}
}

// sameDesign compares two designs but for the words quantities were written in.
func sameDesign(t *testing.T, was, now *design.Design) {
	t.Helper()
	diff := cmp.Diff(plain(was), plain(now))
	if diff != "" {
		t.Errorf("tidying changes the design (-was +now):\n%s", diff)
	}
}

// written is what tidying may change in a printed design.
var written = regexp.MustCompile(`(?s)Text:.*? Pos:[^}]*`)

// plain prints what a design holds, places in the file and spellings left out.
func plain(d *design.Design) string {
	var b strings.Builder
	for _, v := range []any{d.SystemV, d.Limits, d.Battery.CapacityAh, d.Battery.ResistanceOhm, d.Battery.RateH,
		d.Charging.RegulatedV, d.Charging.Output, d.Charging.IdleRPM, d.Charging.HotDerating} {
		fmt.Fprintf(&b, "%+v\n", v)
	}
	feeds := func(list []design.Feed) {
		for _, f := range list {
			fmt.Fprintf(&b, "  %s %s %s %s %+v %+v\n", f.From.Part.PartName(), f.From.Terminal, f.Wire.Size.Label,
				f.Wire.Colour.Code(), f.Wire.LengthM, f.Wire.SlackM)
		}
	}
	for _, x := range d.VehicleLoads {
		fmt.Fprintf(&b, "%s %+v %+v %+v %s\n", x.Name, x.PowerW, x.CurrentA, x.Duty, x.When)
	}
	for _, x := range d.Places {
		fmt.Fprintf(&b, "%s %+v %t %t\n", x.Name, x.AmbientC, x.Wet, x.Moves)
	}
	for _, x := range d.Runs {
		fmt.Fprintf(&b, "%s %+v %+v %v\n", x.Name, x.LengthM, x.AmbientC, x.Cover)
	}
	for _, x := range d.Fuses {
		fmt.Fprintf(&b, "%s %s %g\n", x.Name, x.Type.Name, x.Rating.RatingA)
		feeds(x.FedBy)
	}
	for _, x := range d.Blocks {
		fmt.Fprintf(&b, "%s %+v %+v\n", x.Name, x.WayA, x.TotalA)
		for _, w := range x.Ways {
			fmt.Fprintf(&b, "  %s %v %t\n", w.Number, w.Fuse, w.Spare)
		}
		feeds(x.FedBy)
	}
	for _, x := range d.Loads {
		fmt.Fprintf(&b, "%s %g %g %s %+v %+v %+v\n", x.Name, x.PowerW, x.RatedV, x.Behaves, x.MinV, x.Duty, x.Inrush)
		feeds(x.FedBy)
		feeds(x.Returns)
	}
	for _, x := range d.Situations {
		fmt.Fprintf(&b, "%s %s %g %d\n", x.Name, x.Key, x.EngineRPM, len(x.On))
	}
	for _, x := range d.Rides {
		for _, l := range x.Legs {
			fmt.Fprintf(&b, "%s %+v %g %+v\n", x.Name, l.Lasts, l.EngineRPM, l.AmbientC)
		}
	}
	return written.ReplaceAllString(b.String(), "")
}

// FuzzTidy: whatever design reads, its tidied text reads to the same design,
// keeps its comments, and is tidy.
func FuzzTidy(f *testing.F) {
	for _, pattern := range []string{"../../../designs/*.yaml", "../../../testdata/read/ok/*.yaml", "../../../testdata/corpus/clean/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			f.Fatalf("no seeds in %s: %v", pattern, err)
		}
		for _, file := range files {
			src := buildtest.File(f, file)
			f.Add(src)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		fuzztest.Within(t, func() {
			was, err := design.Read("x.yaml", src, nil)
			if err != nil {
				return
			}
			out, err := Tidy(src)
			if err != nil {
				if strings.Contains(err.Error(), "something else") || strings.Contains(err.Error(), "would not be") {
					t.Fatalf("%v\n%q", err, src)
				}
				return
			}
			now := buildtest.Design(t, out)
			sameDesign(t, was, now)
			again, err := Tidy(out)
			if err != nil || string(again) != string(out) {
				t.Fatalf("tidied twice (%v):\n%s", err, Diff("x", out, again))
			}
		})
	})
}

// FuzzSet: setting a value in any YAML gives YAML with that value, or an error.
func FuzzSet(f *testing.F) {
	f.Add([]byte(sample), "loads", "left lamp", "wire", "size")
	f.Add([]byte("a: {b: {c: &x d}}"), "a", "b", "", "c")
	f.Fuzz(func(t *testing.T, src []byte, one, two, three, key string) {
		fuzztest.Within(t, func() {
			if key == "" || quote(key) != key || strings.ContainsAny(key, " \t\r\n") || three != "" && quote(three) != three {
				return
			}
			path := []string{one, two}
			if three != "" {
				path = append(path, three)
			}
			out, err := Set(src, []Change{{path, key, "1.5 mm²", nil}})
			if err != nil {
				return
			}
			var n yaml.Node
			if err := yaml.Unmarshal(out, &n); err != nil {
				t.Fatalf("%v\n%q", err, out)
			}
		})
	})
}

// rough spoils the spacing of a design in ways that mean nothing: TestRough
// holds the tidied text of every spoilt one against the design.
func rough(src string, r *rand.Rand) string {
	pick := func(words ...string) string { return words[r.IntN(len(words))] }
	var b strings.Builder
	for _, line := range strings.Split(src, "\n") {
		comment := ""
		if i := strings.Index(line, " #"); i >= 0 {
			line, comment = line[:i], line[i:]
		}
		if strings.ContainsAny(line, `"'`) || strings.HasPrefix(strings.TrimSpace(line), "#") {
			b.WriteString(line + comment + "\n")
			continue
		}
		indent := line[:len(line)-len(strings.TrimLeft(line, " "))]
		body := line[len(indent):]
		for _, spoil := range []struct {
			was string
			now []string
		}{{", ", []string{", ", ",  ", " , ", ",   "}}, {": ", []string{": ", ":  ", " : "}}, {"{", []string{"{", "{ "}},
			{"}", []string{"}", " }", ", }"}}, {" mm²", []string{" mm²", "mm2", " mm2", "mm²"}},
			{" °C", []string{" °C", "C", "°C"}}, {" A}", []string{" A}", "A}", " amps}"}}, {" mm,", []string{"mm,", " mm,"}}} {
			body = replaceEach(body, spoil.was, func() string { return pick(spoil.now...) })
		}
		b.WriteString(indent + body + comment + pick("", "", " ", "\t") + pick("\n", "\n", "\r\n", "\n\n\n"))
	}
	return b.String()
}

func replaceEach(s, was string, now func() string) string {
	parts := strings.Split(s, was)
	var b strings.Builder
	for i, p := range parts {
		if i > 0 {
			b.WriteString(now())
		}
		b.WriteString(p)
	}
	return b.String()
}

func TestRough(t *testing.T) {
	files, err := filepath.Glob("../../../testdata/corpus/clean/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatalf("no designs: %v", err)
	}
	tried, read := 0, 0
	for seed := range uint64(10) {
		for _, file := range files {
			src := buildtest.File(t, file)
			text := rough(string(src), rand.New(rand.NewPCG(seed, 1)))
			tried++
			was, err := design.Read("x.yaml", []byte(text), nil)
			if err != nil {
				continue // spoilt too much, such as "12 A , }" in a list of texts
			}
			read++
			out, err := Tidy([]byte(text))
			if err != nil {
				t.Fatalf("%s, seed %d: %v", file, seed, err)
			}
			now := buildtest.Design(t, out)
			sameDesign(t, was, now)
			again, err := Tidy(out)
			if err != nil || string(again) != string(out) {
				t.Fatalf("%s, seed %d: tidied twice (%v):\n%s", file, seed, err, Diff("x", out, again))
			}
		}
	}
	if read*2 < tried {
		t.Errorf("only %d of %d spoilt designs read", read, tried)
	}
	t.Logf("%d of %d spoilt designs read", read, tried)
}

// A comment at the very end, without a line feed after it, stays and is no
// obstacle.
func TestTidyEndsInComment(t *testing.T) {
	got, err := Tidy([]byte("loads:\n  lamp:\n    at:  bow\n# end"))
	if want := "loads:\n  lamp:\n    at: bow\n# end\n"; err != nil || string(got) != want {
		t.Errorf("got %q, error %v, want %q", got, err, want)
	}
}

// Line ends of Windows on both sides are no part of what a difference shows.
func TestDiffOfWindowsLines(t *testing.T) {
	got := Diff("a", []byte("one\r\ntwo\r\n"), []byte("one\r\nthree\r\n"))
	if strings.Contains(got, "\r") || !strings.Contains(got, "-two\n+three\n") {
		t.Errorf("got %q", got)
	}
}
