// Shots takes a picture of every page, on the screen of a phone and of a tablet,
// so that they can be looked at.
//
//	go run ./scripts/shots -o /tmp/shots
//	go run ./scripts/shots -o /tmp/shots -pages bed,batch -dark -metric
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"setbook/calc/all"
	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/build"
	"setbook/scripts/internal/repo"
)

const help = `shots builds the site and takes a picture of every page with Debian's chromium.

  go run ./scripts/shots [flags]

Each page gives PAGE-390.png and PAGE-1024.png: the whole page, not only what a screen shows of it.

Flags:
`

type options struct {
	out          string
	pages        []string
	dark, metric bool
	screen       bool
	width        int64
	script       string
}

func main() {
	var o options
	flag.StringVar(&o.out, "o", "shots", "folder for the pictures")
	pages := flag.String("pages", "", "which pages, parted by commas (default: all; index is the contents page)")
	flag.BoolVar(&o.dark, "dark", false, "as a device that asks for dark pages")
	flag.BoolVar(&o.metric, "metric", false, "with metric units first")
	flag.BoolVar(&o.screen, "screen", false, "only what the screen shows")
	flag.Int64Var(&o.width, "width", 0, "one picture of this width instead of the two")
	flag.StringVar(&o.script, "do", "", "a script to run in the page before the picture is taken")
	flag.Usage = func() { fmt.Fprint(flag.CommandLine.Output(), help); flag.PrintDefaults() }
	flag.Parse()
	o.pages = strings.Split(*pages, ",")
	if *pages == "" {
		o.pages = []string{"index", "about"}
		for _, c := range all.Calculators() {
			o.pages = append(o.pages, c.ID)
		}
	}
	if err := run(o); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(o options) error {
	dir, err := os.MkdirTemp("", "setbook-shots-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if _, err := build.Build(context.Background(), build.Options{Out: filepath.Join(dir, "dist")}); err != nil {
		return err
	}
	root, err := repo.Root()
	if err != nil {
		return err
	}
	site, err := browser.Serve(filepath.Join(dir, "dist"), filepath.Join(root, "netlify.toml"))
	if err != nil {
		return err
	}
	defer site.Stop()
	b, err := browser.Start(context.Background(), filepath.Join(dir, "profile"))
	if err != nil {
		return err
	}
	defer b.Kill()
	if err := os.MkdirAll(o.out, 0o755); err != nil {
		return err
	}
	sizes := []browser.Size{browser.Phone, browser.Tablet}
	if o.width > 0 {
		sizes = []browser.Size{{Width: o.width, Height: 844}}
	}
	for _, size := range sizes {
		for _, page := range o.pages {
			if err := shoot(b, o, site.URL, page, size); err != nil {
				return fmt.Errorf("%s: %w", page, err)
			}
		}
	}
	return nil
}

func shoot(b *browser.Browser, o options, url, page string, size browser.Size) error {
	before := "try { localStorage.clear() } catch {}"
	if o.metric {
		before = `try { localStorage.setItem("setbook.units", "metric") } catch {}`
	}
	t, err := b.Open(size, before)
	if err != nil {
		return err
	}
	defer t.Close()
	if o.dark {
		if _, err := browser.Call(t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}}); err != nil {
			return err
		}
	}
	path := page + "/"
	if page == "index" {
		path = ""
	}
	if err := t.Do(chromedp.Navigate(url + path)); err != nil {
		return err
	}
	if path != "" && page != "about" {
		if err := t.Wait(`document.querySelector("[data-calculator][data-live]") || document.documentElement.dataset.live`); err != nil {
			return err
		}
	}
	if o.script != "" {
		if _, err := browser.Eval[any](t, "(()=>{"+o.script+"})()"); err != nil {
			return err
		}
	}
	png, err := picture(t, !o.screen)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(o.out, fmt.Sprintf("%s-%d.png", page, size.Width)), png, 0o644)
}
