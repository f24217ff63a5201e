//go:build js && wasm

package main

import (
	"context"
	"time"
)

// patience is how long the store may take to open or to answer.
const patience = 10 * time.Second

// remember opens the store and gives each section its last entry, unless the person
// or a link was there first. It waits on the browser, so it runs beside the rest.
func (d *desk) remember() {
	go d.run(nil, func() {
		ctx, cancel := context.WithTimeout(context.Background(), patience)
		defer cancel()
		opened, err := openStore(ctx)
		if err != nil {
			d.forgetful()
			d.loseCountdowns()
			d.openJobs(nil, err)
			return
		}
		if d.frame == nil && !opened.newer { // a frame on somebody else's page keeps its one entry once
			opened.spare = &spare{guard: d.guard}
		}
		d.store = opened
		d.openCountdowns(opened)
		d.openJobs(opened, nil)
		for _, s := range d.sections {
			if s.linked || s.live.Touched() || d.atCounter() {
				d.keepTouched(s)
				continue
			}
			if d.recollect(ctx, s) != nil {
				d.forgetful()
				return
			}
		}
		d.openSpare()
	})
}

// recollect gives a section its last entry. It blocks.
func (d *desk) recollect(ctx context.Context, s *section) error {
	text, err := d.store.of(entryStore).read(ctx, d.key(s))
	// While the store answered, the person may have begun to type.
	if err == nil && text != "" && !s.live.Touched() {
		d.run(s.spoil, func() { s.load(text) })
		d.address.changed(d)
	}
	return err
}

// keepTouched keeps what was typed before the store was open. A link that was merely opened
// does not take the place of the person's own last entry.
func (d *desk) keepTouched(s *section) {
	if !s.linked && !s.live.Stale() {
		d.keep(s)
	}
}

// keep remembers the last good entry of a section, where the person has changed it: what was only looked at is not theirs.
func (d *desk) keep(s *section) {
	if d.store == nil || d.atCounter() || !s.live.Differs() {
		return
	}
	d.keepInJob()
	text := ""
	if s.live.Touched() {
		text = s.live.Link()
	}
	if d.store.write(context.Background(), d.key(s), text, d.forgetful) != nil {
		d.forgetful()
	}
}

// forgetful says that nothing can be kept.
func (d *desk) forgetful() { notice("storage", notKept) }
