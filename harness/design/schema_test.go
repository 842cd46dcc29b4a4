package design

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fusewright/library"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
)

// beyondSchema are the wrong files of testdata/read/err in which the schema sees
// nothing, each with what it would take.
var beyondSchema = map[string]string{
	"isolator-astray":              "where feeds lead",
	"on-post":                      "which battery a fuse is on",
	"through-a-load":               "what feeds what",
	"partings":                     "names, and runs at a place",
	"key-on-a-float":               "what works a switch is a figure of its type in the library",
	"aluminium-wire":               "names of wire types are offered, others may come from a library file",
	"returns":                      "on which side of a load a part stands goes by what it says",
	"stays":                        "what a relay does goes by its form",
	"reversing":                    "what a relay of another name is",
	"figure-without-unit":          "whether a figure has a unit goes by the rule",
	"no-reason":                    "whether words are a reason",
	"dangling-feed":                "names are checked against the whole design",
	"dangling-names-in-situations": "names are checked against the whole design",
	"dangling-place":               "names are checked against the whole design",
	"duplicate-names":              "names are checked against the whole design",
	"duplicate-places":             "names are checked against the whole design",
	"engine-beyond-output":         "one value limits another",
	"fed-by-a-ground-or-load":      "names are checked against the whole design",
	"fed-by-itself":                "names are checked against the whole design",
	"load-without-power":           "which keys exclude each other depends on the library",
	"name-like-a-way":              "names are checked against the whole design",
	"no-battery-place":             "lengths follow from the whole design",
	"plug-against-its-ends":        "one value limits another",
	"no-length":                    "lengths follow from the whole design",
	"no-such-contact":              "contacts follow from the relay's form",
	"no-such-fuse-rating":          "ratings follow from the fuse type",
	"no-such-way":                  "ways follow from the block",
	"no-such-wire-size":            "sizes follow from the wire type",
	"return-in-a-circle":           "names are checked against the whole design",
	"returns-to-no-ground":         "names are checked against the whole design",
	"run-to-itself":                "one value limits another",
	"same-speed-twice":             "equal quantities in two units",
	"terminal-too-small":           "barrels follow from the wire's size",
	"twice-the-same-feed":          "names are checked against the whole design",
	"unknown-library-names":        "a library file may add names",
	"system-voltage":               "which voltages are nominal is not a matter of how they are written",
	"written-controls":             "which characters can be printed only the reader knows",
}

// notYAML are files that no YAML reader hands on, or that this reader refuses
// for how they are written.
var notYAML = map[string]bool{"anchor-bomb": true, "anchor-in-itself": true, "control-bytes": true,
	"duplicate-keys": true, "not-utf8": true, "not-yaml": true, "not-yaml-colon": true, "not-yaml-tabs": true,
	"two-documents": true, "unknown-anchor": true, "utf16": true, "too-many-aliases": true, "tags": true}

func compiledSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := Schema(library.Default())
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("fusewright.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("fusewright.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestSchemaIsFresh(t *testing.T) {
	text, err := Schema(library.Default())
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "../../docs/fusewright.schema.json", text)
}

// Every section that has something standing in place of its record has it in
// the schema, and no other.
func TestSchemaShortForms(t *testing.T) {
	for _, s := range Format() {
		if (s.Short != "") != (shortSchema(s.Name) != nil) {
			t.Errorf("section %q: short form in words %q, in the schema %v", s.Name, s.Short, shortSchema(s.Name))
		}
	}
}

// Every design that reads passes the schema.
func TestSchemaTakesGoodDesigns(t *testing.T) {
	schema := compiledSchema(t)
	n := 0
	for _, pattern := range []string{"../../designs/*.yaml", "../../testdata/read/ok/*.yaml", "../../testdata/rules/*.yaml",
		"../../testdata/rules/ok/*.yaml", "../../testdata/corpus/*/*.yaml", "../../testdata/corpus/*/*/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			n++
			value, err := plainYAML(t, file)
			if err != nil {
				t.Errorf("%s: %v", file, err)
			} else if err := schema.Validate(value); err != nil {
				t.Errorf("%s: %v", file, err)
			}
		}
	}
	if n < 150 {
		t.Errorf("only %d designs found", n)
	}
}

// Every wrong file is caught by the schema, or is on the list of what a schema
// cannot see; and what is on the list does pass it.
func TestSchemaRefusesBadDesigns(t *testing.T) {
	schema := compiledSchema(t)
	files, err := filepath.Glob("../../testdata/read/err/*.yaml")
	if err != nil || len(files) < 50 {
		t.Fatalf("%d wrong files: %v", len(files), err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".yaml")
		if notYAML[name] {
			continue
		}
		value, err := plainYAML(t, file)
		if err != nil {
			t.Errorf("%s is no YAML: %v", name, err)
			continue
		}
		refused := schema.Validate(value) != nil
		why, listed := beyondSchema[name]
		switch {
		case !refused && !listed:
			t.Errorf("%s passes the schema", name)
		case refused && listed:
			t.Errorf("%s is caught, though listed as beyond the schema (%s)", name, why)
		}
	}
}

// plainYAML reads a file as an editor does: anchors followed, keys as text.
func plainYAML(t *testing.T, file string) (any, error) {
	t.Helper()
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var n yaml.Node
	if err := yaml.Unmarshal(src, &n); err != nil {
		return nil, err
	}
	if n.Kind == 0 {
		return nil, nil
	}
	return plainNode(n.Content[0], 0)
}

func plainNode(n *yaml.Node, depth int) (any, error) {
	if depth > 200 {
		return nil, fmt.Errorf("too deep")
	}
	switch n.Kind {
	case yaml.AliasNode:
		return plainNode(n.Alias, depth+1)
	case yaml.SequenceNode:
		list := []any{}
		for _, c := range n.Content {
			v, err := plainNode(c, depth+1)
			if err != nil {
				return nil, err
			}
			list = append(list, v)
		}
		return list, nil
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i < len(n.Content); i += 2 {
			v, err := plainNode(n.Content[i+1], depth+1)
			if err != nil {
				return nil, err
			}
			m[n.Content[i].Value] = v
		}
		return m, nil
	}
	return plainScalar(n), nil
}

func plainScalar(n *yaml.Node) any {
	switch n.Tag {
	case "!!null":
		return nil
	case "!!bool":
		return strings.EqualFold(n.Value, "true")
	case "!!int", "!!float":
		if v, err := strconv.ParseFloat(n.Value, 64); err == nil && v-v == 0 {
			return v
		}
	}
	return n.Value
}
