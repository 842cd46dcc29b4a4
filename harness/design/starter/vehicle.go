package starter

import "strings"

// vehicle is a kind of vehicle with its usual places and figures. All figures
// are examples, invented within what is common; the text says so.
type vehicle struct {
	name, practice    string
	words             string  // on the papers: "a quad"
	volts             float64 // system; 0 = 12
	battery, capacity string
	regulated, output string
	idle, cruise      string
	accessories       []string
	own               []string // vehicle loads
	places            []string
	runs              []run
	zones             map[string]string // place by where the library says that a load stands; "watch": what keeps watch, where that is elsewhere
	grounds           []string
	ground            map[string]string // ground by place; "" = of the block, and of the other places
	spill             string            // where returns go when the others' stud is full; "" = never full
	block, source     string            // places of block and battery
	tap               string            // key-switched point; "" = a house switch instead
	spare             string            // what the tap gives; "" = 500 mA
	resting           string            // the situation beside the one under way; "" = waiting with the engine idling
	rocker            string
	wire              string   // keys of the wire section
	first             string   // type of the main fuse, which breaks what a short at the battery drives; "" = left open
	trunk             string   // wire size of the panel's feed and return, which more will hang on; "" = left open
	tail              string   // wire size from the main fuse to others beside it; "" = left open
	heavy, heavyRun   string   // place of strong motors, and the length of the loom to it, which nothing else shares
	engines           []engine // to choose from, the usual one first; none = not asked
	second            string   // what is said of a second battery: "house battery"; "" = it has no room for one
	start             run      // with a second battery the first one's place, and the loom from there; "" = they stand together
}

// run is a stretch of loom with its usual length.
type run struct{ from, to, length, keys string }

// engine is a kind of engine with what starts it and what it draws while it runs.
type engine struct{ name, words, starter, own string }

// systemV is the system voltage.
func (v *vehicle) systemV() float64 { return 12 * v.scale() }

// scale is the system voltage over that of the library's accessories.
func (v *vehicle) scale() float64 { return max(v.volts/12, 1) }

func find(name string) *vehicle {
	for i := range vehicles {
		if vehicles[i].name == strings.ToLower(strings.TrimSpace(name)) {
			return &vehicles[i]
		}
	}
	return nil
}

var vehicles = []vehicle{
	{name: "motorcycle", words: "a motorcycle", practice: "motorcycle", battery: "AGM", capacity: "14 Ah",
		regulated: "14.2 V", output: "1300 rpm: 16 A, 2500 rpm: 26 A, 4000 rpm: 31 A, 7000 rpm: 34 A",
		idle: "1300 rpm", cruise: "4000 rpm", accessories: []string{"heated grips", "navigation unit", "USB charger"},
		own: []string{"ignition and injection: 50 W", "headlamp: 35 W", "tail and plate: {power: 6 W, when: key}"},
		places: []string{"battery tray: {ambient: 45 °C}", "under seat: {ambient: 40 °C}", "tail: {ambient: 40 °C, wet: yes}",
			"headstock: {ambient: 50 °C}", "handlebar: {ambient: 40 °C, wet: yes, moves: yes}"},
		runs: []run{{"battery tray", "under seat", "300 mm", "cover: auto"},
			{"under seat", "tail", "400 mm", "chafes: yes, cover: auto"},
			{"under seat", "headstock", "800 mm", "chafes: yes, cover: auto"},
			{"headstock", "handlebar", "350 mm", "flexes: yes, cover: auto"}},
		zones:   map[string]string{"front": "headstock", "dash": "handlebar", "rear": "tail", "inside": "under seat", "bilge": "tail", "top": "headstock", "watch": "under seat"},
		grounds: []string{"seat bar: {kind: ground block, at: under seat, limit: 40 A, returns to: battery negative}", "front stud: {kind: frame stud, at: headstock, limit: 40 A, frame resistance: 3 mΩ}"},
		ground:  map[string]string{"headstock": "front stud", "handlebar": "front stud", "": "seat bar"},
		spill:   "seat bar",
		block:   "under seat", source: "battery tray", tap: "tail lamp feed", rocker: "sealed rocker 20 A",
		wire: "{colour: auto, slack: 60 mm}", heavy: "front end", heavyRun: "1.1 m"},
	{name: "quad", words: "a quad", practice: "off-road", battery: "AGM", capacity: "30 Ah",
		regulated: "14.3 V", output: "1200 rpm: 18 A, 2500 rpm: 32 A, 4000 rpm: 40 A, 6000 rpm: 44 A",
		idle: "1300 rpm", cruise: "4000 rpm", accessories: []string{"LED light bar", "heated grips", "accessory socket"},
		own: []string{"ignition and injection: 60 W", "headlamps: 110 W", "cooling fan of the engine: {power: 80 W, duty: 40 %}"},
		places: []string{"battery box: {ambient: 45 °C}", "dash: {ambient: 40 °C, wet: yes}",
			"front rack: {ambient: 40 °C, wet: yes}", "rear rack: {ambient: 40 °C, wet: yes}"},
		runs: []run{{"battery box", "dash", "900 mm", "chafes: yes, cover: auto"},
			{"dash", "front rack", "600 mm", "chafes: yes, cover: auto"},
			{"battery box", "rear rack", "700 mm", "chafes: yes, pinches: yes, cover: auto"}},
		zones:   map[string]string{"front": "front rack", "dash": "dash", "rear": "rear rack", "inside": "rear rack", "bilge": "rear rack", "top": "front rack", "watch": "battery box"},
		grounds: []string{"rear bar: {kind: ground block, at: battery box, limit: 60 A, returns to: battery negative, wire: {length: 250 mm}}", "front stud: {kind: frame stud, at: front rack, limit: 40 A, frame resistance: 3 mΩ}"},
		ground:  map[string]string{"front rack": "front stud", "": "rear bar"},
		block:   "battery box", source: "battery box", tap: "socket feed", rocker: "sealed rocker 20 A",
		first: "marine strip", tail: "6 mm²",
		wire: "{colour: auto, slack: 60 mm}", heavy: "front end", heavyRun: "1.5 m"},
	{name: "off-road", words: "an off-road vehicle", practice: "off-road", battery: "AGM", capacity: "45 Ah",
		regulated: "14.3 V", output: "800 rpm: 30 A, 1500 rpm: 60 A, 3000 rpm: 80 A",
		idle: "850 rpm", cruise: "2000 rpm", accessories: []string{"LED light bar", "radio", "tyre compressor"},
		own: []string{"lamps: 130 W", "instruments: {power: 15 W, when: key}"},
		places: []string{"engine bay: {ambient: 60 °C}", "cab: {ambient: 40 °C}", "roof: {ambient: 40 °C, wet: yes}",
			"load bed: {ambient: 40 °C, wet: yes}"},
		runs: []run{{"engine bay", "cab", "1000 mm", "chafes: yes, cover: auto"},
			{"cab", "roof", "1200 mm", "chafes: yes, cover: auto"},
			{"cab", "load bed", "2500 mm", "chafes: yes, pinches: yes, cover: auto"}},
		zones:   map[string]string{"front": "roof", "dash": "cab", "rear": "load bed", "inside": "load bed", "bilge": "load bed", "top": "roof"},
		grounds: []string{"cab bar: {kind: ground block, at: cab, limit: 80 A, returns to: battery negative}", "rear stud: {kind: frame stud, at: load bed, limit: 40 A, frame resistance: 3 mΩ}"},
		ground:  map[string]string{"load bed": "rear stud", "": "cab bar"},
		block:   "cab", source: "engine bay", tap: "radio feed", rocker: "toggle 20 A",
		first: "marine strip", tail: "10 mm²",
		wire: "{insulation: ISO 6722 thin wall class C, colour: auto, slack: 80 mm}", heavy: "front bumper", heavyRun: "1.2 m",
		engines: []engine{{"petrol", "an off-road vehicle with a petrol engine", "starter car petrol", "ignition and injection: 120 W"},
			{"diesel", "an off-road vehicle with a diesel engine", "starter diesel 12 V", "injection and fuel pump: 110 W"}},
		second: "second battery"},
	{name: "boat", words: "a boat with an outboard engine", practice: "marine", battery: "flooded", capacity: "60 Ah",
		regulated: "14.2 V", output: "700 rpm: 20 A, 1500 rpm: 35 A, 3000 rpm: 45 A",
		idle: "800 rpm", cruise: "3000 rpm", accessories: []string{"bow light: LED navigation lamp", "all-round light: LED navigation lamp", "fish finder", "VHF radio", "bilge pump"},
		own: []string{"gauges: {power: 6 W, when: key}"},
		places: []string{"battery box: {ambient: 40 °C}", "console: {ambient: 40 °C}", "helm: {ambient: 40 °C, wet: yes}", "bow: {ambient: 35 °C, wet: yes}", "stern: {ambient: 35 °C, wet: yes}",
			"bilge: {ambient: 35 °C, wet: yes}   # with a petrol engine or tank inside: petrol vapour: yes"},
		runs: []run{{"battery box", "console", "2 m", "chafes: yes, cover: auto"},
			{"console", "helm", "400 mm", "cover: auto"},
			{"console", "bow", "2.6 m", "chafes: yes, cover: auto"},
			{"battery box", "stern", "800 mm", "chafes: yes, cover: auto"},
			{"battery box", "bilge", "1 m", "chafes: yes, cover: auto"}},
		zones:   map[string]string{"front": "bow", "dash": "helm", "rear": "stern", "inside": "console", "bilge": "bilge", "top": "console"},
		grounds: []string{"console bus: {kind: ground block, at: console, limit: 100 A, returns to: battery negative}"},
		ground:  map[string]string{"": "console bus"},
		block:   "console", source: "battery box", rocker: "sealed rocker 20 A",
		first: "marine strip", trunk: "4 AWG",
		wire: "{colour: auto, slack: 80 mm}", heavy: "anchor locker", heavyRun: "3.2 m",
		engines: []engine{{"petrol outboard", "a boat with an outboard engine", "starter outboard", "ignition and injection: 60 W"},
			{"diesel", "a boat with a diesel engine", "starter diesel 12 V", "fuel pump and stop solenoid: 40 W"}},
		second: "house battery"},
	{name: "camper", words: "a camper", practice: "camper", battery: "AGM", capacity: "100 Ah",
		regulated: "14.4 V", output: "800 rpm: 70 A, 2000 rpm: 140 A",
		idle: "800 rpm", cruise: "2000 rpm", accessories: []string{"LED interior lamp", "fresh water pump", "compressor fridge", "USB charger"},
		own: []string{"headlamps and tail lamps: 140 W", "cab blower: {power: 120 W, duty: 50 %}", "instruments: {power: 15 W, when: key}",
			"battery monitor: {current: 5 mA, when: always}"},
		places: []string{"seat box: {ambient: 40 °C}", "cupboard: {ambient: 40 °C}", "ceiling: {ambient: 40 °C}", "kitchen: {ambient: 40 °C}"},
		runs: []run{{"seat box", "cupboard", "1500 mm", "chafes: yes, cover: auto"},
			{"cupboard", "ceiling", "3 m", "cover: auto"},
			{"cupboard", "kitchen", "2 m", "chafes: yes, cover: auto"}},
		zones:   map[string]string{"front": "ceiling", "dash": "cupboard", "rear": "kitchen", "inside": "kitchen", "bilge": "kitchen", "top": "ceiling"},
		grounds: []string{"negative bar: {kind: ground block, at: cupboard, limit: 100 A, returns to: battery negative}"},
		ground:  map[string]string{"": "negative bar"},
		block:   "cupboard", source: "seat box", rocker: "rocker 16 A", resting: "camping, all on: {key: off, engine: stopped",
		first: "marine strip", trunk: "25 mm²", tail: "10 mm²",
		wire: "{colour: auto, slack: 80 mm}", heavy: "front bumper", heavyRun: "1.8 m",
		engines: []engine{{"diesel", "a camper with a diesel engine", "starter diesel 12 V", "injection and fuel pump: 180 W"},
			{"petrol", "a camper with a petrol engine", "starter car petrol", "ignition and injection: 200 W"}},
		second: "house battery", start: run{"engine bay", "seat box", "2.6 m", "chafes: yes, cover: auto"}},
	{name: "truck", words: "a truck", practice: "off-road", volts: 24, battery: "flooded", capacity: "170 Ah",
		regulated: "28.2 V", output: "600 rpm: 35 A, 1000 rpm: 60 A, 2000 rpm: 80 A",
		idle: "600 rpm", cruise: "1500 rpm", accessories: []string{"LED light bar", "radio", "accessory socket"},
		own: []string{"engine and instruments: 150 W", "lamps: 180 W"},
		places: []string{"battery box: {ambient: 50 °C, wet: yes}", "cab: {ambient: 45 °C}", "roof: {ambient: 45 °C, wet: yes}",
			"body: {ambient: 40 °C}"},
		runs: []run{{"battery box", "cab", "2500 mm", "chafes: yes, cover: auto"},
			{"cab", "roof", "1500 mm", "chafes: yes, cover: auto"},
			{"battery box", "body", "3 m", "chafes: yes, pinches: yes, cover: auto"}},
		zones:   map[string]string{"front": "roof", "dash": "cab", "rear": "body", "inside": "cab", "bilge": "body", "top": "roof"},
		grounds: []string{"cab bar: {kind: ground block, at: cab, limit: 80 A, returns to: battery negative}", "body stud: {kind: frame stud, at: body, limit: 40 A, frame resistance: 3 mΩ}"},
		ground:  map[string]string{"body": "body stud", "": "cab bar"},
		block:   "cab", source: "battery box", tap: "ignition feed", spare: "1 A", rocker: "rocker 16 A",
		first: "marine strip", tail: "10 mm²",
		wire: "{colour: auto, slack: 80 mm}", heavy: "front bumper", heavyRun: "3.5 m"},
}
