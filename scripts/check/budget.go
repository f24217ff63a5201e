package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// parseBudget reads the budget's file: comments, then one line "740 KB". It gives
// bytes; 1 KB is 1,000 of them.
func parseBudget(text string) (int, error) {
	bytes, lines := 0, 0
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		number, unit, _ := strings.Cut(line, " ")
		n, err := strconv.Atoi(number)
		if err != nil || n <= 0 || unit != "KB" {
			return 0, fmt.Errorf("budget.txt: %q is not a size such as 740 KB", line)
		}
		bytes, lines = n*1000, lines+1
	}
	if lines != 1 {
		return 0, errors.New("budget.txt: want one line with a size, and comments that say why")
	}
	return bytes, nil
}

// holds compares a size with the budget.
func holds(size, budget int) (note string, err error) {
	note = fmt.Sprintf("%.1f of %.1f KB", float64(size)/1000, float64(budget)/1000)
	if size > budget {
		return note, fmt.Errorf("the program is %d bytes over its budget (%s): make it smaller, or say in scripts/check/budget.txt why it must be larger", size-budget, note)
	}
	return note, nil
}
