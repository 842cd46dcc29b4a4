//go:build unix

package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// committed commits five files and fails the test when that hangs.
func committed(t *testing.T, dir string) error {
	t.Helper()
	ended := make(chan error, 1)
	o := fiveFiles(t, dir, "new")
	o.replaces = []string{"page-*.txt"}
	go func() { ended <- o.commit() }()
	select {
	case err := <-ended:
		return err
	case <-time.After(20 * time.Second):
		t.Fatal("hangs")
		return nil
	}
}

func fifo(t *testing.T, path string) {
	t.Helper()
	if err := syscall.Mkfifo(path, 0o666); err != nil {
		t.Skipf("no pipes here: %v", err)
	}
}

// What stands where a journal would is not acted on unless it is as this program
// writes it: it does not reach out of its folder, names nothing but files of sets,
// and is a file. Nothing hangs, and the user's files stay.
func TestForeignJournals(t *testing.T) {
	text := func(s string) func(string) { return func(path string) { put(t, path, s) } }
	outside := filepath.Join(t.TempDir(), "outside.txt")
	put(t, outside, "outside")
	for name, c := range map[string]struct {
		journal func(path string)
		want    string // in the error; "" = it goes on
	}{
		"parent":       {text(`{"fusewright_journal":1,"files":[{"name":"../x.txt","sha256":"","was":true}]}`), "no plain file name"},
		"absolute":     {text(`{"fusewright_journal":1,"files":[{"name":"/etc/x.txt","sha256":"","was":true}]}`), "no plain file name"},
		"empty name":   {text(`{"fusewright_journal":1,"removed":[""]}`), "no plain file name"},
		"removed":      {text(`{"fusewright_journal":1,"removed":["a/b.txt"]}`), "no plain file name"},
		"dots":         {text(`{"fusewright_journal":1,"removed":[".."]}`), "no plain file name"},
		"a design":     {text(`{"fusewright_journal":1,"files":[{"name":"own.yaml","sha256":"` + sumOf([]byte("mine")) + `"}]}`), "no file of a set"},
		"version":      {text(`{"fusewright_journal":2}`), "is no journal"},
		"text":         {text(`hello`), "is no journal"},
		"empty":        {text(``), "is no journal"},
		"folder":       {func(path string) { os.Mkdir(path, 0o777) }, "is no journal"},
		"pipe":         {func(path string) { fifo(t, path) }, "is no journal"},
		"link":         {func(path string) { os.Symlink(outside, path) }, "is no journal"},
		"link nowhere": {func(path string) { os.Symlink("nowhere", path) }, "is no journal"},
		"device":       {func(path string) { os.Symlink("/dev/zero", path) }, "is no journal"},
		"huge": {func(path string) {
			put(t, path, "{")
			os.Truncate(path, maxJournalBytes+1)
		}, "is no journal"},
		"nothing": {func(string) {}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			stage := filepath.Join(dir, ".fusewright-1")
			if err := os.Mkdir(stage, 0o777); err != nil {
				t.Fatal(err)
			}
			put(t, filepath.Join(dir, "own.yaml"), "mine")
			put(t, filepath.Join(dir, "f0.txt"), "old")
			c.journal(filepath.Join(stage, journalName))
			err := committed(t, dir)
			switch {
			case c.want == "" && err != nil:
				t.Error(err)
			case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "remove it by hand")):
				t.Errorf("error %v", err)
			}
			found := contents(t, dir)
			if found["own.yaml"] != "mine" || c.want != "" && (found["f0.txt"] != "old" || len(found) != 3) {
				t.Errorf("%v", found)
			}
			if data, err := os.ReadFile(outside); err != nil || string(data) != "outside" {
				t.Errorf("outside: %q, %v", data, err)
			}
		})
	}
}

// A journal of the right form in a folder that somebody has tampered with: what it
// names is put back from real files to real files, and from nowhere else.
func TestTamperedStage(t *testing.T) {
	elsewhere := t.TempDir()
	for name, c := range map[string]struct {
		tamper func(dir, stage string)
		want   string // in the error; "" = it goes on
	}{
		"the kept folder is a link": {func(dir, stage string) {
			put(t, filepath.Join(elsewhere, "f0.txt"), "elsewhere")
			os.Remove(filepath.Join(stage, keptFolder))
			os.Symlink(elsewhere, filepath.Join(stage, keptFolder))
		}, "is no folder of this program"},
		"the kept file is a pipe": {func(dir, stage string) { fifo(t, filepath.Join(stage, keptFolder, "f0.txt")) }, "is no file"},
		"the kept file is a link": {func(dir, stage string) {
			os.Symlink(filepath.Join(elsewhere, "f0.txt"), filepath.Join(stage, keptFolder, "f0.txt"))
		}, "is no file"},
		"the target is a pipe": {func(dir, stage string) {
			os.Remove(filepath.Join(dir, "f0.txt"))
			fifo(t, filepath.Join(dir, "f0.txt"))
		}, "f0.txt is no file"}, // of the new set, not of the journal
		"the target is a link": {func(dir, stage string) {
			put(t, filepath.Join(elsewhere, "f0.txt"), "elsewhere")
			os.Remove(filepath.Join(dir, "f0.txt"))
			os.Symlink(filepath.Join(elsewhere, "f0.txt"), filepath.Join(dir, "f0.txt"))
		}, "f0.txt is a link"},
		"nothing kept": {func(dir, stage string) {}, ""},
		"more in it":   {func(dir, stage string) { put(t, filepath.Join(stage, "notes"), "mine") }, ""},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			stage := filepath.Join(dir, ".fusewright-1")
			if err := os.MkdirAll(filepath.Join(stage, keptFolder), 0o777); err != nil {
				t.Fatal(err)
			}
			put(t, filepath.Join(dir, "f0.txt"), "new of the stopped run")
			data, err := json.Marshal(journal{Format: journalFormat,
				Files: []journalFile{{Name: "f0.txt", Sum: sumOf([]byte("new of the stopped run")), Was: true}}})
			if err != nil {
				t.Fatal(err)
			}
			put(t, filepath.Join(stage, journalName), string(data))
			c.tamper(dir, stage)
			err = committed(t, dir)
			if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
				t.Errorf("error %v", err)
			}
			if data, err := os.ReadFile(filepath.Join(elsewhere, "f0.txt")); err == nil && string(data) != "elsewhere" {
				t.Errorf("elsewhere: %q", data)
			}
			if data, err := os.ReadFile(filepath.Join(stage, "notes")); name == "more in it" && string(data) != "mine" {
				t.Errorf("notes: %q, %v", data, err)
			}
		})
	}
}

// What is no file is refused where a set would put one, and where its list is.
func TestNoFilesAreTargets(t *testing.T) {
	for name, c := range map[string]struct {
		file string
		make func(path string)
		want string
	}{
		"pipe":           {"f3.txt", func(path string) { fifo(t, path) }, "f3.txt is no file"},
		"link":           {"f3.txt", func(path string) { os.Symlink("other.txt", path) }, "f3.txt is a link"},
		"list, a pipe":   {writtenName, func(path string) { fifo(t, path) }, "is no file"},
		"list, a folder": {writtenName, func(path string) { os.Mkdir(path, 0o777) }, "is no file"},
		"list, a link":   {writtenName, func(path string) { os.Symlink("other.txt", path) }, "is no file"},
		"list, read-only": {writtenName, func(path string) {
			put(t, path, writtenLead+"\n")
			os.Chmod(path, 0o444)
		}, "is read-only"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			put(t, filepath.Join(dir, "f0.txt"), "old")
			c.make(filepath.Join(dir, c.file))
			if err := committed(t, dir); err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v", err)
			}
			if data, err := os.ReadFile(filepath.Join(dir, "f0.txt")); err != nil || string(data) != "old" {
				t.Errorf("f0.txt: %q, %v", data, err)
			}
		})
	}
}
