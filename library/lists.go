package library

// lists are the top-level lists of library files, each with the reader of one
// entry. Any file may hold any of them. To add a list: give Library a field,
// write a reader beside the type, and add a line here. Order matters only
// where one list's rows refer to another's.
var lists = []struct {
	key  string
	read func(m *row, s Source)
}{
	{"insulations", readInsulation},
	{"current tables", readCurrentTable},
	{"shop sizes", readShopSizes}, // before the wire types
	{"wire types", readWireType},
	{"fuse types", readFuseType},
	{"relay forms", readRelayForm},
	{"blocks", readBlock},
	{"switches", readSwitch},
	{"terminals", readTerminal},
	{"connector families", readConnector},
	{"covers", readCover},
	{"loads", readLoad},
	{"colours", readColour},
	{"practices", readPractice},
	{"batteries", readChemistry},
	{"designators", readDesignator},
	{"tolerances", readTolerance},
	{"contact drops", readContactDrop},
}
