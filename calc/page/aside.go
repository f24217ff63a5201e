package page

import (
	"strconv"
	"strings"

	"setbook/calc"
	"setbook/calc/link"
	"setbook/calc/markup"
	"setbook/calc/unit"
	"setbook/calc/words"
)

// readable is how long the texts of all fields may be together to be read on the page as well, so that what is wrong with
// a field is said at once. A phone reads as much in some ten milliseconds.
const readable = 40_000

// aside is what a page knows of a calculator that is worked out beside it. The sheet stays there: what comes back are its
// parts, ready to be shown.
type aside struct {
	given  map[string]string // parts as they came back last
	good   string            // the link of the last entry that was worked
	count  int               // of changes
	wants  bool              // the last change has not been sent
	again  bool              // it is to be worked even where it is what was worked last
	busy   bool              // what is shown belongs to an earlier entry, and the next is under way
	unread bool              // too long to be read on the page
	early  bool              // stopped: the best so far is shown
	halted bool              // stopped with nothing to show for it
	ending bool              // told to stop
	file   []string          // the key of a table, the name and the text of a file in its place, until it was read
}

// MountAside mounts a calculator that is worked out beside the page. Nothing is worked until a field changes: the page as
// served shows the example.
func MountAside(c *calc.Calculator, name string, r words.Reader) *Live {
	l := mount(c, name, r)
	l.sheet = &calc.Sheet{}
	l.aside = &aside{given: map[string]string{}}
	l.aside.good = l.Link()
	return l
}

// Home works out on the page from now on what was worked beside it, as where a browser has no workers.
func (l *Live) Home() {
	if l.aside == nil {
		return
	}
	l.aside = nil
	l.work()
}

// Aside reports whether the calculator is worked out beside the page.
func (l *Live) Aside() bool { return l.aside != nil }

// Busy marks what is shown as being worked out anew, or no longer so.
func (l *Live) Busy(on bool) { l.aside.busy, l.aside.ending = on, false }

// Stopping says that the work was told to end with the best so far.
func (l *Live) Stopping() { l.aside.ending = true }

// Halt says that the work was ended with nothing to show.
func (l *Live) Halt() { l.aside.busy, l.aside.halted = false, true }

// Again has the work done once more that was stopped.
func (l *Live) Again() {
	if l.aside != nil {
		l.aside.again = true
		l.work()
	}
}

// change takes what stands in the fields: read at once where it is short, and to be worked where nothing is wrong with it.
func (l *Live) change() bool {
	a := l.aside
	a.count++
	a.halted, a.unread = false, l.long() > readable
	l.problems = nil
	if !a.unread {
		entry, problems := l.read()
		if l.problems = problems; len(problems) > 0 {
			a.wants = false
			return false
		}
		l.entry = entry
	}
	a.wants = true
	return true
}

// long is how long the texts of all fields are together.
func (l *Live) long() (bytes int) {
	for _, t := range l.texts {
		bytes += len(t.text)
	}
	return bytes
}

// Ask gives, once for each change, what is to be worked: it goes to Aside.Answer.
func (l *Live) Ask() (ask []string, ok bool) {
	a := l.aside
	if a == nil || !a.wants {
		return nil, false
	}
	a.wants = false
	s := l.reader.Style
	ask = []string{l.Calculator.ID, l.Name, strconv.Itoa(a.count), habit{s.Decimal, s.System}.text(), l.grip.dragAsk()}
	if a.again {
		a.again, ask[4] = false, "again"
	}
	for key, t := range l.texts {
		ask = append(ask, key, habit(t.habit).text(), t.text)
	}
	if a.file != nil {
		ask = append(ask, fileKey+a.file[0], habit(l.habit()).text(), a.file[2])
	}
	return ask, true
}

// fileKey stands before the key of a table whose text is that of a file.
const fileKey = "file:"

// habit is one with a text: its system, and its decimal mark where that is known.
type habit calc.Habit

func (h habit) text() string {
	text := string('0' + rune(h.System))
	if h.Decimal != 0 {
		text += string(rune(h.Decimal))
	}
	return text
}

func readHabit(text string) habit {
	h := habit{System: unit.System(text[0] - '0')}
	if len(text) > 1 {
		h.Decimal = text[1]
	}
	return h
}

// The kinds of triples that an answer is made of: a kind, a name, a text.
const (
	isCount   = "count"   // of the change that is answered
	isLink    = "link"    // of the entry that was worked
	isEarly   = "early"   // it was stopped
	isProblem = "problem" // at a key
	isPart    = "part"
	isAnswer  = "answer" // with its kind, its base value, its bounds where it has any, and whether it waits
	isReads   = "reads"
	isCalled  = "called"
	isRefused = "refused" // the file for a table
	isLoaded  = "loaded"  // the same, and its text
	isHabit   = "habit"   // that it was written in
	isText    = "text"    // that a field holds, once the drawing was dragged
)

// Take shows an answer. One to an earlier change than the last brings its parts, and no word on what is wrong now. It reports
// whether the fields are to be written anew, since one holds what was in a file.
func (l *Live) Take(answer []string) (anew bool) {
	a := l.aside
	if a == nil {
		return false
	}
	a.busy, a.halted, a.early, a.ending = false, false, false, false
	var problems []calc.Problem
	last, texts := false, map[string]typed{}
	sheet := &calc.Sheet{}
	var put typed
	for i := 0; i+2 < len(answer); i += 3 {
		name, text := answer[i+1], answer[i+2]
		switch answer[i] {
		case isCount:
			last = text == strconv.Itoa(a.count)
		case isLink:
			a.good = text
		case isEarly:
			a.early = true
		case isProblem:
			problems = append(problems, calc.Problem{Key: name, Says: words.Say("{problem}", words.Text("problem", text))})
		case isRefused:
			if a.file != nil {
				l.refuseFile(name, a.file[1], words.Say("{problem}", words.Text("problem", text)))
				a.file = nil
			}
			return false
		case isLoaded:
			put.text = text
		case isHabit:
			put.habit = calc.Habit(readHabit(text))
			if in := l.Calculator.Input(name); in != nil && a.file != nil {
				l.takeFile(in, a.file[1], put)
				a.file, a.unread, anew = nil, true, true
			}
		case isText:
			texts[name] = typed{text: text}
		case isPart:
			a.given[name] = text
		case isAnswer:
			sheet.Answers = append(sheet.Answers, readAnswer(name, text))
		case isReads:
			sheet.Answers[len(sheet.Answers)-1].Reads = words.Say("{answer}", words.Text("answer", text))
		case isCalled:
			sheet.Answers[len(sheet.Answers)-1].Label = words.Msg(text)
		}
	}
	if last {
		l.problems = problems
		for key, t := range texts {
			l.texts[key] = t
		}
		if len(texts) > 0 {
			l.entry, _ = l.read() // what a calculator writes itself can be read
		}
	}
	if len(problems) == 0 {
		l.sheet = sheet // what a countdown can be started from, and what a page around is told
	}
	return anew
}

// Aside works out beside the page what it is asked, and keeps the last sheet of each calculator for another reader.
type Aside struct {
	Language *words.Language
	Find     func(id string) (*calc.Calculator, bool)
	lives    map[string]*Live
	worked   map[string]string // the texts of each, as asked
	early    map[string]bool
}

// Answer works out what Ask gave. Going is told how far it has come, and reports false to have it end early.
func (a *Aside) Answer(ask []string, going func(done, of int) bool) (answer []string) {
	if a.lives == nil {
		a.lives, a.worked, a.early = map[string]*Live{}, map[string]string{}, map[string]bool{}
	}
	name := ask[1]
	l := a.lives[name]
	if l == nil {
		c, ok := a.Find(ask[0])
		if !ok {
			return nil // a page of another version
		}
		l = mount(c, name, words.Reader{})
		a.lives[name] = l
	}
	style := readHabit(ask[3])
	l.reader = words.Reader{Language: a.Language, Style: unit.Style{Decimal: style.Decimal, System: style.System}}
	l.texts = map[string]typed{}
	file := ""
	for i := 5; i+2 < len(ask); i += 3 {
		key, isFile := strings.CutPrefix(ask[i], fileKey)
		put := typed{ask[i+2], calc.Habit(readHabit(ask[i+1]))}
		if in := l.Calculator.Input(key); isFile && in != nil {
			var fault words.Line
			if put, fault = readFile(in, put.text, put.habit); fault.Msg != "" {
				return []string{isCount, "", ask[2], isRefused, key, l.reader.Line(fault)}
			}
			file = key
			answer = append(answer, isLoaded, key, put.text, isHabit, key, habit(put.habit).text())
		}
		l.texts[key] = put
	}
	if by, dragged := dragAsked(ask[4]); dragged {
		now, problems := l.read()
		if len(problems) == 0 {
			for key, text := range l.Calculator.Drag(now, by) {
				l.texts[key] = typed{text: text}
				answer = append(answer, isText, key, text)
			}
		}
	}
	texts := ""
	for _, in := range l.Calculator.Inputs {
		if t, ok := l.texts[in.Key]; ok {
			texts += in.Key + habit(t.habit).text() + t.text + "\x00"
		}
	}
	if was, ok := a.worked[name]; !ok || was != texts || ask[4] == "again" {
		a.worked[name], a.early[name] = texts, false
		l.workWith(func(done, of int) bool {
			ok := going(done, of)
			a.early[name] = a.early[name] || !ok
			return ok
		})
	}
	if p := l.form.problem(file); p != nil && file != "" {
		return []string{isCount, "", ask[2], isRefused, file, l.reader.Line(p.Says)}
	}
	return append(answer, l.answer(ask[2], a.early[name])...)
}

// Forget has a calculator worked anew when it is asked for next: its last work was dropped.
func (a *Aside) Forget(name string) { delete(a.worked, name) }

func (l *Live) answer(count string, early bool) []string {
	answer := []string{isCount, "", count}
	for _, p := range l.problems {
		answer = append(answer, isProblem, p.Key, l.reader.Line(p.Says))
	}
	if l.Stale() {
		return answer
	}
	answer = append(answer, isLink, "", l.Link())
	if early {
		answer = append(answer, isEarly, "", "")
	}
	for i := range l.sheet.Answers {
		a := &l.sheet.Answers[i]
		answer = append(answer, isAnswer, a.Key, answerText(a), isCalled, "", string(a.Label), isReads, "", l.reads(a))
	}
	for _, p := range l.sheetParts() {
		answer = append(answer, isPart, p.Name, p.HTML)
	}
	return answer
}

// underWay is how far the work has come, and the button that ends it. The program moves the bar along.
func (l *Live) underWay() string {
	w := &writer{r: l.reader}
	switch {
	case l.aside == nil:
	case l.aside.busy && l.aside.ending:
		w.put(`<progress aria-label="%"></progress>`, "How far the work has come")
	case l.aside.busy:
		w.put(`<progress aria-label="%"></progress><button type="button" data-do="stop">%</button>`, "How far the work has come", "Stop")
	case l.aside.early || l.aside.halted:
		w.put(`<button type="button" data-do="again">%</button>`, "Work it out to the end")
	}
	return w.String()
}

// current is the link of what stands in the fields, where it was read, else of what was worked last.
func (l *Live) current() string {
	if a := l.aside; a != nil && (a.unread || len(l.problems) > 0) {
		return a.good
	}
	return link.Format(l.Calculator, l.entry, l.reader.Style.System)
}

// answerText is the figures of an answer: its kind, its base value, its bounds (nought where it has none), then "r" where it
// has bounds and "w" where it waits.
func answerText(a *calc.Answer) string {
	text := strconv.Itoa(int(a.Is.Kind))
	for _, x := range [...]float64{a.Is.Base, a.Low, a.High} {
		text += " " + strconv.FormatFloat(x, 'g', -1, 64)
	}
	return text + " " + markup.If(a.HasRange, "r") + markup.If(a.Waits && a.Is.Kind == unit.KindSpan, "w")
}

// readAnswer undoes answerText. What is shown of it comes in parts, so its pair does not matter.
func readAnswer(key, text string) calc.Answer {
	fields := strings.SplitN(text, " ", 5)
	number := func(i int) float64 {
		x, err := strconv.ParseFloat(fields[i], 64)
		if err != nil {
			panic(err) // answerText wrote it
		}
		return x
	}
	return calc.Answer{Key: key, Is: unit.Figure{Kind: unit.Kind(number(0)), Base: number(1), As: unit.HourSpan}, Low: number(2), High: number(3),
		HasRange: strings.Contains(fields[4], "r"), Waits: strings.Contains(fields[4], "w")}
}
