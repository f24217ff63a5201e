package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
	"setbook/scripts/internal/build"
	"setbook/scripts/internal/repo"
)

// What all tests share: the site as built, and one browser. Each test has a server
// of its own, so that each is another site to the browser and nothing is remembered from one to the next.
var (
	dist    string
	netlify string
	shared  *browser.Browser
)

func TestMain(m *testing.M) {
	code, err := prepare(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

func prepare(m *testing.M) (int, error) {
	dir, err := os.MkdirTemp("", "setbook-browser-")
	if err != nil {
		return 1, err
	}
	defer os.RemoveAll(dir)
	root, err := repo.Root()
	if err != nil {
		return 1, err
	}
	netlify = filepath.Join(root, "netlify.toml")
	dist = filepath.Join(dir, "dist")
	ctx, cancel := context.WithCancel(context.Background())
	defer cancel()
	if _, err := build.Build(ctx, build.Options{Out: dist}); err != nil {
		return 1, err
	}
	if shared, err = browser.Start(ctx, filepath.Join(dir, "profile")); err != nil {
		return 1, err
	}
	defer shared.Kill()
	return m.Run(), nil
}

// visit is a test's look at the site.
type visit struct {
	*testing.T
	site *browser.Site
	tab  *browser.Tab
}

// serving starts a server for one test.
func serving(t *testing.T) *browser.Site {
	t.Helper()
	site, err := browser.Serve(dist, netlify)
	require.NoError(t, err)
	t.Cleanup(func() { site.Stop() })
	return site
}

// begin opens a tab of the shared browser for a test, with a server of its own. What goes wrong in the
// console fails the test.
func begin(t *testing.T, size browser.Size, scripts ...string) *visit {
	t.Helper()
	return look(t, shared, serving(t), size, scripts...)
}

func look(t *testing.T, b *browser.Browser, site *browser.Site, size browser.Size, scripts ...string) *visit {
	t.Helper()
	tab, err := b.Open(size, scripts...)
	require.NoError(t, err)
	t.Cleanup(func() {
		assert.Empty(t, tab.Faults(), "what the console says")
		tab.Close()
	})
	return &visit{t, site, tab}
}

// open goes to a page and waits until its program listens.
func (v *visit) open(path string) {
	v.Helper()
	require.NoError(v, v.tab.Do(chromedp.Navigate(v.site.URL+path)))
	v.live()
}

func (v *visit) reload() {
	v.Helper()
	require.NoError(v, v.tab.Do(chromedp.Reload()))
	v.live()
}

func (v *visit) live() {
	v.Helper()
	v.wait(`document.documentElement.dataset.live`)
}

func (v *visit) wait(expression string) {
	v.Helper()
	require.NoError(v, v.tab.Wait(expression), "notices: %s", v.text("#notices"))
}

func (v *visit) do(steps ...chromedp.Action[chromedp.Void]) {
	v.Helper()
	require.NoError(v, v.tab.Do(steps...))
}

// enter types into a field over what stands in it, key by key.
func (v *visit) enter(section, key, text string) {
	v.Helper()
	v.mark(section, key)
	v.do(chromedp.KeyEvent(text))
}

// paste puts a text into a field over what stands in it, all at once.
func (v *visit) paste(section, key, text string) {
	v.Helper()
	v.mark(section, key)
	_, err := browser.Call(v.tab, input.InsertText, input.InsertTextParams{Text: text})
	require.NoError(v, err)
}

// mark puts the focus into a field and selects what stands in it.
func (v *visit) mark(section, key string) {
	v.Helper()
	field := fmt.Sprintf(`document.querySelector('#%s [data-key="%s"]')`, section, key)
	require.True(v, eval[bool](v, field+` ? (`+field+`.focus(), `+field+`.select(), true) : false`), "no field %s", key)
}

func (v *visit) text(selector string) string {
	v.Helper()
	return eval[string](v, `(document.querySelector(`+quote(selector)+`) || {innerText: "(not there)"}).innerText`)
}

func (v *visit) field(section, key string) string {
	v.Helper()
	return eval[string](v, fmt.Sprintf(`document.querySelector('#%s [data-key="%s"]').value`, section, key))
}

func (v *visit) press(selector string) {
	v.Helper()
	v.do(chromedp.Click(chromedp.CSS(selector)))
}

func eval[T any](v *visit, expression string) T {
	v.Helper()
	value, err := browser.Eval[T](v.tab, expression)
	require.NoError(v, err, expression)
	return value
}

// quote writes a string as JavaScript does.
func quote(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic(err) // a string always has a JSON form
	}
	return string(b)
}
