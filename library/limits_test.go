package library

import (
	"strings"
	"testing"
)

// Every limit on a user's file is met with an error that names it.
func TestLimitsAreNamed(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"bytes", head + "# " + strings.Repeat("x", MaxFileBytes), "larger than 4 MiB"},
		{"entries", head + "covers:\n" + strings.Repeat("  - 1\n", maxEntries+1), "at most 2000"},
		{"depth", head + "covers: " + strings.Repeat("[", 20_000), "exceeded max depth"},
		{"anchors", head + "covers: &a []\n", "anchors and aliases are not taken"},
		{"number", head + "covers:\n  - {name: x, max C: 1e999, current factor: 1}\n", "out of range: 1e999"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if _, err := Parse("f.yaml", []byte(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %.300v, want %s", err, c.want)
			}
		})
	}
}

// Names and texts of a user's file come to terminals and papers: characters
// that steer are refused, line breaks become spaces.
func TestSteeringCharactersAreRefused(t *testing.T) {
	for text, want := range map[string]string{
		`"a\x1b[2Jb"`:  `"name" has the unprintable character U+001B`,
		`"a\0b"`:       `"name" has the unprintable character U+0000`,
		"\"a\u202eb\"": `"name" has the unprintable character U+202E`,
		`"a\x9bb"`:     `"name" has the unprintable character U+009B`,
	} {
		_, err := Parse("f.yaml", []byte(head+"covers:\n  - {name: "+text+", max C: 90, current factor: 1}\n"))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: error %v", text, err)
		}
		_, err = Parse("f.yaml", []byte(head+"covers:\n  - {name: x, aliases: ["+text+"], max C: 90, current factor: 1}\n"))
		if err == nil || !strings.Contains(err.Error(), "unprintable character") {
			t.Errorf("alias %q: error %v", text, err)
		}
	}
	lib, err := Parse("f.yaml", []byte(head+"covers:\n  - {name: \"a\\n b\", max C: 90, current factor: 1}\n"))
	if err != nil || lib.Covers[0].Name != "a b" {
		t.Errorf("broken line: %v", err)
	}
}

func TestLoadTextsIsLoad(t *testing.T) {
	texts, err := ReadTexts("testdata/own_parts.yaml")
	if err != nil {
		t.Fatal(err)
	}
	a, errA := LoadTexts(texts...)
	b, errB := Load("testdata/own_parts.yaml")
	if errA != nil || errB != nil || len(a.Loads) != len(b.Loads) || a.WireType("silicone") == nil {
		t.Errorf("%v, %v", errA, errB)
	}
	if _, err := ReadTexts("testdata/none.yaml", "testdata"); err == nil || !strings.Contains(err.Error(), "not a regular file") {
		t.Errorf("error %v", err)
	}
}
