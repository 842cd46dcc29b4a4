package mutant

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness/design"
	"fusewright/library"
)

// Every kind of value that the format knows is changed, or walked into, or left
// out on purpose.
func TestKindsAreKnown(t *testing.T) {
	known := map[string]bool{design.KindFeeds: true, // a change of its own
		design.KindRecord: true, design.KindNamed: true, design.KindList: true, // walked into
		design.KindTexts: true, design.KindMoney: true, design.KindLabels: true} // they change no figure
	for k := range writers {
		known[k] = true
	}
	for _, s := range design.Format() {
		for _, k := range s.Keys {
			if !known[k.Kind] {
				t.Errorf("%s, %s: no change of the kind %q", s.Name, k.Name, k.Kind)
			}
		}
	}
}

// At least two of three mutants read, each seed gives the same one again, and
// each change is said.
func TestMostRead(t *testing.T) {
	lib := library.Default()
	files, err := filepath.Glob("../../../testdata/corpus/clean/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no designs", err)
	}
	made, read := 0, 0
	for i, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for k := range uint64(3) {
			seed := uint64(i)*100 + k
			m, err := Make(src, lib, seed)
			if err != nil {
				t.Fatalf("%s, seed %d: %v", file, seed, err)
			}
			again, err := Make(src, lib, seed)
			if err != nil || !bytes.Equal(m.Text, again.Text) {
				t.Fatalf("%s, seed %d gives two texts, or %v", file, seed, err)
			}
			if len(m.Changes) == 0 || bytes.Equal(m.Text, src) {
				t.Errorf("%s, seed %d: nothing is changed", file, seed)
			}
			made++
			if _, err := design.Read(file, m.Text, lib); err == nil {
				read++
			} else if testing.Verbose() {
				t.Logf("%v: %v", m.Changes, err)
			}
		}
	}
	t.Logf("%d of %d read", read, made)
	if read*3 < made*2 {
		t.Errorf("%d of %d mutants read, less than two of three", read, made)
	}
}

func TestNoDesign(t *testing.T) {
	for _, src := range []string{"", "- a", "a: [", "x"} {
		if _, err := Make([]byte(src), library.Default(), 1); err == nil {
			t.Errorf("%q gives a mutant", src)
		}
	}
}
