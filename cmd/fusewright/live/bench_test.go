package live

import (
	"bytes"
	"encoding/json"
	"errors"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"fusewright/harness/workshop/diagnosis"
	"fusewright/render/page"
)

// desked is a server on a demo design, with its file of readings in memory.
func desked(t *testing.T, file *[]byte) *Server {
	t.Helper()
	text, err := os.ReadFile(demo)
	if err != nil {
		t.Fatal(err)
	}
	s := New(Options{File: "designs/fen-runner.yaml", Read: func() ([]byte, error) { return text, nil },
		Assess: assess,
		Kept:   func() ([]byte, error) { return *file, nil },
		Keep:   func(text []byte) error { *file = text; return nil }})
	review, err := s.opt.Assess(text)
	if err != nil {
		t.Fatal(err)
	}
	s.put(s.state(text, review, nil))
	return s
}

// ask asks a question as the page does, and decodes its answer.
func ask[T any](t *testing.T, s *Server, method, path, body string) (answer T, code int) {
	t.Helper()
	r := httptest.NewRequest(method, path, strings.NewReader(body))
	r.Header.Set("Content-Type", "application/json")
	r.Header.Set("Sec-Fetch-Site", "same-origin")
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, r)
	if err := json.Unmarshal(w.Body.Bytes(), &answer); err != nil {
		t.Fatalf("%s %s: %v: %s", method, path, err, w.Body)
	}
	return answer, w.Code
}

// Two browsers change the file in turn, each knowing nothing of the other: it holds what both read.
func TestReadingsOfTwo(t *testing.T) {
	var file []byte
	s := desked(t, &file)
	bench, _ := ask[benchAnswer](t, s, "GET", "/api/bench", "")
	if bench.Kept.File != "fen-runner.bench.yaml" || len(bench.Kept.Readings) > 0 {
		t.Errorf("at first: %+v", bench.Kept)
	}
	checks := map[string]page.BenchCheck{}
	in := map[string]string{}
	for _, section := range bench.Test.Sections {
		for _, c := range section.Checks {
			checks[c.Number], in[c.Number] = c, section.In
		}
	}
	reading := func(number, reads string) string {
		text, _ := json.Marshal(keptReading{number, in[number], checks[number].Of, reads})
		return string(text)
	}
	cut := bench.Test.Cut[3]
	for _, body := range []string{
		`{"date": "2026-05-09", "readings": [` + reading("10.7", "13.21 V") + `]}`,
		`{"readings": [` + reading("10.1", "14.21 V") + `, ` + reading("2.3", "wrong") + `]}`,
		`{"cut": [{"wire": "` + cut.Wire + `", "of": "` + cut.Of + `", "done": true}]}`,
		`{"readings": [` + reading("10.2", "7.4 A") + `]}`,
		`{"readings": [{"check": "E1 − to G1 −", "in": "night cruise", "reads": "820 mV"}]}`,
		`{"readings": [` + reading("10.2", "") + `], "meter": "common"}`,
	} {
		if _, code := ask[keptAnswer](t, s, "PUT", "/api/kept", body); code != http.StatusOK {
			t.Fatalf("%s: %d", body, code)
		}
	}
	const want = `design: fen-runner.yaml
revision: B
date: 2026-05-09
meter: common
readings:
  - {check: "2.3", in: fuses, of: F2 under seat, reads: wrong}
  - {check: "10.1", in: night cruise, of: "G1 posts: read first, keep it", reads: 14.21 V}
  - {check: "10.7", in: night cruise, of: E1 + and −, reads: 13.21 V}
  - {check: "E1 − to G1 −", in: night cruise, reads: 820 mV}
cut list:
  - {wire: W4, of: `
	if !strings.Contains(string(file), want) {
		t.Errorf("kept:\n%s", file)
	}
	bench, _ = ask[benchAnswer](t, s, "GET", "/api/bench", "")
	if k := bench.Kept; len(k.Readings) != 3 || k.Readings["10.7"] != "13.21 V" || len(k.Cut) != 1 || len(k.Elsewhere) != 1 || len(k.Stale)+len(k.Changed) != 0 {
		t.Errorf("read again: %+v", k)
	}
}

// What cannot be taken is said, and the rest is kept; a file that cannot be read is not written over.
func TestReadingsRefused(t *testing.T) {
	var file []byte
	s := desked(t, &file)
	answer, _ := ask[keptAnswer](t, s, "PUT", "/api/kept", `{"readings": [
		{"check": "10.7", "in": "night cruise", "of": "E1 + and −", "reads": "2 A"},
		{"check": "10.8", "in": "night cruise", "of": "E9 + and −", "reads": "2 V"},
		{"check": "10.1", "in": "night cruise", "of": "G1 posts: read first, keep it", "reads": "14.2 V"}],
		"cut": [{"wire": "W4", "of": "another", "done": true}]}`)
	if len(answer.Readings) != 1 || len(answer.Refused) != 3 || !strings.Contains(answer.Refused[0], "10.7: check 10.7 reads no current") ||
		!strings.Contains(answer.Refused[1], "does not ask for it any more") || !strings.Contains(answer.Refused[2], "W4 is another wire now") {
		t.Errorf("%+v", answer)
	}
	for _, c := range []struct{ name, file, body, want string }{
		{"no JSON", "", `{`, "These are no readings"},
		{"nothing", "", `null`, "These are no readings"},
		{"a key that is none", "", `{"a": 1}`, "These are no readings"},
		{"a date that is none", "", `{"date": "today"}`, "would not be read again"},
		{"a file with a slip", "fusewright bench: 1\nreadings:\n  - {check: \"10.1\", reads: 14}\n", `{}`, `fen-runner.bench.yaml:3:28: "14" has no unit`},
		{"another file", "fusewright: 1\n", `{}`, "no readings of a bench test"},
	} {
		file = []byte(c.file)
		was := bytes.Clone(file)
		refused, code := ask[map[string]string](t, s, "PUT", "/api/kept", c.body)
		if code != http.StatusBadRequest || !strings.Contains(refused["problem"], c.want) || !bytes.Equal(file, was) {
			t.Errorf("%s: %d %v\n%s", c.name, code, refused, file)
		}
	}
	many := `{"date": "2026-05-09", "readings": [` + strings.Repeat(`{"check": "E1 − to G1 −", "in": "night cruise", "reads": "1 V"},`, 9000) +
		`{"check": "E1 − to G1 −", "in": "night cruise", "reads": "1 V"}]}`
	for _, c := range []struct{ name, body, want string }{
		{"more than the test has", many, "9001 readings and ticks are more than the bench test of this design has"},
		{"a part that is none", `{"readings": [{"check": "E99 − to G1 −", "in": "night cruise", "reads": "1 V"}]}`, `there is no terminal "E99 −"`},
		{"no points", `{"readings": [{"check": "made up", "in": "night cruise", "reads": "1 V"}]}`, `"made up" is no check`},
		{"a situation that is none", `{"readings": [{"check": "E1 − to G1 −", "in": "by day", "reads": "1 V"}]}`, `there is no situation "by day"`},
	} {
		file = []byte("fusewright bench: 1\nreadings:\n  - {check: \"E1 − to G1 −\", in: night cruise, reads: 820 mV}\n")
		was := bytes.Clone(file)
		refused, code := ask[map[string]any](t, s, "PUT", "/api/kept", c.body)
		if says, _ := refused["problem"].(string); code != http.StatusBadRequest || !strings.Contains(says, c.want) || !bytes.Equal(file, was) {
			t.Errorf("%s: %d %v\n%s", c.name, code, refused, file)
		}
	}
	file = []byte("fusewright: 1\n")
	if bench, _ := ask[benchAnswer](t, s, "GET", "/api/bench", ""); !strings.Contains(bench.Kept.Problem, "no readings of a bench test") {
		t.Errorf("%+v", bench.Kept)
	}
	file = nil
	s.opt.Keep = func([]byte) error { return errors.New("no room left") }
	if answer, code := ask[map[string]string](t, s, "PUT", "/api/kept", `{}`); code != http.StatusInternalServerError || answer["problem"] != "no room left" {
		t.Errorf("%d %v", code, answer)
	}
}

// A reading whose check has gone since, and a tick of a wire that is another now, stay in the file.
func TestReadingsOfAnotherDesign(t *testing.T) {
	file := []byte(`fusewright bench: 1
readings:
  - {check: "10.9", in: night cruise, of: E9 + and −, reads: 12.1 V}
cut list:
  - {wire: W4, of: "X2 1 to S1 in, YE 2.5 mm², 9 mm"}
`)
	s := desked(t, &file)
	answer, _ := ask[keptAnswer](t, s, "PUT", "/api/kept", `{"by": "A."}`)
	if len(answer.Stale) != 1 || !strings.Contains(answer.Stale[0], "E9") || len(answer.Changed) != 1 || len(answer.Cut) != 0 {
		t.Errorf("%+v", answer)
	}
	for _, want := range []string{"E9 + and −", "9 mm", "by: A."} {
		if !strings.Contains(string(file), want) {
			t.Errorf("%q is lost:\n%s", want, file)
		}
	}
}

// The readings that are kept are explained; one that the test does not ask for any more does not stop that.
func TestDiagnoseKept(t *testing.T) {
	file := []byte(`fusewright bench: 1
readings:
  - {check: "10.1", reads: 14.21 V}
  - {check: "10.7", reads: 13.21 V}
  - {check: "10.8", reads: 14.00 V}
  - {check: "10.9", in: night cruise, of: E9 + and −, reads: 12.1 V}
`)
	s := desked(t, &file)
	answer, code := ask[diagnosis.Diagnosis](t, s, "POST", "/api/diagnose", "{}")
	if code != http.StatusOK || answer.Failed != 1 || len(answer.Readings) != 3 || len(answer.Explanations) == 0 || answer.Next == nil {
		t.Fatalf("%d %+v", code, answer)
	}
	if first := answer.Explanations[0].Elements[0]; first != "W16" && first != "W6" {
		t.Errorf("it names %s first", first)
	}
}
