// Package languages lists the languages of the book. Another one is one file beside this one, with
// its line in the list. The program for the phone does not import it: the build writes each language
// as a file, and a page that is in that language fetches it.
package languages

import "setbook/calc/words"

// All lists every language, English first.
var All = []*words.Language{words.English, Spanish}
