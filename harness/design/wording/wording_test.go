package wording

import (
	"strings"
	"testing"
)

func TestLists(t *testing.T) {
	for _, tt := range []struct{ names, and, or, few, some string }{
		{"", "nothing", "", "nothing", ""},
		{"a", "a", "a", "a", "a"},
		{"a b", "a and b", "a or b", "a and b", "a, b"},
		{"a b c", "a, b and c", "a, b or c", "a, b and 1 other", "a, b and 1 more"},
		{"a b c d", "a, b, c and d", "a, b, c or d", "a, b and 2 others", "a, b and 2 more"},
	} {
		names := strings.Fields(tt.names)
		for _, x := range []struct{ what, got, want string }{
			{"And", And(names), tt.and}, {"Or", Or(names), tt.or},
			{"Few", Few(names, 2), tt.few}, {"Some", Some(names, 2), tt.some},
		} {
			if x.got != x.want {
				t.Errorf("%s of %q is %q, want %q", x.what, tt.names, x.got, x.want)
			}
		}
	}
}

func TestSpan(t *testing.T) {
	for names, want := range map[string]string{"": "", "W3": "W3", "W3 W4": "W3, W4", "W3 W4 W5": "W3 to W5", "W9 W10 W11 W13": "W9 to W11, W13",
		"W3 W7 W8": "W3, W7, W8", "W3 X4 X5": "W3, X4, X5", "a b c": "a, b, c"} {
		if got := Span(strings.Fields(names)); got != want {
			t.Errorf("%q: %q, want %q", names, got, want)
		}
	}
}

func TestCount(t *testing.T) {
	for n, want := range map[int]string{0: "0 wires", 1: "1 wire", 2: "2 wires"} {
		if got := Count(n, "wire", "wires"); got != want {
			t.Errorf("%d wires are %q, want %q", n, got, want)
		}
	}
}

func TestPresent(t *testing.T) {
	if got := Present([]string{"", "W1", "", "RD"}, " "); got != "W1 RD" {
		t.Errorf("got %q", got)
	}
}
