package charging_test

import (
	"encoding/csv"
	"math"
	"math/rand"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/formula/charging"
)

// points makes a curve's points from pairs of speed and current.
func points(pairs ...float64) []design.OutputPoint {
	var out []design.OutputPoint
	for i := 0; i+1 < len(pairs); i += 2 {
		out = append(out, design.OutputPoint{
			RPM:      design.Quantity{Value: pairs[i], Text: "given"},
			CurrentA: design.Quantity{Value: pairs[i+1], Text: "given"}})
	}
	return out
}

// curve is the curve through pairs of speed and current, no derating given.
func curve(pairs ...float64) *charging.Curve {
	return charging.Of(&design.Charging{Output: points(pairs...)})
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) && !(math.IsNaN(got) && math.IsNaN(want)) {
		t.Errorf("%s = %.6g, want %.6g ± %g", what, got, want, tolerance)
	}
}

// published reads the measured output curves by name, in order of speed.
func published(t *testing.T) map[string][]float64 {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "validation", "reference", "output_curves.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	in := csv.NewReader(f)
	in.Comment = '#'
	rows, err := in.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	curves := map[string][]float64{}
	for _, r := range rows[1:] {
		rpm, err1 := strconv.ParseFloat(r[2], 64)
		amps, err2 := strconv.ParseFloat(r[3], 64)
		if err1 != nil || err2 != nil || r[5] == "" {
			t.Fatalf("bad row %v", r)
		}
		curves[r[0]] = append(curves[r[0]], rpm, amps)
	}
	return curves
}

// TestPublishedPointsAreMet: the curve passes through every documented point.
func TestPublishedPointsAreMet(t *testing.T) {
	for name, pairs := range published(t) {
		c := curve(pairs...)
		for i := 0; i+1 < len(pairs); i += 2 {
			near(t, name, c.Amps(pairs[i]), pairs[i+1], 1e-9)
		}
	}
}

// smooth is the smooth curve through pairs of speed and current.
func smooth(pairs ...float64) *charging.Curve {
	return charging.Of(&design.Charging{Output: points(pairs...), Curve: "smooth"})
}

// TestLeftOutPoints leaves every inner documented point out in turn and asks both
// curves through the others for it. The smooth one is nearer, off by 2.1 A in all
// against 4.5 A, but it promises up to 0.7 A more than the machine gives; straight
// lines lie within a value read off a chart, ±10 %, and above no point by more
// than the rounding of the table to whole amperes. Hence they are the usual ones.
func TestLeftOutPoints(t *testing.T) {
	pairs := published(t)["outboard_v6_52A"]
	const rounding = 0.5 // A
	offStraight, offSmooth, above := 0.0, 0.0, 0.0
	for i := 4; i+3 < len(pairs); i += 2 { // the steep first stretch is not left out
		without := append(append([]float64{}, pairs[:i]...), pairs[i+2:]...)
		straight, bent := curve(without...).Amps(pairs[i]), smooth(without...).Amps(pairs[i])
		what := strconv.Itoa(int(pairs[i])) + " rpm"
		near(t, what+", straight", straight, pairs[i+1], 0.1*pairs[i+1])
		near(t, what+", smooth", bent, pairs[i+1], 0.1*pairs[i+1])
		if straight > pairs[i+1]+rounding {
			t.Errorf("%s: a straight line promises %.2f A of %g A", what, straight, pairs[i+1])
		}
		offStraight += math.Abs(straight - pairs[i+1])
		offSmooth += math.Abs(bent - pairs[i+1])
		above = math.Max(above, bent-pairs[i+1])
	}
	near(t, "straight, sum of errors", offStraight, 4.5, 0.01)
	near(t, "smooth, sum of errors", offSmooth, 2.11, 0.01)
	near(t, "smooth, most above a point", above, 0.67, 0.01)
}

// TestStraightBetweenPoints by hand, at, below and above each point; hot as well.
func TestStraightBetweenPoints(t *testing.T) {
	c := curve(1000, 12, 1500, 18, 4000, 31)
	for _, k := range []struct{ rpm, want float64 }{
		{1000, 12}, {1250, 15}, {1499, 17.988}, {1500, 18}, {1501, 18.0052}, {2750, 24.5}, {3999, 30.9948}, {4000, 31},
	} {
		near(t, strconv.FormatFloat(k.rpm, 'g', 5, 64)+" rpm", c.Amps(k.rpm), k.want, 1e-9)
	}
	near(t, "15 A", c.Speed(15, 0), 1250, 1e-6)
	hot := charging.Of(&design.Charging{Output: points(1000, 12, 1500, 18), HotDerating: design.Quantity{Value: 0.2, Text: "20 %"}})
	near(t, "hot, half way", hot.Amps(1250), 12, 1e-9)
	if bent := smooth(1000, 12, 1500, 18, 4000, 31).Amps(1250); bent <= 15 {
		t.Errorf("smooth: %.3f A, not above the straight 15 A", bent)
	}
}

// TestCutIn compares the speed at which output begins with the fits published
// for two measured machines, to the 5 % by which the fits miss their own curves.
func TestCutIn(t *testing.T) {
	curves := published(t)
	for _, c := range []struct {
		curve    string
		fit, tol float64
	}{
		{"marine_diesel_50A_hot", 1230, 0.05},
		{"outboard_v6_52A", 555, 0.06}, // fitted over all points; ours takes the first two
	} {
		near(t, c.curve, curve(curves[c.curve]...).CutIn(), c.fit, c.tol*c.fit)
	}
}

func TestBeyondTheCurve(t *testing.T) {
	c := curve(1000, 12, 1500, 18, 4000, 31)
	cutIn := math.Sqrt((324 - 144) / (324/1e6 - 144/2.25e6)) // by hand from the first two points
	near(t, "cut-in", c.CutIn(), cutIn, 1e-9)
	for _, k := range []struct{ rpm, want float64 }{
		{0, 0}, {-5, 0}, {500, 0}, {cutIn, 0}, {(cutIn + 1000) / 2, 6}, {1000, 12},
		{4000, 31}, {9000, 31}, {math.Inf(1), 31}, {math.NaN(), 0},
	} {
		near(t, strconv.FormatFloat(k.rpm, 'g', 5, 64)+" rpm", c.Amps(k.rpm), k.want, 1e-9)
	}
	flat := curve(1000, 12, 2000, 12)
	near(t, "below a flat curve", flat.Amps(999), 0, 0)
	one := curve(1800, 8)
	near(t, "one point, below", one.Amps(1700), 0, 0)
	near(t, "one point, above", one.Amps(2500), 8, 0)
	near(t, "no points", curve().Amps(2000), 0, 0)
	near(t, "no points, speed", curve().Speed(1, 0), math.NaN(), 0)
}

// TestNoOvershoot: on random curves, rising or not, the value between two points
// stays between them, and where points rise the curve rises.
func TestNoOvershoot(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for range 300 {
		var pairs []float64
		rpm, amps := 300+1000*random.Float64(), 20*random.Float64()
		falls := random.Intn(3) == 0
		for range 2 + random.Intn(7) {
			pairs = append(pairs, rpm, amps)
			rpm += 50 + 2000*random.Float64()
			if amps += 15 * random.Float64() * random.Float64(); falls {
				amps = math.Max(amps-10*random.Float64(), 0)
			}
		}
		for _, c := range []*charging.Curve{curve(pairs...), smooth(pairs...)} {
			for i := 0; i+3 < len(pairs); i += 2 {
				checkStretch(t, c, pairs[i:i+4])
			}
		}
	}
}

func checkStretch(t *testing.T, c *charging.Curve, p []float64) {
	t.Helper()
	low, high := math.Min(p[1], p[3]), math.Max(p[1], p[3])
	before := c.Amps(p[0])
	for k := 1; k <= 50; k++ {
		now := c.Amps(p[0] + (p[2]-p[0])*float64(k)/50)
		if now < low-1e-9 || now > high+1e-9 {
			t.Fatalf("%v: %.6f leaves %.6f..%.6f", p, now, low, high)
		}
		if (now-before)*(p[3]-p[1]) < -1e-9 {
			t.Fatalf("%v: turns at step %d", p, k)
		}
		before = now
	}
}

// TestSpeedInvertsAmps: the speed found gives the current, a lower one does not.
func TestSpeedInvertsAmps(t *testing.T) {
	for name, pairs := range published(t) {
		c := curve(pairs...)
		most := pairs[len(pairs)-1]
		for k := 1; k < 40; k++ {
			want := most * float64(k) / 40
			rpm := c.Speed(want, 0)
			if c.Amps(rpm) < want || c.Amps(rpm-0.01) >= want {
				t.Errorf("%s: %.3f A at %.3f rpm gives %.5f A", name, want, rpm, c.Amps(rpm))
			}
		}
		near(t, name+", too much", c.Speed(most*1.001, 0), math.NaN(), 0)
		near(t, name+", from idle", c.Speed(0.001, pairs[0]), pairs[0], 0)
	}
}

func TestBreakEven(t *testing.T) {
	d := &design.Design{Charging: design.Charging{
		Output:      points(1000, 12, 1500, 18, 4000, 31),
		IdleRPM:     design.Quantity{Value: 1100, Text: "1100 rpm"},
		HotDerating: design.Quantity{Value: 0.1, Text: "10 %"}}}
	near(t, "hot", charging.OutputA(d, 4000), 27.9, 1e-9)
	near(t, "nothing asked", charging.BreakEven(d, 0), 1100, 0)
	near(t, "16.2 A hot is 18 A cold", charging.BreakEven(d, 16.2), 1500, 1e-6)
	near(t, "never", charging.BreakEven(d, 28), math.NaN(), 0)
	near(t, "no charging system", charging.BreakEven(&design.Design{}, 1), math.NaN(), 0)
}

func BenchmarkOutputA(b *testing.B) {
	d := &design.Design{Charging: design.Charging{Output: points(1000, 12, 1500, 18, 2500, 26, 4000, 31, 7000, 34)}}
	for b.Loop() {
		charging.OutputA(d, 2100)
	}
}
