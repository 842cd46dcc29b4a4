package pdf

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"sync"
)

// gofpdf makes a new compressor, of more than a megabyte, for each page: half of
// all memory that a long document takes. So it writes plain streams, and those
// are compressed here by compressors that are used again.

// compressors are zlib writers at rest, at the fastest level.
var compressors = sync.Pool{New: func() any {
	w, err := zlib.NewWriterLevel(nil, zlib.BestSpeed)
	if err != nil {
		panic(err) // the level is a constant
	}
	return w
}}

// xrefEntry is the length of a line of the table of objects (ISO 32000-1, 7.5.4).
const xrefEntry = 20

var errLayout = errors.New("pdf: the file is not laid out as expected")

// compressStreams compresses every stream of a finished file that has nothing
// but a length, and sets the table of objects right.
func compressStreams(file []byte) ([]byte, error) {
	xref, offsets, err := objectTable(file)
	if err != nil {
		return nil, err
	}
	order := make([]int, len(offsets))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return offsets[a] - offsets[b] })
	var out bytes.Buffer
	out.Grow(len(file) / 2)
	moved := make([]int, len(offsets))
	out.Write(file[:offsets[order[0]]])
	for i, object := range order {
		end := xref
		if i+1 < len(order) {
			end = offsets[order[i+1]]
		}
		moved[object] = out.Len()
		if err := compressObject(&out, file[offsets[object]:end]); err != nil {
			return nil, err
		}
	}
	newXref := out.Len()
	out.Write(file[xref:entryAt(file, xref, 1)])
	for _, at := range moved {
		fmt.Fprintf(&out, "%010d 00000 n \n", at)
	}
	trailer := file[entryAt(file, xref, len(offsets)+1):]
	number := bytes.LastIndex(trailer, []byte("startxref\n")) + len("startxref\n")
	out.Write(trailer[:number])
	fmt.Fprintf(&out, "%d\n%%%%EOF\n", newXref)
	return out.Bytes(), nil
}

// entryAt is where the line of an object stands in the table that begins with
// "xref" and a line of counts.
func entryAt(file []byte, xref, object int) int {
	lines := xref + len("xref\n")
	return lines + bytes.IndexByte(file[lines:], '\n') + 1 + object*xrefEntry
}

// objectTable reads where the table is, and where the objects from 1 on are.
func objectTable(file []byte) (xref int, offsets []int, err error) {
	_, tail, found := bytes.Cut(file[max(0, len(file)-64):], []byte("startxref\n"))
	digits, _, more := bytes.Cut(tail, []byte("\n"))
	xref, err = strconv.Atoi(string(digits))
	if !found || !more || err != nil || xref < 0 || xref >= len(file) || !bytes.HasPrefix(file[xref:], []byte("xref\n0 ")) {
		return 0, nil, errLayout
	}
	counts, _, _ := bytes.Cut(file[xref+len("xref\n0 "):], []byte("\n"))
	count, err := strconv.Atoi(string(counts))
	if err != nil || count < 2 || entryAt(file, xref, count) > len(file) {
		return 0, nil, errLayout
	}
	for object := 1; object < count; object++ {
		at := entryAt(file, xref, object)
		offset, err := strconv.Atoi(string(file[at : at+10]))
		if err != nil || offset <= 0 || offset >= xref {
			return 0, nil, errLayout
		}
		offsets = append(offsets, offset)
	}
	return xref, offsets, nil
}

// compressObject writes an object, its stream compressed if it is a plain one.
func compressObject(out *bytes.Buffer, object []byte) error {
	head, rest, _ := bytes.Cut(object, []byte("\n"))
	digits, plain := bytes.CutPrefix(rest, []byte("<</Length "))
	digits, stream, found := bytes.Cut(digits, []byte(">>\nstream\n"))
	length, err := strconv.Atoi(string(digits))
	if !plain || !found || err != nil {
		out.Write(object)
		return nil
	}
	if length < 0 || length > len(stream) {
		return errLayout
	}
	var packed bytes.Buffer
	w := compressors.Get().(*zlib.Writer)
	defer compressors.Put(w)
	w.Reset(&packed)
	if _, err := w.Write(stream[:length]); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	fmt.Fprintf(out, "%s\n<</Filter /FlateDecode /Length %d>>\nstream\n", head, packed.Len())
	out.Write(packed.Bytes())
	out.Write(stream[length:])
	return nil
}
