package compare

import (
	"cmp"
	"slices"
	"sort"
	"strconv"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/lengths"
	"fusewright/harness/network/circuit"
	"fusewright/harness/review/finding"
)

// Mark is one numbered entry of a drawing's list of changes. A part that came
// or went takes its wires along.
type Mark struct {
	What What
	Name string // "lamp", "feed of lamp"
	// Old and New are the designations and wire numbers in each circuit that the
	// entry is about, the part's own first.
	Old, New []string
	Text     string // "rating 5 A → 30 A"; of what came or went, what is known of it
	// Findings came with it or went: "new danger: fuse-over-wire: …".
	Findings []string

	gravity int // the gravest new finding
	concern float64
	names   map[string]bool // of the parts, to find their wires
}

// Marks are the changes that a drawing can show, the worst first: by the
// gravest finding that came with them, then as the lists of the comparison.
func (c *Comparison) Marks() []*Mark {
	m := &marker{of: c}
	for _, list := range [][]Item{c.Fuses, c.Parts, c.Wires} {
		for _, i := range list {
			m.item(i)
		}
	}
	for _, f := range c.Findings {
		m.finding(f)
	}
	m.labels()
	sort.SliceStable(m.list, func(i, j int) bool {
		a, b := m.list[i], m.list[j]
		return cmp.Or(cmp.Compare(b.gravity, a.gravity), cmp.Compare(b.concern, a.concern), cmp.Compare(rank[a.What], rank[b.What])) < 0
	})
	return m.list
}

// marker gathers marks.
type marker struct {
	of   *Comparison
	list []*Mark
}

// unit is that of the new design.
func (m *marker) unit() lengths.Unit { return lengths.Of(m.of.New.Design) }

// item adds a part or wire as a mark of its own, or to the mark that it belongs
// to.
func (m *marker) item(i Item) {
	wire := i.isWire()
	if !wire {
		i.Fields = m.withoutWiring(i)
	} else if i.What == Changed {
		i.Fields = withoutCrimps(i.Fields)
	}
	if len(i.Fields) == 0 {
		return
	}
	for _, k := range m.list {
		switch {
		case wire && k.What == i.What && i.What != Changed && k.names[i.Name]:
			k.Old, k.New = withRef(k.Old, i.OldRef), withRef(k.New, i.NewRef)
			return
		case !wire && i.OldRef+i.NewRef != "" && (has(k.New, i.NewRef) || has(k.Old, i.OldRef)):
			k.Text += "; " + i.title() + ": " + i.Text(m.unit()) // several entries of the design are one part of the circuit
			k.concern += i.Concern
			if k.What != i.What {
				k.What = Changed
			}
			return
		}
	}
	k := &Mark{What: i.What, Name: i.title(), Old: withRef(nil, i.OldRef), New: withRef(nil, i.NewRef), Text: i.Text(m.unit()),
		concern: i.Concern, names: map[string]bool{}}
	if !wire {
		k.names[i.Name] = true
	}
	m.list = append(m.list, k)
}

// labels adds what has another label than before, as one mark: labels that follow
// each other in both circuits by the first and the last.
func (m *marker) labels() {
	list := slices.Clone(m.of.Renumbered)
	if len(list) == 0 {
		return
	}
	slices.SortFunc(list, func(a, b Renumbering) int { return label(a.New).Compare(label(b.New)) })
	k := &Mark{What: Relabelled, Name: "labels of a built loom"}
	var was []string
	for from, to := 0, 0; from < len(list); from = to {
		for to = from + 1; to < len(list) && follows(list[to-1].Old, list[to].Old) && follows(list[to-1].New, list[to].New); to++ {
		}
		first, last := list[from], list[to-1]
		if text := first.New + " was " + first.Old; from+1 == to {
			was = append(was, text)
		} else {
			was = append(was, first.New+"–"+last.New+" were "+first.Old+"–"+last.Old)
		}
	}
	for _, r := range list {
		k.Old, k.New = withRef(k.Old, r.Old), withRef(k.New, r.New)
	}
	k.Text = strings.Join(was, " · ")
	m.list = append(m.list, k)
}

func label(text string) design.Number { return design.Number{Label: text} }

// follows tells whether a label is the next of its letter.
func follows(before, after string) bool {
	letter := label(before).Letter()
	n, err := strconv.Atoi(before[len(letter):])
	return err == nil && after == letter+strconv.Itoa(n+1)
}

// wiring is the fields of a part that its wires of a role tell too.
var wiring = map[string]circuit.Role{
	"fed by": circuit.FeedWire, "in series with": circuit.FeedWire, "returns to": circuit.ReturnWire,
	"coil fed by": circuit.CoilFeedWire, "coil returns to": circuit.CoilReturnWire,
}

// withoutWiring is the fields of a part that changed, without those that an
// entry of its wires or of the fuse in a way tells.
func (m *marker) withoutWiring(i Item) (list []Field) {
	for _, f := range i.Fields {
		role, told := wiring[f.Name]
		if told {
			told = i.What == Changed && slices.ContainsFunc(m.of.Wires, func(w Item) bool {
				return w.Name == i.Name && w.Kind == string(role) && (w.What != Changed || w.has("from", "to"))
			})
		}
		if number, way := strings.CutPrefix(f.Name, "way "); way && i.What == Changed {
			told = slices.ContainsFunc(m.of.Fuses, func(x Item) bool { return x.Name == i.Name+" "+number })
		}
		if !told {
			list = append(list, f)
		}
	}
	return list
}

// withoutCrimps leaves out the crimps of a wire where they only follow from what
// else changed.
func withoutCrimps(list []Field) []Field {
	rest := slices.DeleteFunc(slices.Clone(list), func(f Field) bool { return strings.HasPrefix(f.Name, "crimp ") })
	if len(rest) == 0 {
		return list
	}
	return rest
}

// finding adds a finding that came or went to the mark of its part or wire. One
// that came where nothing changed gets a mark of its own.
func (m *marker) finding(f Finding) {
	rank := f.Rank()
	if rank == 0 {
		return
	}
	words, of, circuit := f.Standing(), f.New, m.of.New.Circuit
	switch {
	case f.Old == nil:
		words = "new " + words
	case f.New == nil:
		words, of, circuit = "no longer "+words, f.Old, m.of.Old.Circuit
	}
	ref := refOfFinding(of, circuit)
	words += ": " + of.Rule
	if rank > 0 {
		words += ": " + of.What
	}
	for _, k := range m.list {
		if refs := map[bool][]string{true: k.New, false: k.Old}[f.New != nil]; has(refs, ref) {
			k.Findings = append(k.Findings, words)
			k.gravity = max(k.gravity, gravityOf(f))
			return
		}
	}
	if rank > 0 {
		m.list = append(m.list, &Mark{What: Judged, Name: of.Part, New: withRef(nil, ref), Findings: []string{words}, gravity: gravityOf(f)})
	}
}

func gravityOf(f Finding) int {
	if f.Rank() < 0 {
		return 0
	}
	return weight(f.New)
}

// refOfFinding is the designation or number that a finding stands at.
func refOfFinding(f *finding.Finding, c *circuit.Circuit) string {
	if f.Ref != "" {
		return f.Ref
	}
	for _, p := range c.Parts {
		if p.Name == f.Part {
			return p.Ref
		}
	}
	return ""
}

func has(refs []string, ref string) bool { return ref != "" && slices.Contains(refs, ref) }

func withRef(refs []string, ref string) []string {
	if ref == "" || slices.Contains(refs, ref) {
		return refs
	}
	return append(refs, ref)
}

func (i Item) isWire() bool {
	switch circuit.Role(i.Kind) {
	case circuit.FeedWire, circuit.ReturnWire, circuit.CoilFeedWire, circuit.CoilReturnWire:
		return true
	}
	return false
}

// has tells whether one of some properties differs.
func (i Item) has(names ...string) bool {
	return slices.ContainsFunc(i.Fields, func(f Field) bool { return slices.Contains(names, f.Name) })
}

// title names an item: "lamp fuse", "feed of lamp", "charging".
func (i Item) title() string {
	switch {
	case i.isWire():
		return i.Kind + " of " + i.Name
	case i.Name == "of the design":
		return i.Kind
	case i.NewRef+i.OldRef == "" || i.Kind == "vehicle load" || i.Kind == "fuse":
		return i.Kind + " " + i.Name
	}
	return i.Name
}

// Text is what differs, in one line, lengths in the units of a sheet.
func (i Item) Text(u lengths.Unit) string {
	parts := make([]string, len(i.Fields))
	for n, f := range i.Fields {
		was, is := f.texts(u)
		if parts[n] = f.Name + " " + cmp.Or(was, "none") + " → " + cmp.Or(is, "none"); i.What != Changed {
			parts[n] = f.Name + " " + was + is
		}
	}
	return strings.Join(parts, " · ")
}

// texts are what was and what is; lengths that look alike in feet are told apart in metres.
func (f Field) texts(u lengths.Unit) (was, is string) {
	was, is = f.Old, f.New
	if f.oldM > 0 {
		was = u.Text(f.oldM)
	}
	if f.newM > 0 {
		is = u.Text(f.newM)
	}
	if !u.Feet() || was == is {
		return f.Old, f.New
	}
	return was, is
}
