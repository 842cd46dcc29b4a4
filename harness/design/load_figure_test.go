package design

import "testing"

// What a load's figure is, how long it is on and what it comes with: the design's
// own first, then its type's. That the type's figure is the most it draws holds for the design's too.
func TestLoadFigures(t *testing.T) {
	d := mustRead(t, heading+`
wire: {size: 1.5 mm²}
fuses: {main: {rating: 20 A, at: tray, fed by: battery, wire: {size: 4 mm²}}}
loads:
  own: {current: 5 A, figure: highest, on for: 30 s, every: 10 min, lead: {size: 1 mm², length: 300 mm}, maximum fuse: 7.5 A, at: seat, fed by: main, returns to: stud}
  plain: {current: 5 A, at: seat, fed by: main, returns to: stud}
  socket: {type: accessory socket, at: seat, fed by: main, returns to: stud}
  small socket: {type: accessory socket, power: 30 W, at: seat, fed by: main, returns to: stud}
  stop lamp: {type: bulb 21 W, at: seat, fed by: main, returns to: stud}
  other lamp: {type: bulb 21 W, power: 10 W, at: seat, fed by: main, returns to: stud}
  horn: {type: horn, at: seat, fed by: main, returns to: stud}
  long horn: {type: horn, on for: 20 s, at: seat, fed by: main, returns to: stud}
grounds: {stud: {at: seat}}
`)
	for i, want := range []struct {
		figure       string
		mostW        float64
		onS, everyS  float64
		mm2, m, fuse float64
	}{
		{"highest", 0, 30, 600, 1, 0.3, 7.5},
		{figure: "typical"},
		{figure: "highest"},
		{figure: "highest"},
		{figure: "typical", mostW: 22.1},
		{figure: "typical"},
		{figure: "typical", onS: 5, everyS: 60},
		{figure: "typical", onS: 20},
	} {
		x := d.Loads[i]
		got := want
		got.figure, got.mostW, got.onS, got.everyS = x.Figure, x.MostW, x.OnForS.Value, x.EveryS.Value
		got.mm2, got.m, got.fuse = x.Lead.AreaMm2.Value, x.Lead.LengthM.Value, x.MostFuseA.Value
		if got != want {
			t.Errorf("%s: %+v, want %+v", x.Name, got, want)
		}
	}
}
