package live

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
	"fusewright/render/page"
)

// ownLamp is a library with a part of which the maker allows so much.
func ownLamp(watts string) []byte {
	return []byte("fusewright library: 1\nsource: measured on our bench\ncertainty: user data\nloads:\n" +
		"  - {name: barn lamp, behaves: filament lamp, sign: lamp, power W: " + watts + ", rated V: 12, end: splice}\n")
}

// The page follows a library file while the design stays as it is.
func TestFollowsALibrary(t *testing.T) {
	file, text := copyOf(t, demo)
	own := filepath.Join(t.TempDir(), "own.yaml")
	save := func(data []byte) {
		t.Helper()
		if err := os.WriteFile(own, data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	save(ownLamp("21"))
	address, _ := shown(t, file, func(s *Server) {
		s.opt.Watched = append(s.opt.Watched, own)
		s.opt.Assess = func([]byte) (*harness.Review, error) {
			lib, err := library.Load(own)
			if err != nil {
				return nil, err
			}
			d, err := design.Read("design.yaml", text, lib)
			if err != nil {
				return nil, err
			}
			return harness.Assess(d)
		}
	})
	l := listen(t, address)
	l.until(t, "remedies were tried", func(m *page.Model) bool { return m.Tried })
	save(ownLamp("90"))
	l.until(t, "the library was read again", func(m *page.Model) bool { return m.Change != nil })
	save([]byte("fusewright library: [\n"))
	bad := l.until(t, "there is a problem", func(m *page.Model) bool { return len(m.Problems) > 0 })
	if bad.Problems[0].File != "own.yaml" {
		t.Errorf("the problem: %+v", bad.Problems[0])
	}
}

// Contents tells texts apart by any of the files, and a file that is gone from an empty one.
func TestContents(t *testing.T) {
	dir := t.TempDir()
	a, b := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	seen := map[string]string{}
	for _, x := range []struct{ name, a, b string }{{"both", "x", "y"}, {"the second", "x", "z"}, {"the first", "w", "y"}, {"moved over", "xy", ""}, {"the second gone", "xy", "-"}} {
		for file, text := range map[string]string{a: x.a, b: x.b} {
			os.Remove(file)
			if text == "-" {
				continue
			}
			if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		is := Contents([]string{a, b})
		if is != Contents([]string{a, b}) {
			t.Errorf("%s: not the same twice", x.name)
		}
		if was, there := seen[is]; there {
			t.Errorf("%s is taken for %s", x.name, was)
		}
		seen[is] = x.name
	}
}

// A change is told of wherever the file lies: by its name, behind links, in a folder behind a link.
func TestWatchBehindLinks(t *testing.T) {
	for name, lay := range map[string]func(t *testing.T, real, dir string) (watched string){
		"itself": func(_ *testing.T, real, _ string) string { return real },
		"a link": func(t *testing.T, real, dir string) string {
			return linked(t, real, filepath.Join(dir, "one.yaml"))
		},
		"a link to a link": func(t *testing.T, real, dir string) string {
			return linked(t, linked(t, real, filepath.Join(dir, "one.yaml")), filepath.Join(t.TempDir(), "two.yaml"))
		},
		"a folder behind a link": func(t *testing.T, real, dir string) string {
			return filepath.Join(linked(t, filepath.Dir(real), filepath.Join(dir, "folder")), filepath.Base(real))
		},
	} {
		t.Run(name, func(t *testing.T) {
			real := filepath.Join(t.TempDir(), "real.yaml")
			write := func(text string) {
				t.Helper()
				if err := os.WriteFile(real, []byte(text), 0o666); err != nil {
					t.Fatal(err)
				}
			}
			write("a")
			ctx, stop := context.WithCancel(context.Background())
			defer stop()
			changes, err := Watch(ctx, []string{lay(t, real, t.TempDir())})
			if err != nil {
				t.Fatal(err)
			}
			write("b")
			select {
			case <-changes:
			case <-time.After(10 * time.Second):
				t.Error("nothing is told")
			}
		})
	}
}

// A link that is made to lead elsewhere is followed there: the file's own, or that of a folder above it.
func TestWatchALinkChanged(t *testing.T) {
	for name, of := range map[string]func(file string) (to, below string){
		"the file":   func(file string) (string, string) { return file, "" },
		"its folder": func(file string) (string, string) { return filepath.Dir(file), filepath.Base(file) },
		"a folder above its": func(file string) (string, string) {
			return filepath.Join(filepath.Dir(file), ".."), filepath.Join("in", filepath.Base(file))
		},
	} {
		t.Run(name, func(t *testing.T) {
			link := filepath.Join(t.TempDir(), "link")
			put := func(file string) string {
				t.Helper()
				if err := os.WriteFile(file, []byte(t.Name()), 0o666); err != nil {
					t.Fatal(err)
				}
				return file
			}
			made := func() string {
				in := filepath.Join(t.TempDir(), "in")
				if err := os.Mkdir(in, 0o777); err != nil {
					t.Fatal(err)
				}
				return put(filepath.Join(in, "a.yaml"))
			}
			second := made()
			to, below := of(made())
			changes, err := Watch(t.Context(), []string{filepath.Join(linked(t, to, link), below)})
			if err != nil {
				t.Fatal(err)
			}
			told := func(after string) {
				t.Helper()
				select {
				case <-changes:
				case <-time.After(10 * time.Second):
					t.Fatalf("%s nothing is told", after)
				}
			}
			to, _ = of(second)
			if err := os.Rename(linked(t, to, link+".new"), link); err != nil {
				t.Fatal(err)
			}
			told("after another target")
			put(second)
			told("after the new target was written")
		})
	}
}

func linked(t *testing.T, to, at string) string {
	t.Helper()
	if err := os.Symlink(to, at); err != nil {
		t.Skip(err)
	}
	return at
}
