package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
)

// endsIn refuses a file to write, given by an option, whose ending promises a
// kind that the command does not write; no file is fine.
func endsIn(option, file string, endings ...string) error {
	if file == "" || slices.Contains(endings, filepath.Ext(file)) {
		return nil
	}
	return fmt.Errorf("%s %s has no known ending (expected %s)", option, filepath.Base(file), strings.Join(endings, " or "))
}
