package rules_test

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/buildtest"
	"fusewright/harness/review/finding"

	"gopkg.in/yaml.v3"
)

// TestSecondFault accepts each finding of the designs and plants a copy of its
// part beside it, with the same fault: the copy must not be accepted with it.
func TestSecondFault(t *testing.T) {
	planted, tried := 0, 0
	for _, file := range designFiles(t) {
		src := buildtest.File(t, file)
		done := map[string]bool{}
		for _, f := range assess(t, file, src) {
			if done[f.Rule+f.Part] {
				continue
			}
			done[f.Rule+f.Part] = true
			text := withCopy(t, src, f)
			if text == nil { // a run, a situation, the battery: nothing to copy
				continue
			}
			tried++
			planted += judgeCopy(t, file, text, f)
		}
	}
	// A copy of a fuse feeds nothing, one of a ground takes no return, and so on:
	// there the fault does not come with it.
	if planted < 150 || planted*2 < tried {
		t.Errorf("of %d parts copied only %d copies had the fault", tried, planted)
	}
}

// inSeries tells of a load that another one feeds.
func inSeries(load *yaml.Node) bool {
	return slices.ContainsFunc(load.Content, func(n *yaml.Node) bool { return n.Value == "in series with" })
}

// judgeCopy counts the findings of the rule at the copy; none may be accepted.
func judgeCopy(t *testing.T, file string, text []byte, of *finding.Finding) int {
	t.Helper()
	d := buildtest.Design(t, text)
	n := 0
	for _, f := range check(t, d) {
		switch {
		case f.Rule != of.Rule || f.Part != copyOf(of.Part):
		case f.Accepted != "":
			t.Errorf("%s: accepting %s at %s accepts its copy too: %s", file, of.Rule, of.Part, f.What)
		default:
			n = 1
		}
	}
	return n
}

func copyOf(name string) string { return "second " + name }

// withCopy is a design in which a finding is accepted as it is, and its part is
// there a second time; nil when the finding is not about a part of a section.
func withCopy(t *testing.T, src []byte, f *finding.Finding) []byte {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	root := doc.Content[0]
	found := false
	for i := 0; i < len(root.Content); i += 2 {
		key, section := root.Content[i].Value, root.Content[i+1]
		switch key {
		case "situations":
			alsoIn(section, f.Part)
		case "taps", "grounds", "fuses", "relays", "switches", "splices", "loads", "blocks":
			for k := 0; k < len(section.Content); k += 2 {
				if section.Content[k].Value == f.Part {
					if inSeries(section.Content[k+1]) { // a copy would stand in the same gap of the string
						return nil
					}
					name := *section.Content[k]
					name.Value = copyOf(f.Part)
					section.Content = append(section.Content, &name, section.Content[k+1])
					found = true
					break
				}
			}
		}
	}
	if !found {
		return nil
	}
	text, err := yaml.Marshal(&doc)
	if err != nil {
		t.Fatal(err)
	}
	entry := "  - {rule: " + f.Rule + ", part: \"" + f.Part + "\", severity: danger, reason: planted"
	if figure := f.Figure.String(); figure != "" {
		entry += ", figure: " + figure
	}
	if at := []byte("\naccepted:\n"); bytes.Contains(text, at) {
		return bytes.Replace(text, at, []byte("\naccepted:\n"+strings.Replace(entry, "  -", "    -", 1)+"}\n"), 1)
	}
	return append(text, ("accepted:\n" + entry + "}\n")...)
}

// alsoIn adds the copy of a part to every list that has the part.
func alsoIn(n *yaml.Node, part string) {
	for _, c := range n.Content {
		alsoIn(c, part)
	}
	if n.Kind == yaml.SequenceNode && slices.ContainsFunc(n.Content, func(c *yaml.Node) bool { return c.Value == part }) {
		n.Content = append(n.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: copyOf(part)})
	}
}

// TestAcceptedFigure walks a wire across the figure that it was accepted at: the
// entry holds up to a twentieth of the figure, and for what it names only.
func TestAcceptedFigure(t *testing.T) {
	src := buildtest.File(t, filepath.Join(casesDir, "acceptance-without-figure.yaml"))
	// The leads may carry 14.7 A behind 30 A. A twentieth of the 30 A is 1.5 A.
	for entry, accepted := range map[string]bool{
		"severity: danger, figure: 30 A of 14.7 A": true,
		"severity: danger, figure: 30 A of 14 A":   true,  // it was worse
		"severity: danger, figure: 30 A of 16.1 A": true,  // 1.40 A more beyond
		"severity: danger, figure: 30 A of 16.3 A": false, // 1.60 A
		"severity: danger, figure: 28.6 A":         true,  // 1.4 A of 28.6 A is less than a twentieth
		"severity: danger, figure: 28.5 A":         false,
		"severity: danger, figure: 30 V of 14.7 V": false, // of something else
		"severity: danger":                         true,  // any
		"severity: fault, figure: 30 A of 14.7 A":  false, // graver
		"figure: 30 A of 14.7 A":                   false,
	} {
		text := bytes.Replace(src, []byte("part: right lamp, severity: danger, figure: 30 A of 14.7 A"),
			[]byte("part: right lamp, "+entry), 1)
		for _, f := range assess(t, "lamps.yaml", text) {
			if f.Rule == "fuse-over-wire" && f.Part == "right lamp" && (f.Accepted != "") != accepted {
				t.Errorf("%s: accepted %t, want %t: %s", entry, f.Accepted != "", accepted, f.What)
			}
		}
	}
}
