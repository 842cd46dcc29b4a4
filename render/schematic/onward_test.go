package schematic

import (
	"os"
	"testing"
)

// What hangs on a load leaves before it: the drawing reads back as the design is.
func TestChainOfLoadsReadsBack(t *testing.T) {
	for _, name := range []string{"ok/chain-of-lamps", "parallel-wire-lost"} {
		file := "../../testdata/rules/" + name + ".yaml"
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		review := assessed(t, file, text)
		for _, v := range variants(review) {
			v.Size = "A4"
			examine(t, laidOut(t, review, v), 5)
		}
	}
}
