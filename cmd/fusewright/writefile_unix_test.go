//go:build unix

package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
)

// untidy is a design that fmt changes.
func untidy(t *testing.T, path string, mode fs.FileMode) {
	t.Helper()
	src := bytes.Replace(sourceOf(t, demos[0]), []byte("revision: B"), []byte("revision:   B"), 1)
	if err := os.WriteFile(path, src, mode); err != nil {
		t.Fatal(err)
	}
}

// A design that is tidied keeps its permissions, and a link to it stays a link.
func TestRewritingKeepsLinksAndPermissions(t *testing.T) {
	dir := t.TempDir()
	file, link := filepath.Join(dir, "real.yaml"), filepath.Join(t.TempDir(), "link.yaml")
	untidy(t, file, 0o640)
	if err := os.Symlink(file, link); err != nil {
		t.Fatal(err)
	}
	printedBy(t, "fmt", link)
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link is %v, %v", info.Mode(), err)
	}
	data, err := os.ReadFile(file)
	if err != nil || !strings.Contains(string(data), "revision: B\n") {
		t.Errorf("the file that the link leads to is not tidied: %v", err)
	}
	if info, err = os.Stat(file); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("permissions %v, %v", info.Mode(), err)
	}
}

// ended runs a command on files and gives its exit code and what it said.
func ended(args ...string) (code int, said string) {
	var stdout, stderr bytes.Buffer
	code = run(args, strings.NewReader(""), &stdout, &stderr)
	return code, stderr.String()
}

// Rewriting keeps every permission, whatever the user's mask, and a file that
// nobody may write is refused: to root too.
func TestRewritingKeepsPermissions(t *testing.T) {
	defer syscall.Umask(syscall.Umask(0o077))
	dir := t.TempDir()
	for _, mode := range []fs.FileMode{0o600, 0o640, 0o644, 0o664, 0o666, 0o755, 0o444, 0o440, 0o400} {
		file := filepath.Join(dir, fmt.Sprintf("%o.yaml", mode))
		untidy(t, file, 0o600)
		was, err := os.ReadFile(file)
		if err := errors.Join(err, os.Chmod(file, mode)); err != nil {
			t.Fatal(err)
		}
		code, said := ended("fmt", file)
		now, err := os.ReadFile(file)
		info, failed := os.Stat(file)
		if err := errors.Join(err, failed); err != nil {
			t.Fatal(err)
		}
		if info.Mode().Perm() != mode {
			t.Errorf("%v became %v", mode, info.Mode())
		}
		if readOnly := mode&0o222 == 0; readOnly {
			if code != exitFailure || !strings.Contains(said, "is read-only and stays as it is") || !bytes.Equal(was, now) {
				t.Errorf("%v: exit code %d, %q", mode, code, said)
			}
		} else if code != exitClean || said != "" || bytes.Equal(was, now) {
			t.Errorf("%v: exit code %d, %q", mode, code, said)
		}
	}
}

// size --write has the same manners.
func TestSizeLeavesReadOnlyFiles(t *testing.T) {
	src := sourceOf(t, demos[0])
	file := filepath.Join(t.TempDir(), "open.yaml")
	src = regexp.MustCompile(`rating: [0-9.]+ A`).ReplaceAll(src, []byte("rating: auto"))
	if err := os.WriteFile(file, src, 0o444); err != nil {
		t.Fatal(err)
	}
	if code, said := ended("size", file, "--write"); code != exitFailure || !strings.Contains(said, "is read-only") {
		t.Errorf("read-only: exit code %d, %q", code, said)
	}
	if now, err := os.ReadFile(file); err != nil || !bytes.Equal(src, now) {
		t.Errorf("changed, %v", err)
	}
	if err := os.Chmod(file, 0o664); err != nil {
		t.Fatal(err)
	}
	code, said := ended("size", file, "--write")
	info, err := os.Stat(file)
	if code > exitFindings || said != "" || err != nil || info.Mode().Perm() != 0o664 {
		t.Errorf("exit code %d, %q, %v, %v", code, said, info.Mode(), err)
	}
	if now, err := os.ReadFile(file); err != nil || bytes.Equal(src, now) {
		t.Errorf("not changed, %v", err)
	}
}

// A set keeps the permissions of each file and is refused whole, naming every
// read-only file.
func TestSetsKeepPermissions(t *testing.T) {
	dir := t.TempDir()
	if err := fiveFiles(t, dir, "old").commit(); err != nil {
		t.Fatal(err)
	}
	os.Chmod(filepath.Join(dir, "f1.txt"), 0o664)
	os.Chmod(filepath.Join(dir, "f2.txt"), 0o600)
	if err := fiveFiles(t, dir, "new").commit(); err != nil || !all(contents(t, dir), "new") {
		t.Fatal(err)
	}
	for name, want := range map[string]fs.FileMode{"f1.txt": 0o664, "f2.txt": 0o600} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Mode().Perm() != want {
			t.Errorf("%s is %v, %v", name, info.Mode(), err)
		}
	}
	os.Chmod(filepath.Join(dir, "f1.txt"), 0o444)
	os.Chmod(filepath.Join(dir, "f2.txt"), 0o400)
	err := fiveFiles(t, dir, "newer").commit()
	if err == nil || !strings.Contains(err.Error(), "f1.txt is read-only") || !strings.Contains(err.Error(), "f2.txt is read-only") ||
		!all(contents(t, dir), "new") {
		t.Errorf("%v", err)
	}
}

// Root rewrites other people's files and leaves them theirs.
func TestRewritingKeepsTheOwner(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("only root may give files away")
	}
	file := filepath.Join(t.TempDir(), "theirs.yaml")
	untidy(t, file, 0o640)
	if err := os.Chown(file, 12345, 23456); err != nil {
		t.Skipf("no other owners here: %v", err)
	}
	printedBy(t, "fmt", file)
	info, err := os.Stat(file)
	if err != nil {
		t.Fatal(err)
	}
	if now := ownerOf(info); now != (owner{12345, 23456, 1}) || info.Mode().Perm() != 0o640 {
		t.Errorf("%+v, %v", now, info.Mode())
	}
}

// Another name of a file keeps the old text, and that is said.
func TestHardLinksAreTold(t *testing.T) {
	for others, want := range map[int]string{0: "", 1: "had a second name (a hard link)", 2: "had 2 other names (hard links)"} {
		dir := t.TempDir()
		file := filepath.Join(dir, "own.yaml")
		untidy(t, file, 0o644)
		was := contents(t, dir)["own.yaml"]
		for i := range others {
			if err := os.Link(file, fmt.Sprintf("%s%d", file, i)); err != nil {
				t.Skipf("no links here: %v", err)
			}
		}
		code, said := ended("fmt", file)
		if code != exitClean || want == "" && said != "" || !strings.Contains(said, want) {
			t.Errorf("%d: exit code %d, %q", others, code, said)
		}
		found := contents(t, dir)
		if found["own.yaml"] == was {
			t.Errorf("%d: not tidied", others)
		}
		for i := range others {
			if found[fmt.Sprintf("own.yaml%d", i)] != was {
				t.Errorf("%d: the other name has another text", others)
			}
		}
	}
}

// A link that leads nowhere is refused and stays; one that leads to a file is
// followed, and the file is what counts.
func TestLinksAreFollowed(t *testing.T) {
	const design = "../../designs/fen-runner.yaml"
	dir := t.TempDir()
	for name, leads := range map[string]string{"dangling.csv": "nowhere.csv", "loop.csv": "loop.csv", "one.csv": "two.csv", "two.csv": "one.csv",
		"chain.csv": "link.csv", "link.csv": "file.csv", "to-read-only.csv": "read-only.csv", "draw.svg": "drawing.svg", "board.dxf": "drawing.dxf"} {
		if err := os.Symlink(leads, filepath.Join(dir, name)); err != nil {
			t.Skipf("no links here: %v", err)
		}
	}
	for name, mode := range map[string]fs.FileMode{"file.csv": 0o640, "read-only.csv": 0o444, "drawing.svg": 0o600, "drawing.dxf": 0o664} {
		put(t, filepath.Join(dir, name), "old")
		os.Chmod(filepath.Join(dir, name), mode)
	}
	for _, c := range []struct {
		line string
		code int
		says string
	}{
		{"bom DESIGN -o DIR/dangling.csv", exitFailure, "dangling.csv is a link to nowhere.csv, which is not there"},
		{"bom DESIGN -o DIR/loop.csv", exitFailure, "loop.csv is a link that leads back to itself"},
		{"bom DESIGN -o DIR/one.csv", exitFailure, "one.csv is a link that leads back to itself"},
		{"bom DESIGN -o DIR/chain.csv", exitClean, ""},
		{"bom DESIGN -o DIR/to-read-only.csv", exitFailure, "read-only.csv is read-only"},
		{"draw DESIGN -o DIR/draw.svg", exitClean, ""},
		{"export DESIGN --to dxf --of board -o DIR/board.dxf", exitClean, ""},
	} {
		line := strings.NewReplacer("DESIGN", design, "DIR", dir).Replace(c.line)
		if code, said := ended(strings.Fields(line)...); code != c.code || c.says == "" && said != "" || !strings.Contains(said, c.says) {
			t.Errorf("%s: exit code %d, %q", c.line, code, said)
		}
	}
	for name, link := range map[string]bool{"dangling.csv": true, "loop.csv": true, "one.csv": true, "chain.csv": true, "link.csv": true,
		"to-read-only.csv": true, "draw.svg": true, "board.dxf": true, "file.csv": false, "read-only.csv": false, "drawing.svg": false} {
		if isLink(filepath.Join(dir, name)) != link {
			t.Errorf("%s: a link is %v", name, !link)
		}
	}
	for name, want := range map[string]string{"file.csv": "group,item", "read-only.csv": "old", "drawing.svg": "<svg", "drawing.dxf": "SECTION"} {
		if data, err := os.ReadFile(filepath.Join(dir, name)); err != nil || !strings.Contains(string(data), want) {
			t.Errorf("%s: %.40q, %v", name, data, err)
		}
	}
	if info, err := os.Stat(filepath.Join(dir, "drawing.dxf")); err != nil || info.Mode().Perm() != 0o664 {
		t.Errorf("drawing.dxf is %v, %v", info.Mode(), err)
	}
}

// What is no file is written to, not replaced.
func TestWritingToAPipe(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	path := filepath.Join("/dev/fd", strconv.Itoa(int(w.Fd())))
	if _, err := os.Stat(path); err != nil {
		t.Skipf("no /dev/fd here: %v", err)
	}
	err = writeFile(&streams{}, path, func(b *bytes.Buffer) error { b.WriteString("text"); return nil })
	w.Close()
	var got bytes.Buffer
	if _, failed := got.ReadFrom(r); err != nil || failed != nil || got.String() != "text" {
		t.Errorf("%q, %v, %v", got.String(), err, failed)
	}
}
