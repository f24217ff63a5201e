package classroom

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/drill"
	"setbook/calc/markup"
	"setbook/calc/page"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// view is markup with its reader.
type view struct {
	markup.Writer
	room *Room
	r    words.Reader
}

func (w *view) put(made string, messages ...words.Msg) {
	values := make([]string, len(messages))
	for i, m := range messages {
		values[i] = w.r.Word(m)
	}
	w.Put(made, values...)
}

func number(n int) string { return strconv.Itoa(n) }

// HTML is everything inside the section of the class.
func (room *Room) HTML() string {
	w := &view{room: room, r: room.reader()}
	room.choices(w)
	w.Put(`<div data-part="round">`)
	w.Markup(room.Round())
	w.Put(`</div>`)
	return w.String()
}

// reader is the reader, with the units of the exercises.
func (room *Room) reader() words.Reader {
	r := room.Reader
	r.Style.System = room.units()
	return r
}

// choices is the teacher's part: which exercises, how many, which numbers.
func (room *Room) choices(w *view) {
	w.put(`<form class="class-choose" autocomplete="off"><div class="field class-which"><label for="class-calculator">%</label><select id="class-calculator" data-class-set="calculator">`, "Exercises of")
	for i, stage := range calc.Stages {
		open := false
		for _, c := range room.calculators {
			if c.Stage != calc.Stage(i) {
				continue
			}
			if !open {
				w.Put(`<optgroup label="%">`, w.r.Word(stage))
				open = true
			}
			w.Put(`<option value="%" selected="%">%</option>`, c.ID, markup.If(c == room.of, "selected"), w.r.Word(c.Title))
		}
		if open {
			w.Put(`</optgroup>`)
		}
	}
	w.put(`</select></div><div class="field"><label for="class-count">%</label>`, "How many")
	w.Put(`<input id="class-count" data-class-set="count" type="text" inputmode="numeric" value="%"></div>`, number(room.wanted))
	w.put(`<div class="field"><label for="class-seed">%</label>`, "Number of the set")
	w.Put(`<input id="class-seed" data-class-set="seed" type="text" inputmode="numeric" value="%" aria-describedby="class-said"></div>`, strconv.FormatUint(room.seed, 10))
	w.put(`<p class="note class-same">%</p><div class="actions">`, "The same number makes the same exercises on every device.")
	for _, b := range []struct {
		view string
		on   bool
		says words.Msg
	}{{"round", !room.sheet, "Work a round"}, {"sheet", room.sheet && !room.key, "Worksheet to print"}, {"key", room.key, "Worksheet with its key"}} {
		pressed := "false"
		if b.on {
			pressed = "true"
		}
		w.Put(`<button type="button" data-class-view="%" aria-pressed="%">%</button>`, b.view, pressed, w.r.Word(b.says))
	}
	w.put(`<button type="button" data-class-do="again">%</button><button type="button" data-class-do="copy">%</button>`, "Other numbers", "Copy the link for the class")
	w.Put(`</div><p class="said" id="class-said" data-part="said" role="status">%</p></form>`, room.Said())
}

// Said is what is wrong with what was chosen, or "".
func (room *Room) Said() string {
	if room.problem.Msg == "" {
		return ""
	}
	return room.Reader.Line(room.problem)
}

// Round is what changes as exercises are answered: the exercise, or the worksheet.
func (room *Room) Round() string {
	w := &view{room: room, r: room.reader()}
	switch {
	case room.sheet:
		room.worksheet(w)
	case room.count == 0:
		w.put(`<p>%</p>`, "This calculator answers in words: there is no figure to ask for.")
	case room.done():
		room.ended(w)
	default:
		room.exercise(w)
	}
	return w.String()
}

func (room *Room) exercise(w *view) {
	x := &room.set[room.at]
	w.Put(`<p class="class-where">%</p>`, w.r.Line(words.Say("Exercise {number} of {count}. Right at the first try so far: {right}.",
		words.Text("number", number(room.at+1)), words.Text("count", number(room.count)), words.Text("right", number(room.score())))))
	w.Put(`<h2>%</h2><p class="lede">%</p>`, w.r.Word(x.Calculator.Title), w.r.Word(x.Calculator.Asks))
	given(w, x)
	w.Put(`<form class="class-answer" data-class-form="answer" autocomplete="off"><div class="field"><label for="class-answer">%</label>`,
		w.r.Line(words.Say("Work out: {answer}", words.Named("answer", x.Asked.Label))))
	w.Put(`<input id="class-answer" type="text" inputmode="text" value="%" autocapitalize="off" spellcheck="false" enterkeyhint="done" aria-describedby="class-near class-verdict"></div><p class="note" id="class-near">%</p>`,
		room.text, room.tolerance(x))
	right := room.verdict != nil && room.verdict.Right
	if !right {
		w.put(`<button type="submit">%</button>`, "Judge it")
	}
	w.Put(`</form><div class="class-verdict" id="class-verdict" data-right="%" role="status">`, markup.If(right, "true"))
	if v := room.verdict; v != nil {
		w.Put(`<p><strong>%</strong></p>`, w.r.Line(v.Says))
		if v.Step >= 0 && !v.Right && v.Step < len(x.Sheet.Steps) {
			w.Put(`<p>%</p>`, w.r.Line(words.Say("Look at step {number} of the working: {says}", words.Text("number", number(v.Step+1)), words.Also("says", x.Sheet.Steps[v.Step].Says))))
		}
	}
	w.Put(`</div>`)
	if right || room.tries > 0 {
		w.put(`<details class="fold"><summary>%</summary>`, "The key, step by step")
		room.solution(w, x, room.at)
		w.Put(`</details>`)
	}
	w.put(`<div class="actions"><button type="button" data-class-do="next">%</button></div>`, "Next exercise")
}

// tolerance says how near an answer must be.
func (room *Room) tolerance(x *drill.Exercise) string {
	if x.Asked.Is.Kind == unit.KindCount {
		return room.Reader.Word("A count: it must be exact.")
	}
	if x.Asked.Is.Kind == unit.KindTemperature {
		return room.Reader.Word("Right within 0.3 °C (0.5 °F). A bare number is in the unit that the page prints.")
	}
	return room.Reader.Word("Right within 1 %. A bare number is in the unit that the page prints.")
}

// given lists what the exercise gives, as the very texts that its key is worked from.
func given(w *view, x *drill.Exercise) {
	w.put(`<table class="class-given"><caption>%</caption><tbody>`, "Given")
	for _, in := range x.Given() {
		shown := x.Entry.Reading(in.Key).Text
		for _, o := range in.Options {
			if o.Name == shown {
				shown = w.r.Word(o.Label)
			}
		}
		if len(in.Options) == 0 && in.Reads == nil && w.r.Style.Decimal == ',' {
			shown = strings.ReplaceAll(strings.ReplaceAll(shown, ", ", " | "), ".", ",")
		}
		w.Put(`<tr><th scope="row">% `, w.r.Word(in.Label))
		if stem, sub, ok := strings.Cut(in.Symbol, "_"); ok {
			w.Put(`<var>%<sub>%</sub></var>`, stem, sub)
		} else {
			w.Put(`<var>%</var>`, stem)
		}
		w.Put(`</th><td>%</td></tr>`, shown)
	}
	w.Put(`</tbody></table>`)
}

// parts are the regions of the calculator's own page for this entry.
func (room *Room) parts(x *drill.Exercise, name string) map[string]string {
	out := map[string]string{}
	for _, p := range page.NewLive(x.Calculator, name, room.reader()).With(x.Entry, x.Sheet).Parts() {
		out[p.Name] = p.HTML
	}
	return out
}

// solution is the key of one exercise: the drawing and the working as the calculator's page has them. A drawing
// carries its figures, so it belongs to the key.
func (room *Room) solution(w *view, x *drill.Exercise, at int) {
	parts := room.parts(x, "class-"+number(at+1))
	w.Put(`<figure class="drawing">`)
	w.Markup(parts["drawing"])
	w.Put(`</figure>`)
	if x.Calculator.Origin != "" {
		w.put(`<p class="origin"><b>%</b> %</p>`, "Where it comes from:", x.Calculator.Origin)
	}
	w.Put(`<div class="working">`)
	w.Markup(parts["working"])
	w.Put(`</div>`)
}

func (room *Room) ended(w *view) {
	w.Put(`<h2>%</h2>`, w.r.Line(words.Say("{right} of {count} right at the first try", words.Text("right", number(room.score())), words.Text("count", number(room.count)))))
	if best, ok := room.best[room.of.ID]; ok {
		w.Put(`<p>%</p>`, w.r.Line(words.Say("Best round on this device, out of ten: {best}", words.Text("best", number(best)))))
	}
	w.Put(`<ol class="class-marks">`)
	for i, m := range room.marks {
		says := words.Msg("not solved")
		switch {
		case m.first:
			says = "right at the first try"
		case m.right:
			says = "right in the end"
		}
		w.Put(`<li>%: %</li>`, w.r.Word(room.set[i].Asked.Label), w.r.Word(says))
	}
	w.put(`</ol><div class="actions"><button type="button" data-class-do="again">%</button></div>`, "Another round")
}

// worksheet is the exercises to be printed, and the key on its own page where it is wanted.
func (room *Room) worksheet(w *view) {
	w.Put(`<article class="worksheet"><header><h2>%</h2><p class="worksheet-who"><span>%</span> <span>%</span></p><p class="worksheet-set">%</p></header>`,
		w.r.Word(room.of.Title), w.r.Word("Name:"), w.r.Word("Date:"), w.r.Line(room.stamp()))
	w.Put(`<ol class="worksheet-list">`)
	for i := range room.set {
		x := &room.set[i]
		w.Put(`<li>`)
		given(w, x)
		w.Put(`<p>%</p><div class="worksheet-room" aria-hidden="true"></div></li>`, w.r.Line(words.Say("Work out: {answer}", words.Named("answer", x.Asked.Label))))
	}
	w.Put(`</ol></article>`)
	if !room.key {
		return
	}
	w.Put(`<article class="worksheet worksheet-key"><h2>%</h2><p class="worksheet-set">%</p><ol class="worksheet-list">`,
		w.r.Line(words.Say("Key: {title}", words.Named("title", room.of.Title))), w.r.Line(room.stamp()))
	for i := range room.set {
		x := &room.set[i]
		w.Put(`<li><p><b>%: %</b></p>`, w.r.Word(x.Asked.Label), w.r.Style.PrintBoth(x.Asked.Is))
		room.solution(w, x, i)
		w.Put(`</li>`)
	}
	w.Put(`</ol></article>`)
}

// stamp says which set it is, so that it can be made again.
func (room *Room) stamp() words.Line {
	if room.count == 1 {
		return words.Say("Set {seed}, one exercise", words.Text("seed", strconv.FormatUint(room.seed, 10)))
	}
	return words.Say("Set {seed}, {count} exercises", words.Text("seed", strconv.FormatUint(room.seed, 10)), words.Text("count", number(room.count)))
}
