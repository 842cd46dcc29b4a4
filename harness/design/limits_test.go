package design

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// Every limit of Read is met with an error that names it, in bounded time. The
// limits on nesting, aliases and values are cases of testdata/read/err too.
func TestLimitsAreNamed(t *testing.T) {
	const head = "fusewright: 1\ntitle: limits\nsystem: 12 V\npractice: motorcycle\n" +
		"battery: {chemistry: AGM, capacity: 12 Ah, at: tray}\nplaces: {tray: {ambient: 30 °C}}\n"
	rows := func(n int, row string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, row+"\n", i+1)
		}
		return b.String()
	}
	for _, c := range []struct{ name, text, want string }{
		{"bytes", head + "# " + strings.Repeat("x", maxFileBytes), "(expected at most 4 MiB)"},
		{"depth", head + "notes: " + strings.Repeat("[", maxDepth+1) + strings.Repeat("]", maxDepth+1),
			"nested more than 24 levels deep"},
		{"depth beyond the YAML package", head + "notes: " + strings.Repeat("[", 20_000), "not YAML: exceeded max depth"},
		{"depth in blocks", head + "notes:\n" + deepBlocks(maxDepth+1), "nested more than 24 levels deep"},
		{"aliases", head + "notes: [&a x" + strings.Repeat(", *a", maxAliases+1) + "]", "more than 1000 aliases"},
		{"values", head + "a: &a [" + strings.Repeat("x, ", 2000) + "x]\nnotes: [" + strings.Repeat("*a, ", 600) + "*a]",
			"more than 1048576 values, aliases followed"},
		{"parts", head + "splices:\n" + rows(maxParts+1, "  s%d: {at: tray, fed by: battery}"), "more than 50000 parts"},
		{"wires", head + "splices:\n" + rows(maxWires+1, "  s%d: {at: tray, fed by: battery}"),
			"limits.yaml:20008:30: the design has 20001 wires (expected at most 20000)"},
		{"ways", head + "blocks:\n  b:\n    way limit: 10 A\n    total limit: 30 A\n    at: tray\n    fed by: battery\n    ways:\n" +
			rows(maxWays+1, "      %d: spare"), `block "b" has more than 200 ways`},
		{"notes", head + "notes:\n" + rows(maxRemarks+1, "  - n%d"), "limits.yaml:2008:5: notes has 2001 entries (expected at most 2000)"},
		{"acceptances", head + "accepted:\n" + rows(maxRemarks+1, "  - {rule: x, part: p%d, reason: seen}"),
			"limits.yaml:2008:5: accepted has 2001 entries (expected at most 2000)"},
		{"situations", head + "situations:\n" + rows(maxStates+1, "  s%d: {key: off}"), "more than 500 situations and legs"},
		{"legs", head + "rides:\n  long:\n    legs:\n" + rows(maxStates+1, "      - {lasts: %d min, engine: stopped}"),
			"more than 500 situations and legs"},
		{"name", head + "splices:\n  " + strings.Repeat("n", maxName+1) + ": {at: tray, fed by: battery}",
			"the name of a splice has 81 characters (expected at most 80)"},
		{"sentence", head + "notes: [" + strings.Repeat("word ", maxSentence/4) + "]", "characters (expected at most 2000)"},
		{"number", head + "runs: [{from: tray, to: tray, length: 1e999 m}]", "1e999"},
		{"digits", head + "runs: [{from: tray, to: tray, length: " + strings.Repeat("9", 1000) + " m}]", "length"},
		{"mistakes", head + rows(maxProblems+1, "no such key %d: 1"), "501 mistakes in all; the first 500 found are shown"},
	} {
		t.Run(c.name, func(t *testing.T) {
			begun := time.Now()
			d, err := Read("limits.yaml", []byte(c.text), nil)
			if err == nil || d != nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %.300v, want %s", err, c.want)
			}
			if took := time.Since(begun); took > time.Minute {
				t.Errorf("it took %v", took) // a hang, not a speed
			}
		})
	}
}

// A design of as many wires as there may be is read.
func TestMostWires(t *testing.T) {
	var b strings.Builder
	b.WriteString("fusewright: 1\ntitle: limit\nsystem: 12 V\npractice: motorcycle\n" +
		"battery: {chemistry: AGM, capacity: 12 Ah}\nwire: {insulation: ISO 6722 thin wall class B, size: 1 mm²}\nsplices:\n")
	for i := range maxWires {
		fmt.Fprintf(&b, "  s%d: {fed by: battery, wire: {length: 1 m}}\n", i)
	}
	if d, err := Read("most.yaml", []byte(b.String()), nil); err != nil || len(d.Splices) != maxWires {
		t.Errorf("%.300v", err)
	}
}

// deepBlocks are mappings in mappings, one a line.
func deepBlocks(levels int) string {
	var b strings.Builder
	for i := range levels {
		b.WriteString(strings.Repeat(" ", i+1) + "k:\n")
	}
	return b.String()
}
