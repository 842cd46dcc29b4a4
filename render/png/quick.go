package png

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"io"

	"fusewright/render/scene"
)

// WriteQuick is Write for sets of many sheets: the same pixels in less than half
// of the time to write them, in files that are larger. It does not try every
// filter on every row; most rows of a drawing are like the one above.
func WriteQuick(w io.Writer, sheet *scene.Sheet, dpi float64) error {
	picture, err := Draw(sheet, dpi)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if few, ok := withFewColours(picture).(*image.Paletted); ok {
		encoder := png.Encoder{CompressionLevel: png.BestSpeed, BufferPool: encoders}
		err = encoder.Encode(&out, few)
	} else {
		err = encodeTrueColour(&out, picture)
	}
	if err != nil {
		return fmt.Errorf("png: %w", err)
	}
	_, err = w.Write(withResolution(out.Bytes(), dpi))
	return err
}

// encodeTrueColour writes an opaque picture with 24 bits a pixel, each row as
// what differs from the one above (PNG, third edition, 9.2: filter type Up).
func encodeTrueColour(out *bytes.Buffer, picture *image.RGBA) error {
	wide, high := picture.Rect.Dx(), picture.Rect.Dy()
	out.WriteString("\x89PNG\r\n\x1a\n")
	header := binary.BigEndian.AppendUint32(nil, uint32(wide))
	header = binary.BigEndian.AppendUint32(header, uint32(high))
	out.Write(chunk("IHDR", append(header, 8, 2, 0, 0, 0))) // 8 bits, true colour, not interlaced
	var data bytes.Buffer
	z, err := zlib.NewWriterLevel(&data, zlib.BestSpeed)
	if err != nil {
		return err
	}
	above := make([]uint8, 4*wide)
	row := make([]uint8, 1+3*wide)
	row[0] = 2 // Up
	for y := range high {
		here := picture.Pix[y*picture.Stride:][:4*wide]
		for x := range wide {
			a, h, r := above[4*x:4*x+3], here[4*x:4*x+3], row[1+3*x:4+3*x]
			r[0], r[1], r[2] = h[0]-a[0], h[1]-a[1], h[2]-a[2]
		}
		if _, err := z.Write(row); err != nil {
			return err
		}
		above = here
	}
	if err := z.Close(); err != nil {
		return err
	}
	out.Write(chunk("IDAT", data.Bytes()))
	out.Write(chunk("IEND", nil))
	return nil
}

// chunk frames a piece of a PNG file: length, kind, content, check sum.
func chunk(kind string, content []byte) []byte {
	framed := binary.BigEndian.AppendUint32(nil, uint32(len(content)))
	framed = append(append(framed, kind...), content...)
	return binary.BigEndian.AppendUint32(framed, crc32.ChecksumIEEE(framed[4:]))
}
