// Package png draws a scene sheet into a picture of pixels at a chosen
// resolution, anti-aliased on white. github.com/srwiley/rasterx makes areas of
// lines of some width; github.com/golang/freetype/raster fills areas.
package png

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"
	"sync"

	"fusewright/render/scene"
)

// MaxPixels is the largest picture that is made: A2 at 600 dots per inch.
const MaxPixels = 140_000_000

const mmPerInch = 25.4

// encoders keeps the encoder's compressors, of more than a megabyte each, for the
// next sheet.
var encoders = &encoderPool{}

type encoderPool struct{ sync.Pool }

// Get gives one at rest, or nil.
func (p *encoderPool) Get() *png.EncoderBuffer {
	b, _ := p.Pool.Get().(*png.EncoderBuffer)
	return b
}

// Put lays one to rest.
func (p *encoderPool) Put(b *png.EncoderBuffer) { p.Pool.Put(b) }

// Write draws the sheet and writes it as PNG. The resolution is in dots per
// inch, from 10 to 2400; the file carries it, so that it prints at full size.
func Write(w io.Writer, sheet *scene.Sheet, dpi float64) error {
	picture, err := Draw(sheet, dpi)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.DefaultCompression, BufferPool: encoders}
	if err := encoder.Encode(&out, withFewColours(picture)); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	_, err = w.Write(withResolution(out.Bytes(), dpi))
	return err
}

// Draw draws the sheet on white.
func Draw(sheet *scene.Sheet, dpi float64) (*image.RGBA, error) {
	if err := sheet.Validate(); err != nil {
		return nil, err
	}
	if !(dpi >= 10 && dpi <= 2400) {
		return nil, fmt.Errorf("png: %g dots per inch (expected 10 to 2400)", dpi)
	}
	scale := dpi / mmPerInch
	width, height := math.Ceil(sheet.WidthMM*scale-1e-6), math.Ceil(sheet.HeightMM*scale-1e-6)
	if width*height > MaxPixels {
		return nil, fmt.Errorf("png: sheet of %g × %g mm at %g dots per inch has %.0f pixels (at most %d)",
			sheet.WidthMM, sheet.HeightMM, dpi, width*height, MaxPixels)
	}
	picture := image.NewRGBA(image.Rect(0, 0, int(width), int(height)))
	draw.Draw(picture, picture.Rect, image.White, image.Point{}, draw.Src)
	if err := sheet.Replay(newPainter(picture, scale)); err != nil {
		return nil, err
	}
	return picture, nil
}

// withFewColours turns the picture into one of 8 bits a pixel when it has no
// more than 256 colours, as most drawings do: same picture, a third of the file
// and of the time to write it.
func withFewColours(picture *image.RGBA) image.Image {
	var palette color.Palette
	index := map[uint32]uint8{}
	few := image.NewPaletted(picture.Rect, nil)
	last, lastIndex := uint32(0), uint8(0) // 0 is no opaque colour
	for i := range few.Pix {
		pixel := binary.LittleEndian.Uint32(picture.Pix[4*i:])
		if pixel != last {
			at, known := index[pixel]
			if !known {
				if len(palette) == 256 {
					return picture
				}
				at = uint8(len(palette))
				index[pixel] = at
				palette = append(palette, color.RGBA{uint8(pixel), uint8(pixel >> 8), uint8(pixel >> 16), 255})
			}
			last, lastIndex = pixel, at
		}
		few.Pix[i] = lastIndex
	}
	few.Palette = palette
	return few
}

// withResolution puts the pHYs chunk (PNG, third edition, 11.3.4.3: pixels per
// metre) behind the header chunk, which ends at byte 33.
func withResolution(file []byte, dpi float64) []byte {
	const headerEnd = 33
	perMetre := uint32(math.Round(dpi / mmPerInch * 1000))
	content := binary.BigEndian.AppendUint32(nil, perMetre)
	content = binary.BigEndian.AppendUint32(content, perMetre)
	content = append(content, 1) // unit: metre
	out := append([]byte{}, file[:headerEnd]...)
	return append(append(out, chunk("pHYs", content)...), file[headerEnd:]...)
}
