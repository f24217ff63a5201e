package browser

import (
	"fmt"
	"time"

	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
)

// Frame gives a frame of another site as a tab of its own, as soon as there is one that is wanted: the browser runs such a
// frame in a process of its own, out of reach of the page around it.
func (t *Tab) Frame(wanted func(url string) bool) (*Tab, error) {
	end := time.Now().Add(patience)
	for {
		list, err := chromedp.Targets(t.ctx)
		if err != nil {
			return nil, err
		}
		for _, info := range list {
			if info.Type == "iframe" && wanted(info.URL) {
				return t.attach(info.TargetID)
			}
		}
		if time.Now().After(end) {
			var there []string
			for _, info := range list {
				there = append(there, info.Type+" "+info.URL)
			}
			return nil, fmt.Errorf("no such frame within %v: %v", patience, there)
		}
		time.Sleep(50 * time.Millisecond)
	}
}

func (t *Tab) attach(id target.ID) (*Tab, error) {
	ctx, closing := chromedp.NewContext(t.ctx, chromedp.WithTargetID(id), chromedp.WithDetachOnCancel())
	f := &Tab{ctx: ctx, close: closing}
	if err := chromedp.Do(ctx); err != nil {
		closing()
		return nil, err
	}
	f.gather()
	return f, nil
}
