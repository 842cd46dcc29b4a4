package design

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/caution"
	"fusewright/harness/design/problem"
	"fusewright/harness/design/quantity"

	"gopkg.in/yaml.v3"
)

// Place is somewhere on the vehicle.
type Place struct {
	Name     string
	AmbientC Quantity
	Wet      bool
	Moves    bool // handlebar, fork, hinged panel
	// PetrolVapour can gather there; VapourGiven = the design says whether.
	PetrolVapour, VapourGiven bool
	Pos                       problem.Pos
}

// The range of ambient temperatures that a place can have, in °C: the coldest
// weather on record is -89 °C, and no wire insulation in trade lives above 300 °C.
const minAmbientC, maxAmbientC = -90, 300

var placeSection = section[Place]{
	Section: Section{Name: "place", Shape: KindNamed,
		Doc: "Somewhere on the vehicle where parts are. Parts name their place with `at`, and runs of " +
			"loom lead from place to place.",
		Short: "nothing, when there is nothing to say of it",
		Example: "places:\n  battery tray: {ambient: 45 °C}\n" +
			"  handlebar: {ambient: 40 °C, wet: yes, moves: yes}\n"},
	keys: []key[Place]{
		quantityKey(Key{Name: "ambient", Unit: quantity.Temperature, Min: minAmbientC, Max: maxAmbientC,
			Doc:     "highest air temperature there in use; not given is said in the findings",
			Example: "45 °C"}, func(p *Place) *Quantity { return &p.AmbientC }),
		yesKey(Key{Name: "wet", Default: "no", Doc: "spray or rain reaches it", Example: "yes"},
			func(p *Place) *bool { return &p.Wet }),
		yesKey(Key{Name: "moves", Default: "no", Doc: "it moves against the frame: handlebar, hinged panel",
			Example: "yes"}, func(p *Place) *bool { return &p.Moves }),
		vapourKey(),
	},
	short: func(_ *reader, _ *Place, f field) bool { return isNothing(f.node) },
}

// vapourKey keeps "no" apart from "not said": a review of a boat must ask.
func vapourKey() key[Place] {
	return saidKey(yesKey(Key{Name: "petrol vapour", Default: "no",
		Doc:     "vapour of petrol can gather there: the space of a petrol tank or engine; a boat is asked of each such place that does not say",
		Example: "yes"}, func(p *Place) *bool { return &p.PetrolVapour }),
		func(p *Place) { p.VapourGiven = true })
}

// PetrolVapour tells whether there is a place where it can gather.
func (d *Design) PetrolVapour() bool {
	return slices.ContainsFunc(d.Places, func(p *Place) bool { return p.PetrolVapour })
}

// Words in which a design says what drives a boat.
var (
	petrolWords   = []string{"petrol", "gasoline"}
	noPetrolWords = []string{"diesel", "electric launch", "electric boat", "kayak", "no engine"}
)

// SaysPetrol tells whether title or vehicle speak of petrol.
func (d *Design) SaysPetrol() bool { return anyIn(petrolWords, d.Title.Value+" "+d.Vehicle.Value) }

// SaysNoPetrol tells whether they say that what drives it burns none.
func (d *Design) SaysNoPetrol() bool {
	return !d.SaysPetrol() && anyIn(noPetrolWords, d.Title.Value+" "+d.Vehicle.Value)
}

// Says tells whether title or vehicle have a word.
func (d *Design) Says(word string) bool {
	return anyIn([]string{word}, d.Title.Value+" "+d.Vehicle.Value)
}

// anyIn tells whether a text has one of the words.
func anyIn(words []string, text string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(strings.ToLower(text), w) })
}

// NamesPetrol tells whether the papers speak of petrol: those of boats do, unless the design
// says that it burns none and names no place of it, or each of its places says that no vapour can gather there.
func (d *Design) NamesPetrol() bool {
	if d.PetrolVapour() || !d.Afloat() {
		return d.PetrolVapour()
	}
	if d.SaysNoPetrol() {
		return slices.ContainsFunc(d.Places, func(p *Place) bool { return !p.VapourGiven && anyIn(petrolWords, p.Name) })
	}
	return len(d.Places) == 0 || slices.ContainsFunc(d.Places, func(p *Place) bool { return !p.VapourGiven })
}

// Afloat tells whether the practice is one of boats.
func (d *Design) Afloat() bool { return d.Practice != nil && d.Practice.Afloat }

// Caution is what stands on each sheet and page of the design.
func (d *Design) Caution() string { return d.Cautioned(caution.OnPages(d.Afloat(), d.PetrolVapour())) }

// Cautioned is a caution that speaks of every battery where there are several.
func (d *Design) Cautioned(text string) string {
	if d.HasBanks() {
		return caution.Every(text)
	}
	return text
}

// addPlace takes the name of a place.
func addPlace(r *reader, d *Design, name string, n *yaml.Node) *Place {
	p := &Place{Name: name, Pos: r.pos(n)}
	r.places[fold(name)] = p
	d.Places = append(d.Places, p)
	return p
}

// placeRef is the name of a place still to be looked up.
type placeRef struct {
	field field
	text  Text
	to    **Place
	part  Part // the part that stands there; nil for runs
}

func placeKey[T any](k Key, to func(*T) **Place) key[T] {
	k.Kind = KindPlace
	return key[T]{Key: k, read: func(r *reader, t *T, f field) {
		if s, ok := r.sentence(f, maxName); ok {
			r.placeRefs = append(r.placeRefs, placeRef{f, s, to(t), r.current})
		}
	}}
}

// resolvePlaces looks up the places named by parts and runs.
func (r *reader) resolvePlaces() {
	names := make([]string, len(r.d.Places))
	for i, p := range r.d.Places {
		names[i] = p.Name
	}
	for _, ref := range r.placeRefs {
		*ref.to = r.places[fold(ref.text.Value)]
		if *ref.to != nil {
			continue
		}
		r.noName(ref.text.Pos, fmt.Sprintf("%s: no place is named %s", ref.field,
			quoted(ref.text.Value)), ref.text.Value, names)
		if ref.part != nil {
			r.unplaced[ref.part] = true
		} else if ref.to == &r.d.Battery.At {
			r.unplacedBattery = true
		}
	}
	r.finishRuns()
}

// finishRuns names the runs and reports those that lead nowhere.
func (r *reader) finishRuns() {
	for _, run := range r.d.Runs {
		if run.From == nil || run.To == nil {
			continue // reported already
		}
		if run.Name == "" {
			run.Name = run.From.Name + " - " + run.To.Name
		}
		if run.From == run.To {
			r.report(run.Pos, fmt.Sprintf("run %s leads from a place to itself", quoted(run.Name)),
				"two places")
		}
	}
}
