// Command bench measures what a phone pays for the site.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/build"
	"setbook/scripts/internal/repo"
)

const about = `Usage: go run ./scripts/bench [-runs N] [-page PATH] [-jobs] [-lighthouse]
       go run ./scripts/bench -grid [-runs N]
       go run ./scripts/bench -nest

Builds the site, opens it in Chromium on a phone's screen and prints the median
of each figure with its lowest and highest. Each run is a site that the browser
has never seen.

  Slow 4G    1,638 kbit/s down, 750 kbit/s up, 150 ms a request
  4x         the page's main thread runs at a quarter of this machine's speed
  live       the program listens: from then on a key gives an answer
  block      the longest task of the main thread; 0 where none is over 50 ms
  key        from the key event to the answer in the page (work), and to the
             end of the frame that shows it (frame)

With -grid it times the kernels of a slab of a million readings instead: native,
in WebAssembly (node) and in plain JavaScript, in turns, and prints their ratios.

`

func main() {
	runs := flag.Int("runs", 5, "how often to measure")
	path := flag.String("page", "bed/", "page to measure")
	jobs := flag.Bool("jobs", false, "measure only the start of a job's page, empty and with a log of 2,000 lines")
	house := flag.Bool("lighthouse", false, "run Lighthouse too (fetched through npm into the cache), and print its scores")
	nesting := flag.Bool("nest", false, "only nest published instances, and print the sheets beside the best known")
	slab := flag.Bool("grid", false, "time the kernels of a slab of a million readings instead")
	flag.Usage = func() {
		fmt.Fprint(flag.CommandLine.Output(), about)
		flag.PrintDefaults()
	}
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	var only func(ctx context.Context, root, dir string) error // a measurement that needs no browser
	if *nesting {
		only = nest
	}
	if *slab {
		only = func(ctx context.Context, root, dir string) error { return grid(ctx, root, dir, *runs) }
	}
	if err := run(ctx, *runs, *path, *jobs, *house, only); err != nil {
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, runs int, path string, jobs, house bool, only func(ctx context.Context, root, dir string) error) error {
	root, err := repo.Root()
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "setbook-bench-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	if only != nil {
		return only(ctx, root, dir)
	}
	made, err := build.Build(ctx, build.Options{Out: filepath.Join(dir, "dist")})
	if err != nil {
		return err
	}
	program, _ := made.File(made.Program)
	fmt.Printf("The program\n  %d bytes, %d with brotli, %d with gzip\n", program.Size, program.Brotli, program.Gzip)

	b, err := browser.Start(ctx, filepath.Join(dir, "profile"))
	if err != nil {
		return err
	}
	defer b.Kill()
	m := &bench{browser: b, dist: made.Dir, netlify: filepath.Join(root, "netlify.toml"), path: path, runs: runs}
	if jobs {
		return m.jobs()
	}
	if err := m.measure(); err != nil {
		return err
	}
	if house {
		return m.lighthouse(ctx)
	}
	return nil
}
