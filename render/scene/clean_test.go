package scene_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"fusewright/harness/proof/fuzztest"
	"fusewright/render/scene"
)

func TestClean(t *testing.T) {
	for _, test := range []struct{ name, in, want string }{
		{"plain", "W1 1.5 mm", "W1 1.5 mm"},
		{"signs of the trade", "680 Ω 18 µA mm² °C − ≤ ≥ · – →", "680 Ω 18 µA mm² °C − ≤ ≥ · – →"},
		{"control characters", "a\x00b\tc\nd\x7fe\u0085f", "a b c d e f"},
		{"not UTF-8", "a\xffb", "a□b"},
		{"no glyph", "漢\U0001F50B", "□□"},
		{"composed", "e\u0301", "é"},
		{"lone mark", "x\u0330", "x□"},
		{"reading direction", "a\u202eb\u200fc\ufeff", "abc"},
		{"written from the right", "שלום", "□□□□"},
		{"tick and cross", "✓✗", "√×"},
		{"odd spaces", "1\u00a0A\u202fx\u2009y", "1 A x y"},
		{"ohm sign", "\u2126", "Ω"}, // NFC makes it the Greek letter
		{"empty", "", ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := scene.Clean(test.in); got != test.want {
				t.Errorf("Clean(%q) = %q, want %q", test.in, got, test.want)
			}
		})
	}
}

// Nothing that Clean leaves as it is composes with what stands before it, so that a text
// of such runes is composed.
func TestWhatStaysComposesWithNothing(t *testing.T) {
	for r := ' '; r < 0x10000; r++ {
		if text := string(r); scene.Clean(text) == text && !norm.NFC.PropertiesString(text).BoundaryBefore() {
			t.Errorf("%U %s", r, text)
		}
	}
}

func FuzzClean(f *testing.F) {
	f.Add("680 Ω")
	f.Add("a\x00\xff\u202e漢")
	f.Fuzz(func(t *testing.T, s string) {
		fuzztest.Within(t, func() {
			clean := scene.Clean(s)
			if !utf8.ValidString(clean) {
				t.Errorf("not UTF-8: %q", clean)
			}
			if again := scene.Clean(clean); again != clean {
				t.Errorf("cleaned twice: %q, once: %q", again, clean)
			}
			for _, r := range clean {
				if !scene.HasGlyph(r) || r < ' ' {
					t.Errorf("%q holds %U, which no face shows", clean, r)
				}
			}
			if id := scene.ID(s); strings.ContainsFunc(id, func(r rune) bool { return r >= utf8.RuneSelf }) {
				t.Errorf("ID %q", id)
			}
		})
	})
}

func TestID(t *testing.T) {
	for in, want := range map[string]string{
		"main": "main", "rear 1": "rear-1", "1.5 mm²": "n-1-5-mm", "Ω": "n", "": "n", "a<b>&c": "a-b-c", "-x-": "x", "_a": "n-_a",
	} {
		if got := scene.ID(in); got != want {
			t.Errorf("ID(%q) = %q, want %q", in, got, want)
		}
		s := scene.NewSheet(10, 10, "")
		s.Begin(scene.Group{ID: scene.ID(in)})
		s.End()
		if err := s.Validate(); err != nil {
			t.Errorf("ID(%q): %v", in, err)
		}
	}
	s := scene.NewSheet(10, 10, "")
	for _, want := range []string{"w", "w-2", "w-3"} {
		id := s.UniqueID("w")
		if id != want {
			t.Errorf("UniqueID gave %q, want %q", id, want)
		}
		s.Begin(scene.Group{ID: id})
		s.End()
	}
}
