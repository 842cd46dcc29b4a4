package readings

import (
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/proof/fuzztest"
	"fusewright/harness/workshop/bench"
	"fusewright/library"
)

const written = `# Readings of the bench test. Isolate the battery before work. Local codes, the makers' instructions and licensed practice come first. Not for brake, steering or airbag circuits.
fusewright bench: 1
design: fen-runner.yaml
revision: B
date: 2026-05-09
by: "A., at the bench"
meter: common
readings:
  - {check: "10.5", in: night cruise, of: X3 + and −, reads: 13.21 V}
  - {check: "10.10", reads: 820 mV}
  - {check: "1.3", reads: open}
  - {check: "2.3", in: fuses, of: F2 under seat, reads: right}
  - {check: "2.4", reads: wrong}
  - {check: "E1 − to G1 −", in: night cruise, engine: 4000 rpm, reads: 31 mV}
cut list:
  - {wire: W1, of: "G1 + to F1 in, RD 4 mm², 185 mm"}
  - {wire: W3a}
`

// clean are the readings without their places, which differ between the two forms.
func clean(f *File) *File {
	f.MeterPos = problem.Pos{}
	for _, r := range f.Readings {
		r.Pos.File, r.Pos.Line, r.Pos.Col = "", 0, 0
	}
	for _, t := range f.Cut {
		t.Pos.File, t.Pos.Line, t.Pos.Col = "", 0, 0
	}
	return f
}

func read(t *testing.T, file, src string) *File {
	t.Helper()
	f, err := Read(file, []byte(src))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestReadAndWrite(t *testing.T) {
	f := read(t, "a.bench.yaml", written)
	if got := string(f.YAML()); got != written {
		t.Errorf("written again:\n%s", got)
	}
	if at := f.Readings[1].Pos.String(); at != "a.bench.yaml:10:5" {
		t.Errorf("the second reading stands at %s", at)
	}
	again := read(t, "a.csv", string(f.CSV()))
	if !reflect.DeepEqual(clean(f), clean(again)) {
		t.Errorf("through CSV:\n%s", again.YAML())
	}
	for i, want := range []struct {
		check    string
		value    float64
		of       quantity.Dimension
		right    bool
		numbered bool
	}{
		{"10.5", 13.21, quantity.Voltage, false, true}, {"10.10", 0.82, quantity.Voltage, false, true},
		{"1.3", math.Inf(1), quantity.Resistance, false, true}, {"2.3", 0, "", true, true}, {"2.4", 0, "", false, true},
		{"E1 − to G1 −", 0.031, quantity.Voltage, false, false},
	} {
		r := f.Readings[i]
		if r.Check != want.check || r.Value != want.value || r.Quantity != want.of || r.Right != want.right || r.Numbered() != want.numbered {
			t.Errorf("reading %d: %+v", i, r)
		}
	}
	if r := f.Readings[5]; r.Engine != 4000 || r.In != "night cruise" {
		t.Errorf("of a drive: %+v", r)
	}
}

func TestMistakes(t *testing.T) {
	for _, c := range []struct{ name, file, src, want string }{
		{"no YAML", "b.yaml", "fusewright bench: 1\nreadings: [", "b.yaml:2:1: this is no YAML"},
		{"a design", "b.yaml", "fusewright: 1\n", `b.yaml:1:1: these are no readings of a bench test (expected "fusewright bench: 1" as the first key)`},
		{"empty", "b.yaml", "", "b.yaml:1:1: these are no readings"},
		{"a slip in a key", "b.yaml", "fusewright bench: 1\nreeadings: []\n", `b.yaml:2:1: unknown key "reeadings" (did you mean "readings"?)`},
		{"no unit", "b.yaml", "fusewright bench: 1\nreadings:\n  - {check: 1.1, reads: 13.2}\n", `b.yaml:3:25: "13.2" has no unit`},
		{"no such unit", "b.yaml", "fusewright bench: 1\nreadings:\n  - {check: 1.1, reads: 13.2 vv}\n", `b.yaml:3:25: "13.2 vv" is no quantity of a known unit`},
		{"twice", "b.yaml", "fusewright bench: 1\nreadings:\n  - {check: 1.1, reads: 1 V}\n  - {check: 1.1, reads: 1 V}\n",
			`b.yaml:4:5: check "1.1" stands here twice (expected each reading once; see b.yaml:3:5)`},
		{"no date", "b.yaml", "fusewright bench: 1\ndate: yesterday\n", `b.yaml: date: "yesterday" (expected year, month and day, such as 2026-05-09)`},
		{"no check", "b.yaml", "fusewright bench: 1\nreadings: [{reads: 1 V}]\n", "b.yaml:2:12: a reading without check"},
		{"an alias", "b.yaml", "fusewright bench: 1\ndesign: &a x\nby: *a\n", `b.yaml:3:5: "by" is no single value`},
		{"a list as value", "b.yaml", "fusewright bench: 1\nby: [x]\n", `b.yaml:2:5: "by" is no single value`},
		{"two at once", "b.yaml", "fusewright bench: 1\nx: 1\ny: 2\n", "b.yaml:3:1: unknown key"},
		{"CSV column", "b.csv", "check,reeds\n10.1,13 V\n", `b.csv:1:7: unknown column "reeds" (did you mean "reads"?)`},
		{"CSV unit", "b.csv", "check,reads\n10.1,13\n", `b.csv:2:6: "13" has no unit`},
		{"CSV empty", "b.csv", "", "b.csv:1:1: the file is empty"},
		{"CSV too wide", "b.csv", "check,reads\n10.1,13 V,x\n", "b.csv:2:11: more columns than the first row names"},
		{"CSV quotes", "b.csv", "check,reads\n\"10.1,13 V\n", "b.csv:2:12: this is no CSV"},
		{"too many", "b.csv", "check,reads\n" + strings.Repeat("10.1,1 V\n", MaxReadings+1), "b.csv:2002:1: 2001 readings (expected at most 2000 in a file)"},
		{"CSV of thousands", "b.csv", "check;reads\n10.1;1,500 V\n", `b.csv:2:6: "1,500 V" has a comma in its number: is 1500 V or 1.5 V meant?`},
		{"too large", "b.yaml", strings.Repeat("#", MaxBytes+1), "b.yaml: the file is too large"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, err := Read(c.file, []byte(c.src))
			if err == nil || f != nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got %v\nwant %s", err, c.want)
			}
		})
	}
}

// A field that is left empty is no reading.
func TestEmptyFields(t *testing.T) {
	f := read(t, "b.yaml", "fusewright bench: 1\nreadings:\n  - {check: 1.1, reads: }\n  - {check: 1.2, reads: 1 V}\ncut list:\n")
	if len(f.Readings) != 1 || f.Readings[0].Check != "1.2" {
		t.Errorf("%+v", f.Readings)
	}
	if f := read(t, "b.csv", "check,reads\n1.1,\n1.2,1 V\n"); len(f.Readings) != 1 {
		t.Errorf("%+v", f.Readings)
	}
	if f := read(t, "b.csv", "check;in;reads\n1.1;;\n1.2;a, b;13,21 V\n"); len(f.Readings) != 1 || f.Readings[0].Value != 13.21 || f.Readings[0].In != "a, b" {
		t.Errorf("with semicolons: %+v", f.Readings)
	}
}

func TestArgument(t *testing.T) {
	r, err := Argument("E1 - to G1 -=820mV", "night cruise")
	if err != nil || r.Check != "E1 − to G1 −" || r.Value != 0.82 || r.In != "night cruise" {
		t.Errorf("%+v, %v", r, err)
	}
	for text, want := range map[string]float64{"10.7=14,2V": 14.2, "10.7=0,820 V": 0.82, "10.7=1,5000 V": 1.5, "1.3=−1,25Ω": -1.25} { // a decimal comma
		if r, err := Argument(text, ""); err != nil || r.Value != want || strings.Contains(r.Text, ",") {
			t.Errorf("%s: %+v, %v", text, r, err)
		}
	}
	for text, want := range map[string]string{"10.7=14,2": `"14.2" has no unit`, "10.7=1,420V": "is 1420 V or 1.42 V meant?", "10.1": "no =", "=3V": "no =", "10.1=": "no quantity", "10.1=7": "no unit"} {
		if _, err := Argument(text, ""); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

func test(t *testing.T) *bench.Test {
	t.Helper()
	src, err := os.ReadFile("../../../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read("fen-runner.yaml", src, library.Default())
	if err != nil {
		t.Fatal(err)
	}
	c, err := circuit.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return bench.Make(c)
}

// Every check of a design has a key of its own, and is found by it whatever its number is now.
func TestMatch(t *testing.T) {
	b := test(t)
	seen, renumbered := map[[2]string]string{}, 0
	for _, s := range b.Sections {
		for _, g := range s.Groups {
			for _, c := range g.Checks {
				in, of := Key(s, g, c)
				if was := seen[[2]string{in, of}]; was != "" {
					t.Errorf("%s and %s are both %q in %q", was, c.Number, of, in)
				}
				seen[[2]string{in, of}] = c.Number
				text := "right"
				if c.Text == "" {
					text = "1 " + quantity.Base(c.Quantity)
				}
				r, err := For(s, g, c, text)
				if err != nil {
					t.Error(err)
				}
				r.Check = "77.1" // as if all were numbered otherwise
				got, problems := Match(b, []*Reading{r})
				if len(problems) > 0 || got[0].Check != c || got[0].Was != "77.1" {
					t.Errorf("%s: %v", c.Number, problems)
				}
				renumbered++
			}
		}
	}
	if renumbered < 50 {
		t.Errorf("only %d checks", renumbered)
	}
	for _, c := range []struct{ r, want string }{
		{"99.1=1V", "no check 99.1"}, {"10.1=1A", "check 10.1 reads no current (expected a voltage"},
		{"10.1=right", `check 10.1 is a reading and "right" is none`}, {"5.1=1V", "check 5.1 is only looked at"},
	} {
		r, err := Argument(c.r, "")
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := Match(b, []*Reading{r}); !strings.Contains(problems.Error(), c.want) {
			t.Errorf("%s: %v", c.r, problems)
		}
	}
	gone := &Reading{Check: "10.5", In: "night cruise", Of: "E9 + and −", Quantity: quantity.Voltage}
	if _, problems := Match(b, []*Reading{gone}); !strings.Contains(problems.Error(), "no longer has what check 10.5 was of: E9") {
		t.Errorf("a check that is gone: %v", problems)
	}
}

func TestBeside(t *testing.T) {
	if got := Beside("a/fen-runner.yaml"); got != "a/fen-runner.bench.yaml" {
		t.Error(got)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(true, written)
	f.Add(false, "check,in,of,engine,reads\ndate,,,,2026-05-09\n10.1,,,,14.2 V\ncut,,x,,W1\n")
	f.Fuzz(func(t *testing.T, asYAML bool, src string) {
		file := map[bool]string{true: "a.yaml", false: "a.csv"}[asYAML]
		fuzztest.Within(t, func() {
			got, err := Read(file, []byte(src))
			if (got == nil) == (err == nil) {
				t.Fatalf("%v, %v", got, err)
			}
			if err != nil {
				return
			}
			again, err := Read("a.yaml", got.YAML())
			if err != nil {
				t.Fatalf("what was written does not read: %v\n%s", err, got.YAML())
			}
			if !reflect.DeepEqual(clean(got), clean(again)) {
				t.Fatalf("not the same again:\n%s\n%s", got.YAML(), again.YAML())
			}
		})
	})
}
