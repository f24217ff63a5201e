package site

import (
	"html/template"

	"setbook/calc/classroom"
)

// class is the page for a trade class, with the first exercise of its first set.
func (b *book) class() ([]byte, error) {
	inside := ""
	if len(b.calculators) > 0 {
		inside = classroom.New(b.calculators, b.reader).HTML()
	}
	return b.page("class", struct {
		W           phrases
		Title, Asks string
		Inside      template.HTML
	}{
		shell, b.reader.Word(classAside.Title), b.reader.Word(classAside.Asks),
		template.HTML(inside), // markup made by calc/classroom, which escapes
	}, frame{Title: b.titled(classAside.Title), Description: b.reader.Word(classAside.Asks), Root: "../"})
}
