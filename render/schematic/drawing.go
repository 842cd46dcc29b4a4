package schematic

import (
	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/render/scene"
	"fusewright/render/symbol"
)

// drawing is one schematic while it is made.
type drawing struct {
	review   *harness.Review
	circuit  *circuit.Circuit
	set      symbol.Set
	sizeName string
	paper    paper
	stacked  bool // wire labels in two lines, for narrow paper
	flags    *flags
	changes  *Changes // nil on the usual drawing
	asWas    bool     // the earlier design of a comparison
	earlier  *drawing // the drawing of the earlier design; nil = none
	study    *study   // nil on the usual drawing
	lengths  string   // "ft", else metres
	outlined bool     // frames round the places
	detached bool     // coils and contacts of relays apart

	cells   []*cell                           // in design order
	byPart  map[*circuit.Part]*cell           // first piece of each part
	outs    map[*circuit.Terminal]*cell       // node whose right side shows a terminal
	feeds   map[*circuit.Terminal][]*inlet    // wires fed from a terminal, in order
	returns map[*circuit.Part][]*circuit.Wire // return wires that leave a part
	landed  map[*circuit.Part][]*circuit.Wire // return wires that arrive at a part

	pages     []*page
	extras    []*extraPage // lists that found no room beside the circuit
	refs      map[*circuit.Terminal]*crossing
	drawnRefs map[string]bool

	numbers []int // sheet of each page in the whole set; nil = in order, 0 = left out
	first   int   // sheets before the first of these
	total   int   // sheets of the whole set; 0 = these alone
}

// crossing is where a terminal appears on several sheets.
type crossing struct {
	home  *cell   // shows the terminal itself
	from  *cell   // flag beside it
	aways []*cell // flags on other sheets, or elsewhere on this one
}

func newDrawing(review *harness.Review, opt Options) *drawing {
	d := &drawing{
		review:   review,
		circuit:  review.Circuit,
		set:      opt.Symbols,
		sizeName: opt.Size,
		byPart:   map[*circuit.Part]*cell{},
		outs:     map[*circuit.Terminal]*cell{},
		feeds:    map[*circuit.Terminal][]*inlet{},
		returns:  map[*circuit.Part][]*circuit.Wire{},
		landed:   map[*circuit.Part][]*circuit.Wire{},
		refs:     map[*circuit.Terminal]*crossing{},
	}
	sheet := d.design().Sheet
	if d.set == nil {
		d.set = symbol.SetByName(sheet.Symbols)
	}
	if d.sizeName == "" {
		d.sizeName = sheet.Size
	}
	d.lengths, d.outlined = sheet.Lengths, sheet.PlaceBoxes
	relays := opt.Relays
	if relays == "" {
		relays = sheet.Relays
	}
	d.detached = relays == "detached"
	d.changes, d.asWas = opt.Changes, opt.asWas
	d.flags = newFlags(review, opt)
	return d
}

// design is the design drawn; an empty one when the circuit has none.
func (d *drawing) design() *design.Design {
	if d.circuit.Design == nil {
		return &design.Design{}
	}
	return d.circuit.Design
}

// paint draws all pages and numbers them.
func (d *drawing) paint() []*scene.Sheet {
	var sheets []*scene.Sheet
	total := d.total
	if total == 0 {
		total = len(d.pages) + len(d.extras)
	}
	for i, p := range d.pages {
		if n := d.number(i); n > 0 {
			sheets = append(sheets, d.paintPage(p, n, total))
		}
	}
	for i, e := range d.extras {
		sheets = append(sheets, d.paintExtra(e, d.number(len(d.pages)+i), total))
	}
	return sheets
}

// number is the sheet of a page, or of a page of lists after them; 0 when it is
// left out.
func (d *drawing) number(index int) int {
	if d.numbers == nil {
		return d.first + index + 1
	}
	return d.numbers[index]
}
