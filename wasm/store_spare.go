//go:build js && wasm

package main

import (
	"context"
	"slices"
	"strconv"

	"github.com/hack-pad/go-indexeddb/idb"
)

// Entries and countdowns are kept twice as jobs are, and for the same reason (copyBucket), in a bucket of their own: an entry is written with
// every few keys and so is torn more often than a job, whose second copy shall not go with it.
//
// The rule: what the first copy holds is so, and the second follows it, also in what it no longer holds. So what a person has removed
// stays removed, whatever the second still has. Only a first copy that lacks the mark is not believed in what it lacks: it was made anew
// after the browser had deleted it and the mark with it, or nothing was ever copied from it. Into that one goes what the second alone
// has, and then the mark, in one transaction. That it was just made (an upgrade from version 0) would not do for a mark: the page may be
// closed before everything is brought back, and the empty database that it leaves would be believed.
//
// The mark is an instant, renewed in the first copy before a countdown is copied and put into the second with it. So a first copy that the browser
// has set back (a torn log whose middle it takes for its end) bears an earlier mark than the second, and is not believed in what it lacks either.
//
// What is left: a countdown that is removed, the browser killed before the second copy has followed, and the first one deleted when it
// starts again. It comes back, and the page says that some did: one wait too many, where the other way round one would be missing.
const (
	spareBucket = "entries-copy"
	inStep      = "in step" // the key of the mark, among the entries: no calculator has a name with a space
)

// lull is how long the second copy waits, in milliseconds: for the page to have shown what it is for, and for whoever types to pause.
const lull = 1000

// spare keeps entries and countdowns a second time.
type spare struct {
	guard
	copy   *store // nil until it is open: then everything is compared
	behind []place
	busy   bool
}

// place is where a text is kept.
type place struct{ store, id string }

// openSpare opens the second copy once the page has shown what it is for, fetches from it what the first has lost, and has it follow from now on.
func (d *desk) openSpare() {
	s := d.store
	if s.spare == nil {
		return
	}
	d.later(lull, func() {
		d.beside(func(ctx context.Context) {
			second := d.openBucket(ctx, spareBucket, entryStore, countdownStore)
			switch {
			case second == nil:
				return
			case whole && d.atCounter():
				second.empty() // nothing of a customer is kept, least of all twice
				return
			}
			countdowns, back, err := s.fetch(ctx, second)
			if err != nil {
				return
			}
			s.spare.copy = second
			if countdowns > 0 && d.board.root != nil {
				d.board.say("back", d.board.Back(countdowns))
				d.readCountdowns()
			}
			for _, section := range d.sections {
				if back && !section.linked && !section.live.Touched() {
					d.recollect(ctx, section)
				}
			}
			for _, held := range [...]*store{s, second} {
				places, _ := held.places(ctx)
				for _, at := range places {
					s.spare.add(at)
				}
			}
			s.catchUp()
		})
	})
}

// places is where anything is kept, the mark left out. It blocks.
func (s *store) places(ctx context.Context) (all []place, err error) {
	for _, name := range [...]string{countdownStore, entryStore} {
		keys, wrong := s.of(name).keys(ctx)
		if wrong != nil {
			err = wrong
		}
		for _, id := range keys {
			if id != inStep {
				all = append(all, place{name, id})
			}
		}
	}
	return all, err
}

// fetch puts into a first copy without the mark, or with an earlier one than the second's, what only the second has. It says how many countdowns
// that was, and whether it was anything.
// It blocks.
func (s *store) fetch(ctx context.Context, second *store) (countdowns int, back bool, err error) {
	mark, err := s.of(entryStore).read(ctx, inStep)
	ahead, wrong := second.of(entryStore).read(ctx, inStep)
	if err != nil || wrong != nil || mark != "" && ahead <= mark {
		return 0, false, err
	}
	// Read beforehand: a transaction ends while another database is waited for.
	places, err := second.places(ctx)
	texts := make([]string, len(places))
	for i, at := range places {
		if err == nil {
			texts[i], err = second.of(at.store).read(ctx, at.id)
		}
	}
	if err != nil {
		return 0, false, err
	}
	t, err := s.db.TransactionWithOptions(idb.TransactionOptions{Mode: idb.TransactionReadWrite, Durability: idb.DurabilityStrict}, entryStore, countdownStore)
	if err != nil {
		return 0, false, err
	}
	lacked := func(at place, text string) bool {
		var objects *idb.ObjectStore
		var kept string
		if err == nil {
			objects, err = t.ObjectStore(at.store)
		}
		if err == nil {
			kept, err = get(ctx, objects, at.id)
		}
		if err == nil && kept == "" {
			err = put(objects, at.id, text)
			return err == nil
		}
		return false
	}
	if renewed(ctx, t, mark, max(ahead, stamp())) { // no other page was first
		for i, at := range places {
			if lacked(at, texts[i]) {
				back = true
				if at.store == countdownStore {
					countdowns++
				}
			}
		}
	}
	if err != nil {
		return 0, false, abort(t, err)
	}
	return countdowns, back, t.Await(ctx)
}

// stamp is a mark of this instant: marks are as long as one another, and the later is the greater.
func stamp() string { return strconv.FormatInt(int64(now()), 10) }

// renewed puts a mark in the place of another within a transaction, where that one still stands.
func renewed(ctx context.Context, t *idb.Transaction, was, mark string) bool {
	objects, err := t.ObjectStore(entryStore)
	if err != nil {
		return false
	}
	kept, err := get(ctx, objects, inStep)
	return err == nil && kept == was && put(objects, inStep, mark) == nil
}

// follow has the second copy follow the first in what is kept under a key: a countdown at once.
func (s *store) follow(id string) {
	p := s.spare
	if p == nil || p.copy == nil || !p.add(place{s.name, id}) {
		return
	}
	if s.name == countdownStore {
		s.catchUp()
		return
	}
	p.later(lull, s.catchUp)
}

// add notes what is behind, and reports whether it was not noted yet.
func (p *spare) add(at place) bool {
	if slices.Contains(p.behind, at) {
		return false
	}
	p.behind = append(p.behind, at)
	return true
}

// catchUp writes what is behind into the second copy, one thing after another, each as it stands in the first at that moment. A fault is
// no trouble: the first holds, and the next page compares everything.
func (s *store) catchUp() {
	p := s.spare
	if p.busy {
		return
	}
	p.busy = true
	go p.run(nil, func() {
		defer func() { p.busy = false }()
		for len(p.behind) > 0 {
			at := p.behind[0]
			p.behind = p.behind[1:]
			ctx, cancel := context.WithTimeout(context.Background(), patience)
			s.copyOne(ctx, at)
			cancel()
		}
	})
}

// copyOne brings the second copy in step in one place. It blocks until the transaction is complete, so that one kill tears one copy at most.
func (s *store) copyOne(ctx context.Context, at place) {
	first, second := s.of(at.store), s.spare.copy.of(at.store)
	text, err := first.read(ctx, at.id)
	kept, wrong := second.read(ctx, at.id)
	if err != nil || wrong != nil || text == kept {
		return
	}
	if text == "" {
		if mark, _ := s.of(entryStore).read(ctx, inStep); mark == "" {
			return // made anew under the open page: it is not believed in what it lacks
		}
	}
	mark := ""
	if at.store == countdownStore {
		mark = stamp()
		marks, err := s.of(entryStore).objects(idb.TransactionReadWrite)
		if err != nil || put(marks, inStep, mark) != nil || done(ctx, marks) != nil {
			return
		}
	}
	t, err := second.db.TransactionWithOptions(idb.TransactionOptions{Mode: idb.TransactionReadWrite, Durability: idb.DurabilityStrict}, entryStore, countdownStore)
	if err != nil {
		return
	}
	if objects, err := t.ObjectStore(at.store); err == nil && put(objects, at.id, text) == nil {
		if marks, err := t.ObjectStore(entryStore); err == nil && mark != "" {
			put(marks, inStep, mark)
		}
	}
	t.Await(ctx)
}

// done waits until a transaction is complete.
func done(ctx context.Context, objects *idb.ObjectStore) error {
	t, err := objects.Transaction()
	if err == nil {
		err = t.Await(ctx)
	}
	return err
}
