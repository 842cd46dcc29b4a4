package design

import (
	"fmt"
	"time"

	"fusewright/harness/design/quantity"
	"fusewright/library"
)

// designSection is the whole file: the heading and the other sections.
var designSection = section[Design]{
	Section: Section{Name: "design", Shape: KindRecord,
		Doc: "The whole file: a heading, the source, the places, and the parts, each of which names what " +
			"feeds it and where it returns. The format version is the first key.",
		Example: "fusewright: 1\ntitle: \"Auxiliary lamps\"\nvehicle: invented single\nsystem: 12 V\n" +
			"practice: motorcycle\nbattery: {chemistry: AGM, capacity: 12 Ah, rate: 10 h}\n"},
	keys: append(headingKeys(), sectionKeys()...),
}

func headingKeys() []key[Design] {
	return []key[Design]{
		{Key: Key{Name: "fusewright", Kind: KindChoice, Choices: []string{FormatVersion}, Required: true,
			Doc: "format version; the first key of the file", Example: FormatVersion},
			read: func(*reader, *Design, field) {}}, // checked before anything is read
		textKey(Key{Name: "title", Required: true, Doc: "what the harness is",
			Example: `"Work lamps and heat"`}, func(d *Design) *Text { return &d.Title }),
		textKey(Key{Name: "vehicle", Doc: "what it is for", Example: "invented single-cylinder, 12 V"},
			func(d *Design) *Text { return &d.Vehicle }),
		textKey(Key{Name: "author", Doc: "who drew it up", Example: "workshop"},
			func(d *Design) *Text { return &d.Author }),
		textKey(Key{Name: "revision", Doc: "which issue of the drawing", Example: "C"},
			func(d *Design) *Text { return &d.Revision }),
		dateKey(),
		systemKey(),
		libraryKey(Key{Name: "practice", Library: "practices", Required: true,
			Doc: "field of use, which sets the limits", Example: "motorcycle"},
			(*library.Library).Practice, func(d *Design) **library.Practice { return &d.Practice }),
		recordKey(Key{Name: "limits", Doc: "limits that differ from the practice's",
			Example: "{drop critical: 2 %}"}, &limitsSection,
			func(_ *reader, d *Design, _ field) *Limits { return &d.Limits }),
		textsKey(Key{Name: "notes", Doc: "what an installer or reviewer should know; at most 2000", most: maxRemarks,
			Example: `["route clear of the steering stop"]`}, func(d *Design) *[]Text { return &d.Notes }),
	}
}

// dateKey reads a calendar day.
func dateKey() key[Design] {
	return key[Design]{Key: Key{Name: "date", Kind: KindText, Example: "2031-05-09",
		Doc: "day of the issue, ISO 8601"},
		read: func(r *reader, d *Design, f field) {
			s, ok := r.sentence(f, maxName)
			if !ok {
				return
			}
			if _, err := time.Parse(time.DateOnly, s.Value); err != nil {
				r.report(s.Pos, fmt.Sprintf("%s: %s is not a day", f, quoted(s.Value)), "such as 2031-05-09")
				return
			}
			d.Date = s
		}}
}

// systemVolts are the nominal voltages of small vehicles and boats.
var systemVolts = []float64{6, 12, 24, 48}

func systemKey() key[Design] {
	k := quantityKey(Key{Name: "system", Unit: quantity.Voltage, Min: 1, Max: 60, Required: true,
		Doc: "nominal voltage: 6, 12, 24 or 48 V", Example: "12 V"},
		func(d *Design) *Quantity { return &d.SystemV })
	k.early = true // relay coils and rated voltages go by it
	read := k.read
	k.read = func(r *reader, d *Design, f field) {
		read(r, d, f)
		for _, v := range systemVolts {
			if d.SystemV.Value == v {
				return
			}
		}
		if d.SystemV.Given() {
			r.report(d.SystemV.Pos, fmt.Sprintf("%s: %s is no nominal voltage", f, quoted(d.SystemV.Text)),
				"6 V, 12 V, 24 V or 48 V")
		}
	}
	return k
}

// sectionKeys are the sections of a design, in the order of the reference.
func sectionKeys() []key[Design] {
	return []key[Design]{
		batteryKey(),
		partsKey(Key{Name: "batteries", Doc: "batteries beside it, such as a house battery", Default: "there is one battery",
			Example: "see further battery"}, &bankSection, func(d *Design) *[]*Bank { return &d.Batteries }),
		recordKey(Key{Name: "charging", Doc: "the engine-driven source; left out when nothing charges",
			Example: "see charging"}, &chargingSection,
			func(r *reader, d *Design, f field) *Charging {
				d.Charging.Common = Common{Name: "charging", Pos: r.pos(f.node), kind: "the charging system"}
				r.current = &d.Charging
				return &d.Charging
			}),
		namedKey(Key{Name: "vehicle loads", Doc: "what the machine itself draws",
			Example: "see vehicle load"}, &vehicleLoadSection, addVehicleLoad),
		namedKey(Key{Name: "places", Doc: "where parts are", Example: "see place"},
			&placeSection, addPlace),
		listKey(Key{Name: "runs", Doc: "the loom between places", Example: "see run"},
			&runSection, addRun),
		recordKey(Key{Name: "wire", Doc: "what holds for every wire", Example: "see wire defaults"},
			&wireDefaultsSection, func(r *reader, _ *Design, f field) *wireDraft {
				r.defaults.spec.Pos = r.pos(f.node)
				return &r.defaults
			}),
		partsKey(Key{Name: "taps", Doc: "points of the factory wiring in use", Example: "see tap"},
			&tapSection, func(d *Design) *[]*Tap { return &d.Taps }),
		partsKey(Key{Name: "fuses", Doc: "overcurrent devices on their own", Example: "see fuse"},
			&fuseSection, func(d *Design) *[]*Fuse { return &d.Fuses }),
		partsKey(Key{Name: "relays", Doc: "relays", Example: "see relay"},
			&relaySection, func(d *Design) *[]*Relay { return &d.Relays }),
		partsKey(Key{Name: "blocks", Doc: "distribution blocks", Example: "see block"},
			&blockSection, func(d *Design) *[]*Block { return &d.Blocks }),
		partsKey(Key{Name: "switches", Doc: "manual switches", Example: "see switch"},
			&switchSection, func(d *Design) *[]*Switch { return &d.Switches }),
		partsKey(Key{Name: "diodes", Doc: "diodes in feeds and returns", Example: "see diode"},
			&diodeSection, func(d *Design) *[]*Diode { return &d.Diodes }),
		partsKey(Key{Name: "resistors", Doc: "dropping resistors in feeds and returns", Example: "see resistor"},
			&resistorSection, func(d *Design) *[]*DroppingResistor { return &d.Resistors }),
		partsKey(Key{Name: "chargers", Doc: "chargers from another battery, the sun or shore power", Default: "the engine alone charges",
			Example: "see charger"}, &chargerSection, func(d *Design) *[]*Charger { return &d.Chargers }),
		partsKey(Key{Name: "loads", Doc: "the accessories", Example: "see load"},
			&loadSection, func(d *Design) *[]*Load { return &d.Loads }),
		partsKey(Key{Name: "grounds", Other: "earths", Doc: "points where returns meet", Example: "see ground"},
			&groundSection, func(d *Design) *[]*Ground { return &d.Grounds }),
		partsKey(Key{Name: "splices", Doc: "joints of feeds", Example: "see splice"},
			&spliceSection, func(d *Design) *[]*Splice { return &d.Splices }),
		partsKey(Key{Name: "partings", Doc: "where the loom comes apart", Example: "see parting"},
			&connectorSection, func(d *Design) *[]*Connector { return &d.Partings }),
		namedKey(Key{Name: "situations", Doc: "what is on at once", Example: "see situation",
			Default: "key off, key on engine stopped, idle and cruise, with all loads on"},
			&situationSection, addSituation),
		namedKey(Key{Name: "rides", Doc: "sequences of legs, for the battery's charge",
			Example: "see ride"}, &rideSection, addRide),
		listKey(Key{Name: "accepted", Doc: "findings accepted as they are, with the reason; at most 2000", most: maxRemarks,
			Example: "see acceptance"}, &acceptanceSection, addAcceptance),
		pricesKey(),
		recordKey(Key{Name: "sheet", Doc: "how it is drawn", Example: "{size: A3}"},
			&sheetSection, func(_ *reader, d *Design, _ field) *Sheet { return &d.Sheet }),
		numbersKey(),
	}
}
