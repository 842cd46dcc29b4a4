package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the page")

// TestMain runs in the project's top folder, as the command does.
func TestMain(m *testing.M) {
	if err := os.Chdir("../../.."); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}

// TestUsualJobs: wires and fuses that an experienced fitter accepts, and nothing
// left to object.
func TestUsualJobs(t *testing.T) {
	jobs, err := usual("testdata/trade/answers.csv")
	if err != nil || len(jobs) != 20 {
		t.Fatalf("%d jobs, %v", len(jobs), err)
	}
	for _, j := range jobs {
		a, err := j.answer()
		if err != nil {
			t.Fatal(err)
		}
		if !a.met() {
			t.Errorf("%s: %s", j.ID, a)
		}
	}
}

// TestPublished: each answer outside what is printed has its reason, and none that
// lies inside has one.
func TestPublished(t *testing.T) {
	jobs, err := published("testdata/trade")
	if err != nil {
		t.Fatal(err)
	}
	why, err := reasons("testdata/trade/outliers.csv")
	if err != nil {
		t.Fatal(err)
	}
	met := 0
	for _, j := range jobs {
		a, err := j.answer()
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case a.met():
			met++
			if why[j.ID] != "" {
				t.Errorf("%s is met and has a reason for lying outside", j.ID)
			}
		case why[j.ID] == "":
			t.Errorf("no reason for %s: %s", j.ID, a)
		}
	}
	if met < leastPublished {
		t.Errorf("%d of %d published answers met, at least %d were", met, len(jobs), leastPublished)
	}
}

// leastPublished is how many of the published answers have been met.
const leastPublished = 56

// TestHandDesigns: of thirty clean designs at most three raise a danger or a fault.
func TestHandDesigns(t *testing.T) {
	files, err := filepath.Glob(handDesigns + "/*.yaml")
	if err != nil || len(files) != 30 {
		t.Fatalf("%d designs, %v", len(files), err)
	}
	raised := 0
	for _, file := range files {
		bad, err := alarms(file)
		if err != nil {
			t.Fatal(err)
		}
		if len(bad) > 0 {
			raised++
			t.Logf("%s: %q", file, bad)
		}
	}
	if raised > 3 {
		t.Errorf("%d of 30 raise a danger or a fault", raised)
	}
}

// TestPage: docs/trade.md is what the program writes.
func TestPage(t *testing.T) {
	var b bytes.Buffer
	if err := writePage(&b, "testdata/trade"); err != nil {
		t.Fatal(err)
	}
	const path = "docs/trade.md"
	if *update {
		if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	was, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(was, b.Bytes()) {
		t.Error("docs/trade.md is stale: rewrite it with -update and look at the difference")
	}
}
