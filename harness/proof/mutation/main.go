// Command mutation changes one constant or comparison of the product at a time
// and runs the tests that should notice. A change that no test notices shows a
// number that is not pinned. mutants.yaml lists the changes; no file of the tree
// is touched. (Mutation testers at large change operators wherever tests reach;
// none was found that changes constants or takes a list.) It ends with 0 when all are killed or known, 1 when one survives
// or does not build, 2 when it could not do its work.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
)

func main() {
	only := flag.String("only", "", "packages to take, by name, with commas between")
	sample := flag.Int("sample", 0, "take a fixed sample of so many from quick packages")
	list := flag.Bool("list", false, "list the mutants with their places and run nothing")
	file := flag.String("report", "", "write the report to a file, when all are run")
	keep := flag.String("keep", "", "a file of what was killed: not tried again, and added to; tests may only have been added since")
	parallel := flag.Int("parallel", 2, "mutants at once")
	flag.Parse()
	bad, err := run(os.Stdout, *only, *sample, *list, *file, &kept{file: *keep}, *parallel)
	switch {
	case err != nil:
		fmt.Fprintln(os.Stderr, "mutation:", err)
		os.Exit(2)
	case bad:
		os.Exit(1)
	}
}

// run does the work; bad tells that a mutant ended as it must not.
func run(w io.Writer, only string, sample int, listOnly bool, file string, keep *kept, parallel int) (bad bool, err error) {
	all, err := readList(listText)
	if err != nil {
		return false, err
	}
	chosen := choose(all, strings.FieldsFunc(only, func(r rune) bool { return r == ',' }), sample)
	packs, err := packages()
	if err != nil {
		return false, err
	}
	places, err := located(chosen, packs)
	if err != nil {
		return false, err
	}
	if listOnly {
		for i, m := range chosen {
			fmt.Fprintf(w, "%s -> `%s`\n", m, places[i].new)
		}
		return false, nil
	}
	if file != "" && len(chosen) < len(all) {
		return false, fmt.Errorf("a report needs the whole list: neither -only nor -sample")
	}
	if err := keep.read(); err != nil {
		return false, err
	}
	ends, err := tryAll(w, chosen, keep, func(i int) (string, error) { return try(chosen[i], places[i], packs) }, max(parallel, 1))
	if err != nil {
		return false, err
	}
	for i, m := range chosen {
		bad = bad || ends[i] == unbuilt || ends[i] == survived && m.Survives == ""
	}
	if file != "" {
		err = os.WriteFile(file, report(chosen, ends), 0o644)
	}
	return bad, err
}

// tryAll tries some at once and prints the ends in the list's order.
func tryAll(w io.Writer, chosen []mutant, keep *kept, try func(int) (string, error), parallel int) ([]string, error) {
	type end struct {
		how string
		err error
	}
	slots, results := make(chan bool, parallel), make([]chan end, len(chosen))
	var open []int // asked here, since what is killed is added while others are tried
	for i, m := range chosen {
		results[i] = make(chan end, 1)
		if keep.killed[m.String()] {
			results[i] <- end{killed, nil}
		} else {
			open = append(open, i)
		}
	}
	go func() {
		for _, i := range open {
			slots <- true
			go func() {
				how, err := try(i)
				results[i] <- end{how, err}
				<-slots
			}()
		}
	}()
	var ends []string
	counts := map[string]int{}
	for i, m := range chosen {
		e := <-results[i]
		if e.err != nil {
			return nil, e.err
		}
		ends = append(ends, e.how)
		counts[e.how]++
		if err := keep.add(m, e.how); err != nil {
			return nil, err
		}
		known := ""
		if e.how == survived && m.Survives != "" {
			known = " (known: " + m.Survives + ")"
		}
		fmt.Fprintf(w, "%-13s %s%s\n", e.how, m, known)
	}
	fmt.Fprintf(w, "%d mutants: %d killed, %d survived, %d did not build\n", len(chosen),
		counts[killed], counts[survived], counts[unbuilt])
	return ends, nil
}
