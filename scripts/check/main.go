// Command check is everything that must hold before a change lands.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"

	"setbook/scripts/internal/repo"
)

const about = `Usage: go run ./scripts/check [-offline] [-short | -long]

Checks the whole of Setbook, one line a stage with its time, and stops at the
first fault. The last line counts the stages that passed and failed.

  tools    what the rest needs: Debian's chromium and npm (through apt-get), and
           axe-core (through npm, into the user's cache); what is missing is
           installed, and the line says so
  format   gofmt has nothing to change
  vet      go vet finds nothing, in the program for the phone either
  tests    every test but those of the browser
  wasm     the tests of the program for the phone and of the sums, as WebAssembly
  fuzz     each fuzz target for a few seconds; the import of a job 10 million times
           with -long
  build    the site builds
  size     the program is within scripts/check/budget.txt
  browser  the built site in Chromium, on screens of a phone and a tablet
  kills    Chromium is ended without warning in the middle of saves, 20 times, or
           200 with -long: nothing that the page called saved may be gone

`

// checker is one run of the check.
type checker struct {
	root           string
	offline, short bool
	long           bool
	missing        []string // tools that are not there
	program        int      // bytes of the program that most pages have, with brotli
	whole          int      // and of the whole one
}

func main() {
	c := &checker{}
	flag.BoolVar(&c.offline, "offline", false, "install nothing, and name what could not be checked")
	flag.BoolVar(&c.short, "short", false, "leave out the fuzz spell and the browser")
	flag.BoolVar(&c.long, "long", false, "kill the browser 200 times instead of 20, and fuzz the import of a job 10 million times")
	flag.Usage = func() {
		fmt.Fprint(flag.CommandLine.Output(), about)
		flag.PrintDefaults()
	}
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	root, err := repo.Root()
	if err != nil {
		fmt.Fprintln(os.Stderr, "check:", err)
		os.Exit(1)
	}
	c.root = root
	if !runAll(ctx, os.Stdout, c.stages()) {
		os.Exit(1)
	}
}

func (c *checker) stages() []stage {
	return []stage{
		{"tools", c.tools}, {"format", c.format}, {"vet", c.vet}, {"tests", c.tests}, {"wasm", c.wasm},
		{"fuzz", c.fuzz}, {"build", c.build}, {"size", c.size}, {"browser", c.browser}, {"kills", c.kills},
	}
}
