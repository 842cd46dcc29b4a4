package design

var sheetSection = section[Sheet]{
	Section: Section{Name: "sheet", Shape: kindRecord, Doc: "How the schematic is drawn.",
		Example: "sheet: {size: A3, place boxes: yes}\n"},
	keys: []key[Sheet]{
		choiceKey(Key{Name: "size", Choices: []string{"A4", "A3", "Letter", "Tabloid"}, Default: "A4",
			Doc: "paper", Example: "A3"}, func(s *Sheet) *string { return &s.Size }),
		yesKey(Key{Name: "place boxes", Default: "no", Doc: "a frame around the parts of each place",
			Example: "yes"}, func(s *Sheet) *bool { return &s.PlaceBoxes }),
	},
}
