package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"strings"
)

// report is the text of docs/mutation.md.
func report(list []mutant, ends []string) []byte {
	var b bytes.Buffer
	count := map[string]int{}
	by := map[string]map[string]int{}
	var order []string
	for i, m := range list {
		p := m.group.Package
		if by[p] == nil {
			by[p] = map[string]int{}
			order = append(order, p)
		}
		count[ends[i]]++
		by[p][ends[i]]++
	}
	fmt.Fprintf(&b, "# Which numbers the tests pin\n\n"+
		"Written by `go run ./harness/proof/mutation -report docs/mutation.md`, last on the tree of %s. The list is "+
		"`harness/proof/mutation/mutants.yaml`.\nEach mutant changes one constant, comparison or term; the tests of its "+
		"package, and of those named beside it, must notice.\nNo file of the tree is changed meanwhile. `-only battery,fusing` "+
		"takes some packages, `-sample 12` the sample of `.ci/run`, `-list` runs nothing;\n`-keep FILE` takes "+
		"a long run up again where it stopped. A change that nothing could notice is not listed, such as that of a hair that "+
		"only\nholds off the rounding of binary numbers.\n\n", treeDate())
	fmt.Fprintf(&b, "%d mutants: %d killed, %d survived (%.1f %%), %d did not build.\n\n", len(list), count[killed],
		count[survived], 100*float64(count[survived])/float64(len(list)), count[unbuilt])
	b.WriteString("| package | mutants | killed | survived |\n| --- | ---: | ---: | ---: |\n")
	for _, p := range order {
		k, s := by[p][killed], by[p][survived]
		fmt.Fprintf(&b, "| %s | %d | %d | %d |\n", p, k+s+by[p][unbuilt], k, s)
	}
	b.WriteString("\n## Survivors\n\n")
	for i, m := range list {
		if ends[i] == killed {
			continue
		}
		why := m.Survives
		if why == "" {
			why = "**not known: a test is missing**"
		}
		fmt.Fprintf(&b, "- %s: %s\n", m, why)
	}
	if count[killed] == len(list) {
		b.WriteString("None.\n")
	}
	return b.Bytes()
}

// treeDate is the day of the last commit.
func treeDate() string {
	out, err := exec.Command("git", "log", "-1", "--format=%cs").Output()
	if err != nil {
		return "an unknown day"
	}
	return strings.TrimSpace(string(out))
}
