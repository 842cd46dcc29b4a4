package design

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"fusewright/library"
)

// Each behaviour says which rating of a contact holds for it, and is a word that the
// library's loads may have, as each sign is.
func TestEveryBehaviourIsWhole(t *testing.T) {
	words := func(field string) []string {
		f, _ := reflect.TypeFor[library.LoadType]().FieldByName(field)
		return strings.FieldsFunc(f.Tag.Get("words"), func(r rune) bool { return r == '|' })
	}
	if got := words("Behaves"); !slices.Equal(got, behaviours) {
		t.Errorf("the library knows %q, the design %q", got, behaviours)
	}
	if got := words("Sign"); !slices.Equal(got, signs) {
		t.Errorf("the library knows %q, the design %q", got, signs)
	}
	for _, b := range Behaviours {
		if _, ok := contactKinds[b]; !ok {
			t.Errorf("no rating of a contact is said to hold for %s", b)
		}
	}
	if len(contactKinds) != len(Behaviours) {
		t.Error("a row is of no behaviour")
	}
}

func TestContactA(t *testing.T) {
	for _, c := range []struct {
		of                     Behaviour
		resistive, lamp, motor float64
		want                   float64
	}{
		{Resistor, 20, 5, 10, 20}, {ConstantPower, 20, 5, 10, 20}, {FilamentLamp, 20, 5, 10, 5}, {Motor, 20, 5, 10, 10},
		{FilamentLamp, 20, 0, 10, 20}, {Motor, 20, 5, 0, 20}, {Motor, 0, 5, 0, 0},
	} {
		if got := c.of.ContactA(c.resistive, c.lamp, c.motor); got != c.want {
			t.Errorf("%s of %g, %g, %g A: %g, want %g", c.of, c.resistive, c.lamp, c.motor, got, c.want)
		}
	}
}

// Each kind of part of a Design is read by a key of the whole design, whose section
// is in the format, has what all parts have, and shows an example that reads as one.
func TestEveryPartKindIsRead(t *testing.T) {
	sections := map[string]Section{}
	for _, s := range Format() {
		sections[s.Name] = s
	}
	kinds := 0
	d := reflect.TypeFor[Design]()
	for i := range d.NumField() {
		f := d.Field(i)
		if f.Type.Kind() != reflect.Slice || !f.Type.Elem().Implements(reflect.TypeFor[Part]()) {
			continue
		}
		kinds++
		key := designSection.find(strings.ToLower(f.Name))
		if key == nil || key.Kind != KindNamed {
			t.Errorf("%s: no key of the design reads them", f.Name)
			continue
		}
		s, ok := sections[key.Section]
		if !ok || !strings.HasPrefix(s.Example, key.Name+":") {
			t.Errorf("%s: no section %q with an example", f.Name, key.Section)
			continue
		}
		for _, need := range []string{"at", "label", "stays live"} {
			if !slices.ContainsFunc(s.Keys, func(k Key) bool { return k.Name == need }) {
				t.Errorf("%s: a %s has no %q", f.Name, s.Name, need)
			}
		}
		if n, kind := readParts(t, s.Example, i); n == 0 || kind != "a "+s.Name {
			t.Errorf("%s: the example gives %d, of which the first is %q", f.Name, n, kind)
		}
	}
	if kinds < 8 {
		t.Errorf("only %d kinds of parts", kinds)
	}
}

// readParts reads an example alone: how many parts it puts into a field of the
// design, and what the first calls itself. Its feeds lead nowhere.
func readParts(t *testing.T, example string, field int) (int, string) {
	t.Helper()
	r := newReader("example.yaml", library.Default())
	root := r.parse([]byte("fusewright: 1\n" + example))
	if root == nil {
		t.Fatal(r.result())
	}
	readRecord(r, &designSection, r.d, root, where{kind: wholeDesign})
	list := reflect.ValueOf(r.d).Elem().Field(field)
	if list.Len() == 0 {
		return 0, ""
	}
	return list.Len(), kindOf(list.Index(0).Interface().(Part))
}
