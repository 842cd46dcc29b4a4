package library

// Block finds a distribution block by name or alias; nil when there is none.
func (l *Library) Block(name string) *BlockType { return find(l.Blocks, name, blockNames) }

// BlockNames lists the blocks in file order.
func (l *Library) BlockNames() []string { return namesOf(l.Blocks, blockNames) }

func blockNames(b *BlockType) (string, []string) { return b.Name, b.Aliases }

// Switch finds a switch by name or alias; nil when there is none.
func (l *Library) Switch(name string) *SwitchType { return find(l.Switches, name, switchNames) }

// SwitchNames lists the switches in file order.
func (l *Library) SwitchNames() []string { return namesOf(l.Switches, switchNames) }

func switchNames(s *SwitchType) (string, []string) { return s.Name, s.Aliases }

func readBlock(m *row, s Source) {
	b := &BlockType{
		Name:       m.needText("name"),
		Aliases:    m.texts("aliases"),
		Ways:       int(m.needNumber("ways", 1, 100)),
		WayA:       m.needNumber("way A", 0.1, 2000),
		TotalA:     m.needNumber("total A", 0.1, 5000),
		FuseType:   m.text("fuse type"),
		Mounting:   m.needText("mounting"),
		WayEnd:     m.needText("way end"),
		ContactOhm: m.needNumber("contact mohm", 0.001, 1000) / 1e3,
		Sealed:     m.yes("sealed"),
		Source:     s,
	}
	m.r.sourced(m.node, s)
	if b.FuseType != "" && m.r.lib.FuseType(b.FuseType) == nil {
		m.r.reportUnknown(m.values["fuse type"], "fuse type", b.FuseType, m.r.lib.FuseTypeNames())
	}
	m.r.lib.Blocks = add(m, "blocks", m.r.lib.Blocks, b, b.Name, b.Aliases)
}

func readSwitch(m *row, s Source) {
	w := &SwitchType{
		Name:       m.needText("name"),
		Aliases:    m.texts("aliases"),
		ResistiveA: m.needNumber("resistive A", 0.01, 2000),
		LampA:      m.number("lamp A", 0.01, 2000),
		MotorA:     m.number("motor A", 0.01, 2000),
		ContactOhm: m.needNumber("contact mohm", 0.001, 10000) / 1e3,
		Sealed:     m.yes("sealed"),
		Isolates:   m.yes("isolates"),
		Float:      m.yes("float"),
		End:        m.needText("end"),
		Source:     s,
	}
	m.r.sourced(m.node, s)
	m.r.lib.Switches = add(m, "switches", m.r.lib.Switches, w, w.Name, w.Aliases)
}
