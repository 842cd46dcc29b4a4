package main

import (
	"bytes"
	"reflect"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
)

// Each form that an option names is one of its own: a word without a writer would
// quietly give another form.
func TestEveryFormIsItsOwn(t *testing.T) {
	const demo = "../../designs/fen-runner.yaml"
	for _, c := range []struct{ command, option string }{
		{"check " + demo, "format"}, {"export " + demo, "to"}, {"diff " + demo + " ../../designs/reed-skiff.yaml", "format"},
		{"budget " + demo, "format"},
	} {
		name, _, _ := strings.Cut(c.command, " ")
		seen := map[string]string{}
		for _, form := range formsOf(t, name, c.option) {
			var out, complaints bytes.Buffer
			run(append(strings.Fields(c.command), "--"+c.option, form), nil, &out, &complaints)
			switch other, twice := seen[out.String()]; {
			case out.Len() == 0:
				t.Errorf("%s --%s %s prints nothing: %s", name, c.option, form, &complaints)
			case twice:
				t.Errorf("%s --%s %s prints what %s does", name, c.option, form, other)
			}
			seen[out.String()] = form
		}
		if len(seen) < 2 {
			t.Errorf("%s has only %d forms", name, len(seen))
		}
	}
}

// formsOf are the words that an option of a command takes.
func formsOf(t *testing.T, command, option string) []string {
	t.Helper()
	app, err := newParser(&program{}, &bytes.Buffer{}, &bytes.Buffer{}, func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, leaf := range app.Model.Leaves(true) {
		for _, f := range leaf.Flags {
			if leaf.Path() == command && f.Name == option {
				return f.EnumSlice()
			}
		}
	}
	t.Fatalf("%s has no --%s", command, option)
	return nil
}

// Every quantity on the command line says what it measures.
func TestAmountsHaveADimension(t *testing.T) {
	app, err := newParser(&program{}, &bytes.Buffer{}, &bytes.Buffer{}, func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, leaf := range app.Model.Leaves(true) {
		values := slices.Clone(leaf.Positional)
		for _, f := range leaf.Flags {
			values = append(values, f.Value)
		}
		for _, v := range values {
			if v.Target.Type() != reflect.TypeFor[amount]() {
				continue
			}
			n++
			if of := quantity.Dimension(v.Tag.Get("of")); !slices.Contains(quantity.Dimensions(), of) {
				t.Errorf("%s, %s is of %q", leaf.Path(), v.Name, of)
			}
		}
	}
	if n < 30 {
		t.Errorf("only %d quantities", n)
	}
}
