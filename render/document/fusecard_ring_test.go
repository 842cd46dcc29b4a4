package document_test

import (
	"strings"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/render/document"
)

const ringText = `fusewright: 1
title: ring
system: 12 V
practice: camper
battery: {chemistry: AGM, capacity: 100 Ah, resistance: 4 mΩ, at: box}
places: {box: {ambient: 30 °C}}
fuses:
  left: {type: marine strip, rating: 50 A, at: box, fed by: battery, wire: {size: 16 mm², length: 150 mm}}
  right: {type: marine strip, rating: 50 A, at: box, fed by: battery, wire: {size: 16 mm², length: 150 mm}}
  joint: {type: marine strip, rating: 50 A, at: box, fed by: front bar 2, wire: {size: 16 mm², length: 200 mm}}
  f1: {rating: 5 A, at: box, fed by: front bar 1, wire: {size: 1.5 mm², length: 150 mm}}
  f2: {rating: 5 A, at: box, fed by: rear bar 1, wire: {size: 1.5 mm², length: 150 mm}}
blocks:
  front bar: {type: bus bar 4 way, at: box, fed by: left, wire: {size: 16 mm², length: 2 m}, ways: {1: none, 2: none}}
  rear bar: {type: bus bar 4 way, at: box, fed by: FEEDS, wire: {size: 16 mm², length: 3 m}, ways: {1: none}}
loads:
  lamp 1: {power: 20 W, at: box, behaves: resistor, fed by: f1, wire: {size: 1.5 mm², length: 500 mm}, returns to: battery negative, stays live: test}
  lamp 2: {power: 20 W, at: box, behaves: resistor, fed by: f2, wire: {size: 1.5 mm², length: 500 mm}, returns to: battery negative, stays live: test}
`

// Of a ring one fuse out leaves all of it live: at each of its fuses, and at the way that a leg leaves by, the card
// names all of them; one that hangs on the ring is like any other.
func TestFuseCardOfARing(t *testing.T) {
	for _, c := range []struct {
		name, feeds, says string
		times             int
	}{
		{"ring", "[right, joint]", "ring, live from both ends: take out F1, F2, F3; feeds lamp 1, lamp 2", 4},
		{"no ring", "right", "ring, live", 0},
		{"a feed without a fuse", "[right, joint, battery]", "ring, live from both ends: isolate the battery; feeds lamp", 4},
	} {
		card := strings.Join(strings.Fields(strings.ReplaceAll(strings.Join(said(document.FuseCard(reviewtest.Of(t, []byte(strings.Replace(ringText, "FEEDS", c.feeds, 1))))), " "), "|", " ")), " ")
		if n := strings.Count(card, c.says); n != c.times {
			t.Errorf("%s: %q stands there %d times, want %d:\n%s", c.name, c.says, n, c.times, card)
		}
		if n := strings.Count(card, "ring, live"); n != c.times {
			t.Errorf("%s: %d rows speak of a ring, want %d", c.name, n, c.times)
		}
	}
}
