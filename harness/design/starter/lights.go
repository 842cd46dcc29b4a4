package starter

import (
	"fmt"
	"slices"
	"strings"

	"fusewright/harness/design/wording"
)

// The lights of a boat, as the library has them. An all-round white one is shown at anchor, and on
// a boat under 12 m with power in place of steaming light and sternlight.
const lightSide, lightStern, lightSteaming, lightAllRound = "side", "stern", "steaming", "all-round"

// The positions of their switch but off. Which lights are shown in each: COLREGS rules 23, 25 and
// 30; where they stand: annex I (from memory).
const underSail, underPower, atAnchor = "under sail", "under power", "at anchor"

// showing is a position of the navigation lights' switch with the lights that are shown in it.
type showing struct {
	position string
	lights   []string
}

// lightOf is which of a boat's lights an accessory is: what its name says in the library's words,
// as "stern light", else what its kind is; "" = none.
func (w *writer) lightOf(x *accessory) string {
	if !w.afloat() || !x.kind.MustBurn {
		return ""
	}
	if named := w.lib.Load(x.name); named != nil && named.Light != "" {
		return named.Light
	}
	return x.kind.Light
}

// lightsByPosition hangs a boat's navigation lights on a switch with positions, with a fuse of
// their own. A light that is alone, or only shown at anchor, has a plain switch.
func (w *writer) lightsByPosition() {
	has := map[string]int{}
	for _, x := range w.list {
		if x.light = w.lightOf(x); x.light != "" && !x.live {
			has[x.light]++
		}
	}
	all := has[lightSide] + has[lightStern] + has[lightSteaming]
	if all == 0 || all+has[lightAllRound] < 2 {
		return
	}
	w.shown, w.lacking = shownBy(has)
	w.ways++
	w.lights, w.lightsWay = w.unique("navigation lights"), w.ways
	for _, x := range w.list {
		if x.light != "" && !x.live {
			x.position = w.outputOf(x.light)
		}
	}
}

// shownBy says what is shown when, of the lights that there are, and which lack.
func shownBy(has map[string]int) (list []showing, lacking []string) {
	lacks := func(missing bool, what string) {
		if missing {
			lacking = append(lacking, what)
		}
	}
	lacks(has[lightSide] == 0, "sidelights")
	power := []string{lightSide, lightAllRound}
	if has[lightSteaming] > 0 {
		power = []string{lightSide, lightStern, lightSteaming}
		lacks(has[lightStern] == 0, "a sternlight")
	}
	drives := has[lightSteaming]+has[lightAllRound] > 0
	if has[lightStern] > 0 || !drives {
		list = append(list, showing{underSail, []string{lightSide, lightStern}})
		lacks(has[lightStern] == 0, "a sternlight")
	}
	if drives {
		list = append(list, showing{underPower, power})
	}
	lacks(!drives, "a steaming light, or an all-round one, for under power")
	if has[lightAllRound] > 0 {
		list = append(list, showing{atAnchor, []string{lightAllRound}})
	}
	lacks(has[lightAllRound] == 0, "an anchor light")
	for i := range list {
		list[i].lights = slices.DeleteFunc(list[i].lights, func(l string) bool { return has[l] == 0 })
	}
	return list, lacking
}

// in are the positions in which a light is shown.
func (w *writer) in(light string) (list []string) {
	for _, s := range w.shown {
		if slices.Contains(s.lights, light) {
			list = append(list, s.position)
		}
	}
	return list
}

// outputOf is the output on which a light hangs: lights that are always shown together share that of
// the first of them.
func (w *writer) outputOf(light string) string {
	for _, other := range []string{lightSide, lightStern, lightSteaming} {
		if slices.Equal(w.in(other), w.in(light)) {
			if other == lightSide {
				return "running"
			}
			return other
		}
	}
	return light
}

// outputs are those of a position.
func (w *writer) outputs(s showing) (list []string) {
	for _, light := range s.lights {
		if out := w.outputOf(light); !slices.Contains(list, out) {
			list = append(list, out)
		}
	}
	return list
}

// allOutputs are those of every position.
func (w *writer) allOutputs() (list []string) {
	for _, s := range w.shown {
		for _, out := range w.outputs(s) {
			if !slices.Contains(list, out) {
				list = append(list, out)
			}
		}
	}
	return list
}

// lightSwitch is the entry of the navigation lights' switch; nil = there is none.
func (w *writer) lightSwitch() []string {
	if w.lights == "" {
		return nil
	}
	positions := "off: none"
	for _, s := range w.shown {
		outs := w.outputs(s)
		text := strings.Join(outs, ", ")
		if len(outs) > 1 {
			text = "[" + text + "]"
		}
		positions += ", " + s.position + ": " + text
	}
	kind := w.v.rocker
	if len(w.shown) > 2 { // more than a rocker has
		kind = "rotary switch 16 A"
	}
	dash := w.v.zones["dash"]
	return []string{fmt.Sprintf("%s: {type: %s, at: %s, fed by: %s %d%s, positions: {%s}}", w.lights, kind, dash, blockPart,
		w.lightsWay, w.within(dash, w.v.block), positions)}
}

// lightsNote is what has to be said of the lights; "" without them.
func (w *writer) lightsNote() string {
	if w.lights == "" {
		return ""
	}
	note := "Lights as COLREGS rules 22 to 25 and 30 and annex I have them (from memory: read the rules of your\nwaters). Sidelights: a red and a green one, or both in one."
	if len(w.lacking) > 0 {
		note += "\nThe rules want besides: " + wording.And(w.lacking) + "."
	}
	if slices.Contains(w.in(lightAllRound), underPower) {
		note += "\nUnder power one all-round light in place of steaming light and sternlight: on boats under 12 m only."
	}
	return note
}

// driving is the position under power; under sail where there is none.
func (w *writer) driving() string {
	if slices.ContainsFunc(w.shown, func(s showing) bool { return s.position == underPower }) {
		return underPower
	}
	return underSail
}

// sails tells of a boat whose lights differ under sail.
func (w *writer) sails() bool {
	return w.driving() == underPower && len(w.shown) > 0 && w.shown[0].position == underSail
}

// shownTogether tells of lights that the positions show together anyhow.
func (w *writer) shownTogether(group string) bool {
	output := ""
	for i, name := range strings.Split(group, "+") {
		x, err := w.named(name)
		if err != nil || x.position == "" || i > 0 && x.position != output {
			return false
		}
		output = x.position
	}
	return true
}

// shows tells whether an accessory is on in a position of the lights' switch: what is no light is.
func (w *writer) shows(x *accessory, position string) bool {
	return x.position == "" || slices.Contains(w.in(x.light), position)
}

// The places of a mast with the usual lengths of the loom: the steaming light over the sidelights and
// forward, the all-round light at the head, or where the steaming light would be if there is none.
const mastPlace, headPlace, mastRun, headRun = "mast", "masthead", "3 m", "3 m"

// hasLight tells whether there is one of a kind.
func (w *writer) hasLight(light string) bool {
	return slices.ContainsFunc(w.list, func(x *accessory) bool { return x.light == light })
}

// mastPlaces are those with lights. A boat has a mast for its lights where its lights tell so.
func (w *writer) mastPlaces() []string {
	switch {
	case w.hasLight(lightSteaming) && w.hasLight(lightAllRound):
		return []string{mastPlace, headPlace}
	case w.hasLight(lightSteaming), w.hasLight(lightStern) && w.hasLight(lightAllRound):
		return []string{mastPlace}
	}
	return nil
}

// lightPlace is where a light stands; without a mast the all-round light shines from the stern.
func (w *writer) lightPlace(x *accessory) string {
	masts := w.mastPlaces()
	switch {
	case x.light == lightSteaming:
		return mastPlace
	case x.light == lightAllRound && len(masts) > 0:
		return masts[len(masts)-1]
	case x.light == lightSide:
		return w.v.zones["front"]
	}
	return w.v.zones["rear"]
}
