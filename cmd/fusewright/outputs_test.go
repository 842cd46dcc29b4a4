package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

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

// all tells that the folder holds five files of one text and nothing else, but
// for the list of what was written.
func all(found map[string]string, text string) bool {
	n := 0
	for name, got := range found {
		if name == writtenName {
			continue
		}
		if got != text {
			return false
		}
		n++
	}
	return n == 5
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

// writtenBefore is an earlier run that wrote five files and the stale one.
func writtenBefore(t testing.TB, dir, text string) {
	t.Helper()
	o := fiveFiles(t, dir, text)
	o.add(stalePage, func(b *bytes.Buffer) error { b.WriteString(text); return nil })
	o.replaces = []string{"page-*.txt"}
	if err := o.commit(); err != nil {
		t.Fatal(err)
	}
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
					writtenBefore(t, dir, "old")
				}
				o.replaces = []string{"page-*.txt"}
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

// No command writes over what it reads, by whatever name.
func TestOutputsAreNotInputs(t *testing.T) {
	src := sourceOf(t, demos[0])
	t.Chdir(t.TempDir())
	parts := []byte("fusewright library: 1\n")
	for name, data := range map[string][]byte{"own.yaml": src, "own.svg": src, "own.json": src, "parts.yaml": parts} {
		if err := os.WriteFile(name, data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Link("own.yaml", "other.csv"); err != nil {
		t.Skipf("no links here: %v", err)
	}
	for _, line := range []string{
		"export own.yaml --to csv -o own.yaml", "export own.yaml --to csv -o ./x/../own.yaml", "draw own.svg -o own.svg",
		"export own.yaml --to csv -o other.csv", "check own.json --write-baseline own.json",
		"--library parts.yaml export own.yaml --to csv -o parts.yaml",
	} {
		var stdout, stderr bytes.Buffer
		code := run(strings.Fields(line), strings.NewReader(""), &stdout, &stderr)
		if code != exitBadInput || !strings.Contains(stderr.String(), "would be written over") {
			t.Errorf("%s: exit code %d, %s", line, code, &stderr)
		}
	}
	for name, want := range map[string][]byte{"own.yaml": src, "own.svg": src, "own.json": src, "parts.yaml": parts} {
		if got, err := os.ReadFile(name); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s is not as it was: %v", name, err)
		}
	}
}
