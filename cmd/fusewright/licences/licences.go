// Package licences holds the licences of what the program is linked with, word
// for word, so that a copy of the program carries them.
package licences

import (
	"embed"
	"io/fs"
	"path"
	"strings"
)

// texts has a folder for each component, named as it is, with its files as they
// are in its source. Those of Go modules are copied and compared by the test.
//
//go:embed texts
var texts embed.FS

// Component is something that the program is linked with.
type Component struct {
	Name    string // module path, or the name of what is no module
	Terms   string // SPDX expression
	Purpose string // what it is here for
	Note    string // where its source is, where its text is from; "" = the module's own
}

// All lists the components: the language first, then modules by path, then what
// is inside a module in another form.
var All = []Component{
	{"go", "BSD-3-Clause", "the language's standard library and runtime", "the Go distribution"},
	{"github.com/alecthomas/kong", "MIT", "the command line", ""},
	{"github.com/aymanbagabas/go-udiff", "BSD-3-Clause AND MIT", "the changed lines of a text", ""},
	{"github.com/disintegration/imaging", "MIT", "pictures, for the layout engine's package", ""},
	{"github.com/flopp/go-findfont", "MIT", "fonts, for the layout engine's package", ""},
	{"github.com/fogleman/gg", "MIT", "drawing, for the layout engine's package", ""},
	{"github.com/go-fonts/liberation", "BSD-3-Clause AND OFL-1.1", "the Liberation fonts on every drawing and paper", ""},
	{"github.com/fsnotify/fsnotify", "BSD-3-Clause", "what happens to files, for the live page", ""},
	{"github.com/goccy/go-graphviz", "MIT", "the layout engine's package", ""},
	{"github.com/golang/freetype", "FTL OR GPL-2.0-or-later", "areas of pictures; fonts, for the layout engine's package; taken under the FTL", ""},
	{"github.com/jung-kurt/gofpdf", "MIT", "PDF", ""},
	{"github.com/srwiley/rasterx", "BSD-3-Clause", "lines of pictures", ""},
	{"github.com/tetratelabs/wazero", "Apache-2.0", "the runtime that the layout engine runs in", ""},
	{"golang.org/x/image", "BSD-3-Clause", "pictures and fonts", ""},
	{"golang.org/x/sys", "BSD-3-Clause", "the operating system", ""},
	{"golang.org/x/term", "BSD-3-Clause", "the terminal", ""},
	{"golang.org/x/text", "BSD-3-Clause", "text", ""},
	{"gonum.org/v1/gonum", "BSD-3-Clause", "matrices and curves", ""},
	{"gopkg.in/yaml.v3", "MIT AND Apache-2.0", "YAML", ""},
	{"rsc.io/qr", "BSD-3-Clause", "the code of an address, for the camera of a phone", ""},
	{"graphviz", "EPL-1.0", "the layout engine, as WebAssembly in github.com/goccy/go-graphviz",
		"source: https://graphviz.org/download/source, version 12.1.2; the licence as Debian's package graphviz has it"},
	{"expat", "MIT", "XML, in the layout engine",
		"source: https://libexpat.github.io, version 2.6.3; the licence as Debian's package libexpat1 has it"},
	{"wasi-libc", "MIT AND Apache-2.0 WITH LLVM-exception AND BSD-2-Clause", "the C library, in the layout engine",
		"source: https://github.com/WebAssembly/wasi-libc, of WASI SDK 24; the parts and their licences as Debian's package wasi-libc has them, the terms from memory"},
}

// Text is one file of a component.
type Text struct{ Name, Text string }

// Texts are the files of a component, by name.
func (c Component) Texts() ([]Text, error) {
	var list []Text
	root := path.Join("texts", c.Name)
	err := fs.WalkDir(texts, root, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := texts.ReadFile(p)
		list = append(list, Text{strings.TrimPrefix(p, root+"/"), string(data)})
		return err
	})
	return list, err
}
