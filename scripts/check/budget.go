package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// budgets are how many bytes each program may have as it travels.
type budgets struct{ most, whole int }

// parseBudget reads the budget's file: comments, then a line for each program, "most 850 KB" and "whole 1150 KB". 1 KB is 1,000
// bytes.
func parseBudget(text string) (b budgets, err error) {
	lines := 0
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, size, _ := strings.Cut(line, " ")
		number, unit, _ := strings.Cut(size, " ")
		of, ok := map[string]*int{"most": &b.most, "whole": &b.whole}[name]
		n, err := strconv.Atoi(number)
		if !ok || *of != 0 || err != nil || n <= 0 || unit != "KB" {
			return b, fmt.Errorf("budget.txt: %q is not a program with its size, such as most 850 KB", line)
		}
		*of, lines = n*1000, lines+1
	}
	if lines != 2 {
		return b, errors.New("budget.txt: want a line for each of the two programs, and comments that say why")
	}
	return b, nil
}

// hold compares both programs with their budgets.
func (b budgets) hold(most, whole int) (string, error) {
	note, err := holds(most, b.most)
	also, wrong := holds(whole, b.whole)
	return note + ", whole " + also, errors.Join(err, wrong)
}

// holds compares a size with the budget.
func holds(size, budget int) (note string, err error) {
	note = fmt.Sprintf("%.1f of %.1f KB", float64(size)/1000, float64(budget)/1000)
	if size > budget {
		return note, fmt.Errorf("the program is %d bytes over its budget (%s): make it smaller, or say in scripts/check/budget.txt why it must be larger", size-budget, note)
	}
	return note, nil
}
