package browsertest

import (
	"strings"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// Click clicks the middle of what a CSS selector names, scrolled into view.
func (p *Page) Click(selector string) {
	p.t.Helper()
	run(p, "click "+selector, chromedp.Click(chromedp.CSS(selector), chromedp.NodeVisible))
}

// Type empties a field, types into it and leaves it.
func (p *Page) Type(selector, text string) {
	p.t.Helper()
	field := chromedp.CSS(selector)
	run(p, "type into "+selector, chromedp.Steps(chromedp.WaitVisible(field), chromedp.Clear(field),
		chromedp.SendKeys(field, text), chromedp.Blur(field)))
}

// Keys presses keys on what has the focus; package kb of chromedp names those without a letter.
func (p *Page) Keys(keys string) {
	p.t.Helper()
	run(p, "keys", chromedp.KeyEvent(keys))
}

// Touch puts fingers down at the first of their places each, in CSS pixels of the window, moves them to the next
// ones, all at once, and lifts them.
func (p *Page) Touch(ways ...[][2]float64) {
	p.t.Helper()
	send := func(kind input.DispatchTouchEventType, at int) {
		var points []*input.TouchPoint
		for i, way := range ways {
			if at >= 0 {
				id := float64(i)
				points = append(points, &input.TouchPoint{X: way[at][0], Y: way[at][1], ID: &id})
			}
		}
		if _, err := chromedp.Call(p.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points}); err != nil {
			p.t.Fatalf("touch: %v", err)
		}
	}
	send(input.DispatchTouchEventTypeTouchStart, 0)
	for at := 1; at < len(ways[0]); at++ {
		send(input.DispatchTouchEventTypeTouchMove, at)
	}
	send(input.DispatchTouchEventTypeTouchEnd, -1)
}

// Text is what a person reads of the first that a selector names, once it is there.
func (p *Page) Text(selector string) string {
	p.t.Helper()
	return run(p, "text of "+selector, chromedp.Text(chromedp.CSS(selector), chromedp.NodeVisible))
}

// Wait waits until an expression of the page is true, across a load of another page too.
func (p *Page) Wait(expression string) {
	p.t.Helper()
	var last error
	for end := time.Now().Add(longest); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		is, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`Boolean(`+expression+`)`))
		if err == nil && is {
			return
		}
		last = err // as while there is no page
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.t.Fatalf("waited for %s: %v\nthe page said: %s", expression, last, strings.Join(p.trouble, "\n"))
}

// Value is what an expression of the page comes to, awaited where it is a promise.
func Value[T any](p *Page, expression string) T {
	p.t.Helper()
	return run(p, expression, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// Run runs an expression of the page for what it does.
func (p *Page) Run(expression string) {
	p.t.Helper()
	run(p, expression, chromedp.Evaluate[chromedp.Void](expression, chromedp.EvalAwaitPromise))
}
