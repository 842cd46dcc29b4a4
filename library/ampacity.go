package library

import "fmt"

// The kinds of current tables.
const (
	// ByClass tables give amperes by insulation class at the table's ambient.
	ByClass = "class"
	// ByRise tables give the current of a single wire in free air by the rise
	// of the conductor above the ambient, in kelvin.
	ByRise = "rise"
)

// CurrentTable is a published table of allowed current, with the reduction
// factors the same document gives.
type CurrentTable struct {
	Name    string   `key:"name" need:""`
	Aliases []string `key:"aliases"`
	Kind    string   `key:"kind" words:"class|rise"` // ByClass or ByRise
	// AmbientC is the ambient of a ByClass table; zero for ByRise.
	AmbientC float64 `key:"ambient C" in:"0,80"`
	// Columns are insulation classes in °C or rises in K, ascending.
	Columns []float64    `key:"columns C" in:"1,400"`
	Rows    []CurrentRow // ascending by area
	// HotC is the ambient at which HotShares hold, one per column; a zero
	// share means that the table does not allow the class there.
	HotC      float64   `key:"hot C" in:"0,150"`
	HotShares []float64 `key:"hot shares" in:"0,1"`
	HotSource Source
	// Bundle holds the reduction for wires loaded together, ascending.
	Bundle       []BundleShare
	Loadings     []float64 `key:"loadings" in:"0.01,1"` // columns of Bundle shares; empty when they have one
	BundleSource Source
	// Altitude holds the reduction for thin air, ascending.
	Altitude       []AltitudeShare `key:"altitude" ascending:"AltitudeM"`
	AltitudeSource Source
	Source         Source
}

// CurrentRow is one conductor size of a current table.
type CurrentRow struct {
	Label   string // as the table prints it: "16 AWG", "1.5 mm²"
	AreaMm2 float64
	Amps    []float64 // one per column
}

// BundleShare is the share of the single wire's current from a number of
// loaded wires on.
type BundleShare struct {
	From   int
	Shares []float64 // one, or one per loading
}

// AltitudeShare is the share of the current at sea level.
type AltitudeShare struct {
	AltitudeM float64
	Share     float64 `key:"share" need:"" in:"0.1,1"`
}

// CurrentTable finds a current table by name or alias; nil when there is none.
func (l *Library) CurrentTable(name string) *CurrentTable {
	return find(l.CurrentTables, name, currentTableNames)
}

func currentTableNames(t *CurrentTable) (string, []string) { return t.Name, t.Aliases }

func (t *CurrentTable) check(m *row) {
	s := t.Source
	m.r.ascending(m.node, "columns C", len(t.Columns), func(i int) float64 { return t.Columns[i] })
	if t.Kind == ByClass && t.AmbientC == 0 {
		m.missing("ambient C")
	}
	m.sameCount("hot shares", len(t.HotShares), len(t.Columns))
	t.Rows = m.currentRows(s, len(t.Columns))
	t.Bundle = m.bundleShares(s, max(1, len(t.Loadings)))
	t.HotSource = m.namedSource("hot source", s)
	t.BundleSource = m.namedSource("bundle source", s)
	t.AltitudeSource = m.namedSource("altitude source", s)
}

func (a *AltitudeShare) check(z *row) { a.AltitudeM = z.needNumber("ft", 0, 1e5) * metrePerFoot }

// metrePerFoot is exact by definition.
const metrePerFoot = 0.3048

func (m *row) currentRows(s Source, columns int) []CurrentRow {
	var out []CurrentRow
	sizes := m.choice("sizes", "mm2", "AWG")
	m.each("rows", s, func(z *row, _ Source) {
		c := CurrentRow{Label: z.text("label"), AreaMm2: z.needNumber("mm2", 0.01, 2000),
			Amps: z.numbers("amps", 0.01, 1e5)}
		if c.Label == "" && sizes == "mm2" {
			c.Label = fmt.Sprintf("%g mm²", c.AreaMm2)
		}
		z.sameCount("amps", len(c.Amps), columns)
		out = append(out, c)
	})
	if len(out) == 0 {
		m.missing("rows")
	}
	m.r.ascending(m.node, "rows", len(out), func(i int) float64 { return out[i].AreaMm2 })
	return out
}

func (m *row) bundleShares(s Source, columns int) []BundleShare {
	var out []BundleShare
	m.each("bundle", s, func(z *row, _ Source) {
		b := BundleShare{From: int(z.needNumber("from", 1, 1000))}
		if z.has("shares by loading") {
			b.Shares = z.numbers("shares by loading", 0.01, 1)
		} else {
			b.Shares = []float64{z.needNumber("share", 0.01, 1)}
		}
		z.sameCount("shares by loading", len(b.Shares), columns)
		out = append(out, b)
	})
	m.r.ascending(m.node, "bundle", len(out), func(i int) float64 { return float64(out[i].From) })
	return out
}

// numbers reads a list of plain numbers; nil when it is not given.
func (m *row) numbers(key string, lo, hi float64) []float64 {
	var out []float64
	for _, n := range m.list(key) {
		out = append(out, m.r.number(n, key, lo, hi))
	}
	return out
}

// sameCount reports a list that has entries but not one for each column.
func (m *row) sameCount(key string, have, want int) {
	if have == 0 || have == want {
		return
	}
	at := m.values[key]
	if at == nil {
		at = m.node
	}
	m.r.report(at, fmt.Sprintf("%q has %d numbers", key, have), fmt.Sprintf("%d, one for each column", want), "")
}

// namedSource reads the source of a part of a row: a named source of the file
// or a text; the row's own when it is not given.
func (m *row) namedSource(key string, around Source) Source {
	text := m.text(key)
	if text == "" {
		return around
	}
	if named, ok := m.r.sources[text]; ok {
		return named
	}
	return Source{Text: text, Certainty: around.Certainty}
}
