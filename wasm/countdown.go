//go:build js && wasm

package main

import (
	"context"
	"strconv"
	"strings"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/countdown"
	"setbook/calc/page"
	"setbook/calc/words"
)

const (
	endsWithPage words.Msg = "This browser keeps nothing for this page: a countdown ends when the page is closed. Save its calendar file."
	unread       words.Msg = "A countdown is kept here that this version cannot read. It is left as it is."
	notStarted   words.Msg = "This wait cannot be counted down."
)

// board is the panel of countdowns on the page.
type board struct {
	page.Board
	root    *dom.BasicHTMLElement
	store   *store
	kept    bool              // the store takes what it is given
	changes int               // of the list by this page, so that a slow reading of the store does not undo one
	unread  bool              // something is kept that this version cannot read
	html    string            // of the rows, as written last
	written countdown.Instant // when
	shown   map[string]page.Row
	tick    js.Func
	timer   js.Value
	ask     asked
}

// now is the phone's clock.
func now() countdown.Instant {
	return countdown.Instant(js.Global().Get("Date").Call("now").Float())
}

// west is how many minutes the phone's clock stands behind UTC at an instant: at that instant, not now.
func west(at countdown.Instant) float64 {
	return js.Global().Get("Date").New(float64(at)).Call("getTimezoneOffset").Float()
}

func visible() bool {
	return js.Global().Get("document").Get("visibilityState").String() == "visible"
}

// offerCountdowns makes the panel and follows the clock.
func (d *desk) offerCountdowns() {
	document := js.Global().Get("document")
	root, ok := find(document, "#countdowns")
	if !ok {
		return // a page of another version
	}
	b := &d.board
	b.root, b.Reader, b.West, b.kept = root, d.reader, west, true
	if script, ok := find(document, "script[data-home]"); ok {
		b.Root = script.GetAttribute("data-home")
	}
	root.SetInnerHTML(b.Frame())
	b.Show(nil, now())
	b.tick = d.callback(nil, func(js.Value) { d.beat() })
	d.on(root.Underlying(), "click", nil, d.pressCount)
	back := func(*dom.BasicEvent) {
		d.beat()
		if visible() {
			d.readCountdowns() // another page of this phone may have changed them
		}
	}
	d.on(document, "visibilitychange", nil, back)
	d.on(js.Global(), "pageshow", nil, back)
	d.recall()
	d.beat()
}

// rewriteBoard writes every row anew, where any is another than before. What is unfolded stays so, and what had
// the focus keeps it, unless it is to go elsewhere.
func (d *desk) rewriteBoard(focus string) {
	b := &d.board
	list, ok := find(b.root.Underlying(), `[data-part="list"]`)
	if !ok || b.html == b.List(b.written) {
		return
	}
	var again []string // selectors of what is unfolded
	for _, fold := range every(list.Underlying(), "[data-count] > details[open]") {
		again = append(again, rowOf(fold.Get("parentNode"))+"> details")
	}
	if active := list.Get("ownerDocument").Get("activeElement"); focus == "" && active.Truthy() && list.Call("contains", active).Bool() {
		focus = rowOf(active.Call("closest", "[data-count]")) + "summary"
		if e := wrap(active); e.HasAttribute("data-count-do") {
			focus = rowOf(active.Call("closest", "[data-count]")) + `[data-count-do="` + e.GetAttribute("data-count-do") + `"]`
		}
	}
	b.written, b.shown = now(), map[string]page.Row{}
	b.html = b.List(b.written)
	list.SetInnerHTML(b.html)
	for _, selector := range again {
		if fold, ok := find(list.Underlying(), selector); ok {
			fold.SetAttribute("open", "")
		}
	}
	mark(b.root, "hidden", b.Empty() && !b.unread)
	if focus != "" {
		if e, ok := find(list.Underlying(), focus); ok {
			e.Focus()
		}
	}
	d.beat()
}

// rowOf is a selector of a row, to be followed by one of what is in it.
func rowOf(row js.Value) string {
	return `[data-count="` + row.Call("getAttribute", "data-count").String() + `"] `
}

// beat looks at the clock: what it shows, what is done, and when to look again. Only texts change.
func (d *desk) beat() {
	b, at := &d.board, now()
	var over []string
	for _, c := range b.Due(at) {
		over = append(over, b.Over(c))
		d.notify(c)
	}
	if len(over) > 0 {
		b.say("done", strings.Join(over, ". "))
	}
	if visible() {
		for _, r := range b.Rows(at) {
			if b.shown[r.ID] != r {
				b.shown[r.ID] = r
				b.show(r)
			}
		}
		for _, s := range d.sections {
			s.ends()
		}
		d.keepAwake()
	}
	if b.timer.Truthy() {
		js.Global().Call("clearTimeout", b.timer)
	}
	if wait := countdown.Beat(b.Running(), at, visible()); wait > 0 {
		b.timer = js.Global().Call("setTimeout", b.tick, wait)
	}
}

// show writes what changed in a row.
func (b *board) show(r page.Row) {
	row, ok := find(b.root.Underlying(), `[data-count="`+r.ID+`"]`)
	if !ok {
		return
	}
	for _, e := range every(row.Underlying(), "[data-says]") {
		text := r.Left
		switch e.GetAttribute("data-says") {
		case "ends":
			text = r.Ends
		case "date":
			text = r.Date
		case "note":
			text = r.Note
		}
		write(e, text)
	}
	mark(row, "data-done", r.Done)
	mark(row, "data-today", r.Today)
}

// say puts a sentence into one of the panel's places.
func (b *board) say(part, text string) {
	if p, ok := find(b.root.Underlying(), `[data-part="`+part+`"]`); ok {
		write(p, text)
	}
}

// write gives an element its text, where that is another than it has: what stays is not read out again.
func write(e *dom.BasicHTMLElement, text string) {
	if e.TextContent() != text {
		e.SetTextContent(text)
	}
}

// ends says under each waiting answer when it would be over.
func (s *section) ends() {
	at := now()
	b := page.Board{Reader: served, West: west}
	for _, e := range every(s.root.Underlying(), "[data-ends]") {
		text := ""
		if c, ok := s.live.Countdown("x", e.GetAttribute("data-ends"), at); ok {
			text = b.Ends(c, at)
		}
		write(e, text)
	}
}

// earlyNames takes the names that were typed for countdowns before the program ran.
func (s *section) earlyNames() {
	for _, f := range every(s.root.Underlying(), "[data-names]") {
		if text := f.Get("value").String(); text != f.Get("defaultValue").String() {
			s.live.CallCountdown(f.GetAttribute("data-names"), text)
		}
	}
}

// start starts a countdown of a waiting answer.
func (d *desk) start(s *section, answer string) {
	b, at := &d.board, now()
	c, ok := s.live.Countdown(fresh(at), answer, at)
	said := say(notStarted)
	if ok && b.root != nil {
		c.Name = countdown.Distinct(b.Running(), c.Name)
		b.Add(c, at)
		d.saveCountdown(c.ID, c.Text())
		d.countInJob(c)
		d.rewriteBoard("")
		said = b.Started(c, at)
	}
	if p, ok := find(s.root.Underlying(), `[data-part="started"]`); ok {
		p.SetTextContent(said)
	}
}

// fresh is an ID that no other countdown has, on any phone: a calendar needs it so.
func fresh(at countdown.Instant) string {
	random := js.Global().Get("Uint32Array").New(3)
	js.Global().Get("crypto").Call("getRandomValues", random)
	id := strconv.FormatInt(int64(at), 36)
	for i := range 3 {
		id += "-" + strconv.FormatInt(int64(random.Index(i).Float()), 36)
	}
	return id
}

// pressCount does what a button of the panel asks for.
func (d *desk) pressCount(e *dom.BasicEvent) {
	button, ok := around(e, "data-count-do")
	if !ok {
		return
	}
	do := button.GetAttribute("data-count-do")
	switch do {
	case "awake":
		d.toggleAwake()
		return
	case "notify":
		d.toggleNotify()
		return
	}
	row, ok := around(e, "data-count")
	if !ok {
		return
	}
	b := &d.board
	c, ok := b.Find(row.GetAttribute("data-count"))
	if !ok {
		return
	}
	focus := `[data-count="` + c.ID + `"] `
	switch do {
	case "calendar":
		d.download(c.FileName(), "text/calendar;charset=utf-8", b.Calendar(c, now()))
		return
	case "remove":
		b.Remove(c.ID, true)
		b.say("done", "")
		d.saveCountdown(c.ID, "")
		d.rewriteBoard(focus + "button")
	case "undo":
		b.Remove(c.ID, false)
		d.saveCountdown(c.ID, c.Text())
		d.rewriteBoard(focus + "summary")
	}
}

// download hands a text to the browser as a file. It goes nowhere but to the phone, and needs no network.
func (d *desk) download(name, kind, text string) { d.downloadAs(name, kind, js.ValueOf(text)) }

// downloadAs does so with whatever makes a file: a text, or bytes.
func (d *desk) downloadAs(name, kind string, content js.Value) {
	blob := js.Global().Get("Blob").New([]any{content}, map[string]any{"type": kind})
	url := js.Global().Get("URL").Call("createObjectURL", blob)
	a := create("a")
	a.Set("href", url)
	a.Set("download", name)
	a.Call("click")
	d.later(60_000, func() { js.Global().Get("URL").Call("revokeObjectURL", url) }) // some browsers ask the person first
}

// saveCountdown keeps a countdown, or forgets it where the text is "".
func (d *desk) saveCountdown(id, text string) {
	b := &d.board
	b.changes++
	if b.store != nil && b.store.write(context.Background(), id, text, d.loseCountdowns) != nil || !b.kept {
		d.loseCountdowns()
	}
}

// loseCountdowns says that a countdown will not outlive the page.
func (d *desk) loseCountdowns() {
	if d.board.root != nil {
		d.board.kept = false
		d.board.say("kept", say(endsWithPage))
	}
}

// openCountdowns takes the store, once it is open, and puts into it what was started before.
func (d *desk) openCountdowns(s *store) {
	if d.board.root == nil {
		return
	}
	d.board.store = s.of(countdownStore)
	for _, c := range d.board.Running() {
		d.saveCountdown(c.ID, c.Text())
	}
	d.readCountdowns()
}

// readCountdowns reads what the store holds. It waits on the browser, so it runs beside the rest.
func (d *desk) readCountdowns() {
	b := &d.board
	if b.store == nil || !b.kept {
		return // what this page holds is all there is
	}
	go d.run(nil, func() {
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		defer cancel()
		for before := -1; before != b.changes; {
			before = b.changes
			list, all, err := b.store.countdowns(ctx)
			switch {
			case err != nil:
				d.loseCountdowns()
				return
			case before != b.changes:
				continue
			case !all:
				b.unread = true
				b.say("kept", say(unread))
			}
			b.Show(list, now())
		}
		mark(b.root, "hidden", b.Empty() && !b.unread)
		d.rewriteBoard("")
	})
}

// countdowns reads every countdown that is kept, and reports whether it could read all of them. It blocks.
func (s *store) countdowns(ctx context.Context) (list []*countdown.Countdown, all bool, err error) {
	keys, err := s.keys(ctx)
	all = true
	for _, id := range keys {
		text, err := s.read(ctx, id)
		if err != nil {
			return nil, false, err
		}
		if c, ok := countdown.Read(id, text); ok {
			list = append(list, c)
		} else if text != "" {
			all = false // of a newer version, perhaps: it is not thrown away
		}
	}
	return list, all, err
}
