package chart_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fusewright/render/chart"
	"fusewright/render/png"
	"fusewright/render/scene"
	"fusewright/render/svg"
)

var (
	update   = flag.Bool("update", false, "write the golden files anew")
	pictures = flag.String("pictures", "", "write the samples as PNG into this folder, to look at")
)

const margin = 8

func sampleSheet(t testing.TB, i int) *scene.Sheet {
	t.Helper()
	sample := samples[i]
	sheet := scene.NewSheet(sample.width+2*margin, sample.height+2*margin, sample.name)
	if err := sample.draw(sheet, scene.Rect{X: margin, Y: margin, W: sample.width, H: sample.height}); err != nil {
		t.Fatal(err)
	}
	return sheet
}

func TestSamples(t *testing.T) {
	for i, sample := range samples {
		t.Run(sample.name, func(t *testing.T) {
			sheet := sampleSheet(t, i)
			checkGeometry(t, sheet, scene.Rect{X: margin, Y: margin, W: sample.width, H: sample.height})
			var got bytes.Buffer
			if err := svg.Write(&got, sheet); err != nil {
				t.Fatal(err)
			}
			golden := filepath.Join("testdata", sample.name+".svg")
			if *update {
				if err := os.WriteFile(golden, got.Bytes(), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatalf("%v (go test -update writes it)", err)
			}
			if !bytes.Equal(got.Bytes(), want) {
				t.Errorf("%s differs (go test -update writes it anew)", golden)
			}
			writePicture(t, sheet)
		})
	}
}

func writePicture(t *testing.T, sheet *scene.Sheet) {
	if *pictures == "" {
		return
	}
	f, err := os.Create(filepath.Join(*pictures, sheet.Title+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Write(f, sheet, 150); err != nil {
		t.Fatal(err)
	}
}

// checkGeometry demands that no text meets another and that all of them, and
// all lines, stay inside the rectangle.
func checkGeometry(t *testing.T, sheet *scene.Sheet, in scene.Rect) {
	t.Helper()
	if err := sheet.Validate(); err != nil {
		t.Fatal(err)
	}
	var texts []scene.Text
	for _, item := range sheet.Items {
		if bounds := item.Bounds(); item.Text == nil && bounds != (scene.Rect{}) && !in.Grow(0.8).Contains(bounds) {
			t.Errorf("a path leaves the rectangle: %+v", bounds)
		}
		if item.Text != nil && item.Text.String != "" {
			texts = append(texts, *item.Text)
		}
	}
	for i, a := range texts {
		box := scene.InkBox(a)
		if !in.Grow(0.8).Contains(box) {
			t.Errorf("text %q leaves the rectangle: %+v", a.String, box)
		}
		if scene.CapHeightMM(a.SizeMM, a.Face) < 2 {
			t.Errorf("capitals of %q are lower than 2 mm: size %g mm", a.String, a.SizeMM)
		}
		for _, b := range texts[:i] {
			if box.Overlaps(scene.InkBox(b)) {
				t.Errorf("text %q lies over %q", a.String, b.String)
			}
		}
	}
}

// TestRandomPlots draws many plots of odd numbers: whatever the data, no text
// may lie over another and nothing may leave the rectangle.
func TestRandomPlots(t *testing.T) {
	drawn := 0
	const seeds = 300
	for seed := range uint64(seeds) {
		random := rand.New(rand.NewPCG(seed, 1))
		in := scene.Rect{X: 5, Y: 5, W: 60 + 150*random.Float64(), H: 45 + 120*random.Float64()}
		plot := randomPlot(random)
		sheet := scene.NewSheet(in.W+10, in.H+10, "random")
		if err := plot.Draw(sheet, in); err != nil {
			if !strings.Contains(err.Error(), "no room between the axes") || len(sheet.Items) > 0 {
				t.Fatalf("seed %d: %v, %d items", seed, err, len(sheet.Items))
			}
			continue
		}
		drawn++
		checkGeometry(t, sheet, in)
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
	if drawn < seeds*3/4 {
		t.Errorf("only %d of %d drawn", drawn, seeds)
	}
}

func randomPlot(random *rand.Rand) *chart.Plot {
	size := math.Pow(10, 8*random.Float64()-4)
	value := func() float64 { return (random.Float64() - 0.3) * size }
	plot := &chart.Plot{
		Title: "Random", Note: strings.Repeat("note ", random.IntN(30)),
		X: chart.Axis{Title: "Quantity", Unit: "u"},
		Y: chart.Axis{Title: "Other quantity", Unit: "u"},
	}
	for _, axis := range []*chart.Axis{&plot.X, &plot.Y} {
		if random.IntN(4) == 0 {
			axis.Log, axis.Min, axis.Max = true, size/100, size*100
		}
	}
	for i := range 1 + random.IntN(7) {
		c := chart.Curve{Name: fmt.Sprintf("curve %d of some length", i), Markers: random.IntN(2) == 0, Heavy: i == 0}
		for x := range 2 + random.IntN(30) {
			c.X, c.Y = append(c.X, float64(x+1)*size), append(c.Y, value())
		}
		c.Y[0] = size / 2 // at least one that an axis in decades can show
		if random.IntN(5) == 0 {
			c.Y[len(c.Y)-1] = math.NaN()
		}
		plot.Curves = append(plot.Curves, c)
	}
	for i := range random.IntN(4) {
		plot.Levels = append(plot.Levels, chart.Level{Name: fmt.Sprintf("level %d", i), At: math.Abs(value()) + size/100, OnX: i%2 == 0})
	}
	for i := range random.IntN(4) {
		plot.Marks = append(plot.Marks, chart.Mark{Text: fmt.Sprintf("mark %d", i), X: size * (1 + random.Float64()), Y: size / 3, Drop: true})
	}
	return plot
}

func TestRefusals(t *testing.T) {
	good := chart.Curve{Name: "c", X: []float64{1, 2}, Y: []float64{1, 2}}
	in := scene.Rect{W: 100, H: 80}
	for _, test := range []struct {
		name, want string
		plot       chart.Plot
		in         scene.Rect
	}{
		{"too small", "too small", chart.Plot{Curves: []chart.Curve{good}}, scene.Rect{W: 20, H: 20}},
		{"no data", "no values on the x axis", chart.Plot{}, in},
		{"lengths", "has 2 x and 1 y", chart.Plot{Curves: []chart.Curve{{X: []float64{1, 2}, Y: []float64{1}}}}, in},
		{"NaN alone", "no values on the y axis", chart.Plot{Curves: []chart.Curve{{X: []float64{1}, Y: []float64{math.NaN()}}}}, in},
		{"decades from zero", "in decades from 0", chart.Plot{Y: chart.Axis{Log: true}, Curves: []chart.Curve{good}}, in},
		{"range turned", "from 3 to 1", chart.Plot{X: chart.Axis{Min: 3, Max: 1}, Curves: []chart.Curve{good}}, in},
	} {
		t.Run(test.name, func(t *testing.T) {
			sheet := scene.NewSheet(200, 200, "")
			err := test.plot.Draw(sheet, test.in)
			if err == nil || !strings.Contains(err.Error(), test.want) {
				t.Fatalf("got %v, want %q", err, test.want)
			}
			if len(sheet.Items) != 0 {
				t.Errorf("%d items drawn in spite of the error", len(sheet.Items))
			}
		})
	}
}

func TestBarsOverSheets(t *testing.T) {
	b := loading()
	sheet := scene.NewSheet(200, 100, "")
	drawn, err := b.Draw(sheet, scene.Rect{X: 5, Y: 5, W: 150, H: 60})
	if err != nil {
		t.Fatal(err)
	}
	if drawn != b.Rows(60) || drawn >= len(b.Bars) || drawn == 0 {
		t.Errorf("drawn %d of %d, Rows says %d", drawn, len(b.Bars), b.Rows(60))
	}
	checkGeometry(t, sheet, scene.Rect{X: 5, Y: 5, W: 150, H: 60})
}

func BenchmarkBudget(b *testing.B) {
	for b.Loop() {
		sheet := scene.NewSheet(200, 130, "")
		if err := budget().Draw(sheet, scene.Rect{X: 5, Y: 5, W: 180, H: 110}); err != nil {
			b.Fatal(err)
		}
	}
}
