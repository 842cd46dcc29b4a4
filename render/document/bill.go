package document

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design/lengths"
	"fusewright/harness/workshop/purchase"
	"fusewright/render/report"
	"fusewright/render/scene"
)

// BillCSV writes one row per line of the bill.
func BillCSV(w io.Writer, bill *purchase.Bill) error {
	head := []string{"group", "item", "need", "spare", "unit", "buy", "sold as", "price each", "price total", "currency", "for"}
	var cells [][]string
	for _, l := range bill.Lines {
		each, total := "", ""
		if l.Each > 0 {
			each, total = money(l.Each), money(l.Total())
		}
		cells = append(cells, []string{string(l.Group), item(lengths.Unit{}, l), amount(lengths.Unit{}, l, l.Need), amount(lengths.Unit{}, l, l.Spare), l.Unit,
			strconv.FormatFloat(l.Buy, 'f', -1, 64), l.SoldAs, each, total, l.Currency, uses(l)})
	}
	return writeCSV(w, head, cells)
}

// Bill lays the bill of materials on pages.
func Bill(r *harness.Review, bill *purchase.Bill) []*scene.Sheet {
	return upright("Bill of materials", r, func(b *book) {
		b.para(fmt.Sprintf("Wire and covers carry %.0f %% for waste, terminals %.0f %% for test crimps, fuses one spare "+
			"for each %d of a rating (common practice, no source). Quantities are rounded up to the pack sizes sold. "+
			"Parts are generic, by standard; check the maker's data of what you buy against the ratings used here.",
			purchase.WireWaste*100, purchase.TerminalWaste*100, purchase.FuseSparesFor), smallQuiet)
		priced := hasPrices(bill)
		b.lay(billTable(lengths.Of(r.Design), bill, priced), column{head: "got", wide: 8, align: scene.Middle, first: true})
		totals(b, bill, priced)
		missing(b, bill)
	})
}

func billTable(u lengths.Unit, bill *purchase.Bill, priced bool) *report.Table {
	heads := []string{"item", ">need", ">spare", ">buy", "for"}
	if priced {
		heads = append(heads, ">price")
	}
	t := report.NewTable(heads...)
	var last purchase.Group
	for _, l := range bill.Lines {
		if l.Group != last {
			t.Group(string(l.Group))
			last = l.Group
		}
		cells := []string{item(u, l), amount(u, l, l.Need), amount(u, l, l.Spare), buy(u, l), uses(l)}
		if priced {
			cells = append(cells, priceText(l))
		}
		t.Add(cells...)
	}
	return t
}

// uses lists references; names of runs hold spaces and get a clearer separator.
func uses(l *purchase.Line) string {
	if l.Group == purchase.Covers {
		return strings.Join(l.For, "; ")
	}
	return strings.Join(l.For, " ")
}

func item(u lengths.Unit, l *purchase.Line) string {
	if l.LargestMm > 0 {
		return fmt.Sprintf("%s, bundle up to %s %s", l.Item, u.Width(l.LargestMm), u.Small())
	}
	return l.Item
}

// amount prints lengths with decimals and pieces without.
func amount(u lengths.Unit, l *purchase.Line, v float64) string {
	switch {
	case v == 0:
		return ""
	case l.Unit == "m":
		return u.Amount(v)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

func buy(u lengths.Unit, l *purchase.Line) string {
	if l.SoldAs == "m" {
		return u.Bought(l.Buy) + " " + u.Large()
	}
	n := strconv.FormatFloat(l.Buy, 'f', -1, 64)
	if strings.HasPrefix(l.SoldAs, "pack") {
		return n + " × " + l.SoldAs
	}
	return n + " " + l.SoldAs
}

func money(v float64) string { return strconv.FormatFloat(v, 'f', 2, 64) }

func priceText(l *purchase.Line) string {
	if l.Each == 0 {
		return "–"
	}
	return money(l.Total()) + " " + l.Currency
}

func hasPrices(bill *purchase.Bill) bool {
	for _, l := range bill.Lines {
		if l.Each > 0 {
			return true
		}
	}
	return false
}

func totals(b *book, bill *purchase.Bill, priced bool) {
	if !priced && len(b.review.Design.Prices) == 0 {
		b.para("No prices: the design gives none. `prices` may give the cost of one piece, pack or metre of a line, by "+
			"the wording of the line's item.", quiet)
		return
	}
	sums, unpriced := bill.Totals()
	b.y += 2
	for _, s := range sums {
		b.para(fmt.Sprintf("Sum of the priced lines: %s %s", money(s.Amount), s.Currency), bold)
	}
	for _, p := range b.review.Design.Prices {
		if !slices.ContainsFunc(bill.Lines, func(l *purchase.Line) bool { return l.Item == p.Item.Value }) {
			b.para(fmt.Sprintf("A price is given for %q, which is not an item of this bill.", p.Item.Value), plain)
		}
	}
	if unpriced > 0 {
		b.para(fmt.Sprintf("%d lines have no price and are not in the sum.", unpriced), plain)
	}
}

// missing says what is not on the bill.
func missing(b *book, bill *purchase.Bill) {
	if len(bill.Missing) == 0 {
		return
	}
	b.head("Before you order")
	for _, m := range bill.Missing {
		b.para(m, plain)
	}
}
