package synth_test

import (
	"fmt"

	"fusewright/harness/design"
	"fusewright/harness/proof/synth"
)

// A synthetic harness reads like any other design.
func ExampleYAML() {
	d, err := design.Read("synthetic.yaml", synth.YAML(40, 1), nil)
	fmt.Println(d.Title.Value, err)
	// Output: Synthetic harness of 40 wires <nil>
}
