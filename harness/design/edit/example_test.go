package edit_test

import (
	"fmt"

	"fusewright/harness/design/edit"
)

// A size is put into a wire; the comment stays where it is.
func ExampleSet() {
	src := []byte("loads:\n  horn: {type: horn, fed by: rear 3}   # loud\n")
	out, err := edit.Set(src, []edit.Change{{Path: []string{"loads", "horn", "wire"}, Key: "size", Value: "1 mm²"}})
	if err != nil {
		panic(err)
	}
	fmt.Print(string(out))
	// Output:
	// loads:
	//   horn: {type: horn, fed by: rear 3, wire: {size: 1 mm²}}   # loud
}
