package build

import (
	"errors"
	"fmt"
	"os"
	"path"
	"path/filepath"

	"setbook/calc/datasheet"
	"setbook/calc/embed"
	"setbook/site"
)

// sheets puts every data sheet of a folder into the site. One with a fault stops the build, and every fault is told.
func (t tree) sheets(dir string) error {
	if dir == "" {
		return nil
	}
	files, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	var faults []error
	count := 0
	for _, f := range files {
		name := f.Name()
		if ext := path.Ext(name); f.IsDir() || ext != ".csv" && ext != ".json" {
			continue
		}
		count++
		text, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return err
		}
		if !embed.PlainName(name) {
			faults = append(faults, fmt.Errorf("%s: a name has letters, digits, - and _ alone", name))
		}
		_, problems := datasheet.Read(string(text))
		for _, p := range problems {
			faults = append(faults, fmt.Errorf("%s: line %d, %s: %s", name, p.Line, p.Field, site.Reader().Line(p.Says)))
		}
		t["sheets/"+name] = text
	}
	if count == 0 {
		return fmt.Errorf("no data sheet in %s", dir)
	}
	return errors.Join(faults...)
}
