package design

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/harness/design/slips"
)

// Another spelling of a key is understood; a near name is said once, and read as
// the key that it was meant to be, so that nothing follows from it.
func TestKeySpellings(t *testing.T) {
	base := strings.Replace(sound, "to: rack", "to: seat", 1)
	tests := []struct{ name, was, now, want string }{
		{"a section with a capital", "\nloads:", "\nLoads:", ""},
		{"a section in capitals", "\ngrounds:", "\nGROUNDS:", ""},
		{"a key with a hyphen", "    fed by:", "    fed-by:", ""},
		{"a key with an underscore", "    fed by:", "    Fed_By:", ""},
		{"a key without its space", "    fed by:", "    fedby:", ""},
		{"the version with a capital", "fusewright: 1", "Fusewright: 1", ""},
		{"a section in the singular", "\nfuses:", "\nfuse:", `15:1: the design: unknown key "fuse" (did you mean "fuses"?)`},
		{"a key in the plural", "    rating:", "    ratings:", `17:5: fuse "main": unknown key "ratings" (did you mean "rating"?)`},
		{"a section with two letters swapped", "\nplaces:", "\nplcaes:", `7:1: the design: unknown key "plcaes" (did you mean "places"?)`},
		{"two spellings of one key", "    rating: 20 A", "    rating: 20 A\n    Rating: 20 A", `18:5: fuse "main": the key "Rating" is given twice (see keys.yaml:17:5)`},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			_, err := Read("keys.yaml", []byte(strings.Replace(base, c.was, c.now, 1)), nil)
			got := ""
			if err != nil {
				got = err.Error()
			}
			if want := strings.TrimPrefix("keys.yaml:"+c.want, "keys.yaml:"); want == "" && got != "" || want != "" && got != "keys.yaml:"+want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// The old name of a key is read, with one note for each, at its first use.
func TestOldKeys(t *testing.T) {
	d := mustRead(t, strings.Replace(strings.ReplaceAll(sound, "rack", "seat"), "symbol:", "sign:", 1)+
		"rides: {day: {legs: [{minutes: 5 min, on: none}, {minutes: 7 min, on: none}]}}\n")
	const want = "test.yaml:23:23: \"sign\" is now \"symbol\"; still read in this version; `fmt` writes the new one\n" +
		"test.yaml:27:23: \"minutes\" is now \"lasts\"; still read in this version; `fmt` writes the new one"
	if got := d.OldKeys.Error(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if d.Loads[1].Sign != SignHorn || d.Rides[0].Legs[1].Lasts.Value != 420 {
		t.Error("the values under the old names are not taken")
	}
}

// In no design that reads is a slip found: what is said of the layout of a broken
// one is not said of what is sound in it.
func TestNoSlipsInSoundDesigns(t *testing.T) {
	files := 0
	for _, dir := range []string{"../../designs", "../../testdata"} {
		err := filepath.WalkDir(dir, func(path string, _ os.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".yaml" {
				return err
			}
			src := load(t, path)
			if _, err := Read(path, src, nil); err != nil {
				return nil
			}
			files++
			if found, _ := slips.Find(src, anyKey, maxProblems); len(found) > 0 {
				t.Errorf("%s: %v", path, found[0])
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if files < 100 {
		t.Errorf("%d designs", files)
	}
}
