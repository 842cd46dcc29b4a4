package design

import (
	"fmt"
	"io"
	"strings"

	"fusewright/harness/design/quantity"
)

// referenceHead opens the format reference.
const referenceHead = `# The design format

*Made from the reader's own tables by ` + "`go test ./harness/design -update`" + `; edit those, not this page.*

A design is a YAML file. It says what stands where, what feeds each part and where each part returns;
lengths, bundles, currents and findings follow from that.

- The first key is ` + "`fusewright: 1`" + `, the version of the format. Keys are in lower case, with spaces; capitals and hyphens are understood.
- **Quantities carry their unit**, as people write them: ` + "`18 W`, `350 mA`, `16 AWG`, `1.5 mm²`, `3 ft`, `80 °C`" + `.
  A number without a unit is refused. Decimals take a point. ` + "`mohm`, `mm2` and `uA`" + ` stand for
  ` + "`mΩ`, `mm²` and `µA`" + `. Small letters may stand for capitals (` + "`18 w`" + `), but ` + "`36 MW`" + ` is refused: a capital M is mega.
- **Names** of parts are yours, up to 80 characters; case and the amount of space do not count. No two
  parts have the same name, whatever their kind. ` + "`battery`" + ` and ` + "`battery negative`" + ` are the battery's posts,
  of a further battery ` + "`house`" + ` they are ` + "`house`" + ` and ` + "`house negative`" + `.
- **Feeds**: ` + "`fed by: main`" + `, ` + "`fed by: rear 2`" + ` (way 2 of the block ` + "`rear`" + `), ` + "`fed by: keyed 87a`" + ` (a contact of the
  relay ` + "`keyed`" + `), ` + "`fed by: battery`" + `, or a list of several; of several with unlike wires each with its own:
  ` + "`fed by: {link end: 25 mm², booster end: {size: 6 mm², length: 400 mm}}`" + `, where a size stands for a wire; what one leaves out is as in ` + "`wire`" + `. What hangs on a load is ` + "`fed by`" + ` it
  and may return to it: the wires go on from its two terminals. What takes its current from a load, in series, says
  ` + "`in series with: left lamp`" + ` in place of ` + "`fed by`" + `; the last of the string alone says where it returns.
- **Returns**: ` + "`returns to: frame stud`" + `, a ground or ` + "`battery negative`" + `. A fuse, switch or relay with ` + "`returns to`" + ` in
  place of ` + "`fed by`" + ` is in the return: loads, coils and grounds return to it by name, and what is found so on a vehicle
  can be reviewed. Of a relay there, the load is on 87 and the ground on 30.
- A wire's **length** is the shortest way through the runs between its two places and the slack of both
  ends, unless the wire gives its own: that of the finished wire. Papers print
  the length to cut, which is longer (see [wire](#wire)).
- **Labels** (` + "`F3`, `W7`" + `) are counted in the order of the design, wires from the battery outward, unless ` + "`numbers`" + ` holds them:
  ` + "`fusewright fmt --number FILE`" + ` writes it at the end, one label a line with what it stands for
  (` + "`W7: left lamp, feed from lamp pair, YERD`" + `), and from then on a label stays with its part or wire, whatever is added or
  taken away, and so does the colour that ` + "`colour: auto`" + ` chose. A part of another name is another part.
- A load that is taken out leaves its **slot** on the schematic empty, so that all other circuits stay where they were, as long as its
  labels are kept: until ` + "`revision`" + ` is another or its lines in ` + "`numbers`" + ` are deleted. A slot costs no sheet, and slots never take
  more than half of one. Without labels only a switch, fuse or diode that feeds nothing keeps one, and what hung on a splice or
  beside another load does not.
- What is left out and matters to a review is not guessed: the findings say that it is missing.
- Every mistake of a file is reported in one run, with line and column. A value may be shared by a YAML
  anchor; merge keys and tags are not taken. A file has at most 4 MiB and 20 000 wires.

Names that come from the library, such as wire types and relay forms, are listed by ` + "`fusewright parts`" + `.
All results defer to local codes, the makers' instructions and licensed practice.
`

// writeReference writes the format reference as Markdown.
func writeReference(w io.Writer) error {
	var b strings.Builder
	b.WriteString(referenceHead)
	sections := Format()
	b.WriteString("\n## Sections\n\n")
	for _, s := range sections {
		fmt.Fprintf(&b, "- [%s](#%s)\n", s.Name, strings.ReplaceAll(s.Name, " ", "-"))
	}
	for _, s := range sections {
		writeSection(&b, s)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// shapes says how the records of a section stand in the file.
var shapes = map[string]string{
	KindRecord: "One record.",
	KindNamed:  "Records by name: a mapping with each name as key.",
	KindList:   "A list of records.",
}

func writeSection(b *strings.Builder, s Section) {
	fmt.Fprintf(b, "\n## %s\n\n%s %s", s.Name, s.Doc, shapes[s.Shape])
	if s.Short != "" {
		fmt.Fprintf(b, " In place of a record: %s.", s.Short)
	}
	fmt.Fprintf(b, "\n\n```yaml\n%s```\n\n", s.Example)
	b.WriteString("| key | value | left out | meaning |\n|---|---|---|---|\n")
	for _, k := range s.Keys {
		left := k.Default
		switch {
		case k.Required:
			left = "**required**"
		case left == "":
			left = "not given"
		}
		fmt.Fprintf(b, "| `%s` | %s | %s | %s |\n", k.Name, k.form(), cell(left), cell(k.Doc))
	}
}

// cell keeps a text from ending its table cell.
func cell(s string) string { return strings.ReplaceAll(s, "|", `\|`) }

// form says how the value of a key is written.
func (k Key) form() string {
	words := make([]string, len(k.Choices))
	for i, c := range k.Choices {
		words[i] = "`" + c + "`"
	}
	choices := oneOf(words)
	var form string
	switch k.Kind {
	case KindChoice:
		return choices
	case KindQuantity:
		form = fmt.Sprintf("%s, such as `%s`", k.Unit, k.Example)
		if k.Max > k.Min {
			form += fmt.Sprintf("; %s to %s", quantity.Plain(k.Min, k.Unit), quantity.Plain(k.Max, k.Unit))
		}
	case KindNumber:
		form = fmt.Sprintf("%s, %g to %g", k.number(), k.Min, k.Max)
	case KindLibrary:
		form = fmt.Sprintf("name from the library's %s, such as `%s`", k.Library, k.Example)
	case KindYesNo:
		return "`yes` or `no`"
	default:
		form = k.Kind
		if k.Section != "" {
			form = fmt.Sprintf("%s: [%s](#%s)", k.Kind, k.Section, strings.ReplaceAll(k.Section, " ", "-"))
		} else if k.Example != "" {
			form += ", such as `" + cell(k.Example) + "`"
		}
	}
	if choices != "" {
		form = choices + ", or " + form
	}
	return form
}
