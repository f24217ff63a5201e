package build

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"io"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/net/html"

	"setbook/calc/languages"
	"setbook/scripts/internal/headers"
	"setbook/site"
)

// filled is the whole site, with a few bytes where the compiled program goes.
func filled(t *testing.T, base string) tree {
	t.Helper()
	made := tree{}
	program, whole, version, err := made.fill(parts{[]byte("\x00asm a program"), []byte("\x00asm another"), []byte("class Go {}")}, Options{Base: base})
	require.NoError(t, err)
	require.Contains(t, made, program)
	require.Contains(t, made, whole)
	require.NotEmpty(t, version)
	return made
}

// pages parses every page.
func (t tree) pages(tt *testing.T) map[string]*html.Node {
	tt.Helper()
	out := map[string]*html.Node{}
	for p, data := range t {
		if path.Ext(p) == ".html" {
			doc, err := html.Parse(bytes.NewReader(data))
			require.NoError(tt, err)
			out[p] = doc
		}
	}
	require.GreaterOrEqual(tt, len(out), 3)
	return out
}

func attribute(n *html.Node, name string) (string, bool) {
	for _, a := range n.Attr {
		if a.Key == name {
			return a.Val, true
		}
	}
	return "", false
}

// has reports whether an address as a page writes it leads to a file of the site.
func (t tree) has(page, address, base string) bool {
	address, _, _ = strings.Cut(address, "#")
	address, _, _ = strings.Cut(address, "?")
	at := path.Join("/", path.Dir(page), address)
	if strings.HasPrefix(address, "/") {
		at = path.Join("/", strings.TrimPrefix(address, strings.TrimSuffix(base, "/")))
	}
	if strings.HasSuffix(address, "/") || strings.HasSuffix(address, ".") {
		at = path.Join(at, "index.html")
	}
	_, ok := t[strings.TrimPrefix(at, "/")]
	return ok
}

func TestEveryReferenceLeadsSomewhere(t *testing.T) {
	for _, base := range []string{"/", "/setbook/"} {
		made := filled(t, base)
		for name, doc := range made.pages(t) {
			seen := 0
			for n := range doc.Descendants() {
				for _, a := range n.Attr {
					switch {
					case a.Key == "data-root":
						assert.True(t, made.has(name, a.Val+"sw.js", base), "%s: no worker at %s", name, a.Val)
					case a.Key == "href" && strings.Contains(a.Val, "://"): // a source, whose address may be an old one
						rel, _ := attribute(n, "rel")
						assert.Equal(t, "a", n.Data, "%s: fetches from another origin: %s", name, a.Val)
						assert.Equal(t, "noreferrer", rel, "%s: %s", name, a.Val)
					case a.Key == "href" && strings.HasPrefix(a.Val, "#"): // TestIDs
					case a.Key == "href", a.Key == "src", a.Key == "data-program", a.Key == "data-whole":
						seen++
						assert.True(t, made.has(name, a.Val, base), "%s: %s leads nowhere", name, a.Val)
						if name != "404.html" {
							assert.False(t, strings.HasPrefix(a.Val, "/"), "%s: %s would fail in a folder", name, a.Val)
						}
					}
				}
			}
			least := 8
			if strings.HasPrefix(name, "embed/") {
				least = 5 // no way to another page but one, nothing to install
			}
			assert.GreaterOrEqual(t, seen, least, name)
		}
	}
}

func TestManifestLeadsSomewhere(t *testing.T) {
	made := filled(t, "/")
	var m struct {
		Start string              `json:"start_url"`
		Icons []site.ManifestIcon `json:"icons"`
	}
	require.NoError(t, json.Unmarshal(made["manifest.webmanifest"], &m))
	assert.True(t, made.has("manifest.webmanifest", m.Start, "/"))
	require.Len(t, m.Icons, 5)
	for _, i := range m.Icons {
		assert.True(t, made.has("manifest.webmanifest", i.Source, "/"), i.Source)
	}
}

var hashedName = regexp.MustCompile(`^assets/.+-([0-9a-f]{16})\.\w+$`)

func TestHashedNamesTellTheirContent(t *testing.T) {
	made := filled(t, "/")
	count := 0
	for p, data := range made {
		if !strings.HasPrefix(p, "assets/") {
			continue
		}
		m := hashedName.FindStringSubmatch(p)
		if assert.NotNil(t, m, p) {
			count++
			assert.Equal(t, m[1], Hash(data), p)
		}
	}
	assert.Equal(t, 8+len(languages.All)-1, count, "style, two programs, script, icons, and the words of each other language")
}

// TestNothingInline holds every page to the content security policy: no script, style or handler stands in it.
func TestNothingInline(t *testing.T) {
	for name, doc := range filled(t, "/").pages(t) {
		for n := range doc.Descendants() {
			if n.Type != html.ElementNode {
				continue
			}
			_, external := attribute(n, "src")
			assert.False(t, n.Data == "script" && !external, "%s: inline script", name)
			assert.NotEqual(t, "style", n.Data, "%s: inline style", name)
			assert.NotContains(t, []string{"base", "iframe", "object", "embed"}, n.Data, name)
			for _, a := range n.Attr {
				assert.NotEqual(t, "style", a.Key, "%s: <%s> has a style", name, n.Data)
				assert.False(t, strings.HasPrefix(a.Key, "on"), "%s: <%s> has %s", name, n.Data, a.Key)
				assert.False(t, strings.HasPrefix(strings.ToLower(strings.TrimSpace(a.Val)), "javascript:"), "%s: %s", name, a.Val)
			}
		}
	}
}

var urlOf = regexp.MustCompile(`^url\(#(.+)\)$`)

// TestIDs: each is there once, and whatever points to one finds it.
func TestIDs(t *testing.T) {
	for name, doc := range filled(t, "/").pages(t) {
		ids := map[string]bool{}
		for n := range doc.Descendants() {
			if id, ok := attribute(n, "id"); ok {
				assert.False(t, ids[id], "%s: id %q twice", name, id)
				ids[id] = true
			}
		}
		for n := range doc.Descendants() {
			for _, a := range n.Attr {
				switch a.Key {
				case "for", "aria-describedby", "aria-labelledby", "aria-controls":
					for _, id := range strings.Fields(a.Val) {
						assert.True(t, ids[id], "%s: %s=%q finds nothing", name, a.Key, id)
					}
				case "href":
					if id, ok := strings.CutPrefix(a.Val, "#"); ok {
						assert.True(t, ids[id], "%s: #%s finds nothing", name, id)
					}
				case "fill":
					if m := urlOf.FindStringSubmatch(a.Val); m != nil {
						assert.True(t, ids[m[1]], "%s: hatch %s is not there", name, m[1])
					}
				}
			}
		}
	}
}

// languageOf is the tag of the language that a page is in: that of the folder it stands in, else English.
func languageOf(name string) string {
	for _, l := range languages.All[1:] {
		if strings.HasPrefix(name, "in/"+l.Tag+"/") || strings.HasPrefix(name, "embed/frame/"+l.Tag+"/") {
			return l.Tag
		}
	}
	return "en"
}

func TestEveryPageIsWhole(t *testing.T) {
	made := filled(t, "/")
	for name, doc := range made.pages(t) {
		count := map[string]int{}
		for n := range doc.Descendants() {
			if n.Type == html.ElementNode && n.Namespace == "" {
				if n.Data != "header" || n.Parent.Data == "body" {
					count[n.Data]++ // a question has a header of its own, inside main
				}
				if n.Data == "html" {
					lang, _ := attribute(n, "lang")
					assert.Equal(t, languageOf(name), lang, name)
				}
				if m, _ := attribute(n, "name"); n.Data == "meta" && m == "description" {
					count["description"]++
				}
			}
		}
		for _, once := range []string{"title", "h1", "main", "header", "footer", "description"} {
			assert.Equal(t, 1, count[once], "%s: %s", name, once)
		}
		assert.NotContains(t, string(made[name]), "ZgotmplZ", name)
	}
}

// TestWorkerKeepsEverything: the service worker lists every file but itself, by the address that a page uses.
func TestWorkerKeepsEverything(t *testing.T) {
	made := filled(t, "/")
	m := regexp.MustCompile(`(?s)const files = (\[.*?\]);`).FindSubmatch(made["sw.js"])
	require.NotNil(t, m)
	var list []string
	require.NoError(t, json.Unmarshal(m[1], &list))
	assert.Len(t, list, len(made)-1)
	for _, address := range list {
		assert.True(t, made.has("sw.js", address, "/"), address)
		assert.NotContains(t, address, "index.html")
	}
}

func TestVersionTellsOfEveryChange(t *testing.T) {
	made := filled(t, "/")
	delete(made, "sw.js")
	first := made.version()
	made["bed/index.html"] = append(made["bed/index.html"], ' ')
	assert.NotEqual(t, first, made.version(), "a changed page")
	made = filled(t, "/")
	delete(made, "sw.js")
	assert.Equal(t, first, made.version(), "the same sources give the same site")
	made["new.html"] = nil
	assert.NotEqual(t, first, made.version(), "a new page")
}

func TestWriteReplacesTheWhole(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	out := filepath.Join(t.TempDir(), "dist")
	require.NoError(t, os.MkdirAll(out, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(out, "gone.html"), []byte("old"), 0o644))
	made := tree{"a/index.html": []byte(strings.Repeat("a page ", 100)), "b.png": []byte("picture")}
	for range 2 { // the second time from the cache
		files, err := made.write(out)
		require.NoError(t, err)
		require.Len(t, files, 2)
		assert.Equal(t, 700, files[0].Size)
		assert.NoFileExists(t, filepath.Join(out, "gone.html"))
		assert.NoFileExists(t, filepath.Join(out, "b.png.br"))
		for _, left := range []string{out + ".new", out + ".old"} {
			assert.NoDirExists(t, left)
		}
		br, err := os.ReadFile(filepath.Join(out, "a", "index.html.br"))
		require.NoError(t, err)
		assert.Len(t, br, files[0].Brotli)
		back, err := io.ReadAll(brotli.NewReader(bytes.NewReader(br)))
		require.NoError(t, err)
		assert.Equal(t, made["a/index.html"], back)
		gz, err := os.Open(filepath.Join(out, "a", "index.html.gz"))
		require.NoError(t, err)
		defer gz.Close()
		r, err := gzip.NewReader(gz)
		require.NoError(t, err)
		back, err = io.ReadAll(r)
		require.NoError(t, err)
		assert.Equal(t, made["a/index.html"], back)
	}
}

// TestEveryFileHasItsHeaders: each file of the site, by the address that a browser asks for it, says once how long it may be
// kept, and every page but those for a frame refuses one.
func TestEveryFileHasItsHeaders(t *testing.T) {
	rules, err := headers.Load("../../../netlify.toml")
	require.NoError(t, err)
	made := tree{}
	_, _, _, err = made.fill(parts{[]byte("\x00asm"), []byte("\x00asm "), []byte("class Go {}")}, Options{Sheets: "../../../testdata/sheets"})
	require.NoError(t, err)
	require.Contains(t, made, "sheets/datasheet.csv")
	for p := range made {
		for _, address := range []string{p, strings.TrimSuffix(p, "index.html")} {
			h := rules.For("/" + address)
			for name, values := range h {
				assert.Len(t, values, 1, "%s: two rules set %s", address, name)
			}
			assert.NotEmpty(t, h.Get("Cache-Control"), address)
			assert.NotEmpty(t, h.Get("Cross-Origin-Resource-Policy"), address)
			assert.Equal(t, path.Ext(p) == ".html" && !strings.HasPrefix(p, "embed/frame/"), path.Ext(p) == ".html" && h.Get("X-Frame-Options") == "DENY", address)
		}
	}
}

// TestAFaultOfASheetStopsTheBuild and is told, with all the others.
func TestAFaultOfASheetStopsTheBuild(t *testing.T) {
	dir := t.TempDir()
	text, err := os.ReadFile("../../../testdata/datasheet_faults.csv")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "a.csv"), text, 0o644))
	err = tree{}.sheets(dir)
	require.Error(t, err)
	assert.Len(t, strings.Split(err.Error(), "\n"), 20)
	assert.ErrorContains(t, err, "a.csv: line 1, colour:")
	assert.Error(t, tree{}.sheets(t.TempDir()), "a folder with no sheet")
}
