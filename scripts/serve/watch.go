package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// sources are the folders that a build reads.
var sources = []string{"calc", "wasm", "site", "scripts/internal"}

// settle is how long the files must be left alone before a build: an editor writes several at once.
const settle = 250 * time.Millisecond

// watch builds after every change of a source, until the context ends. A build that fails is
// told and the old site stands.
func watch(ctx context.Context, root string, build func() error) error {
	w, err := fsnotify.NewWatcher()
	if err != nil {
		return err
	}
	defer w.Close()
	for _, dir := range sources {
		if err := addTree(w, filepath.Join(root, dir)); err != nil {
			return err
		}
	}
	quiet := time.NewTimer(0)
	<-quiet.C
	for {
		select {
		case <-ctx.Done():
			return nil
		case err := <-w.Errors:
			return err
		case e := <-w.Events:
			if !counts(e) {
				continue
			}
			if e.Has(fsnotify.Create) {
				if err := addTree(w, e.Name); err != nil {
					return err
				}
			}
			quiet.Reset(settle)
		case <-quiet.C:
			if err := build(); err != nil && ctx.Err() == nil {
				fmt.Fprintln(os.Stderr, "serve: not built, the site is as it was:", err)
			}
		}
	}
}

// counts reports whether an event can change the site. Editors write their own files beside the ones they save.
func counts(e fsnotify.Event) bool {
	name := filepath.Base(e.Name)
	return !e.Has(fsnotify.Chmod) && !strings.HasPrefix(name, ".") && !strings.HasSuffix(name, "~") && !strings.HasSuffix(name, "_test.go")
}

// addTree watches a folder and every folder in it; a file, or one that is gone again, is passed over.
func addTree(w *fsnotify.Watcher, dir string) error {
	return filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return nil
		}
		return w.Add(path)
	})
}
