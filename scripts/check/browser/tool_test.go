package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/scripts/internal/browser"
)

// A tool writes a field and says so; a row of a table puts a layout into the fields; edges are chosen one by one.
func TestToolsTablesAndChoices(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("setout/")
	rest := func() { v.Helper(); v.wait(`!document.querySelector("#setout").hasAttribute("data-working")`) }
	eval[string](v, unfold)
	outline, answers := v.field("setout", "outline"), v.text(`#setout [data-part="answers"]`)
	v.enter("setout", "rectangle.long", "10 ft")
	assert.Equal(t, outline, v.field("setout", "outline"), "typing alone changes nothing")
	v.press(`#setout [data-use="rectangle"]`)
	rest()
	assert.NotEqual(t, outline, v.field("setout", "outline"))
	assert.NotEqual(t, answers, v.text(`#setout [data-part="answers"]`))
	assert.NotEmpty(t, v.text(`#setout [data-part="used-rectangle"]`))
	assert.Equal(t, "rectangle", eval[string](v, `document.activeElement.dataset.use || ""`), "the button keeps the focus")
	v.enter("setout", "rectangle.long", "10 lb")
	assert.Equal(t, "true", eval[string](v, `document.querySelector('#setout [data-key="rectangle.long"]').getAttribute("aria-invalid") || ""`))

	start := v.field("setout", "start_x") + v.field("setout", "start_y")
	v.press(`#setout tbody tr:nth-child(2) [data-puts]`)
	rest()
	assert.NotEqual(t, start, v.field("setout", "start_x")+v.field("setout", "start_y"))
	v.wait(`location.hash.includes("start=fixed")`)
	assert.True(t, eval[bool](v, `document.querySelector('#setout input[value="fixed"]').checked`))

	v.press(`#setout [data-key="edges"][value*=","]`)
	v.wait(`document.querySelectorAll('#setout [data-each="edges"]').length >= 4`)
	eval[string](v, `(s => { s.value = "wall"; s.dispatchEvent(new Event("change", {bubbles: true})); return "" })(document.querySelector('#setout [data-each="edges"][data-at="1"]'))`)
	rest()
	v.wait(`location.hash.includes(",wall,")`)
	assert.Equal(t, "wall", eval[string](v, `document.querySelector('#setout [data-each="edges"][data-at="1"]').value`))
}
