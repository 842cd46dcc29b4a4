package design

// Sheet is how the design wants to be drawn.
type Sheet struct {
	Size       string // "A4", "A3", "Letter", "Tabloid"; "" = A4
	PlaceBoxes bool
	Symbols    string // "IEC", "IEEE"; "" = IEC
	Relays     string // "assembled", "detached"; "" = assembled
	Lengths    string // "m", "ft"; "" = m
	LongRuns   string // "broken", "whole"; "" = broken
}

var sheetSection = section[Sheet]{
	Section: Section{Name: "sheet", Shape: KindRecord, Doc: "How the papers are drawn, and in which unit they give lengths.",
		Example: "sheet: {size: A3, place boxes: yes}\n"},
	keys: []key[Sheet]{
		choiceKey(Key{Name: "size", Choices: []string{"A4", "A3", "Letter", "Tabloid"}, Default: "A4",
			Doc: "paper", Example: "A3"}, func(s *Sheet) *string { return &s.Size }),
		yesKey(Key{Name: "place boxes", Default: "no", Doc: "a frame around the parts of each place",
			Example: "yes"}, func(s *Sheet) *bool { return &s.PlaceBoxes }),
		choiceKey(Key{Name: "symbols", Choices: []string{"IEC", "IEEE"}, Default: "IEC",
			Doc: "symbols after IEC 60617, or after IEEE 315 (ANSI Y32)", Example: "IEEE"},
			func(s *Sheet) *string { return &s.Symbols }),
		choiceKey(Key{Name: "relays", Choices: []string{"assembled", "detached"}, Default: "assembled",
			Doc: "a relay as one part, or coil and contacts apart with references", Example: "detached"},
			func(s *Sheet) *string { return &s.Relays }),
		choiceKey(Key{Name: "lengths", Choices: []string{"m", "ft"}, Default: "m",
			Doc: "lengths on drawings, lists and reports in metres and millimetres, or in feet and inches: wires rounded " +
				"up (1/8 in to cut), the board to 1/16 in, strip lengths to 1/32 in; CSV and JSON keep SI units", Example: "ft"},
			func(s *Sheet) *string { return &s.Lengths }),
		choiceKey(Key{Name: "long runs", Choices: []string{"broken", "whole"}, Default: "broken",
			Doc: "at full size: long straight runs drawn shortened, with break lines and their true length across the break, " +
				"or whole, every run as long as it is", Example: "whole"},
			func(s *Sheet) *string { return &s.LongRuns }),
	},
}
