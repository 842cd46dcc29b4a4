package placement_test

import (
	"fmt"

	"fusewright/render/placement"
)

// A source feeds two parts; a second source that feeds the second of them goes
// below the first, so that no wires cross.
func ExampleOrder() {
	nodes := []placement.Node{{Column: 0}, {Column: 0}, {Column: 1}, {Column: 1}}
	edges := []placement.Edge{{From: 0, To: 2}, {From: 0, To: 3}, {From: 1, To: 3}}
	columns, err := placement.Order(nodes, edges)
	fmt.Println(columns, err)
	// Output: [[0 1] [2 3]] <nil>
}
