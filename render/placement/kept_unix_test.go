//go:build unix

package placement

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
)

// place is a user's folder for one test: the cache in it, and a shared temporary
// folder in which nothing may be left.
type place struct{ home, shared string }

func newPlace(t *testing.T) place { return place{t.TempDir(), t.TempDir()} }

// start runs the program anew, after the words of a wrapper, and gives the
// folder that the engine got; the program must have started and drawn.
func (p place) start(t *testing.T, wrapper ...string) (dir string) {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	words := append(wrapper, self)
	cmd := exec.Command(words[0], words[1:]...)
	cmd.WaitDelay = 20 * time.Second
	cmd.Env = []string{"PLACEMENT_SHOW_FOLDER=1", "PATH=" + os.Getenv("PATH"), "TMPDIR=" + p.shared}
	if p.home != "" {
		cmd.Env = append(cmd.Env, "HOME="+p.home, "XDG_CACHE_HOME="+filepath.Join(p.home, "cache"))
	}
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Errorf("the program did not start: %v\n%.300s", err, out)
		return ""
	}
	lines := strings.Split(string(out), "\n")
	if len(lines) != 3 || lines[1] != p.shared || lines[2] != "[[0] [1 2]] <nil>" {
		t.Fatalf("the program printed %q", out)
	}
	if left, _ := os.ReadDir(p.shared); len(left) > 0 {
		t.Errorf("left in the shared temporary folder: %v", left)
	}
	return lines[0]
}

// code is the one file of compiled code that is kept, "" when there is none.
func (p place) code() string {
	for _, pattern := range []string{"*[0-9a-f]", "*.tmp"} {
		files, _ := filepath.Glob(filepath.Join(p.home, "cache", "fusewright", "*", "go-graphviz", "*", pattern))
		for _, f := range files {
			if !strings.HasSuffix(f, ".sha256") {
				return f
			}
		}
	}
	return ""
}

// TestEngineUsesThePrivateFolder pins the order of package initialisation: the
// engine must find the private folder when it starts.
func TestEngineUsesThePrivateFolder(t *testing.T) {
	p := newPlace(t)
	dir := p.start(t)
	if !strings.HasPrefix(dir, p.home) {
		t.Errorf("folder %q, want one under the user's cache folder", dir)
	}
	code := p.code()
	if code == "" {
		t.Fatalf("no compiled code under %s: the engine started before the folder was set", dir)
	}
	before, _ := os.Stat(code)
	p.start(t)
	if after, err := os.Stat(code); err != nil || !os.SameFile(before, after) {
		t.Error("the second start compiled anew")
	}
}

// Of spoilt code none runs, and good code is kept again. The ways of spoiling are
// in the tests of enginecache; here is one that the engine would run, and one at
// which it would wait for ever.
func TestSpoiltCodeIsMadeAnew(t *testing.T) {
	p := newPlace(t)
	p.start(t)
	code := p.code()
	good, err := os.ReadFile(code)
	must(t, err)
	write(t, code, tampered(bytes.Clone(good)))
	p.start(t)
	if again, err := os.ReadFile(code); err != nil || !bytes.Equal(again, good) {
		t.Errorf("the code is not as compiled afterwards (%v)", err)
	}
	must(t, os.Remove(code))
	must(t, syscall.Mkfifo(code, 0o600))
	p.start(t)
	if again, err := os.ReadFile(code); err != nil || !bytes.Equal(again, good) {
		t.Errorf("the code is not as compiled afterwards (%v)", err)
	}
}

// tampered changes code and makes the engine's own checksum of it anew.
func tampered(b []byte) []byte {
	at := len("WAZEVO")
	at += 1 + int(b[at]) // version
	functions := int(binary.LittleEndian.Uint32(b[at:]))
	at += 4 + 8*functions
	size := int(binary.LittleEndian.Uint64(b[at:]))
	at += 8
	b[at+size/2] ^= 1
	sum := crc32.Checksum(b[at:at+size], crc32.MakeTable(crc32.Castagnoli))
	binary.LittleEndian.PutUint32(b[at+size:], sum)
	return b
}

// Where code cannot be kept, the program runs without.
func TestStartsWithoutKeeping(t *testing.T) {
	small := `mount -t tmpfs -o size=1m none "$0" && exec "$@"`
	cases := []struct {
		name    string
		prepare func(t *testing.T, p *place) (wrapper []string)
	}{
		{"no home, no room for temporary files", func(t *testing.T, p *place) []string {
			p.home = ""
			return []string{"sh", "-c", `ulimit -f 0; exec "$0"`}
		}},
		{"small files only", func(t *testing.T, p *place) []string {
			return []string{"sh", "-c", `ulimit -f 2048; exec "$0"`}
		}},
		{"a full disk", func(t *testing.T, p *place) []string { return mounted(t, p.home, small) }},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := newPlace(t)
			if dir := p.start(t, c.prepare(t, &p)...); dir != "" {
				t.Errorf("folder %q, want none", dir)
			}
			if p.home != "" && p.code() != "" {
				t.Errorf("left %s", p.code())
			}
		})
	}
}

// mounted runs the program where a disk of its own lies over dir; skipped where
// the system does not allow it.
func mounted(t *testing.T, dir, script string) []string {
	wrapper := []string{"unshare", "-rm", "sh", "-c", script, dir}
	if out, err := exec.Command(wrapper[0], append(wrapper[1:], "true")...).CombinedOutput(); err != nil {
		t.Skipf("no disks of one's own here: %v %s", err, out)
	}
	return wrapper
}

// Several first runs at once do not get in each other's way.
func TestFirstRunsAtOnce(t *testing.T) {
	p := newPlace(t)
	var all sync.WaitGroup
	for range 2 {
		all.Go(func() { p.start(t) })
	}
	all.Wait()
	p.start(t)
	if strings.Contains(filepath.Base(p.code()), ".") || p.code() == "" {
		t.Errorf("kept %q, want code and nothing half-written", p.code())
	}
}

func write(t *testing.T, path string, data []byte) {
	t.Helper()
	must(t, os.WriteFile(path, data, 0o600))
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
