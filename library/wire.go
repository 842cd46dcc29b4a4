package library

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// WireType finds a wire type by name or alias; nil when there is none.
func (l *Library) WireType(name string) *WireType {
	return find(l.WireTypes, name, wireTypeNames)
}

func wireTypeNames(t *WireType) (string, []string) { return t.Name, t.Aliases }

// Insulation finds an insulating material; nil when there is none.
func (l *Library) Insulation(name string) *Insulation {
	return find(l.Insulations, name, insulationNames)
}

func insulationNames(i *Insulation) (string, []string) { return i.Name, nil }

// Size finds a size by its label as people write it: "16 AWG", "16awg",
// "AWG 16", "1/0 AWG", "0 AWG", "1.5 mm²", "1.5 mm2". A gauge finds only sizes
// named by gauge and mm² only sizes named by mm²; nil when the type lacks it.
func (t *WireType) Size(label string) *WireSize {
	for _, s := range t.Sizes {
		if s.Label == label {
			return s
		}
	}
	want, ok := sizeKey(label)
	if !ok {
		return nil
	}
	for _, s := range t.Sizes {
		if have, _ := sizeKey(s.Label); have == want {
			return s
		}
	}
	return nil
}

// SizeFor is the smallest size with at least the given area in mm²; nil when
// none is large enough.
func (t *WireType) SizeFor(areaMm2 float64) *WireSize {
	for _, s := range t.Sizes {
		if s.AreaMm2 >= areaMm2 {
			return s
		}
	}
	return nil
}

// SizeLabels lists the sizes of the type, ascending.
func (t *WireType) SizeLabels() []string {
	out := make([]string, len(t.Sizes))
	for i, s := range t.Sizes {
		out[i] = s.Label
	}
	return out
}

var (
	gaugeForm  = regexp.MustCompile(`^(?:(?:awg|sae) ?)?(0{1,4}|[1-4]/0|[0-9]{1,2})(?: ?(?:awg|sae|gauge|ga))?$`)
	metricForm = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) ?(?:mm2|mm\^2|sq mm|sqmm)$`)
)

// sizeKey gives a size label one spelling: "gauge 16", "metric 1.5".
func sizeKey(label string) (string, bool) {
	if strings.HasPrefix(strings.TrimSpace(label), "-") { // fold takes hyphens for spaces
		return "", false
	}
	s := fold(label)
	if m := metricForm.FindStringSubmatch(s); m != nil {
		x, err := strconv.ParseFloat(m[1], 64)
		return fmt.Sprintf("metric %g", x), err == nil
	}
	m := gaugeForm.FindStringSubmatch(s)
	if m == nil || m[1] == s { // a bare number says no system
		return "", false
	}
	g := m[1]
	if strings.Trim(g, "0") == "" { // 0, 00, 000, 0000 are 1/0 to 4/0
		g = fmt.Sprintf("%d/0", len(g))
	}
	return "gauge " + g, true
}

func shopNames(z *ShopSizes) (string, []string) { return z.Name, nil }

// ShopSizes are the sizes that a shop has; all where it has none.
func (t *WireType) ShopSizes() []*WireSize {
	var list []*WireSize
	for _, z := range t.Sizes {
		if z.Shop {
			list = append(list, z)
		}
	}
	if list == nil {
		return t.Sizes
	}
	return list
}

// inShop tells whether a shop has a size of a label.
func (l *Library) inShop(label string) bool {
	return slices.ContainsFunc(l.ShopSizes, func(z *ShopSizes) bool { return slices.Contains(z.Sizes, label) })
}

func (t *WireType) check(m *row) {
	if t.Material != "" && m.r.lib.Insulation(t.Material) == nil {
		m.r.reportUnknown(m.values["material"], "insulation", t.Material,
			namesOf(m.r.lib.Insulations, insulationNames))
	}
	t.Sizes = m.wireSizes(t.Source, t.OwnSeries)
	if from := m.text("same sizes as"); from != "" {
		if other := m.r.lib.WireType(from); other == nil {
			m.r.reportUnknown(m.values["same sizes as"], "wire type", from, m.r.lib.Names("wire types"))
		} else {
			t.Sizes = append(t.Sizes, other.Sizes...)
		}
	}
	if len(t.Sizes) == 0 {
		m.missing("sizes")
	}
	m.r.ascending(m.node, "sizes", len(t.Sizes), func(i int) float64 { return t.Sizes[i].AreaMm2 })
}

func (m *row) wireSizes(s Source, own bool) []*WireSize {
	var out []*WireSize
	gauge := m.choice("gauge system", "metric", "AWG", "SAE")
	seen := map[string]bool{}
	m.each("sizes", s, func(z *row, s Source) {
		w := &WireSize{GaugeSystem: gauge}
		z.fill(w, s)
		w.Shop = own || m.r.lib.inShop(w.Label)
		m.checkSize(z, w, seen)
		out = append(out, w)
	})
	return out
}

// checkSize reports a label that is none or is given twice, and diameters that
// do not fit in one another.
func (m *row) checkSize(z *row, w *WireSize, seen map[string]bool) {
	key, ok := sizeKey(w.Label)
	at := func(key string) *yaml.Node {
		if v := z.values[key]; v != nil {
			return v
		}
		return z.node
	}
	switch {
	case w.Label != "" && !ok:
		m.r.report(at("size"), fmt.Sprintf("%q is not a size", shorten(w.Label)),
			"such as 16 AWG or 1.5 mm²", "")
	case ok && seen[key]:
		m.r.report(at("size"), fmt.Sprintf("the size %q is given twice", w.Label), "", "")
	}
	seen[key] = true
	if w.OuterMm != 0 && w.OuterMm < w.ConductorMm {
		m.r.report(at("outer mm"), "the diameter over the insulation is less than the conductor's", "", "")
	}
}
