package pdf

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

// A file that is not laid out as gofpdf does it is told, and nothing is guessed.
func TestCompressStreamsRefusesOtherLayouts(t *testing.T) {
	const good = "%PDF-1.3\n1 0 obj\n<</Length 3>>\nstream\nabc\nendstream\nendobj\n" +
		"xref\n0 2\n0000000000 65535 f \n0000000009 00000 n \ntrailer\n<<\n/Size 2\n>>\nstartxref\n59\n%%EOF\n"
	packed, err := compressStreams([]byte(good))
	if err != nil || !bytes.Contains(packed, []byte("1 0 obj\n<</Filter /FlateDecode /Length ")) {
		t.Fatalf("%q, %v", packed, err)
	}
	for name, file := range map[string]string{
		"empty":                  "",
		"no table":               strings.Replace(good, "startxref\n59", "startxref\n60", 1),
		"table beyond the end":   strings.Replace(good, "startxref\n59", "startxref\n9999", 1),
		"table before the file":  strings.Replace(good, "startxref\n59", "startxref\n-4", 1),
		"too many objects":       strings.Replace(good, "xref\n0 2", "xref\n0 999", 1),
		"object beyond the end":  strings.Replace(good, "0000000009", "0000009999", 1),
		"stream beyond the file": strings.Replace(good, "/Length 3", "/Length 999", 1),
	} {
		if _, err := compressStreams([]byte(file)); !errors.Is(err, errLayout) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}
