package derivation

import (
	"regexp"
	"slices"
	"strings"
)

// synonyms are names that builders have for one thing: a question that names nothing of the design is asked with the others.
var synonyms = [][]string{
	{"fridge", "refrigerator", "coolbox", "cooler"},
	{"lamp", "light"}, {"lamps", "lights"},
	{"windlass", "anchor winch"},
	{"plotter", "chart plotter"},
	{"deck wash", "washdown pump", "washdown"},
	{"heater", "heating"},
	{"horn", "hooter"},
	{"vhf", "radio"},
	{"heated grips", "grip heaters"},
}

// counted is a wire or fuse by its bare number: "wire 9".
var counted = regexp.MustCompile(`\b(wire|cable|fuse) ([0-9]+)( [a-z]{4,}|$)`)

// otherwise are the ways to ask a folded question with other names for the same things.
func otherwise(want string) (list []string) {
	if m := counted.FindStringSubmatch(want); m != nil {
		letter := map[string]string{"wire": "w", "cable": "w", "fuse": "f"}[m[1]]
		list = append(list, counted.ReplaceAllString(want, letter+"$2$3"))
	}
	words := " " + want + " "
	for _, group := range synonyms {
		for _, name := range group {
			if !strings.Contains(words, " "+name+" ") {
				continue
			}
			for _, other := range group {
				if other != name {
					list = append(list, strings.TrimSpace(strings.Replace(words, " "+name+" ", " "+other+" ", 1)))
				}
			}
		}
	}
	return list
}

// short adds the last word of a load's name where no other part or situation has it, and the situation's name before a comma.
func short(list []topic) []topic {
	last := func(t topic) string { return t.name[strings.LastIndex(t.name, " ")+1:] }
	for _, t := range slices.Clone(list) {
		head, _, cut := strings.Cut(t.name, ",")
		switch {
		case cut:
			t.name = head
		case t.draws && last(t) != t.name:
			t.name = last(t)
		default:
			continue
		}
		if !slices.ContainsFunc(list, func(o topic) bool {
			return slices.Contains(strings.Fields(o.name), t.name) && !slices.Equal(o.is, t.is) && (o.draws || o.name == t.name)
		}) {
			list = append(list, t)
		}
	}
	return list
}
