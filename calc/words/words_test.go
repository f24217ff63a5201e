package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc/unit"
	"setbook/calc/words"
)

func TestLine(t *testing.T) {
	other := &words.Language{Tag: "xx", Say: map[words.Msg]words.Msg{
		"{a} and {b}": "{b} et {a}", "verb|Set": "Poser", "noun|Set": "Lot",
	}}
	metric := unit.Style{System: unit.Metric, Decimal: ','}
	length := words.Is("a", 2500*unit.Micrometre, unit.InchMM)
	for _, c := range []struct {
		language *words.Language
		line     words.Line
		want     string
	}{
		{words.English, words.Say("{a} and {b}", length, words.Text("b", "<i>")), "2,5 mm and <i>"},
		{words.English, words.Say("{a}", words.Both("a", unit.Inch, unit.InchMM)), "25,4 mm (1 in)"},
		{other, words.Say("{a} and {b}", length, words.Named("b", "verb|Set")), "Poser et 2,5 mm"},
		{other, words.Say("noun|Set"), "Lot"},
		{words.English, words.Say("noun|Set"), "Set"},
		{words.English, words.Say("{missing} stays"), "{missing} stays"},
		{words.English, words.Say("open { brace", length), "open { brace"},
		{words.English, words.Say("a hint | with a bar"), "a hint | with a bar"},
		{words.English, words.Say("{x}", words.Text("x", "{a}"), length), "{a}"},
	} {
		assert.Equal(t, c.want, words.Reader{Language: c.language, Style: metric}.Line(c.line))
	}
}

// What a language writes for the phone comes back as it was.
func TestALanguageAsAFile(t *testing.T) {
	l := &words.Language{Tag: "xx", Say: map[words.Msg]words.Msg{"Bed {bed}": "{bed} xx", "Stop": "Xx"}}
	assert.Equal(t, l, words.Read("xx", l.Text()))
}
