package starter

import (
	"fmt"
	"slices"
	"strings"
)

// barPart is the bar at a negative post that would bear more lugs than it takes; plusBarPart that of a
// positive post, for the small fuses that stay live, behind a fuse of its own or, at a lithium post, behind
// the main fuse: a blade fuse does not break what such a post drives.
const barPart, plusBarPart, barFusePart = "negative post bar", "positive post bar", "standing"

// barWays are those of the plus bar (library: bus bar 10 way).
const barWays = 10

// lugsAfloat and lugsAshore are how many a post takes (ABYC E-11, two sources; ashore common practice, no
// source).
const lugsAfloat, lugsAshore = 4, 5

// countLugs gives a post a bar where more would meet there than it takes, the cables between two
// batteries among them.
func (w *writer) countLugs() error {
	most, plus, minus := lugsAshore, 0, 0
	if w.afloat() {
		most = lugsAfloat
	}
	if w.second.capacity != "" {
		plus, minus = 1, 1
	}
	for _, list := range [][]string{w.grounds(), w.relays(), w.chargers(), w.loads()} {
		minus += strings.Count(strings.Join(list, "\n"), "returns to: "+w.negative())
	}
	plus += strings.Count(strings.Join(w.fuses(), "\n"), "fed by: "+w.post()+",")
	if w.solar != "" {
		plus++
	}
	small := len(slices.DeleteFunc(slices.Clone(w.list), func(x *accessory) bool { return !w.small(x) }))
	lithium := w.lithium(w.postChemistry())
	w.bar, w.plusBar = minus > most, w.v.first != "" && small <= barWays && (plus > most && small > 1 || lithium && small > 0)
	w.barBehindMain = w.plusBar && lithium && w.ways > 0
	return nil
}

// small tells of an accessory with a small fuse of its own at the post.
func (w *writer) small(x *accessory) bool {
	return x.way == 0 && x.leads == nil && x.position == "" && !x.contactor && !x.isolated() && !w.behindMain(x)
}

// mainRating is that of a main fuse behind which others hang than the panel: twice and more of theirs, so that they open
// first, which its stout wire bears (common practice, no source); "" = left open.
func (w *writer) mainRating() string {
	if w.trunk() == "" || !w.barBehindMain && !slices.ContainsFunc(w.list, w.tapsMain) {
		return ""
	}
	return "rating: 60 A, "
}

const barStaysLive = `stays live: "what stays live hangs on it"`

// barWire is as thick as the bar's screws take, so that the bar's fuse protects it.
func (w *writer) barWire() string {
	if w.afloat() {
		return "10 AWG"
	}
	return "6 mm²"
}

func (w *writer) barFuse() []string {
	if !w.plusBar || w.barBehindMain {
		return nil
	}
	return []string{fmt.Sprintf("%s: {%sat: %s, fed by: %s, wire: {length: 150 mm}, %s}", barFusePart, w.firstFuse(w.postChemistry()),
		w.v.source, w.post(), barStaysLive)}
}

func (w *writer) barBlock() []string {
	if !w.plusBar {
		return nil
	}
	from, size := barFusePart, ""
	if w.barBehindMain {
		from, size = mainPart, w.trunk()
	}
	list := []string{plusBarPart + ":", "  type: bus bar 10 way", "  at: " + w.v.source, "  fed by: " + from,
		"  wire: {" + sized(size) + "length: 250 mm}", "  " + barStaysLive, "  ways:"}
	for _, x := range w.list {
		if w.small(x) {
			list = append(list, fmt.Sprintf("    %d: {fuse: none}   # %s", len(list)-6, x.name))
		}
	}
	return list
}
