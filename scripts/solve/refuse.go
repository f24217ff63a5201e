package main

import (
	"fmt"
	"io"

	"setbook/calc"
	"setbook/calc/words"
)

type jsonProblem struct {
	Key  string `json:"key"`
	Says string `json:"says"`
}

type jsonRefusal struct {
	Problems []jsonProblem `json:"problems"`
}

// jsonValue is what this program encodes.
type jsonValue interface{ isJSON() }

func (jsonSheet) isJSON()   {}
func (jsonRefusal) isJSON() {}

// refuse says what is wrong, to out as JSON or to errs as text, and gives the exit code.
func refuse(out, errs io.Writer, asJSON bool, r words.Reader, problems []calc.Problem) int {
	var refusal jsonRefusal
	for _, p := range problems {
		refusal.Problems = append(refusal.Problems, jsonProblem{p.Key, r.Line(p.Says)})
	}
	if asJSON {
		encode(out, refusal)
		return 2
	}
	for _, p := range refusal.Problems {
		fmt.Fprintf(errs, "%s: %s\n", p.Key, p.Says)
	}
	return 2
}
