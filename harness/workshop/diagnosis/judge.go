package diagnosis

import (
	"math"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/workshop/bench"
	"fusewright/harness/workshop/bench/readings"
	"fusewright/library"
)

// Verdict is what a reading is by its bounds.
type Verdict string

// The verdicts.
const (
	Pass      Verdict = "pass"
	Fail      Verdict = "FAIL"
	Doubtful  Verdict = "doubtful" // out of bounds by less than the meter may be off
	NotJudged Verdict = "not judged"
)

// Judged is one reading against its bounds.
type Judged struct {
	Check   string  `json:"check"`         // its number, or where it was read
	Was     string  `json:"was,omitempty"` // the number under which it was read
	In      string  `json:"in"`
	What    string  `json:"what"`
	Reads   string  `json:"reads"`
	Allowed string  `json:"allowed"` // in the meter's own unit, reckoned from the posts that were read; "" = no bounds
	Verdict Verdict `json:"verdict"`
	Why     string  `json:"why,omitempty"` // by how much it is out, or why it is not judged
	Pos     string  `json:"at"`
}

// judge holds every reading against its bounds.
func judge(placed []*readings.Placed, meter *library.Meter) []*Judged {
	posts := postsOf(placed)
	list := make([]*Judged, len(placed))
	for i, p := range placed {
		j := &Judged{Check: p.Reading.Check, Was: p.Was, In: p.In, Reads: shown(p.Reading), Verdict: NotJudged, Pos: p.Pos.String()}
		list[i] = j
		c := p.Check
		if c == nil {
			j.What = "of your own"
			j.Why = "no bounds"
			continue
		}
		in, _ := readings.Key(p.Section, p.Group, c)
		j.Check, j.In, j.What = c.Number, in, what(c)
		switch {
		case p.Quantity == "":
			j.Allowed = c.Text
			j.Verdict = map[bool]Verdict{true: Pass, false: Fail}[p.Right]
		case c.Text != "" && c.Quantity == quantity.Current: // what is printed on a fuse
			j.Allowed, j.Verdict = c.Text, Pass
			if otherRating(p) {
				j.Verdict, j.Why = Fail, "another rating"
			}
		default:
			if post := outPost(p, posts[p.Section]); post != nil {
				j.Why = "reading " + post.Check.Number + " at the posts is out of its bounds: supply or lead first"
				continue
			}
			j.bound(c, p, posts, meter)
		}
	}
	return list
}

// outPost is the reading at the posts against which a reading would be held and that cannot be of a
// supply that feeds them; nil = none, or p is that reading.
func outPost(p *readings.Placed, posts []*readings.Placed) *readings.Placed {
	for _, x := range posts {
		if x != p && noSupply(x) && (p.Check.Supply == nil && x.Group == p.Group || p.Check.Supply != nil && postFor(p, posts) == x) {
			return x
		}
	}
	return nil
}

// noSupply tells of a reading at the posts that is less than half of the least or half as much again
// as the most that may stand there: no supply, a lead off or the wrong way round. What is less far out
// is another charge of the battery or a load too many, and volts below it still tell. Common practice, no source.
func noSupply(p *readings.Placed) bool {
	return p.Value < p.Check.Low/2 || p.Value > 1.5*p.Check.High
}

// what names a check as the bench test does.
func what(c *bench.Check) string { return strings.TrimSpace(c.Ref+" "+c.Name) + ", " + c.Where }

// shown is a reading as it was written.
func shown(r *readings.Reading) string {
	if r.Text != "" {
		return r.Text
	}
	if math.IsInf(r.Value, 0) {
		return readings.Open
	}
	return quantity.Format(r.Value, r.Quantity)
}

// meterText is a figure with the places that a meter has: hundredths of a volt.
func meterText(v float64, of quantity.Dimension) string {
	if of == quantity.Voltage && math.Abs(v) >= 1 {
		return quantity.Fixed(v, 2) + " V"
	}
	return quantity.Format(v, of)
}

// bound holds a reading against low and high; volts below the posts against what was read there.
func (j *Judged) bound(c *bench.Check, p *readings.Placed, posts map[*bench.Section][]*readings.Placed, meter *library.Meter) {
	low, high := c.Low, c.High
	if c.PlainHigh > 0 {
		high = math.Ceil(c.PlainHigh*100) / 100 // as the sheet prints it
	}
	if c.Below {
		at := postFor(p, posts[p.Section])
		if at == nil {
			j.Why = "the posts of its section were not read, against which it is"
			return
		}
		low, high = at.Value-c.High, at.Value-c.Low
		if c.Low <= 0 { // the sheet counts no volts below none; two readings of equal volts still differ by the meter
			high = at.Value + bench.VoltFixedV
		}
	}
	if !c.Below && low <= 0 { // a meter at nothing may show a digit below
		low = math.NaN()
	}
	unit := func(v float64) string { return meterText(v, c.Quantity) }
	switch {
	case math.IsNaN(low) && math.IsNaN(high):
		j.Why = "no bounds"
		return
	case math.IsNaN(low):
		j.Allowed = unit(high) + " at most"
	case math.IsNaN(high):
		j.Allowed = unit(low) + " at least"
	default:
		j.Allowed = quantity.Range(low, high, c.Quantity)
		if c.Quantity == quantity.Voltage && low >= 1 {
			j.Allowed = quantity.Fixed(low, 2) + " to " + meterText(high, c.Quantity)
		}
	}
	out := 0.0
	digits := 1e-9 * math.Max(1, math.Min(math.Abs(p.Value), 1e6)) // what floating point adds to a value just at a bound
	switch {
	case !math.IsNaN(low) && p.Value < low-digits:
		out = low - p.Value
		j.Why = quantity.Format(out, c.Quantity) + " too low"
	case !math.IsNaN(high) && p.Value > high+digits:
		out = p.Value - high
		j.Why = quantity.Format(out, c.Quantity) + " too high"
	}
	switch {
	case out == 0:
		j.Verdict = Pass
	case math.IsInf(out, 0):
		j.Verdict, j.Why = Fail, "no way through"
	case c.Probe != nil && out <= beyondSheet(c, p, meter)+digits:
		j.Verdict = Doubtful
		j.Why += ", which the meter may be off: read again"
	default:
		j.Verdict = Fail
	}
}

// beyondSheet is by how much the meter in the hand may be off more than that for which the sheet
// gives its bounds: what a sound harness can miss by the meter alone is no proof.
func beyondSheet(c *bench.Check, p *readings.Placed, meter *library.Meter) float64 {
	scale := scaleOf(p, c.Probe)
	own, touch := digitsOf(meter, scale, p.Value)
	value := math.Min(math.Abs(p.Value), openCoilOhm)
	sheet := 0.0
	switch {
	case c.Below: // a difference of two readings of one meter, whose share goes out
		own, sheet = 2*own, bench.VoltFixedV
	case scale == ohms:
		own, sheet = own+touch+meter.OhmShare*value, bench.OhmFixed+bench.OhmShare*value
	case scale == clamp:
		own, sheet = own+meter.ClampShare*value, bench.ClampFixedA+bench.ClampShare*value
	case scale == amps:
		own, sheet = own+meter.AmpShare*value, bench.StandbyFixedA+bench.StandbyShare*value
	case scale == supply:
		return 0
	case value < 1:
		own, sheet = own+meter.VoltShare*value, bench.DropFixedV+bench.DropShare*value
	default:
		own, sheet = own+meter.VoltShare*value, bench.VoltFixedV/2+bench.VoltShare*value
	}
	return math.Max(0, own-sheet)
}

// postsOf are the readings at posts by section.
func postsOf(placed []*readings.Placed) map[*bench.Section][]*readings.Placed {
	posts := map[*bench.Section][]*readings.Placed{}
	for _, p := range placed {
		if p.Check != nil && p.Check.Posts() {
			posts[p.Section] = append(posts[p.Section], p)
		}
	}
	return posts
}

// postFor is the reading at the posts that feed what a check is of: in its group, else in its section.
func postFor(p *readings.Placed, posts []*readings.Placed) *readings.Placed {
	var found *readings.Placed
	for _, x := range posts {
		if x.Check.Probe.Volts[0].Plus != p.Check.Supply {
			continue
		}
		if found == nil || x.Group == p.Group {
			found = x
		}
	}
	return found
}
