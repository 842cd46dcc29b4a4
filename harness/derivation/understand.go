package derivation

import (
	"cmp"
	"math"
	"regexp"
	"slices"
	"strings"

	"fusewright/harness/design"
	"fusewright/harness/design/problem"
	"fusewright/harness/network/circuit"
)

// said is how people ask for a kind of figure, besides by its name: any of the phrases, whose
// words stand in any order.
type said struct {
	kind    string
	phrases []string
}

// The kinds of figures as they are asked for. Of a phrase that several have the first is
// taken that there is.
var kinds = []said{
	{"heat of", []string{"heat", "power", "watts", "dissipation", "loss", "losses", "hot", "warm", "temperature"}}, // of resistors; a wire's is its temperature
	{"drop of", []string{"drop", "voltage drop", "volt drop", "voltage loss", "loss", "losses", "lost", "lose", "loses", "volts lost"}},
	{"volts at", []string{"volts", "voltage", "least voltage", "minimum voltage"}},
	{"charging current of", []string{"charging current", "charge current", "charging", "charged", "charge"}},
	{"start current of", []string{"start current", "starting current", "current at a start", "help at a start"}},
	{"current of", []string{"current", "amps", "amperes", "draw", "draws", "consumption", "power", "watts", "carries", "use", "uses", "pull", "pulls"}},
	{"limit of", []string{"limit", "drop limit", "allowed drop", "permitted drop", "limit drop", "drop limited"}},
	{"allowed current of", []string{"allowed current", "permitted current", "maximum current", "max current", "ampacity", "carry",
		"size", "wire", "cable", "mm²", "mm2", "thick", "thickness", "area", "gauge", "cross section"}},
	{"rating of", []string{"rating", "rated", "fuse", "size", "amps", "protects", "current", "allowed current", "which fuse"}},
	{"time to open of", []string{"time to open", "opening time", "open", "opens", "opening", "blow", "blows", "blow time", "trip", "trips",
		"weakest short", "clearing time"}},
	{"resistance of", []string{"resistance", "ohms", "milliohms"}},
	{"temperature of", []string{"temperature", "hot", "heat", "warm"}},
	{"crimps of", []string{"crimps", "crimp", "ends", "contacts", "terminals", "terminal", "lugs"}},
	{"cut length of", []string{"cut length", "length", "long", "cut", "length to cut"}},
	{"prospective short at", []string{"prospective short", "short", "short circuit", "least short", "weakest short", "minimum short", "fault current",
		"short circuit current", "short current"}},
	{"greatest short at", []string{"greatest short", "maximum short", "max short", "largest short", "strongest short"}},
	{"spare", []string{"spare", "balance", "surplus", "left over", "charging", "to spare", "spare current", "charge", "margin", "alternator enough", "current", "amps", "power"}},
	{"hours", []string{"hours", "last", "lasts", "long", "long last", "battery life", "life", "runtime", "run time", "time", "run", "long run", "battery last", "play", "plays"}},
	{"days", []string{"days", "standby", "stand", "long stand", "long last", "standing", "time", "long", "last", "lasts", "park", "parked", "start engine", "battery last"}},
}

// idle are words that ask and name nothing.
var idle = strings.Fields("what whats what's is are was why how does do did can could may will much many get gets a an for from to on " +
	"through with it its be there has have need needs this that when i me my show explain tell and take takes by only left until enough not never " +
	"which such feeds must should using big so way reach reaches see sees go goes on over across before bike boat van car vehicle")

// amount is a size that the question repeats: "2.5", "15 A".
var amount = regexp.MustCompile(`^[0-9]+(\.[0-9]+)?(mm²|mm2|mm|a|v|m|w|awg)?$|^([avmw]|awg)$`)

// amperes is a current that the question repeats.
var amperes = regexp.MustCompile(`\b[0-9.]+ ?a\b`)

// topic is what a question may be of: a name as typed, with what figures call it in turn.
type topic struct {
	name   string // folded
	kind   string // that may stand before it: "relay"
	is     []string
	feeds  []string // wires into it, of several: what they may carry
	offers []string // of figures to offer only: not sure to be meant
	lasts  []string // how long a load can run, by situation: offered only where that is asked
	draws  bool     // a load
	owns   bool     // a part: of what is near a miss its own figures alone are offered
}

// topics are what figures are of.
func (b *book) topics() (list []topic) {
	add := func(t topic) {
		if t.name != "" {
			t.name = fold(t.name)
			list = append(list, t)
		}
	}
	into, back := map[*circuit.Part][]string{}, map[*circuit.Part][]string{} // wires that feed it, and that return from it
	for _, w := range b.c.Wires {
		add(topic{name: w.Number, is: []string{w.Number}})
		if w.Branch.Feeds() {
			into[w.To.Part] = append(into[w.To.Part], w.Number)
		}
		if w.Role.Returns() {
			back[w.From.Part] = append(back[w.From.Part], w.Number)
		}
	}
	guards := b.c.Guards()
	for _, p := range b.c.Parts {
		t := topic{owns: p.Kind != circuit.Battery, kind: string(p.Kind), is: []string{p.Name}, offers: slices.Concat(into[p], back[p])}
		switch {
		case p.Kind == circuit.Fuse:
			t.is = []string{p.Ref}
		case len(into[p]) == 1:
			t.is = append(t.is, into[p]...)
		default:
			t.feeds = into[p]
		}
		if l, ok := p.Source.(*design.Load); ok { // how long it can run is of the situations that have it on
			t.draws = true
			for _, s := range b.d.Situations {
				if slices.Contains(s.On, l) {
					t.lasts = append(t.lasts, "hours "+during(s.Name))
				}
			}
		}
		if hot, _, ok := p.Draws(); ok && p.Kind != circuit.Relay {
			if fuses, _ := guards.Above(hot.Node); len(fuses) == 1 {
				t.is = append(t.is, fuses[0].Fuse.Ref)
			}
		}
		names := []string{p.Name, p.Ref}
		if b.only(p) {
			names = append(names, kindNames[p.Kind]...)
		}
		for _, t.name = range names {
			add(t)
			if len(back[p]) == 1 && t.name != "" {
				add(topic{name: t.name + " return", is: back[p]})
			}
		}
	}
	for _, s := range b.speeds() {
		add(topic{name: s.load.Part.Name + " " + s.position, is: []string{s.name()}})
	}
	for _, name := range []string{"start", "battery start", "start battery", "starting battery", "posts start"} {
		add(topic{name: name, is: []string{"start"}})
	}
	for _, br := range b.c.Branches {
		if br.Kind == circuit.FuseBranch && br.Fuse != nil {
			add(topic{name: br.Fuse.Ref, is: []string{br.Fuse.Ref}})
		}
	}
	for _, s := range b.d.Situations {
		add(topic{name: s.Name, is: []string{during(s.Name)}})
		for _, bank := range b.d.Batteries {
			add(topic{name: bank.Name + " " + s.Name, is: []string{"of " + bank.Name + " " + during(s.Name)}})
		}
	}
	for _, speed := range []string{"idle", "cruise"} {
		add(topic{name: speed, is: []string{"at " + speed}})
	}
	for _, name := range []string{"parked", "standby", "key off", "engine off", "stand"} {
		add(topic{name: name, is: []string{"parked"}})
	}
	return short(list)
}

// understood are the names of the figures that a folded question may mean, all of whose words
// are accounted for: by what it is of, by a phrase for a kind, and by words that name nothing.
func (b *book) understood(want string) (names []string) {
	all, best := strings.Fields(want), 0
	for _, t := range b.topics() {
		of := strings.Fields(t.name)
		rest, found := without(all, of)
		if !found || len(of) < best {
			continue
		}
		if len(of) > best {
			best, names = len(of), nil
		}
		rest = slices.DeleteFunc(rest, func(word string) bool { return slices.Contains(idle, word) || amount.MatchString(word) })
		lasts := t.lasts
		for _, name := range t.lasts {
			if left, named := without(rest, strings.Fields(fold(name))[1:]); named {
				rest, lasts = left, []string{name}
				break
			}
		}
		if t.owns && len(rest) == 0 { // a verb or a size tells what is asked
			switch {
			case amperes.MatchString(want):
				rest = []string{"fuse"}
			case slices.ContainsFunc(all, func(word string) bool { return strings.HasPrefix(word, "take") || strings.HasPrefix(word, "need") }) && slices.Contains(all, "much"):
				rest = []string{"current"}
			}
		}
		if filler := []string{"wire", "cable", "fuse", t.kind}; len(rest) > 1 {
			rest = slices.DeleteFunc(rest, func(word string) bool { return slices.Contains(filler, word) })
		}
		for _, matches := range []func(said, []string) bool{said.just, said.within} {
			for _, k := range kinds {
				if !matches(k, rest) {
					continue
				}
				for _, is := range t.is {
					names = append(names, k.kind+" "+is)
				}
				if k.kind == "allowed current of" {
					names = append(names, b.busiest(t.feeds)...)
				}
				if k.kind == "hours" {
					names = append(names, b.soonest(lasts)...)
				}
			}
		}
		if name := map[string]string{"parked": "days parked", "start": "volts at start"}[t.is[0]]; name != "" && len(rest) == 0 {
			names = append(names, name)
		}
	}
	return names
}

// kindNames are what people call a part by its kind where a design has only one such.
var kindNames = map[circuit.Kind][]string{circuit.Resistor: {"resistor", "dropping resistor"}, circuit.Diode: {"diode", "isolator"}}

func (b *book) only(part *circuit.Part) bool {
	return !slices.ContainsFunc(b.c.Parts, func(p *circuit.Part) bool { return p != part && p.Kind == part.Kind })
}

// busiest is what is allowed to that of several wires which carries most.
func (b *book) busiest(wires []string) []string {
	best, most := "", -1.0
	for _, number := range wires {
		if worst, _ := b.worstAmps(b.wire(number).Branch); worst.Corner > most {
			best, most = number, worst.Corner
		}
	}
	if best == "" {
		return nil
	}
	return []string{"allowed current of " + best}
}

// without takes words out of others; false where they do not all stand there in that order.
func without(all, out []string) (rest []string, found bool) {
	for _, word := range all {
		if len(out) > 0 && word == out[0] {
			out = out[1:]
		} else {
			rest = append(rest, word)
		}
	}
	return rest, len(out) == 0
}

// just tells whether words are one of the phrases.
func (k said) just(words []string) bool {
	return slices.ContainsFunc(k.phrases, func(p string) bool { return sameWords(fold(p), words) })
}

// within tells whether words have one of the phrases among them, and no others than stand in the phrases.
func (k said) within(words []string) bool {
	all := strings.Fields(fold(strings.Join(k.phrases, " ")))
	return !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(all, w) }) &&
		slices.ContainsFunc(k.phrases, func(p string) bool {
			return !slices.ContainsFunc(strings.Fields(fold(p)), func(w string) bool { return !slices.Contains(words, w) && !slices.Contains(idle, w) })
		})
}

// soonest is that of some names of hours in which the batteries are down first.
func (b *book) soonest(names []string) (list []string) {
	least := math.Inf(1)
	for _, l := range slices.Concat(b.r.Balanced().Lines, b.r.Balanced().KeyOff) {
		name := "hours " + during(l.Situation.Name)
		hours := []float64{l.BatteryHours}
		for _, bank := range l.Banks {
			hours = append(hours, bank.Hours)
		}
		for _, h := range hours {
			if slices.Contains(names, name) && h < least {
				list, least = []string{name}, h
			}
		}
	}
	return list
}

// sameWords tells whether a phrase has just those words, in any order, besides those that name nothing.
func sameWords(phrase string, words []string) bool {
	of := slices.DeleteFunc(strings.Fields(phrase), func(word string) bool { return slices.Contains(idle, word) })
	if len(of) != len(words) {
		return false
	}
	for _, w := range of {
		if !slices.Contains(words, w) {
			return false
		}
	}
	return true
}

// mostNear is how many choices a miss offers.
const mostNear = 3

// nearest are the figures whose names have most of the words of a question, or of what those
// stand for, typed well or nearly so; of equals the first.
func (b *book) nearest(what string) []string {
	words := strings.Fields(fold(what))
	for _, k := range kinds {
		if slices.ContainsFunc(k.phrases, func(p string) bool { _, all := without(words, strings.Fields(fold(p))); return all }) {
			words = append(words, strings.Fields(fold(k.kind))...)
		}
	}
	var own []string // of the part that the question names, by its longest name
	longest, asked := 0, words
	for _, t := range b.topics() {
		of := strings.Fields(t.name)
		if _, found := without(asked, of); !found {
			continue
		}
		all := slices.Concat(t.is, t.offers)
		for _, of := range all {
			words = append(words, strings.Fields(fold(of))...)
		}
		if t.owns && len(of) > longest {
			longest, own = len(of), nil
		}
		if t.owns && len(of) == longest {
			own = append(append(own, all...), t.lasts...)
		}
	}
	slices.Sort(words)
	words = slices.Compact(words)
	var list []choice
	all := slices.Collect(b.asked())
	if its := slices.DeleteFunc(slices.Clone(all), func(a *Asked) bool {
		return !slices.ContainsFunc(own, func(of string) bool { return strings.HasSuffix(" "+a.What, " "+of) })
	}); len(its) > 0 {
		all = its
	}
	for _, a := range all {
		most := 0.0
		for _, name := range append(a.also, a.What) {
			most = max(most, likeness(words, strings.Fields(fold(name))))
		}
		list = append(list, choice{a, most})
	}
	if likeness(words, []string{"finding"}) > 0 { // else the rules need not run
		for _, f := range b.numbered() {
			name := findingName(f)
			list = append(list, choice{&Asked{What: name}, likeness(words, strings.Fields(name))})
		}
	}
	return offered(list)
}

// offered are the best of choices.
func offered(list []choice) (out []string) {
	slices.SortStableFunc(list, func(x, y choice) int { return cmp.Compare(y.score, x.score) })
	least := leastLikeness
	for _, c := range list {
		if c.score < least || len(out) == mostNear {
			break
		}
		if c.there() {
			out, least = append(out, c.What), max(least, likeBest*c.score)
		}
	}
	return out
}

// choice is a figure that may be meant, and how alike the question is to its names.
type choice struct {
	*Asked
	score float64
}

// Of how alike a question and a name are: a word typed nearly well counts less than one typed
// well, and what the name has besides takes a little off. Choices of much less than the best
// are none.
const (
	nearWord, wordMissed    = 0.7, 0.1
	leastLikeness, likeBest = 0.5, 0.7
)

func likeness(question, name []string) (score float64) {
	used := 0
	for _, q := range question {
		switch {
		case slices.Contains(name, q):
			score, used = score+1, used+1
		case len(q) > 3 && problem.Nearest(q, name) != "":
			score, used = score+nearWord, used+1
		}
	}
	return score - wordMissed*float64(max(0, len(name)-used))
}
