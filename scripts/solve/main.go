// Solve works one calculator's entry out on the command line.
//
//	go run ./scripts/solve bed 'notch=square&width=1/2 in'
//	go run ./scripts/solve -json bed 'width=6 mm'
//	go run ./scripts/solve -list
package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"setbook/calc"
	"setbook/calc/all"
	"setbook/calc/csv"
	"setbook/calc/link"
	"setbook/calc/unit"
	"setbook/calc/words"
)

const help = `solve works one calculator's entry out.

  go run ./scripts/solve [flags] ID 'key=text&key=text'
  go run ./scripts/solve -list

ID is a calculator ("bed"). The entry is the same text that a share link carries after its "#".
Each text carries its unit: "1/2 in", "6' 3 1/2\"", "5.2 qt", "73 F". A key that is left out takes
the calculator's example, and the result says so. A table is given inline ("0 m,0 m;6 m,0 m") or
as @file.csv, as spreadsheets write it: cells parted by a tab, else by ;, else by commas. In the first two a
comma is a decimal mark. A file that can be read in two ways is refused; -decimal . or -decimal , can tell. An entry that cannot be worked exits 2 and says what is wrong with which key.

Flags:
`

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is the whole program: its exit code is 0, 2 for a refusal, or 1 for a bad call.
func run(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("solve", flag.ContinueOnError)
	flags.SetOutput(errs)
	flags.Usage = func() { fmt.Fprint(errs, help); flags.PrintDefaults() }
	asJSON := flags.Bool("json", false, "print JSON, values in SI units")
	list := flags.Bool("list", false, "list every calculator with its keys, units and limits")
	units := flags.String("units", "metric", "which units come first in the text: us or metric")
	decimal := flags.String("decimal", "", "the decimal mark of the entry: . or , (default: refuse what could be either)")
	switch err := flags.Parse(args); {
	case err == flag.ErrHelp:
		return 0
	case err != nil:
		return 1
	}
	style := unit.Style{System: unit.Metric}
	if *units == "us" {
		style.System = unit.US
	}
	reader := words.Reader{Language: words.English, Style: style}
	if *list {
		printList(out, reader)
		return 0
	}
	if flags.NArg() < 1 || flags.NArg() > 2 || (*units != "us" && *units != "metric") || len(*decimal) > 1 || !strings.Contains(",.", *decimal) {
		flags.Usage()
		return 1
	}
	c, ok := all.ByID(flags.Arg(0))
	if !ok {
		return refuse(out, errs, *asJSON, reader, []calc.Problem{{Key: "id", Says: words.Say(
			"There is no calculator named “{read}”. -list shows them all.", words.Text("read", flags.Arg(0)))}})
	}
	var habit calc.Habit
	if *decimal != "" {
		habit.Decimal = (*decimal)[0]
	}
	entry, problems := read(c, flags.Arg(1), habit)
	if len(problems) > 0 {
		return refuse(out, errs, *asJSON, reader, problems)
	}
	sheet := c.Solve(entry)
	if len(sheet.Problems) > 0 {
		return refuse(out, errs, *asJSON, reader, sheet.Problems)
	}
	if *asJSON {
		printJSON(out, c, entry, sheet, reader)
	} else {
		printText(out, c, entry, sheet, reader)
	}
	return 0
}

// read parses the entry, with the contents of a file in the place of each @file.
func read(c *calc.Calculator, text string, h calc.Habit) (calc.Entry, []calc.Problem) {
	texts, problems := link.Parse(text)
	habits := map[string]calc.Habit{}
	for key, value := range texts {
		habits[key] = h
		path, ok := strings.CutPrefix(value, "@")
		if !ok {
			continue
		}
		held, err := os.ReadFile(path)
		if err != nil {
			problems = append(problems, calc.Problem{Key: key, Says: words.Say("The file “{read}” cannot be read: {why}.",
				words.Text("read", path), words.Text("why", err.Error()))})
			continue
		}
		texts[key] = string(held)
		if in := c.Input(key); in != nil && len(in.Columns) > 0 {
			table, fault := csv.Read(texts[key], h.Decimal, in.Form == calc.Grid)
			if fault.Msg != "" {
				problems = append(problems, calc.Problem{Key: key, Says: fault})
			}
			texts[key], habits[key] = table.Text, calc.Habit{Decimal: table.Decimal, System: h.System}
		}
	}
	if len(problems) > 0 {
		return calc.Entry{}, problems
	}
	return c.ReadEach(texts, habits)
}
