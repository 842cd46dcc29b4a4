package rules

import (
	"strings"

	"fusewright/harness/design/caution"
)

// All lists the rules by name.
func All() []*Rule { return append([]*Rule(nil), registry...) }

// Names lists the rules' names in order.
func Names() []string {
	names := make([]string, len(registry))
	for i, r := range registry {
		names[i] = r.Name
	}
	return names
}

// Find returns the rule of a name, or nil.
func Find(name string) *Rule {
	for _, r := range registry {
		if r.Name == name {
			return r
		}
	}
	return nil
}

// Explain is a rule's text as printed for the user; false when there is no
// such rule.
func Explain(name string) (string, bool) {
	r := Find(name)
	if r == nil {
		return "", false
	}
	var b strings.Builder
	b.WriteString(r.Name + ": " + r.Title + "\n")
	for _, s := range r.sections() {
		b.WriteString("\n" + s.heading + "\n" + indent(wrap(s.text, 88), "  ") + "\n")
	}
	b.WriteString("\nTriggers it\n" + indent(strings.TrimSpace(r.Bad), "  ") + "\n")
	b.WriteString("\nDoes not\n" + indent(strings.TrimSpace(r.Mends()), "  ") + "\n")
	b.WriteString("\n" + wrap(Caution, 90) + "\n")
	return b.String(), true
}

// Caution stands under every explanation.
const Caution = caution.Defer + " A rule that says nothing is no proof that a design is safe."

type section struct{ heading, text string }

// sections are the parts of a rule's text in printing order.
func (r *Rule) sections() []section {
	return []section{
		{"What is looked at", r.Doc},
		{"How it is worked out", r.Formula},
		{"Limits", r.Limits},
		{"Severity", r.Severity},
		{"Why it matters", r.Why},
		{"What to change", r.Change},
		{"Source", r.Source},
	}
}

// wrap breaks text into lines of at most width bytes at spaces.
func wrap(text string, width int) string {
	var b strings.Builder
	line := 0
	for _, w := range strings.Fields(text) {
		switch {
		case line == 0:
		case line+1+len(w) > width:
			b.WriteByte('\n')
			line = 0
		default:
			b.WriteByte(' ')
			line++
		}
		b.WriteString(w)
		line += len(w)
	}
	return b.String()
}

func indent(text, by string) string {
	return by + strings.ReplaceAll(text, "\n", "\n"+by)
}
