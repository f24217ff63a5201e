//go:build js && wasm

package main

import (
	"context"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/job"
	"setbook/calc/jobpage"
)

// showList shows every job, and what a link in the address would bring.
func (d *desk) showList() {
	c := &d.clerk
	if c.list == nil {
		c.list = &jobpage.List{Book: &c.book, Trouble: c.trouble}
		c.shown = map[string]string{}
		c.root.SetInnerHTML(c.list.HTML(now()))
	}
	if text := hash(); job.Packed(text) {
		d.look(jobpage.LookPacked(text))
	}
	d.readHeads()
}

// readHeads reads the list anew.
func (d *desk) readHeads() {
	c := &d.clerk
	d.beside(func(ctx context.Context) {
		defer c.root.SetAttribute("data-shown", "yes")
		if c.store == nil {
			d.refreshJob("")
			return
		}
		heads := c.store.of(headStore)
		keys, err := heads.keys(ctx)
		var list []jobpage.Head
		unread := 0
		for _, id := range keys {
			text, wrong := heads.read(ctx, id)
			if wrong != nil {
				err = wrong
				break
			}
			if h, ok := jobpage.ReadHead(id, text); ok {
				list = append(list, h)
			} else if text != "" {
				unread++
			}
		}
		if err != nil {
			c.list.Trouble = troubleOf(err)
		}
		before, _ := c.store.keys(ctx)
		c.list.Heads, c.list.Unread, c.list.Ready, c.list.Before = list, unread, true, len(before) > 0
		d.refreshJob("")
	})
}

// look shows what would be brought, before anything is changed.
func (d *desk) look(p *jobpage.Preview) {
	c := &d.clerk
	d.beside(func(ctx context.Context) {
		if p.New != nil && c.store != nil {
			// One that was deleted here is compared with too: it may hold more than what is brought.
			head, record, err := c.store.readJob(ctx, p.New.ID)
			h, known := jobpage.ReadHead(p.New.ID, head)
			var old *job.Job
			if record != "" {
				old, _ = job.Read(record)
			}
			p.Blocked, p.Gone = jobpage.None, h.Gone != 0
			p.Against(old, now())
			if err != nil || record != "" && (old == nil || !known) { // something is kept there that is not understood: it stays
				p.Blocked = jobpage.Failed
			}
		}
		c.list.Preview = p
		d.refreshJob("")
		if part, ok := find(c.root.Underlying(), `[data-part="preview"]`); ok {
			part.Call("scrollIntoView")
		}
	})
}

// openFile reads a file that the person chose. One that is too large is not read to its end.
func (d *desk) openFile(input *dom.BasicHTMLElement) {
	files := input.Get("files")
	if files.Length() == 0 {
		return
	}
	d.then(files.Index(0).Call("slice", 0, job.MaxSize+1).Call("text"), func(text js.Value) {
		input.Set("value", "") // the same file can be chosen again
		d.look(jobpage.Look(text.String()))
	}, func() {
		d.look(jobpage.Look(""))
	})
}

// pressList does what a button of the list asks for.
func (d *desk) pressList(do, what string) {
	c := &d.clerk
	at, id := instantID()
	go d.run(nil, func() {
		ctx := context.Background()
		switch do {
		case "new":
			if j, ok := c.book.New(id, d.jobsField("name"), d.jobsField("place"), at); ok {
				d.beginJob(j, "", 0)
			} else if f, ok := find(c.root.Underlying(), `[data-jobs-field="name"]`); ok {
				f.Focus()
			}
		case "demo":
			j := job.Demo(at)
			j.ID = id
			d.beginJob(j, "", 0)
		case "gather":
			d.gather(ctx, id)
		case "leave":
			d.leavePreview()
		case "take", "take-copy":
			d.takePreview(do == "take-copy", id)
		case "back", "erase":
			if c.store == nil {
				return
			}
			var err error
			if do == "back" {
				err = d.markJob(ctx, what, 0)
			} else {
				err = d.eraseJob(ctx, what)
			}
			if c.list.Trouble = troubleOf(err); c.list.Trouble == jobpage.Gone {
				c.list.Trouble = jobpage.Stale
			}
			d.readHeads()
		}
	})
}

func (d *desk) jobsField(name string) string {
	f, ok := find(d.clerk.root.Underlying(), `[data-jobs-field="`+name+`"]`)
	if !ok {
		return ""
	}
	return f.Get("value").String()
}

// gather makes a job of what the phone kept before there were jobs.
func (d *desk) gather(ctx context.Context, id string) {
	c := &d.clerk
	texts := func(name string) map[string]string {
		out := map[string]string{}
		s := c.store.of(name)
		keys, err := s.keys(ctx)
		for _, key := range keys {
			text, wrong := s.read(ctx, key)
			if err == nil && wrong == nil && text != "" {
				out[key] = text
			}
		}
		return out
	}
	if c.store == nil {
		return
	}
	if j := job.FromEntries(id, c.book.Gathered(), texts(entryStore), texts(countdownStore), now()); j != nil {
		d.beginJob(j, "", 0)
	}
}

// leavePreview forgets what was shown, and the link that brought it.
func (d *desk) leavePreview() {
	d.clerk.list.Preview = nil
	here := dom.GetWindow().Location()
	try(func() { js.Global().Get("history").Call("replaceState", nil, "", here.Pathname()+here.Search()) })
	d.refreshJob("")
}

// takePreview keeps what was shown.
func (d *desk) takePreview(beside bool, id string) {
	c := &d.clerk
	p := c.list.Preview
	if p == nil || p.New == nil || p.Blocked != jobpage.None {
		return
	}
	j, was := p.Taken(&c.book, id, beside), int64(0)
	switch {
	case beside || p.Old == nil:
	case p.Gone:
		was = jobpage.Revived
	default:
		was = p.Old.Revision
	}
	raw := ""
	if j.Newer != 0 {
		raw = p.Record
	}
	d.beginJob(j, raw, was)
}
