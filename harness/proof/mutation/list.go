package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"math/rand/v2"
	"slices"
	"sort"
	"strings"

	"gopkg.in/yaml.v3"
)

//go:embed mutants.yaml
var listText []byte

// group is what mutants.yaml lists of one package. Packages go by name, so that
// they may move.
type group struct {
	Package string
	Also    []string // packages whose tests may kill as well, named by name
	First   string   // tests of the own package to try before all of them, as go test -run takes them
	Quick   bool     // cheap enough for a sample
	Mutants []mutant
}

// mutant is one change. It names its place by words, so that lines may move.
type mutant struct {
	In       string // function, Type.Method, or a constant or variable of the package; "" = anywhere in it
	At       string // expression as written, spaces aside; "" = the value of In
	Nth      int    // which of several, from 1; 0 = the only one
	Flip     string // see flips
	Survives string // why it is known to survive; "" = tests must kill it
	group    *group
}

// String is the mutant's place and change: "battery.Battery.weight: edge of ratio <= 1".
func (m mutant) String() string {
	s := strings.TrimSuffix(m.group.Package+"."+m.In, ".") + ": " + m.Flip
	if m.At != "" {
		s += " `" + m.At + "`"
	}
	if m.Nth > 0 {
		s += fmt.Sprintf(" (%d)", m.Nth)
	}
	return s
}

// readList reads the list in order.
func readList(text []byte) ([]mutant, error) {
	var groups []*group
	dec := yaml.NewDecoder(bytes.NewReader(text))
	dec.KnownFields(true)
	if err := dec.Decode(&groups); err != nil {
		return nil, err
	}
	var all []mutant
	seen := map[string]bool{}
	for _, g := range groups {
		for _, m := range g.Mutants {
			m.group = g
			if seen[m.String()] {
				return nil, fmt.Errorf("%s: listed twice", m)
			}
			seen[m.String()] = true
			all = append(all, m)
		}
	}
	return all, nil
}

// choose keeps the mutants of some packages, or a fixed sample of quick ones;
// the order stays.
func choose(all []mutant, only []string, sample int) []mutant {
	all = slices.DeleteFunc(slices.Clone(all), func(m mutant) bool {
		return len(only) > 0 && !slices.Contains(only, m.group.Package) ||
			sample > 0 && (!m.group.Quick || m.Survives != "")
	})
	if sample <= 0 || sample >= len(all) {
		return all
	}
	picks := rand.New(rand.NewPCG(1, uint64(sample))).Perm(len(all))[:sample]
	sort.Ints(picks)
	var out []mutant
	for _, i := range picks {
		out = append(out, all[i])
	}
	return out
}
