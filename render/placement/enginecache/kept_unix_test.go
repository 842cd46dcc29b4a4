//go:build unix

package enginecache

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// Whatever became of kept code or its note, the engine does not get to see it,
// and code that is written in its place is kept.
func TestSpoiltCodeIsRemoved(t *testing.T) {
	content := bytes.Repeat([]byte("code"), 1000)
	instead := func(make func(path string) error) func(*testing.T, string) {
		return func(t *testing.T, path string) { must(t, os.Remove(path)); must(t, make(path)) }
	}
	write := func(data []byte) func(string) error {
		return func(path string) error { return os.WriteFile(path, data, 0o600) }
	}
	flipped := bytes.Clone(content)
	flipped[len(flipped)/2] ^= 1
	cases := []struct {
		name  string
		of    string // what is spoilt: the code, or its note
		spoil func(t *testing.T, path string)
	}{
		{"emptied", "", instead(write(nil))},
		{"cut", "", instead(write(content[:100]))},
		{"one bit flipped", "", instead(write(flipped))},
		{"missing", "", instead(func(string) error { return nil })},
		{"a folder", "", instead(func(path string) error { return os.MkdirAll(filepath.Join(path, "x"), 0o700) })},
		{"a pipe", "", instead(func(path string) error { return syscall.Mkfifo(path, 0o600) })},
		{"a link that never ends", "", instead(func(path string) error { return os.Symlink("/dev/zero", path) })},
		{"a link to the same", "", func(t *testing.T, path string) {
			other := filepath.Join(t.TempDir(), "same")
			must(t, os.Rename(path, other))
			must(t, os.Symlink(other, path))
		}},
		{"larger than code can be", "", func(t *testing.T, path string) { must(t, os.Truncate(path, maxCodeBytes+1)) }},
		{"writable by others", "", func(t *testing.T, path string) { must(t, os.Chmod(path, 0o666)) }},
		{"half-written by a killed run", "", func(t *testing.T, path string) { must(t, os.Rename(path, path+".1.tmp")) }},
		{"no note", sumSuffix, instead(func(string) error { return nil })},
		{"an empty note", sumSuffix, instead(write(nil))},
		{"another's note", sumSuffix, instead(write([]byte(strings.Repeat("0", 128))))},
		{"a pipe for a note", sumSuffix, instead(func(path string) error { return syscall.Mkfifo(path, 0o600) })},
		{"a folder for a note", sumSuffix, instead(func(path string) error { return os.MkdirAll(filepath.Join(path, "x"), 0o700) })},
		{"its folder a link", "", func(t *testing.T, path string) {
			must(t, os.RemoveAll(filepath.Dir(path)))
			must(t, os.Symlink(t.TempDir(), filepath.Dir(path)))
		}},
		{"its folder a pipe", "", func(t *testing.T, path string) {
			must(t, os.RemoveAll(filepath.Dir(path)))
			must(t, syscall.Mkfifo(filepath.Dir(path), 0o600))
		}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			base := t.TempDir()
			must(t, os.Chmod(base, 0o700))
			dir := filepath.Join(base, "cache")
			inner := filepath.Join(dir, engineFolder)
			code := filepath.Join(inner, "version", "c0de")
			run := func() (known []string) { // as a run of the program does
				known, ok := Prepare(dir)
				if !ok {
					t.Fatal("the folder is not used")
				}
				if len(known) == 0 {
					if _, err := os.Lstat(code); err == nil {
						t.Fatal("the engine would see code that nobody answers for")
					}
					must(t, os.MkdirAll(filepath.Dir(code), 0o700))
					must(t, os.WriteFile(code, content, 0o600))
				}
				record(inner, known)
				return known
			}
			run()
			if len(run()) != 1 {
				t.Fatal("code is not kept")
			}
			c.spoil(t, code+c.of)
			if len(run()) != 0 {
				t.Error("spoilt code is taken for good")
			}
			if len(run()) != 1 {
				t.Error("code is not kept again")
			}
		})
	}
}

// A folder in which nothing can be written is used for the code it has, and not
// without.
func TestClosedFolder(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("the superuser writes anywhere")
	}
	base := t.TempDir()
	must(t, os.Chmod(base, 0o700))
	dir := filepath.Join(base, "cache")
	must(t, os.MkdirAll(filepath.Join(dir, engineFolder), 0o700))
	must(t, os.Chmod(filepath.Join(dir, engineFolder), 0o500))
	if _, ok := Prepare(dir); ok {
		t.Error("a folder in which nothing can be written is used")
	}
}
