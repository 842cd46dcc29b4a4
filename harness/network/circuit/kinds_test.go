package circuit

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"testing"

	"fusewright/harness/design"
)

// kinds are the values of the constants of type Kind in circuit.go.
func kinds(t *testing.T) (list []Kind) {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "circuit.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(file, func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok && v.Type != nil && v.Type.(*ast.Ident).Name == "Kind" {
			word, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, Kind(word))
		}
		return true
	})
	return list
}

// A kind of part has a row, and a part without one is refused.
func TestEveryKindOfPartHasItsRow(t *testing.T) {
	list := kinds(t)
	if len(list) != len(partKinds) || len(list) < 11 {
		t.Errorf("%d kinds, %d rows", len(list), len(partKinds))
	}
	for _, k := range list {
		if _, ok := partKinds[k]; !ok {
			t.Errorf("%s has no row", k)
		}
	}
	b := &builder{c: &Circuit{}, parts: map[design.Part]*Part{}}
	b.part("thermocouple", nil, &design.Common{Name: "probe"})
	if b.problems.Err() == nil {
		t.Error("a part of an unknown kind is built")
	}
}

// A kind of branch has a row, and no branch both feeds and returns.
func TestEveryKindOfBranchHasItsRow(t *testing.T) {
	for k := range BranchKinds {
		if k.String() == "" {
			t.Errorf("kind %d has no row", k)
		}
	}
	of := func(k Kind) *Part { return &Part{Kind: k} }
	for _, c := range []struct {
		b              Branch
		feeds, returns bool
	}{
		{Branch{Kind: WireBranch, Wire: &Wire{Role: FeedWire}}, true, false},
		{Branch{Kind: WireBranch, Wire: &Wire{Role: CoilFeedWire}}, true, false},
		{Branch{Kind: WireBranch, Wire: &Wire{Role: ReturnWire}}, false, true},
		{Branch{Kind: WireBranch, Wire: &Wire{Role: CoilReturnWire}}, false, true},
		{Branch{Kind: ContactBranch}, true, false},
		{Branch{Kind: FuseBranch}, true, false},
		{Branch{Kind: ResistorBranch}, false, false},
		{Branch{Kind: ResistorBranch, Part: of(Relay)}, false, false},
		{Branch{Kind: ResistorBranch, Part: of(Block)}, true, false},
		{Branch{Kind: ResistorBranch, Part: of(Ground)}, false, true},
		{Branch{Kind: LoadBranch}, false, false},
		{Branch{Kind: BatteryBranch}, false, false},
		{Branch{Kind: ChargerBranch}, false, false},
	} {
		if c.b.Feeds() != c.feeds || c.b.Returns() != c.returns {
			t.Errorf("%s %+v: feeds %t, returns %t", c.b.Kind, c.b.Wire, c.b.Feeds(), c.b.Returns())
		}
	}
}
