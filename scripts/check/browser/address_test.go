package browser

import (
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"setbook/scripts/internal/browser"
)

func TestTheAddressHoldsTheEntry(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/")
	assert.Empty(t, eval[string](v, `location.hash`), "an example needs no link")
	v.enter("bed", "width", "3/8 in")
	v.wait(`location.hash.includes("width=3/8+in")`)
	answers, address := v.text(answersOf), eval[string](v, `location.href`)

	other := begin(t, browser.Phone)
	other.open("bed/" + address[strings.Index(address, "#"):])
	assert.Equal(t, "3/8 in", other.field("bed", "width"))
	assert.Equal(t, answers, other.text(answersOf), "a shared link opens with the entry")

	v.enter("bed", "width", "nonsense")
	v.reload()
	assert.Equal(t, "3/8 in", v.field("bed", "width"), "what cannot be worked does not enter the address")

	eval[string](v, `(location.hash = "#width=1/4+in", "")`)
	v.wait(`document.querySelector('#bed [data-key="width"]').value === "1/4 in"`)
	assert.NotEqual(t, answers, v.text(answersOf), "a link put into the bar of the open page is taken")

	v.press(`#bed [data-do="example"]`)
	v.wait(`location.hash === ""`)
}

func TestTheSkipLinkIsNoEntry(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/#page")
	assert.Contains(t, v.text(headOf), "Worked example")
	assert.False(t, eval[bool](v, `document.querySelector("#bed").hasAttribute("data-stale")`))
}

func TestAnUnknownKeyIsNamed(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/#width=1/2+in&colour=grey")
	assert.Contains(t, v.text("#bed"), "colour")
	assert.True(t, eval[bool](v, `document.querySelector("#bed").hasAttribute("data-stale")`))
	assert.NotEmpty(t, v.text(answersOf))
}

func TestAHostileLinkIsText(t *testing.T) {
	const hostile = `<img src=x onerror="window.struck=1"><script>window.struck=1</script>`
	for _, key := range []string{"width", "notch", `<img src=x onerror="struck=1">`} {
		v := begin(t, browser.Phone)
		v.open("bed/#" + url.QueryEscape(key) + "=" + url.QueryEscape(hostile))
		assert.Contains(t, v.text("#bed")+v.field("bed", "width"), "onerror", "it is shown as text")
		assert.Zero(t, eval[int](v, `document.querySelectorAll("#bed img, #bed script").length`))
		assert.False(t, eval[bool](v, `"struck" in window`))
	}
}

func TestTwoCalculatorsOnOnePage(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("batch/")
	batch := eval[string](v, `document.querySelector("#batch").outerHTML`)
	v.open("bed/")
	page := eval[string](v, `"<!doctype html>" + document.documentElement.outerHTML.replace(/ data-live="yes"/, "").replace(/ style="[^"]*"/, "")`)
	at := strings.Index(page, `<section class="calculator"`)
	require.Positive(t, at)
	v.site.Add("two/", page[:at]+batch+page[at:])
	v.open("two/")

	bed, mixed := v.text(answersOf), v.text(`#batch [data-part="answers"]`)
	v.enter("bed", "width", "3/8 in")
	assert.NotEqual(t, bed, v.text(answersOf))
	assert.Equal(t, mixed, v.text(`#batch [data-part="answers"]`), "the other one stays")
	v.enter("batch", "powder", "20 lb")
	assert.NotEqual(t, mixed, v.text(`#batch [data-part="answers"]`))
	v.wait(`location.hash.includes("bed.width=3/8+in") && location.hash.includes("batch.powder=20+lb")`)

	bed, mixed = v.text(answersOf), v.text(`#batch [data-part="answers"]`)
	v.reload()
	assert.Equal(t, bed, v.text(answersOf))
	assert.Equal(t, mixed, v.text(`#batch [data-part="answers"]`))

	v.open("two/#bed.width=1/4+in")
	v.reload()
	assert.Equal(t, "1/4 in", v.field("bed", "width"))
}
