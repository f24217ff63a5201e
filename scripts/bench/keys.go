package main

import (
	"fmt"

	"github.com/chromedp/chromedp"

	"setbook/scripts/internal/browser"
)

// keysTyped is how many keys are timed in each run.
const keysTyped = 60

// keyTimes are the 95th percentiles of the runs, in milliseconds.
type keyTimes struct{ work, frame sample }

// timeKeys times each input event: from the key to the end of the listeners (the answer is in the page by then), and to
// the end of the frame after it (a message posted from the frame's callback arrives when the frame is drawn).
const timeKeys = `(() => {
	seen.work = []; seen.frame = []
	addEventListener("input", e => {
		seen.work.push(performance.now() - e.timeStamp)
		requestAnimationFrame(() => {
			const c = new MessageChannel()
			c.port1.onmessage = () => seen.frame.push(performance.now() - e.timeStamp)
			c.port2.postMessage(0)
		})
	})
	const f = document.querySelector('input[type="text"][data-key]')
	f.focus(); f.setSelectionRange(0, 0)
	return ""
})()`

func (k *keyTimes) measure(tab *browser.Tab) error {
	if _, err := browser.Eval[string](tab, timeKeys); err != nil {
		return err
	}
	for i := range keysTyped {
		key := "1" // before what stands in the field, and away again: every second entry is another one
		if i%2 == 1 {
			key = "\b"
		}
		if err := tab.Do(chromedp.KeyEvent(key)); err != nil {
			return err
		}
		// A hand is slower than a frame.
		if err := tab.Wait(fmt.Sprintf("seen.frame.length > %d", i)); err != nil {
			return err
		}
	}
	for name, list := range map[string]*sample{"work": &k.work, "frame": &k.frame} {
		times, err := browser.Eval[sample](tab, "seen."+name)
		if err != nil {
			return err
		}
		*list = append(*list, times.percentile(95))
	}
	return nil
}
