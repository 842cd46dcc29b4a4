package problem_test

import (
	"fmt"

	"fusewright/harness/design/problem"
)

func Example() {
	var found problem.List
	found.Add(problem.Problem{
		Pos:     problem.Pos{File: "lamps.yaml", Line: 12, Col: 5},
		What:    `unknown key "fedby"`,
		Nearest: problem.Nearest("fedby", []string{"fed by", "returns to"}),
	})
	fmt.Println(found.Err())
	// Output: lamps.yaml:12:5: unknown key "fedby" (did you mean "fed by"?)
}
