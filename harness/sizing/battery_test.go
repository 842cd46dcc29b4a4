package sizing

import (
	"os"
	"regexp"
	"testing"
)

// TestFurtherBattery: the wires of a further battery are chosen as any: no thinner than those
// between it and the fuse at its end of the link, and what is left is no finding of theirs.
func TestFurtherBattery(t *testing.T) {
	src, err := os.ReadFile("../../testdata/rules/ok/house-by-sensing-relay.yaml")
	if err != nil {
		t.Fatal(err)
	}
	open := regexp.MustCompile(`, size: 4 mm²`).ReplaceAllString(string(src), "")
	p, err := Complete(read(t, open))
	if err != nil {
		t.Fatal(err)
	}
	house := p.Design.Batteries[0]
	fuse := p.Design.Fuses[1]
	if got, least := house.FedBy[0].Wire.Size, fuse.FedBy[0].Wire.Size; fuse.Name != "house end" || got.AreaMm2 < least.AreaMm2*0.99 {
		t.Errorf("%s to the battery behind %s to its fuse (%s)", got.Label, least.Label, fuse.Name)
	}
	for _, f := range p.Remaining {
		t.Errorf("%s: %s", f.Rule, f.What)
	}
}
