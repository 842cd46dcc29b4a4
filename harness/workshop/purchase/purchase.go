// Package purchase makes the bill of materials of a circuit: what is needed,
// what is added for waste and spares, and how much to buy as things are sold.
// It reads circuits and draws nothing.
package purchase

import (
	"fmt"
	"math"
	"sort"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
)

// Allowances are what is bought beyond what the drawing needs. All of them are
// common practice, no source.
const (
	WireWaste      = 0.10 // share of each wire's total length
	CoverWaste     = 0.10 // share of each sleeve's or conduit's total length
	TerminalWaste  = 0.10 // share of crimp parts, for test crimps
	WireStepM      = 1.0  // wire and covers are cut from the reel by the metre
	FuseSpares     = 1    // spares per type and rating up to FuseSparesFor fuses
	FuseSparesFor  = 4
	TieSpacingM    = 0.15 // ties along a run without a cover of its own
	TiePack        = 25
	ShrinkPerEndM  = 0.03 // heat-shrink over each unsealed crimp
	MarkersPerWire = 2
)

// Group is a heading of the bill.
type Group string

// The headings, in the order of the bill.
const (
	Wire        Group = "wire"
	Fuses       Group = "fuses"
	Relays      Group = "relays"
	Holders     Group = "holders and sockets"
	Blocks      Group = "distribution blocks"
	Switches    Group = "switches"
	Diodes      Group = "diodes"
	Resistors   Group = "resistors"
	Chargers    Group = "chargers"
	Batteries   Group = "batteries"
	Loads       Group = "accessories"
	Grounds     Group = "ground points"
	Terminals   Group = "terminals"
	Housings    Group = "plug housings"
	Plugs       Group = "contacts and seals of plugs"
	Covers      Group = "sleeves and conduit"
	Consumables Group = "consumables"
)

var groupOrder = []Group{Wire, Fuses, Relays, Holders, Blocks, Switches, Diodes, Resistors, Chargers, Batteries, Loads, Grounds, Terminals, Housings, Plugs, Covers, Consumables}

// Line is one thing to buy.
type Line struct {
	Group     Group
	Item      string   // what to ask for at the counter
	Need      float64  // as drawn, in Unit
	Spare     float64  // waste or spares, in Unit
	Buy       float64  // rounded up as it is sold, in SoldAs
	Unit      string   // "m" or "pcs"
	SoldAs    string   // "m", "pcs", "pack of 25"
	For       []string // references that use it
	LargestMm float64  // covers: the thickest bundle it must take; 0 = not known
	Each      float64  // price per SoldAs; 0 = not given
	Currency  string

	resets bool // a breaker, of which no spare is carried
}

// Total is the price of the line; zero when no price is given.
func (l *Line) Total() float64 { return l.Each * l.Buy }

// Bill is the whole list.
type Bill struct {
	Lines []*Line
	// Missing says what could not be put on the bill, such as a wire end for
	// which the library has no crimp part.
	Missing []string
}

// Totals sums the priced lines by currency, in alphabetical order, and counts
// the lines without a price.
func (b *Bill) Totals() (sums []Sum, unpriced int) {
	by := map[string]float64{}
	for _, l := range b.Lines {
		if l.Each == 0 {
			unpriced++
			continue
		}
		by[l.Currency] += l.Total()
	}
	for c, v := range by {
		sums = append(sums, Sum{Currency: c, Amount: v})
	}
	sort.Slice(sums, func(i, j int) bool { return sums[i].Currency < sums[j].Currency })
	return sums, unpriced
}

// Sum is an amount of money.
type Sum struct {
	Currency string
	Amount   float64
}

// List makes the bill of a circuit.
func List(c *circuit.Circuit) *Bill {
	b := &builder{lines: map[string]*Line{}, idle: map[string]bool{}, cables: map[*Line]map[*circuit.Part][]float64{}}
	b.wires(c)
	b.parts(c)
	b.ends(c)
	b.plugs(c)
	b.covers(c)
	b.consumables(c)
	b.fitted(c)
	bill := &Bill{Missing: b.missing}
	for _, g := range groupOrder {
		for _, key := range b.order {
			if l := b.lines[key]; l.Group == g {
				finish(l)
				price(l, c.Design.Prices)
				bill.Lines = append(bill.Lines, l)
			}
		}
	}
	return bill
}

// builder gathers lines by group and item in order of first use.
type builder struct {
	lines   map[string]*Line
	order   []string
	missing []string
	cables  map[*Line]map[*circuit.Part][]float64 // cut lengths of cores, by the part whose wires they are
	idle    map[string]bool                       // fuses left open that feed nothing, by reference
	mates   bool                                  // the accessories' halves of plugs are on the bill
}

// add counts an amount of an item and returns its line.
func (b *builder) add(g Group, item, unit string, amount float64, ref string) *Line {
	return b.addOf(g, item, "", unit, amount, ref)
}

// addOf counts an item that is sold in sizes, each a line of its own.
func (b *builder) addOf(g Group, item, size, unit string, amount float64, ref string) *Line {
	key := string(g) + "\x00" + item + size
	l := b.lines[key]
	if l == nil {
		l = &Line{Group: g, Item: item, Unit: unit, SoldAs: unit}
		b.lines[key] = l
		b.order = append(b.order, key)
	}
	l.Need += amount
	if ref != "" && (len(l.For) == 0 || l.For[len(l.For)-1] != ref) {
		l.For = append(l.For, ref)
	}
	return l
}

// finish adds waste and spares and rounds to what is sold.
func finish(l *Line) {
	switch l.Group {
	case Wire:
		l.Spare = l.Need * WireWaste
	case Covers:
		l.Spare = l.Need * CoverWaste
	case Terminals, Plugs:
		l.Spare = math.Ceil(l.Need * TerminalWaste)
	case Fuses:
		if l.resets {
			break
		}
		l.Spare = math.Ceil(l.Need/FuseSparesFor) * FuseSpares
	}
	total := l.Need + l.Spare
	switch pack := packOf(l.SoldAs); {
	case l.Unit == "m":
		l.Buy = wholeSteps(total)
	case pack > 1:
		l.Buy = math.Ceil(total / float64(pack))
	default:
		l.Buy = math.Ceil(total)
	}
}

// packOf reads the count of "pack of N"; 1 otherwise.
func packOf(soldAs string) int {
	n := 1
	if _, err := fmt.Sscanf(soldAs, "pack of %d", &n); err != nil {
		return 1
	}
	return n
}

func price(l *Line, prices []*design.Price) {
	for _, p := range prices {
		if p.Item.Value == l.Item {
			l.Each, l.Currency = p.Each, p.Currency
		}
	}
}
