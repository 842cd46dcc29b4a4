package problem

import (
	"testing"
)

func TestNearest(t *testing.T) {
	choices := []string{"fed by", "returns to", "wire", "mini make 12 V", "mini changeover 12 V"}
	tests := []struct{ name, word, want string }{
		{"one letter off", "wier", "wire"},
		{"case alone", "WIRE", "wire"},
		{"space left out", "fedby", "fed by"},
		{"two letters swapped", "rteurns to", "returns to"},
		{"end left out", "mini change", "mini changeover 12 V"},
		{"end left out, and a slip", "mini maek", "mini make 12 V"},
		{"nothing like it", "connector", ""},
		{"too short to guess an end", "mi", ""},
		{"empty", "", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Nearest(tt.word, choices); got != tt.want {
				t.Errorf("Nearest(%q) = %q, want %q", tt.word, got, tt.want)
			}
		})
	}
}

func TestKin(t *testing.T) {
	choices := []string{"bilge pump", "pressure pump", "USB charger", "MPPT of 12 V"}
	for word, want := range map[string]int{"water pump": 2, "Water PUMP": 2, "pumps": 4, "of it": 4, "usb": 1, "": 4} {
		if got := Kin(word, choices); len(got) != want {
			t.Errorf("Kin(%q) = %v, want %d", word, got, want)
		}
	}
}

func TestDistance(t *testing.T) {
	tests := []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"", "abc", 3}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"Ω", "m", 1},
	}
	for _, tt := range tests {
		if got := distance([]rune(tt.a), []rune(tt.b)); got != tt.want {
			t.Errorf("distance(%q, %q) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
}

func TestListSortsByPlace(t *testing.T) {
	at := func(file string, line, col int) Pos { return Pos{file, line, col} }
	first := at("a.yaml", 2, 1)
	l := List{
		{Pos: at("b.yaml", 1, 1), What: "z"},
		{Pos: at("a.yaml", 9, 3), What: "name taken", Also: &first},
		{Pos: at("a.yaml", 9, 2), What: "unknown key", Expected: "a, b", Nearest: "b"},
		{Pos: at("a.yaml", 0, 0), What: "whole file"},
		{Pos: at("a.yaml", 9, 2), What: "a first by text"},
	}
	want := "a.yaml: whole file\n" +
		"a.yaml:9:2: a first by text\n" +
		"a.yaml:9:2: unknown key (expected a, b; did you mean \"b\"?)\n" +
		"a.yaml:9:3: name taken (see a.yaml:2:1)\n" +
		"b.yaml:1:1: z"
	if got := l.Err().Error(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if (List{}).Err() != nil {
		t.Error("an empty list is an error")
	}
}
