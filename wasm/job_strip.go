//go:build js && wasm

package main

import (
	"context"
	"errors"
	"syscall/js"

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
		d.writeStrip()
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
		_, err := d.keepOne(&next, next.Revision)
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
