package layout

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"fusewright/harness/proof/reviewtest"
	"fusewright/harness/proof/synth"
	"fusewright/harness/workshop/formboard"
	"fusewright/render/scene"
	"fusewright/render/svg"
)

var update = flag.Bool("update", false, "write golden files anew")

// TestGolden holds the first layout sheet of a design as it was looked at.
func TestGolden(t *testing.T) {
	text, err := os.ReadFile("testdata/lamps.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r := reviewtest.Built(t, text)
	sheets, err := Draw(r, formboard.Lay(r.Circuit))
	if err != nil {
		t.Fatal(err)
	}
	for file, sheet := range map[string]*scene.Sheet{
		"testdata/lamps-1.svg":    sheets[0],
		"testdata/lamps-full.svg": fullSizeOf(t, r, formboard.Lay(r.Circuit))[1],
	} {
		var got bytes.Buffer
		if err := svg.Write(&got, sheet); err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(file, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(want, got.Bytes()) {
			t.Errorf("%s: the drawing has changed; look at it, then run the test with -update", file)
		}
	}
}

// TestSameBytes draws twice.
func TestSameBytes(t *testing.T) {
	r := reviewtest.Built(t, synth.YAML(120, 4))
	var first, second bytes.Buffer
	for _, out := range []*bytes.Buffer{&first, &second} {
		board := formboard.Lay(r.Circuit)
		sheets, err := Draw(r, board)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range append(sheets, fullSizeOf(t, r, board)...) {
			if err := svg.Write(out, s); err != nil {
				t.Fatal(err)
			}
		}
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("the same board drawn twice differs")
	}
}

func TestUnknownSize(t *testing.T) {
	r := reviewtest.Built(t, synth.YAML(12, 1))
	r.Design.Sheet.Size = "A5"
	_, err := Draw(r, formboard.Lay(r.Circuit))
	if err == nil {
		t.Fatal("A5 is taken")
	}
	if want := `layout: no sheet size "A5" (expected A4, A3, Letter, Tabloid; did you mean "A4"?)`; err.Error() != want {
		t.Errorf("got %q, want %q", err, want)
	}
}

func BenchmarkDraw40(b *testing.B)       { benchmark(b, 40, false) }
func BenchmarkDraw1000(b *testing.B)     { benchmark(b, 1000, false) }
func BenchmarkFullSize40(b *testing.B)   { benchmark(b, 40, true) }
func BenchmarkFullSize1000(b *testing.B) { benchmark(b, 1000, true) }

func benchmark(b *testing.B, wires int, full bool) {
	r := reviewtest.Built(b, synth.YAML(wires, 1))
	board := formboard.Lay(r.Circuit)
	sheets := 0
	for b.Loop() {
		if full {
			sheets = len(fullSizeOf(b, r, board))
			continue
		}
		list, err := Draw(r, board)
		if err != nil {
			b.Fatal(err)
		}
		sheets = len(list)
	}
	b.ReportMetric(float64(sheets), "sheets")
}
