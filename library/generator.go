package library

// GeneratorType is a kind of engine-driven charging system: the machine and its regulator.
type GeneratorType struct {
	Name    string   `key:"name" need:""`
	Aliases []string `key:"aliases"`
	// HotLost is the usual share of the output lost when the winding is hot.
	HotLost float64 `key:"hot lost" need:"" in:"0,0.9" show:"* of it lost when hot"`
	// ShuntV: its regulator shorts what is not used, which then loses this voltage in it; 0 = it
	// makes no more than is used.
	ShuntV float64 `key:"shunt V" in:"0.1,5" show:"* in the shunt"`
	Source Source
}

// Shunts tells of a regulator that shorts what is not used: the winding carries its full
// current whatever is on.
func (t *GeneratorType) Shunts() bool { return t != nil && t.ShuntV > 0 }

// Generator finds a kind of charging system by name or alias; nil when there is none.
func (l *Library) Generator(name string) *GeneratorType {
	return find(l.Generators, name, generatorNames)
}

func generatorNames(t *GeneratorType) (string, []string) { return t.Name, t.Aliases }
