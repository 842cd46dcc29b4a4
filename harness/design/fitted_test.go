package design

import (
	"os"
	"testing"
)

// A wire is there when both its ends are, unless it says otherwise.
func TestFittedWires(t *testing.T) {
	text, err := os.ReadFile("../../testdata/read/ok/fitted.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read("fitted.yaml", text, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [][2]bool{{true, true}, {false, false}, {false, true}} {
		l := d.Loads[i]
		if got := [2]bool{l.FedBy[0].Wire.Fitted, l.Returns[0].Wire.Fitted}; got != want {
			t.Errorf("%s: feed and return fitted %v, want %v", l.Name, got, want)
		}
	}
	if !d.Fuses[0].FedBy[0].Wire.Fitted {
		t.Error("the feed of a fitted fuse from the battery is not there")
	}
}
