//go:build js && wasm

package main

import (
	"context"
	"errors"
	"syscall/js"

	"github.com/hack-pad/go-indexeddb/idb"
	"setbook/calc/words"
)

// The database of the browser. It holds the last entry of each calculator, as link text under the
// calculator's ID; since version 2 each countdown, as its text under its ID; and since version 3 each job: its record in one
// store, and in another its head, which is what a list shows and what a save is compared with.
const (
	databaseName    = "setbook"
	databaseVersion = 3
	entryStore      = "entries"
	countdownStore  = "countdowns"
	jobStore        = "jobs"
	headStore       = "jobheads"
)

const notKept words.Msg = "This browser keeps nothing for this page, so your last entry will not be here next time. Answers work all the same. The link in the address bar holds the entry."

// errNoStorage is the normal state of a browser that keeps nothing: private
// windows, storage forbidden, a disk that is full.
var errNoStorage = errors.New("the browser keeps nothing for this page")

// errNewer is what a write gives where the database was made by a newer Setbook: this one reads it and leaves it alone.
var errNewer = errors.New("the database is that of a newer Setbook")

// store is one object store of the open database: texts under keys.
type store struct {
	db    *idb.Database
	name  string
	newer bool   // of a later version than this program knows: it is only read
	spare *spare // what keeps entries and countdowns a second time; nil where nothing does
}

// openStore opens the database, making it the first time, and gives the store of entries. It blocks until the browser
// has answered. The binding panics where IndexedDB is missing, so the browser is asked first.
func openStore(ctx context.Context) (opened *store, err error) {
	defer func() {
		if recover() != nil {
			opened, err = nil, errNoStorage
		}
	}()
	if !global("indexedDB").Truthy() {
		return nil, errNoStorage
	}
	db, err := openVersion(ctx, databaseVersion)
	newer := errors.Is(err, idb.NewDOMException("VersionError"))
	if newer { // no version is asked for: it opens as it is
		db, err = openVersion(ctx, 0)
	}
	if err != nil {
		return nil, err
	}
	return &store{db: db, name: entryStore, newer: newer}, nil
}

func openVersion(ctx context.Context, version uint) (*idb.Database, error) {
	request, err := idb.Global().Open(ctx, databaseName, version, upgrade)
	if err != nil {
		return nil, err
	}
	db, err := request.Await(ctx)
	if err == nil {
		err = ctx.Err()
	}
	return db, err
}

// upgrade makes what a version of the database before lacked, and leaves what is there.
func upgrade(db *idb.Database, from, _ uint) error {
	for _, made := range [...]struct {
		since uint
		name  string
	}{{1, entryStore}, {2, countdownStore}, {3, jobStore}, {3, headStore}} {
		if made.since <= from {
			continue
		}
		if _, err := db.CreateObjectStore(made.name, idb.ObjectStoreOptions{}); err != nil {
			return err
		}
	}
	return nil
}

// of is another store of the same database.
func (s *store) of(name string) *store { return &store{s.db, name, s.newer, s.spare} }

// keys lists every key. It blocks.
func (s *store) keys(ctx context.Context) ([]string, error) {
	objects, err := s.objects(idb.TransactionReadOnly)
	if err != nil {
		return nil, err
	}
	request, err := objects.GetAllKeys()
	if err != nil {
		return nil, err
	}
	list, err := request.Await(ctx)
	var keys []string
	for _, key := range list {
		keys = append(keys, key.String())
	}
	return keys, err
}

// read gives the text kept under an ID, "" where there is none. It blocks.
func (s *store) read(ctx context.Context, id string) (string, error) {
	objects, err := s.objects(idb.TransactionReadOnly)
	if err != nil {
		return "", err
	}
	return get(ctx, objects, id)
}

func get(ctx context.Context, objects *idb.ObjectStore, id string) (string, error) {
	request, err := objects.Get(js.ValueOf(id))
	if err != nil {
		return "", err
	}
	v, err := request.Await(ctx)
	if err == nil {
		err = ctx.Err()
	}
	if err != nil || v.Type() != js.TypeString {
		return "", err
	}
	return v.String(), nil
}

// write keeps a text under an ID, or nothing where the text is "". It returns as
// soon as the browser has taken the order, and calls failed if it cannot carry it out. The second copy follows.
func (s *store) write(ctx context.Context, id, text string, failed func()) error {
	entries, err := s.objects(idb.TransactionReadWrite)
	if err != nil {
		return err
	}
	request, err := order(entries, id, text)
	if err != nil {
		return err
	}
	if err := request.ListenError(ctx, failed); err != nil {
		return err
	}
	// Committed at once, so that a page that is closed on the next instant has kept it.
	transaction, err := entries.Transaction()
	if err != nil {
		return err
	}
	if err := transaction.Commit(); err != nil {
		return err
	}
	s.follow(id)
	return nil
}

func order(entries *idb.ObjectStore, id, text string) (*idb.Request, error) {
	if text != "" {
		return entries.PutKey(js.ValueOf(id), js.ValueOf(text))
	}
	gone, err := entries.Delete(js.ValueOf(id))
	if err != nil {
		return nil, err
	}
	return gone.Request, nil
}

func (s *store) objects(mode idb.TransactionMode) (*idb.ObjectStore, error) {
	if s.newer && mode == idb.TransactionReadWrite {
		return nil, errNewer
	}
	options := idb.TransactionOptions{Mode: mode}
	if s.name == countdownStore {
		// On the disk before the second copy is written: the second follows the first, also in what a flat battery has taken from it.
		options.Durability = idb.DurabilityStrict
	}
	t, err := s.db.TransactionWithOptions(options, s.name)
	if err != nil {
		return nil, err
	}
	return t.ObjectStore(s.name)
}
