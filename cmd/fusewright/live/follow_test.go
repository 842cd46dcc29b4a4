package live

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/synth"
	"fusewright/render/page"
)

// listener reads server-sent events as they come.
type listener struct {
	address string
	lines   *bufio.Scanner
}

func listen(t testing.TB, address string) *listener {
	t.Helper()
	answer, err := http.Get("http://" + address + "/api/events")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { answer.Body.Close() })
	return &listener{address, bufio.NewScanner(answer.Body)}
}

// next waits for the next change and gives the model.
func (l *listener) next(t testing.TB) *page.Model {
	t.Helper()
	for l.lines.Scan() {
		if strings.HasPrefix(l.lines.Text(), "data: ") {
			return modelAt(t, l.address)
		}
	}
	t.Fatal("the events have ended")
	return nil
}

func modelAt(t testing.TB, address string) *page.Model {
	t.Helper()
	answer, err := http.Get("http://" + address + "/api/model")
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	m := &page.Model{}
	if err := json.NewDecoder(answer.Body).Decode(m); err != nil {
		t.Fatal(err)
	}
	return m
}

// until waits for a model of which something holds.
func (l *listener) until(t testing.TB, what string, holds func(*page.Model) bool) *page.Model {
	t.Helper()
	for range 20 {
		if m := l.next(t); holds(m) {
			return m
		}
	}
	t.Fatalf("no model in which %s", what)
	return nil
}

// The page follows the file: what a save breaks and mends, with the lines; a text that cannot
// be read leaves the last good design with the problem's place; the remedies come after the findings.
func TestFollows(t *testing.T) {
	good, err := os.ReadFile("../../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "fen-runner.yaml")
	save := func(text []byte) {
		t.Helper()
		next := file + ".new" // as most editors do
		if err := os.WriteFile(next, text, 0o666); err != nil {
			t.Fatal(err)
		}
		if err := os.Rename(next, file); err != nil {
			t.Fatal(err)
		}
	}
	save(good)
	address, _ := shown(t, file, nil)
	l := listen(t, address)
	first := l.until(t, "remedies were tried", func(m *page.Model) bool { return m.Tried })
	if len(first.Findings) > 0 || first.Change != nil || first.Verdict.Says != "Nothing found" {
		t.Fatalf("at first: %d findings, %+v, %+v", len(first.Findings), first.Change, first.Verdict)
	}
	thin := bytes.Replace(good, []byte("right lamp: {type: LED auxiliary lamp, plug: sealed 1.5, at: fork, fed by: lamp pair, wire: {size: 1.5 mm²"),
		[]byte("right lamp: {type: LED auxiliary lamp, plug: sealed 1.5, at: fork, fed by: main, wire: {size: 1.5 mm²"), 1)
	line := 1 + bytes.Count(thin[:bytes.Index(thin, []byte("right lamp: {type"))], []byte("\n"))
	save(thin)
	broke := l.until(t, "the save broke something", func(m *page.Model) bool { return m.Change != nil })
	if len(broke.Change.Broken) == 0 || len(broke.Change.Mended) > 0 || !slices.Equal(broke.Change.Lines, []int{line}) || broke.Change.Saved != "12:00:00" {
		t.Errorf("the change: %+v, want line %d", broke.Change, line)
	}
	if !slices.ContainsFunc(broke.Findings, func(f page.Finding) bool { return f.New }) {
		t.Error("no finding is marked as new")
	}
	if broke.Tried {
		t.Error("the findings waited for the remedies")
	}
	l.until(t, "remedies were tried again", func(m *page.Model) bool { return m.Tried && m.Change != nil })
	save(append(slices.Clone(thin), "loads: {\n"...))
	bad := l.until(t, "there is a problem", func(m *page.Model) bool { return len(m.Problems) > 0 })
	if p := bad.Problems[0]; p.File != "design.yaml" || p.Line == 0 || p.Col == 0 || p.Says == "" {
		t.Errorf("the problem: %+v", p)
	}
	if bad.Verdict != (page.Verdict{Says: "Cannot be read: shown as last read"}) {
		t.Errorf("the verdict is %+v", bad.Verdict)
	}
	if len(bad.Findings) != len(broke.Findings) || len(bad.Parts) != len(broke.Parts) {
		t.Error("the last good design is not shown")
	}
	save(good)
	mended := l.until(t, "the save mended something", func(m *page.Model) bool { return m.Change != nil && len(m.Change.Mended) > 0 })
	if len(mended.Change.Mended) != len(broke.Change.Broken) || len(mended.Change.Broken) > 0 || len(mended.Problems) > 0 {
		t.Errorf("the change back: %+v, it had broken %+v", mended.Change, broke.Change)
	}
}

// A design that cannot be read at first is shown as soon as it can.
func TestBrokenAtFirst(t *testing.T) {
	file := filepath.Join(t.TempDir(), "x.yaml")
	if err := os.WriteFile(file, []byte("title: ["), 0o666); err != nil {
		t.Fatal(err)
	}
	address, _ := shown(t, file, nil)
	if m := modelAt(t, address); len(m.Problems) == 0 || m.Problems[0].Line != 1 {
		t.Errorf("the problems: %+v", m.Problems)
	}
	if status, _, _ := asked(t, "GET", "http://"+address+"/api/drawing", nil); status != 404 {
		t.Errorf("the drawing of nothing: status %d", status)
	}
	if status, body, _ := asked(t, "GET", "http://"+address+"/api/circuit?of=E1", nil); status != 409 {
		t.Errorf("a question about nothing: status %d, %s", status, body)
	}
	l := listen(t, address)
	if err := os.WriteFile(file, synth.YAML(10, 1), 0o666); err != nil {
		t.Fatal(err)
	}
	l.until(t, "it is read", func(m *page.Model) bool { return len(m.Problems) == 0 && len(m.Parts) > 10 })
}

// Lines that changed, by what an editor does.
func TestChangedLines(t *testing.T) {
	for _, x := range []struct {
		name, was, now string
		want           string
	}{
		{"nothing", "a\nb\n", "a\nb\n", "[]"},
		{"one", "a\nb\nc\n", "a\nB\nc\n", "[2]"},
		{"two apart", "a\nb\nc\nd\n", "A\nb\nc\nD\n", "[1 4]"},
		{"one more", "a\nb\n", "a\nx\nb\n", "[2]"},
		{"one less", "a\nb\nc\n", "a\nc\n", "[2]"},
		{"the last", "a\nb", "a\nB", "[2]"},
		{"all", "a", "b\nc", "[1 2]"},
		{"moved", "a\nb\nc\n", "b\na\nc\n", "[]"},
	} {
		if got := fmt.Sprint(changedLines([]byte(x.was), []byte(x.now))); got != x.want {
			t.Errorf("%s: %s, want %s", x.name, got, x.want)
		}
	}
}

// BenchmarkSave is from the save of a file to the model that the page has of it.
func BenchmarkSave(b *testing.B) {
	demo, err := os.ReadFile("../../../designs/fen-runner.yaml")
	if err != nil {
		b.Fatal(err)
	}
	boat, err := os.ReadFile("../../../designs/reed-skiff.yaml")
	if err != nil {
		b.Fatal(err)
	}
	for _, x := range []struct {
		name string
		text []byte
	}{{"fen-runner", demo}, {"reed-skiff", boat}, {"40", synth.YAML(40, 1)}, {"1000", synth.YAML(1000, 1)}} {
		b.Run(x.name, func(b *testing.B) { benchmarkSave(b, x.text) })
	}
}

func benchmarkSave(b *testing.B, text []byte) {
	file := filepath.Join(b.TempDir(), "x.yaml")
	if err := os.WriteFile(file, text, 0o666); err != nil {
		b.Fatal(err)
	}
	address, s := shown(b, file, nil)
	l := listen(b, address)
	tried := func() {
		for m := l.next(b); !m.Tried; {
			m = l.next(b)
		}
	}
	tried()
	n := 0
	for b.Loop() {
		n++
		next := append(slices.Clone(text), fmt.Sprintf("# %d\n", n)...)
		if err := os.WriteFile(file, next, 0o666); err != nil {
			b.Fatal(err)
		}
		l.next(b)
		b.StopTimer() // the remedies come after it
		if now, _ := s.State(b.Context()); !bytes.Equal(now.Text, next) {
			b.Fatal("another text is shown")
		}
		tried()
		b.StartTimer()
	}
}
