package design

import (
	"fmt"

	"fusewright/harness/design/problem"

	"gopkg.in/yaml.v3"
)

// Feed is one connection by a wire to the part that supplies it, or, as a
// return, to the part that takes the current back.
type Feed struct {
	From Ref
	Wire WireSpec
}

// Ref names an output or ground: a part and, where it has several, the
// terminal: way of a block, contact of a relay.
type Ref struct {
	Text     string // as written
	Part     Part   // the part named; nil only after a reported problem
	Terminal string // "87", "87a", way number; "" = the part's only output
	Pos      problem.Pos
}

// Part is anything that stands in the circuit and can be named.
type Part interface {
	PartName() string
	PartPos() problem.Pos
	PartPlace() *Place
}

// Common is what every part has.
type Common struct {
	Name      string
	Label     string // longer wording for drawings; the name when empty
	At        *Place
	StaysLive Text // reason why it may be live with the key off
	Fitted    bool // the design says that it is already there; see Fitted
	// SparkProof: the design says that it is ignition protected; SparkGiven: or that it is not.
	SparkProof, SparkGiven bool
	Pos                    problem.Pos
	// Converter that feeds it, of a relay its contacts; nil = it has the system's voltage.
	Converter *Charger

	kind string // "a relay", as messages say it
}

// PartName is the name in the design.
func (c *Common) PartName() string { return c.Name }

// PartPos is where the design defines it.
func (c *Common) PartPos() problem.Pos { return c.Pos }

// PartPlace is where it stands; nil when not said.
func (c *Common) PartPlace() *Place { return c.At }

// SaidSparkProof tells whether the design says that it is ignition protected.
func (c *Common) SaidSparkProof() bool { return c.SparkProof }

// SaidUnprotected tells whether the design says that it is not ignition protected.
func (c *Common) SaidUnprotected() bool { return c.SparkGiven && !c.SparkProof }

// SaidFitted tells whether the design says that it is already there.
func (c *Common) SaidFitted() bool { return c.Fitted }

// LiveReason is why it may be live with the key off; "" when the design gives none.
func (c *Common) LiveReason() string { return c.StaysLive.Value }

// BatteryPart is the battery's positive post, named "battery" in feeds.
type BatteryPart struct {
	Common
	Store *Battery
}

// NegativePart is the battery's negative post, named "battery negative" in returns.
type NegativePart struct{ Common }

// The names that every design has without saying so.
const (
	BatteryName  = "battery"          // the positive post, in feeds
	NegativeName = "battery negative" // the negative post, in returns
)

// common lets the reader reach what all parts share.
func (c *Common) common() *Common { return c }

// partPtr is a pointer to a kind of part.
type partPtr[X any] interface {
	*X
	Part
	common() *Common
}

// partsKey reads the named parts of one kind.
func partsKey[X any, P partPtr[X]](k Key, s *section[X], list func(*Design) *[]*X) key[Design] {
	return namedKey(k, s, func(r *reader, d *Design, name string, n *yaml.Node) *X {
		x := new(X)
		c := P(x).common()
		c.Name, c.Pos, c.kind = name, r.pos(n), "a "+s.Name
		if !r.define(s.Name, P(x)) {
			return nil
		}
		r.current = P(x)
		*list(d) = append(*list(d), x)
		return x
	})
}

// define takes a name for a part, or reports why it cannot have it.
func (r *reader) define(kind string, p Part) bool {
	name := fold(p.PartName())
	switch first, taken := r.names[name]; {
	case name == BatteryName || name == NegativeName:
		r.report(p.PartPos(), fmt.Sprintf("%s %s: the name is built in", kind, quoted(p.PartName())),
			"another name")
		return false
	case taken:
		r.add(problem.Problem{Pos: p.PartPos(), Also: &first.pos,
			What: fmt.Sprintf("%s %s: the name is already taken", kind, quoted(p.PartName()))})
		return false
	case len(r.parts) == maxParts:
		r.report(p.PartPos(), fmt.Sprintf("more than %d parts", maxParts), "a design of normal size")
		return false
	case len(r.parts) > maxParts:
		return false
	}
	r.names[name] = namedPart{p, p.PartPos()}
	r.parts = append(r.parts, p)
	return true
}

// commonKeys are the keys that every part has.
func commonKeys[X any, P partPtr[X]]() []key[X] {
	return []key[X]{
		placeKey(Key{Name: "at", Doc: "the place where it is; without it, the wires to it need " +
			"a length", Example: "under seat"},
			func(x *X) **Place { return &P(x).common().At }),
		textKey[X](Key{Name: "label", Doc: "longer wording for drawings and lists",
			Default: "the name", Example: "left auxiliary lamp"}, nil).
			labelled(func(x *X, s string) { P(x).common().Label = s }),
		reasonKey(Key{Name: "stays live", Doc: "why it may be live with the key off; the check then " +
			"takes it as meant", Example: `"bilge pump must run unattended"`},
			func(x *X) *Text { return &P(x).common().StaysLive }),
		fittedKey[X, P](),
		saidKey(yesKey(Key{Name: "ignition protected", Default: "as the library says of its type", Example: "yes",
			Doc: "its maker says that no spark of it lights petrol vapour around it"},
			func(x *X) *bool { return &P(x).common().SparkProof }),
			func(x *X) { P(x).common().SparkGiven = true }),
	}
}

// labelled turns a text key into one that keeps the words alone.
func (k key[T]) labelled(to func(*T, string)) key[T] {
	k.read = func(r *reader, t *T, f field) {
		if s, ok := r.sentence(f, maxName); ok {
			to(t, s.Value)
		}
	}
	return k
}

// withCommon puts the keys of all parts behind a kind's own.
func withCommon[X any, P partPtr[X]](own ...key[X]) []key[X] {
	return append(own, commonKeys[X, P]()...)
}

// kindOf says what a part is, with its article.
func kindOf(p Part) string { return p.(interface{ common() *Common }).common().kind }
