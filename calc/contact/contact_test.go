package contact_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"setbook/calc"
	"setbook/calc/contact"
	"setbook/calc/link"
	"setbook/calc/words"
)

// What is read out names each reason why a paver fails: contact, corners or both (ANSI A108.5, 2.2.3).
func TestVerdict(t *testing.T) {
	for entry, want := range map[string]words.Msg{
		"voids=100 mm,150 mm&corners=0": "passes, this paver",
		"voids=100 mm,150 mm&corners=2": "fails: a bare corner",
		"voids=100 mm,180 mm&corners=0": "fails: too little contact",
		"voids=100 mm,180 mm&corners=2": "fails: too little contact, and a bare corner",
	} {
		e, problems := link.Read(&contact.Calculator, "paver_l=600 mm&paver_w=500 mm&"+entry, calc.Habit{})
		assert.Empty(t, problems, entry)
		pass, _ := contact.Calculator.Solve(e).Answer("pass")
		assert.Equal(t, want, pass.Reads.Msg, entry)
	}
}
