package library

import "slices"

// list is a top-level list of library files with the reader of one entry.
type list struct {
	key   string
	read  func(m *row, s Source)
	names func(*Library) []string // of its rows, in file order
}

// lists are all of them; any file may hold any. To add one: give Library a field,
// the fields of its rows tags (see row.fill) and, if there is more to check, a
// method check, and add a line here. Order matters only where one list's rows
// refer to another's.
var lists = []list{
	listOf("insulations", func(l *Library) *[]*Insulation { return &l.Insulations }, insulationNames),
	listOf("current tables", func(l *Library) *[]*CurrentTable { return &l.CurrentTables }, currentTableNames),
	listOf("shop sizes", func(l *Library) *[]*ShopSizes { return &l.ShopSizes }, shopNames), // before the wire types
	listOf("wire types", func(l *Library) *[]*WireType { return &l.WireTypes }, wireTypeNames),
	listOf("fuse types", func(l *Library) *[]*FuseType { return &l.FuseTypes }, fuseTypeNames),
	listOf("relay forms", func(l *Library) *[]*RelayForm { return &l.RelayForms }, relayNames),
	listOf("blocks", func(l *Library) *[]*BlockType { return &l.Blocks }, blockNames),
	listOf("switches", func(l *Library) *[]*SwitchType { return &l.Switches }, switchNames),
	listOf("diodes", func(l *Library) *[]*DiodeType { return &l.Diodes }, diodeNames),
	listOf("chargers", func(l *Library) *[]*ChargerType { return &l.Chargers }, chargerNames),
	listOf("generators", func(l *Library) *[]*GeneratorType { return &l.Generators }, generatorNames),
	listOf("terminals", func(l *Library) *[]*Terminal { return &l.Terminals }, terminalNames),
	listOf("connector families", func(l *Library) *[]*Connector { return &l.Connectors }, connectorNames),
	listOf("covers", func(l *Library) *[]*Cover { return &l.Covers }, coverNames),
	listOf("loads", func(l *Library) *[]*LoadType { return &l.Loads }, loadNames),
	listOf("colours", func(l *Library) *[]*Colour { return &l.Colours }, colourNames),
	listOf("colour codes", func(l *Library) *[]*ColourCode { return &l.ColourCodes }, colourCodeNames), // after the colours
	listOf("practices", func(l *Library) *[]*Practice { return &l.Practices }, practiceNames),
	listOf("batteries", func(l *Library) *[]*Chemistry { return &l.Batteries }, chemistryNames),
	listOf("interrupting capacities", func(l *Library) *[]*Interrupting { return &l.Interrupting }, interruptingNames),
	listOf("designators", func(l *Library) *[]*Designator { return &l.Designators }, designatorNames),
	listOf("tolerances", func(l *Library) *[]*Tolerance { return &l.Tolerances }, toleranceNames),
	listOf("contact drops", func(l *Library) *[]*ContactDrop { return &l.ContactDrops }, dropNames),
	listOf("verdicts", func(l *Library) *[]*Verdict { return &l.Verdicts }, verdictNames),
	listOf("meters", func(l *Library) *[]*Meter { return &l.Meters }, meterNames),
	listOf("suspicions", func(l *Library) *[]*Suspicion { return &l.Suspicions }, suspicionNames),
}

// listOf is a list of rows of one type. A practice has a source for each limit and
// none of its own.
func listOf[T any](key string, in func(*Library) *[]*T, names func(*T) (string, []string)) list {
	read := func(m *row, s Source) {
		t := new(T)
		m.around = s
		m.fill(t, s)
		if _, ok := any(t).(*Practice); !ok {
			m.r.sourced(m.node, s)
		}
		name, aliases := names(t)
		*in(m.r.lib) = add(m, key, *in(m.r.lib), t, name, aliases)
	}
	return list{key, read, func(l *Library) []string { return namesOf(*in(l), names) }}
}

// Names are the names of the rows of a list, such as "wire types", in file order.
// There must be such a list.
func (l *Library) Names(key string) []string {
	i := slices.IndexFunc(allLists, func(x list) bool { return x.key == key })
	return allLists[i].names(l)
}

// allLists is lists; the readers of rows ask for names too.
var allLists []list

func init() { allLists = lists }
