package library

import (
	"cmp"
	"fmt"
	"reflect"
	"strings"
	"testing"
)

// rowTypes are the types of rows of all lists, and of the lists inside of them.
func rowTypes() map[string]reflect.Type {
	all := map[string]reflect.Type{"Inrush": reflect.TypeFor[Inrush]()}
	var add func(reflect.Type)
	add = func(t reflect.Type) {
		for t.Kind() == reflect.Slice || t.Kind() == reflect.Pointer {
			t = t.Elem()
		}
		if t.Kind() != reflect.Struct || t == sourceType || all[t.Name()] != nil {
			return
		}
		all[t.Name()] = t
		for i := range t.NumField() {
			add(t.Field(i).Type)
		}
	}
	library := reflect.TypeFor[Library]()
	for i := range library.NumField() {
		add(library.Field(i).Type)
	}
	return all
}

// Every number of every row has limits, and they hold: a value at either end is
// taken and one just beyond it refused. A new field is tried without more ado.
func TestEveryLimitHolds(t *testing.T) {
	tried := 0
	for name, row := range rowTypes() {
		for i := range row.NumField() {
			f := row.Field(i)
			key, ok := f.Tag.Lookup("key")
			kind := f.Type.Kind()
			if !ok || kind != reflect.Float64 && kind != reflect.Int {
				continue
			}
			lo, hi := limits(f.Tag)
			if lo >= hi {
				t.Errorf("%s.%s: no limits in %q", name, f.Name, f.Tag)
			}
			for _, c := range []struct {
				value float64
				in    bool
			}{{lo, true}, {hi, true}, {lo - 1e-4*max(1, hi)/1e3, false}, {hi * 1.001, false}} {
				refused := strings.Contains(problemsOf(t, row, key, c.value), "out of range")
				if refused == c.in {
					t.Errorf("%s, %s: %g is refused: %v", name, key, c.value, refused)
				}
				tried++
			}
		}
	}
	if tried < 300 {
		t.Errorf("only %d values tried", tried)
	}
}

// problemsOf reads a row of one key.
func problemsOf(t *testing.T, row reflect.Type, key string, value float64) string {
	t.Helper()
	root, wrong := parseYAML(fmt.Appendf(nil, "%q: %s\n", key, strings.Replace(fmt.Sprintf("%g", value), "e+", "e", 1)))
	if wrong != nil {
		t.Fatal(wrong.Value)
	}
	r := &reader{loading: newLoading(), file: "f.yaml", sources: map[string]Source{}}
	m, _ := r.newRow(root, "the row")
	m.fill(reflect.New(row).Interface(), Source{})
	return r.problems.Error()
}

// A limit of a practice has the source of the practice, or of the file, where it
// says none of its own.
func TestLimitsHaveASource(t *testing.T) {
	var limitsText string
	row := reflect.TypeFor[Practice]()
	for i := range row.NumField() {
		if key := row.Field(i).Tag.Get("limit"); key != "" {
			lo, _, _ := strings.Cut(row.Field(i).Tag.Get("in")+",", ",")
			limitsText += fmt.Sprintf("      %s: {value: %s}\n", key, cmp.Or(lo, "1"))
		}
	}
	text := head + "practices:\n  - name: yard\n    afloat: false\n    limits:\n" + limitsText
	lib, err := Parse("f.yaml", []byte(text))
	if err == nil && (len(lib.Practices[0].Source) != 18 || lib.Practices[0].Source["fuse ratio"].Text == "") {
		t.Errorf("sources %v", lib.Practices[0].Source)
	}
	if err != nil {
		t.Error(err)
	}
}

// The resting voltage of a chemistry is a line: two points are enough, one is not.
func TestOpenCircuitIsALine(t *testing.T) {
	const row = head + "batteries:\n  - {name: x, peukert: 1.1, rated h: 20, ohm Ah: 0.2, charge share: 0.2, " +
		"charge efficiency: 0.9, start reserve: 0.4, open circuit: [{charge: 0, volts: 11.8}%s]}\n"
	if _, err := Parse("f.yaml", fmt.Appendf(nil, row, ", {charge: 1, volts: 12.7}")); err != nil {
		t.Error(err)
	}
	if _, err := Parse("f.yaml", fmt.Appendf(nil, row, "")); err == nil {
		t.Error("one point is taken")
	}
}

// At rest a battery has at least what an empty one has under load, and a protection lets the highest charging
// voltage through.
func TestVoltagesOfAChemistryInOrder(t *testing.T) {
	const row = head + "batteries:\n  - {name: x, peukert: 1.1, rated h: 20, ohm Ah: 0.2, charge share: 0.2, most charge V: 14.6, " +
		"charge efficiency: 0.9, start reserve: 0.4, open circuit: [{charge: 0, volts: 10.5}, {charge: 1, volts: 12.7}], %s}\n"
	for keys, taken := range map[string]bool{
		"empty V: 10.5": true, "empty V: 10.6": false, "board opens above V: 14.7": true, "board opens above V: 14.6": false,
	} {
		if _, err := Parse("f.yaml", fmt.Appendf(nil, row, keys)); (err == nil) != taken {
			t.Errorf("%s: %v", keys, err)
		}
	}
}
