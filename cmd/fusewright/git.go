package main

import (
	"os"
	"os/exec"
)

// quietGit is git at work on what is in the repository and nothing else: a
// repository can name programs and servers in its configuration, and reading a
// file of it must start and ask none of them. An object that a partial clone has
// not fetched is not fetched now; what is not there is said.
func quietGit(dir string, args ...string) *exec.Cmd {
	git := exec.Command("git", append([]string{"--no-pager", "--no-optional-locks", "-C", dir,
		"-c", "core.hooksPath=" + os.DevNull, "-c", "core.fsmonitor=false", "-c", "protocol.allow=never"}, args...)...)
	git.Env = append(os.Environ(), "GIT_NO_LAZY_FETCH=1", "GIT_ALLOW_PROTOCOL=none", "GIT_TERMINAL_PROMPT=0",
		"GIT_ASKPASS=", "SSH_ASKPASS=", "LC_ALL=C")
	return git
}
