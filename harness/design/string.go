package design

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"
)

// Keys of batteries in series.
const inSeries, linkKey = "in series", "link"

// mostInSeries is that of 6 V batteries at 48 V.
const mostInSeries = 8

// Count is of how many batteries it is made, 1 or more.
func (b *Battery) Count() int { return max(b.InSeries, 1) }

// Times is its count in words, "2 × "; "" of one.
func (b *Battery) Times() string {
	if b.InSeries == 0 {
		return ""
	}
	return fmt.Sprintf("%d × ", b.InSeries)
}

// EachV is the nominal voltage of each of its batteries in a system of systemV.
func (b *Battery) EachV(systemV float64) float64 { return systemV / float64(b.Count()) }

// GivenOhm is the resistance that the design gives, of all in series, their links left out; 0 = none.
func (b *Battery) GivenOhm() float64 { return float64(b.Count()) * b.ResistanceOhm.Value }

// finishString refuses a string without its links, and links without a string.
func (b *Battery) finishString(r *reader, f field) {
	c := r.byFeeds[&b.Links]
	switch {
	case b.InSeries == 0 && c != nil:
		r.report(c.wire.spec.Pos, fmt.Sprintf("%s has a link, and is one battery", f.where), "`in series: 2` beside it, or no `link`")
	case b.InSeries > 0 && c == nil:
		r.report(r.pos(f.node), fmt.Sprintf("%s is %d batteries in series, and the cable between them is not given", f.where, b.InSeries),
			"`link: {size: 35 mm², length: 250 mm}`, as it is")
	case c == nil:
	case !c.wire.size.Given():
		r.report(c.wire.spec.Pos, fmt.Sprintf("link of %s: its size is not given, and sizing chooses none", f.where), "`size`, such as 35 mm²")
	case !c.wire.spec.LengthM.Given():
		r.report(c.wire.spec.Pos, fmt.Sprintf("link of %s: its length is not given, and no run leads from post to post", f.where), "`length`, such as 250 mm")
	case c.wire.spec.Parallel > 1:
		r.report(c.wire.spec.Pos, fmt.Sprintf("link of %s: %d side by side", f.where, c.wire.spec.Parallel), "one cable of the size that is needed")
	}
}

// stringVolts are the nominal voltages of the batteries that make a string.
var stringVolts = []float64{6, 12, 24}

// checkString refuses a number of batteries that does not make the voltage of the system.
func (r *reader) checkString(b *Battery, name string, pos problem.Pos) {
	systemV := r.d.SystemV.Value
	if b.InSeries == 0 || systemV == 0 || slices.Contains(stringVolts, b.EachV(systemV)) {
		return
	}
	var counts []string
	for _, v := range stringVolts {
		if n := systemV / v; n > 1 {
			counts = append(counts, fmt.Sprintf("%g of %s", n, quantity.Plain(v, quantity.Voltage)))
		}
	}
	slices.Reverse(counts)
	expected := oneOf(counts)
	if len(counts) == 0 {
		expected = "no `in series`"
	}
	r.report(pos, fmt.Sprintf("%s: %d batteries in series do not make %s", name, b.InSeries, quantity.Plain(systemV, quantity.Voltage)), expected)
}

// joinString makes the links of batteries in series, each from one to the next.
func (r *reader) joinString(part Part, b *Battery) {
	r.checkString(b, part.PartName(), b.Pos)
	c := r.byFeeds[&b.Links]
	if c == nil {
		return
	}
	c.owner = part
	for range b.InSeries - 1 {
		b.Links = append(b.Links, Feed{From: Ref{Part: part, Text: part.PartName(), Pos: c.wire.spec.Pos}})
		c.feedOf = append(c.feedOf, c.wire)
	}
}

// ofString refuses what is fed by, or returns to, one battery of a string: a number, "middle" or "link" behind its name.
func (r *reader) ofString(c *connection, text Text) bool {
	said := fold(text.Value)
	at := strings.LastIndexByte(said, ' ')
	if _, taken := r.names[said]; taken || at < 0 {
		return false
	}
	name, post := said[:at], said[at+1:]
	var b *Battery
	if name == BatteryName {
		b = &r.d.Battery
	} else if x, ok := r.names[name].part.(*Bank); ok {
		b = &x.Store
	}
	if _, err := strconv.Atoi(post); b == nil || b.InSeries == 0 || err != nil && post != "middle" && post != linkKey {
		return false
	}
	expected := "a converter among the `chargers`, fed by " + name
	for _, x := range r.lib.Chargers {
		if x.InputV == r.d.SystemV.Value && x.Volts == b.EachV(r.d.SystemV.Value) {
			expected = fmt.Sprintf("a converter among the `chargers`, such as %s, fed by %s", x.Name, name)
			break
		}
	}
	r.report(text.Pos, fmt.Sprintf("%s is tapped from between the batteries of %s, %d in series: it empties one of them, and charging then overcharges the rest", c.of, quoted(name), b.InSeries),
		expected)
	return true
}
