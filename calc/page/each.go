package page

import (
	"slices"
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/markup"
	"setbook/calc/words"
)

// fewest is how many things a choice one by one begins with where its example has no more: the sides of a rectangle.
const fewest = 4

// picks is the choice for each of several things. Where one choice is made for all, it is that choice, as many times
// as the example has it.
func (l *Live) picks(f *form, in *calc.Input) []string {
	names := strings.Split(l.text(f, in), ",")
	for i := range names {
		names[i] = strings.TrimSpace(names[i])
	}
	if len(names) > 1 {
		return names
	}
	return slices.Repeat(names, max(fewest, strings.Count(in.Example, ",")+1))
}

// each writes the choices made one by one, a row each. It is empty where one choice is for all.
func (l *Live) each(f *form, in *calc.Input) string {
	if !strings.Contains(l.text(f, in), ",") {
		return ""
	}
	w := &writer{r: l.reader}
	w.Put(`<ol class="each-list">`)
	names := l.picks(f, in)
	for i, name := range names {
		number := strconv.Itoa(i + 1)
		id := l.id(f, in) + "-" + number
		w.Put(`<li class="each-one"><label for="%">%</label><select id="%" data-each="%" data-at="%">`,
			id, l.reader.Line(words.Say("{what} {number}", words.Named("what", in.Label), words.Text("number", number))), id, f.key(in), strconv.Itoa(i))
		for _, o := range in.Options {
			w.Put(`<option value="%" selected="%">%</option>`, o.Name, markup.If(o.Name == name, "selected"), l.reader.Word(o.Label))
		}
		w.Put(`</select></li>`)
	}
	w.Put(`</ol><div class="keys">`)
	count := func(name string, to int, says words.Msg) {
		w.Put(`<button type="button" id="%-%" data-many="%" data-to="%" disabled="%">%</button>`,
			l.id(f, in), name, f.key(in), strconv.Itoa(to), markup.If(to < 2, "disabled"), l.reader.Word(says))
	}
	count("more", len(names)+1, "One more")
	count("fewer", len(names)-1, "One fewer")
	w.Put(`</div>`)
	return w.String()
}

// PickEach takes the choice for one of several things, counted from nought.
func (l *Live) PickEach(key string, at int, name string) {
	f, in := l.at(key)
	if in == nil {
		return
	}
	names := l.picks(f, in)
	if at < len(names) {
		names[at] = name
	}
	l.Type(key, strings.Join(names, ","))
}

// CountEach has a choice made for so many things, at least two: a further one is chosen as the last.
func (l *Live) CountEach(key string, count int) {
	f, in := l.at(key)
	if in == nil || count < 2 {
		return
	}
	names := l.picks(f, in)
	for len(names) < count {
		names = append(names, names[len(names)-1])
	}
	l.Type(key, strings.Join(names[:count], ","))
}

// Checks reports whether a tile with that value is the one that a choice holds.
func (l *Live) Checks(key, value string) bool {
	held := l.Field(key)
	return value == held || strings.Contains(value, ",") && strings.Contains(held, ",")
}
