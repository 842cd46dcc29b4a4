package enginecache

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
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
		{"a planted file writable by all", func(t *testing.T, dir string) {
			inner := filepath.Join(dir, "go-graphviz")
			must(t, os.MkdirAll(inner, 0o700))
			file := filepath.Join(inner, "code")
			must(t, os.WriteFile(file, nil, 0o600))
			must(t, os.Chmod(file, 0o666))
		}, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "cache")
			c.spoil(t, dir)
			if got := Prepare(dir) != ""; got != c.ok {
				t.Errorf("used = %v, want %v", got, c.ok)
			}
		})
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
