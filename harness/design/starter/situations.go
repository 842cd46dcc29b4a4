package starter

import (
	"fmt"
	"strings"
)

// situations are what is on at once: all of it under way, what waits with the engine idling, the
// vehicle left, and one for each strong motor, float switch and what stays live.
func (w *writer) situations() []string {
	var all, few, anchored, sailing, live []string
	closed := ""
	if w.v.tap == "" && w.ways > 0 {
		closed = ", closed: [" + housePart + "]"
	}
	parked := "parked"
	if w.afloat() {
		parked = "moored"
	}
	list := []string{}
	for _, x := range w.list {
		switch {
		case x.contactor:
			list = append(list, fmt.Sprintf("working the %s: {engine: cruise, on: [%s]%s}", x.name, x.name, closed))
			if x.turns() != nil {
				list = append(list, fmt.Sprintf("%s: {engine: cruise, reversed: [%s]%s}", x.half(1), x.name, closed))
			}
			continue
		case x.isolated():
			list = append(list, fmt.Sprintf("working the %s: {engine: cruise, on: [%s]}", x.name, x.name))
			continue
		case x.light == lightAllRound && w.lights == "":
			anchored = append(anchored, x.name)
			continue
		case x.float != "":
			list = append(list, fmt.Sprintf("moored, %s by its float: {key: off, on: [%s], closed: [%s float]}", x.name, x.name, x.name))
		case x.live && !x.kind.Watches:
			live = append(live, x.name)
		}
		electronics := x.kind.Sign == "electronics" // on as long as it has power
		if x.position != "" && w.shows(x, atAnchor) {
			anchored = append(anchored, x.name)
		}
		if w.sails() && w.shows(x, underSail) && (x.position != "" || electronics) {
			sailing = append(sailing, x.name)
		}
		if x.position == "" || w.shows(x, w.driving()) {
			all = append(all, x.name)
		}
		if electronics {
			few = append(few, x.name)
		}
	}
	resting := fmt.Sprintf("waiting: {engine: idle, on: %s%s}", on(few), closed)
	if w.v.resting != "" {
		resting = fmt.Sprintf("%s, on: %s%s}", w.v.resting, on(all), closed)
	}
	if len(sailing) > 0 {
		list = append(list, fmt.Sprintf("under sail: {key: off, on: %s%s}", on(sailing), closed))
	}
	if len(anchored) > 0 {
		list = append(list, fmt.Sprintf("at anchor: {key: off, on: %s%s}", on(anchored), closed))
	}
	if w.solar != "" {
		list = append(list, "in the sun: {key: off, sun: 75 %, sun hours: 4 h}")
	}
	if len(live) > 0 {
		list = append(list, fmt.Sprintf("%s, in use: {key: off, on: %s}", parked, on(live)))
	}
	return append([]string{
		fmt.Sprintf("under way, all on: {engine: cruise, on: %s%s}", on(all), closed),
		resting, parked + ": {key: off}"}, list...)
}

func on(names []string) string {
	if len(names) == 0 {
		return none
	}
	return "[" + strings.Join(names, ", ") + "]"
}
