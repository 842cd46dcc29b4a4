package remedy_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/remedy"
)

// sixMistakes are the rules that tell of each planted mistake, in the words of the
// trade: the first is what the mistake is, the others follow from it.
var sixMistakes = map[string][][]string{
	"sedge-sloop": {
		{"link-end-unfused"}, {"fuse-too-far"}, {"bilge-pump-isolated"}, {"unsealed-in-wet-place"},
		{"fuse-wire-curve", "fuse-over-wire", "return-below-fuse"}, {"shared-return-thin", "voltage-drop"},
	},
	"teal-ketch": {
		{"link-end-unfused"}, {"link-end-unfused"}, {"charging-cable-drop"}, {"diode-overload"}, {"charging-cable-thin"}, {"load-dump"},
	},
	"hay-wain": {
		{"unfused-conductor"}, {"chafing-run"}, {"polarity-crossed"}, {"part-below-fuse", "switch-overload"},
		{"fuse-over-wire", "return-below-fuse", "voltage-drop"},
		{"wire-over-current", "terminal-overload", "fuse-wire-curve", "voltage-drop"},
	},
}

// TestSixMistakes: of each demo with six planted mistakes exactly those are found, each as
// one cause, at the lines marked "deliberate:"; without them the demo is clean.
func TestSixMistakes(t *testing.T) {
	for name, mistakes := range sixMistakes {
		t.Run(name, func(t *testing.T) {
			src, err := os.ReadFile("../../testdata/six-mistakes/" + name + ".yaml")
			if err != nil {
				src, err = os.ReadFile("../../testdata/six-mistakes/isolator/" + name + ".yaml")
			}
			if err != nil {
				t.Fatal(err)
			}
			if n := strings.Count(string(src), "# deliberate:"); n != len(mistakes) {
				t.Errorf("%d lines are marked, want %d", n, len(mistakes))
			}
			left := append([][]string{}, mistakes...)
			for _, cause := range openCauses(reviewtest.Of(t, src).Remedies()) {
				at := tells(left, cause)
				if at < 0 {
					t.Errorf("not planted, or met twice: %s %s", cause.Findings[0].Rule, cause.Findings[0].What)
					continue
				}
				left = append(left[:at:at], left[at+1:]...)
			}
			if len(left) > 0 {
				t.Errorf("not found: %v", left)
			}
			clean, err := os.ReadFile("../../designs/" + name + ".yaml")
			if err != nil { // of the corpus
				clean, err = os.ReadFile("../../testdata/corpus/clean/" + name + ".yaml")
			}
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range reviewtest.Of(t, clean).Findings {
				if f.Accepted == "" {
					t.Errorf("without the mistakes: %s %s", f.Rule, f.What)
				}
			}
		})
	}
}

// openCauses leaves out what the design accepts.
func openCauses(p *remedy.Plan) (list []*remedy.Cause) {
	for _, c := range p.Causes {
		if c.Findings[0].Accepted == "" {
			list = append(list, c)
		}
	}
	return list
}

// tells is the first of the mistakes that explains all findings of a cause; -1 = none.
func tells(mistakes [][]string, c *remedy.Cause) int {
	for i, rules := range mistakes {
		all := true
		for _, f := range c.Findings {
			all = all && slices.Contains(rules, f.Rule)
		}
		if all {
			return i
		}
	}
	return -1
}
