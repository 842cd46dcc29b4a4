//go:build unix

package enginecache

import (
	"io/fs"
	"os"
	"syscall"
)

const (
	tempVariable = "TMPDIR"
	openFlags    = syscall.O_NOFOLLOW | syscall.O_NONBLOCK
	openToOthers = 0o077
)

// ownedAlone tells whether the file belongs to this user and no other can write it.
func ownedAlone(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && int(stat.Uid) == os.Geteuid() && info.Mode().Perm()&0o022 == 0
}
