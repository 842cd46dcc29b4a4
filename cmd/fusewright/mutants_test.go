package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"strings"
	"testing"

	"fusewright/harness"
	"fusewright/harness/proof/fuzztest"
	"fusewright/harness/proof/mutant"
	"fusewright/library"
)

var (
	mutants     = flag.Int("mutants", 60, "how many mutants are checked")
	mutantBuild = flag.Int("mutants-built", 1, "how many mutants that read are built as well")
	mutantFirst = flag.Int("mutants-first", 0, "number of the first mutant; with -mutants 1 it is shown")
)

// timedFrom is the number of mutants from which each is timed as well: the
// ordinary suite times nothing.
const timedFrom = 1000

// twiceOf: of so many mutants that are built one is built twice, and goes through
// the other commands.
const twiceOf = 5

// goodDesigns read, and are small enough to be looked at.
func goodDesigns(t *testing.T) (files []string, texts [][]byte) {
	t.Helper()
	for _, pattern := range []string{"designs/*.yaml", "testdata/corpus/clean/*.yaml", "testdata/corpus/blind/*.yaml",
		"testdata/corpus/blind/second/*.yaml", "testdata/read/ok/*.yaml", "testdata/rules/ok/*.yaml"} {
		found, err := filepath.Glob("../../" + pattern)
		if err != nil || len(found) == 0 {
			t.Fatalf("no designs in %s: %v", pattern, err)
		}
		files = append(files, found...)
	}
	for _, file := range files {
		texts = append(texts, sourceOf(t, file))
	}
	return files, texts
}

// TestMutants changes good designs in small ways and takes them through check,
// some through build: no panic, no exit code 3, the same bytes twice, problems
// with a place, and no build that fails of a design that checks.
func TestMutants(t *testing.T) {
	files, texts := goodDesigns(t)
	read, built := 0, 0
	every := max(*mutants/max(*mutantBuild, 1)*2/3, 1)
	for n := range *mutants {
		number := *mutantFirst + n
		m := &mutantRun{file: files[number%len(files)], number: number}
		made, err := mutant.Make(texts[number%len(files)], library.Default(), uint64(number))
		if err != nil {
			t.Fatalf("%s: %v", m, err)
		}
		m.Mutant = *made
		if *mutants == 1 {
			t.Logf("%s\n%s", m, m.Text)
		}
		wrong := m.judge(t, n%every == 0 && built < *mutantBuild)
		for _, w := range wrong {
			t.Errorf("%s: %s", m, w)
		}
		if m.read {
			read++
		}
		if m.built {
			built++
		}
	}
	t.Logf("%d mutants, %d read (%.1f %%), %d built", *mutants, read, 100*float64(read)/float64(*mutants), built)
	if *mutants > 50 && read*3 < *mutants*2 {
		t.Errorf("%d of %d mutants read, less than two of three", read, *mutants)
	}
}

// mutantRun is one mutant on its way.
type mutantRun struct {
	mutant.Mutant
	file        string
	number      int
	read, built bool
}

func (m *mutantRun) String() string {
	return fmt.Sprintf("mutant %d of %s (%s)", m.number, filepath.Base(m.file), strings.Join(m.Changes, "; "))
}

// judge says what is wrong with how the program takes the mutant.
func (m *mutantRun) judge(t *testing.T, build bool) (wrong []string) {
	defer func() {
		if p := recover(); p != nil {
			wrong = append(wrong, fmt.Sprintf("panic: %v\n%s", p, debug.Stack()))
		}
	}()
	code, out, said := m.check()
	again := func() {
		if again, outAgain, saidAgain := m.check(); again != code || outAgain != out || saidAgain != said {
			wrong = append(wrong, "checked twice with two results")
		}
	}
	if *mutants < timedFrom {
		again()
	} else if took := fuzztest.Fastest(again); took > fuzztest.Limit {
		wrong = append(wrong, fmt.Sprintf("checked in %v", took))
	}
	switch {
	case code == exitBadInput:
		return append(wrong, badProblems(said)...)
	case code > exitBadInput:
		return append(wrong, fmt.Sprintf("exit code %d: %s", code, said))
	case !json.Valid([]byte(out)):
		wrong = append(wrong, "findings are no JSON")
	}
	m.read = true
	if build {
		m.built = true
		first, err := m.build()
		if err != nil {
			return append(wrong, fmt.Sprintf("checks with %d and does not build: %v", code, err))
		}
		if m.number%twiceOf != 0 {
			return wrong
		}
		wrong = append(wrong, m.otherCommands(t)...)
		if second, err := m.build(); err != nil || !bytes.Equal(first, second) {
			wrong = append(wrong, fmt.Sprintf("two builds differ: %v", err))
		}
	}
	return wrong
}

func (m *mutantRun) check() (code int, out, said string) {
	var stdout, stderr bytes.Buffer
	code = run([]string{"check", "--format", "json", "-"}, bytes.NewReader(m.Text), &stdout, &stderr)
	return code, stdout.String(), stderr.String()
}

// build renders every file and gives them one after the other.
func (m *mutantRun) build() ([]byte, error) {
	in := &inputs{design: library.Text{File: "mutant.yaml", Data: m.Text}}
	review, err := in.assess()
	if err != nil {
		return nil, err
	}
	out := newOutputs("nowhere")
	if err := renderAll(out, review, ""); err != nil {
		return nil, err
	}
	if err := out.finish(); err != nil {
		return nil, err
	}
	var all bytes.Buffer
	for _, f := range out.files {
		fmt.Fprintf(&all, "%s %d\n%s", f.name, len(f.data), f.data)
	}
	return all.Bytes(), nil
}

// otherCommands runs all that print what they make of one design.
func (m *mutantRun) otherCommands(t *testing.T) (wrong []string) {
	for _, r := range hostileRuns {
		if strings.Contains(r.line, "OUT") || strings.Contains(r.line, "OTHER") {
			continue
		}
		line := strings.ReplaceAll(r.line, "DESIGN", "-")
		var stdout, stderr bytes.Buffer
		code := run(strings.Fields(line), bytes.NewReader(m.Text), &stdout, &stderr)
		switch {
		case code > exitBadInput || code == exitBadInput && stderr.Len() == 0:
			wrong = append(wrong, fmt.Sprintf("%s: exit code %d: %s", line, code, &stderr))
		case code < exitBadInput:
			if err := wellFormed(t, r.kind, stdout.Bytes()); err != nil {
				wrong = append(wrong, fmt.Sprintf("%s: %v", line, err))
			}
		}
	}
	return wrong
}

var placed = regexp.MustCompile(`^standard input:[0-9]+:[0-9]+: .`)

// badProblems are lines that are no problem with a place.
func badProblems(said string) (wrong []string) {
	lines := strings.Split(strings.TrimSuffix(said, "\n"), "\n")
	for _, line := range lines {
		if !placed.MatchString(line) {
			wrong = append(wrong, fmt.Sprintf("refused with %q", line))
		}
	}
	return wrong
}

// renderAll draws every paper and renders every file of a review.
func renderAll(out *outputs, r *harness.Review, reader string) error {
	all, err := drawAll(r)
	if err != nil {
		return err
	}
	renderDrawn(out, r, all, reader)
	return nil
}
