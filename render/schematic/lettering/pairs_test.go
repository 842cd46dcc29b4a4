package lettering

import (
	"strings"
	"testing"
)

func TestFiguresKeepTheirUnits(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"power make 12 V, with resistor", "power|make|12 V,|with|resistor"},
		{"14 Ah, 9 mΩ", "14 Ah,|9 mΩ"},
		{"fuse 10 A spare", "fuse|10 A|spare"},
		{"lamp 2 left", "lamp|2|left"},
		{"V 12", "V|12"},
		{"", ""},
	} {
		if got := strings.Join(pairs(c.text), "|"); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}
