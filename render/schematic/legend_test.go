package schematic

import (
	"os"
	"testing"
)

// The legend names the dot of joined wires and the plug where they are drawn.
func TestLegendNamesWhatIsDrawn(t *testing.T) {
	text, err := os.ReadFile("testdata/orchard.yaml")
	if err != nil {
		t.Fatal(err)
	}
	found := words(planned(t, "orchard.yaml", text, Options{}).paint())
	for _, name := range []string{"joined wires", "plug connection"} {
		if found[name] != 1 {
			t.Errorf("%q stands %d times on the sheets, want once", name, found[name])
		}
	}
}
