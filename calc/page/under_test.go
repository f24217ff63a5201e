package page_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/bed"
	"setbook/calc/link"
	"setbook/calc/page"
)

// A link that is loaded under what a person has typed leaves that alone, also where it is not read yet, and nothing else.
func TestALinkUnderWhatWasTyped(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	l.Load("v=1&width=1/2+in&land=7/16+in")
	typed, differs := l.LoadUnder("v=1&width=3/8+in&depth=3/8+in")
	assert.Equal(t, []bool{false, true}, []bool{typed, differs})
	assert.Equal(t, "3/8 in", l.Field("width"))
	assert.NotEqual(t, "7/16 in", l.Field("land"), "an earlier link leaves nothing behind")
	l.Type("width", "1/4 in")
	l.Type("depth", "1/")
	typed, differs = l.LoadUnder("v=1&width=5/16+in&depth=5/16+in&land=5/16+in")
	assert.Equal(t, []bool{true, true}, []bool{typed, differs})
	assert.Equal(t, []string{"1/4 in", "1/", "5/16 in"}, []string{l.Field("width"), l.Field("depth"), l.Field("land")})
	assert.True(t, l.Stale())
	l.Type("depth", "1/4 in")
	assert.False(t, l.Stale())
	assert.Contains(t, l.Link(), "land=5/16+in")
}

// What is looked at, in whatever units, is no change; what a person changes is one, once, and so is taking it back.
func TestWhatIsAChange(t *testing.T) {
	const entry = "v=1&width=12+mm&depth=3/8+in"
	l := page.NewLive(&bed.Calculator, "bed", us)
	l.Load(entry)
	assert.False(t, l.Differs(), "it was only loaded")
	l.Address(metric)
	assert.False(t, l.Differs(), "other units")
	l.Type("width", "1.2 cm")
	assert.False(t, l.Differs(), "the same in other words")
	l.Type("width", "13 mm")
	assert.True(t, l.Differs())
	assert.False(t, l.Differs(), "it was told")
	l.Address(us)
	assert.False(t, l.Differs(), "other units, of a person's own")
	l.Type("width", "13 mm ")
	assert.True(t, l.Differs(), "a person's own is kept in their last words")
	l.Type("width", "12 mm")
	assert.True(t, l.Differs(), "back again")
	l.Load(entry)
	assert.False(t, l.Differs())
	_, differs := l.LoadUnder("v=1&width=1.2+cm&depth=9.525+mm")
	assert.False(t, differs)

	// A link that cannot be read is known to nobody: what it is put right to is a change.
	l.Load("v=1&width=wide")
	l.Type("width", "12 mm")
	l.Type("depth", "3/8 in")
	assert.True(t, l.Differs())
}

// The same, where a calculator is worked out beside the page.
func TestWhatIsAChangeBesideThePage(t *testing.T) {
	b := besides(t)
	b.l.Load("side=20+in")
	b.l.Take(b.answer(onward))
	assert.False(t, b.l.Differs())
	b.l.Address(us)
	b.l.Take(b.answer(onward))
	assert.False(t, b.l.Differs())
	b.l.Type("side", "21 in")
	assert.True(t, b.l.Differs(), "what is short is read at once")
	b.l.Take(b.answer(onward))
	assert.False(t, b.l.Differs())

	// What is too long to be read on the page is told until it is worked, since its link comes then.
	grid := strings.Repeat("10 mm,", 10_000) + "10 mm"
	b.l.Load("side=20+in&grid=" + link.Escape(grid))
	b.l.Take(b.answer(onward))
	assert.False(t, b.l.Differs())
	b.l.Type("grid", grid+",20 mm")
	assert.True(t, b.l.Differs())
	b.l.Take(b.answer(onward))
	assert.True(t, b.l.Differs())
	assert.Contains(t, b.l.Link(), "20")
}
