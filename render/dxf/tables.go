package dxf

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"unicode"

	"fusewright/render/scene"
)

// The names of the tables' fixed rows.
const (
	continuous  = "CONTINUOUS"
	sheetLayer  = "SHEET" // of what is in no group with a class
	maxLayerLen = 31      // characters of a name in this release
)

// styles are the text styles by face. The font files have the widths in which
// the sheet was measured; a program without them shows a similar face.
var styles = [...]struct{ name, file string }{
	scene.Regular: {"REGULAR", "arial.ttf"},
	scene.Bold:    {"BOLD", "arialbd.ttf"},
	scene.Italic:  {"ITALIC", "ariali.ttf"},
}

// lineType is a dash pattern under the name it has in the file.
type lineType struct {
	name    string
	lengths []float64 // mm, on and off
}

func (p *printer) tables(d *drawing) {
	p.begin("TABLES")
	p.put(0, "TABLE", 2, "LTYPE", 70, len(d.lineTypes)+1)
	p.lineType(lineType{name: continuous})
	for _, t := range d.lineTypes {
		p.lineType(t)
	}
	layers := d.layers()
	p.put(0, "ENDTAB", 0, "TABLE", 2, "LAYER", 70, len(layers))
	for _, name := range layers {
		p.put(0, "LAYER", 2, name, 70, 0, 62, inkColour, 6, continuous)
	}
	p.put(0, "ENDTAB", 0, "TABLE", 2, "STYLE", 70, len(styles))
	for _, s := range styles { // 40: no fixed height
		p.put(0, "STYLE", 2, s.name, 70, 0, 40, 0.0, 41, 1.0, 50, 0.0, 71, 0, 42, 2.5, 3, s.file, 4, "")
	}
	p.put(0, "ENDTAB")
	p.end()
}

func (p *printer) lineType(t lineType) {
	sum := 0.0
	for _, length := range t.lengths {
		sum += length
	}
	p.put(0, "LTYPE", 2, t.name, 70, 0, 3, "", 72, int('A'), 73, len(t.lengths), 40, sum)
	for i, length := range t.lengths {
		if i%2 == 1 {
			length = -length // a gap
		}
		p.put(49, length)
	}
}

// layers lists the layers in use in the order of the alphabet, layer 0 first:
// the format wants it to be there.
func (d *drawing) layers() []string {
	return append([]string{"0"}, slices.Sorted(maps.Keys(d.used))...)
}

// layerName makes a name that this release takes: capitals, digits, $, - and _.
func layerName(class string) string {
	var b strings.Builder
	for _, r := range strings.ToUpper(class) {
		switch {
		case b.Len() >= maxLayerLen:
		case r < unicode.MaxASCII && (unicode.IsLetter(r) || unicode.IsDigit(r)), r == '-', r == '$':
			b.WriteRune(r)
		default:
			b.WriteByte('_')
		}
	}
	if name := b.String(); name != "" && name != "0" {
		return name
	}
	return sheetLayer
}

// lineTypeOf is the name of the line type for a stroke, made when it is new.
func (d *drawing) lineTypeOf(s *scene.Stroke) string {
	if s == nil || len(s.Dash) == 0 {
		return continuous
	}
	for _, t := range d.lineTypes {
		if slices.Equal(t.lengths, s.Dash) {
			return t.name
		}
	}
	name := fmt.Sprintf("DASH%d", len(d.lineTypes)+1)
	d.lineTypes = append(d.lineTypes, lineType{name, slices.Clone(s.Dash)})
	return name
}

// inkColour is shown black on white paper and white on a black screen.
const inkColour = 7

// colourNumber is the nearest of the 255 numbered colours of the format.
func colourNumber(c scene.RGB) int {
	if c.R < 0x30 && c.G < 0x30 && c.B < 0x30 {
		return inkColour
	}
	best, least := inkColour, math.Inf(1)
	for n := 1; n <= 255; n++ {
		if n == inkColour {
			continue // black or white by the screen's own choice
		}
		r, g, b := numbered(n)
		dr, dg, db := r-float64(c.R), g-float64(c.G), b-float64(c.B)
		if d := dr*dr + dg*dg + db*db; d < least {
			best, least = n, d
		}
	}
	return best
}

// numbered gives the colour of a number: 1 to 9 the plain ones, 10 to 249
// twenty-four hues in five shades, each full and half faded, 250 to 255 greys.
// The shares are from memory of the format's colour chart.
func numbered(n int) (r, g, b float64) {
	plain := [...][3]float64{{}, {255, 0, 0}, {255, 255, 0}, {0, 255, 0}, {0, 255, 255}, {0, 0, 255},
		{255, 0, 255}, {255, 255, 255}, {128, 128, 128}, {192, 192, 192}}
	greys := [...]float64{51, 91, 132, 173, 214, 255}
	switch {
	case n < 10:
		return plain[n][0], plain[n][1], plain[n][2]
	case n >= 250:
		return greys[n-250], greys[n-250], greys[n-250]
	}
	value := [...]float64{255, 165, 127, 76, 38}[n%10/2]
	faded := value * float64(n%2) / 2
	hue := float64(n/10-1) * 15
	channel := func(offset float64) float64 {
		away := math.Abs(math.Mod(hue+offset+180, 360) - 180) // degrees from this channel's own hue
		share := min(max(2-away/60, 0), 1)
		return faded + (value-faded)*share
	}
	return channel(0), channel(240), channel(120)
}
