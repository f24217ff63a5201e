package main

import (
	"github.com/chromedp/cdproto/page"

	"setbook/scripts/internal/browser"
)

// picture is a PNG of what the screen shows, or of the whole page.
func picture(t *browser.Tab, whole bool) ([]byte, error) {
	got, err := browser.Call(t, page.CaptureScreenshot, page.CaptureScreenshotParams{
		Format: page.CaptureScreenshotFormatPng, CaptureBeyondViewport: &whole,
	})
	return got.Data, err
}
