package starter

import (
	"strings"

	"fusewright/library"
)

// Question is one thing that a builder is asked, with the answer that is usual.
type Question struct {
	Name    string // as Answers has it, in small letters with hyphens: "capacity"
	Ask     string
	Explain string // what is meant, and where to find the answer
	Unit    string // of a bare number; "" = none is taken
	usual   func(a Answers, lib *library.Library) string
	put     func(a *Answers, text string)
}

// Usual is the answer that is usual after those so far.
func (q Question) Usual(a Answers, lib *library.Library) string { return q.usual(a, lib) }

// Put takes an answer.
func (q Question) Put(a *Answers, text string) { q.put(a, text) }

// text is a question whose usual answer is that of the vehicle.
func text(of func(a *Answers) *string) (func(Answers, *library.Library) string, func(*Answers, string)) {
	return func(a Answers, _ *library.Library) string {
			usual, _ := Defaults(a.Vehicle)
			return *of(&usual)
		}, func(a *Answers, text string) {
			*of(a) = text
		}
}

// list is a question whose answer is a list.
func list(usual func(a Answers, lib *library.Library) []string, of func(a *Answers) *[]string) (func(Answers, *library.Library) string, func(*Answers, string)) {
	return func(a Answers, lib *library.Library) string {
			if names := usual(a, lib); len(names) > 0 {
				return strings.Join(names, ", ")
			}
			return none
		}, func(a *Answers, text string) {
			*of(a) = Listed(text)
		}
}

// Listed are the entries of an answer with commas; "none" are none.
func Listed(text string) []string {
	names := []string{}
	for _, name := range strings.Split(text, ",") {
		if name = strings.TrimSpace(name); name != "" && name != none {
			names = append(names, name)
		}
	}
	return names
}

// Kind is the first question.
func Kind() Question {
	return Question{Name: "vehicle", Ask: "kind of vehicle (" + strings.Join(Vehicles(), ", ") + ")",
		Explain: "It decides the limits that hold, the places that there are, and how the accessories are fed: behind a relay that the key works, or behind a house switch.",
		usual:   func(Answers, *library.Library) string { return Vehicles()[0] },
		put:     func(a *Answers, text string) { a.Vehicle = text }}
}

// Questions are those for a kind of vehicle but its own, in the order in which they are asked.
func Questions(vehicle string) []Question {
	v := find(vehicle)
	if v == nil {
		return nil
	}
	var all []Question
	ask := func(applies bool, q Question, usual func(Answers, *library.Library) string, put func(*Answers, string)) {
		if applies {
			q.usual, q.put = usual, put
			all = append(all, q)
		}
	}
	textOf := func(applies bool, q Question, of func(a *Answers) *string) {
		usual, put := text(of)
		ask(applies, q, usual, put)
	}
	listOf := func(q Question, usual func(Answers, *library.Library) []string, of func(a *Answers) *[]string) {
		u, put := list(usual, of)
		ask(true, q, u, put)
	}
	textOf(true, Question{Name: "title", Ask: "title", Explain: "What stands on every sheet, such as Work lamps and heat."},
		func(a *Answers) *string { return &a.Title })
	textOf(true, Question{Name: "battery", Ask: "battery chemistry", Explain: "It stands on the battery: flooded (with caps to fill), AGM, gel or LiFePO4."},
		func(a *Answers) *string { return &a.Battery })
	textOf(true, Question{Name: "capacity", Ask: "battery capacity, Ah", Unit: "Ah", Explain: "It stands on the battery, as 12 V 18 Ah."},
		func(a *Answers) *string { return &a.Capacity })
	textOf(v.second != "", Question{Name: "second", Ask: v.second + ": its capacity, Ah, or none", Unit: "Ah",
		Explain: "A battery for the accessories, so that they leave enough in the first one to start the engine. It is charged while the engine runs, over a voltage-sensing relay with a fuse at each end; one of LiFePO4 (say LiFePO4 100 Ah) over a DC-DC charger."},
		func(a *Answers) *string { return &a.Second })
	textOf(len(v.engines) > 0, Question{Name: "engine", Ask: "engine (" + engineNames(v) + ")", Explain: "What a start takes out of the battery depends on it; a diesel takes about twice as much."},
		func(a *Answers) *string { return &a.Engine })
	textOf(true, Question{Name: "regulated", Ask: "charging voltage, V", Unit: "V", Explain: "What a meter shows across the battery posts with the engine well above idle and the battery full: about 14.2 V on 12 V, 28.2 V on 24 V."},
		func(a *Answers) *string { return &a.Regulated })
	textOf(true, Question{Name: "output", Ask: "charging output by engine speed", Explain: "Current that the charging system can give, at two speeds at least: 1300 rpm: 14 A, 4000 rpm: 30 A. The workshop manual has it, often as a power: 4000 rpm: 420 W."},
		func(a *Answers) *string { return &a.Output })
	textOf(true, Question{Name: "idle", Ask: "idle speed, rpm", Unit: "rpm", Explain: "Engine speed at idle, warm."}, func(a *Answers) *string { return &a.Idle })
	textOf(true, Question{Name: "cruise", Ask: "engine speed at cruise, rpm", Unit: "rpm", Explain: "Engine speed on the road or under way, as it mostly is."}, func(a *Answers) *string { return &a.Cruise })
	textOf(v.tap != "", Question{Name: "tap", Ask: "factory wire that is live with the key on, and its fuse",
		Explain: "It works the relay that feeds the accessories, and carries no more than its coil: such as the tail lamp's feed. The fuse is the factory's. Not one that a control unit supervises."},
		func(a *Answers) *string { return &a.Tap })
	listOf(Question{Name: "accessory", Ask: "accessories, separated by commas",
		Explain: "What is to be wired, by the names of `fusewright parts load`; left lamp: LED auxiliary lamp gives one a name of its own."},
		func(a Answers, _ *library.Library) []string {
			usual, _ := Defaults(a.Vehicle)
			return usual.Accessories
		}, func(a *Answers) *[]string { return &a.Accessories })
	listOf(Question{Name: "together", Ask: "which share a switch, joined by +",
		Explain: "Left lamp + right lamp are switched by one switch; a comma begins the next group. What is not named has a switch of its own, sockets and electronics none: they have their own."},
		func(a Answers, lib *library.Library) []string {
			return usualOf(a, lib, func(w *writer) []string { return w.pairs() })
		},
		func(a *Answers) *[]string { return &a.Together })
	off := "the key"
	if v.tap == "" {
		off = "the house switch"
	}
	listOf(Question{Name: "live", Ask: "which stay live with " + off + " off",
		Explain: "They are fed before " + off + ", by a fuse of their own at the battery: alarms and trackers always, and a bilge pump by its float switch. Whatever stays live can run the battery down."},
		func(a Answers, lib *library.Library) []string {
			return usualOf(a, lib, func(w *writer) (names []string) {
				for _, x := range w.list {
					if x.live {
						names = append(names, x.name)
					}
				}
				return names
			})
		},
		func(a *Answers) *[]string { return &a.Live })
	listOf(Question{Name: "fitted", Ask: "which are fitted already",
		Explain: "Factory parts, and accessories that are in place: they are drawn and judged, but not on the bill."},
		func(Answers, *library.Library) []string { return nil }, func(a *Answers) *[]string { return &a.Fitted })
	return all
}

func engineNames(v *vehicle) string {
	names := make([]string, len(v.engines))
	for i, e := range v.engines {
		names[i] = e.name
	}
	return strings.Join(names, ", ")
}

// Lengths are the questions of how long the loom is, once the accessories are known.
func Lengths(a Answers, lib *library.Library) []Question {
	runs, err := Runs(a, lib)
	if err != nil {
		return nil
	}
	var all []Question
	for _, r := range runs {
		_, unit, _ := strings.Cut(r.Length, " ")
		all = append(all, Question{Name: "length", Ask: "length of the loom from " + r.From + " to " + r.To, Unit: unit,
			Explain: "As a string lies along the way that the wires will take, from one place to the other. Slack at the ends is added.",
			usual:   func(Answers, *library.Library) string { return r.Length },
			put: func(a *Answers, text string) {
				a.Lengths = append(a.Lengths[:len(a.Lengths):len(a.Lengths)], r.Name()+": "+text)
			}})
	}
	return all
}

// usualOf asks the plan of the answers so far.
func usualOf(a Answers, lib *library.Library, of func(*writer) []string) []string {
	v := find(a.Vehicle)
	usual, _ := Defaults(a.Vehicle)
	fill(&a, usual)
	w, err := planned(v, a, lib)
	if err != nil {
		return nil
	}
	return of(w)
}
