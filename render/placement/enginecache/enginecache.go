// Package enginecache gives the layout engine a private folder for its compiled
// code before the engine starts, and answers for what lies in it.
//
// The engine is compiled when its package initialises, and it keeps the result
// under os.TempDir(), which is shared: another user of the machine could plant
// code there. And it gives up with a panic, before any command of ours runs,
// when kept code cannot be read or written. So this package points TMPDIR at a
// folder that only its user can write, in which nothing but code with the
// checksum of its writing is left, and into which code is known to fit; without
// such a folder, at nowhere, and the engine keeps its code in memory. Finish puts
// TMPDIR back and notes the checksum of what was written.
//
// It works because Go initialises packages in the order of their import paths,
// each once all it imports are ready. This package imports only what the engine
// imports too and its path sorts before the engine's, so it is always first; a
// test in package placement pins that.
package enginecache

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
)

// nowhere is a TMPDIR under which nothing can be made: the engine then keeps
// its code in memory only.
const nowhere = "/dev/null/none"

var (
	// Dir is the folder given to the engine; "" when none was safe to use.
	Dir string

	known  []string // the code in it that was recorded by an earlier run
	saved  string
	wasSet bool
)

func init() {
	saved, wasSet = os.LookupEnv(tempVariable)
	if base, err := os.UserCacheDir(); err == nil && filepath.IsAbs(base) {
		dir := filepath.Join(base, "fusewright", "engine-"+identity())
		var ok bool
		if known, ok = Prepare(dir); ok {
			Dir = dir
		}
	}
	os.Setenv(tempVariable, cmp.Or(Dir, nowhere))
}

// Finish puts TMPDIR back as it was and records the checksums of code that the
// engine has written. Package placement calls it as soon as the engine is ready.
func Finish() {
	if wasSet {
		os.Setenv(tempVariable, saved)
	} else {
		os.Unsetenv(tempVariable)
	}
	if Dir != "" {
		record(filepath.Join(Dir, engineFolder), known)
	}
}

// identity names the engine and the kind of processor that code is kept for: with
// one folder for each, kept code is always found, and nothing need be written
// when it is there.
func identity() string {
	var parts []string
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, m := range info.Deps {
			if strings.Contains(m.Path, "/go-graphviz") || strings.Contains(m.Path, "/wazero") {
				parts = append(parts, m.Path, m.Version, m.Sum)
			}
		}
	}
	sum := sha256.Sum256([]byte(strings.Join(append(parts, processor()), "\n")))
	return hex.EncodeToString(sum[:6])
}

// processor tells kinds of processor apart where the system says them; elsewhere
// it is "".
func processor() string {
	f, err := os.Open("/proc/cpuinfo")
	if err != nil {
		return ""
	}
	defer f.Close()
	head := make([]byte, 8<<10) // the first processor is in it
	n, _ := f.Read(head)
	for line := range strings.Lines(string(head[:n])) {
		if strings.HasPrefix(line, "flags") || strings.HasPrefix(line, "Features") {
			return line
		}
	}
	return ""
}
