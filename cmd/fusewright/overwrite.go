package main

import (
	"fmt"
	"os"
	"slices"

	"github.com/alecthomas/kong"
)

// refuseOverwriting refuses a command line that names one file to read and to
// write. Files to write are the flags of type "path"; files to read are the
// positional arguments that are files, and the libraries. What changes a design
// on purpose has no such flag.
func refuseOverwriting(ctx *kong.Context) error {
	node := ctx.Selected()
	if node == nil {
		return nil
	}
	var read, written []string
	for _, p := range node.Positional {
		if slices.Contains(fileArgs, p.Name) {
			read = append(read, p.Target.String())
		}
	}
	for _, f := range ctx.Flags() {
		switch f.Tag.Type {
		case "path":
			written = append(written, f.Target.String())
		case "existingfile":
			if list, ok := f.Target.Interface().([]string); ok {
				read = append(read, list...)
			}
		}
	}
	for _, out := range written {
		for _, in := range read {
			if sameFile(in, out) {
				return fmt.Errorf("%s is read by this command and would be written over (expected another name to write to)", in)
			}
		}
	}
	return nil
}

// sameFile tells whether two names lead to one regular file.
func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil || !one.Mode().IsRegular() {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}
