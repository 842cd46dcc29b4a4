package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// fileSet is what one commit does to a folder.
type fileSet struct {
	files   []*output // put there
	removed []string  // of an earlier run, taken away
}

// planned finds what goes of earlier runs, and adds the new list of what is
// written. Sets that nothing can become stale of have no list, and neither has a
// single file in a folder without one.
func (o *outputs) planned() (fileSet, error) {
	set := fileSet{files: o.files}
	if len(o.replaces) == 0 {
		return set, nil
	}
	list, damaged, err := readWritten(o.dir)
	if err != nil {
		return set, err
	}
	if damaged {
		o.warnings = append(o.warnings, filepath.Join(o.dir, writtenName)+" is damaged and is written anew")
	}
	if set.removed, err = o.stale(list); err != nil {
		return set, err
	}
	if list == nil && !damaged && len(o.files) == 1 {
		return set, nil
	}
	now := written{}
	for name, sum := range list {
		if _, err := os.Lstat(filepath.Join(o.dir, name)); err == nil && !slices.Contains(set.removed, name) {
			now[name] = sum // of another set in the same folder
		}
	}
	for _, f := range o.files {
		now[f.name] = sumOf(f.data)
	}
	set.files = append(slices.Clip(set.files), &output{name: writtenName, data: now.text()})
	return set, nil
}

// stale lists the replaced files that are there, are not made now, and may go. It
// warns of those that stay beside the fresh ones.
func (o *outputs) stale(list written) ([]string, error) {
	entries, err := os.ReadDir(o.dir)
	if err != nil {
		return nil, plainPathError(err)
	}
	var stale []string
	for _, e := range entries {
		made := slices.ContainsFunc(o.files, func(f *output) bool { return f.name == e.Name() })
		if made || !e.Type().IsRegular() || !o.isReplaced(e.Name()) {
			continue
		}
		why, err := o.whyKept(e.Name(), list)
		switch {
		case err != nil:
			return nil, err
		case why == "":
			stale = append(stale, e.Name())
		default:
			o.warnings = append(o.warnings, filepath.Join(o.dir, e.Name())+" is none of the files made now, and stays: "+why)
		}
	}
	return stale, nil
}

// whyKept is why a stale file is left alone; "" when an earlier run wrote it as
// it stands.
func (o *outputs) whyKept(name string, list written) (string, error) {
	path := filepath.Join(o.dir, name)
	info, err := os.Lstat(path)
	if err != nil {
		return "", plainPathError(err)
	}
	was, listed := list[name]
	switch {
	case list == nil:
		return "the folder has no list of what was written there", nil
	case !listed:
		return "no earlier run wrote it", nil
	case isReadOnly(info):
		return "it is read-only", nil
	}
	sum, err := sumOfFile(path)
	if err == nil && sum != was {
		return "it was changed since it was written", nil
	}
	return "", err
}

func (o *outputs) isReplaced(file string) bool {
	return slices.ContainsFunc(o.replaces, func(pattern string) bool { return replacedBy(pattern, file) })
}

// replacedBy tells whether a file is the one named, or one of those numbered.
func replacedBy(pattern, file string) bool {
	at := strings.LastIndex(pattern, "-*.")
	if at < 0 {
		return file == pattern
	}
	number, begins := strings.CutPrefix(file, pattern[:at+1])
	number, ends := strings.CutSuffix(number, pattern[at+2:])
	return begins && ends && number != "" && strings.Trim(number, "0123456789") == ""
}
