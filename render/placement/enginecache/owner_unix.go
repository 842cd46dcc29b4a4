//go:build unix

package enginecache

import (
	"io/fs"
	"os"
	"syscall"
)

// ownedAlone tells whether the file belongs to this user and no other can write it.
func ownedAlone(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && int(stat.Uid) == os.Getuid() && info.Mode().Perm()&0o022 == 0
}
