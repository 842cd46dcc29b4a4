package synth_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"fusewright/harness/proof/synth"
)

var (
	writeFolder = flag.String("write", "", "folder for the texts of the forms")
	writeWires  = flag.Int("wires", 1000, "wires of the forms to be written")
)

// TestForms reads each form in small sizes and some large ones: exactly the
// wires asked for, the same text for the same seed. With -write it writes them
// as design files.
func TestForms(t *testing.T) {
	sizes := []int{0, 100, 137, 405, 1000}
	for n := synth.LeastWires; n <= 20; n++ {
		sizes = append(sizes, n)
	}
	for _, form := range synth.Forms {
		for _, n := range sizes {
			t.Run(fmt.Sprintf("%s/%d", form, n), func(t *testing.T) {
				src := form.YAML(n, 1)
				if !bytes.Equal(src, form.YAML(n, 1)) {
					t.Error("two calls give two texts")
				}
				if got, want := len(build(t, src).Wires), max(n, synth.LeastWires); got != want {
					t.Errorf("%d wires, want %d\n%s", got, want, src)
				}
			})
		}
		if *writeFolder != "" {
			name := filepath.Join(*writeFolder, fmt.Sprintf("%s-%d.yaml", form, *writeWires))
			if err := os.WriteFile(name, form.YAML(*writeWires, 1), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
}
