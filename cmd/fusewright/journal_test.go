package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// recovered takes back what is left of stopped runs, as the next run begins.
func recovered(t testing.TB, dir string) map[string]string {
	t.Helper()
	lock, err := lockFolder(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer lock.release()
	if err := newOutputs(dir).tidyUp(); err != nil {
		t.Fatal(err)
	}
	return contents(t, dir)
}

// stalled is a run of the test binary that commits five files into a folder and
// stops for good before a change on the disk: FOLDER CHANGES-BEFORE.
func stalled() {
	after, err := strconv.Atoi(os.Args[2])
	if err != nil {
		panic(err)
	}
	o, changes := newOutputs(os.Args[1]), 0
	for i := range 5 {
		o.add(fmt.Sprintf("f%d.txt", i), func(b *bytes.Buffer) error { b.WriteString("new"); return nil })
	}
	o.replaces = []string{"page-*.txt"}
	o.before = func(what string) error {
		if changes == after {
			fmt.Println(what)
			time.Sleep(time.Hour)
		}
		changes++
		return nil
	}
	if o.commit() == nil {
		fmt.Println("done")
	}
}

// killedBefore runs stalled and kills it; it gives the change it was killed before.
func killedBefore(t *testing.T, dir string, change int) string {
	t.Helper()
	killed := asCommand(t, "fusewright-stalled", dir, strconv.Itoa(change))
	pipe, err := killed.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := killed.Start(); err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(pipe).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	killed.Process.Kill() // it may have ended already
	killed.Wait()         // it was killed: an error says nothing more
	return strings.TrimSpace(line)
}

// A process killed before any change on the disk leaves every file whole, and
// the next run in the folder has the previous files, or all of the new ones.
func TestKill(t *testing.T) {
	sawNew := map[int]bool{} // how many of the files were new when the process was killed
	complete := false        // the journal was removed before the process was killed
	for change := 0; ; change++ {
		dir := t.TempDir()
		writtenBefore(t, dir, "old")
		was := contents(t, dir)
		at := killedBefore(t, dir, change)
		fresh := 0
		for i := range 5 {
			switch got := contents(t, dir)[fmt.Sprintf("f%d.txt", i)]; got {
			case "new":
				fresh++
			case "old":
			default:
				t.Errorf("killed before %s: file %d is %q", at, i, got)
			}
		}
		sawNew[fresh] = true
		found := recovered(t, dir)
		if complete && !all(found, "new") || !complete && cmp.Diff(was, found) != "" {
			t.Errorf("killed before %s: %v", at, found)
		}
		complete = complete || at == "remove journal"
		next := fiveFiles(t, dir, "next")
		next.replaces = []string{"page-*.txt"}
		if err := next.commit(); err != nil || !all(contents(t, dir), "next") {
			t.Errorf("killed before %s: the next run leaves %v, %v", at, contents(t, dir), err)
		}
		if at == "done" {
			break
		}
	}
	if len(sawNew) != 6 {
		t.Errorf("killed with so many new files: %v, want 0 to 5", sawNew)
	}
}

// What somebody has changed since the run was killed is left alone.
func TestTakingBackLeavesLaterWork(t *testing.T) {
	dir := t.TempDir()
	if err := fiveFiles(t, dir, "old").commit(); err != nil {
		t.Fatal(err)
	}
	for change := 0; killedBefore(t, dir, change) != "rename f3.txt"; change++ {
	}
	if err := os.WriteFile(filepath.Join(dir, "f1.txt"), []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"f0.txt": "old", "f1.txt": "mine", "f2.txt": "old", "f3.txt": "old", "f4.txt": "old"}
	if diff := cmp.Diff(want, recovered(t, dir)); diff != "" {
		t.Error(diff)
	}
}

// Folders that only look like ours stay.
func TestOtherHiddenFoldersStay(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, ".fusewright-notes"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := fiveFiles(t, dir, "new").commit(); err != nil {
		t.Fatal(err)
	}
	if _, there := contents(t, dir)[".fusewright-notes"]; !there {
		t.Error("removed")
	}
}

// Runs at once in one folder wait for each other: the set is that of one of them.
func TestRunsAtOnce(t *testing.T) {
	dir := t.TempDir()
	var group sync.WaitGroup
	for i := range 8 {
		o := fiveFiles(t, dir, strconv.Itoa(i))
		group.Go(func() {
			if err := o.commit(); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	if found := contents(t, dir); !all(found, found["f0.txt"]) {
		t.Errorf("%v", found)
	}
}

// A run does not touch the hidden folder of one that is still at work.
func TestARunWaitsForTheFolder(t *testing.T) {
	dir := t.TempDir()
	reached, goOn := make(chan bool), make(chan bool)
	first, ended := fiveFiles(t, dir, "first"), make(chan error)
	first.before = func(what string) error {
		if what == "rename f2.txt" {
			reached <- true
			<-goOn
		}
		return nil
	}
	go func() { ended <- first.commit() }()
	<-reached
	if handle, err := tryLock(dir); !errors.Is(err, errLocked) {
		t.Errorf("the folder is free: %v, %v", handle, err)
	}
	second := fiveFiles(t, dir, "second")
	go func() { ended <- second.commit() }()
	goOn <- true
	if err := errors.Join(<-ended, <-ended); err != nil {
		t.Error(err)
	}
	if found := contents(t, dir); !all(found, "second") {
		t.Errorf("%v", found)
	}
}
