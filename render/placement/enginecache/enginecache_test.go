package enginecache

import (
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"
)

// Folders or files that another user could write are refused: their content is run.
func TestPrepareRefusesWhatOthersCanWrite(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no owner and mode on this system")
	}
	cases := []struct {
		name  string
		spoil func(t *testing.T, dir string)
		ok    bool
	}{
		{"fresh", func(*testing.T, string) {}, true},
		{"existing and private", func(t *testing.T, dir string) { must(t, os.Mkdir(dir, 0o700)) }, true},
		{"readable by all", func(t *testing.T, dir string) {
			must(t, os.Mkdir(dir, 0o700))
			must(t, os.Chmod(dir, 0o755))
		}, false},
		{"writable by the group", func(t *testing.T, dir string) {
			must(t, os.Mkdir(dir, 0o700))
			must(t, os.Chmod(dir, 0o770))
		}, false},
		{"writable by all", func(t *testing.T, dir string) {
			must(t, os.Mkdir(dir, 0o700))
			must(t, os.Chmod(dir, 0o777))
		}, false},
		{"a link", func(t *testing.T, dir string) {
			must(t, os.Symlink(t.TempDir(), dir))
		}, false},
		{"a file", func(t *testing.T, dir string) {
			must(t, os.WriteFile(dir, nil, 0o600))
		}, false},
		{"inner folder writable by all", func(t *testing.T, dir string) {
			inner := filepath.Join(dir, "go-graphviz")
			must(t, os.MkdirAll(inner, 0o700))
			must(t, os.Chmod(inner, 0o777))
		}, false},
		{"the engine's version's folder writable by all", func(t *testing.T, dir string) {
			version := filepath.Join(dir, "go-graphviz", "version")
			must(t, os.MkdirAll(version, 0o700))
			must(t, os.Chmod(version, 0o777))
		}, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			base := t.TempDir()
			must(t, os.Chmod(base, 0o700))
			dir := filepath.Join(base, "cache")
			c.spoil(t, dir)
			if _, ok := Prepare(dir); ok != c.ok {
				t.Errorf("used = %v, want %v", ok, c.ok)
			}
		})
	}
}

// What is left in the folder is code that was recorded, and what may be in the
// making elsewhere.
func TestPrepareSweeps(t *testing.T) {
	base := t.TempDir()
	must(t, os.Chmod(base, 0o700))
	dir := filepath.Join(base, "cache")
	version := filepath.Join(dir, engineFolder, "version")
	must(t, os.MkdirAll(version, 0o700))
	for _, name := range []string{"good", "unknown", "young.1.tmp", "old.2.tmp"} {
		must(t, os.WriteFile(filepath.Join(version, name), []byte(name), 0o600))
	}
	long := time.Now().Add(-2 * leftAfter)
	must(t, os.Chtimes(filepath.Join(version, "old.2.tmp"), long, long))
	must(t, os.WriteFile(filepath.Join(dir, engineFolder, "room.3.tmp"), nil, 0o600))
	good := filepath.Join(version, "good")
	note(good+sumSuffix, checksum(good))

	known, ok := Prepare(dir)
	if !ok || !slices.Equal(known, []string{good}) {
		t.Errorf("known %v, used %v; want the recorded file", known, ok)
	}
	left, _ := filepath.Glob(filepath.Join(dir, engineFolder, "*", "*"))
	want := []string{good, good + sumSuffix, filepath.Join(version, "young.1.tmp")}
	if !slices.Equal(left, want) {
		t.Errorf("left %v, want %v", left, want)
	}
	record(filepath.Join(dir, engineFolder), nil)
	if !recorded(good) {
		t.Error("a note written anew does not hold")
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
