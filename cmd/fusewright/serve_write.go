package main

import "bytes"

// write puts a text of the design in place of the file, whole or not at all.
func (f *followed) write(text []byte) error {
	return writeFile(f.io, f.arg.Design, func(b *bytes.Buffer) error { b.Write(text); return nil })
}
