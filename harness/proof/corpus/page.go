package corpus

import (
	"fmt"
	"sort"
	"strings"
)

// Page is the table of results as Markdown.
func Page(faulty, clean, blind, second []*Case) string {
	var b strings.Builder
	b.WriteString("# Planted faults\n\n" +
		"*Made by `go test ./harness/proof/corpus -update`; do not edit.*\n\n" +
		"Each faulty design is a complete harness of an invented vehicle with one mistake as people make\n" +
		"them. Its author marks in the file which rule must speak, how gravely and at which line; one mistake may\n" +
		"honestly show as several findings. Each clean design is as complete and has none. Every finding\n" +
		"counts, advice too. These designs were written by those who wrote the rules: their tables show that\n" +
		"the rules do what they were meant to. How many of a stranger's mistakes the rules find is shown by\n" +
		"the designs [written blind](#written-blind), in two rounds.\n\n")
	summary(&b, faulty, clean)
	byRule(&b, faulty)
	b.WriteString("\n## Faulty designs\n\n| design | system | what is wrong | expected | result |\n|---|---|---|---|---|\n")
	for _, c := range faulty {
		fmt.Fprintf(&b, "| %s | %s %g V | %s | %s | %s |\n", c.Name, c.Practice, c.SystemV, c.Story,
			expected(c), c.result())
	}
	b.WriteString("\n## Clean designs\n\n| design | system | how it is built | result |\n|---|---|---|---|\n")
	for _, c := range clean {
		fmt.Fprintf(&b, "| %s | %s %g V | %s | %s |\n", c.Name, c.Practice, c.SystemV, c.Story, c.result())
	}
	b.WriteString(judgedAnew)
	blindPart(&b, blind, second)
	return b.String()
}

func summary(b *strings.Builder, faulty, clean []*Case) {
	b.WriteString("| | designs | findings expected | caught | missed | false alarms |\n|---|---|---|---|---|---|\n")
	for _, row := range []struct {
		name string
		list []*Case
	}{{"one planted fault", faulty}, {"clean", clean}} {
		var wants, caught, missed, alarms int
		for _, c := range row.list {
			wants, caught = wants+len(c.Wants), caught+len(c.Caught)
			missed, alarms = missed+len(c.Missed), alarms+len(c.False)
		}
		fmt.Fprintf(b, "| %s | %d | %d | %d | %d | %d |\n", row.name, len(row.list), wants, caught, missed, alarms)
	}
}

// byRule counts the expectations of each rule.
func byRule(b *strings.Builder, faulty []*Case) {
	expected, caught := map[string]int{}, map[string]int{}
	var rules []string
	for _, c := range faulty {
		for _, w := range c.Wants {
			if expected[w.Rule] == 0 {
				rules = append(rules, w.Rule)
			}
			expected[w.Rule]++
		}
		for _, w := range c.Caught {
			caught[w.Rule]++
		}
	}
	sort.Strings(rules)
	b.WriteString("\n## By rule\n\n| rule | expected | caught |\n|---|---|---|\n")
	for _, r := range rules {
		fmt.Fprintf(b, "| %s | %d | %d |\n", r, expected[r], caught[r])
	}
}

func expected(c *Case) string {
	count := map[string]int{}
	var names []string
	for _, w := range c.Wants {
		if count[w.Rule] == 0 {
			names = append(names, w.Rule)
		}
		count[w.Rule]++
	}
	for i, n := range names {
		if count[n] > 1 {
			names[i] = fmt.Sprintf("%s ×%d", n, count[n])
		}
	}
	return strings.Join(names, ", ")
}

func (c *Case) result() string {
	switch {
	case c.Err != nil:
		return "does not read"
	case len(c.Missed) > 0:
		return fmt.Sprintf("**%d missed**", len(c.Missed))
	case len(c.False) > 0:
		return fmt.Sprintf("**%d false**", len(c.False))
	case len(c.Wants) == 0 && len(c.Also) > 0:
		return fmt.Sprintf("%d true, not thought of", len(c.Also))
	case len(c.Wants) == 0:
		return "silent"
	}
	return "caught"
}
