package corpus_test

import (
	"fmt"

	"fusewright/harness/proof/corpus"
)

func ExampleLoad() {
	faulty, err := corpus.Load("../../../testdata/corpus/fault")
	if err != nil {
		panic(err)
	}
	for _, c := range faulty {
		if c.Name == "float-switch-unfused" {
			fmt.Println(c.Wants[0].Rule, len(c.Missed), len(c.False))
		}
	}
	// Output: unfused-conductor 0 0
}
