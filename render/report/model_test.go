package report

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/proof/fuzztest"
	"fusewright/library"
)

// modelOf takes a design file through every stage.
func modelOf(t testing.TB, file string, libraries ...library.Text) *Model {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return modelFrom(t, library.Text{File: filepath.Base(file), Data: src}, libraries)
}

func modelFrom(t testing.TB, text library.Text, libraries []library.Text) *Model {
	t.Helper()
	lib, err := library.LoadTexts(libraries...)
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(text.File, text.Data, lib)
	if err != nil {
		t.Fatal(err)
	}
	r, err := harness.Assess(d)
	if err != nil {
		t.Fatal(err)
	}
	return NewModel(r, text, libraries)
}

func written(t testing.TB, m *Model) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteJSON(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// A model read back and solved again is the same model.
func TestRoundTrip(t *testing.T) {
	for _, file := range []string{"../../designs/fen-runner.yaml", "../../designs/reed-skiff.yaml",
		"../../testdata/hostile/hostile.yaml", "../../testdata/read/ok/every-key.yaml"} {
		t.Run(filepath.Base(file), func(t *testing.T) {
			first := written(t, modelOf(t, file))
			m, was, err := ReadModel("model.json", first)
			if err != nil {
				t.Fatal(err)
			}
			text := library.Text{File: m.Source.File, Data: []byte(m.Source.Text)}
			again := modelFrom(t, text, m.Texts())
			now, err := again.Plain()
			if err != nil {
				t.Fatal(err)
			}
			differences, numbers := Differences(was, now, 10)
			if len(differences) > 0 || numbers < 100 {
				t.Errorf("%d numbers, %v", numbers, differences)
			}
			if !bytes.Equal(first, written(t, again)) {
				t.Error("the bytes differ")
			}
		})
	}
}

// The model keeps the circuit's books: currents balance at every node, and
// every branch and terminal names a node that is there.
func TestModelBalances(t *testing.T) {
	m := modelOf(t, "../../designs/fen-runner.yaml")
	for _, s := range m.Situations {
		into := make([]float64, len(m.Nodes))
		for _, b := range m.Branches {
			if i := s.BranchA[b.Index]; i != nil {
				into[b.B] += *i
				into[b.A] -= *i
			}
		}
		for n, sum := range into {
			if sum > 1e-6 || sum < -1e-6 {
				t.Errorf("%s: %g A left at node %s", s.Name, sum, m.Nodes[n].Name)
			}
		}
	}
	if len(m.Library) < 5 || m.Source.SHA256 == "" || len(m.Wires) < 10 {
		t.Errorf("%d library rows, %d wires", len(m.Library), len(m.Wires))
	}
	for _, row := range m.Library {
		if row.Source == "" || row.Certainty == "" {
			t.Errorf("%s %q has no source", row.Kind, row.Name)
		}
	}
}

func TestDifferences(t *testing.T) {
	for _, c := range []struct{ name, first, then, want string }{
		{"same", `{"a":[1,"x",null,true]}`, `{"a":[1,"x",null,true]}`, ""},
		{"within", `{"a":100}`, `{"a":100.00000005}`, ""},
		{"beyond", `{"a":100}`, `{"a":100.000001}`, "a: 100 became 100.000001"},
		{"small", `{"a":0}`, `{"a":1e-10}`, ""},
		{"null", `{"a":null}`, `{"a":0}`, "a: null became 0"},
		{"text", `{"a":{"b":"x"}}`, `{"a":{"b":"y"}}`, `a.b: "x" became "y"`},
		{"shorter", `{"a":[1,2]}`, `{"a":[1]}`, "a[1]: gone, was 2"},
		{"of a later program", `{"a":{}}`, `{"a":{"states":[1]}}`, ""},
		{"longer", `{"a":[]}`, `{"a":[{}]}`, "a[0]: new, an object of 0"},
		{"key gone", `{"a":1,"b":2}`, `{"a":1}`, "b: gone, was 2"},
		{"other kind", `{"a":[1]}`, `{"a":{"b":1}}`, "a: a list of 1 became an object of 1"},
		{"list for text", `{"a":"x"}`, `{"a":[1]}`, `a: "x" became a list of 1`},
		{"steering text", `{"a":"x"}`, `{"a":"\u001b[2J\u202e"}`, `a: "x" became "\x1b[2J\u202e"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			list, _ := Differences(plainOf(t, c.first), plainOf(t, c.then), 10)
			got := ""
			for _, d := range list {
				got += d.String()
			}
			if got != c.want {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
}

func plainOf(t *testing.T, text string) any {
	t.Helper()
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// Each thing wrong with a model is told with its place, each limit by its name.
func TestBadModels(t *testing.T) {
	whole := string(written(t, modelOf(t, "../../designs/fen-runner.yaml")))
	hash := hashOf(nil)
	libraries := `{"fusewright_model":1,"source":{"sha256":"` + hash + `"},"libraries":[` +
		strings.TrimSuffix(strings.Repeat(`{"sha256":"`+hash+`"},`, maxModelLibrary+1), ",") + `]}`
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "m.json:1:1: not JSON"},
		{"not JSON", "{\n  \"a\": x}", "m.json:2:8: not JSON: invalid character 'x'"},
		{"cut off", whole[:len(whole)/2], "not JSON: unexpected end of JSON input"},
		{"more behind", whole + "{}", "not JSON: invalid character '{' after top-level value"},
		{"other shape", `{"fusewright_report": 1}`, "model version 0 is not known (expected \"fusewright_model\": 1)"},
		{"later version", `{"fusewright_model": 2}`, "model version 2 is not known"},
		{"wrong kind", "{\"fusewright_model\": 1,\n\"parts\": 7}", `m.json:2:10: "parts" is a number`},
		{"number too large", `{"fusewright_model": 1e999}`, `"fusewright_model" is a number`},
		{"edited design", strings.Replace(whole, "# Demo design", "# demo design", 1), "the design text does not match its sha256"},
		{"depth", strings.Repeat("[", maxModelDepth+1), "m.json:1:33: nested more than 32 levels deep"},
		{"depth behind a text", `{"a":"\"[[[","b":` + strings.Repeat("[", 40) + "}", "nested more than 32 levels deep"},
		{"libraries", libraries, "101 libraries (expected at most 100)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			m, _, err := ReadModel("m.json", []byte(c.text))
			if err == nil || m != nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %s", err, c.want)
			}
		})
	}
	_, _, err := ReadModel("m.json", make([]byte, MaxModelBytes+1))
	if err == nil || !strings.Contains(err.Error(), "more than 67108864 bytes (expected at most 64 MiB)") {
		t.Errorf("large model: %v", err)
	}
}

// FuzzReadModel: whatever the bytes, there is a model or problems with a place.
func FuzzReadModel(f *testing.F) {
	const seed = "testdata/small_model.json"
	if u := flag.Lookup("update"); u != nil && u.Value.String() == "true" { // of this package's other tests
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			f.Fatal(err)
		}
		if err := os.WriteFile(seed, written(f, modelOf(f, "../../testdata/read/ok/least.yaml")), 0o644); err != nil {
			f.Fatal(err)
		}
	}
	src, err := os.ReadFile(seed)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(src)
	f.Add([]byte(`{"fusewright_model":1,"source":{"file":"x","sha256":"","text":""}}`))
	f.Add([]byte("{\"a\":\"\\u202e\x1b\"}"))
	f.Fuzz(func(t *testing.T, src []byte) {
		fuzztest.Within(t, func() {
			m, all, err := ReadModel("m.json", src)
			if (m == nil) == (err == nil) || (all == nil) == (err == nil) {
				t.Fatalf("model %v, error %v", m, err)
			}
			if err != nil {
				if strings.ContainsAny(err.Error(), "\x1b\u202e") {
					t.Fatalf("a message that steers a terminal: %q", err)
				}
				return
			}
			if list, _ := Differences(all, all, 10); len(list) > 0 {
				t.Fatalf("differs from itself: %v", list)
			}
		})
	})
}

func TestJSONHoldsNothingUnseen(t *testing.T) {
	var b bytes.Buffer
	text := "a\u202eb\u009b\x7f\x1b\U000e0041é漢"
	if err := WriteJSON(&b, map[string]string{"x": text}); err != nil {
		t.Fatal(err)
	}
	want := "{\n  \"x\": \"a\\u202eb\\u009b\\u007f\\u001b\\udb40\\udc41é漢\"\n}\n"
	if b.String() != want {
		t.Errorf("got %q\nwant %q", b.String(), want)
	}
	var back map[string]string
	if err := json.Unmarshal(b.Bytes(), &back); err != nil || back["x"] != text {
		t.Errorf("read back as %q, %v", back["x"], err)
	}
}

func TestDot(t *testing.T) {
	if got := dotText(`a"b\c`, "x\n\u202ey"); got != `"a\"b\\c\nx y"` {
		t.Errorf("got %s", got)
	}
}
