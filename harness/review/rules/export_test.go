package rules

import "strings"

// Page is the reference page of all rules in Markdown.
func Page() string {
	var b strings.Builder
	b.WriteString("# Rules\n\n<!-- Generated from harness/review/rules; do not edit. " +
		"Rewrite with: go test ./harness/review/rules -run TestPage -update -->\n\n")
	b.WriteString("What `fusewright check` looks for. " + Caution + "\n\n")
	for _, r := range registry {
		b.WriteString("- [" + r.Name + "](#" + r.Name + "): " + r.Title + "\n")
	}
	for _, r := range registry {
		b.WriteString("\n## " + r.Name + "\n\n" + capital(r.Title) + ".\n")
		for _, s := range r.sections() {
			b.WriteString("\n**" + s.heading + ".** " + s.text + "\n")
		}
		b.WriteString("\nTriggers it (on top of a complete design that is clean):\n\n```yaml\n" +
			strings.TrimSpace(r.Bad) + "\n```\n\nDoes not:\n\n```yaml\n" +
			strings.TrimSpace(r.Mends()) + "\n```\n")
	}
	return b.String()
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
