package live

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// settling is how long a file is left in peace after a change: an editor writes it in
// several steps, or puts a new one in its place.
const settling = 10 * time.Millisecond

// Watch tells of changes to files until the context ends. It is their folders that are
// watched, because an editor that saves by renaming leaves the old file behind; of a link
// also the folder of what it leads to, and to what it leads from then on when it is changed, be
// it the file's own or that of a folder above it.
func Watch(ctx context.Context, files []string) (<-chan struct{}, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	ours := map[string]bool{}
	look := func() error {
		clear(ours)
		for _, f := range files {
			for _, path := range behind(f) {
				ours[path] = true
				if err := w.Add(filepath.Dir(path)); err != nil {
					return err
				}
			}
		}
		return nil
	}
	if err := look(); err != nil {
		w.Close()
		return nil, err
	}
	changes := make(chan struct{}, 1)
	go func() {
		defer w.Close()
		settled := time.NewTimer(0)
		<-settled.C
		for {
			select {
			case <-ctx.Done():
				return
			case e, open := <-w.Events:
				if !open {
					return
				}
				if ours[filepath.Clean(e.Name)] && !e.Has(fsnotify.Chmod) {
					settled.Reset(settling)
				}
			case <-w.Errors: // events were lost: look
				settled.Reset(settling)
			case <-settled.C:
				_ = look() // what cannot be watched now may be, once a link is put right
				select {
				case changes <- struct{}{}:
				default:
				}
			}
		}
	}()
	return changes, nil
}

// mostLinks is how many links are followed, one to the next.
const mostLinks = 16

// behind are the paths of the links that lead to a file, its own and those of the folders above
// it, and at last that of the file, each in its own folder.
func behind(file string) (paths []string) {
	at, err := filepath.Abs(file)
	if err != nil {
		return []string{file}
	}
	split := func(path string) (root string, names []string) {
		volume := filepath.VolumeName(path)
		return volume + string(filepath.Separator), strings.Split(filepath.ToSlash(path[len(volume):]), "/")
	}
	at, rest := split(at)
	for len(rest) > 0 && len(paths) < mostLinks {
		next := filepath.Join(at, rest[0]) // at has no link in it: ".." is the folder above
		rest = rest[1:]
		to, err := os.Readlink(next)
		if err != nil {
			at = next
			continue
		}
		paths = append(paths, next)
		root, names := split(to)
		if filepath.IsAbs(to) {
			at = root
		}
		rest = append(names, rest...)
	}
	return append(paths, at)
}

// Contents tells one state of files from another; what is no plain file, which might be
// read once only, counts as unchanged.
func Contents(files []string) string {
	all := sha256.New()
	for _, file := range files {
		one := sha256.New()
		if info, err := os.Stat(file); err != nil {
			io.WriteString(one, "gone")
		} else if info.Mode().IsRegular() {
			if f, err := os.Open(file); err == nil {
				io.Copy(one, f)
				f.Close()
			}
			io.WriteString(one, " there")
		}
		fmt.Fprintf(all, "%x\n", one.Sum(nil))
	}
	return hex.EncodeToString(all.Sum(nil))
}
