package rules

import (
	"math"

	"fusewright/harness/design"
	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/harness/network/circuit"
	"fusewright/harness/network/solve"
	"fusewright/harness/review/finding"
)

var seriesUneven = &Rule{
	Name:  "series-uneven",
	Title: "a load in series gets another share of the voltage than it is rated for",
	Says:  "wrong share of the voltage",
	Doc: "The current through loads in series is the same, and the voltage parts as they resist: of two unlike ones the weaker gets the more. For each, " +
		"the voltage at it, as a share of that at the battery's posts, against what it is rated at as a share of the system voltage; a system of 12 V runs " +
		"at 14 V, and so does a load made for it. A load that gets less is advised on, unless a resistor of the string is there to take the rest, or it " +
		"is one. What gets less than half of what it is rated for does not do its work, resistor or not: at that a filament gives a tenth of its light, by the exponent 3.4 (from memory). " +
		"A motor is taken at its rated current; a fan that turns slower draws less and keeps more than is worked out, so that of one that is not critical a third is enough. How several motors of a string share the voltage is not known, and said as advice.",
	Formula:  "share = (V load / V battery) / (rated at / system voltage)",
	Limits:   "110 % of what it is rated for, 125 % of a motor; 80 %, as advice, and beside a resistor or of a critical load 50 %, of another motor a third (our choice): a filament lives three tenths as long on 110 %, by the exponent −13 (from memory)",
	Why:      "what gets too much burns out and takes the others with it; what gets too little glows, does not pull in, or stalls",
	Change:   "take loads of equal power and voltage whose voltages add up to the system's, or feed each by itself",
	Severity: "fault; danger for a critical load; advice when it gets too little, and of a motor beside a resistor that gets less than a third; a lamp or what has a constant power there is a fault",
	Source:   "common practice, no source",
	Bad: `
loads:
  tail lamp: {power: 10 W, rated at: 6 V, behaves: filament lamp, at: rear, fed by: lamp fuse, wire: {size: 1 mm²}}
  plate lamp: {power: 8.5 W, rated at: 6 V, behaves: filament lamp, at: rear, in series with: tail lamp, wire: {size: 1 mm², length: 200 mm}, returns to: frame}
`,
	Mended: []string{"power: 8.5 W", "power: 10 W"},
	Run: func(p *Pass) {
		for string := range p.strings() {
			motors := motorsOf(string)
			if len(motors) > 1 {
				fin := ofPart(finding.Advice, motors[0].Part)
				p.say(fin, "how %s share the voltage is not known: each takes what its own load of work makes it", wording.And(names(motors)))
			}
			for _, b := range string {
				p.judgeShare(b, string)
			}
		}
	},
}

// motorsOf are the motors of a string. Each is taken at one current whatever its voltage, which leaves
// open how several share it.
func motorsOf(string []*circuit.Branch) (list []*circuit.Branch) {
	for _, b := range string {
		if b.Load.Behaves == design.Motor {
			list = append(list, b)
		}
	}
	return list
}

// Shares of what a load in series is rated for between which it may lie; below the last it
// does not do its work, whatever is there to take the rest, and of a motor that is not critical
// below a third.
const mostSeriesShare, mostMotorShare, leastSeriesShare, leastWorkingShare, leastMotorShare = 1.1, 1.25, 0.8, 0.5, 1.0 / 3

func workingShare(b *circuit.Branch) float64 {
	if b.Load.Behaves == design.Motor && !accessory(b.Part).Critical {
		return leastMotorShare
	}
	return leastWorkingShare
}

// tooLittle is how grave it is that a load in series gets less than its share, and the limit; 0 = it is meant.
func tooLittle(b *circuit.Branch, string []*circuit.Branch, share float64) (severity finding.Severity, limit float64) {
	critical, least := accessory(b.Part).Critical, workingShare(b)
	dead := over(least, share)
	switch {
	case !over(leastSeriesShare, share):
		return 0, 0
	case critical && dead:
		return finding.Danger, least
	case !drops(string):
		return finding.Advice, leastSeriesShare
	case !dead || b.Load.Behaves == design.Resistor:
		return 0, 0
	}
	return graver(b.Load.Behaves != design.Motor, finding.Advice, finding.Fault), least
}

func (p *Pass) judgeShare(b *circuit.Branch, string []*circuit.Branch) {
	most, least, in, under := p.seriesShares(b, string)
	if in == nil {
		return
	}
	fin := ofPart(graver(accessory(b.Part).Critical, finding.Fault, finding.Danger), b.Part)
	share, figureOf, limit := most, "most", mostSeriesShare
	if b.Load.Behaves == design.Motor {
		limit = mostMotorShare
	}
	severity, leastLimit := tooLittle(b, string, least)
	switch {
	case over(most, limit):
		atMost(&fin, "share of its rated voltage", 100*most, 100*limit, "%")
	case severity > 0 && (severity == finding.Advice || !over(accessory(b.Part).NeedsV(), under.LoadV(b))): // load-undervoltage says it
		in = under
		fin.Severity, share, figureOf, limit = severity, least, "least", leastLimit
		if drops(others(string, b)) {
			fin.Change = "take less resistance in series with it, or feed it by itself"
		}
		atLeast(&fin, "share of its rated voltage", 100*least, 100*leastLimit, "%")
	default:
		return
	}
	fin.Situation = in.Situation.Name
	got, bound := quantity.Against(share, limit, quantity.Share)
	p.say(fin, "in series with %s, %s gets %s of its share of the voltage; at %s %s: it is rated %s", wording.And(names(others(string, b))), b.Part.Name, got, figureOf, bound,
		volts(b.Load.RatedV))
}

// shareOf is what a load gets of the volts, by what it is rated for, as a share of the nominal ones.
func shareOf(s *solve.Solution, b *circuit.Branch, rated float64) float64 {
	return s.LoadV(b) / (s.LoadV(b) + s.OthersV(b)) / rated
}

// seriesShares are the most and the least that a load in series gets of what it is rated for, and
// where; what wires lose is no matter of shares.
func (f *facts) seriesShares(b *circuit.Branch, string []*circuit.Branch) (most, least float64, over, under *solve.Solution) {
	rated := b.Load.RatedV / f.c.NominalAt(string[0].A)
	for _, s := range f.allSolutions() {
		if s.Status != solve.Converged || !s.LoadOn[b.Index] {
			continue
		}
		share := shareOf(s, b, rated)
		if motors := motorsOf(string); len(motors) > 1 && b.Load.Behaves == design.Motor { // the mean of all
			sum, ratedV := 0.0, 0.0
			for _, m := range motors {
				sum, ratedV = sum+s.LoadV(m), ratedV+m.Load.RatedV
			}
			share = sum / (s.LoadV(b) + s.OthersV(b)) / (ratedV / f.c.NominalAt(string[0].A))
		}
		if math.IsNaN(share) {
			continue
		}
		if over == nil || share > most {
			most, over = share, s
		}
		if under == nil || share < least {
			least, under = share, s
		}
	}
	return most, least, over, under
}
