package report

import (
	"strings"
	"testing"
	"unicode"

	"fusewright/harness/proof/fuzztest"
)

// FuzzQuoted: text of a design cannot leave the quotes of a graph, act in a
// comment of a code-review site, or steer a terminal.
func FuzzQuoted(f *testing.F) {
	f.Add("a\"b\\c\n\u202e<b>[x](y) `z` @who |\x1b[2J")
	f.Add("\\")
	f.Fuzz(func(t *testing.T, s string) {
		fuzztest.Within(t, func() {
			dot := dotText(s, s)
			inner := strings.NewReplacer(`\\`, "", `\"`, "", `\n`, "").Replace(dot[1 : len(dot)-1])
			if strings.ContainsAny(inner, "\"\\\n") {
				t.Errorf("%q in a graph: %s", s, dot)
			}
			mark := plainMarkdown(s)
			bare := strings.NewReplacer(`\\`, "", "\\`", "", `\[`, "", `\]`, "", `\|`, "", `\(`, "").Replace(mark)
			if strings.ContainsAny(bare, "`<[]|@") {
				t.Errorf("%q in Markdown: %s", s, mark)
			}
			for _, text := range []string{dot, mark} {
				if at := strings.IndexFunc(text, func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Cf, r) }); at >= 0 {
					t.Errorf("%q holds a control character at %d", text, at)
				}
			}
		})
	})
}
