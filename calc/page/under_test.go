package page_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/bed"
	"setbook/calc/page"
)

// A link that is loaded under what a person has typed leaves that alone, also where it is not read yet, and nothing else.
func TestALinkUnderWhatWasTyped(t *testing.T) {
	l := page.NewLive(&bed.Calculator, "bed", us)
	l.Load("v=1&width=1/2+in&land=7/16+in")
	assert.False(t, l.LoadUnder("v=1&width=3/8+in&depth=3/8+in"))
	assert.Equal(t, "3/8 in", l.Field("width"))
	assert.NotEqual(t, "7/16 in", l.Field("land"), "an earlier link leaves nothing behind")
	l.Type("width", "1/4 in")
	l.Type("depth", "1/")
	assert.True(t, l.LoadUnder("v=1&width=5/16+in&depth=5/16+in&land=5/16+in"))
	assert.Equal(t, []string{"1/4 in", "1/", "5/16 in"}, []string{l.Field("width"), l.Field("depth"), l.Field("land")})
	assert.True(t, l.Stale())
	l.Type("depth", "1/4 in")
	assert.False(t, l.Stale())
	assert.Contains(t, l.Link(), "land=5/16+in")
}
