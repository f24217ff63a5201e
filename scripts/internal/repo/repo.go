// Package repo finds the top of the source tree, so that a script works from
// any folder under it.
package repo

import (
	"errors"
	"os"
	"path/filepath"
)

// Root is the folder that holds go.mod, looked for from the working folder upwards.
func Root() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod here or above: run this inside the source tree")
		}
		dir = up
	}
}
