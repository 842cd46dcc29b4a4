package whatif

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness"
	"fusewright/harness/design"
	"fusewright/harness/design/edit"
	"fusewright/harness/design/quantity"
	"fusewright/harness/network/circuit"
	"fusewright/harness/sizing"
	"fusewright/library"
)

// Offer is a value of the design that may be changed.
type Offer struct {
	ID    string   // its place in the file: "loads › left lamp › power"
	About string   // "left lamp, wire"
	Refs  []string // labels on the drawing that it is about: "E1", "W6"
	What  string   // "size", "rating", "power", "type", "on"
	Now   string   // as the file writes it, or what stands for it
	Line  int      // where it stands, or where its part begins; 0 = not known
	Given bool     // the file says it
	// Choices are what it may become, in ascending order; Free tells that any other value may be
	// written too, as the file would have it.
	Choices []string
	Free    bool

	path []string
	key  string
	load *design.Load      // of which a type is chosen
	onOf *design.Situation // of which a load is on or off
}

// Offers lists what may be changed of a design whose text is given, in the order of its parts.
// The design is as before.
func Offers(r *harness.Review, src []byte) ([]*Offer, error) {
	tree, err := edit.Open(src)
	if err != nil {
		return nil, err
	}
	o := &offers{r: r, tree: tree, known: map[string]bool{}}
	for _, v := range sizing.Values(r.Design) {
		o.value(v)
	}
	for _, l := range r.Design.Loads {
		o.load(l)
	}
	for _, s := range r.Design.Situations {
		o.situation(s)
	}
	o.battery()
	return o.list, nil
}

type offers struct {
	r    *harness.Review
	tree *edit.Tree
	list []*Offer

	known map[string]bool // by ID
}

// add looks a value up in the file; one that no record of the file holds is not offered.
func (o *offers) add(x *Offer) *Offer {
	value, line, found := o.tree.Value(x.path, x.key)
	if !found && line == 0 {
		if _, line, _ = o.tree.Value(x.path[:len(x.path)-1], ""); line == 0 {
			return nil
		}
	}
	if x.Given = found; found && value != "" {
		x.Now = value
	}
	x.Line = line
	x.ID = strings.Join(append(slices.Clone(x.path), x.key), " › ")
	if o.known[x.ID] {
		return nil
	}
	o.known[x.ID] = true
	o.list = append(o.list, x)
	return x
}

// value offers what sizing could choose.
func (o *offers) value(v *sizing.Value) {
	x := &Offer{About: v.Name(), What: whats[v.Kind()], Now: v.Given()}
	for i := range v.Count() {
		if !v.SameType(i) || !v.Alike(i) {
			continue
		}
		path, s := v.Setting(i)
		x.path, x.key = path, s.Key
		if !slices.Contains(x.Choices, s.Value) {
			x.Choices = append(x.Choices, s.Value)
		}
		if i == v.Now && v.Kind() == sizing.Fuse {
			x.Now = s.Value
		}
	}
	if x.What == "" || len(x.Choices) < 2 {
		return
	}
	for _, w := range o.r.Circuit.Wires {
		if v.Sets(w) {
			x.Refs = append(x.Refs, w.Number)
		}
	}
	for _, b := range o.r.Circuit.Branches {
		if b.Fuse != nil && v.Protects(b) {
			x.Refs = append(x.Refs, b.Fuse.Ref)
		}
	}
	if part := o.part(v.Owner()); len(x.Refs) == 0 && part != nil {
		x.Refs = []string{part.Ref}
	}
	o.add(x)
}

var whats = map[sizing.Kind]string{sizing.WireSize: "size", sizing.Fuse: "rating", sizing.RelayForm: "relay", sizing.BlockType: "block", sizing.RunCover: "cover"}

func (o *offers) part(name string) *circuit.Part {
	for _, p := range o.r.Circuit.Parts {
		if name != "" && p.Name == name && p.Source != nil {
			return p
		}
	}
	return nil
}

// load offers the draw of an accessory, and for a filament lamp an LED in its place.
func (o *offers) load(l *design.Load) {
	part := o.r.Circuit.PartOf(l)
	if part == nil {
		return
	}
	path, refs := []string{"loads", l.Name}, []string{part.Ref}
	if l.Behaves == design.FilamentLamp && l.Type != nil {
		o.add(&Offer{About: l.Name, Refs: refs, What: "LED in its place", Now: l.Type.Name, Choices: append([]string{l.Type.Name}, ledsFor(o.r.Design.Library, l.Type)...),
			path: path, key: "type", load: l})
	}
	x := &Offer{About: l.Name, Refs: refs, What: "power", Now: quantity.Plain(l.PowerW, quantity.Power), Free: true, path: path, key: "power"}
	for _, key := range []string{"current", "resistance"} { // whichever the file gives
		if value, _, found := o.tree.Value(path, key); found {
			x.key, x.What, x.Now = key, key, value
		}
	}
	x.Choices = around(x.Now, map[string]quantity.Dimension{"power": quantity.Power, "current": quantity.Current, "resistance": quantity.Resistance}[x.key])
	o.add(x)
	o.add(&Offer{About: l.Name, Refs: refs, What: "duty", Now: quantity.Plain(l.Duty.Or(1), quantity.Share), Free: true, path: path, key: "duty",
		Choices: []string{"5 %", "10 %", "20 %", "30 %", "50 %", "75 %", "100 %"}})
}

// ledsFor are the LED types of a library, those for the same place and use first.
func ledsFor(lib *library.Library, was *library.LoadType) (names []string) {
	var list []*library.LoadType
	for _, t := range lib.Loads {
		if design.Sign(t.Sign) == design.SignLED && t.Light == was.Light {
			list = append(list, t)
		}
	}
	unlike := func(t *library.LoadType) (n int) {
		if t.Stands != was.Stands {
			n++
		}
		if t.MustBurn != was.MustBurn {
			n++
		}
		return n
	}
	slices.SortStableFunc(list, func(a, b *library.LoadType) int { return cmp.Compare(unlike(a), unlike(b)) })
	for _, t := range list {
		names = append(names, t.Name)
	}
	return names
}

// rounds are the figures in which loads are commonly rated (our choice).
var rounds = []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9}

// around are round figures from a fifth of a value to three times it, itself among them.
func around(now string, dim quantity.Dimension) []string {
	v, err := quantity.Parse(now, dim)
	if err != nil || !(v > 0) {
		return []string{now}
	}
	var list []float64
	for ten := 1e-3; ten < 1e5; ten *= 10 {
		for _, r := range rounds {
			if x := r * ten; x > v/5 && x < 3*v && (x < 0.99*v || x > 1.01*v) {
				list = append(list, x)
			}
		}
	}
	list = append(list, v)
	slices.Sort(list)
	texts := make([]string, len(list))
	for i, x := range list {
		if texts[i] = quantity.Plain(x, dim); x == v {
			texts[i] = now
		}
	}
	return texts
}

// situation offers each load of a situation of the file to be on or off, and its engine speed.
func (o *offers) situation(s *design.Situation) {
	path := []string{"situations", s.Name}
	items, line, isList := o.tree.List(path, "on")
	if line == 0 || s.Derived {
		return
	}
	if value, _, found := o.tree.Value(path, "on"); found && !isList && value != "all" && value != "none" {
		return
	}
	for _, l := range o.r.Design.Loads {
		part := o.r.Circuit.PartOf(l)
		if part == nil {
			continue
		}
		now := "off"
		if slices.Contains(s.On, l) {
			now = "on"
		}
		x := &Offer{ID: strings.Join([]string{"situations", s.Name, "on", l.Name}, " › "), About: fmt.Sprintf("%s in “%s”", l.Name, s.Name), Refs: []string{part.Ref}, What: "on",
			Now: now, Line: line, Given: items != nil, Choices: []string{"off", "on"}, path: path, key: "on", load: l, onOf: s}
		o.list = append(o.list, x)
	}
	if s.EngineRPM > 0 {
		o.add(&Offer{About: "engine in “" + s.Name + "”", What: "engine speed", Now: quantity.Plain(s.EngineRPM, quantity.Speed), Free: true, path: path, key: "engine",
			Choices: []string{"stopped", "idle", "cruise"}})
	}
}

func (o *offers) battery() {
	b := &o.r.Design.Battery
	if b.CapacityAh.Given() {
		o.add(&Offer{About: "battery", What: "capacity", Now: b.CapacityAh.Text, Free: true, path: []string{"battery"}, key: "capacity", Choices: around(b.CapacityAh.Text, quantity.Charge)})
	}
}
