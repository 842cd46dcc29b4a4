package placement

import (
	"fmt"
	"os"
	"os/exec"
	"reflect"
	"slices"
	"strings"
	"testing"

	"fusewright/render/placement/enginecache"
)

// TestMain draws one order and prints the folder and TMPDIR as seen after start,
// when asked to by the tests of the engine's kept code.
func TestMain(m *testing.M) {
	if os.Getenv("PLACEMENT_SHOW_FOLDER") != "" {
		order, err := Order([]Node{{}, {Column: 1}, {Column: 1}}, []Edge{{From: 0, To: 1}, {From: 0, To: 2}})
		fmt.Printf("%s\n%s\n%v %v", enginecache.Dir, os.Getenv("TMPDIR"), order, err)
		os.Exit(0)
	}
	os.Exit(m.Run())
}

func TestOrder(t *testing.T) {
	cases := []struct {
		name  string
		nodes []Node
		edges []Edge
		want  [][]int
	}{
		{"design order is kept", []Node{{}, {Column: 1}, {Column: 1}, {Column: 1}},
			[]Edge{{From: 0, To: 1}, {From: 0, To: 2}, {From: 0, To: 3}}, [][]int{{0}, {1, 2, 3}}},
		{"outputs keep their order", []Node{{Out: 2}, {Column: 1}, {Column: 1}},
			[]Edge{{From: 0, Out: 1, To: 1}, {From: 0, Out: 0, To: 2}}, [][]int{{0}, {2, 1}}},
		{"a second source goes where its wire crosses nothing", []Node{{}, {}, {Column: 1, In: 2}, {Column: 1}},
			[]Edge{{From: 0, To: 2, In: 0}, {From: 0, To: 3}, {From: 1, To: 2, In: 0}}, [][]int{{1, 0}, {2, 3}}},
		{"no wires", []Node{{}, {}, {Column: 1}}, nil, nil},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := Order(c.nodes, c.edges)
			if err != nil {
				t.Fatal(err)
			}
			if c.want != nil && !reflect.DeepEqual(got, c.want) {
				t.Errorf("order %v, want %v", got, c.want)
			}
			if n := len(slices.Concat(got...)); n != len(c.nodes) {
				t.Errorf("%d nodes in the order, want %d", n, len(c.nodes))
			}
		})
	}
}

func TestOrderRefusesLongEdges(t *testing.T) {
	_, err := Order([]Node{{}, {Column: 2}}, []Edge{{From: 0, To: 1}})
	if err == nil || !strings.Contains(err.Error(), "next column") {
		t.Errorf("error %v, want one about the next column", err)
	}
}

// One graph gives one order, however often it is asked for.
func TestOrderIsSteady(t *testing.T) {
	nodes := []Node{{}, {}}
	var edges []Edge
	for i := range 30 {
		nodes = append(nodes, Node{Column: 1 + i%2})
		if i%2 == 0 {
			edges = append(edges, Edge{From: i % 3 % 2, To: len(nodes) - 1})
		} else {
			edges = append(edges, Edge{From: len(nodes) - 2, To: len(nodes) - 1})
		}
	}
	first, err := Order(nodes, edges)
	if err != nil {
		t.Fatal(err)
	}
	for range 5 {
		if again, _ := Order(nodes, edges); !reflect.DeepEqual(first, again) {
			t.Fatalf("order changed: %v, then %v", first, again)
		}
	}
}

// The rule behind the order: the folder's package imports nothing but what the
// engine imports too, and its path sorts first.
func TestFolderPackageComesFirst(t *testing.T) {
	list := func(args ...string) []string {
		out, err := exec.Command("go", append([]string{"list"}, args...)...).Output()
		if err != nil {
			t.Skip("no go command here: " + err.Error())
		}
		return strings.Fields(string(out))
	}
	engine := list("-deps", "github.com/goccy/go-graphviz/internal/wasm")
	for _, imported := range list("-f", `{{join .Imports " "}}`, "./enginecache") {
		if !slices.Contains(engine, imported) {
			t.Errorf("enginecache imports %q, which can make it start after the engine", imported)
		}
	}
	if reflect.TypeOf(Node{}).PkgPath() > "github.com/goccy" {
		t.Error("the module's path sorts after the engine's")
	}
}

func BenchmarkOrder(b *testing.B) {
	var nodes []Node
	var edges []Edge
	nodes = append(nodes, Node{})
	for c := 1; c < 6; c++ {
		for i := range 10 {
			nodes = append(nodes, Node{Column: c, Height: 6})
			from := 0
			if c > 1 {
				from = len(nodes) - 11
			}
			edges = append(edges, Edge{From: from, To: len(nodes) - 1})
			_ = i
		}
	}
	for b.Loop() {
		if _, err := Order(nodes, edges); err != nil {
			b.Fatal(err)
		}
	}
}
