package page

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"fusewright/harness/proof/reviewtest"
)

// The file fetches nothing, is the same bytes every time, and small enough to be mailed.
func TestOneFile(t *testing.T) {
	for i, file := range []string{"../../designs/fen-runner.yaml", "../../designs/reed-skiff.yaml"} {
		var first, again bytes.Buffer
		for _, b := range []*bytes.Buffer{&first, &again}[:2-i] { // one is enough to be made twice
			if err := WriteOneFile(b, reviewtest.File(t, file)); err != nil {
				t.Fatal(err)
			}
		}
		if i == 0 && !bytes.Equal(first.Bytes(), again.Bytes()) {
			t.Errorf("%s: two files of one design differ", file)
		}
		if most := 2 << 20; first.Len() > most {
			t.Errorf("%s: %d bytes, of at most %d", file, first.Len(), most)
		}
		text := first.String()
		if found := regexp.MustCompile(`(?i)<(?:script|link|img|iframe)[^>]*(?:src|href)="[^d]`).FindString(text); found != "" {
			t.Errorf("%s: loads %s", file, found)
		}
		if n := strings.Count(text, "</script>"); n != 2 {
			t.Errorf("%s: %d ends of scripts", file, n)
		}
	}
}

func TestBundle(t *testing.T) {
	for _, c := range []struct{ name, a, b, want string }{
		{"names and all", "import {x} from './b.js';\nimport * as b from './b.js';\nx(b);\n", "export const x = 1;\nexport function y() {}\n",
			"const $b = (() => {\n\nconst x = 1;\nfunction y() {}\nreturn {x, y};\n})();\nconst $a = (() => {\nconst {x} = $b;\nconst b = $b;\nx(b);\nreturn {};\n})();\n"},
		{"two of one line", "import {id, title} from './b.js';\n", "export const id = 'b', title = 'B, c';\n",
			"const $b = (() => {\n\nconst id = 'b', title = 'B, c';\nreturn {id, title};\n})();\nconst $a = (() => {\nconst {id, title} = $b;\n\nreturn {};\n})();\n"},
		{"not exported", "import {z} from './b.js';\n", "export const x = 1;\n", `a.js imports "z", which b.js does not export`},
		{"a ring", "import {x} from './b.js';\nexport const y = 1;\n", "import {y} from './a.js';\nexport const x = 1;\n", "in a ring: a.js, b.js, a.js"},
		{"another form", "import x from './b.js';\n", "export default 1;\n", `"import x from './b.js';" is in none of the forms`},
		{"no such module", "import {x} from './c.js';\n", "", "c.js: file does not exist"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := bundle(fstest.MapFS{"a.js": {Data: []byte(c.a)}, "b.js": {Data: []byte(c.b)}}, "a.js", nil)
			if err != nil {
				got = err.Error()
			}
			if err == nil && got != c.want || err != nil && !strings.Contains(got, c.want) {
				t.Errorf("got %s\nwant %s", got, c.want)
			}
		})
	}
}

func BenchmarkOneFile(b *testing.B) {
	r := reviewtest.File(b, "../../designs/fen-runner.yaml")
	r.Remedies()
	for b.Loop() {
		if err := WriteOneFile(new(bytes.Buffer), r); err != nil {
			b.Fatal(err)
		}
	}
}
