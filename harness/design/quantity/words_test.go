package quantity_test

import (
	"slices"
	"strings"
	"testing"

	"fusewright/harness/design/quantity"
)

func TestBelong(t *testing.T) {
	for _, c := range []struct {
		word, next string
		want       bool
	}{
		{"3.0", "%", true},
		{"(10", "A)", true},
		{"-14.2", "A", true},
		{"16", "AWG,", true},
		{"1/8", "in", true},
		{"4", "1/8", true},
		{"4.5", "1/8", false},
		{"4", "and/or", false},
		{"3", "wires", false},
		{"W5", "A", false},
		{"12,", "V", false},
		{"", "V", false},
	} {
		if got := quantity.Belong(c.word, c.next); got != c.want {
			t.Errorf("%q %q: %v", c.word, c.next, got)
		}
	}
}

// A quantity is one word, with its fraction and, of feet and inches, all of it.
func TestWords(t *testing.T) {
	for text, want := range map[string]string{
		"":                               "",
		"cut 4 ft 2 5/8 in of it":        "cut|4 ft 2 5/8 in|of|it",
		"1 ft 6 in, then 3 ft":           "1 ft 6 in,|then|3 ft",
		"over 12 ft 3 wires":             "over|12 ft|3|wires",
		"2 11/32":                        "2 11/32",
		"11/32 in strip":                 "11/32 in|strip",
		"drop 3.0 % (0.36 V) at 16 AWG,": "drop|3.0 %|(0.36 V)|at|16 AWG,",
		"12 A 5 V":                       "12 A|5 V",
		"W5 A":                           "W5|A",
		strings.Repeat("9", 22) + " mm":  strings.Repeat("9", 22) + "|mm",
	} {
		if got := strings.Join(quantity.Words(text), "|"); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
	}
}

func TestWhole(t *testing.T) {
	whole := []string{"11/32", "1.5", "(≤12.5", "4 ft", "3.0 %", "≥3%", "2026-01", strings.Repeat("9", 24)}
	parts := []string{"", "lamp", "1.5mm", "W5", "-", "…", "(a)", strings.Repeat("9", 25)}
	for _, word := range slices.Concat(whole, parts) {
		if got, want := quantity.Whole(word), slices.Contains(whole, word); got != want {
			t.Errorf("%q: %v", word, got)
		}
	}
}
