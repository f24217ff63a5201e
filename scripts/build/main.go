// Command build makes the site in dist/.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"time"

	"setbook/scripts/internal/build"
)

const about = `Usage: go run ./scripts/build [-o FOLDER] [-base PATH] [-parents ORIGINS] [-sheets FOLDER]

Makes the whole site as static files that any host can serve: the program
(wasm/ compiled for the browser), one page a calculator, the service worker,
and a .br and a .gz beside each file. Names under assets/ hold a hash of their
content and never change. netlify.toml says with which headers to serve it.

`

func main() {
	var o build.Options
	flag.StringVar(&o.Out, "o", "", "folder to write, replaced as a whole (default: dist at the top of the source tree)")
	flag.StringVar(&o.Base, "base", "/", "path at which the site will stand, as in /setbook/")
	parents := flag.String("parents", "", "origins that an embedded calculator may talk with, parted by spaces, beside those of site/parents.txt")
	flag.StringVar(&o.Sheets, "sheets", "", "folder of data sheets (CSV, JSON) to be served with the site")
	flag.Usage = func() {
		fmt.Fprint(flag.CommandLine.Output(), about)
		flag.PrintDefaults()
	}
	flag.Parse()
	o.Parents = strings.Fields(*parents)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, o); err != nil {
		fmt.Fprintln(os.Stderr, "build:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, o build.Options) error {
	r, err := build.Build(ctx, o)
	if err != nil {
		return err
	}
	program, _ := r.File(r.Program)
	whole, _ := r.File(r.Whole)
	fmt.Printf("%d files in %s, version %s, in %s\n", len(r.Files), r.Dir, r.Version, r.Took.Round(time.Millisecond))
	fmt.Printf("the program of most pages: %d bytes, %d with brotli; the whole one: %d, %d\n", program.Size, program.Brotli, whole.Size, whole.Brotli)
	return nil
}
