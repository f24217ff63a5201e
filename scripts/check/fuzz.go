package main

import (
	"context"
	"fmt"
	"slices"
	"strings"
)

// spell is how long each fuzz target runs.
const spell = "3s"

// imports is the target that a job's file and link are fuzzed with, and imported how often with -long. Inputs are not made smaller for long there:
// that is most of the time otherwise.
const imports, imported = "FuzzImport", "10000000"

// target is one fuzz target.
type target struct{ pkg, name string }

func (c *checker) fuzz(ctx context.Context) (string, error) {
	if c.short {
		return "", fmt.Errorf("%w: -short", errLeftOut)
	}
	out, err := c.command(ctx, nil, "go", "test", "-list", "^Fuzz", "./calc/...")
	if err != nil {
		return "", err
	}
	targets := parseTargets(out)
	if len(targets) == 0 {
		return "", fmt.Errorf("no fuzz target found in:\n%s", out)
	}
	if c.long && !slices.ContainsFunc(targets, func(t target) bool { return t.name == imports }) {
		return "", fmt.Errorf("no %s among the fuzz targets found in:\n%s", imports, out)
	}
	for _, t := range targets {
		time := spell
		if c.long && t.name == imports {
			time = imported + "x"
		}
		if _, err := c.command(ctx, nil, "go", "test", "-run", "^$", "-timeout", "3h", "-fuzz", "^"+t.name+"$", "-fuzztime", time, "-fuzzminimizetime", "10x", t.pkg); err != nil {
			return "", err
		}
	}
	note := fmt.Sprintf("%d targets, %s each", len(targets), spell)
	if c.long {
		note += ", but " + imports + ": " + imported + " executions"
	}
	return note, nil
}

// parseTargets reads what go test -list prints: the targets of a package, then the
// line that ends with its path.
func parseTargets(out string) []target {
	var all []target
	var names []string
	for line := range strings.Lines(out) {
		fields := strings.Fields(line)
		switch {
		case len(fields) == 1 && strings.HasPrefix(fields[0], "Fuzz"):
			names = append(names, fields[0])
		case len(fields) > 1 && fields[0] == "ok":
			for _, name := range names {
				all = append(all, target{fields[1], name})
			}
			names = nil
		}
	}
	return all
}
