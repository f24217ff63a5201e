package slim

import "fmt"

// known is the Go whose tables this package knows. Before another is added, read the files that the comment of the
// package names in that Go's source.
const known = "go1.26"

// Slim gives a module that does the same as the one that Go's linker wrote, but for the text of stack traces.
func Slim(wasm []byte) ([]byte, error) {
	out, err := slim(wasm)
	if err != nil {
		return nil, fmt.Errorf("slim: %w", err)
	}
	return out, nil
}

func slim(wasm []byte) ([]byte, error) {
	m, err := readModule(wasm)
	if err != nil {
		return nil, err
	}
	if err := m.madeByKnownGo(); err != nil {
		return nil, err
	}
	mem, err := m.memory()
	if err != nil {
		return nil, err
	}
	t, err := findTables(mem)
	if err != nil {
		return nil, err
	}
	if m.find(startSection) != nil { // slim already
		if m, err = m.dropStart(t.filler()); err != nil {
			return nil, err
		}
		t.fill()
	}
	if err := t.strip(); err != nil {
		return nil, err
	}
	if m, err = m.addStart(t.filler()); err != nil {
		return nil, err
	}
	m.find(dataSection).body = segments(mem)
	return m.write(), nil
}
