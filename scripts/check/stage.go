package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
)

// stage is one thing that is checked. It gives a few words for its line.
type stage struct {
	name string
	run  func(context.Context) (note string, err error)
}

// errLeftOut is what a stage gives that could not be checked, for a reason that is
// no fault. It is named, and it counts neither as passed nor as failed.
var errLeftOut = errors.New("not checked")

// runAll runs the stages in their order up to the first fault, one line each, and ends with the count. It reports
// whether nothing failed.
func runAll(ctx context.Context, out io.Writer, stages []stage) bool {
	passed, failed := 0, 0
	var leftOut []string
	for _, s := range stages {
		start := time.Now()
		note, err := s.run(ctx)
		verdict := "ok"
		switch {
		case errors.Is(err, errLeftOut):
			verdict, note = "--", err.Error()
			leftOut = append(leftOut, s.name+": "+note)
		case err != nil:
			verdict = "FAIL"
			failed++
		default:
			passed++
		}
		fmt.Fprintf(out, "%-4s %-8s %6.1f s  %s\n", verdict, s.name, time.Since(start).Seconds(), note)
		if failed > 0 {
			fmt.Fprintf(out, "\n%s\n\n", strings.TrimSpace(err.Error()))
			break
		}
	}
	if len(leftOut) > 0 {
		fmt.Fprintf(out, "Left out:\n  %s\n", strings.Join(leftOut, "\n  "))
	}
	fmt.Fprintf(out, "%d passed, %d failed\n", passed, failed)
	return failed == 0
}
