package frame

import (
	"strings"
	"testing"

	"fusewright/harness/design/caution"
	"fusewright/render/scene"
)

func TestPaperOf(t *testing.T) {
	if p, err := PaperOf(""); err != nil || p.Name != "A4" {
		t.Errorf("%v, %v", p, err)
	}
	if p, err := PaperOf("tabloid"); err != nil || p.W != 431.8 {
		t.Errorf("%v, %v", p, err)
	}
	if _, err := PaperOf("A44"); err == nil || !strings.Contains(err.Error(), `did you mean "A4"`) {
		t.Errorf("error %v", err)
	}
}

func TestZone(t *testing.T) {
	p, _ := PaperOf("A4")
	in := p.Inner()
	for _, c := range []struct {
		at   scene.Point
		want string
	}{
		{scene.Point{X: in.X + 1, Y: in.Y + 1}, "A1"},
		{scene.Point{X: in.Right() - 1, Y: in.Bottom() - 1}, "D6"},
		{scene.Point{X: in.X + in.W/2 + 1, Y: in.Y + in.H/4 + 1}, "B4"},
		{scene.Point{X: -50, Y: 900}, "D1"},
	} {
		if got := p.Zone(c.at); got != c.want {
			t.Errorf("%v: %s, want %s", c.at, got, c.want)
		}
	}
}

// The caution keeps to its two lines on every size, with the word about petrol vapour
// where that can gather.
func TestCaution(t *testing.T) {
	for _, p := range papers {
		for i := range 4 {
			afloat, vapour := i&1 > 0, i&2 > 0
			s, said, lines := scene.NewSheet(p.W, p.H, ""), "", 0
			Draw(s, p, Title{Caution: caution.OnPages(afloat, vapour)})
			for _, item := range s.Items {
				if item.Text != nil && item.Text.At.X == p.Inner().X+3 && item.Text.At.Y > p.Strip().Bottom() {
					said += item.Text.String + " "
					lines++
				}
			}
			if !strings.Contains(said, "Isolate the battery") || strings.Contains(said, "Petrol vapour") != vapour ||
				strings.Contains(said, "helm") != afloat || strings.Contains(said, "airbag") == afloat || lines > 2 {
				t.Errorf("%s, vapour %v: %d lines, %s", p.Name, vapour, lines, said)
			}
		}
	}
}

// Everything the title block says stays whole as long as two lines take it, and
// inside the block.
func TestTitleBlock(t *testing.T) {
	p, _ := PaperOf("A4")
	title := Title{Caution: caution.Paper, Title: "Deck gear, navigation lamps, bilge pump and the reed winch with its own feed from the battery",
		Kind: "Schematic"}
	title.Fields[0][0] = Field{"vehicle", "an invented reed-cutting boat of six metres with an outboard engine and two winches"}
	title.Fields[0][1] = Field{"revision", "B"}
	title.Fields[1][1] = Field{"drawn by", "demo workshop (invented)"}
	s := scene.NewSheet(p.W, p.H, "")
	Draw(s, p, title)
	var said []string
	in := p.Inner()
	block := scene.Rect{X: in.Right() - TitleW, Y: in.Bottom() - TitleH, W: TitleW, H: TitleH}
	for _, item := range s.Items {
		if item.Text == nil {
			continue
		}
		said = append(said, item.Text.String)
		if r := scene.InkBox(*item.Text); item.Text.At.X > block.X && item.Text.At.X < block.Right() && item.Text.At.Y < block.Bottom() &&
			item.Text.At.Y > block.Y && !block.Contains(r) {
			t.Errorf("%q leaves the title block: %v", item.Text.String, r)
		}
		if c := scene.CapHeightMM(item.Text.SizeMM, item.Text.Face); c < 2 {
			t.Errorf("%q has capitals of %.2f mm", item.Text.String, c)
		}
	}
	all := strings.Join(said, " ")
	for _, want := range []string{title.Title, title.Fields[0][0].Value, title.Fields[1][1].Value} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is not whole in %q", want, all)
		}
	}
	if !strings.Contains(all, "Isolate the battery") {
		t.Error("no caution")
	}
}
