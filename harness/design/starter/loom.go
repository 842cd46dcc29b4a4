package starter

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/quantity"
	"fusewright/harness/design/wording"
	"fusewright/library"
)

// Run is a stretch of the loom with the length that it has in the design.
type Run struct{ From, To, Length string }

// Name is how Answers.Lengths names it.
func (r Run) Name() string { return r.From + " - " + r.To }

// Runs are the stretches of loom that a design of some answers has.
func Runs(a Answers, lib *library.Library) ([]Run, error) {
	w, err := planned(a, lib)
	if err != nil {
		return nil, err
	}
	list := make([]Run, len(w.runs))
	for i, r := range w.runs {
		list[i] = Run{r.from, r.to, r.length}
	}
	return list, nil
}

// layRuns takes the vehicle's runs, that of strong motors and that of a first battery apart, with
// the lengths that the builder gives.
func (w *writer) layRuns() error {
	w.runs = slices.Clone(w.v.runs)
	if w.firstPlace() != w.v.source {
		w.runs = append(w.runs, w.v.start)
	}
	from := w.v.block
	for i, to := range w.mastPlaces() {
		w.runs = append(w.runs, run{from, to, []string{mastRun, headRun}[i], "chafes: yes, cover: auto"})
		from = to
	}
	if i := slices.IndexFunc(w.list, (*accessory).heavy); i >= 0 {
		w.runs = append(w.runs, run{w.home(w.list[i]), w.v.heavy, w.v.heavyRun, "chafes: yes, cover: auto"})
	}
	for _, text := range w.a.Lengths {
		name, length, _ := strings.Cut(text, ":")
		tidied, err := quantity.Tidy(length, quantity.Length)
		if err != nil {
			return fmt.Errorf("length of %s: %w", strings.TrimSpace(name), err)
		}
		if metres, err := quantity.Parse(tidied, quantity.Length); err != nil || metres <= 0 {
			return fmt.Errorf("length of %s: %q (expected more than nothing)", strings.TrimSpace(name), length)
		}
		i := slices.IndexFunc(w.runs, func(r run) bool { return strings.EqualFold(Run{r.from, r.to, ""}.Name(), strings.TrimSpace(name)) })
		if i < 0 {
			var names []string
			for _, r := range w.runs {
				names = append(names, Run{r.from, r.to, ""}.Name())
			}
			return fmt.Errorf("no loom runs %q (expected %s)", strings.TrimSpace(name), wording.Or(names))
		}
		w.runs[i].length = tidied
	}
	return nil
}

// places are those of the vehicle, with that of strong motors and that of a first battery apart.
func (w *writer) places() []string {
	list := slices.Clone(w.v.places)
	if w.firstPlace() != w.v.source {
		list = append(list, w.firstPlace()+": {ambient: 60 °C}")
	}
	for _, p := range w.mastPlaces() {
		list = append(list, p+": {ambient: 40 °C, wet: yes}")
	}
	if slices.ContainsFunc(w.list, (*accessory).heavy) {
		list = append(list, w.v.heavy+": {ambient: 40 °C, wet: yes}")
	}
	return list
}

func (w *writer) laid() []string {
	var list []string
	for _, r := range w.runs {
		entry := fmt.Sprintf("- {from: %s, to: %s, length: %s, %s}", r.from, r.to, r.length, r.keys)
		if r.to == w.v.heavy {
			entry += "   # strong motors alone: wires that share a loom heat each other"
		}
		list = append(list, entry)
	}
	return list
}
