package legend

import (
	"strings"

	"fusewright/harness/design/wording"
	"fusewright/render/scene"
	"fusewright/render/schematic/column"
)

// connectorPanel lists each connector of the loom, whose poles stand on the wires that it
// parts: where it is, its housing, which half has the sockets, and the wires by cavity.
func (l *Lists) connectorPanel() []*column.List {
	list := &column.List{Title: "Connectors in the loom"}
	for _, x := range l.Circuit.Inlines() {
		if len(x.Poles) == 0 {
			continue
		}
		var wires []string
		for _, p := range x.Poles {
			wires = append(wires, p.Wire.Number)
		}
		text := x.Part.Ref + " " + x.Part.Name + ", " + x.Part.Place.Name + ": " + x.Part.Plug.String() + ", sockets towards " +
			wording.And(x.Towards(x.Sockets)) + "; from cavity 1 on " + strings.Join(wires, " ")
		list.Rows = append(list.Rows, column.TextRow(text, 0, scene.Regular, scene.Ink))
	}
	if len(list.Rows) == 0 {
		return nil
	}
	return []*column.List{list}
}
