package schematic

import (
	"os"
	"path/filepath"
	"testing"
)

// What is built bears the flags of findings that remedies have grouped. The demo designs,
// their mistaken forms and large designs with many findings keep the rules of the drawing so too.
func TestFlaggedWithPlan(t *testing.T) {
	var names []string
	for _, pattern := range []string{"../../designs/*.yaml", "../../testdata/six-mistakes/*.yaml", "../../testdata/corpus-review-fourth/planted/p0[1679]-*.yaml", "../../testdata/corpus-review-fourth/planted/p[13][68]-*.yaml", "../../testdata/six-mistakes/isolator/*.yaml"} {
		some, err := filepath.Glob(pattern)
		if err != nil || len(some) == 0 {
			t.Fatalf("%s: %d designs, %v", pattern, len(some), err)
		}
		names = append(names, some...)
	}
	flags := 0
	for i, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		review := assessed(t, name, text)
		review.Remedies()
		for k, v := range variants(review)[:5] {
			if v.NoFindings {
				continue
			}
			v.Size = []string{"A4", "A3", "Letter", "Tabloid"}[(i+k)%4]
			d := laidOut(t, review, v)
			flags += len(d.Signs.List)
			t.Run(filepath.Base(name)+" "+v.Size+v.name, func(t *testing.T) { examine(t, d, 4) })
		}
	}
	if flags < 100 {
		t.Errorf("%d flags in all: the test proves little", flags)
	}
}
