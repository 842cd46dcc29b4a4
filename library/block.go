package library

// Block finds a distribution block by name or alias; nil when there is none.
func (l *Library) Block(name string) *BlockType { return find(l.Blocks, name, blockNames) }

func blockNames(b *BlockType) (string, []string) { return b.Name, b.Aliases }

// Switch finds a switch by name or alias; nil when there is none.
func (l *Library) Switch(name string) *SwitchType { return find(l.Switches, name, switchNames) }

func switchNames(s *SwitchType) (string, []string) { return s.Name, s.Aliases }

func (b *BlockType) check(m *row) {
	if b.FuseType != "" && m.r.lib.FuseType(b.FuseType) == nil {
		m.r.reportUnknown(m.values["fuse type"], "fuse type", b.FuseType, m.r.lib.Names("fuse types"))
	}
}
