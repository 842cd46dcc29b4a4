// Package enginecache gives the layout engine a private folder for its compiled
// code before the engine starts.
//
// The engine is compiled when its package initialises, and it keeps the result
// under os.TempDir(), which is shared: another user of the machine could plant
// code there. This package points TMPDIR at a folder that only its user can
// write, for as long as the engine initialises; Restore puts TMPDIR back.
//
// It works because Go initialises packages in the order of their import paths,
// each once all it imports are ready. This package imports only what the engine
// imports too and its path sorts before the engine's, so it is always first; a
// test in package placement pins that.
package enginecache

import (
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
)

// nowhere is a TMPDIR under which nothing can be made: the engine then keeps
// its code in memory only.
const nowhere = "/dev/null/none"

var (
	// Dir is the folder given to the engine; "" when none was safe to use.
	Dir string
	// Started tells that this package initialised; see the order test.
	Started bool

	saved   string
	wasSet  bool
	private string // made for this run only; removed by Restore
)

func init() {
	saved, wasSet = os.LookupEnv("TMPDIR")
	Dir = pick()
	if Dir == "" {
		os.Setenv("TMPDIR", nowhere)
	} else {
		os.Setenv("TMPDIR", Dir)
	}
	Started = true
}

// Restore puts TMPDIR back as it was and removes a folder made for this run.
// Package placement calls it as soon as the engine is ready.
func Restore() {
	if wasSet {
		os.Setenv("TMPDIR", saved)
	} else {
		os.Unsetenv("TMPDIR")
	}
	if private != "" {
		os.RemoveAll(private)
		private = ""
	}
}

// pick returns the first safe folder: under the user's cache folder, else a
// fresh one for this run, else none.
func pick() string {
	if base, err := os.UserCacheDir(); err == nil && filepath.IsAbs(base) {
		if dir := Prepare(filepath.Join(base, "fusewright")); dir != "" {
			return dir
		}
	}
	dir, err := os.MkdirTemp("", "fusewright-"+strconv.Itoa(os.Getuid())+"-")
	if err != nil {
		return ""
	}
	private = dir
	return dir
}

// Prepare makes dir, and the engine's own folder inside it, for this user only
// and returns dir, or "" when either is not safe: not a real folder, owned by
// another user, or writable by others. Files inside are checked the same way,
// because their content is run.
func Prepare(dir string) string {
	inner := filepath.Join(dir, "go-graphviz")
	if os.MkdirAll(dir, 0o700) != nil || !safe(dir) {
		return ""
	}
	if os.MkdirAll(inner, 0o700) != nil || !safe(inner) {
		return ""
	}
	clean := true
	filepath.WalkDir(inner, func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !safe(path) {
			clean = false
			return filepath.SkipAll
		}
		return nil
	})
	if !clean {
		return ""
	}
	return dir
}

// safe tells whether only this user can write path, which is no link.
func safe(path string) bool {
	info, err := os.Lstat(path)
	if err != nil || info.Mode()&fs.ModeSymlink != 0 {
		return false
	}
	return ownedAlone(info)
}
