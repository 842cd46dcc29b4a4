package rules_test

import (
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/review/finding"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"
)

// designFiles are the designs that tests of all rules run over.
func designFiles(t *testing.T) []string {
	t.Helper()
	var files []string
	for _, pattern := range []string{casesDir + "/*.yaml", "../../../testdata/corpus/fault/*.yaml",
		"../../../testdata/corpus/blind/second/*.yaml", "../../../designs/*.yaml"} {
		list, err := filepath.Glob(pattern)
		if err != nil || len(list) == 0 {
			t.Fatalf("no designs in %s: %v", pattern, err)
		}
		files = append(files, list...)
	}
	return files
}

// TestKeyOrder puts the keys of every mapping of a design in another order, of
// sections as of entries: the same must be found. Wires and parts are numbered in
// the order of the file, and lines are those of the file, so numbers and places are
// left out; everything else must be the same text: rule, severity, part, wire,
// figure, what is said, the situation, and which of a group is the worst.
func TestKeyOrder(t *testing.T) {
	for n, file := range designFiles(t) {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".yaml"), func(t *testing.T) {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			var doc yaml.Node
			if err := yaml.Unmarshal(src, &doc); err != nil {
				t.Fatal(err)
			}
			shuffleKeys(&doc, rand.New(rand.NewSource(int64(n)+1)))
			changed, err := yaml.Marshal(&doc)
			if err != nil {
				t.Fatal(err)
			}
			want, got := withoutOrder(assess(t, file, src)), withoutOrder(assess(t, file, changed))
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("found in another order (-file +shuffled):\n%s", diff)
			}
		})
	}
}

// shuffleKeys puts the keys of all mappings in another order, but for the format's
// version, which must be the first.
func shuffleKeys(n *yaml.Node, random *rand.Rand) {
	for _, c := range n.Content {
		shuffleKeys(c, random)
	}
	if n.Kind != yaml.MappingNode {
		return
	}
	pairs := n.Content
	if len(pairs) > 0 && pairs[0].Value == "fusewright" {
		pairs = pairs[2:]
	}
	random.Shuffle(len(pairs)/2, func(i, j int) {
		for k := range 2 {
			pairs[2*i+k], pairs[2*j+k] = pairs[2*j+k], pairs[2*i+k]
		}
	})
}

// designation is a wire's number or a part's reference designation.
var designation = regexp.MustCompile(`\b[A-Z]+[0-9]+\b`)

// withoutOrder is the findings, one text a group with its worst first, without
// what the order of the file decides.
func withoutOrder(found []*finding.Finding) []string {
	var out []string
	for _, g := range finding.Groups(found) {
		var texts []string
		for _, i := range g {
			f := found[i]
			texts = append(texts, designation.ReplaceAllString(fmt.Sprintf("%s %s %s/%s %s | %s | %s | accepted %q", f.Severity, f.Rule,
				f.Part, f.Wire, f.Figure, f.What, f.Situation, f.Accepted), "#"))
		}
		slices.Sort(texts[1:])
		out = append(out, strings.Join(texts, "\n"))
	}
	slices.Sort(out)
	return out
}

// TestTies names the same wire, fuse and situation when two are equally bad,
// whichever the file has first.
func TestTies(t *testing.T) {
	const head = `fusewright: 1
title: Ties
system: 12 V
practice: off-road
battery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h, resistance: 14 mΩ, at: tray}
charging: {regulated: 14.3 V, output: {1300 rpm: 14 A, 6000 rpm: 28 A}, idle: 1300 rpm, cruise: 4000 rpm, hot derating: 0 %}
places: {tray: {ambient: 40 °C}, rear: {ambient: 35 °C}}
runs: [{from: tray, to: rear, length: 600 mm}]
wire: {insulation: SAE J1128 GXL, size: 10 AWG}
taps: {key: {at: tray, hot: key, fuse: 60 A, spare: 3 A, supervised: no}}
grounds:
  block: {kind: ground block, at: rear, limit: 60 A, returns to: battery negative, wire: {size: 16 AWG}}
`
	fuses := []string{
		"  left fuse: {type: blade C, rating: 30 A, at: tray, fed by: key, wire: {length: 100 mm}}\n",
		"  right fuse: {type: blade C, rating: 30 A, at: tray, fed by: key, wire: {length: 100 mm}}\n"}
	loads := []string{
		"  left lamp: {power: 30 W, behaves: resistor, at: rear, fed by: left fuse, wire: {size: 20 AWG}, returns to: block, return wire: {length: 100 mm}}\n",
		"  right lamp: {power: 30 W, behaves: resistor, at: rear, fed by: left fuse, wire: {size: 20 AWG}, returns to: block, return wire: {length: 100 mm}}\n",
		"  work lamp: {power: 30 W, behaves: resistor, at: rear, fed by: right fuse, wire: {size: 20 AWG}, returns to: block, return wire: {length: 100 mm}}\n"}
	situations := []string{"  early: {engine: cruise, on: all}\n", "  late: {engine: cruise, on: all}\n"}
	design := func() []byte {
		return []byte(head + "fuses:\n" + strings.Join(fuses, "") + "loads:\n" + strings.Join(loads, "") +
			"situations:\n" + strings.Join(situations, ""))
	}
	forward := withoutOrder(assess(t, "ties.yaml", design()))
	for _, list := range [][]string{fuses, loads, situations} {
		slices.Reverse(list)
	}
	if diff := cmp.Diff(forward, withoutOrder(assess(t, "ties.yaml", design()))); diff != "" {
		t.Errorf("found in another order (-file +reversed):\n%s", diff)
	}
	text := strings.Join(forward, "\n")
	for _, want := range []string{"danger fuse-over-wire left lamp/feed", "left fuse, 30 A", "| early |"} {
		if !strings.Contains(text, want) {
			t.Errorf("nothing says %q:\n%s", want, text)
		}
	}
}
