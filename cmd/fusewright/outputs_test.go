package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// fiveFiles are outputs of five files with one text in each.
func fiveFiles(t testing.TB, dir, text string) *outputs {
	t.Helper()
	o := newOutputs(dir)
	for i := range 5 {
		err := o.add(fmt.Sprintf("f%d.txt", i), func(b *bytes.Buffer) error {
			_, err := b.WriteString(text)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
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

// Whichever write or rename fails, the previous files stand as they were.
func TestFailingCommitLeavesThePreviousFiles(t *testing.T) {
	full := errors.New("no space left on device")
	for _, before := range []string{"old", ""} {
		for fail := range 5 {
			for _, step := range []string{"write", "rename"} {
				dir := t.TempDir()
				if before != "" {
					if err := fiveFiles(t, dir, before).commit(); err != nil {
						t.Fatal(err)
					}
				}
				o, count := fiveFiles(t, dir, "new"), 0
				failing := func(then func() error) error {
					if count++; count > fail {
						return full
					}
					return then()
				}
				if step == "write" {
					o.write = func(path string, data []byte) error {
						return failing(func() error { return writeSynced(path, data) })
					}
				} else {
					o.rename = func(from, to string) error { return failing(func() error { return os.Rename(from, to) }) }
				}
				err := o.commit()
				var out outside
				if !errors.Is(err, full) || !errors.As(err, &out) {
					t.Errorf("%s %d: error %v", step, fail, err)
				}
				if found := contents(t, dir); before == "" && len(found) > 0 || before != "" && !all(found, before) {
					t.Errorf("%s %d: %v", step, fail, found)
				}
			}
		}
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
		if err := newOutputs(t.TempDir()).add(name, func(*bytes.Buffer) error { return nil }); err == nil {
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
	if err := o.add("board-10.dxf", func(*bytes.Buffer) error { return nil }); err != nil {
		t.Fatal(err)
	}
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

// stalled is a run of the test binary that commits five files into a folder and
// stops for good after some renames: FOLDER AFTER.
func stalled() {
	after, err := strconv.Atoi(os.Args[2])
	if err != nil {
		panic(err)
	}
	o, renames := newOutputs(os.Args[1]), 0
	for i := range 5 {
		o.add(fmt.Sprintf("f%d.txt", i), func(b *bytes.Buffer) error { b.WriteString("new"); return nil })
	}
	o.rename = func(from, to string) error {
		if renames == after {
			fmt.Println("stopped")
			time.Sleep(time.Hour)
		}
		renames++
		return os.Rename(from, to)
	}
	o.commit()
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

// A process killed between two renames leaves every file whole: the first ones
// new, the others old. The next run puts the set right.
func TestKillBetweenRenames(t *testing.T) {
	for after := range 5 {
		dir := t.TempDir()
		if err := fiveFiles(t, dir, "old").commit(); err != nil {
			t.Fatal(err)
		}
		killed := asCommand(t, "fusewright-stalled", dir, strconv.Itoa(after))
		pipe, err := killed.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := killed.Start(); err != nil {
			t.Fatal(err)
		}
		if line, err := bufio.NewReader(pipe).ReadString('\n'); line != "stopped\n" {
			t.Fatalf("%q, %v", line, err)
		}
		if err := killed.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		killed.Wait() // it was killed: an error says nothing more
		found := contents(t, dir)
		for i := range 5 {
			want := "old"
			if i < after {
				want = "new"
			}
			if got := found[fmt.Sprintf("f%d.txt", i)]; got != want {
				t.Errorf("killed after %d renames: file %d is %q, want %q", after, i, got, want)
			}
		}
		if err := fiveFiles(t, dir, "next").commit(); err != nil {
			t.Fatal(err)
		}
		for i := range 5 {
			if got := contents(t, dir)[fmt.Sprintf("f%d.txt", i)]; got != "next" {
				t.Errorf("the next run left file %d as %q", i, got)
			}
		}
	}
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
			if !strings.HasPrefix(name, ".fusewright-") && got != was[name] && got != will[name] {
				t.Errorf("killed after %d ms: %s is of neither build", 40+120*i, name)
			}
		}
	}
}
