package main

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"fusewright/harness/proof/referencetest"
)

var update = flag.Bool("update", false, "rewrite the expected output in the scripts")

// commands are what the test binary does when called by a name.
var commands = map[string]func(){"fusewright": main, "fusewright-stalled": stalled}

// TestMain lets the scripts call the program by its name: the test binary runs
// itself.
func TestMain(m *testing.M) {
	testscript.Main(m, commands)
}

// TestScripts runs the command sessions in testdata/script.
func TestScripts(t *testing.T) {
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	if referencetest.Required() {
		referencetest.Program(t, "git") // a script that needs it skips itself without
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			// The graph engine's compiled code is kept between scripts.
			cache, err := os.UserCacheDir()
			if err != nil {
				return err
			}
			env.Setenv("XDG_CACHE_HOME", cache)
			env.Setenv("DESIGNS", filepath.Join(root, "designs"))
			return nil
		},
	})
}
