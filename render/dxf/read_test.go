package dxf

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"fusewright/render/scene"
)

// group is a code with its value.
type group struct {
	code  int
	value string
}

// record is an entity or table row with its groups, the kind left out.
type record struct {
	kind   string
	groups []group
}

func (r record) first(code int) string {
	for _, g := range r.groups {
		if g.code == code {
			return g.value
		}
	}
	return ""
}

// file is a drawing as read back.
type file struct {
	header   map[string][]group
	tables   map[string][]record
	entities []record
}

// groups splits the bytes into pairs of lines, checking that codes are numbers
// and everything is printable ASCII.
func groups(data []byte) ([]group, error) {
	var list []group
	scan := bufio.NewScanner(bytes.NewReader(data))
	scan.Buffer(nil, 1<<20)
	for scan.Scan() {
		code, err := strconv.Atoi(scan.Text())
		if err != nil {
			return nil, err
		}
		if !scan.Scan() {
			return nil, fmt.Errorf("code %d has no value", code)
		}
		for _, c := range scan.Bytes() {
			if c < ' ' || c > '~' {
				return nil, fmt.Errorf("code %d: byte %#x", code, c)
			}
		}
		list = append(list, group{code, scan.Text()})
	}
	return list, scan.Err()
}

// parse reads a drawing, strictly: known sections in order, balanced, EOF last.
func parse(data []byte) (*file, error) {
	list, err := groups(data)
	if err != nil {
		return nil, err
	}
	f := &file{header: map[string][]group{}, tables: map[string][]record{}}
	next := func() group {
		if len(list) == 0 {
			return group{-1, "nothing"}
		}
		g := list[0]
		list = list[1:]
		return g
	}
	for _, section := range []string{"HEADER", "TABLES", "ENTITIES"} {
		if g := next(); g != (group{0, "SECTION"}) {
			return nil, fmt.Errorf("%v instead of a section", g)
		}
		if g := next(); g != (group{2, section}) {
			return nil, fmt.Errorf("%v instead of %s", g, section)
		}
		var body []group
		for g := next(); g != (group{0, "ENDSEC"}); g = next() {
			if g.code < 0 {
				return nil, errors.New("section without end")
			}
			body = append(body, g)
		}
		f.section(section, body)
	}
	if g := next(); g != (group{0, "EOF"}) || len(list) > 0 {
		return nil, fmt.Errorf("%v and %d groups instead of EOF", g, len(list))
	}
	return f, nil
}

func (f *file) section(name string, body []group) {
	if name == "HEADER" {
		variable := ""
		for _, g := range body {
			if g.code == 9 {
				variable = g.value
				continue
			}
			f.header[variable] = append(f.header[variable], g)
		}
		return
	}
	table := ""
	var records []record
	for _, g := range body {
		if g.code == 0 {
			records = append(records, record{kind: g.value})
			continue
		}
		last := &records[len(records)-1]
		last.groups = append(last.groups, g)
	}
	if name == "ENTITIES" {
		f.entities = records
		return
	}
	for _, r := range records {
		switch r.kind {
		case "TABLE":
			table = r.first(2)
			f.tables[table] = nil
		case "ENDTAB":
		default:
			f.tables[table] = append(f.tables[table], r)
		}
	}
}

// points are all places of an entity: codes 10 to 13 with 20 to 23.
func (r record) points(t testing.TB) []scene.Point {
	t.Helper()
	var list []scene.Point
	for i, g := range r.groups {
		if g.code >= 10 && g.code <= 13 {
			y := r.groups[i+1]
			if y.code != g.code+10 {
				t.Fatalf("%s: x without y", r.kind)
			}
			px, err := strconv.ParseFloat(g.value, 64)
			py, err2 := strconv.ParseFloat(y.value, 64)
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			list = append(list, scene.Point{X: px, Y: py})
		}
	}
	return list
}

// shown is how a drawing program shows a text of the file.
func shown(s string) string {
	s = strings.NewReplacer("%%d", "°", "%%p", "±", "%%c", "Ø").Replace(s)
	var units []uint16
	for len(s) > 0 {
		if m := unicodeCode.FindStringSubmatch(s); m != nil {
			n, _ := strconv.ParseUint(m[1], 16, 16) // four hexadecimal digits
			units = append(units, uint16(n))
			s = s[len(m[0]):]
			continue
		}
		r := []rune(s)[0]
		units = append(units, utf16.Encode([]rune{r})...)
		s = s[len(string(r)):]
	}
	return string(utf16.Decode(units))
}

var unicodeCode = regexp.MustCompile(`^\\U\+([0-9A-F]{4})`)
