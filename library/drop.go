package library

// ContactDrop is what a part of a kind loses at its rated current where neither
// the design nor its type gives a resistance.
type ContactDrop struct {
	Kind   string  `key:"kind" need:""` // "switch", "fuse", "block way"
	DropV  float64 `key:"mV" need:"" in:"0.1,1000" per:"1000"`
	Source Source
}

// ContactDrop finds the drop of a kind of part; nil when there is none.
func (l *Library) ContactDrop(kind string) *ContactDrop {
	return find(l.ContactDrops, kind, dropNames)
}

func dropNames(d *ContactDrop) (string, []string) { return d.Kind, nil }
