package live

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"fusewright/harness/proof/browsertest"
)

// By keys, by fingers and by the address: the drawing is moved and its parts are chosen and found, what is
// planned comes back from a copied link, and what is tried goes into the file when it may.
func TestHandsInBrowser(t *testing.T) {
	p := browsertest.Open(t)
	file, address := served(t, true, "right lamp: {type: LED auxiliary lamp,", "right lamp: {type: halogen lamp 35 W,")
	keysInDrawing(t, p, address)
	search(t, p)
	touched(t, p, address)
	p.Size(1440, 900)
	planned(t, p, address)
	changed := changedByHand(t, p, address)
	written(t, p, file, changed)
	p.Quiet()
	readOnly(t, p)
}

// seen is the rectangle of the drawing that is seen: x, y, width, height.
func seen(p *browsertest.Page) [4]float64 {
	return browsertest.Value[[4]float64](p, `document.querySelector(".sheet svg").getAttribute("viewBox").split(" ").map(Number)`)
}

func keysInDrawing(t *testing.T, p *browsertest.Page, address string) {
	t.Helper()
	p.Go(address)
	p.Wait(`document.querySelector(".sheet svg .spot")`)
	p.Run(`document.querySelector(".seek input").focus()`)
	p.Keys(kb.Tab)
	whole := seen(p)
	for _, x := range []struct {
		key string
		ok  func(was, is [4]float64) bool
	}{
		{"+", func(was, is [4]float64) bool { return is[2] < was[2] && is[3] < was[3] && is[0] > was[0] }},
		{kb.ArrowRight, func(was, is [4]float64) bool { return is[0] > was[0] && is[1] == was[1] && is[2] == was[2] }},
		{kb.ArrowLeft, func(was, is [4]float64) bool { return is[0] < was[0] && is[1] == was[1] }},
		{kb.ArrowUp, func(was, is [4]float64) bool { return is[1] < was[1] && is[0] == was[0] }},
		{kb.ArrowDown, func(was, is [4]float64) bool { return is[1] > was[1] && is[0] == was[0] }},
		{"+", func(was, is [4]float64) bool { return is[2] < was[2] }},
		{"-", func(was, is [4]float64) bool { return is[2] > was[2] }},
		{"0", func(_, is [4]float64) bool { return is == whole }},
	} {
		was := seen(p)
		if p.Keys(x.key); !x.ok(was, seen(p)) {
			t.Errorf("key %q: from %v to %v", x.key, was, seen(p))
		}
	}
	p.Keys(kb.Tab)
	at := browsertest.Value[string](p, `document.activeElement.dataset.of || ""`)
	p.Keys(kb.Enter)
	if sel := browsertest.Value[string](p, `new URLSearchParams(location.hash.slice(1)).get("sel") || ""`); at == "" || sel != at {
		t.Errorf("the key chose %q where %q has the focus", sel, at)
	}
}

func search(t *testing.T, p *browsertest.Page) {
	t.Helper()
	for _, x := range []struct{ word, want string }{{"heated grips", "E3"}, {"w4", "W4"}, {"F3", "F3"}, {"ogrd", "W9"}, {"yellow lamp switch", "W4"}} {
		p.Run(`(() => { const f = document.querySelector(".seek input"); f.value = ""; f.focus(); })()`)
		p.Keys(x.word)
		p.Keys(kb.Enter)
		if sel := browsertest.Value[string](p, `new URLSearchParams(location.hash.slice(1)).get("sel") || ""`); sel != x.want {
			t.Errorf("%q finds %q, want %s", x.word, sel, x.want)
		}
	}
	p.Wait(`document.querySelectorAll(".steps tbody tr").length > 8`)
}

func touched(t *testing.T, p *browsertest.Page, address string) {
	t.Helper()
	p.Size(360, 740)
	p.Go("about:blank")
	p.Go(address)
	p.Wait(`document.querySelector(".sheet svg .spot")`)
	p.Run(`document.querySelector(".sheet").scrollIntoView({block: "center"})`)
	at := browsertest.Value[[2]float64](p, `(() => { const r = document.querySelector(".sheet").getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	x, y := at[0], at[1]
	whole := seen(p)
	p.Touch([][2]float64{{x - 20, y}, {x - 40, y}, {x - 60, y}, {x - 80, y}}, [][2]float64{{x + 20, y}, {x + 40, y}, {x + 60, y}, {x + 80, y}})
	near := seen(p)
	if !(near[2] < 0.6*whole[2]) {
		t.Errorf("two fingers apart show %v of %v", near, whole)
	}
	p.Touch([][2]float64{{x, y}, {x - 20, y - 15}, {x - 50, y - 30}})
	if moved := seen(p); !(moved[0] > near[0] && moved[1] > near[1] && moved[2] == near[2]) {
		t.Errorf("a finger to the left and up moves the drawing from %v to %v", near, moved)
	}
	p.Touch([][2]float64{{x - 80, y}, {x - 40, y}, {x - 20, y}}, [][2]float64{{x + 80, y}, {x + 40, y}, {x + 20, y}})
	if far := seen(p); !(far[2] > near[2]) {
		t.Errorf("two fingers together show %v of %v", far, near)
	}
	if sel := browsertest.Value[string](p, `location.hash`); strings.Contains(sel, "sel=") {
		t.Errorf("moving chose something: %s", sel)
	}
}

// slide sets a slider, or what is chosen in a list, as a hand does.
func slide(p *browsertest.Page, id, value string) {
	p.Run(`(() => { const s = document.getElementById("` + id + `"); s.value = "` + value + `"; s.dispatchEvent(new Event("input")); s.dispatchEvent(new Event("change")); })()`)
}

func planned(t *testing.T, p *browsertest.Page, address string) {
	t.Helper()
	p.Go("about:blank")
	p.Go(address + "#view=planner")
	p.Wait(`document.querySelector(".planner .big dd")`)
	figures := `document.querySelector(".planner .big").textContent`
	for _, x := range []struct{ id, value string }{
		{"planner-start", "ride town with idling 2"}, {"planner-speed", "1000"}, {"planner-air", "-10"},
		{"planner-full", "0.7"}, {"planner-parked", "240"},
	} {
		before := browsertest.Value[string](p, figures)
		slide(p, x.id, x.value)
		p.Wait(figures + ` !== ` + quoted(before))
	}
	before := browsertest.Value[string](p, figures)
	p.Click(".planner .hands li:nth-child(3) [role=switch]")
	p.Wait(figures + ` !== ` + quoted(before))
	before = browsertest.Value[string](p, figures)
	p.Run(`Object.defineProperty(navigator, "clipboard", {value: {writeText: async (text) => { window.copied = text; }}})`)
	p.Click(".planner .copy")
	p.Wait(`window.copied`)
	link := browsertest.Value[string](p, `window.copied`)
	state := `[...document.querySelectorAll(".planner [role=switch], .planner input, .planner select")].map((e) => e.getAttribute("aria-checked") || e.value).join()`
	was := browsertest.Value[string](p, state)
	p.Go("about:blank")
	p.Go(link)
	p.Wait(figures + ` === ` + quoted(before) + ` && ` + state + ` === ` + quoted(was)) // drawn more than once on the way
}

// quoted is a text as the page writes it in a program.
func quoted(text string) string { return "`" + strings.ReplaceAll(text, "`", "") + "`" }

// changedByHand changes four values and gives the lines that are to be copied.
func changedByHand(t *testing.T, p *browsertest.Page, address string) []string {
	t.Helper()
	p.Go("about:blank")
	p.Go(address + "#view=whatif")
	p.Wait(`document.querySelector(".whatif .found, .whatif .chooser")`)
	for i, x := range []struct{ name, value string }{{"heated grips", "power"}, {"lamp switch", "size"}, {"F3", "rating"}, {"right lamp", "LED in its place"}} {
		p.Type("#whatif-about", x.name)
		find := `[...document.querySelectorAll(".whatif .found button")].find((b) => b.textContent.includes(` + quoted(x.value) + `))`
		p.Wait(find)
		p.Run(find + `.click()`)
		p.Wait(`document.querySelectorAll(".whatif .code .put").length === ` + string(rune('1'+i)))
	}
	p.Accessible()
	p.Run(`Object.defineProperty(navigator, "clipboard", {value: {writeText: async (text) => { window.copied = text; }}})`)
	p.Click(".whatif .copy button")
	p.Wait(`window.copied`)
	lines := strings.Split(strings.TrimSuffix(browsertest.Value[string](p, `window.copied`), "\n"), "\n")
	for _, want := range []string{"power: 40 W", "size: 4 mm²", "fuse: 10 A", "type: LED"} {
		if !slices.ContainsFunc(lines, func(l string) bool { return strings.Contains(l, want) }) {
			t.Errorf("no line to copy has %q: %q", want, lines)
		}
	}
	if n := browsertest.Value[int](p, `document.querySelectorAll(".whatif .alone li").length`); n != 4 {
		t.Errorf("%d changes are shown by themselves, of 4", n)
	}
	return lines
}

// written puts them into the file, in which nothing else changes.
func written(t *testing.T, p *browsertest.Page, file string, lines []string) {
	t.Helper()
	was, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p.Click(".whatif .write")
	p.Wait(`document.querySelectorAll(".whatif .list > li").length === 0`)
	is, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	before, after := strings.Split(string(was), "\n"), strings.Split(string(is), "\n")
	var put []string
	for i := range min(len(before), len(after)) {
		if before[i] != after[i] {
			put = append(put, after[i])
		}
	}
	if len(before) != len(after) || !slices.Equal(put, lines) {
		t.Errorf("written: %q, to copy were %q", put, lines)
	}
	p.Wait(`document.querySelector(".strip .saved")?.textContent.includes("Saved")`)
}

// readOnly is a page that was not let write.
func readOnly(t *testing.T, p *browsertest.Page) {
	t.Helper()
	file, address := served(t, false)
	was, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p.Go(address + "#view=whatif&change=loads+%E2%80%BA+heated+grips+%E2%80%BA+power%3D40+W")
	p.Wait(`document.querySelector(".whatif .copy button")`)
	code := browsertest.Value[int](p, `(async () => { const {of} = await (await fetch("/api/offers")).json();
		return (await fetch("/api/write", {method: "POST", headers: {"Content-Type": "application/json"},
			body: JSON.stringify({of, changes: [{at: "loads › heated grips › power", value: "40 W"}]})})).status; })()`)
	is, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if buttons := browsertest.Value[int](p, `document.querySelectorAll(".whatif .write").length`); buttons != 0 || code != 403 || string(is) != string(was) {
		t.Errorf("%d buttons to write, answer %d", buttons, code)
	}
}
