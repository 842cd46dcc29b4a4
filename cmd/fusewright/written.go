package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// A folder of outputs has a list of what was written there, so that a later run
// removes what has become stale and nothing else: a file that is not in the list,
// or is not as the list has it, is the user's. The form is that of checksum
// programs, one "SHA-256  name" a line.
const (
	writtenName  = ".fusewright-files.txt"
	writtenLead  = "# Written by fusewright, which may remove files that stand here unchanged. To compare: sha256sum -c"
	maxListBytes = 4 << 20 // far beyond the names of any folder
)

// written is the list: SHA-256 by file name.
type written map[string]string

// readWritten reads the list of a folder; nil where there is none, or what stands
// there is damaged, which is told.
func readWritten(dir string) (list written, damaged bool, err error) {
	path := filepath.Join(dir, writtenName)
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, false, nil
	case err != nil:
		return nil, false, plainPathError(err)
	case !info.Mode().IsRegular():
		return nil, false, fmt.Errorf("%s is no file (expected the list of what was written here; remove it)", path)
	case info.Size() > maxListBytes:
		return nil, true, nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, false, plainPathError(err)
	}
	list, ok := parseWritten(string(data))
	return list, !ok, nil
}

func parseWritten(text string) (written, bool) {
	lead, rest, _ := strings.Cut(text, "\n")
	if lead != writtenLead || !strings.HasSuffix(text, "\n") {
		return nil, false
	}
	list := written{}
	for line := range strings.Lines(rest) {
		sum, name, found := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		if !found || len(sum) != hex.EncodedLen(sha256.Size) || !isPlainName(name) {
			return nil, false
		}
		list[name] = sum
	}
	return list, true
}

// text is the list as it stands in its file.
func (w written) text() []byte {
	var b bytes.Buffer
	b.WriteString(writtenLead + "\n")
	for _, name := range slices.Sorted(maps.Keys(w)) {
		if !strings.ContainsAny(name, "\n\\") { // no line of the list; such a file is never removed
			fmt.Fprintf(&b, "%s  %s\n", w[name], name)
		}
	}
	return b.Bytes()
}

// isPlainName tells whether a name is one of a file in the folder itself.
func isPlainName(name string) bool {
	return name != "." && name == filepath.Base(name) && filepath.IsLocal(name)
}

// sumOfFile is the SHA-256 of a regular file; "" where there is something else,
// which is not opened: a pipe would keep its reader waiting.
func sumOfFile(path string) (string, error) {
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) || err == nil && !info.Mode().IsRegular() {
		return "", nil
	}
	if err != nil {
		return "", plainPathError(err)
	}
	f, err := os.Open(path)
	if err != nil {
		return "", plainPathError(err)
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return "", plainPathError(err)
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}
