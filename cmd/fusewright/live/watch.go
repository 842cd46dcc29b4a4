package live

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"github.com/fsnotify/fsnotify"
)

// settling is how long a file is left in peace after a change: an editor writes it in
// several steps, or puts a new one in its place.
const settling = 10 * time.Millisecond

// Watch tells of changes to files until the context ends. It is their folders that are
// watched, because an editor that saves by renaming leaves the old file behind; of a link
// also the folder of what it leads to, and to what it leads from then on when it is changed.
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

// behind are the path of a file and of all that it leads to, each in its own folder.
func behind(file string) (paths []string) {
	for range mostLinks {
		path, err := filepath.Abs(file)
		if err != nil {
			return append(paths, file)
		}
		if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
			path = filepath.Join(dir, filepath.Base(path))
		}
		paths = append(paths, path)
		to, err := os.Readlink(path)
		if err != nil {
			break
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		file = to
	}
	return paths
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
