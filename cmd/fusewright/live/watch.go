package live

import (
	"context"
	"path/filepath"
	"time"

	"github.com/fsnotify/fsnotify"
)

// settling is how long a file is left in peace after a change: an editor writes it in
// several steps, or puts a new one in its place.
const settling = 10 * time.Millisecond

// Watch tells of changes to files until the context ends. It is their folders that are
// watched, because an editor that saves by renaming leaves the old file behind.
func Watch(ctx context.Context, files []string) (<-chan struct{}, error) {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	ours := map[string]bool{}
	for _, f := range files {
		path, err := filepath.Abs(f)
		if err != nil {
			w.Close()
			return nil, err
		}
		ours[path] = true
		if err := w.Add(filepath.Dir(path)); err != nil {
			w.Close()
			return nil, err
		}
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
				select {
				case changes <- struct{}{}:
				default:
				}
			}
		}
	}()
	return changes, nil
}
