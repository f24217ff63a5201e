// Command nest nests the published instances of testdata/cutting and prints what came of each class. It is built for
// WebAssembly by scripts/bench, which runs it beside the file.
package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"setbook/calc/cutting"
	"setbook/calc/unit"
)

// class is what came of the instances of one class together.
type class struct {
	name                              string
	instances, best, any, ours, bound int
	proven                            int // instances nested into as many sheets as the bound: no plan is better
	hundred                           []time.Duration
}

func main() {
	if err := run(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "nest:", err)
		os.Exit(1)
	}
}

func run(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return err
	}
	total := &class{name: "together"}
	var list []*class
	for _, r := range records[1:] {
		_, name, _ := strings.Cut(r[0], "Class_")
		name, _, _ = strings.Cut(name, ".")
		if len(list) == 0 || list[len(list)-1].name != name {
			list = append(list, &class{name: name})
		}
		if err := one(r, list[len(list)-1], total); err != nil {
			return fmt.Errorf("%s: %w", r[0], err)
		}
	}
	fmt.Printf("  %-9s %9s %7s %7s %7s %7s %7s %7s  %s\n", "class", "instances", "best", "any", "ours", "ratio", "bound", "proven", "ms for 100 pieces")
	for _, c := range append(list, total) {
		slices.Sort(c.hundred)
		ms := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }
		fmt.Printf("  %-9s %9d %7d %7d %7d %7.4f %7d %7d  %.1f, at most %.1f\n", c.name, c.instances, c.best, c.any, c.ours,
			float64(c.ours)/float64(c.best), c.bound, c.proven, ms(c.hundred[len(c.hundred)/2]), ms(c.hundred[len(c.hundred)-1]))
	}
	return nil
}

// one nests an instance: its name, the sheet's sides, how many pieces, the fewest sheets known in three stages with turns and
// without, in any way with turns and without, and the pieces. Each is nested three times, of which the shortest counts: others use this machine too.
func one(r []string, into ...*class) error {
	var fault error
	number := func(text string) int {
		n, err := strconv.Atoi(text)
		if err != nil {
			fault = err
		}
		return n
	}
	long := func(text string) unit.Length { return unit.Length(number(text)) * unit.Millimetre }
	sheet := cutting.Size{W: long(r[1]), L: long(r[2])}
	var pieces []cutting.Piece
	for _, text := range strings.Fields(r[8]) {
		w, l, _ := strings.Cut(text, "x")
		pieces = append(pieces, cutting.Piece{Size: cutting.Size{W: long(w), L: long(l)}, Turn: true})
	}
	best, any := number(r[4]), number(r[6])
	if fault != nil {
		return fault
	}
	var plan cutting.Plan
	shortest := time.Hour
	for range 3 {
		start := time.Now()
		plan, _ = cutting.Nest(sheet, 0, pieces, nil)
		shortest = min(shortest, time.Since(start))
	}
	for _, c := range into {
		c.instances, c.best, c.any = c.instances+1, c.best+best, c.any+any
		c.ours, c.bound = c.ours+len(plan.Sheets), c.bound+plan.Bound
		if plan.Bound == len(plan.Sheets) {
			c.proven++
		}
		if len(pieces) == 100 {
			c.hundred = append(c.hundred, shortest)
		}
	}
	return nil
}
