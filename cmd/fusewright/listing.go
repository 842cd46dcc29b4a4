package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"fusewright/harness/review/rules"
)

// listRules prints each rule's name and title.
func listRules(w io.Writer) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, r := range rules.All() {
		fmt.Fprintf(t, "%s\t%s\n", r.Name, r.Title)
	}
	return t.Flush()
}
