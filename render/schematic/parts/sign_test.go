package parts

import (
	"testing"

	"fusewright/harness/design"
	"fusewright/harness/network/circuit"
	"fusewright/library"
	"fusewright/render/symbol"
)

// What a part is drawn as follows from its kind in the library, never from its name.
func TestSignByKind(t *testing.T) {
	load := func(kind string) *circuit.Part {
		for _, each := range library.Default().Loads {
			if each.Name == kind {
				return &circuit.Part{Kind: circuit.Load, Name: "radio", Source: &design.Load{Type: each, Sign: design.Sign(each.Sign)}}
			}
		}
		t.Fatalf("no %s in the library", kind)
		return nil
	}
	for kind, want := range map[string]struct {
		symbol symbol.Kind
		short  string
	}{
		"navigation unit": {symbol.Electronics, "NAV"},
		"voltmeter":       {symbol.Voltmeter, ""},
		"inverter":        {symbol.Converter, ""},
	} {
		p := load(kind)
		if k, s := SymbolOf(symbol.IEC(), p).Kind, ShortSign(p); k != want.symbol || s != want.short {
			t.Errorf("%s: %s %q", kind, k, s)
		}
	}
	if s := ShortSign(&circuit.Part{Kind: circuit.Load, Name: "radio", Source: &design.Load{Sign: design.SignElectronics}}); s != "" {
		t.Errorf("a unit of no kind has %q", s)
	}
	for _, c := range []struct {
		kind library.SwitchType
		want symbol.Kind
	}{{library.SwitchType{Isolates: true}, symbol.BatterySwitch}, {library.SwitchType{Float: true}, symbol.FloatSwitch}, {library.SwitchType{}, symbol.Switch}} {
		if k := SymbolOf(symbol.IEC(), &circuit.Part{Kind: circuit.Switch, Source: &design.Switch{Type: &c.kind}}).Kind; k != c.want {
			t.Errorf("%+v is drawn as %s", c.kind, k)
		}
	}
}
