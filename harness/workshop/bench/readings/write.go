package readings

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"fusewright/harness/design/caution"
	"fusewright/harness/design/quantity"
)

// words are the keys with a text of one line, in the order in which they are written.
var words = []string{"design", "revision", "date", "by", "meter"}

// YAML is the file as text; read again it is the same.
func (f *File) YAML() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# Readings of the bench test. %s\n%s: %s\n", caution.Paper, mark, version)
	for _, key := range words {
		if text := *f.word(key); text != "" {
			fmt.Fprintf(&b, "%s: %s\n", key, quoted(text))
		}
	}
	if len(f.Readings) > 0 {
		b.WriteString("readings:\n")
	}
	for _, x := range f.Readings {
		entry(&b, "check", strconv.Quote(x.Check), "in", quoted(x.In), "of", quoted(x.Of), "engine", quoted(engine(x.Engine)), "reads", quoted(x.Text))
	}
	if len(f.Cut) > 0 {
		b.WriteString("cut list:\n")
	}
	for _, t := range f.Cut {
		entry(&b, "wire", quoted(t.Wire), "of", quoted(t.Of))
	}
	return b.Bytes()
}

// entry writes one line of a list: keys with their values, those without left out.
func entry(b *bytes.Buffer, pairs ...string) {
	var parts []string
	for i := 0; i < len(pairs); i += 2 {
		if pairs[i+1] != "" {
			parts = append(parts, pairs[i]+": "+pairs[i+1])
		}
	}
	fmt.Fprintf(b, "  - {%s}\n", strings.Join(parts, ", "))
}

func engine(rpm float64) string {
	if rpm == 0 {
		return ""
	}
	return quantity.Plain(rpm, quantity.Speed)
}

// quoted is a text with the quotes that YAML needs inside a record, if it needs any.
func quoted(text string) string {
	if text == "" {
		return ""
	}
	var n yaml.Node
	if !strings.ContainsAny(text, ",[]{}#:\"'\n\\&*!|>%@`") && yaml.Unmarshal([]byte(text), &n) == nil && len(n.Content) == 1 &&
		n.Content[0].Kind == yaml.ScalarNode && n.Content[0].Value == text && (n.Content[0].Tag == "!!str" || isDate(text)) {
		return text
	}
	var q strings.Builder
	q.WriteByte('"')
	for _, c := range text {
		switch {
		case c == '"' || c == '\\':
			q.WriteRune('\\')
			q.WriteRune(c)
		case c < ' ' || c == 0x7f || c == 0x85 || c == 0x2028 || c == 0x2029 || c == 0xfeff:
			fmt.Fprintf(&q, "\\u%04x", c)
		default:
			q.WriteRune(c)
		}
	}
	q.WriteByte('"')
	return q.String()
}
