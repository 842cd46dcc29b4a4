package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/library"
)

// alarms are the dangers and faults of a design.
func alarms(file string) ([]string, error) {
	src, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	d, err := design.Read(file, src, library.Default())
	if err != nil {
		return nil, err
	}
	r, err := harness.Assess(d)
	if err != nil {
		return nil, err
	}
	return badOf(r.Findings), nil
}

// printDesigns prints which of the designs raise a danger or a fault.
func printDesigns(w io.Writer, folder string, verbose bool) error {
	files, err := filepath.Glob(folder + "/*.yaml")
	if err != nil {
		return err
	}
	raised := 0
	for _, file := range files {
		bad, err := alarms(file)
		if err != nil {
			return err
		}
		if len(bad) > 0 {
			raised++
		}
		if verbose || len(bad) > 0 {
			fmt.Fprintf(w, "%s\n", filepath.Base(file))
		}
		for _, b := range bad {
			fmt.Fprintf(w, "    %.220s\n", b)
		}
	}
	fmt.Fprintf(w, "%d of %d designs raise a danger or a fault\n", raised, len(files))
	return nil
}
