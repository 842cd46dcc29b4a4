package scene

import (
	"fmt"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansitalic"
	"github.com/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// FontFamily is the family of the embedded faces.
const FontFamily = "Liberation Sans"

// Faces lists the embedded faces in order.
var Faces = []Face{Regular, Bold, Italic}

// blockSize is how many runes are measured at once: advances are looked up a
// block at a time, because a sheet uses few of the blocks of Unicode.
const blockSize = 256

// advances holds the advance widths of one block of runes in font units; -1
// means that the face has no glyph for the rune.
type advances [blockSize]int32

// typeface is one parsed face with its measures in font units.
type typeface struct {
	file       []byte
	font       *sfnt.Font
	unitsPerEm float64
	ascent     float64
	descent    float64 // positive downwards
	capHeight  float64
	blocks     [0x10000 / blockSize]atomic.Pointer[advances]
}

var typefaces = [...]func() *typeface{
	Regular: sync.OnceValue(func() *typeface { return parse(liberationsansregular.TTF) }),
	Bold:    sync.OnceValue(func() *typeface { return parse(liberationsansbold.TTF) }),
	Italic:  sync.OnceValue(func() *typeface { return parse(liberationsansitalic.TTF) }),
}

// faceOf returns the parsed face; an unknown face is the regular one.
func faceOf(face Face) *typeface {
	if face < 0 || int(face) >= len(typefaces) {
		face = Regular
	}
	return typefaces[face]()
}

// parse reads an embedded font file. The files are part of the program, so a
// failure is a defect of the build and not of any input.
func parse(file []byte) *typeface {
	parsed, err := sfnt.Parse(file)
	if err != nil {
		panic(fmt.Sprintf("scene: embedded font: %v", err))
	}
	em := parsed.UnitsPerEm()
	// At a size of one em in pixels every measure comes out in font units.
	metrics, err := parsed.Metrics(nil, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		panic(fmt.Sprintf("scene: metrics of the embedded font: %v", err))
	}
	return &typeface{
		file:       file,
		font:       parsed,
		unitsPerEm: float64(em),
		ascent:     units(metrics.Ascent),
		descent:    units(metrics.Descent),
		capHeight:  units(metrics.CapHeight),
	}
}

func units(v fixed.Int26_6) float64 { return float64(v) / 64 }

// advance returns the advance width of a rune in font units, or -1 when the
// face has no glyph for it. Safe for concurrent use.
func (t *typeface) advance(r rune) int32 {
	if r < 0 || r > 0xFFFF {
		return -1
	}
	slot := &t.blocks[r/blockSize]
	block := slot.Load()
	if block == nil {
		block = t.measure(r / blockSize)
		slot.Store(block)
	}
	return block[r%blockSize]
}

// measure reads the advances of one block from the font.
func (t *typeface) measure(number rune) *advances {
	var buffer sfnt.Buffer
	block := new(advances)
	for i := range block {
		block[i] = -1
		glyph, err := t.font.GlyphIndex(&buffer, number*blockSize+rune(i))
		if err != nil || glyph == 0 {
			continue
		}
		width, err := t.font.GlyphAdvance(&buffer, glyph, fixed.I(int(t.unitsPerEm)), font.HintingNone)
		if err == nil {
			block[i] = int32(width.Round())
		}
	}
	return block
}

// FontFile returns the TrueType file of a face. Treat it as read-only.
func FontFile(face Face) []byte { return faceOf(face).file }

// Font returns the parsed face, for back-ends that draw the outlines. It may be
// used by several goroutines, each with its own sfnt.Buffer.
func Font(face Face) *sfnt.Font { return faceOf(face).font }

// HasGlyph tells whether every embedded face can show the rune.
func HasGlyph(r rune) bool {
	return !slices.ContainsFunc(Faces, func(face Face) bool { return faceOf(face).advance(r) < 0 })
}
