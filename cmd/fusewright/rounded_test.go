package main

import (
	"bytes"
	"flag"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var everyText = flag.Bool("every-text", false, "look for unrounded numbers in the texts of every design")

// numbers are those of a text. Near a limit figures get the digits that tell them from it, mostDigits at the most.
var numbers = regexp.MustCompile(`\b\d+(\.\d+)?\b`)

const mostDigits = 6

// digitsOf counts what a number says, without the zeros before it.
func digitsOf(number string) int {
	return len(strings.TrimLeft(strings.ReplaceAll(number, ".", ""), "0"))
}

// TestTextsAreRounded: what check, size, budget, ride and study print has no unrounded number, such as 12.300000001. The
// demos and every hundredth design of the corpora are read; all of them with -every-text.
func TestTextsAreRounded(t *testing.T) {
	for number, want := range map[string]int{"12.3": 3, "12.300000001": 11, "0.00832": 3, "1000.3": 5, "0.1234567": 7} {
		if got := digitsOf(number); got != want {
			t.Errorf("%s has %d digits, want %d", number, got, want)
		}
	}
	var files []string
	for _, glob := range []string{"../../testdata/corpus/*/*.yaml", "../../testdata/corpus-*/*.yaml", "../../testdata/corpus-*/*/*.yaml"} {
		list, err := filepath.Glob(glob)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, list...)
	}
	demos, err := filepath.Glob("../../designs/*.yaml")
	if err != nil || len(demos) < 4 || len(files) < 250 {
		t.Fatal(len(demos), len(files), err)
	}
	for i, file := range append(demos, files...) {
		if i >= len(demos) && i%100 != 0 && !*everyText {
			continue
		}
		for _, args := range [][]string{{"check", "-v", file}, {"size", file}, {"budget", file}, {"ride", file}, {"study", file}} {
			var stdout, stderr bytes.Buffer
			if code := run(args, strings.NewReader(""), &stdout, &stderr); code > exitFindings && args[0] != "ride" && args[0] != "size" || code < 0 {
				t.Errorf("%q: exit code %d, %s", args, code, &stderr)
			}
			for line := range strings.Lines(stdout.String()) {
				for _, number := range numbers.FindAllString(line, -1) {
					if digitsOf(number) > mostDigits {
						t.Errorf("%q: %s in %q", args, number, strings.TrimSpace(line))
					}
				}
			}
		}
	}
}
