package serve

import (
	"compress/gzip"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/headers"
)

func start(t *testing.T) (*httptest.Server, headers.Rules) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"index.html": "contents", "bed/index.html": "bed", "404.html": "missing",
		"assets/a-1.css": "style", "assets/a-1.wasm": "program", "sw.js": "worker", "manifest.webmanifest": "{}",
	} {
		full := filepath.Join(dir, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(full), 0o755))
		require.NoError(t, os.WriteFile(full, []byte(text), 0o644))
		br, err := os.Create(full + ".br")
		require.NoError(t, err)
		b := brotli.NewWriter(br)
		b.Write([]byte(text))
		require.NoError(t, b.Close())
		gz, err := os.Create(full + ".gz")
		require.NoError(t, err)
		g := gzip.NewWriter(gz)
		g.Write([]byte(text))
		require.NoError(t, g.Close())
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, "..", "outside.html"), []byte("outside"), 0o644))
	rules, err := headers.Load("../../../netlify.toml")
	require.NoError(t, err)
	s := httptest.NewServer(Handler(dir, rules))
	t.Cleanup(s.Close)
	return s, rules
}

func get(t *testing.T, address, accept string) (*http.Response, string) {
	t.Helper()
	r, err := http.NewRequest(http.MethodGet, address, nil)
	require.NoError(t, err)
	r.Header.Set("Accept-Encoding", accept)
	client := http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	resp, err := client.Do(r)
	require.NoError(t, err)
	defer resp.Body.Close()
	var body io.Reader = resp.Body
	switch resp.Header.Get("Content-Encoding") {
	case "br":
		body = brotli.NewReader(body)
	case "gzip":
		body, err = gzip.NewReader(body)
		require.NoError(t, err)
	}
	text, err := io.ReadAll(body)
	require.NoError(t, err)
	return resp, string(text)
}

// TestSameHeaders holds the local server to netlify.toml: the very headers of the file, each with the very value, on
// every kind of path and on a missing one.
func TestSameHeaders(t *testing.T) {
	s, rules := start(t)
	for _, path := range []string{"/", "/bed/", "/bed/index.html", "/sw.js", "/manifest.webmanifest", "/assets/a-1.css", "/assets/a-1.wasm", "/no/such/page", "/404.html"} {
		resp, _ := get(t, s.URL+path, "")
		want := rules.For(path)
		require.NotEmpty(t, want.Get("Content-Security-Policy"), path)
		for name := range want {
			assert.Equal(t, want[name], resp.Header[name], "%s: %s", path, name)
		}
	}
}

func TestAnswers(t *testing.T) {
	s, _ := start(t)
	for _, c := range []struct {
		path, accept   string
		status         int
		body, encoding string
		mediaType      string
	}{
		{"/", "", 200, "contents", "", "text/html; charset=utf-8"},
		{"/", "gzip, deflate, br, zstd", 200, "contents", "br", "text/html; charset=utf-8"},
		{"/", "gzip", 200, "contents", "gzip", "text/html; charset=utf-8"},
		{"/", "br;q=0, gzip;q=0.5", 200, "contents", "gzip", "text/html; charset=utf-8"},
		{"/bed/?x=1", "", 200, "bed", "", "text/html; charset=utf-8"},
		{"/bed/index.html", "", 200, "bed", "", "text/html; charset=utf-8"},
		{"/assets/a-1.css", "br", 200, "style", "br", "text/css; charset=utf-8"},
		{"/assets/a-1.wasm", "br", 200, "program", "br", "application/wasm"},
		{"/manifest.webmanifest", "", 200, "{}", "", "application/manifest+json"},
		{"/sw.js", "", 200, "worker", "", "text/javascript; charset=utf-8"},
		{"/nothing/here", "br", 404, "missing", "br", "text/html; charset=utf-8"},
		{"/assets/", "", 404, "missing", "", "text/html; charset=utf-8"},
		{"/../outside.html", "", 404, "missing", "", "text/html; charset=utf-8"},
		{"/..%2foutside.html", "", 404, "missing", "", "text/html; charset=utf-8"},
		{"/assets/a-1.css.br", "", 404, "missing", "", "text/html; charset=utf-8"},
	} {
		resp, body := get(t, s.URL+c.path, c.accept)
		assert.Equal(t, c.status, resp.StatusCode, c.path)
		assert.Equal(t, c.body, body, c.path)
		assert.Equal(t, c.encoding, resp.Header.Get("Content-Encoding"), c.path)
		assert.Equal(t, c.mediaType, resp.Header.Get("Content-Type"), c.path)
	}
}

func TestFolderGetsItsSlash(t *testing.T) {
	s, _ := start(t)
	resp, _ := get(t, s.URL+"/bed", "")
	assert.Equal(t, http.StatusMovedPermanently, resp.StatusCode)
	assert.Equal(t, "/bed/", resp.Header.Get("Location"))
}

func TestUnchanged(t *testing.T) {
	s, _ := start(t)
	first, _ := get(t, s.URL+"/bed/", "br")
	r, err := http.NewRequest(http.MethodGet, s.URL+"/bed/", nil)
	require.NoError(t, err)
	r.Header.Set("Accept-Encoding", "br")
	r.Header.Set("If-None-Match", first.Header.Get("ETag"))
	again, err := http.DefaultClient.Do(r)
	require.NoError(t, err)
	defer again.Body.Close()
	assert.Equal(t, http.StatusNotModified, again.StatusCode)
	plain, _ := get(t, s.URL+"/bed/", "")
	assert.NotEqual(t, first.Header.Get("ETag"), plain.Header.Get("ETag"), "one tag for two forms")
}

func TestOnlyReads(t *testing.T) {
	s, _ := start(t)
	resp, err := http.Post(s.URL+"/", "text/plain", strings.NewReader("x"))
	require.NoError(t, err)
	defer resp.Body.Close()
	assert.Equal(t, http.StatusMethodNotAllowed, resp.StatusCode)
}

func TestListenTakesAnotherPort(t *testing.T) {
	first, moved, err := Listen("localhost:0")
	require.NoError(t, err)
	defer first.Close()
	assert.False(t, moved)
	second, moved, err := Listen(first.Addr().String())
	require.NoError(t, err)
	defer second.Close()
	assert.True(t, moved)
	assert.NotEqual(t, first.Addr().String(), second.Addr().String())
}
