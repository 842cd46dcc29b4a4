package starter

import "fmt"

// buttonAfloat is what works a windlass: a sealed button under the foot, which bears a contactor's coil.
const buttonAfloat = "push button 3 A"

// turns are the two directions of a motor that a contactor reverses; nil = it turns one way.
func (x *accessory) turns() []string {
	if !x.contactor {
		return nil
	}
	return x.kind.Turns
}

// half is the half of the contactor that turns a motor one way.
func (x *accessory) half(i int) string { return x.name + " " + x.kind.Turns[i] }

// reversing are the two halves of the contactor that turns a motor either way.
func (w *writer) reversing(x *accessory) []string {
	coil := "coil: {fed by: %s button, returns to: " + w.v.ground[""] + ", suppressed by: resistor}"
	return []string{
		fmt.Sprintf("%s: {form: reversing contactor 150 A, at: %s, fed by: %s isolator, wire: {length: 300 mm}, returns to: battery negative, "+
			"return wire: {length: 400 mm}, "+coil+", stays live: \"its isolator is opened on leaving\"}", x.half(0), w.home(x), x.name, x.half(0)),
		fmt.Sprintf("%s: {other half of: %s, "+coil+"}", x.half(1), x.half(0), x.half(1))}
}

// buttons work a contactor while they are held: afloat on deck beside the motor, else at the dash.
func (w *writer) buttons(x *accessory) (list []string) {
	if !x.contactor {
		return nil
	}
	at, kind, names := w.v.zones["dash"], w.v.rocker, []string{x.name + " switch"}
	if x.turns() != nil {
		names = []string{x.half(0) + " button", x.half(1) + " button"}
		if w.afloat() {
			at, kind = w.v.zones["front"], buttonAfloat
		}
	}
	for _, name := range names {
		list = append(list, fmt.Sprintf("%s: {type: %s, momentary: yes, at: %s, fed by: %s %d%s}", name, kind, at, blockPart, w.control,
			w.within(at, w.v.block)))
	}
	return list
}
