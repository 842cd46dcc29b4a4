package main

import (
	"bytes"
	"flag"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

var (
	kills    = flag.Int("kills", 12, "how many runs TestKillAtRandom kills")
	killSeed = flag.Uint64("kill-seed", 1, "seed of the moments at which runs are killed")
	killed   = flag.String("killed", "", "the program to kill; left out: the test binary as the program")
)

// victim is a command that is killed at work in a folder of its own.
type victim struct {
	name     string
	args     []string          // in the folder
	old      map[string][]byte // the folder before
	was      map[string]string // as contents gives it
	will     map[string]string // when the command has ended well
	duration time.Duration     // of a whole run
}

// program is a command line of the program to kill.
func (v victim) program(t testing.TB, dir string, args ...string) *exec.Cmd {
	t.Helper()
	c := asCommand(t, "fusewright", args...)
	if *killed != "" {
		c = exec.Command(*killed, args...)
	}
	c.Dir = dir
	return c
}

// prepared is a folder as it is before the command.
func (v victim) prepared(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	for name, data := range v.old {
		if err := os.WriteFile(filepath.Join(dir, name), data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// rehearse runs the command whole, to know how it ends and how long it takes.
func (v *victim) rehearse(t *testing.T) {
	dir := v.prepared(t)
	v.was = contents(t, dir)
	since := time.Now()
	if out, err := v.program(t, dir, v.args...).CombinedOutput(); err != nil {
		t.Fatalf("%s: %v: %s", v.name, err, out)
	}
	v.duration = time.Since(since)
	v.will = contents(t, dir)
	if cmp.Equal(v.was, v.will) {
		t.Fatalf("%s changes nothing", v.name)
	}
}

// strike starts the command and kills it: at any moment of a whole run, or so
// long after its hidden folder has appeared, when it is putting files in place.
func (v *victim) strike(t *testing.T, random *rand.Rand) (dir string) {
	dir = v.prepared(t)
	c := v.program(t, dir, v.args...)
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	deadline := time.Duration(random.Int64N(int64(v.duration) * 11 / 10))
	if random.IntN(2) == 0 {
		deadline = time.Duration(random.Int64N(int64(v.duration) / 20))
		for len(staged(dir)) == 0 && len(ended) == 0 {
			time.Sleep(50 * time.Microsecond)
		}
	}
	select {
	case <-ended:
	case <-time.After(deadline):
		c.Process.Kill() // it may have ended meanwhile
		<-ended
	}
	return dir
}

// staged are the hidden folders of runs.
func staged(dir string) []string {
	found, _ := filepath.Glob(filepath.Join(dir, stagePattern)) // the pattern is well formed
	var list []string
	for _, path := range found {
		if isStage(filepath.Base(path)) {
			list = append(list, path)
		}
	}
	return list
}

// killVictims are a build over an earlier one with a stale sheet, and the two
// commands that change a design.
func killVictims(t *testing.T) []*victim {
	src := sourceOf(t, "../../testdata/corpus/clean/gale-single.yaml")
	build := &victim{name: "build", args: []string{"build", "own.yaml", "-o", ".", "-q"}}
	stale := []byte("a sheet that an earlier run wrote")
	build.old = map[string][]byte{"own.yaml": src, "schematic-2.svg": stale,
		writtenName: written{"schematic-2.svg": sumOf(stale)}.text()}
	for _, name := range []string{"schematic.svg", "findings.json", "cut-list.csv", "dossier.pdf"} {
		build.old[name] = []byte("of an earlier build")
	}
	untidy := bytes.ReplaceAll(src, []byte(": {"), []byte(":   {"))
	open := regexp.MustCompile(`rating: [0-9.]+ A`).ReplaceAll(src, []byte("rating: auto"))
	return []*victim{build,
		{name: "fmt", args: []string{"fmt", "own.yaml"}, old: map[string][]byte{"own.yaml": untidy}},
		{name: "size", args: []string{"size", "own.yaml", "--write"}, old: map[string][]byte{"own.yaml": open}},
	}
}

// Runs killed at random moments: every file is whole at once, and after the next
// run in the folder, whatever that does, the set is the old one or the new one.
func TestKillAtRandom(t *testing.T) {
	victims := killVictims(t)
	for _, v := range victims {
		v.rehearse(t)
	}
	random := rand.New(rand.NewPCG(*killSeed, 0))
	count := map[string]int{}
	for i := range *kills {
		v := victims[i%len(victims)]
		dir := v.strike(t, random)
		for name, got := range contents(t, dir) {
			if !isStage(name) && got != v.was[name] && got != v.will[name] {
				t.Errorf("kill %d, %s: %s is of neither run", i, v.name, name)
			}
		}
		moment := "before or after"
		for _, path := range staged(dir) {
			moment = "with a hidden folder"
			if _, err := os.Stat(filepath.Join(path, journalName)); err == nil {
				moment = "with a journal"
			}
		}
		if out, err := v.program(t, dir, "new", "next.yaml", "--no-ask", "-q").CombinedOutput(); err != nil {
			t.Errorf("kill %d, %s: the next run: %v: %s", i, v.name, err, out)
		}
		found := contents(t, dir)
		delete(found, "next.yaml")
		outcome := "old"
		switch {
		case cmp.Equal(found, v.will):
			outcome = "new"
		case !cmp.Equal(found, v.was):
			t.Errorf("kill %d, %s, %s: mixed: %.600s", i, v.name, moment, cmp.Diff(v.was, found))
		}
		count[fmt.Sprintf("%-5s killed %-20s %s", v.name, moment, outcome)]++
		os.RemoveAll(dir)
	}
	for _, line := range slices.Sorted(maps.Keys(count)) {
		t.Logf("%s: %d", line, count[line])
	}
}
