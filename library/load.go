package library

import (
	"embed"
	"fmt"
	"io"
	"os"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// MaxFileBytes is the size above which a library file is refused.
const MaxFileBytes = 4 << 20

// FormatVersion is the version of library files that this program reads.
const FormatVersion = 1

//go:embed *.yaml
var embedded embed.FS

//go:generate go run -tags unprepared ./prepare

// Default is the embedded library alone, in its prepared form: the same as Load
// gives, without reading. It is shared: treat it as read-only.
var Default = sync.OnceValue(prepared)

// Load reads the embedded library and then the files at paths, in order, which
// have the same shape and add to it. A row may take the place of an earlier one
// of the same name only if it says `replaces: true`. The error is a
// problem.List with every file that cannot be read, or else every mistake of all
// files; the library is then nil.
func Load(paths ...string) (*Library, error) {
	texts, err := ReadTexts(paths...)
	if err != nil {
		return nil, err
	}
	return LoadTexts(texts...)
}

// Parse reads a library from the text of one file alone, without the embedded
// rows; file names it in messages.
func Parse(file string, src []byte) (*Library, error) {
	l := newLoading()
	l.read(file, src)
	return l.result()
}

// readLimited reads a regular file no larger than MaxFileBytes.
func readLimited(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("cannot open the library file: %w", unwrapPath(err))
	}
	defer f.Close()
	if info, err := f.Stat(); err != nil || !info.Mode().IsRegular() {
		return nil, fmt.Errorf("the library file is not a regular file")
	}
	src, err := io.ReadAll(io.LimitReader(f, MaxFileBytes+1))
	if err != nil {
		return nil, fmt.Errorf("cannot read the library file: %w", unwrapPath(err))
	}
	return src, nil
}

// unwrapPath drops the path from a file error, since the message has it already.
func unwrapPath(err error) error {
	if pe, ok := err.(*os.PathError); ok {
		return pe.Err
	}
	return err
}

// loading is the state of one Load over all its files.
type loading struct {
	lib      *Library
	problems problem.List
	names    map[string]*entry // by list and folded name
	files    []*reader         // those that are YAML, in order
}

func newLoading() *loading {
	return &loading{lib: &Library{}, names: map[string]*entry{}}
}

// result reads the lists of all files and gives the library or the problems.
func (l *loading) result() (*Library, error) {
	l.readLists()
	if err := l.problems.Err(); err != nil {
		return nil, err
	}
	return l.lib, nil
}

// reader reads one file.
type reader struct {
	*loading
	file     string
	sources  map[string]Source // the file's named sources
	found    int               // problems so far
	fallback Source            // of rows that name none
	top      *row              // the file's outermost mapping
}

func (r *reader) pos(n *yaml.Node) problem.Pos {
	return problem.Pos{File: r.file, Line: max(n.Line, 1), Col: max(n.Column, 1)}
}

// report adds a problem at a node.
func (r *reader) report(n *yaml.Node, what, expected, nearest string) {
	r.add(problem.Problem{Pos: r.pos(n), What: what, Expected: expected, Nearest: nearest})
}

// maxProblems is how many problems of one file are listed.
const maxProblems = 500

// add lists a problem, up to the limit for one file.
func (r *reader) add(p problem.Problem) {
	r.found++
	switch {
	case r.found < maxProblems:
		r.problems.Add(p)
	case r.found == maxProblems:
		r.problems.Add(problem.Problem{Pos: p.Pos, What: "further problems of this file are not listed"})
	}
}

// read takes one file in; its lists are read later, with those of all files.
func (l *loading) read(file string, src []byte) {
	r := &reader{loading: l, file: file, sources: map[string]Source{}}
	whole := &yaml.Node{Line: 1, Column: 1}
	if len(src) > MaxFileBytes {
		r.report(whole, "the file is larger than 4 MiB", "a smaller library file", "")
		return
	}
	root, what := parseYAML(src)
	if what != nil {
		whole.Line = what.Line
		r.report(whole, what.Value, "a YAML file of parts", "")
		return
	}
	if !r.plain(root) {
		return
	}
	top, ok := r.newRow(root, "the file")
	if !ok {
		return
	}
	r.heading(top)
	l.files = append(l.files, r)
}

// heading reads what is not a list: the version, the sources, and the source
// that rows fall back on.
func (r *reader) heading(top *row) {
	if v := top.get("fusewright library"); v == nil {
		top.mark("fusewright library")
		r.report(top.node, `"fusewright library" is missing`, fmt.Sprintf("`fusewright library: %d`", FormatVersion), "")
	} else if v.Value != strconv.Itoa(FormatVersion) {
		r.report(v, "unknown library format version "+describe(v), strconv.Itoa(FormatVersion), "")
	}
	r.readSources(top)
	r.fallback = r.source(top, Source{})
	r.top = top
}

// readLists reads each list over all files, so that rows may refer to a list
// of any other file.
func (l *loading) readLists() {
	for _, list := range lists {
		for _, r := range l.files {
			for _, n := range r.top.list(list.key) {
				if m, ok := r.newRow(n, "an entry of \""+list.key+"\""); ok {
					list.read(m, r.source(m, r.fallback))
					m.finish()
				}
			}
		}
	}
	for _, r := range l.files {
		r.top.finish()
	}
}

// yamlLine finds the line number in an error of the YAML package.
var yamlLine = regexp.MustCompile(`line ([0-9]+): `)

// parseYAML gives the one document of a file, or a node whose Value says what
// is wrong and whose Line says where.
func parseYAML(src []byte) (root, wrong *yaml.Node) {
	fail := func(line int, what string) (*yaml.Node, *yaml.Node) {
		return nil, &yaml.Node{Line: max(line, 1), Value: what}
	}
	defer func() {
		// The YAML package panics on some inputs that are no YAML at all.
		if p := recover(); p != nil {
			root, wrong = fail(1, "not YAML")
		}
	}()
	dec := yaml.NewDecoder(strings.NewReader(string(src)))
	var doc yaml.Node
	if err := dec.Decode(&doc); err == io.EOF {
		return fail(1, "the file is empty")
	} else if err != nil {
		line := 1
		text := strings.TrimPrefix(err.Error(), "yaml: ")
		if m := yamlLine.FindStringSubmatch(text); m != nil {
			line, _ = strconv.Atoi(m[1])
			text = strings.Replace(text, m[0], "", 1)
		}
		return fail(line, "not YAML: "+text)
	}
	if doc.Kind != yaml.DocumentNode || len(doc.Content) == 0 || doc.Content[0].Tag == "!!null" {
		return fail(1, "the file is empty")
	}
	var second yaml.Node
	if err := dec.Decode(&second); err != io.EOF {
		return fail(max(second.Line, 1), "more than one YAML document in the file")
	}
	return doc.Content[0], nil
}

// plain reports anchors and aliases, which could blow a small file up without
// bound, and tells whether there were none.
func (r *reader) plain(n *yaml.Node) bool {
	ok := true
	if n.Kind == yaml.AliasNode || n.Anchor != "" {
		r.report(n, "anchors and aliases are not taken in library files",
			"the values written out; sizes can be shared with \"same sizes as\"", "")
		ok = false
	}
	for _, c := range n.Content {
		ok = r.plain(c) && ok
	}
	return ok
}
