package build

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"

	"github.com/andybalholm/brotli"
)

// compress makes the brotli and gzip forms of a file. Brotli at its strongest takes seconds over
// the program, so both are kept by the hash of what went in.
func compress(data []byte) (br, gz []byte, err error) {
	br, err = kept(data, "br11", func() ([]byte, error) {
		var b bytes.Buffer
		w := brotli.NewWriterLevel(&b, brotli.BestCompression)
		if _, err := w.Write(data); err != nil {
			return nil, err
		}
		err := w.Close()
		return b.Bytes(), err
	})
	if err != nil {
		return nil, nil, err
	}
	gz, err = kept(data, "gz9", func() ([]byte, error) {
		var b bytes.Buffer
		w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(data); err != nil {
			return nil, err
		}
		err = w.Close()
		return b.Bytes(), err
	})
	return br, gz, err
}

// kept gives what was made of the same data before, or makes and keeps it. A machine with no
// cache folder only builds more slowly.
func kept(data []byte, form string, make func() ([]byte, error)) ([]byte, error) {
	sum := sha256.Sum256(data)
	dir, err := os.UserCacheDir()
	if err != nil {
		return make()
	}
	name := filepath.Join(dir, "setbook", hex.EncodeToString(sum[:])+"."+form)
	if had, err := os.ReadFile(name); err == nil {
		return had, nil
	}
	made, err := make()
	if err != nil {
		return nil, err
	}
	// Written aside and renamed, so that a build that is stopped leaves no half file.
	if os.MkdirAll(filepath.Dir(name), 0o755) == nil {
		if aside, err := os.CreateTemp(filepath.Dir(name), "half-*"); err == nil {
			_, err = aside.Write(made)
			if aside.Close() != nil || err != nil || os.Rename(aside.Name(), name) != nil {
				os.Remove(aside.Name())
			}
		}
	}
	return made, nil
}
