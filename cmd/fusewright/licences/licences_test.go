package licences

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/referencetest"
)

var update = flag.Bool("update", false, "copy the texts of the linked modules anew")

// named are files, and folders of files, that hold terms.
var named = regexp.MustCompile(`(?i)^(third_party_)?(licen[sc]es?|copying|notice|patents|copyright)([-._].*)?$`)

// folders are those of linked, asked for once.
var folders map[string]string

// linked are the folders of all modules that the program is linked with on some
// system, by path, and that of the Go distribution as "go".
func linked(t *testing.T) map[string]string {
	t.Helper()
	if folders != nil {
		return folders
	}
	referencetest.Program(t, "go")
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]string{"go": strings.TrimSpace(string(root))}
	for _, system := range []string{"linux", "darwin", "windows"} {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Dir}}{{end}}{{end}}",
			"fusewright/cmd/fusewright")
		list.Env = append(os.Environ(), "GOOS="+system, "GOARCH=amd64", "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(out)) {
			if path, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				found[path] = dir
			}
		}
	}
	if len(found) < 10 {
		t.Fatalf("only %d modules", len(found))
	}
	folders = found
	return found
}

// terms are the files of a module that hold terms, by their names in it.
func terms(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	found := map[string][]byte{}
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !named.MatchString(e.Name()) {
			continue
		}
		err := filepath.WalkDir(filepath.Join(dir, e.Name()), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			name, err := filepath.Rel(dir, path)
			if err == nil {
				found[filepath.ToSlash(name)], err = os.ReadFile(path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return found
}

// Each linked module is listed, and its texts are shipped word for word.
func TestLinkedModulesAreListed(t *testing.T) {
	for path, dir := range linked(t) {
		want := terms(t, dir)
		if len(want) == 0 {
			t.Errorf("%s has no licence", path)
		}
		if *update {
			for name, data := range want {
				file := filepath.Join("texts", filepath.FromSlash(path), filepath.FromSlash(name))
				if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(file, data, 0o666); err != nil {
					t.Fatal(err)
				}
			}
			continue
		}
		at := slices.IndexFunc(All, func(c Component) bool { return c.Name == path })
		if at < 0 {
			t.Errorf("%s is linked and not listed", path)
			continue
		}
		shipped, err := All[at].Texts()
		if err != nil || len(shipped) != len(want) {
			t.Errorf("%s: %d texts shipped of %d (-update copies them), %v", path, len(shipped), len(want), err)
		}
		for _, text := range shipped {
			if !bytes.Equal([]byte(text.Text), want[text.Name]) {
				t.Errorf("%s: %s is not the module's (-update copies it)", path, text.Name)
			}
		}
	}
}

// What is listed is linked, or says where it is from; no text is left over.
func TestListIsOfWhatIsLinked(t *testing.T) {
	modules, shipped := linked(t), 0
	for _, c := range All {
		if _, ok := modules[c.Name]; !ok && c.Note == "" {
			t.Errorf("%s is listed and not linked", c.Name)
		}
		list, err := c.Texts()
		if err != nil || len(list) == 0 || c.Terms == "" || c.Purpose == "" {
			t.Errorf("%s: %d texts, %v", c.Name, len(list), err)
		}
		for _, text := range list {
			if len(text.Text) < 40 {
				t.Errorf("%s: %s holds %q", c.Name, text.Name, text.Text)
			}
		}
		shipped += len(list)
	}
	files := 0
	err := fs.WalkDir(texts, ".", func(_ string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			files++
		}
		return err
	})
	if err != nil || files != shipped {
		t.Errorf("%d files, %d of listed components, %v", files, shipped, err)
	}
}

// The engine's version is that of the module which holds it.
func TestEngineVersion(t *testing.T) {
	version, err := os.ReadFile(filepath.Join(linked(t)["github.com/goccy/go-graphviz"], "graphviz.version"))
	if err != nil {
		t.Fatal(err)
	}
	build, err := os.ReadFile(filepath.Join(linked(t)["github.com/goccy/go-graphviz"], "internal", "wasm", "build", "Dockerfile"))
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{
		"graphviz":  "version " + strings.TrimSpace(string(version)),
		"expat":     "version " + string(regexp.MustCompile(`expat-([0-9.]+)\.tar`).FindSubmatch(build)[1]),
		"wasi-libc": "WASI SDK " + string(regexp.MustCompile(`wasi-sdk-([0-9]+)`).FindSubmatch(build)[1]),
	} {
		at := slices.IndexFunc(All, func(c Component) bool { return c.Name == name })
		if at < 0 || !strings.Contains(All[at].Note, want) {
			t.Errorf("%s: not of %s", name, want)
		}
	}
}
