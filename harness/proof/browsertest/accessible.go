package browsertest

import (
	"encoding/json"
	"fmt"
	"strings"
)

// breach is a rule of accessibility that the page breaks, with where.
type breach struct {
	ID    string `json:"id"`
	Help  string `json:"help"`
	Nodes []struct {
		HTML    string `json:"html"`
		Summary string `json:"failureSummary"`
	} `json:"nodes"`
}

// Accessible runs axe-core on the page as it stands, by the rules of WCAG 2.0 to 2.2 of levels A and
// AA, and fails the test on any that is broken. The checker is put in by the protocol, past
// the page's own security policy.
func (p *Page) Accessible() {
	p.t.Helper()
	if !Value[bool](p, "'axe' in window") {
		p.Run(p.axe + ";0")
	}
	text := Value[string](p, `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"], `+
		`resultTypes: ["violations"]}).then(r => JSON.stringify({checked: r.passes.length, breaches: r.violations}))`)
	var result struct {
		Checked  int      `json:"checked"`
		Breaches []breach `json:"breaches"`
	}
	if err := json.Unmarshal([]byte(text), &result); err != nil {
		p.t.Fatal(err)
	}
	if result.Checked == 0 {
		p.t.Error("axe-core found nothing to check")
	}
	for _, b := range result.Breaches {
		var where strings.Builder
		for _, n := range b.Nodes {
			fmt.Fprintf(&where, "\n  %s\n    %s", n.HTML, strings.ReplaceAll(n.Summary, "\n", "\n    "))
		}
		p.t.Errorf("not accessible: %s: %s%s", b.ID, b.Help, &where)
	}
}

// Fits fails the test when the page is wider than its window, and so must be scrolled sideways.
func (p *Page) Fits() {
	p.t.Helper()
	type widths struct {
		Page, Window float64
		Widest       string
	}
	w := Value[widths](p, `(() => {
		const root = document.documentElement, window = root.clientWidth;
		let widest = "", most = window;
		for (const e of document.body.querySelectorAll("*")) {
			const right = e.getBoundingClientRect().right;
			if (right > most) { most = right; widest = e.outerHTML.slice(0, 120); }
		}
		return {Page: root.scrollWidth, Window: window, Widest: widest};
	})()`)
	if w.Page > w.Window {
		p.t.Errorf("the page is %g wide in a window of %g; widest: %s", w.Page, w.Window, w.Widest)
	}
}
