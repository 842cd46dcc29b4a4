package circuit

import (
	"math"
	"os"
	"testing"

	"fusewright/harness/design"
)

// What is fed behind a converter has its voltage and its posts, and comes home to it.
func TestConverterSupplies(t *testing.T) {
	src, err := os.ReadFile("../../../testdata/rules/ok/converter.yaml")
	if err != nil {
		t.Fatal(err)
	}
	d, err := design.Read("converter.yaml", src, nil)
	if err != nil {
		t.Fatal(err)
	}
	c, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	part := func(name string) *Part {
		for _, p := range c.Parts {
			if p.Name == name {
				return p
			}
		}
		t.Fatal("no", name)
		return nil
	}
	x := part("dropper")
	for _, name := range []string{"radio", "work lamp", "left lamp", "right lamp"} {
		n := part(name).Terminal("+").Node
		plus, minus := c.Supply(n)
		if c.NominalAt(n) != 12 || c.HighestAt(n) != 13.8 || c.ConverterOf(n) != x || plus != x.Output().A || minus != x.Output().B || c.Home(n) != minus {
			t.Errorf("%s: %g V, highest %g V", name, c.NominalAt(n), c.HighestAt(n))
		}
		if way := c.MainFeed(n); name != "right lamp" && (!way.Whole || way.Branches[0].A != plus) {
			t.Errorf("%s is not fed from the converter's output", name)
		}
	}
	in := x.Terminal("+").Node
	if c.NominalAt(in) != 24 || c.ConverterOf(in) != nil || c.Gives(in) != x.Output().A || x.Converter() != x.Converts() {
		t.Error("the input has the system's voltage")
	}
	// 4 A at 12 V are 48 W, over 0.87 and 24 V.
	if a := c.SourceA(part("radio").Branches[0], 4); math.Abs(a-4*12/(24*0.87)) > 1e-12 {
		t.Errorf("%g A", a)
	}
	if live := c.LiveKeyOff(true); live[x.Output().A.Index] { // behind the key
		t.Error("live with the key off")
	}
	if needed := c.Needed(part("radio").Branches[len(part("radio").Branches)-1]); !needed[part("keyed feed").Branches[0].Index] {
		t.Error("the radio does not need the tap before the converter")
	}
}
