// Package browsertest drives a real headless Chromium by its own protocol, so that tests
// use a page as a person would: with a pointer, with keys, on a phone, by a screen reader.
// Only tests import it.
//
//	page := browsertest.Open(t)
//	page.Go(address)
//	page.Click("#tick")
//	page.Accessible()
//
// The browser is found as every reference program is (package referencetest); axe-core, the
// checker of accessibility, by the environment variable FUSEWRIGHT_AXE, the path of its axe.min.js.
// Without either the test is skipped, or fails where reference programs are required.
package browsertest

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"fusewright/harness/proof/referencetest"
)

var look = flag.String("look-at-pages", "", "folder for pictures of the pages that browser tests open")

// longest is what any one step may take: a step that waits for what never comes fails then.
const longest = 10 * time.Second

// Page is one tab of the browser. Whatever goes wrong with a step ends the test.
type Page struct {
	t   testing.TB
	ctx context.Context
	axe string // the text of axe-core

	mu       sync.Mutex
	trouble  []string // what the page threw, or wrote to the console as an error
	requests []string // addresses that were asked for
}

// Open starts a browser of its own, closed at the end of the test.
func Open(t testing.TB) *Page {
	t.Helper()
	program, axe := referencetest.Program(t, "chromium"), axeCore(t)
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.NoSandbox,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("force-color-profile", "srgb"), chromedp.WSURLReadTimeout(30*time.Second))
	outer, end := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, shut := chromedp.NewContext(outer)
	t.Cleanup(func() { _ = chromedp.Cancel(ctx); shut(); end() })
	return listen(t, ctx, axe)
}

// Another opens a further tab with a profile of its own: it shares no storage with the first, as a
// second person's browser does not.
func (p *Page) Another() *Page {
	p.t.Helper()
	ctx, shut := chromedp.NewContext(p.ctx, chromedp.WithNewBrowserContext())
	p.t.Cleanup(shut)
	return listen(p.t, ctx, p.axe)
}

func listen(t testing.TB, ctx context.Context, axe string) *Page {
	t.Helper()
	p := &Page{t: t, ctx: ctx, axe: axe}
	if err := chromedp.Listen(ctx, p.hear); err != nil {
		t.Fatalf("the browser does not start: %v", err)
	}
	p.Size(1440, 900)
	return p
}

// hear keeps what a test may ask for later. It must not wait for anything.
func (p *Page) hear(event any) {
	p.mu.Lock()
	defer p.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		text := e.ExceptionDetails.Text
		if x := e.ExceptionDetails.Exception; x != nil {
			text += " " + x.Description
		}
		p.trouble = append(p.trouble, text)
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError {
			for _, a := range e.Args {
				p.trouble = append(p.trouble, string(a.Value)+a.Description)
			}
		}
	case *log.EventEntryAdded: // the browser's own words, as on a breach of the security policy
		if e.Entry.Level == log.EntryLevelError {
			p.trouble = append(p.trouble, e.Entry.Text+" "+e.Entry.URL)
		}
	case *network.EventRequestWillBeSent:
		p.requests = append(p.requests, e.Request.URL)
	}
}

func axeCore(t testing.TB) string {
	t.Helper()
	path := os.Getenv("FUSEWRIGHT_AXE")
	text, err := os.ReadFile(path)
	switch {
	case err == nil:
		return string(text)
	case referencetest.Required() || path != "":
		t.Fatalf("FUSEWRIGHT_AXE must be the path of axe-core's axe.min.js: %v", err)
	default:
		t.Skip("FUSEWRIGHT_AXE does not name axe-core's axe.min.js")
	}
	return ""
}

// run takes one step, within its time.
func run[T any](p *Page, what string, step chromedp.Action[T]) T {
	p.t.Helper()
	ctx, end := context.WithTimeout(p.ctx, longest)
	defer end()
	out, err := chromedp.Run(ctx, step)
	if err != nil {
		p.mu.Lock()
		defer p.mu.Unlock()
		p.t.Fatalf("%s: %v\nthe page said: %s", what, err, strings.Join(p.trouble, "\n"))
	}
	return out
}

// Go loads an address and waits until it has loaded.
func (p *Page) Go(address string) {
	p.t.Helper()
	run(p, "open "+address, chromedp.Navigate(address))
}

// Size sets the window in CSS pixels; below 640 the screen is a phone's, with touch.
func (p *Page) Size(width, height int64) {
	p.t.Helper()
	var options []chromedp.EmulateViewportOption
	if width < 640 {
		options = append(options, chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	run(p, "size", chromedp.EmulateViewport(width, height, options...))
}

// Dark asks for the dark or the light scheme, as the system's setting does.
func (p *Page) Dark(dark bool) {
	p.t.Helper()
	scheme := map[bool]string{false: "light", true: "dark"}[dark]
	p.media(emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
}

// Print shows the page as it will be printed, or as on the screen.
func (p *Page) Print(on bool) {
	p.t.Helper()
	p.media(emulation.SetEmulatedMediaParams{Media: map[bool]string{false: "", true: "print"}[on]})
}

func (p *Page) media(as emulation.SetEmulatedMediaParams) {
	p.t.Helper()
	if _, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, as); err != nil {
		p.t.Fatalf("media: %v", err)
	}
}

// Picture writes the page, whole, as NAME.png to the folder of -look-at-pages; without that flag it
// does nothing.
func (p *Page) Picture(name string) {
	p.t.Helper()
	if *look == "" {
		return
	}
	p.keep(name+".png", run(p, "picture", chromedp.FullScreenshot(100)))
}

// Paper writes the page as it is printed on A4, as NAME.pdf, likewise.
func (p *Page) Paper(name string) {
	p.t.Helper()
	if *look != "" {
		p.keep(name+".pdf", run(p, "print", chromedp.PrintToPDF(chromedp.PDFPaper(chromedp.PaperA4))))
	}
}

func (p *Page) keep(name string, data []byte) {
	p.t.Helper()
	if err := os.MkdirAll(*look, 0o777); err != nil {
		p.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*look, name), data, 0o666); err != nil {
		p.t.Fatal(err)
	}
}

// Look writes pictures of the page at the widths of a phone, a tablet and a desk, light and dark, and printed, as Picture
// and Paper do. The page takes its theme from the attribute data-theme.
func (p *Page) Look(name string) {
	p.t.Helper()
	if *look == "" {
		return
	}
	defer p.Paper(name)
	for _, width := range []int64{360, 820, 1440} {
		p.Size(width, width*3/4+470)
		for _, theme := range []string{"dark", "light"} {
			p.Run(`document.documentElement.dataset.theme = "` + theme + `"`)
			time.Sleep(100 * time.Millisecond) // for what is drawn anew at another width
			p.Picture(fmt.Sprintf("%s-%d-%s", name, width, theme))
		}
	}
}

// Requests are the addresses asked for so far.
func (p *Page) Requests() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]string(nil), p.requests...)
}

// Quiet fails the test when the page threw anything, or wrote an error to its console: a breach of
// its own security policy is written there too.
func (p *Page) Quiet() {
	p.t.Helper()
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, line := range p.trouble {
		p.t.Errorf("the page said: %s", line)
	}
	p.trouble = nil
}
