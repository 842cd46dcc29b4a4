package schematic

import (
	"fmt"
	"os"
	"testing"

	"fusewright/render/scene/scenetest"
)

// The sheets of the demo designs look the same in every back-end.
func TestBackendsShowTheSameSheets(t *testing.T) {
	for _, name := range []string{"fen-runner", "reed-skiff"} {
		text, err := os.ReadFile("../../designs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		for i, sheet := range planned(t, name, text, Options{}).Paint() {
			t.Run(fmt.Sprintf("%s sheet %d", name, i+1), func(t *testing.T) { scenetest.SamePicture(t, sheet) })
		}
	}
}
