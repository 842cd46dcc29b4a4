package png_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	stdpng "image/png"
	"io"
	"math"
	"math/rand/v2"
	"testing"

	"fusewright/render/png"
	"fusewright/render/scene"
	"fusewright/render/scene/scenetest"
)

// ink sums the cover of a picture in pixels: 1 for a black one.
func ink(picture *image.RGBA) float64 {
	sum := 0.0
	for i := 0; i < len(picture.Pix); i += 4 {
		sum += 1 - float64(picture.Pix[i])/255
	}
	return sum
}

// TestCoverIsExact compares the inked area with the geometry: at 25.4 dots per
// inch a millimetre is a pixel.
func TestCoverIsExact(t *testing.T) {
	black := scene.RGB{}
	round := scene.Stroke{WidthMM: 6, Round: true}
	butt := scene.Stroke{WidthMM: 6}
	p := func(x, y float64) scene.Point { return scene.Point{X: x, Y: y} }
	for _, test := range []struct {
		name string
		draw func(s *scene.Sheet)
		want float64
	}{
		{"rectangle", func(s *scene.Sheet) {
			s.Rect(scene.Rect{X: 10.25, Y: 10.5, W: 20.5, H: 10}, nil, scene.Paint(black))
		}, 205},
		{"circle", func(s *scene.Sheet) { s.Dot(p(50, 50), 20, black) }, math.Pi * 400},
		{"ring by stroke", func(s *scene.Sheet) { s.Circle(p(50, 50), 20, &butt, nil) }, math.Pi * (23*23 - 17*17)},
		{"butt line", func(s *scene.Sheet) { s.Line(p(20, 20), p(60, 50), butt) }, 300},
		{"round line", func(s *scene.Sheet) { s.Line(p(20, 20), p(60, 50), round) }, 300 + math.Pi*9},
		{"dot", func(s *scene.Sheet) { s.Line(p(20, 20), p(20, 20), round) }, math.Pi * 9},
		{"dashes", func(s *scene.Sheet) { s.Line(p(10, 20), p(70, 20), butt.Dashed(4, 2)) }, 40 * 6},
		{"mitre", func(s *scene.Sheet) { s.Polyline([]scene.Point{p(20, 20), p(60, 20), p(60, 60)}, butt) }, 43*6 + 37*6},
		{"closed square", func(s *scene.Sheet) { s.Rect(scene.Rect{X: 20, Y: 20, W: 40, H: 40}, &butt, nil) }, 46*46 - 34*34},
		{"far away", func(s *scene.Sheet) { s.Line(p(-90000, 50), p(90000, 50), butt) }, 600},
		{"outside", func(s *scene.Sheet) {
			s.Rect(scene.Rect{X: 200, Y: -300, W: 40, H: 40}, &butt, scene.Paint(black))
		}, 0},
		{"round the sheet", func(s *scene.Sheet) {
			s.Rect(scene.Rect{X: -500, Y: -500, W: 2000, H: 2000}, nil, scene.Paint(black))
		}, 10000},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := scene.NewSheet(100, 100, "")
			test.draw(s)
			for i := range s.Items {
				if stroke := s.Items[i].Path.Stroke; stroke != nil {
					stroke.Colour = black
				}
			}
			picture, err := png.Draw(s, 25.4)
			if err != nil {
				t.Fatal(err)
			}
			if got := ink(picture); math.Abs(got-test.want) > 0.005*test.want+0.5 {
				t.Errorf("inked %.2f mm², want %.2f", got, test.want)
			}
		})
	}
}

// TestOddPaths draws random paths, many of them off the sheet: nothing may
// panic or hang.
func TestOddPaths(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	place := func() scene.Point {
		far := math.Pow(10, 5*random.Float64())
		return scene.Point{X: (random.Float64() - 0.5) * far, Y: (random.Float64() - 0.5) * far}
	}
	for range 150 {
		s := scene.NewSheet(100, 60, "")
		p := scene.Path{Stroke: &scene.Stroke{WidthMM: 0.1 + 20*random.Float64(), Round: random.IntN(2) == 0}, Fill: scene.Paint(scene.Ink)}
		if random.IntN(2) == 0 {
			p.Stroke.Dash = []float64{random.Float64(), 0.01 + random.Float64()}
		}
		for range 1 + random.IntN(3) {
			p.MoveTo(place())
			for range random.IntN(4) {
				if random.IntN(2) == 0 {
					p.CubicTo(place(), place(), place())
				} else {
					p.LineTo(place())
				}
			}
			if random.IntN(2) == 0 {
				p.Close()
			}
		}
		s.Path(p)
		if _, err := png.Draw(s, 50); err != nil {
			t.Fatal(err)
		}
	}
}

func TestSizeAndResolution(t *testing.T) {
	for _, dpi := range []float64{96, 150, 300} {
		var b bytes.Buffer
		if err := png.Write(&b, scene.NewSheet(210, 297, ""), dpi); err != nil {
			t.Fatal(err)
		}
		file := b.Bytes()
		picture, err := stdpng.Decode(bytes.NewReader(file))
		if err != nil {
			t.Fatal(err)
		}
		want := image.Pt(int(math.Ceil(210*dpi/25.4)), int(math.Ceil(297*dpi/25.4)))
		if picture.Bounds().Size() != want {
			t.Errorf("%g dpi: %v, want %v", dpi, picture.Bounds().Size(), want)
		}
		at := bytes.Index(file, []byte("pHYs"))
		if at < 0 {
			t.Fatal("no resolution in the file")
		}
		if got, want := binary.BigEndian.Uint32(file[at+4:]), uint32(math.Round(dpi/0.0254)); got != want {
			t.Errorf("%d pixels per metre, want %d", got, want)
		}
	}
}

func TestRefusals(t *testing.T) {
	broken := scene.NewSheet(50, 50, "")
	broken.End()
	for _, test := range []struct {
		name  string
		sheet *scene.Sheet
		dpi   float64
	}{
		{"dpi zero", scene.NewSheet(50, 50, ""), 0},
		{"dpi NaN", scene.NewSheet(50, 50, ""), math.NaN()},
		{"too many pixels", scene.NewSheet(5000, 5000, ""), 600},
		{"broken", broken, 100},
		{"nil", nil, 100},
	} {
		if err := png.Write(io.Discard, test.sheet, test.dpi); err == nil {
			t.Errorf("%s: no error", test.name)
		}
	}
}

func BenchmarkWrite2000(b *testing.B) {
	sheet := scenetest.Crowded(2000)
	for _, dpi := range []float64{96, 150, 300} {
		b.Run(fmt.Sprintf("A3 at %g dpi", dpi), func(b *testing.B) {
			for b.Loop() {
				if err := png.Write(io.Discard, sheet, dpi); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestQuickHasTheSamePixels: a sheet of few colours and one of more than a
// palette holds look alike whichever way they are written, at the same size on
// paper.
func TestQuickHasTheSamePixels(t *testing.T) {
	few := scene.NewSheet(60, 40, "")
	few.TextAt(scene.Point{X: 5, Y: 20}, "Fuse F1", scene.TextStyle{SizeMM: 6})
	many := scene.NewSheet(60, 40, "")
	for i := range 40 {
		many.Dot(scene.Point{X: 3 + 1.3*float64(i), Y: 20}, 5, scene.RGB{R: uint8(6 * i), G: uint8(250 - 6*i), B: uint8(40 * i)})
	}
	for name, sheet := range map[string]*scene.Sheet{"few": few, "many": many} {
		var small, quick bytes.Buffer
		if err := png.Write(&small, sheet, 150); err != nil {
			t.Fatal(err)
		}
		if err := png.WriteQuick(&quick, sheet, 150); err != nil {
			t.Fatal(err)
		}
		if name == "many" && quick.Bytes()[25] != 2 {
			t.Errorf("colour type %d (expected 2, true colour)", quick.Bytes()[25])
		}
		if !bytes.Equal(small.Bytes()[33:54], quick.Bytes()[33:54]) {
			t.Errorf("%s: another resolution", name)
		}
		want, err := stdpng.Decode(&small)
		if err != nil {
			t.Fatal(err)
		}
		got, err := stdpng.Decode(&quick)
		if err != nil {
			t.Fatal(err)
		}
		for y := range want.Bounds().Dy() {
			for x := range want.Bounds().Dx() {
				wr, wg, wb, _ := want.At(x, y).RGBA()
				if gr, gg, gb, _ := got.At(x, y).RGBA(); gr != wr || gg != wg || gb != wb {
					t.Fatalf("%s: another pixel at %d, %d", name, x, y)
				}
			}
		}
	}
}
