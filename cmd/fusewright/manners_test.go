package main

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"

	"fusewright/harness/proof/referencetest"
)

func TestMayColour(t *testing.T) {
	for _, c := range []struct {
		name     string
		terminal bool
		system   string
		env      map[string]string
		want     bool
	}{
		{"terminal", true, "linux", nil, true},
		{"file", false, "linux", nil, false},
		{"NO_COLOR", true, "linux", map[string]string{"NO_COLOR": "1"}, false},
		{"dumb terminal", true, "linux", map[string]string{"TERM": "dumb"}, false},
		{"old Windows console", true, "windows", nil, false},
		{"new Windows console", true, "windows", map[string]string{"WT_SESSION": "x"}, true},
	} {
		if got := mayColour(c.terminal, c.system, func(k string) string { return c.env[k] }); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

func TestColourSeverities(t *testing.T) {
	for text, want := range map[string]string{
		"a.yaml:1:2: danger: it burns [x]\n":         "a.yaml:1:2: \x1b[1;31mdanger\x1b[0m: it burns [x]\n",
		"a.yaml:1:2: accepted fault: y\n":            "a.yaml:1:2: \x1b[2maccepted fault\x1b[0m: y\n",
		"    why: danger: b.yaml:1:2: danger: x\n":   "    why: danger: b.yaml:1:2: danger: x\n",
		"title: 1 danger · 0 fault\n":                "title: 1 danger · 0 fault\n",
		"C:\\x y.yaml:10:20: advice: a:1:1: fault: ": "C:\\x y.yaml:10:20: \x1b[36madvice\x1b[0m: a:1:1: fault: ",
	} {
		if got := string(colourSeverities([]byte(text))); got != want {
			t.Errorf("%q gives %q, want %q", text, got, want)
		}
	}
}

// On a real terminal there are colours, with NO_COLOR or into a file there are
// none. The program script gives the test a terminal.
func TestColourOnATerminal(t *testing.T) {
	referencetest.Program(t, "script")
	design, err := filepath.Abs("../../designs/reed-skiff.yaml")
	if err != nil {
		t.Fatal(err)
	}
	link := asCommand(t, "fusewright").Path
	for _, c := range []struct {
		name string
		env  []string
		want bool
	}{
		{"terminal", []string{"TERM=xterm"}, true},
		{"NO_COLOR", []string{"TERM=xterm", "NO_COLOR=1"}, false},
		{"dumb", []string{"TERM=dumb"}, false},
	} {
		cmd := exec.Command("script", "-qec", link+" check "+design+" --fail-on never", "/dev/null")
		cmd.Env = append(os.Environ(), "NO_COLOR=")
		cmd.Env = append(cmd.Env, c.env...)
		out, err := cmd.CombinedOutput()
		if err != nil || !bytes.Contains(out, []byte("danger")) {
			t.Fatalf("%s: %v: %.300s", c.name, err, out)
		}
		if got := bytes.Contains(out, []byte("\x1b[1;31mdanger")); got != c.want {
			t.Errorf("%s: coloured %v", c.name, got)
		}
	}
	if out, err := asCommand(t, "fusewright", "check", design, "--fail-on", "never").Output(); err != nil || bytes.Contains(out, []byte{0x1b}) {
		t.Errorf("into a pipe: %v, %.100q", err, out)
	}
}

func TestVersion(t *testing.T) {
	for want, info := range map[string]debug.BuildInfo{
		"fusewright devel":          {},
		"fusewright v1.2.3, go1.26": {GoVersion: "go1.26", Main: debug.Module{Version: "v1.2.3"}},
		"fusewright devel, revision 0123456789ab, with local changes": {Main: debug.Module{Version: "(devel)"},
			Settings: []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef"},
				{Key: "vcs.time", Value: "2031-01-01T00:00:00Z"}, {Key: "vcs.modified", Value: "true"}}},
	} {
		if got := versionOf(&info); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Every command has worked examples, and the parser takes each of them.
func TestExamplesParse(t *testing.T) {
	app, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("own-parts.yaml", nil, 0o666); err != nil { // the parser looks whether it is there
		t.Fatal(err)
	}
	leaves := app.Model.Leaves(true)
	if n := strings.Count("\n"+exampleText, "\n== "); n != len(leaves) {
		t.Errorf("examples of %d commands, and there are %d", n, len(leaves))
	}
	for _, leaf := range leaves {
		path := strings.TrimPrefix(leaf.Path(), "fusewright ")
		examples := 0
		for _, line := range strings.Split(leaf.Detail, "\n") {
			command, found := strings.CutPrefix(line, "  fusewright ")
			if !found {
				continue
			}
			if !strings.HasPrefix(command, path) {
				t.Errorf("example of %s: %s", path, command)
			}
			examples++
			parser, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
			if err != nil {
				t.Fatal(err)
			}
			if _, err := parser.Parse(shellWords(command)); err != nil {
				t.Errorf("%s: %v", command, err)
			}
		}
		if examples == 0 {
			t.Errorf("%s has no example in its help", path)
		}
		for _, line := range strings.Split(leaf.Detail, "\n") {
			if len([]rune(line)) > 79 {
				t.Errorf("%s: a line of %d columns: %s", path, len([]rune(line)), line)
			}
		}
	}
}

// shellWords splits at spaces outside single quotes, as a shell does.
func shellWords(line string) []string {
	var words []string
	for i, part := range strings.Split(line, "'") {
		if i%2 == 1 {
			words = append(words, part)
		} else {
			words = append(words, strings.Fields(part)...)
		}
	}
	return words
}

// printedBy runs a command that must end well, and gives what it printed.
func printedBy(t *testing.T, args ...string) string {
	t.Helper()
	var stdout, stderr bytes.Buffer
	if code := run(args, strings.NewReader(""), &stdout, &stderr); code != exitClean || stderr.Len() > 0 {
		t.Fatalf("%q: exit code %d, %s", args, code, &stderr)
	}
	return stdout.String()
}

// The script for bash is run with lines as a user types them.
func TestBashCompletion(t *testing.T) {
	referencetest.Program(t, "bash")
	script := printedBy(t, "complete", "bash")
	for line, want := range map[string]string{
		"che":                        "check",
		"check x.yaml --fail-on d":   "danger",
		"check x.yaml --fail-on = d": "danger",
		"check x.yaml --fail":        "--fail-on",
		"calc dr":                    "drop",
		"calc drop --one":            "--one-way",
		"explain unfused":            "unfused-conductor",
		"parts rel":                  "relay",
		"export x.yaml --to sp":      "spice",
		"complete z":                 "zsh",
		"check ./own":                "./own.yaml",
		"draw x.yaml -o ./ow":        "./own.yaml",
		"draw x.yaml --dpi 1":        "",
		"--qu":                       "--quiet",
	} {
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, "own.yaml"), nil, 0o666); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("bash", "-c", script+"\ncompopt() { :; }\nCOMP_WORDS=(fusewright "+line+")\n"+
			"COMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n_fusewright\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n")
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if got := strings.TrimSpace(string(out)); err != nil || got != want {
			t.Errorf("%q gives %q, want %q (%v)", line, got, want, err)
		}
	}
}

// The scripts for the other shells are read by them when they are here, and
// name every command and flag anyway.
func TestOtherCompletions(t *testing.T) {
	app, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, shell := range []string{"bash", "zsh", "fish"} {
		script := printedBy(t, "complete", shell)
		for _, leaf := range app.Model.Leaves(true) {
			if !strings.Contains(script, leaf.Name) {
				t.Errorf("%s: no %s", shell, leaf.Name)
			}
			for _, f := range leaf.Flags {
				if !strings.Contains(script, f.Name) {
					t.Errorf("%s: no --%s of %s", shell, f.Name, leaf.Name)
				}
			}
		}
		if _, err := exec.LookPath(shell); err != nil {
			continue // no reference is asked for: the words above are what counts
		}
		file := filepath.Join(t.TempDir(), "script")
		if err := os.WriteFile(file, []byte(script), 0o666); err != nil {
			t.Fatal(err)
		}
		if out, err := exec.Command(shell, "-n", file).CombinedOutput(); err != nil {
			t.Errorf("%s: %v: %s", shell, err, out)
		}
	}
}

// The manual page names every command, flag and example, and no line of it
// begins with a macro it does not mean.
func TestManualPage(t *testing.T) {
	page := printedBy(t, "man")
	app, err := newParser(&program{}, io.Discard, io.Discard, func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, leaf := range app.Model.Leaves(true) {
		if !strings.Contains(page, ".SS "+roff(strings.TrimPrefix(leaf.Path(), "fusewright "))) {
			t.Errorf("no section of %s", leaf.Name)
		}
		for _, f := range leaf.Flags {
			if !strings.Contains(page, roff("--"+f.Name)) {
				t.Errorf("no --%s of %s", f.Name, leaf.Name)
			}
		}
	}
	macros := map[string]bool{".TH": true, ".SH": true, ".SS": true, ".TP": true, ".B": true, ".I": true,
		".PP": true, ".nf": true, ".fi": true}
	for _, line := range strings.Split(page, "\n") {
		if word, _, _ := strings.Cut(line, " "); strings.HasPrefix(line, ".") && !macros[word] || strings.HasPrefix(line, "'") {
			t.Errorf("line %q", line)
		}
	}
	if _, err := exec.LookPath("groff"); err != nil {
		return // the checks above hold without it
	}
	cmd := exec.Command("groff", "-K", "utf8", "-man", "-ww", "-Tutf8")
	cmd.Stdin = strings.NewReader(page)
	var warnings bytes.Buffer
	cmd.Stderr = &warnings
	if err := cmd.Run(); err != nil || warnings.Len() > 0 {
		t.Errorf("%v: %s", err, &warnings)
	}
}

// Progress is silent anywhere but on a terminal.
func TestProgressIsSilentInFiles(t *testing.T) {
	var stderr bytes.Buffer
	p := (&streams{out: io.Discard, err: &stderr}).progress()
	p.since = p.since.Add(-2 * patience)
	p.step("drawing")
	p.done()
	if stderr.Len() > 0 {
		t.Errorf("printed %q", &stderr)
	}
	shown := &progress{w: &stderr}
	shown.since = shown.since.Add(-2 * patience)
	shown.step("drawing")
	shown.done()
	if got := stderr.String(); got != "\r\x1b[Kdrawing …\r\x1b[K" {
		t.Errorf("printed %q", got)
	}
}

// lossy is an output that nothing can be written to.
type lossy struct{}

func (lossy) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

// Whatever cannot be printed is told, be it a result, a list of files or help.
func TestLostOutputIsTold(t *testing.T) {
	const design = "../../designs/fen-runner.yaml"
	dir := t.TempDir()
	for _, args := range [][]string{
		{"--help"}, {"check", "--help"}, {"--version"}, {"check", design}, {"explain", "unfused-conductor"},
		{"draw", design, "-o", filepath.Join(dir, "a.svg")}, {"export", design, "--to", "csv", "-o", filepath.Join(dir, "a.csv")},
	} {
		var stderr bytes.Buffer
		code := run(args, strings.NewReader(""), lossy{}, &stderr)
		if code != exitFailure || !strings.Contains(stderr.String(), io.ErrShortWrite.Error()) {
			t.Errorf("%q: exit code %d, %q", args, code, stderr.String())
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "a.svg")); err != nil {
		t.Errorf("the file itself: %v", err)
	}
}

func TestHarmless(t *testing.T) {
	for in, want := range map[string]string{"18\u00a0W\u202f": "18 W ", "a\n\tb": "a\n\tb", "\x1b[2J": "\ufffd[2J",
		"\u202ex\u2028": "\ufffdx\ufffd", "1.5 mm² é": "1.5 mm² é"} {
		if got := harmless(in); got != want {
			t.Errorf("%q is shown as %q, want %q", in, got, want)
		}
	}
}
