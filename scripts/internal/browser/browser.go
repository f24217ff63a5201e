// Package browser starts Debian's Chromium without a window and drives it: what
// the browser tests and the bench share.
package browser

import (
	"context"
	"errors"
	"os/exec"

	"github.com/chromedp/chromedp"
)

// Name is the program that is started.
const Name = "chromium"

// Browser is one running Chromium on one profile.
type Browser struct {
	ctx  context.Context
	stop context.CancelFunc
}

// Start runs Chromium on a profile, a folder that may be empty. It stops when the
// context ends.
func Start(ctx context.Context, profile string) (*Browser, error) {
	path, err := exec.LookPath(Name)
	if err != nil {
		return nil, errors.New("no " + Name + " on this machine: go run ./scripts/check installs it")
	}
	allocator, stop := chromedp.NewExecAllocator(ctx,
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		chromedp.Flag("headless", true),
		chromedp.Flag("no-sandbox", true), // a container's root has no sandbox to offer
		chromedp.Flag("disable-gpu", true),
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("no-first-run", true),
		chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-sync", true),
	)
	first, _ := chromedp.NewContext(allocator)
	if err := chromedp.Do(first); err != nil {
		stop()
		return nil, err
	}
	return &Browser{first, stop}, nil
}

// Kill ends the browser as a phone does that runs out of memory: at once, with no
// time to put anything away. It returns when the process is gone.
func (b *Browser) Kill() { b.stop() }
