package design

import (
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
	"fusewright/library"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"
)

var update = flag.Bool("update", false, "write the golden files anew")

// golden compares a text with a file of the repository.
func golden(t *testing.T, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v (write it with -update)", err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s is stale (-file +now); write it with -update:\n%s", path, diff)
	}
}

func TestReference(t *testing.T) {
	var b bytes.Buffer
	if err := writeReference(&b); err != nil {
		t.Fatal(err)
	}
	golden(t, "../../docs/format.md", b.Bytes())
}

// Every key is documented, with an example that holds and a section that exists.
func TestFormatIsComplete(t *testing.T) {
	lib := library.Default()
	known := map[string]bool{}
	for _, s := range Format() {
		if known[s.Name] {
			t.Errorf("section %q is given twice", s.Name)
		}
		known[s.Name] = true
	}
	for _, s := range Format() {
		if s.Doc == "" || s.Example == "" || shapes[s.Shape] == "" || len(s.Keys) == 0 {
			t.Errorf("section %q lacks its doc, example, shape or keys", s.Name)
		}
		seen := map[string]bool{}
		for _, k := range s.Keys {
			name := s.Name + ", " + k.Name
			if seen[k.Name] {
				t.Errorf("%s is given twice", name)
			}
			seen[k.Name] = true
			if k.Doc == "" || k.Example == "" && k.Kind != KindNumber {
				t.Errorf("%s lacks its doc or example", name)
			}
			if k.Section != "" && !known[k.Section] {
				t.Errorf("%s: no section %q", name, k.Section)
			}
			checkExample(t, lib, name, k)
		}
	}
}

// checkExample tells whether the example of a key is a value that it takes.
func checkExample(t *testing.T, lib *library.Library, name string, k Key) {
	t.Helper()
	switch k.Kind {
	case KindQuantity:
		value, err := quantity.Parse(k.Example, k.Unit)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if k.Max > k.Min && (value < k.Min || value > k.Max) {
			t.Errorf("%s: the example %q is out of its range", name, k.Example)
		}
	case KindChoice:
		if !strings.Contains("\n"+strings.Join(k.Choices, "\n")+"\n", "\n"+k.Example+"\n") {
			t.Errorf("%s: the example %q is none of its words", name, k.Example)
		}
	case KindLibrary:
		if !inLibrary(lib, k) {
			t.Errorf("%s: the library's %s have no %q", name, k.Library, k.Example)
		}
	}
}

func inLibrary(lib *library.Library, k Key) bool {
	switch k.Library {
	case "batteries":
		return lib.Chemistry(k.Example) != nil
	case "blocks":
		return lib.Block(k.Example) != nil
	case "chargers":
		return lib.Charger(k.Example) != nil
	case "connector families":
		return lib.Connector(k.Example) != nil
	case "covers":
		return lib.Cover(k.Example) != nil
	case "diodes":
		return lib.Diode(k.Example) != nil
	case "fuse types":
		return lib.FuseType(k.Example) != nil
	case "generators":
		return lib.Generator(k.Example) != nil
	case "loads":
		return lib.Load(k.Example) != nil
	case "practices":
		return lib.Practice(k.Example) != nil
	case "relay forms":
		return lib.RelayForm(k.Example) != nil
	case "switches":
		return lib.Switch(k.Example) != nil
	case "terminals":
		return len(lib.TerminalKinds()) > 0 && lib.TerminalFor(k.Example, 1) != nil
	case "wire types":
		return lib.WireType(k.Example) != nil
	}
	return false
}

// What is used when the design says nothing must be in the embedded library.
func TestDefaultsAreInTheLibrary(t *testing.T) {
	lib := library.Default()
	for _, code := range []string{defaultFeedColour, defaultReturnColour} {
		if lib.Colour(code) == nil {
			t.Errorf("the library has no colour %s", code)
		}
	}
	if lib.FuseType(UsualFuseType) == nil {
		t.Errorf("the library has no fuse type %s", UsualFuseType)
	}
	for _, l := range lib.Loads {
		if l.Sign != "" && !contains(signs, l.Sign) {
			t.Errorf("load %q has the unknown sign %q", l.Name, l.Sign)
		}
		if !contains(behaviours, l.Behaves) {
			t.Errorf("load %q behaves as the unknown %q", l.Name, l.Behaves)
		}
	}
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// The example of each section reads as YAML with keys that the section has.
func TestSectionExamples(t *testing.T) {
	for _, s := range Format() {
		var doc yaml.Node
		if err := yaml.Unmarshal([]byte(s.Example), &doc); err != nil {
			t.Errorf("example of %s: %v", s.Name, err)
			continue
		}
		for _, record := range records(s, doc.Content[0]) {
			if record.Kind != yaml.MappingNode {
				continue // a short form
			}
			for i := 0; i < len(record.Content); i += 2 {
				if name := record.Content[i].Value; !hasKey(s, name) {
					t.Errorf("example of %s: unknown key %q", s.Name, name)
				}
			}
		}
	}
}

// records are the records in an example, which wraps them in their key.
func records(s Section, root *yaml.Node) []*yaml.Node {
	if s.Name == "design" {
		return []*yaml.Node{root}
	}
	body := root.Content[1]
	switch s.Shape {
	case KindList:
		return body.Content
	case KindNamed:
		var list []*yaml.Node
		for i := 1; i < len(body.Content); i += 2 {
			list = append(list, body.Content[i])
		}
		return list
	}
	return []*yaml.Node{body}
}

func hasKey(s Section, name string) bool {
	for _, k := range s.Keys {
		if k.Name == name {
			return true
		}
	}
	return false
}
