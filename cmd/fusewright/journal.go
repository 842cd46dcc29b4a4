package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	journalName   = "journal"
	journalFormat = 1
	// maxJournalBytes is far beyond the names of any set of files.
	maxJournalBytes = 4 << 20
)

// journal says what a run was putting in place. While it stands, the set is not
// complete.
type journal struct {
	Format  int           `json:"fusewright_journal"`
	Files   []journalFile `json:"files"`
	Removed []string      `json:"removed,omitempty"` // files of an earlier run that go
}

// journalFile is one file of the set.
type journalFile struct {
	Name string `json:"name"`
	Sum  string `json:"sha256"` // of the new file
	Was  bool   `json:"was"`    // there was a file, which is kept
}

// single tells that the set is one file, which one rename puts in place.
func (j *journal) single() bool { return len(j.Files) == 1 && len(j.Removed) == 0 }

func sumOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

// writeJournal writes the journal, whole under its name or not at all.
func (s *stage) writeJournal(j *journal) error {
	data, err := json.Marshal(j)
	if err != nil {
		return err
	}
	part := s.in("", journalName+".part")
	err = s.change("write journal", func() error { return errors.Join(writeNew(part, data, 0o644), syncFile(part)) })
	if err != nil {
		return withoutPath(err)
	}
	err = s.change("rename journal", func() error { return os.Rename(part, s.in("", journalName)) })
	if err != nil {
		return err
	}
	s.journal = j
	return s.syncAll(s.path)
}

// removeJournal marks the set as complete, or as taken back.
func (s *stage) removeJournal() error {
	err := s.change("remove journal", func() error { return os.Remove(s.in("", journalName)) })
	if err != nil {
		return err
	}
	s.journal = nil
	s.syncAll(s.path) // if it fails and the power goes, the set is taken back: whole all the same
	return nil
}

// readJournal reads the journal of a run that was stopped; nil when it was
// stopped before the first file was replaced or after the last. Anybody can put a
// file of that name there: one that is not as this program writes it is not acted
// on, and neither is one that names what no set holds.
func readJournal(path string) (*journal, error) {
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, err
	case !info.Mode().IsRegular() || info.Size() > maxJournalBytes:
		return nil, fmt.Errorf("%s is no journal of this program", path)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return parseJournal(path, data)
}

// parseJournal takes nothing that names a file outside the folder, or one that is
// of no set.
func parseJournal(path string, data []byte) (*journal, error) {
	var j journal
	if err := json.Unmarshal(data, &j); err != nil || j.Format != journalFormat {
		return nil, fmt.Errorf("%s is no journal of this program", path)
	}
	names := slices.Clone(j.Removed)
	for _, f := range j.Files {
		names = append(names, f.Name)
	}
	for _, name := range names {
		if !isPlainName(name) {
			return nil, fmt.Errorf("%s names %q, which is no plain file name", path, name)
		}
		if !slices.Contains(setEndings, filepath.Ext(name)) {
			return nil, fmt.Errorf("%s names %q, which is no file of a set", path, name)
		}
	}
	return &j, nil
}

// setEndings are those of all files that come in sets. A design is none.
var setEndings = []string{".csv", ".dxf", ".html", ".json", ".pdf", ".png", ".svg", ".txt"}

// takeBack puts the previous files back, the last one first. It may be stopped
// and begun again. A file that somebody has changed since the stop stays: only
// what the stopped run put there is replaced.
func (s *stage) takeBack() error {
	for _, f := range slices.Backward(s.journal.Files) {
		sum, err := sumOfFile(s.target(f.Name))
		if err != nil {
			return err
		}
		if sum == "" || sum != f.Sum {
			continue // not put there yet, or not ours any more
		}
		if err := s.putBack(f.Name, f.Was); err != nil {
			return err
		}
	}
	for _, name := range s.journal.Removed {
		if _, err := os.Lstat(s.target(name)); errors.Is(err, fs.ErrNotExist) {
			if err := s.putBack(name, true); err != nil {
				return err
			}
		}
	}
	if err := s.syncAll(s.dir); err != nil {
		return err
	}
	return s.removeJournal()
}

// putBack puts one kept file back, or removes the one that is new.
func (s *stage) putBack(name string, was bool) error {
	if !was {
		return s.change("take away "+name, func() error { return os.Remove(s.target(name)) })
	}
	kept := s.in(keptFolder, name)
	if folder, err := os.Lstat(s.in(keptFolder, "")); err != nil || !folder.IsDir() {
		return fmt.Errorf("%s is no folder of this program", s.in(keptFolder, ""))
	}
	switch info, err := os.Lstat(kept); {
	case errors.Is(err, fs.ErrNotExist):
		return nil // put back already, and the same as the new one
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is no file", kept)
	}
	return s.change("put back "+name, func() error { return os.Rename(kept, s.target(name)) })
}

// tidyUp takes back what stopped runs left in the folder and removes their hidden
// folders. The folder must be locked, so that none of them is still running.
func (o *outputs) tidyUp() error {
	entries, err := os.ReadDir(o.dir)
	if err != nil {
		return plainPathError(err)
	}
	for _, e := range entries {
		if !e.IsDir() || !isStage(e.Name()) {
			continue
		}
		s := &stage{dir: o.dir, path: filepath.Join(o.dir, e.Name()), before: o.before}
		if err := s.tidyUp(); err != nil {
			return fmt.Errorf("%s is left of a run that was stopped, and cannot be taken back: %w (look into it, and remove it by hand)", s.path, err)
		}
	}
	return nil
}

func (s *stage) tidyUp() (err error) {
	if s.journal, err = readJournal(s.in("", journalName)); err != nil {
		return err
	}
	if s.journal != nil {
		if err := s.takeBack(); err != nil {
			return err
		}
	}
	return s.change("remove stage", func() error { s.remove(); return nil })
}

// remove removes the hidden folder with what this program puts into it. If there
// is anything else it stays: it does no harm, and is somebody's.
func (s *stage) remove() {
	names := []string{freshFolder, keptFolder, journalName + ".part"}
	for _, name := range names {
		os.RemoveAll(s.in("", name)) // a link goes, not what it leads to
	}
	os.Remove(s.path)
}

// isStage tells whether a name is one that MkdirTemp gives to hidden folders.
func isStage(name string) bool {
	number, begins := strings.CutPrefix(name, strings.TrimSuffix(stagePattern, "*"))
	return begins && number != "" && strings.Trim(number, "0123456789") == ""
}
