package slim

import (
	"errors"
	"fmt"
	"strings"
)

// madeByKnownGo refuses a module that does not say that it was made by a Go whose tables are known.
func (m module) madeByKnownGo() error {
	version, err := m.madeBy()
	if err != nil {
		return err
	}
	release, _, _ := strings.Cut(version, "-") // experiments come after the dash
	if release != known && !strings.HasPrefix(release, known+".") {
		return fmt.Errorf("made by %s, whose tables may be laid out otherwise than those of %s: see the comment of package slim", version, known)
	}
	return nil
}

// madeBy gives the version of Go that the linker wrote into the section "producers".
func (m module) madeBy() (string, error) {
	for _, s := range m {
		r := &reader{b: s.body}
		if s.id != customSection || r.name() != "producers" {
			continue
		}
		for fields := r.u32(); fields > 0 && !r.broken; fields-- {
			field := r.name()
			for values := r.u32(); values > 0 && !r.broken; values-- {
				if value, version := r.name(), r.name(); field == "language" && value == "Go" && !r.broken {
					return version, nil
				}
			}
		}
	}
	return "", errors.New("it does not say which Go made it")
}
