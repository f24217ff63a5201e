package site

import (
	"html/template"

	"setbook/calc"
	"setbook/calc/draw"
	"setbook/calc/glossary"
	"setbook/calc/words"
)

// term is a word of the trade as the page shows it.
type term struct {
	ID, Name, Means string
	Drawing         template.HTML
}

// terms is a group of them.
type terms struct {
	Title string
	Terms []term
}

// glossary is the page of the trade's terms, each with its drawing.
func (b *book) glossary() ([]byte, error) {
	var groups []terms
	for _, g := range glossary.Groups() {
		group := terms{Title: b.reader.Word(g.Title)}
		for _, t := range g.Terms {
			d := calc.Drawing{Title: t.Name, Says: words.Line{Msg: t.Means}}
			t.Draw(&d)
			group.Terms = append(group.Terms, term{t.ID, b.reader.Word(t.Name), b.reader.Word(t.Means),
				template.HTML(draw.SVG(&d, "term-"+t.ID+"-drawing", b.reader))}) // markup made by calc/draw, which escapes
		}
		groups = append(groups, group)
	}
	return b.page("glossary", struct {
		Title, Says string
		Groups      []terms
	}{b.reader.Word(glossaryAside.Title), b.reader.Word(glossaryAside.Asks), groups},
		frame{Title: b.titled(glossaryAside.Title), Description: b.reader.Word(glossaryAside.Asks), Root: "../"})
}
