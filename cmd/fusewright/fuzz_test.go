package main

import (
	"bytes"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fusewright/harness/proof/fuzztest"
)

// FuzzCalc: whatever the questions of the bench are asked with, they end with an
// answer or with what is wrong, in plain text. The words stand one a line.
func FuzzCalc(f *testing.F) {
	for _, line := range []string{"power|276 W|--system|12 V", "battery|12 Ah|1.2 A|--rate|10 h|--peukert|1.2|--keep|20 %",
		"drop|16 AWG|10 A|12 ft|--insulation|SAE J1128 GXL|--one-way", "wire|10 A|6 m|--practice|marine|--format|json",
		"heat|1.5 mm²|--current|20 A|--bundle|4|--altitude|2000 m", "fuse|15 A|30 A|--type|MIDI|--ambient|80 °C",
		"short|--current|500 A|--time|50 ms|--size|4 mm²", "fault|4mm²:0.5m|1.5mm²:4m|--fuse|15A|--source-ohm|9 mohm"} {
		f.Add(strings.ReplaceAll(line, "|", "\n"))
	}
	f.Fuzz(func(t *testing.T, words string) {
		fuzztest.Within(t, func() {
			var stdout, stderr bytes.Buffer
			code := run(append([]string{"calc"}, strings.Split(words, "\n")...), strings.NewReader(""), &stdout, &stderr)
			if code != exitClean && (code != exitBadInput || stderr.Len() == 0) {
				t.Fatalf("exit code %d: %s", code, &stderr)
			}
			for _, text := range [][]byte{stdout.Bytes(), stderr.Bytes()} {
				if err := checkPlain(bytes.ReplaceAll(text, []byte("\ufffd"), nil)); err != nil {
					t.Fatalf("%v in %q", err, text)
				}
			}
		})
	})
}

// FuzzParseJournal: whatever stands in a journal, no file is named in it but
// plain ones of a set.
func FuzzParseJournal(f *testing.F) {
	f.Add([]byte(`{"fusewright_journal":1,"files":[{"name":"a.pdf","sha256":"00","was":true}],"removed":["b.svg"]}`))
	f.Add([]byte(`{"fusewright_journal":1,"files":[{"name":"../a.pdf"}]}`))
	f.Add([]byte(`{"fusewright_journal":1,"removed":["/etc/passwd","a/b.svg",".","c.go"]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		fuzztest.Within(t, func() {
			j, err := parseJournal("journal", data)
			if (j == nil) == (err == nil) {
				t.Fatalf("journal %v and error %v", j, err)
			}
			if err != nil {
				return
			}
			names := slices.Clone(j.Removed)
			for _, file := range j.Files {
				names = append(names, file.Name)
			}
			for _, name := range names {
				if strings.ContainsAny(name, "/\x00") || filepath.Dir(filepath.Join("dir", name)) != "dir" {
					t.Fatalf("names %q", name)
				}
			}
		})
	})
}

// FuzzParseWritten: whatever stands in the list of what was written, it names
// plain files alone, and written anew it is the same list.
func FuzzParseWritten(f *testing.F) {
	sum := strings.Repeat("0a", 32)
	f.Add(writtenLead + "\n" + sum + "  a.pdf\n" + sum + "  a  b.svg\n")
	f.Add(writtenLead + "\n" + sum + "  ../a.pdf\n")
	f.Add(writtenLead + "\n" + sum + "  a.pdf")
	f.Fuzz(func(t *testing.T, text string) {
		fuzztest.Within(t, func() {
			list, ok := parseWritten(text)
			if !ok {
				return
			}
			for name := range list {
				if filepath.Dir(filepath.Join("dir", name)) != "dir" {
					t.Fatalf("names %q", name)
				}
			}
			again, ok := parseWritten(string(list.text()))
			for name, sum := range list {
				if !strings.ContainsAny(name, "\n\\") && again[name] != sum || !ok {
					t.Fatalf("%q is %q, and read again %q", name, sum, again[name])
				}
			}
		})
	})
}
