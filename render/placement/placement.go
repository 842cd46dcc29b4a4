// Package placement finds the vertical order of the parts of a drawing whose
// columns are known, so that few wires cross. It is the only package that uses
// the layout engine; it knows no circuits, and it gives an order, not places:
// the drawing puts everything on its own grid.
package placement

import (
	"bufio"
	"bytes"
	"cmp"
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	graphviz "github.com/goccy/go-graphviz"

	"fusewright/render/placement/enginecache"
)

func init() { enginecache.Finish() }

// Node is a box in a column with connection points on its left (In) and right
// (Out) side, both counted from the top.
type Node struct {
	Column  int
	Height  float64 // in any unit, the same for all
	In, Out int     // numbers of points; 0 counts as 1
}

// Edge joins a point of a node to a point of a node in the next column.
type Edge struct {
	From, Out int
	To, In    int
	Weight    int // how much a straight line matters; 0 counts as 1
}

// engine is the layout engine, which is not safe for use at once. It is made
// once, because that costs more than a layout, and anew after a failure.
var engine struct {
	sync.Mutex
	it    *graphviz.Graphviz
	known map[string][]float64 // by graph: sheets are laid out in several ways, and again for each paper
}

// mostKnown bounds what is kept.
const mostKnown = 1000

// Order returns the nodes of each column from top to bottom. Nodes and edges in
// the order of the design keep it where that costs no crossings: the edges that
// leave a node never change places. An edge must go to the next column.
func Order(nodes []Node, edges []Edge) ([][]int, error) {
	for _, e := range edges {
		if nodes[e.To].Column != nodes[e.From].Column+1 {
			return nil, fmt.Errorf("placement: an edge goes from column %d to column %d (expected the next column)",
				nodes[e.From].Column, nodes[e.To].Column)
		}
	}
	columns := make([][]int, len(group(nodes)))
	for _, part := range components(len(nodes), edges) {
		ordered, err := orderPart(nodes, edges, part)
		if err != nil {
			return nil, err
		}
		for col, list := range ordered {
			columns[col] = append(columns[col], list...)
		}
	}
	transpose(columns, nodes, edges)
	return columns, nil
}

// components splits the nodes into sets that no edge joins, in the order of
// their first nodes; each keeps a band of the drawing to itself.
func components(count int, edges []Edge) [][]int {
	up := make([]int, count)
	for i := range up {
		up[i] = i
	}
	root := func(i int) int {
		for up[i] != i {
			up[i] = up[up[i]]
			i = up[i]
		}
		return i
	}
	for _, e := range edges {
		a, b := root(e.From), root(e.To)
		up[max(a, b)] = min(a, b)
	}
	place := make([]int, count)
	var parts [][]int
	for i := range count {
		r := root(i)
		if r == i { // the first of its part
			place[r] = len(parts)
			parts = append(parts, nil)
		}
		parts[place[r]] = append(parts[place[r]], i)
	}
	return parts
}

// orderPart orders one component: a node alone in each column needs no engine.
func orderPart(nodes []Node, edges []Edge, part []int) (map[int][]int, error) {
	columns := map[int][]int{}
	index := map[int]int{}
	var own []Node
	first := nodes[part[0]].Column
	for k, i := range part {
		index[i] = k
		own = append(own, nodes[i])
		first = min(first, nodes[i].Column)
		columns[nodes[i].Column] = append(columns[nodes[i].Column], i)
	}
	if len(columns) == len(part) {
		return columns, nil
	}
	for k := range own {
		own[k].Column -= first
	}
	var inner []Edge
	for _, e := range edges {
		if from, ok := index[e.From]; ok {
			e.From, e.To = from, index[e.To]
			inner = append(inner, e)
		}
	}
	heights, err := heightsOf(describe(own, inner), len(own))
	if err != nil {
		return nil, err
	}
	for _, list := range columns {
		slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(heights[index[b]], heights[index[a]]) })
	}
	return columns, nil
}

// group lists the nodes of each column in the order given.
func group(nodes []Node) [][]int {
	last := -1
	for _, n := range nodes {
		last = max(last, n.Column)
	}
	columns := make([][]int, last+1)
	for i, n := range nodes {
		columns[n.Column] = append(columns[n.Column], i)
	}
	return columns
}

// describe writes the graph in the engine's language: one rank per column, held
// by a spine, and a record with one field per connection point for each node.
func describe(nodes []Node, edges []Edge) []byte {
	var b bytes.Buffer
	b.WriteString("digraph{rankdir=LR;nodesep=0.1;ranksep=0.5;splines=false;\nnode[shape=record,label=\"\\N\"];edge[arrowhead=none];\n")
	for i, n := range nodes {
		fmt.Fprintf(&b, "n%d[label=\"{{%s}|{%s}}\",height=%s,ordering=out];\n",
			i, fields('i', n.In), fields('o', n.Out), strconv.FormatFloat(max(n.Height, 0.1)/4, 'f', 3, 64))
	}
	for c, list := range group(nodes) {
		fmt.Fprintf(&b, "{rank=same;c%d[style=invis,shape=point]", c)
		for _, i := range list {
			fmt.Fprintf(&b, ";n%d", i)
		}
		b.WriteString("}\n")
		if c > 0 {
			fmt.Fprintf(&b, "c%d->c%d[style=invis,weight=0];\n", c-1, c)
		}
	}
	sorted := slices.Clone(edges) // the engine keeps edges that leave a node in the order told
	slices.SortStableFunc(sorted, func(a, b Edge) int { return a.Out - b.Out })
	for _, e := range sorted {
		fmt.Fprintf(&b, "n%d:o%d:e->n%d:i%d:w[weight=%d];\n", e.From, e.Out, e.To, e.In, max(e.Weight, 1))
	}
	b.WriteString("}\n")
	return b.Bytes()
}

func fields(side byte, count int) string {
	var parts []string
	for k := range max(count, 1) {
		parts = append(parts, fmt.Sprintf("<%c%d>", side, k))
	}
	return strings.Join(parts, "|")
}

// Forget drops what is known of graphs, for measurements.
func Forget() {
	engine.Lock()
	defer engine.Unlock()
	engine.known = nil
}

// heightsOf is the height of each node's middle; a graph is laid out once.
func heightsOf(graph []byte, count int) ([]float64, error) {
	engine.Lock()
	defer engine.Unlock()
	if heights, ok := engine.known[string(graph)]; ok {
		return heights, nil
	}
	heights, err := run(graph, count)
	if err != nil {
		return nil, err
	}
	if engine.known == nil || len(engine.known) == mostKnown {
		engine.known = map[string][]float64{}
	}
	engine.known[string(graph)] = heights
	return heights, nil
}

// run lays a graph out.
func run(graph []byte, count int) (heights []float64, err error) {
	defer func() {
		if r := recover(); r != nil {
			engine.it = nil
			err = fmt.Errorf("placement: the layout engine failed: %v", r)
		}
	}()
	ctx := context.Background()
	if engine.it == nil {
		if engine.it, err = graphviz.New(ctx); err != nil {
			return nil, fmt.Errorf("placement: %w", err)
		}
	}
	parsed, err := graphviz.ParseBytes(graph)
	if err != nil {
		return nil, fmt.Errorf("placement: %w", err)
	}
	defer parsed.Close()
	var out bytes.Buffer
	if err := engine.it.Render(ctx, parsed, graphviz.Format("plain"), &out); err != nil {
		return nil, fmt.Errorf("placement: %w", err)
	}
	return parse(&out, count)
}

// parse reads the lines "node NAME X Y …" of the engine's plain output.
func parse(out *bytes.Buffer, count int) ([]float64, error) {
	heights := make([]float64, count)
	found := 0
	scanner := bufio.NewScanner(out)
	scanner.Buffer(nil, 1<<24)
	for scanner.Scan() {
		f := strings.Fields(scanner.Text())
		if len(f) < 4 || f[0] != "node" || f[1][0] != 'n' {
			continue
		}
		i, err := strconv.Atoi(f[1][1:])
		if err != nil || i < 0 || i >= count {
			return nil, fmt.Errorf("placement: unexpected node %q in the engine's answer", f[1])
		}
		if heights[i], err = strconv.ParseFloat(f[3], 64); err != nil {
			return nil, fmt.Errorf("placement: %w", err)
		}
		found++
	}
	if found != count {
		return nil, fmt.Errorf("placement: the engine placed %d of %d parts", found, count)
	}
	return heights, scanner.Err()
}
