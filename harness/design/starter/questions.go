package starter

import (
	"strconv"
	"strings"

	"fusewright/library"
)

// Question is one thing that a builder is asked, with the answer that is usual.
type Question struct {
	Name    string // as Answers has it, in small letters with hyphens: "capacity"
	Ask     string
	Explain string // what is meant, and where to find the answer
	Unit    string // of a bare number; "" = none is taken
	List    string // of the library, whose names may be given
	usual   func(a Answers, lib *library.Library) string
	put     func(a *Answers, text string)
	of      func(a Answers) bool // nil = it is always asked
}

// Asked tells whether it is a question at all after the answers so far.
func (q Question) Asked(a Answers) bool { return q.of == nil || q.of(a) }

// Usual is the answer that is usual after those so far.
func (q Question) Usual(a Answers, lib *library.Library) string { return q.usual(a, lib) }

// Short is the question in a word or two.
func (q Question) Short() string {
	if q.Name == "length" {
		return strings.TrimPrefix(q.Ask, "length of the loom ")
	}
	return q.Name
}

// Spelt is an answer with the unit of the question where it ends in a bare number: "18", "LiFePO4 100".
func (q Question) Spelt(text string) string {
	words := strings.Fields(text)
	if q.Unit == "" || len(words) == 0 {
		return text
	}
	if _, err := strconv.ParseFloat(words[len(words)-1], 64); err != nil {
		return text
	}
	return text + " " + q.Unit
}

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
		Explain: "It sets the limits, the places, and what switches the accessories off: a relay on the key, or a house switch.",
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
	textOf(true, Question{Name: "title", Ask: "title of the design", Explain: "It stands on every sheet: Work lamps and heat, say."},
		func(a *Answers) *string { return &a.Title })
	textOf(true, Question{Name: "battery", Ask: "battery chemistry (flooded, AGM, gel, LiFePO4)", Explain: "It is printed on the battery. Flooded ones have caps, or an indicator eye. Of lithium, LiFePO4, take only one made to start engines: the board of others lets less through than a starter takes, and check says so."},
		func(a *Answers) *string { return &a.Battery })
	textOf(true, Question{Name: "capacity", Ask: "battery capacity, Ah", Unit: "Ah", Explain: "It is printed on the battery: 12 V 18 Ah."},
		func(a *Answers) *string { return &a.Capacity })
	textOf(v.second != "", Question{Name: "second", Ask: v.second + ", Ah, or none", Unit: "Ah",
		Explain: "A battery for the accessories alone, so that the other one still starts the engine. It is charged while the engine runs, through a voltage-sensing relay with a fuse at each end. LiFePO4 100 Ah is one of another chemistry: lithium is charged through a DC-DC charger."},
		func(a *Answers) *string { return &a.Second })
	textOf(v.second != "", Question{Name: "solar", Ask: "solar panels for it, W, or none", Unit: "W",
		of:      func(a Answers) bool { return a.Second != "" && a.Second != none },
		Explain: "The rated power of the panels together, as printed on them. They charge the second battery through a controller, which is chosen, with a fuse at the battery."},
		func(a *Answers) *string { return &a.Solar })
	textOf(len(v.engines) > 0, Question{Name: "engine", Ask: "engine (" + engineNames(v) + ")", Explain: "A diesel takes about twice as much out of the battery to start."},
		func(a *Answers) *string { return &a.Engine })
	textOf(true, Question{Name: "regulated", Ask: "charging voltage, V", Unit: "V", Explain: "What a meter shows across the battery posts with the battery full and the engine well above idle: about 14.2 V, or 28.2 V on a 24 V system."},
		func(a *Answers) *string { return &a.Regulated })
	textOf(true, Question{Name: "output", Ask: "charging output at engine speeds", Explain: "The most that the charging system gives, at two or more speeds, idle and cruise among them: 1300 rpm: 14 A, 4000 rpm: 30 A. The workshop manual has it, often in watts: 4000 rpm: 420 W."},
		func(a *Answers) *string { return &a.Output })
	textOf(true, Question{Name: "idle", Ask: "idle speed, rpm", Unit: "rpm", Explain: "With the engine warm."}, func(a *Answers) *string { return &a.Idle })
	textOf(true, Question{Name: "cruise", Ask: "engine speed when cruising, rpm", Unit: "rpm", Explain: "The engine speed that you run at most of the time."}, func(a *Answers) *string { return &a.Cruise })
	textOf(v.tap != "", Question{Name: "tap", Ask: "factory feed that is live with the key on, and its fuse",
		Explain: "A wire of the vehicle, such as that of the tail lamp, that switches on the relay of the accessories. It carries no more than the relay's coil. The fuse is the one in the factory fuse box. Take no wire that a control unit supervises."},
		func(a *Answers) *string { return &a.Tap })
	lightNames := ""
	if library.Default().Practice(v.practice).Afloat {
		lightNames = "A boat's lights are known by name: port light, starboard light or bow light, stern light, steaming light, all-round light or anchor light. "
	}
	listOf(Question{Name: "accessory", Ask: "accessories, separated by commas",
		Explain: "What is to be wired. Left lamp: LED auxiliary lamp gives one a name of your own. " + lightNames + "There are:", List: "loads"},
		func(a Answers, _ *library.Library) []string {
			usual, _ := Defaults(a.Vehicle)
			return usual.Accessories
		}, func(a *Answers) *[]string { return &a.Accessories })
	listOf(Question{Name: "together", Ask: "accessories that share a switch, joined by +, or none",
		Explain: "Left lamp + right lamp: one switch works both. A comma begins the next group. Any other accessory gets a switch of its own, but sockets and electronics, which have theirs."},
		func(a Answers, lib *library.Library) []string {
			return usualOf(a, lib, func(w *writer) []string { return w.pairs() })
		},
		func(a *Answers) *[]string { return &a.Together })
	off, always := "the key", "Alarms and trackers always do."
	if v.tap == "" {
		off = "the house switch"
	}
	if library.Default().Practice(v.practice).Afloat {
		always = "Alarms and trackers always do, and so does a bilge pump on its float switch."
	}
	listOf(Question{Name: "live", Ask: "accessories that stay live with " + off + " off, or none",
		Explain: "They are fed ahead of " + off + ", each through a fuse of its own at the battery, and can run it down. " + always},
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
	listOf(Question{Name: "fitted", Ask: "accessories already fitted, or none",
		Explain: "Factory parts and whatever else is in place: drawn and judged, but not bought."},
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
			Explain: "Lay a string the way the wires will go, and measure it. Slack at the ends is added.",
			usual:   func(Answers, *library.Library) string { return r.Length },
			put: func(a *Answers, text string) {
				a.Lengths = append(a.Lengths[:len(a.Lengths):len(a.Lengths)], r.Name()+": "+text)
			}})
	}
	return all
}

// usualOf asks the plan of the answers so far.
func usualOf(a Answers, lib *library.Library, of func(*writer) []string) []string {
	w, err := planned(a, lib)
	if err != nil {
		return nil
	}
	return of(w)
}
