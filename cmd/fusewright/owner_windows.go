package main

import "io/fs"

// owner is how many names a file has. Owners are not kept here: a new file takes
// its rights from its folder.
type owner struct{ names int }

func ownerOf(fs.FileInfo) owner { return owner{1} }

func (owner) keep(string) bool { return true }
