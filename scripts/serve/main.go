// Command serve builds the site, serves it and builds it again when a source changes.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"time"

	"setbook/scripts/internal/headers"
	"setbook/scripts/internal/repo"
	"setbook/scripts/internal/serve"
)

const about = `Usage: go run ./scripts/serve [-addr HOST:PORT] [-watch=false]

Builds the site into dist/, prints the address at which it stands, and builds it
again whenever a source changes. It answers with the headers of netlify.toml and
with the compressed files, as the host does. Where the port is taken it takes a
free one and says so. The service worker is at work here too: after a change the
page offers the newer version, as it will to a crew. Stop it with Ctrl-C.

`

func main() {
	address := flag.String("addr", "localhost:8080", "address to listen on")
	watching := flag.Bool("watch", true, "build again when a source changes")
	flag.Usage = func() {
		fmt.Fprint(flag.CommandLine.Output(), about)
		flag.PrintDefaults()
	}
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, *address, *watching); err != nil {
		fmt.Fprintln(os.Stderr, "serve:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, address string, watching bool) error {
	root, err := repo.Root()
	if err != nil {
		return err
	}
	if err := rebuild(ctx, root); err != nil {
		return err
	}
	listener, moved, err := serve.Listen(address)
	if err != nil {
		return err
	}
	if moved {
		fmt.Printf("%s is taken; another port was chosen.\n", address)
	}
	_, port, err := net.SplitHostPort(listener.Addr().String())
	if err != nil {
		return err
	}
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return err
	}
	fmt.Printf("http://%s/\n", net.JoinHostPort(orLocal(host), port))
	server := &http.Server{Handler: fresh(root), ReadHeaderTimeout: 10 * time.Second}
	if watching {
		go func() {
			if err := watch(ctx, root, func() error { return rebuild(ctx, root) }); err != nil {
				fmt.Fprintln(os.Stderr, "serve: changes are not watched:", err)
			}
		}()
	}
	go func() {
		<-ctx.Done()
		server.Close()
	}()
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// fresh reads the rules for the headers with each request, so that a change of netlify.toml is seen at once.
func fresh(root string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		rules, err := headers.Load(filepath.Join(root, "netlify.toml"))
		if err != nil {
			http.Error(w, err.Error(), http.StatusInternalServerError)
			return
		}
		serve.Handler(filepath.Join(root, "dist"), rules).ServeHTTP(w, r)
	})
}

// orLocal names the host to type in a browser where the address names none.
func orLocal(host string) string {
	if host == "" || host == "0.0.0.0" || host == "::" {
		return "localhost"
	}
	return host
}

// rebuild runs the build as its own program: what is embedded in this one is as old as this one.
func rebuild(ctx context.Context, root string) error {
	cmd := exec.CommandContext(ctx, "go", "run", "./scripts/build")
	cmd.Dir, cmd.Stdout, cmd.Stderr = root, os.Stdout, os.Stderr
	return cmd.Run()
}
