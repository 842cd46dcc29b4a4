package design

import (
	"bytes"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/slips"

	"gopkg.in/yaml.v3"
)

// parse turns the text into the one YAML tree of the file, or nil after
// reporting why there is none. The tree is within the limits.
func (r *reader) parse(src []byte) *yaml.Node {
	src = bytes.TrimPrefix(src, []byte("\uFEFF"))
	if len(src) > maxFileBytes {
		r.report(problem.Pos{File: r.file}, "the file has more than 4 MiB", "at most 4 MiB")
		return nil
	}
	if bytes.HasPrefix(src, []byte("\xff\xfe")) || bytes.HasPrefix(src, []byte("\xfe\xff")) {
		r.report(problem.Pos{File: r.file}, "the file is UTF-16 text", "text saved as UTF-8")
		return nil
	}
	if at := invalidUTF8(src); at >= 0 {
		r.report(r.posOf(src, at), "the file is not UTF-8 text from here on", "text saved as UTF-8")
		return nil
	}
	if at := bytes.IndexFunc(src, isControl); at >= 0 {
		c, _ := utf8.DecodeRune(src[at:])
		r.report(r.posOf(src, at), fmt.Sprintf("the unprintable character %U", c), "printable text")
		return nil
	}
	root, fault := parseYAML(src)
	if fault == nil && noBreakIndent.Match(src) {
		fault = layoutFault("a no-break space in the indentation")
	}
	if fault != nil {
		if root = r.mended(src, fault); root == nil {
			return nil
		}
	}
	joinCommas(root)
	w := &treeWalk{r: r, done: map[*yaml.Node]extent{}, open: map[*yaml.Node]bool{}}
	w.visit(root, 1)
	if w.stop {
		return nil
	}
	return root
}

// noBreakIndent is what YAML takes for text, since it is no space to it.
var noBreakIndent = regexp.MustCompile("(?m)^ *\u00a0+ *[^ \u00a0#]")

func layoutFault(what string) *fault {
	return &fault{line: 1, col: 1, layout: true, what: what, expected: "spaces"}
}

// mended reports what is wrong in the layout of a text that is no YAML. Where
// there is but one way to mend it, the tree of the mended text is given, so that
// the rest of the file is read in the same run.
func (r *reader) mended(src []byte, bad *fault) *yaml.Node {
	found, text := slips.Find(src, anyKey, maxProblems)
	if !bad.layout || len(found) == 0 {
		// The YAML package counts a line too many at times.
		line := min(bad.line, bytes.Count(src, []byte("\n"))+bytes.Count(src, []byte("\r"))+1)
		r.report(problem.Pos{File: r.file, Line: line, Col: bad.col}, bad.what, bad.expected)
		return nil
	}
	for _, s := range found {
		r.report(problem.Pos{File: r.file, Line: s.Line, Col: s.Col}, s.What, s.Expected)
	}
	if text == nil {
		return nil
	}
	root, _ := parseYAML(text)
	for _, s := range found {
		r.slipped[s.Line] = true
	}
	return root
}

// isControl tells what YAML does not take: control characters that neither
// move on nor break a line.
func isControl(c rune) bool {
	return c < ' ' && c != '\t' && c != '\n' && c != '\r' || c == 0x7f
}

// invalidUTF8 is the offset of the first byte that is not UTF-8, or -1.
func invalidUTF8(src []byte) int {
	if utf8.Valid(src) {
		return -1
	}
	at := 0
	for at < len(src) {
		c, n := utf8.DecodeRune(src[at:])
		if c == utf8.RuneError && n <= 1 {
			break
		}
		at += n
	}
	return at
}

// posOf is the line and column of an offset.
func (r *reader) posOf(src []byte, at int) problem.Pos {
	before := src[:at]
	start := bytes.LastIndexByte(before, '\n') + 1
	return problem.Pos{File: r.file, Line: bytes.Count(before, []byte("\n")) + 1,
		Col: utf8.RuneCount(before[start:]) + 1}
}

// fault is why a text is no single YAML document.
type fault struct {
	line, col      int
	what, expected string
	layout         bool // the YAML package does not take the text
}

// yamlLine finds the line number in an error of the YAML package, which gives
// no column.
var yamlLine = regexp.MustCompile(`line ([0-9]+): `)

// parseYAML gives the root of the one document in a text.
func parseYAML(src []byte) (root *yaml.Node, bad *fault) {
	defer func() {
		// The YAML package is not known to panic, but it is not ours to vouch for.
		if p := recover(); p != nil {
			root, bad = nil, &fault{line: 1, col: 1, what: "not YAML", expected: "a design file"}
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader(src))
	var doc, second yaml.Node
	err := dec.Decode(&doc)
	switch {
	case err == io.EOF || (err == nil && isNull(&doc)):
		return nil, &fault{line: 1, col: 1, what: "the file is empty", expected: "a design that begins with \"fusewright: " +
			FormatVersion + "\""}
	case err != nil:
		return nil, yamlFault(err)
	}
	switch err := dec.Decode(&second); {
	case err == nil:
		return nil, &fault{line: max(second.Line, 1), col: max(second.Column, 1),
			what: "a second YAML document begins here", expected: "one design per file"}
	case err != io.EOF:
		return nil, yamlFault(err)
	}
	return doc.Content[0], nil
}

// isNull tells whether a document has no content but comments.
func isNull(doc *yaml.Node) bool {
	return len(doc.Content) == 0 || doc.Content[0].Tag == "!!null"
}

// yamlFault takes the line out of an error of the YAML package.
func yamlFault(err error) *fault {
	f := &fault{line: 1, col: 1, layout: true}
	text := strings.TrimPrefix(err.Error(), "yaml: ")
	if m := yamlLine.FindStringSubmatch(text); m != nil {
		f.line, _ = strconv.Atoi(m[1]) // digits; a huge number is no line
		f.line = max(f.line, 1)
		text = strings.Replace(text, m[0], "", 1)
	}
	f.what = "not YAML: " + text
	switch {
	case strings.Contains(text, "cannot start any token"):
		f.expected = "spaces, not tabs, and quotes around text that begins with @, ` or %"
	case strings.Contains(text, "end of stream"):
		f.expected = "a closing quote or bracket"
	case strings.Contains(text, "mapping values are not allowed"):
		f.expected = "one \"key: value\" per line, keys of a section in the same column"
	}
	return f
}

// extent is the size of a tree with its aliases followed.
type extent struct{ values, depth int }

// treeWalk checks a tree against the limits before anything reads it. A few
// nested aliases can stand for billions of values, so sizes are added up
// without visiting a target twice.
type treeWalk struct {
	r       *reader
	aliases int
	done    map[*yaml.Node]extent
	open    map[*yaml.Node]bool // anchors being visited, to find one inside itself
	stop    bool
}

// visit gives the extent of a node, or stops the walk with a problem.
func (w *treeWalk) visit(n *yaml.Node, level int) extent {
	if w.stop {
		return extent{}
	}
	if level > maxDepth {
		return w.refuse(n, fmt.Sprintf("nested more than %d levels deep", maxDepth))
	}
	if n.Kind == yaml.AliasNode {
		return w.visitAlias(n, level)
	}
	if n.Style&yaml.TaggedStyle != 0 {
		w.r.report(w.r.pos(n), "a YAML tag "+quoted(n.Tag), "plain values without tags")
	}
	if n.Anchor != "" {
		w.open[n] = true
		defer delete(w.open, n)
	}
	e := extent{1, 1}
	for _, c := range n.Content {
		below := w.visit(c, level+1)
		e.values += below.values
		e.depth = max(e.depth, below.depth+1)
		if e.values > maxValues {
			return w.refuse(n, fmt.Sprintf("more than %d values, aliases followed", maxValues))
		}
	}
	if n.Anchor != "" {
		w.done[n] = e
	}
	return e
}

// visitAlias gives the extent of what an alias stands for.
func (w *treeWalk) visitAlias(n *yaml.Node, level int) extent {
	w.aliases++
	switch {
	case w.aliases > maxAliases:
		return w.refuse(n, fmt.Sprintf("more than %d aliases", maxAliases))
	case w.open[n.Alias]:
		return w.refuse(n, "the anchor "+quoted(n.Value)+" stands for something that contains it")
	}
	e, ok := w.done[n.Alias]
	if !ok { // cannot be: an anchor stands before its aliases
		return w.refuse(n, "the anchor "+quoted(n.Value)+" is not complete here")
	}
	if level+e.depth > maxDepth+1 {
		return w.refuse(n, fmt.Sprintf("nested more than %d levels deep", maxDepth))
	}
	return e
}

func (w *treeWalk) refuse(n *yaml.Node, what string) extent {
	if !w.stop {
		w.r.report(w.r.pos(n), what, "a design of normal size")
	}
	w.stop = true
	return extent{}
}

// follow is the node that an alias stands for, or the node itself.
func follow(n *yaml.Node) *yaml.Node {
	if n.Kind == yaml.AliasNode {
		return n.Alias
	}
	return n
}
