package browser

import (
	"context"
	"fmt"
	"slices"
	"sync"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// patience is how long any one step may take, on a slow and busy machine.
const patience = 15 * time.Second

// Size is that of a screen in CSS pixels.
type Size struct{ Width, Height int64 }

// Phone and Tablet are the screens that pages are looked at on; Narrow is the
// narrowest that must do (WCAG 2.2, 1.4.10).
var (
	Phone  = Size{390, 844}
	Tablet = Size{1024, 768}
	Narrow = Size{320, 640}
)

// Tab is one page of the browser. What goes wrong in it is gathered: errors in the console,
// exceptions that nothing caught, violations of the content security policy.
type Tab struct {
	ctx    context.Context
	close  context.CancelFunc
	mu     sync.Mutex
	faults []string
}

// Open opens a tab of a size. Each script runs before any script of a page does.
func (b *Browser) Open(size Size, scripts ...string) (*Tab, error) {
	ctx, closing := chromedp.NewContext(b.ctx)
	t := &Tab{ctx: ctx, close: closing}
	if err := chromedp.Do(ctx); err != nil {
		return nil, err
	}
	t.gather()
	if err := t.Resize(size); err != nil {
		return nil, err
	}
	for _, s := range scripts {
		if _, err := Call(t, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: s}); err != nil {
			return nil, err
		}
	}
	return t, nil
}

// gather gathers what goes wrong from now on.
func (t *Tab) gather() {
	messages := chromedp.Console(t.ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return // the tab is closed
			}
			if m.Type == chromedp.ConsoleError || m.Type == chromedp.ConsoleException {
				t.mu.Lock()
				t.faults = append(t.faults, fmt.Sprintf("%s %s (%s)", m.Source, m, m.URL))
				t.mu.Unlock()
			}
		}
	}()
}

// Close closes the tab.
func (t *Tab) Close() { t.close() }

// Faults is what went wrong so far.
func (t *Tab) Faults() []string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return slices.Clone(t.faults)
}

// Forget drops what went wrong so far, where a test has made it go wrong.
func (t *Tab) Forget() {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.faults = nil
}

// Resize gives the tab the screen of a phone with a touch screen.
func (t *Tab) Resize(size Size) error {
	_, err := Call(t, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
		Width: size.Width, Height: size.Height, DeviceScaleFactor: 2, Mobile: true,
	})
	return err
}

// Do runs steps one after the other.
func (t *Tab) Do(steps ...chromedp.Action[chromedp.Void]) error {
	ctx, cancel := context.WithTimeout(t.ctx, patience)
	defer cancel()
	return chromedp.Do(ctx, steps...)
}

// Call sends one command of the browser's protocol.
func Call[P, R any](t *Tab, command cdp.Command[P, R], params P) (R, error) {
	ctx, cancel := context.WithTimeout(t.ctx, patience)
	defer cancel()
	return chromedp.Call(ctx, command, params)
}

// Eval gives the value of an expression of JavaScript in the page; a promise is
// waited for.
func Eval[T any](t *Tab, expression string) (T, error) {
	ctx, cancel := context.WithTimeout(t.ctx, patience)
	defer cancel()
	return chromedp.Run(ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// Wait waits until an expression of JavaScript is true. A page that is being left while it is asked
// is asked again.
func (t *Tab) Wait(expression string) error {
	end := time.Now().Add(patience)
	for {
		ok, err := Eval[bool](t, "!!("+expression+")")
		if ok && err == nil {
			return nil
		}
		if t.ctx.Err() != nil {
			return t.ctx.Err()
		}
		if time.Now().After(end) {
			return fmt.Errorf("not true within %v: %s (%v)", patience, expression, err)
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// Chooses has the tab choose a file, by its path, as soon as the page asks the person for one with a press; it waits for that to happen
// while press runs.
func (t *Tab) Chooses(path string, press func() error) error {
	ctx, cancel := context.WithTimeout(t.ctx, patience)
	defer cancel()
	if _, err := Call(t, page.SetInterceptFileChooserDialog, page.SetInterceptFileChooserDialogParams{Enabled: true}); err != nil {
		return err
	}
	asked := chromedp.Events(ctx, page.FileChooserOpened)
	if err := press(); err != nil {
		return err
	}
	for e, err := range asked {
		if err != nil {
			return err
		}
		_, err = Call(t, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{path}, BackendNodeID: e.BackendNodeID})
		return err
	}
	return fmt.Errorf("the page did not ask for a file")
}
