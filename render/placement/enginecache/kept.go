package enginecache

import (
	"crypto/sha256"
	"encoding/hex"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

const (
	engineFolder = "go-graphviz" // the engine's name for it under TMPDIR
	sumSuffix    = ".sha256"     // of the file with a file's checksum
	// maxCodeBytes is the size above which a file cannot be the engine's code,
	// which takes some 6 MB.
	maxCodeBytes = 64 << 20
	// roomBytes must be free before the engine is asked to keep its code.
	roomBytes = 12 << 20
	// leftAfter is the age at which a half-written file belongs to no running
	// program any more.
	leftAfter = time.Hour
)

// Prepare makes dir, and the engine's own folder inside it, for this user only,
// removes what is not code that an earlier run recorded, and lists what is. The
// folder must not be used (ok is false) when it or what is in it is not safe: no
// real folder, another user's, or open to others; when something cannot be
// removed; or when no code is kept and none could be written.
func Prepare(dir string) (known []string, ok bool) {
	inner := filepath.Join(dir, engineFolder)
	for _, d := range []string{filepath.Dir(dir), dir, inner} {
		if os.MkdirAll(d, 0o700) != nil || !privateFolder(d) {
			return nil, false
		}
	}
	versions, err := os.ReadDir(inner)
	if err != nil {
		return nil, false
	}
	for _, v := range versions {
		if known, ok = sweep(filepath.Join(inner, v.Name()), known); !ok {
			return nil, false
		}
	}
	return known, len(known) > 0 || writable(inner)
}

// sweep adds the recorded code in one of the engine's folders to what is known
// and removes the rest; ok is false when something has to stay that the engine
// must not see.
func sweep(folder string, known []string) (_ []string, ok bool) {
	info, err := os.Lstat(folder)
	if err != nil || !info.IsDir() { // room that a killed run has tried, or a link
		return known, os.Remove(folder) == nil
	}
	files, err := os.ReadDir(folder)
	if err != nil || !privateFolder(folder) {
		return known, false
	}
	for _, f := range files {
		path := filepath.Join(folder, f.Name())
		switch {
		case strings.HasSuffix(path, sumSuffix) || beingWritten(f):
		case recorded(path):
			known = append(known, path)
		case os.RemoveAll(path) != nil || os.RemoveAll(path+sumSuffix) != nil:
			return known, false
		}
	}
	return known, true
}

// beingWritten tells whether another run may be at work on a file: the engine
// writes beside the place and renames.
func beingWritten(f fs.DirEntry) bool {
	info, err := f.Info()
	return strings.HasSuffix(f.Name(), ".tmp") && err == nil && info.Mode().IsRegular() &&
		time.Since(info.ModTime()).Abs() < leftAfter
}

// recorded tells whether a file has the checksum noted beside it.
func recorded(path string) bool {
	f, err := openOwn(path + sumSuffix)
	if err != nil {
		return false
	}
	defer f.Close()
	noted, err := io.ReadAll(io.LimitReader(f, 4*sha256.Size+1))
	return err == nil && string(noted) == checksum(path)
}

// checksum is the SHA-256 of each half of a file of this user in hexadecimal; ""
// when it cannot be read or cannot be code. Every start waits for it: two halves
// are done at once.
func checksum(path string) string {
	f, err := openOwn(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || info.Size() == 0 || info.Size() > maxCodeBytes {
		return ""
	}
	half := info.Size() / 2
	var first, second string
	var both sync.WaitGroup
	both.Go(func() { first = sumOf(f, 0, half) })
	second = sumOf(f, half, info.Size()-half)
	both.Wait()
	if first == "" || second == "" {
		return ""
	}
	return first + second
}

// sumOf is the SHA-256 of length bytes of a file; "" when they cannot be read.
func sumOf(f *os.File, from, length int64) string {
	sum := sha256.New()
	if n, err := io.Copy(sum, io.NewSectionReader(f, from, length)); err != nil || n != length {
		return ""
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// record notes the checksum of code that was not known before. A run that is
// killed before, or cannot write the note, leaves code that the next one removes.
func record(inner string, known []string) {
	files, _ := filepath.Glob(filepath.Join(inner, "*", "*"))
	for _, path := range files {
		if strings.Contains(filepath.Base(path), ".") || slices.Contains(known, path) { // a note, or half-written
			continue
		}
		if sum := checksum(path); sum != "" {
			note(path+sumSuffix, sum)
		}
	}
}

// note writes a checksum in one step.
func note(path, sum string) {
	f, err := os.CreateTemp(filepath.Dir(path), "note.*.tmp")
	if err != nil {
		return
	}
	_, err = f.WriteString(sum)
	if f.Close() != nil || err != nil || os.Rename(f.Name(), path) != nil {
		os.Remove(f.Name())
	}
}

// writable proves by trying that code can be written into a folder: the engine
// does not stand a read-only folder, a full disk or a limit of file sizes. What
// it writes is not all zero, which some disks would not store.
func writable(folder string) bool {
	f, err := os.CreateTemp(folder, "room.*.tmp")
	if err != nil {
		return false
	}
	defer os.Remove(f.Name())
	block := make([]byte, 1<<20)
	for i := range block {
		block[i] = byte(i*i>>8 ^ i)
	}
	for n := 0; n < roomBytes && err == nil; n += len(block) {
		_, err = f.Write(block)
	}
	return f.Close() == nil && err == nil && manyFiles(folder)
}

// manyFiles proves that there is room for the folder and the files that the engine
// and the note beside them take: a disk can have room left and no file.
func manyFiles(folder string) bool {
	inner, err := os.MkdirTemp(folder, "room.*.tmp")
	if err != nil {
		return false
	}
	defer os.RemoveAll(inner)
	for n := range 4 {
		if os.WriteFile(filepath.Join(inner, strconv.Itoa(n)), []byte("room"), 0o600) != nil {
			return false
		}
	}
	return true
}

// privateFolder tells whether path is a real folder that this user alone can use.
func privateFolder(path string) bool {
	info, err := os.Lstat(path)
	return err == nil && info.IsDir() && ownedAlone(info) && info.Mode().Perm()&openToOthers == 0
}

// openOwn opens a regular file of this user that no other can write, following
// no link and waiting for nothing.
func openOwn(path string) (*os.File, error) {
	f, err := os.OpenFile(path, os.O_RDONLY|openFlags, 0)
	if err != nil {
		return nil, err
	}
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() || !ownedAlone(info) {
		f.Close()
		return nil, fs.ErrInvalid
	}
	return f, nil
}
