package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

// The ends of a mutant.
const (
	killed   = "killed"
	survived = "SURVIVED"
	unbuilt  = "DID NOT BUILD"
)

// testTime is how long the tests of one package may take; a mutant that makes
// them hang is killed by it.
const testTime = 4 * time.Minute

// pack is a package of the module.
type pack struct{ Name, Dir, ImportPath string }

// packages are those that mutants and their tests are looked for in, by name.
func packages() (map[string]pack, error) {
	out, err := exec.Command("go", "list", "-f", "{{.Name}}\t{{.Dir}}\t{{.ImportPath}}", "./...").Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	all := map[string]pack{}
	for line := range strings.Lines(string(out)) {
		f := strings.Split(strings.TrimSpace(line), "\t")
		if _, twice := all[f[0]]; twice && f[0] != "main" {
			return nil, fmt.Errorf("two packages are named %s: a mutant cannot tell them apart", f[0])
		}
		all[f[0]] = pack{f[0], f[1], f[2]}
	}
	return all, nil
}

// located finds every mutant's place, before any test runs.
func located(list []mutant, all map[string]pack) ([]change, error) {
	var out []change
	var bad []error
	for _, m := range list {
		for _, name := range append([]string{m.group.Package}, m.group.Also...) {
			if all[name].Dir == "" {
				bad = append(bad, fmt.Errorf("%s: no package is named %s", m, name))
			}
		}
		c, err := find(m, all[m.group.Package].Dir)
		bad = append(bad, err)
		out = append(out, c)
	}
	return out, errors.Join(bad...)
}

// try runs the tests that should kill a mutant until one does. No file of the
// tree is changed: the compiler reads the changed one by an overlay.
func try(m mutant, c change, all map[string]pack) (string, error) {
	dir, err := os.MkdirTemp("", "mutant")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	source, err := os.ReadFile(c.file)
	if err != nil {
		return "", err
	}
	changed := filepath.Join(dir, "changed.go")
	overlay := filepath.Join(dir, "overlay.json")
	text := bytes.Join([][]byte{source[:c.from], []byte(c.new), source[c.to:]}, nil)
	if bytes.Contains(source, []byte("\t\"math\"\n")) { // a bound that is dropped may have been its only use
		text = append(text, "\nvar _ = math.Pi\n"...)
	}
	over, err := json.Marshal(map[string]any{"Replace": map[string]string{c.file: changed}})
	if err != nil {
		return "", err
	}
	if err := os.WriteFile(changed, text, 0o600); err != nil {
		return "", err
	}
	if err := os.WriteFile(overlay, over, 0o600); err != nil {
		return "", err
	}
	for _, step := range m.group.steps(all) {
		if err := unchanged(step); err != nil {
			return "", err
		}
		if end, err := goTest(step, "-overlay="+overlay); end != survived || err != nil {
			return end, err
		}
	}
	return survived, nil
}

// steps are what go test is asked for in turn, until some tests fail: those that
// the group names as first, then its package's, then those of the other packages.
func (g *group) steps(all map[string]pack) []string {
	var list []string
	if g.First != "" {
		list = append(list, "-run="+g.First+" "+all[g.Package].ImportPath)
	}
	for _, name := range append([]string{g.Package}, g.Also...) {
		list = append(list, all[name].ImportPath)
	}
	return list
}

// clean holds how each step went without a change.
var clean sync.Map

// unchanged sees once that the tests of a step pass as they are; else every
// mutant would seem killed.
func unchanged(step string) error {
	once, _ := clean.LoadOrStore(step, sync.OnceValue(func() error {
		if end, err := goTest(step); err != nil || end != survived {
			return fmt.Errorf("go test %s: its tests fail without a change (%w)", step, err)
		}
		return nil
	}))
	return once.(func() error)()
}

// goTest runs the tests of a step.
func goTest(step string, flags ...string) (string, error) {
	args := append([]string{"test", "-vet=off", "-failfast", "-timeout=" + testTime.String()}, flags...)
	args = append(args, strings.Fields(step)...)
	ctx, cancel := context.WithTimeout(context.Background(), testTime+5*time.Minute) // building counts apart
	defer cancel()
	switch out, err := exec.CommandContext(ctx, "go", args...).CombinedOutput(); {
	case err == nil:
		return survived, nil
	case ctx.Err() != nil:
		return "", fmt.Errorf("go %s did not end", strings.Join(args, " "))
	case bytes.Contains(out, []byte("[build failed]")), bytes.Contains(out, []byte("[setup failed]")):
		return unbuilt, nil
	case !bytes.Contains(out, []byte("FAIL")):
		return "", fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, out)
	}
	return killed, nil
}
