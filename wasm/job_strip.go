//go:build js && wasm

package main

import (
	"context"
	"errors"
	"syscall/js"

	"honnef.co/go/js/dom/v2"
	"setbook/calc/countdown"
	"setbook/calc/job"
	"setbook/calc/jobpage"
)

// showStrip says over a calculator what it has to do with a job: with the one that it was opened from, else with the one
// that was opened last.
func (d *desk) showStrip() {
	c := &d.clerk
	if len(d.sections) != 1 || c.store == nil || c.trouble != jobpage.None || d.atCounter() || d.frame != nil {
		return // a tablet at a counter and a page of somebody else's are nobody's job
	}
	asked := js.Global().Get("URLSearchParams").New(js.Global().Get("location").Get("search"))
	id, entry := param(asked, "job"), param(asked, "entry")
	if id == "" {
		id = current()
	}
	if id == "" {
		return
	}
	d.beside(func(ctx context.Context) {
		j, _, _, err := c.readJob(ctx, id)
		if err != nil || j == nil || j.Newer != 0 {
			return
		}
		c.strip = &jobpage.Strip{Book: &c.book, Job: j}
		c.strip.Open(entry, d.sections[0].live.Calculator.ID)
		d.showKept()
		d.writeStrip()
	})
}

// fromJob prepares a page that is opened for an entry of a job: what was remembered of the calculator does not stand there meanwhile.
func (d *desk) fromJob() {
	asked := js.Global().Get("URLSearchParams").New(js.Global().Get("location").Get("search"))
	if len(d.sections) == 1 && param(asked, "job") != "" && param(asked, "entry") != "" {
		d.sections[0].linked = true
	}
	look := func(*dom.BasicEvent) {
		if visible() {
			d.lookAtStrip()
		}
	}
	d.on(js.Global().Get("document"), "visibilitychange", nil, look)
	d.on(js.Global(), "pageshow", nil, look)
}

// showKept shows the sum as the job keeps it, with the weather of the job, whatever the address holds: a bookmark or a link holds the figures of
// the day when it was made, and the first key would write them over later ones. What was typed while the job was being read stays.
func (d *desk) showKept() {
	c, s := &d.clerk, d.sections[0]
	fed, own := c.strip.Fed(), d.from(fragment(), s)
	if fed == "" || fed == own || fed == s.live.Link() {
		return
	}
	typed, differs := s.live.LoadUnder(fed)
	s.rewrite()
	c.strip.Other = own != "" && differs
	d.address.changed(d)
	if typed {
		d.changed(s)
	}
}

// heldByJob reports whether the sum of the page is kept in a job. A link that is then put into the address bar changes nothing, which is said.
func (d *desk) heldByJob() bool {
	c := &d.clerk
	if !whole || c.strip == nil || c.strip.Entry == "" {
		return false
	}
	c.strip.Other = true
	d.writeStrip()
	d.address.changed(d)
	return true
}

// lookAtStrip shows what another page of this phone has made of the sum or of the weather meanwhile, where nothing here waits to be saved.
func (d *desk) lookAtStrip() {
	c := &d.clerk
	idle := func(was *job.Job) bool {
		return c.strip != nil && c.strip.Job == was && !c.saving && !c.dirty && c.strip.Trouble == jobpage.None && !d.sections[0].live.Stale()
	}
	if c.strip == nil || !idle(c.strip.Job) {
		return
	}
	was := c.strip.Job
	d.beside(func(ctx context.Context) {
		j, _, _, err := c.readJob(ctx, was.ID)
		if err != nil || j == nil || j.Newer != 0 || j.Revision == was.Revision || !idle(was) {
			return
		}
		before := c.strip.Fed()
		c.strip.Job = j
		c.strip.Open(c.strip.Entry, d.sections[0].live.Calculator.ID)
		if fed := c.strip.Fed(); fed != "" && fed != before {
			d.sections[0].load(fed)
			d.address.changed(d)
		}
		if c.strip.Removed() {
			c.strip.Trouble = jobpage.Gone
		}
		d.writeStrip()
	})
}

// tryAgain keeps the sum after a trouble, in the job as it is kept now.
func (d *desk) tryAgain() {
	c := &d.clerk
	d.beside(func(ctx context.Context) {
		if j, _, _, err := c.readJob(ctx, c.strip.Job.ID); err == nil && j != nil && j.Newer == 0 {
			c.strip.Job = j
		}
		c.strip.Trouble = jobpage.None
		d.keepInJob()
	})
}

func param(params js.Value, name string) string {
	if v := params.Call("get", name); v.Type() == js.TypeString {
		return v.String()
	}
	return ""
}

func (d *desk) writeStrip() {
	c := &d.clerk
	replace(c.root, c.strip.HTML(now()))
	c.root.RemoveAttribute("hidden")
	state := "saved"
	switch {
	case c.strip.Trouble != jobpage.None:
		state = "not"
	case c.saving || c.dirty:
		state = "saving"
	}
	c.root.SetAttribute("data-kept", state)
}

// addToJob puts the sum of the page into the job. From then on it is kept in it as it changes, and the address says so.
func (d *desk) addToJob() {
	c := &d.clerk
	_, id := instantID()
	c.strip.Entry, c.strip.Known, c.strip.Trouble = id, "", jobpage.None
	try(func() {
		here := js.Global().Get("location")
		js.Global().Get("history").Call("replaceState", nil, "", here.Get("pathname").String()+"?job="+c.strip.Job.ID+"&entry="+id+here.Get("hash").String())
	})
	d.keepInJob()
}

// keepInJob keeps the sum of the page in the job that it belongs to, if any.
func (d *desk) keepInJob() {
	c := &d.clerk
	if !whole || c.strip == nil || c.strip.Entry == "" || c.strip.Trouble != jobpage.None || len(d.sections) != 1 {
		return
	}
	c.dirty = true
	if c.saving {
		return
	}
	c.saving, c.strip.Saving = true, true
	d.writeStrip()
	live := d.sections[0].live
	go d.run(nil, func() {
		var err error
		for err == nil && c.dirty {
			c.dirty = false
			text, at := live.Link(), now()
			err = d.changeJob(func(j *job.Job) error { return c.strip.Put(j, live.Calculator.ID, text, at).Err() })
			if err == nil {
				c.strip.Known = text
			}
		}
		c.saving, c.strip.Saving, c.strip.Trouble = false, false, troubleOf(err)
		if err == nil {
			c.strip.SavedAt = now()
		}
		d.writeStrip()
		d.askLasting()
	})
}

// changeJob changes the job of the strip and keeps it. Where another page has changed other things of it meanwhile, it is read
// anew and changed again: nothing of theirs is lost. It blocks.
func (d *desk) changeJob(change func(*job.Job) error) error {
	c := &d.clerk
	for {
		next := *c.strip.Job
		next.Entries = append([]job.Entry(nil), next.Entries...)
		next.Countdowns = append([]job.Countdown(nil), next.Countdowns...)
		if err := change(&next); err != nil {
			return err
		}
		_, _, err := d.keepOne(&next, next.Revision)
		if err == nil {
			c.strip.Job = &next
			return nil
		}
		if !errors.Is(err, jobpage.Conflict) {
			return err
		}
		j, _, problems, err := c.readJob(context.Background(), next.ID)
		switch {
		case err != nil:
			return err
		case j == nil && len(problems) > 0 || j != nil && j.Newer != 0:
			return jobpage.NewerJob
		case j == nil:
			return jobpage.Gone
		}
		c.strip.Job = j
	}
}

// countInJob puts a countdown that was started on the page into the job that the page belongs to.
func (d *desk) countInJob(started *countdown.Countdown) {
	c := &d.clerk
	if !whole || c.strip == nil || c.strip.Entry == "" {
		return
	}
	go d.run(nil, func() {
		if err := d.changeJob(func(j *job.Job) error {
			if len(j.Countdowns) >= job.MaxCountdowns {
				return jobpage.Full
			}
			j.Countdowns = append(j.Countdowns, job.Countdown{ID: started.ID, Text: started.Text()})
			return nil
		}); err != nil {
			c.strip.Trouble = troubleOf(err)
			d.writeStrip()
		}
	})
}
