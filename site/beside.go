package site

import "setbook/calc/words"

// aside is a page of the book that answers no question itself.
type aside struct {
	Path        string
	Title, Asks words.Msg
}

var classAside = aside{"class/", "Class", "Exercises, worksheets with their key, and a link that gives a whole class the same numbers."}

var glossaryAside = aside{"glossary/", "Glossary", "The terms of the trade, each with what it means and a drawing."}

// asides are listed on the contents page under the questions.
var asides = []aside{classAside, glossaryAside, {counter.path, counter.title, counter.asks}}

// beside is the asides as the contents page lists them.
func (b *book) beside() (list []entry) {
	for _, a := range asides {
		list = append(list, entry{"./" + a.Path, b.reader.Word(a.Title), b.reader.Word(a.Asks)})
	}
	return list
}
