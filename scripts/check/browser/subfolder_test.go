package browser

import (
	"context"
	"net"
	"net/http"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/build"
	"setbook/scripts/internal/headers"
	"setbook/scripts/internal/serve"
)

// TestInAFolderOfASite: built for a folder and served from there, the book works, also out of reach of the network, and
// leaves the rest of the site alone.
func TestInAFolderOfASite(t *testing.T) {
	const folder = "/shop/setbook/"
	out := filepath.Join(t.TempDir(), "dist")
	_, err := build.Build(context.Background(), build.Options{Out: out, Base: folder})
	require.NoError(t, err)
	rules, err := headers.Load(netlify)
	require.NoError(t, err)
	mux := http.NewServeMux()
	mux.Handle(folder, http.StripPrefix(folder[:len(folder)-1], serve.Handler(out, rules)))
	mux.HandleFunc("/shop/", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write([]byte(`<!doctype html><link rel="icon" href="data:,"><title>The shop</title><h1>The shop</h1>`))
	})
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	server := &http.Server{Handler: mux}
	go server.Serve(listener)
	t.Cleanup(func() { server.Close() })
	origin := "http://" + listener.Addr().String()

	own, err := browser.Start(context.Background(), t.TempDir())
	require.NoError(t, err)
	t.Cleanup(own.Kill)
	v := look(t, own, &browser.Site{URL: origin + folder}, browser.Phone)
	v.open("bed/")
	v.enter("bed", "width", "3/8 in")
	answers := v.text(answersOf)
	v.wait(`navigator.serviceWorker.controller`)
	assert.Equal(t, origin+folder, eval[string](v, `navigator.serviceWorker.ready.then(r => r.scope)`), "the worker keeps to its folder")
	v.goTo(origin + "/shop/")
	assert.False(t, eval[bool](v, `!!navigator.serviceWorker.controller`), "the rest of the site is not its own")

	require.NoError(t, server.Close())
	v.open("bed/")
	v.wait(`document.querySelector('#bed [data-key="width"]').value === "3/8 in"`)
	assert.Equal(t, answers, v.text(answersOf))
	for _, path := range []string{"", "counter/", "hosting/", "wait/"} { // pages that were never visited
		v.open(path)
		for _, href := range eval[[]string](v, `[...document.querySelectorAll("a[href]")].filter(a => a.origin === location.origin).map(a => a.pathname)`) {
			assert.Contains(t, href, folder, "%s: a link leaves the folder", path)
		}
	}
	v.goTo(origin + folder + "no/such/page/")
	v.live()
	assert.Equal(t, folder, eval[string](v, `document.querySelector("main a.button").pathname`), "the page for a missing page finds the book")
}
