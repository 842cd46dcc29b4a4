//go:build unix

package main

import (
	"io/fs"
	"os"
	"syscall"
)

// owner is whose a file is, and how many names it has.
type owner struct{ user, group, names int }

func ownerOf(info fs.FileInfo) owner {
	s, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return owner{os.Geteuid(), os.Getegid(), 1}
	}
	return owner{int(s.Uid), int(s.Gid), int(s.Nlink)}
}

// keep gives a new file to the owner and the group; false when that may not be.
// Only root may give files to others; members may give them to a group.
func (o owner) keep(path string) bool {
	info, err := os.Lstat(path)
	if err != nil {
		return false
	}
	if now := ownerOf(info); now.user == o.user && now.group == o.group {
		return true
	}
	if os.Lchown(path, o.user, o.group) == nil {
		return true
	}
	os.Lchown(path, -1, o.group) // the group at least, where it may be
	return false
}
