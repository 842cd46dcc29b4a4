package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// fiveFiles are outputs of five files with one text in each.
func fiveFiles(t testing.TB, dir, text string) *outputs {
	t.Helper()
	o := newOutputs(dir)
	for i := range 5 {
		o.add(fmt.Sprintf("f%d.txt", i), func(b *bytes.Buffer) error {
			_, err := b.WriteString(text)
			return err
		})
	}
	return o
}

// contents reads a folder: file names to texts, hidden folders as "".
func contents(t testing.TB, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]string{}
	for _, e := range entries {
		if e.IsDir() {
			found[e.Name()] = ""
			continue
		}
		data, err := os.ReadFile(filepath.Join(dir, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		found[e.Name()] = string(data)
	}
	return found
}

// all tells that the folder holds five files of one text and nothing else.
func all(found map[string]string, text string) bool {
	for _, got := range found {
		if got != text {
			return false
		}
	}
	return len(found) == 5
}

func TestCommitPutsEverythingInPlace(t *testing.T) {
	dir := t.TempDir()
	for _, text := range []string{"old", "new"} {
		if err := fiveFiles(t, dir, text).commit(); err != nil || !all(contents(t, dir), text) {
			t.Errorf("%v, %v", err, contents(t, dir))
		}
	}
}

// stalePage is a file of an earlier run that goes with fiveFiles.
const stalePage = "page-2.txt"

// withStale puts a stale file into the folder and lets the outputs replace it.
func withStale(t testing.TB, o *outputs, text string) *outputs {
	t.Helper()
	if err := os.WriteFile(filepath.Join(o.dir, stalePage), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	o.replaces = []string{"page-*.txt"}
	return o
}

// Whichever change on the disk fails, alone or with all after it, the previous
// files stand as they were: at once, or else when the next run begins.
func TestFailingCommitLeavesThePreviousFiles(t *testing.T) {
	full := errors.New("no space left on device")
	for _, c := range []struct {
		name    string
		before  bool // there are previous files, one of them stale
		forGood bool // once failed, the disk fails always
	}{{"new set", false, false}, {"new set, for good", false, true}, {"next set", true, false}, {"next set, for good", true, true}} {
		t.Run(c.name, func(t *testing.T) {
			failed := 0
			for fail := 0; ; fail++ {
				dir := t.TempDir()
				o := fiveFiles(t, dir, "new")
				if c.before {
					if err := fiveFiles(t, dir, "old").commit(); err != nil {
						t.Fatal(err)
					}
					withStale(t, o, "old")
				}
				was, count, at := contents(t, dir), 0, ""
				o.before = func(what string) error {
					if count++; count == fail+1 || c.forGood && count > fail {
						if at == "" {
							at = what
						}
						return full
					}
					return nil
				}
				err := o.commit()
				if err == nil {
					if found := contents(t, dir); !all(found, "new") && at == "" {
						t.Errorf("nothing failed: %v", found)
					}
					if at == "" {
						break
					}
					continue // the change that failed did not matter: TestKill looks at what is left
				}
				failed++
				if out := (outside{}); !errors.Is(err, full) || !errors.As(err, &out) {
					t.Errorf("%s: error %v", at, err)
				}
				found := contents(t, dir)
				if c.forGood {
					found = recovered(t, dir)
				}
				if diff := cmp.Diff(was, found); diff != "" {
					t.Errorf("%s: %s", at, diff)
				}
			}
			if failed < 20 {
				t.Errorf("only %d changes made the commit fail", failed)
			}
		})
	}
}

func TestFolderInTheWay(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "f3.txt"), 0o777); err != nil {
		t.Fatal(err)
	}
	err := fiveFiles(t, dir, "new").commit()
	if err == nil || !strings.Contains(err.Error(), "f3.txt is a folder") {
		t.Errorf("error %v", err)
	}
	if found := contents(t, dir); len(found) != 1 {
		t.Errorf("left behind: %v", found)
	}
}

// No name leads out of the folder.
func TestNamesStayInTheFolder(t *testing.T) {
	for _, name := range []string{"../x", "/x", "a/b", "..", ".", ""} {
		o := newOutputs(t.TempDir())
		if o.add(name, func(*bytes.Buffer) error { return nil }); o.commit() == nil {
			t.Errorf("%q was taken", name)
		}
	}
}

// Only numbered files of the same family are removed.
func TestReplacedFiles(t *testing.T) {
	dir := t.TempDir()
	names := []string{"board-2.dxf", "board-10.dxf", "board-notes.dxf", "board-.dxf", "board-2x.dxf", "board-2.svg",
		"board.svg", "other-2.dxf"}
	for _, name := range names {
		if err := os.WriteFile(filepath.Join(dir, name), []byte("x"), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	o := newOutputs(dir)
	o.replaces = []string{"board-*.dxf", "board.svg"}
	o.add("board-10.dxf", func(*bytes.Buffer) error { return nil })
	if err := o.commit(); err != nil {
		t.Fatal(err)
	}
	var left []string
	for name := range contents(t, dir) {
		left = append(left, name)
	}
	slices.Sort(left)
	want := []string{"board-.dxf", "board-10.dxf", "board-2.svg", "board-2x.dxf", "board-notes.dxf", "other-2.dxf"}
	if !slices.Equal(left, want) {
		t.Errorf("left %v, want %v", left, want)
	}
}

// asCommand gives a command that runs the test binary under a name of TestMain.
func asCommand(t testing.TB, name string, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(t.TempDir(), name)
	if err := os.Symlink(self, link); err != nil {
		t.Skipf("no symbolic links here: %v", err)
	}
	return exec.Command(link, args...)
}

// Real builds killed at many moments: every file is wholly of one build.
func TestKillDuringBuild(t *testing.T) {
	old, fresh := filepath.Join(t.TempDir(), "old"), filepath.Join(t.TempDir(), "fresh")
	src, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.Replace(src, []byte("revision: B"), []byte("revision: C"), 1)
	file := filepath.Join(t.TempDir(), "fen-runner.yaml")
	build := func(text []byte, dir string) *exec.Cmd {
		if err := os.WriteFile(file, text, 0o666); err != nil {
			t.Fatal(err)
		}
		return asCommand(t, "fusewright", "build", file, "-o", dir, "-q")
	}
	for dir, text := range map[string][]byte{old: src, fresh: changed} {
		if out, err := build(text, dir).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
	}
	was, will := contents(t, old), contents(t, fresh)
	for i := range 5 {
		c := build(changed, old)
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(40+120*i) * time.Millisecond)
		c.Process.Kill() // it may have ended already
		c.Wait()
		for name, got := range contents(t, old) {
			if !isStage(name) && got != was[name] && got != will[name] {
				t.Errorf("killed after %d ms: %s is of neither build", 40+120*i, name)
			}
		}
		if found := recovered(t, old); cmp.Diff(was, found) != "" && cmp.Diff(will, found) != "" {
			t.Errorf("killed after %d ms: the set is of neither build", 40+120*i)
		}
	}
}

// No command writes over what it reads, by whatever name.
func TestOutputsAreNotInputs(t *testing.T) {
	src, err := os.ReadFile("../../designs/fen-runner.yaml")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	parts := []byte("fusewright library: 1\n")
	for name, data := range map[string][]byte{"own.yaml": src, "own.svg": src, "parts.yaml": parts} {
		if err := os.WriteFile(name, data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Link("own.yaml", "other.csv"); err != nil {
		t.Skipf("no links here: %v", err)
	}
	for _, line := range []string{
		"export own.yaml --to csv -o own.yaml", "export own.yaml --to csv -o ./x/../own.yaml", "draw own.svg -o own.svg",
		"export own.yaml --to csv -o other.csv", "check own.yaml --write-baseline own.yaml",
		"--library parts.yaml export own.yaml --to csv -o parts.yaml",
	} {
		var stdout, stderr bytes.Buffer
		code := run(strings.Fields(line), strings.NewReader(""), &stdout, &stderr)
		if code != exitBadInput || !strings.Contains(stderr.String(), "would be written over") {
			t.Errorf("%s: exit code %d, %s", line, code, &stderr)
		}
	}
	for name, want := range map[string][]byte{"own.yaml": src, "own.svg": src, "parts.yaml": parts} {
		if got, err := os.ReadFile(name); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not as it was: %v", name, err)
		}
	}
}
