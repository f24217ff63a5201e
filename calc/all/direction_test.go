// These tests ask the go tool, which a program in WebAssembly cannot start.

//go:build !js

package all_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/go/packages"

	"setbook/calc/all"
)

// layers are the packages of calc that are no question, each with those of them that it may import.
var layers = map[string]string{
	"calc/unit": "", "calc/words": "unit", "calc/languages": "words", "calc/drill": "calc unit words", "calc/glossary": "calc unit words", "calc/classroom": "calc unit words markup link drill page", "calc/source": "words", "calc": "unit words source", "calc/markup": "", "calc/surface": "",
	"calc/weather": "calc unit words source", "calc/cutting": "unit", "calc/paving": "unit", "calc/csv": "words", "calc/draw": "calc unit words markup", "calc/link": "calc unit words",
	"calc/countdown": "unit words markup link", "calc/jsontext": "", "calc/job": "calc unit words link countdown jsontext", "calc/qr": "", "calc/datasheet": "calc unit words csv jsontext", "calc/embed": "calc words link", "calc/page": "calc unit words source markup draw link csv countdown datasheet qr", "calc/jobpage": "calc unit words source markup draw link countdown page job qr",
	"calc/all": "calc",
}

// Imports run one way, so that a question can be read, tested and thrown out alone, and no view can
// reach into one: nothing that every question needs knows any question, and no question another.
func TestDirection(t *testing.T) {
	found, err := packages.Load(&packages.Config{Mode: packages.NeedName | packages.NeedImports}, "setbook/calc/...")
	require.NoError(t, err)
	questions := map[string]bool{}
	for _, c := range all.Calculators() {
		questions["calc/"+c.ID] = true
	}
	seen := 0
	for _, p := range found {
		from := strings.TrimPrefix(p.PkgPath, "setbook/")
		allowed, isLayer := layers[from]
		switch {
		case from == "calc/calctest":
			continue // a test's own
		case from == "calc/takeoff":
			allowed = "calc unit words source job link" // it reads the entries of a job, and is handed the calculators
		case questions[from]:
			allowed = "calc unit words source surface weather cutting paving"
		case !isLayer:
			assert.Fail(t, "a package of calc is a question in the list or has its place among the layers", from)
		}
		seen++
		for path := range p.Imports {
			to, ours := strings.CutPrefix(path, "setbook/")
			browser := path == "syscall/js" || strings.HasPrefix(path, "honnef.co/") || strings.HasPrefix(path, "github.com/hack-pad/")
			assert.False(t, browser, "%s imports %s: only wasm/ knows the browser", from, path)
			if !ours || from == "calc/all" && questions[to] {
				continue
			}
			assert.Contains(t, strings.Fields(allowed), strings.TrimPrefix(to, "calc/"), "%s imports %s", from, to)
		}
	}
	assert.Greater(t, seen, len(layers), "the packages were found")
}
