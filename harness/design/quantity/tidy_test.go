package quantity

import "testing"

func TestTidy(t *testing.T) {
	for _, c := range []struct {
		text string
		dim  Dimension
		want string
	}{
		{"1.5mm2", Area, "1.5 mm²"}, {"16awg", Area, "16 AWG"}, {"AWG 16", Area, "16 AWG"}, {"00 AWG", Area, "2/0 AWG"},
		{"12V", Voltage, "12 V"}, {"+12 volts", Voltage, "12 V"}, {"350mA", Current, "350 mA"}, {"80 uA", Current, "80 µA"},
		{"9 mohm", Resistance, "9 mΩ"}, {"3 feet", Length, "3 ft"}, {`7"`, Length, "7 in"}, {"0.50  m", Length, "0.50 m"},
		{`10'6"`, Length, "10 ft 6 in"}, {"+3 feet 4  1/8 inches", Length, "3 ft 4 1/8 in"}, {`2 1/2"`, Length, "2 1/2 in"}, {`3/8"`, Length, "3/8 in"},
		{"104F", Temperature, "104 °F"}, {"80 ℃", Temperature, "80 °C"}, {"10 hours", Duration, "10 h"},
		{"21 d", Duration, "21 days"}, {"1300 r/min", Speed, "1300 rpm"}, {"30%", Share, "30 %"}, {"18 w", Power, "18 W"},
	} {
		got, err := Tidy(c.text, c.dim)
		if err != nil || got != c.want {
			t.Errorf("%q: %q, %v; want %q", c.text, got, err, c.want)
		}
		was, _ := Parse(c.text, c.dim)
		if now, err := Parse(got, c.dim); err != nil || now != was {
			t.Errorf("%q is %g, tidied %g (%v)", c.text, was, now, err)
		}
		if again, err := Tidy(got, c.dim); err != nil || again != got {
			t.Errorf("%q tidied again is %q, %v", got, again, err)
		}
	}
	for _, text := range []string{"", "12", "12 W", "auto"} {
		if _, err := Tidy(text, Voltage); err == nil {
			t.Errorf("%q was taken", text)
		}
	}
}
