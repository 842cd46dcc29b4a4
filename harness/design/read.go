package design

import (
	"fmt"

	"fusewright/harness/design/problem"
	"fusewright/library"

	"gopkg.in/yaml.v3"
)

// Limits on what Read takes, so that no input can hang or exhaust the program.
const (
	maxFileBytes = 4 << 20 // of the text
	maxDepth     = 24      // levels of lists and mappings, aliases followed
	maxValues    = 1 << 20 // values in all, aliases followed
	maxAliases   = 1000    // uses of an anchor
	maxParts     = 50_000  // parts of all kinds
	maxWires     = 20_000  // feeds and returns: a chain of as many is checked in seconds
	maxWays      = 200     // of one block
	maxStates    = 500     // situations, and legs of all rides
	maxRemarks   = 2000    // notes, and acceptances: each is looked at and printed
	maxName      = 80      // characters of a name
	maxSentence  = 2000    // characters of a title, note or reason
	maxProblems  = 500     // mistakes shown
)

// FormatVersion is the version of the design format that Read takes.
const FormatVersion = "1"

// Read turns the text of a design file into a Design. The file's name is used
// in messages only. The error is a problem.List with every mistake of the file
// in the order of its lines; the Design must not be used then. Read never
// panics and its work is bounded by the limits above.
//
// A nil library means the embedded one.
func Read(file string, src []byte, lib *library.Library) (*Design, error) {
	if lib == nil {
		lib = library.Default()
	}
	r := newReader(file, lib)
	root := r.parse(src)
	if root == nil || !r.rightVersion(root) {
		return nil, r.result()
	}
	r.readAll(root)
	if err := r.result(); err != nil {
		return nil, err
	}
	return r.d, nil
}

// readAll takes the whole file: first every section, then what refers from one
// section to another, then what is left to defaults.
func (r *reader) readAll(root *yaml.Node) {
	readRecord(r, &designSection, r.d, root, where{kind: wholeDesign})
	if r.tooManyWires() {
		return
	}
	r.ownPractice()
	r.resolvePlaces()
	r.tightDrops()
	r.joinHalves()
	r.joinPoles()
	r.resolveConnections()
	r.resolvePosts()
	r.resolveConverters()
	for _, finish := range r.later {
		finish()
	}
	r.checkHanging()
	r.checkReversed()
	r.joinConnectors()
	r.fillRelays()
	r.fillWires()
	r.fillFitted()
	r.checkPlugs()
	r.checkLoops()
	r.checkLengths()
	r.finishSituations()
}

// reader is the state of one Read.
type reader struct {
	file string
	lib  *library.Library
	d    *Design

	problems problem.List
	dropped  int          // problems beyond maxProblems
	slipped  map[int]bool // lines mended before they were read: what else is said of them may follow from it

	old  map[string]bool // old names of keys met
	lost bool            // a section is of the wrong kind

	names       map[string]namedPart // by folded name
	parts       []Part               // in file order
	places      map[string]*Place    // by folded name
	conditions  map[string]When      // by folded name
	hot         []hotDraft           // where they are named
	derived     bool                 // the design gives no situations
	current     Part                 // the part being read
	connections []*connection
	byFeeds     map[*[]Feed]*connection
	placeRefs   []placeRef
	limits      []func(*library.Practice)           // of the design
	states      []*stateDraft                       // situations and legs
	lookups     map[string]any                      // library rows by kind and name
	ratings     map[*library.FuseRating]problem.Pos // ratings asked for and not looked up yet
	defaults    wireDraft
	sizeless    map[sizeless]bool
	unplaced    map[Part]bool // parts whose place is named wrongly: reported once

	unplacedBattery bool

	later []func() // what waits for the feeds
}

// namedPart is a name already taken and where.
type namedPart struct {
	part Part
	pos  problem.Pos
}

func newReader(file string, lib *library.Library) *reader {
	return &reader{file: file, lib: lib, d: &Design{File: file, Library: lib},
		slipped: map[int]bool{}, old: map[string]bool{}, names: map[string]namedPart{}, places: map[string]*Place{}, conditions: map[string]When{},
		byFeeds: map[*[]Feed]*connection{}, lookups: map[string]any{}, unplaced: map[Part]bool{},
		ratings: map[*library.FuseRating]problem.Pos{}}
}

// result is the problems found, with a note on those left out.
func (r *reader) result() error {
	if r.dropped > 0 {
		r.problems.Add(problem.Problem{Pos: problem.Pos{File: r.file},
			What: fmt.Sprintf("%d mistakes in all; the first %d found are shown",
				len(r.problems)+r.dropped, len(r.problems))})
	}
	return r.problems.Err()
}

// add records a problem, up to maxProblems.
func (r *reader) add(p problem.Problem) {
	if r.slipped[p.Pos.Line] {
		return
	}
	if len(r.problems) >= maxProblems {
		r.dropped++
		return
	}
	r.problems.Add(p)
}

// report adds a problem at a place of the file.
func (r *reader) report(pos problem.Pos, what, expected string) {
	r.add(problem.Problem{Pos: pos, What: what, Expected: expected})
}

// unknown adds a problem about a word that is not one of the choices, with the
// nearest one, or all of them when they are few and none is near. It gives the
// nearest.
func (r *reader) unknown(pos problem.Pos, what string, word string, choices []string) string {
	p := problem.Problem{Pos: pos, What: what}
	// The search for a near name costs time per choice: a file full of mistakes
	// gets no more hints once nobody would read them.
	if len(r.problems) < maxProblems/10 {
		p.Nearest = problem.Nearest(short(word), choices)
	}
	if p.Nearest == "" {
		p.Expected = oneOf(problem.Kin(word, choices))
	}
	r.add(p)
	return p.Nearest
}

// noName is unknown for the name of something in the design. Where a whole section
// could not be read, names are missing for that alone.
func (r *reader) noName(pos problem.Pos, what string, word string, choices []string) {
	if !r.lost {
		r.unknown(pos, what, word, choices)
	}
}

// pos is where a node stands.
func (r *reader) pos(n *yaml.Node) problem.Pos {
	return problem.Pos{File: r.file, Line: max(n.Line, 1), Col: max(n.Column, 1)}
}

// rightVersion checks the first key, which says how to read the rest.
func (r *reader) rightVersion(root *yaml.Node) bool {
	const want = `"fusewright: ` + FormatVersion + `" as the first key`
	if root.Kind != yaml.MappingNode {
		r.report(r.pos(root), "a design is a mapping of sections, not "+kindName(root), want)
		return false
	}
	if len(root.Content) == 0 {
		r.report(r.pos(root), "the design is empty", want)
		return false
	}
	key, value := root.Content[0], follow(root.Content[1])
	switch {
	case spelling(key.Value) != "fusewright":
		r.report(r.pos(key), "the first key does not give the format version", want)
	case value.Kind != yaml.ScalarNode || value.Value != FormatVersion:
		r.report(r.pos(value), "this program does not know format version "+describe(value),
			FormatVersion)
	default:
		return true
	}
	return false
}
