package starter

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
)

// bank is a second battery; the zero bank is none.
type bank struct{ chemistry, capacity string }

// housePost is the name of the second battery, and of its positive post.
const housePost = "house"

// chooseEngine looks up the engine and what starts it.
func (w *writer) chooseEngine() error {
	var names []string
	for _, e := range w.v.engines {
		if strings.EqualFold(e.name, strings.TrimSpace(w.a.Engine)) {
			w.engine = e
			return nil
		}
		names = append(names, e.name)
	}
	if w.a.Engine == "" {
		return nil
	}
	if len(names) == 0 {
		return fmt.Errorf("engine: %s has no choice of engines", w.v.words)
	}
	return fmt.Errorf("engine: there is no %q (expected %s)", w.a.Engine, wording.Or(names))
}

// chooseSecond reads the second battery: a capacity, after a chemistry where it differs.
func (w *writer) chooseSecond() error {
	text := strings.TrimSpace(w.a.Second)
	if text == "" || text == none {
		return nil
	}
	if w.v.second == "" {
		return fmt.Errorf("second battery: %s has no room for one", w.v.words)
	}
	w.second.chemistry = w.a.Battery
	for _, c := range w.lib.Batteries {
		if rest, found := strings.CutPrefix(strings.ToLower(text), strings.ToLower(c.Name)+" "); found {
			w.second.chemistry, text = c.Name, rest
		}
	}
	capacity, err := quantity.Tidy(text, quantity.Charge)
	if err != nil {
		return fmt.Errorf("second battery: %w", err)
	}
	w.second.capacity = capacity
	return nil
}

// solarPart is the name of the solar panels' controller.
const solarPart = "solar"

// chooseSolar reads the power of the panels, which charge the second battery.
func (w *writer) chooseSolar() error {
	text := strings.TrimSpace(w.a.Solar)
	if text == "" || text == none {
		return nil
	}
	if w.second.capacity == "" {
		return fmt.Errorf("solar panels: they charge the second battery, and there is none")
	}
	power, err := quantity.Tidy(text, quantity.Power)
	if err != nil {
		return fmt.Errorf("solar panels: %w", err)
	}
	if watts, _ := quantity.Parse(power, quantity.Power); watts != 0 { // of 0 W there are none
		w.solar = power
	}
	return nil
}

// chooseTap reads the factory wire that the key switches, with its fuse.
func (w *writer) chooseTap() error {
	if w.v.tap == "" {
		return nil
	}
	name, amps, _ := strings.Cut(w.a.Tap, ",")
	if w.tap = strings.TrimSpace(name); !plainName.MatchString(w.tap) {
		return fmt.Errorf("factory feed: %q is no name (expected one such as %s)", w.tap, w.v.tap)
	}
	fuse, err := quantity.Tidy(amps, quantity.Current)
	if err != nil {
		return fmt.Errorf("factory feed: its fuse: %w", err)
	}
	w.tap, w.tapA = w.unique(w.tap), fuse
	return nil
}

// post is the post that the accessories are fed from; negative is the one that they return to.
func (w *writer) post() string {
	if w.second.capacity == "" {
		return "battery"
	}
	return housePost
}

// negative is where they return: that post, or the bar before it.
func (w *writer) negative() string {
	if w.bar {
		return barPart
	}
	return w.post() + " negative"
}

// firstPlace is where the first battery stands.
func (w *writer) firstPlace() string {
	if w.second.capacity != "" && w.v.start.from != "" {
		return w.v.start.from
	}
	return w.v.source
}

// home is where an accessory with a fuse of its own is fed: a winch or windlass from the battery that
// the engine charges, beside it.
func (w *writer) home(x *accessory) string {
	if x.contactor {
		return w.firstPlace()
	}
	return w.v.source
}

// converts tells whether the second battery is charged over a DC-DC charger: one of lithium would take
// more than an alternator bears, and wants a voltage of its own.
func (w *writer) converts() bool { return w.lithium(w.second.chemistry) }

// lithium tells of a chemistry whose batteries have a board of their own.
func (w *writer) lithium(chemistry string) bool {
	c := w.lib.Chemistry(chemistry)
	return c != nil && c.BoardOhm > 0
}

// postChemistry is that of the battery that the accessories are fed from.
func (w *writer) postChemistry() string { return cmp.Or(w.second.chemistry, w.a.Battery) }

func (w *writer) batteries() []string {
	if w.second.capacity == "" {
		return nil
	}
	feed := "house end, wire: {" + sized(w.linkSize()) + "length: 150 mm}"
	if w.solar != "" {
		feed = "{house end: {" + sized(w.linkSize()) + "length: 150 mm}, " + solarPart + " end: {length: 150 mm}}"
	}
	back := "returns to: battery negative" + laid("return wire", w.backSize(), w.firstPlace(), w.v.source)
	return []string{fmt.Sprintf("%s: {chemistry: %s, capacity: %s, resistance: %s, at: %s, fed by: %s, %s}", housePost,
		w.second.chemistry, w.second.capacity, w.resistance(w.second.chemistry, w.second.capacity), w.v.source, feed, back)}
}

// backSize is that of the return from the second battery to the first. Ashore it is the way to the frame too, by which what a
// lead draws that chafes through behind a large fuse returns, more than the link carries: then it is left open.
func (w *writer) backSize() string {
	if w.converts() && !w.afloat() && (w.mainRating() != "" || slices.ContainsFunc(w.list, func(x *accessory) bool { return x.isolated() && !x.contactor })) {
		return ""
	}
	return w.linkSize()
}

// The link has a fuse at each end: it is live from both. Its size is a fitter's: what flows when it
// closes on an empty battery no design says (common practice, no source).
func (w *writer) linkFuses() []string {
	if w.second.capacity == "" {
		return nil
	}
	from, rating := "charging relay", "100 A"
	if w.converts() {
		from, rating = "booster", "50 A"
	}
	entry := "{%srating: " + rating + ", at: %s, fed by: %s, wire: {" + sized(w.linkSize()) + "length: %s}}"
	list := []string{"start end: " + fmt.Sprintf(entry, w.firstFuse(w.a.Battery), w.firstPlace(), "battery", "150 mm"),
		"house end: " + fmt.Sprintf(entry, w.firstFuse(w.second.chemistry), w.v.source, from, "300 mm")}
	if w.solar != "" {
		kind := "" // two batteries side by side can drive more through it than a strip breaks
		if w.converts() {
			kind = w.firstFuse(w.second.chemistry)
		}
		list = append(list, fmt.Sprintf("%s end: {%sat: %s, fed by: %s, wire: {length: 300 mm}}", solarPart, kind, w.v.source, solarPart))
	}
	return list
}

// linkSize is that of the link's cables, metric or AWG as the practice's wire is.
func (w *writer) linkSize() string {
	switch {
	case w.converts() && w.afloat():
		return "4 AWG"
	case w.converts():
		return "16 mm²"
	case w.afloat():
		return "2 AWG"
	}
	return "35 mm²"
}

// linked gives the keys of a cable of the link.
func (w *writer) linked(key, a, b string) string { return laid(key, w.linkSize(), a, b) }

// laid gives the keys of a cable, its size left open where it is "", with a length where it ends where it begins.
func laid(key, size, a, b string) string {
	switch {
	case a == b:
		return ", " + key + ": {" + sized(size) + "length: 400 mm}"
	case size == "":
		return ""
	}
	return ", " + key + ": {size: " + size + "}"
}

func (w *writer) linkRelays() []string {
	if w.second.capacity == "" || w.converts() {
		return nil
	}
	return []string{fmt.Sprintf("charging relay: {form: voltage-sensing relay, at: %s, fed by: start end%s, coil: {returns to: %s, return wire: {length: 400 mm}}}   # joins the batteries while the engine charges",
		w.v.source, w.linked("wire", w.firstPlace(), w.v.source), w.negative())}
}

func (w *writer) chargers() (list []string) {
	if w.second.capacity == "" {
		return nil
	}
	if w.solar != "" {
		list = append(list, fmt.Sprintf("%s: {type: auto, panel: %s, at: %s, returns to: %s, return wire: {length: 400 mm}}", solarPart, w.solar, w.v.source, w.negative()))
	}
	if !w.converts() {
		return list
	}
	back := w.negative()
	if !w.afloat() && w.firstPlace() == w.v.source { // by the second battery's return it would lift what returns by the frame, were that lost
		back = "battery negative"
	}
	return append(list, fmt.Sprintf("booster: {type: DC-DC charger 30 A, at: %s, fed by: start end%s, returns to: %s%s}",
		w.v.source, w.linked("wire", w.firstPlace(), w.v.source), back, w.linked("return wire", "", "")))
}
