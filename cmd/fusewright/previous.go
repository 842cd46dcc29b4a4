package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// previous is a file that will be replaced: what its successor keeps of it.
type previous struct {
	there bool
	mode  fs.FileMode // permissions
	owner owner
}

// previousAt looks at what stands where a file is to be put. What is no file that
// may be written is refused, to root as well: who took the right to write from a
// file wants it to stay.
func previousAt(target string) (previous, error) {
	info, err := os.Lstat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return previous{}, nil
	case err != nil:
		return previous{}, plainPathError(err)
	case info.IsDir():
		return previous{}, fmt.Errorf("%s is a folder", target)
	case info.Mode()&fs.ModeSymlink != 0:
		return previous{}, fmt.Errorf("%s is a link, and files that come together are not put through links "+
			"(expected a file; remove the link, or choose another folder)", target)
	case !info.Mode().IsRegular():
		return previous{}, fmt.Errorf("%s is no file", target)
	case isReadOnly(info):
		return previous{}, fmt.Errorf("%s is read-only and stays as it is (expected a file that may be written)", target)
	}
	// Opening changes nothing, and tells whether this user may.
	f, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err != nil {
		return previous{}, plainPathError(err)
	}
	return previous{true, info.Mode().Perm(), ownerOf(info)}, f.Close()
}

// isReadOnly tells whether nobody may write a file.
func isReadOnly(info fs.FileInfo) bool { return info.Mode().Perm()&0o222 == 0 }

// writeLike writes a new file with the permissions and the owner of the one that
// it will replace. Lost tells that the owner or the group could not be kept.
func writeLike(path string, data []byte, was previous) (lost bool, err error) {
	if !was.there {
		return false, writeNew(path, data, 0o666) // less what the user's mask takes
	}
	if err := writeNew(path, data, 0o600); err != nil {
		return false, err
	}
	lost = !was.owner.keep(path)
	return lost, os.Chmod(path, was.mode) // last: giving a file away may change it
}

// warnings say what replacing a file does that its name does not show.
func (p previous) warnings(target string, ownerLost bool) []string {
	var list []string
	switch others := p.owner.names - 1; {
	case others == 1:
		list = append(list, target+" had a second name (a hard link): this name has the new text, the other one keeps the old")
	case others > 1:
		list = append(list, fmt.Sprintf("%s had %d other names (hard links): this name has the new text, the others keep the old", target, others))
	}
	if ownerLost {
		list = append(list, target+" belonged to another user or group, and is now yours")
	}
	return list
}
