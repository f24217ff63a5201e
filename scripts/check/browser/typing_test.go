package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/scripts/internal/browser"
)

const (
	headOf    = `#bed [data-part="head"]`
	answersOf = `#bed [data-part="answers"]`
)

func TestAnAnswerFollowsEachKey(t *testing.T) {
	for _, size := range []browser.Size{browser.Phone, browser.Tablet} {
		v := begin(t, size)
		v.open("bed/")
		before := v.text(answersOf)
		v.enter("bed", "width", "1")
		atOne := v.text(answersOf)
		assert.NotEqual(t, before, atOne, "without waiting: the answer is there when the key's event is over")
		v.enter("bed", "width", "1/4 in")
		assert.NotEqual(t, atOne, v.text(answersOf))
		assert.Contains(t, v.text(headOf), "Your figures")
	}
}

func TestKeysTypedBeforeTheProgramRunsCount(t *testing.T) {
	for units, width := range map[string]string{"us": "1/4 in", "metric": "6.35 mm"} {
		t.Run(units, func(t *testing.T) {
			typed := begin(t, browser.Phone, `localStorage.setItem("setbook.units", "`+units+`");
				addEventListener("DOMContentLoaded", () => {
					const field = document.querySelector('#bed [data-key="width"]');
					if (field) field.value = "1/4 in";
				})`)
			typed.open("bed/")
			assert.Equal(t, width, typed.field("bed", "width"))
			after := typed.text(answersOf)

			same := begin(t, browser.Phone, `localStorage.setItem("setbook.units", "`+units+`")`)
			same.open("bed/")
			assert.NotEqual(t, after, same.text(answersOf))
			same.enter("bed", "width", "1/4 in")
			assert.Equal(t, same.text(answersOf), after, "the same as typed later")
		})
	}
}

func TestButtonsPressedBeforeTheProgramRunsCount(t *testing.T) {
	v := begin(t, browser.Phone, `addEventListener("DOMContentLoaded", () =>
		document.querySelector('[data-units-choice="metric"]').click())`)
	v.open("bed/")
	v.wait(`document.documentElement.dataset.units === "metric"`)
	assert.Contains(t, v.field("bed", "width"), "mm")
}

func TestBadInputNeverBlanksAnAnswer(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/")
	v.enter("bed", "width", "3/8 in")
	good := v.text(answersOf)
	for _, bad := range []string{"6-3", "12 lb", "nonsense", "1/0", "900 ft"} {
		v.paste("bed", "width", bad)
		assert.Equal(t, good, v.text(answersOf), "%s: the last good answer stays", bad)
		assert.True(t, eval[bool](v, `document.querySelector("#bed").hasAttribute("data-stale")`), "%s: it is marked", bad)
		assert.Equal(t, "true", eval[string](v, `document.querySelector('#bed [data-key="width"]').getAttribute("aria-invalid")`), bad)
		note := v.text(`#bed [data-part="note-width"]`)
		assert.NotEmpty(t, note, "%s: the field says what is wrong", bad)
		assert.Equal(t, bad, v.field("bed", "width"), "what was typed stays")
	}
	v.enter("bed", "width", "1/2 in")
	assert.False(t, eval[bool](v, `document.querySelector("#bed").hasAttribute("data-stale")`))
	assert.False(t, eval[bool](v, `document.querySelector('#bed [data-key="width"]').hasAttribute("aria-invalid")`))
	assert.NotEqual(t, good, v.text(answersOf))
}

func TestTheKeysBesideAField(t *testing.T) {
	v := begin(t, browser.Phone)
	v.open("bed/")
	before := v.text(answersOf)
	fill := eval[string](v, `document.querySelector('#bed [data-fill][data-for="width"]').dataset.fill`)
	v.enter("bed", "width", "7/8 in")
	v.press(`#bed [data-fill][data-for="width"]`)
	assert.Equal(t, fill, v.field("bed", "width"))

	v.enter("bed", "width", "34")
	assert.True(t, eval[bool](v, `(() => { const f = document.querySelector('#bed [data-key="width"]'); f.setSelectionRange(1, 1); return true })()`))
	v.press(`#bed [data-insert="/"][data-for="width"]`)
	assert.Equal(t, "3/4", v.field("bed", "width"), "at the caret")
	assert.Equal(t, "width", eval[string](v, `document.activeElement.dataset.key || ""`), "the field keeps the focus")

	v.press(`#bed [data-do="example"]`)
	assert.Equal(t, before, v.text(answersOf))
	assert.Equal(t, "example", eval[string](v, `document.activeElement.dataset.do || ""`), "the button keeps the focus")
	assert.Contains(t, v.text(headOf), "Worked example")
}
