package browser

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

// TestASetterLosesSignal is the whole promise: type, lose the server, reload, type,
// have the browser killed, come back with the server still gone.
func TestASetterLosesSignal(t *testing.T) {
	site := serving(t)
	profile := t.TempDir()
	first, err := browser.Start(context.Background(), profile)
	require.NoError(t, err)
	t.Cleanup(first.Kill)
	v := look(t, first, site, browser.Phone)
	v.open("bed/")
	served := v.text(answersOf)
	v.enter("bed", "width", "3/8 in")
	assert.NotEqual(t, served, v.text(answersOf))
	v.wait(`navigator.serviceWorker.controller`)

	require.NoError(t, site.Stop())
	v.reload()
	assert.Equal(t, "3/8 in", v.field("bed", "width"))
	v.open("batch/") // a page that was never visited
	liquid := v.text(`#batch [data-part="answers"]`)
	v.enter("batch", "powder", "20 lb")
	assert.NotEqual(t, liquid, v.text(`#batch [data-part="answers"]`))
	v.open("bed/")
	v.enter("bed", "width", "5/16 in")
	last := v.text(answersOf)
	assert.Empty(t, v.tab.Faults())
	time.Sleep(200 * time.Millisecond) // no hand closes an app sooner after the last key
	first.Kill()                       // with no time to put anything away

	second, err := browser.Start(context.Background(), profile)
	require.NoError(t, err)
	t.Cleanup(second.Kill)
	v = look(t, second, site, browser.Phone)
	v.open("bed/")
	v.wait(`document.querySelector('#bed [data-key="width"]').value === "5/16 in"`)
	assert.Equal(t, last, v.text(answersOf))
	v.open("batch/")
	v.wait(`document.querySelector('#batch [data-key="powder"]').value === "20 lb"`)
}

func TestSettingsAreRemembered(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/")
	v.enter("bed", "width", "1/2 in")
	paper := eval[string](v, `getComputedStyle(document.body).backgroundColor`)
	v.press(`[data-units-choice="metric"]`)
	assert.Equal(t, "12.7 mm", v.field("bed", "width"), "what was typed is rewritten")
	v.press(`[data-theme-choice="dark"]`)
	assert.NotEqual(t, paper, eval[string](v, `getComputedStyle(document.body).backgroundColor`))
	check := func() {
		t.Helper()
		assert.Contains(t, v.field("bed", "width"), "mm")
		assert.Equal(t, "metric dark", eval[string](v, `document.documentElement.dataset.units + " " + document.documentElement.dataset.theme`))
		for choice, pressed := range map[string]string{"units-choice=us": "false", "units-choice=metric": "true",
			"theme-choice=light": "false", "theme-choice=dark": "true", "theme-choice=auto": "false"} {
			name, value, _ := strings.Cut(choice, "=")
			assert.Equal(t, pressed, eval[string](v, `document.querySelector('[data-`+name+`="`+value+`"]').getAttribute("aria-pressed")`), choice)
		}
	}
	check()
	v.reload()
	check()
	v.open("batch/")
	assert.Contains(t, v.field("batch", "powder"), "kg")
	assert.NotEqual(t, paper, eval[string](v, `getComputedStyle(document.body).backgroundColor`), "dark before the first paint")
}

func TestABrowserThatKeepsNothing(t *testing.T) {
	for name, script := range map[string]string{
		"no IndexedDB":     `Object.defineProperty(window, "indexedDB", {value: undefined})`,
		"forbidden":        `Object.defineProperty(window, "indexedDB", {get() { throw new DOMException("no", "SecurityError") }})`,
		"refuses to open":  `indexedDB.__proto__.open = () => { throw new DOMException("no", "SecurityError") }`,
		"fails to open":    `indexedDB.__proto__.open = (open => function () { return open.call(this, "setbook", 7), open.call(this, "setbook", 6) })(indexedDB.__proto__.open)`,
		"nothing at all":   `Object.defineProperty(window, "indexedDB", {value: undefined}); Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError") }})`,
		"no writing later": `IDBDatabase.prototype.transaction = () => { throw new DOMException("full", "QuotaExceededError") }`,
	} {
		t.Run(name, func(t *testing.T) {
			v := begin(t, browser.Phone, script)
			v.open("bed/")
			v.wait(`document.querySelector('#notices [data-notice="storage"]')`)
			assert.Contains(t, v.text("#notices"), "keeps nothing")
			before := v.text(answersOf)
			v.enter("bed", "width", "3/8 in")
			assert.NotEqual(t, before, v.text(answersOf), "it answers all the same")
			v.press(`[data-units-choice="metric"]`)
			assert.Contains(t, v.field("bed", "width"), "mm")
			v.wait(`location.hash.includes("width=")`)
		})
	}
}

func TestANewVersionIsOfferedAndNotForced(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/")
	v.wait(`navigator.serviceWorker.controller`)
	assert.False(t, eval[bool](v, `!!document.querySelector("#notices [data-notice]")`), "a first visit offers nothing")
	v.enter("bed", "width", "3/8 in")
	v.wait(`location.hash.includes("width=")`)
	eval[string](v, `(window.same = true, "")`)

	v.site.Swap(newer(t))
	eval[string](v, `(document.dispatchEvent(new Event("visibilitychange")), "")`) // as when the phone is taken out again
	v.wait(`document.querySelector('#notices [data-notice="update"] button')`)
	v.enter("bed", "depth", "5/16 in")
	v.wait(`location.hash.includes("depth=5/16")`)
	assert.True(t, eval[bool](v, `window.same === true`), "nothing was loaded over what is being typed")
	answers := v.text(answersOf)

	v.press(`#notices [data-notice="update"] button`)
	v.wait(`window.same === undefined && document.documentElement.dataset.live && document.body.innerText.includes("second edition")`)
	assert.Equal(t, "3/8 in", v.field("bed", "width"))
	assert.Equal(t, "5/16 in", v.field("bed", "depth"))
	assert.Equal(t, answers, v.text(answersOf))
	assert.False(t, eval[bool](v, `!!document.querySelector('#notices [data-notice="update"]')`))
}

// newer is a copy of the site with one page changed, and the worker's version with it.
func newer(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "newer")
	require.NoError(t, os.CopyFS(dir, os.DirFS(dist)))
	change := func(path, old, fresh string) {
		name := filepath.Join(dir, path)
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		require.Contains(t, string(text), old)
		require.NoError(t, os.WriteFile(name, []byte(strings.Replace(string(text), old, fresh, 1)), 0o644))
		require.NoError(t, os.Remove(name+".br"))
		require.NoError(t, os.Remove(name+".gz"))
	}
	change("bed/index.html", `</main>`, `<p>second edition</p></main>`)
	change("sw.js", `const version = "`, `const version = "2`)
	return dir
}

func TestAProgramThatCannotLoadSaysSo(t *testing.T) {
	v := begin(t, browser.Phone, `WebAssembly.compileStreaming = () => Promise.reject(new Error("planted"))`)
	v.do(chromedp.Navigate(v.site.URL + "bed/"))
	v.wait(`document.querySelector("#notices").innerText.trim()`)
	assert.NotEmpty(t, v.text(answersOf), "the example stays readable")
	require.Len(t, v.tab.Faults(), 1)
	assert.Contains(t, v.tab.Faults()[0], "planted")
	v.tab.Forget()
}

func TestABrowserThatCannotCompileAsItLoads(t *testing.T) {
	v := begin(t, browser.Phone, `delete WebAssembly.compileStreaming`)
	v.open("bed/")
	before := v.text(answersOf)
	v.enter("bed", "width", "3/8 in")
	assert.NotEqual(t, before, v.text(answersOf))
}
