package main

import (
	"context"
	"errors"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBudget(t *testing.T) {
	b, err := parseBudget("# why\n\nmost 740 KB\nwhole 900 KB\n")
	require.NoError(t, err)
	assert.Equal(t, budgets{740_000, 900_000}, b)
	for _, bad := range []string{"", "# most 740 KB\n", "740", "740 MB", "KB", "-1 KB", "0 KB", "740 KB\nmost 750 KB", "740.5 KB"} {
		bad = "whole 900 KB\nmost " + bad
		_, err := parseBudget(bad)
		assert.Error(t, err, "%q", bad)
	}
	text, err := os.ReadFile("budget.txt")
	require.NoError(t, err)
	_, err = parseBudget(string(text))
	assert.NoError(t, err)
	assert.Contains(t, string(text), "Why", "the file gives its reason")
}

func TestSizeHoldsToTheByte(t *testing.T) {
	_, err := holds(740_000, 740_000)
	assert.NoError(t, err)
	_, err = holds(740_001, 740_000)
	assert.ErrorContains(t, err, "1 bytes over")
	_, err = budgets{10_000, 20_000}.hold(10_000, 20_001)
	assert.ErrorContains(t, err, "1 bytes over")
	_, err = budgets{10_000, 20_000}.hold(10_001, 20_000)
	assert.ErrorContains(t, err, "1 bytes over")
}

func TestFuzzTargetsAreFound(t *testing.T) {
	const out = "FuzzRead\nFuzzLink\nok  \tsetbook/calc/unit\t0.003s\n?   \tsetbook/calc/x\t[no test files]\nFuzzParse\nok  \tsetbook/calc/link\t0.1s\n"
	assert.Equal(t, []target{{"setbook/calc/unit", "FuzzRead"}, {"setbook/calc/unit", "FuzzLink"}, {"setbook/calc/link", "FuzzParse"}}, parseTargets(out))
	assert.Empty(t, parseTargets("ok  \tsetbook/calc/unit\t0.003s\n"))
}

func TestKillsAreCounted(t *testing.T) {
	note, err := killed("=== RUN   TestAKilled\nkilled 200 times in 600 s: 0 lost\n--- PASS: TestAKilled (1.00s)\nok\n")
	require.NoError(t, err)
	assert.Equal(t, "killed 200 times in 600 s: 0 lost", note)
	_, err = killed("testing: warning: no tests to run\nok\n")
	assert.ErrorContains(t, err, "no kill")
}

func lines(out string) []string { return strings.Split(strings.TrimSpace(out), "\n") }

func TestTheFirstFaultEndsTheRun(t *testing.T) {
	var ran []string
	make := func(name string, err error) stage {
		return stage{name, func(context.Context) (string, error) { ran = append(ran, name); return "a note", err }}
	}
	var out strings.Builder
	ok := runAll(context.Background(), &out, []stage{make("one", nil), make("two", errLeftOut), make("three", errors.New("planted")), make("four", nil)})
	assert.False(t, ok)
	assert.Equal(t, []string{"one", "two", "three"}, ran)
	got := lines(out.String())
	assert.Equal(t, "1 passed, 1 failed", got[len(got)-1])
	assert.Contains(t, out.String(), "planted")
	assert.Contains(t, out.String(), "two: not checked")
}

func TestAllPassed(t *testing.T) {
	var out strings.Builder
	ok := runAll(context.Background(), &out, []stage{{"one", func(context.Context) (string, error) { return "a note", nil }}})
	assert.True(t, ok)
	got := lines(out.String())
	assert.Len(t, got, 2, "one line a stage, and the count")
	assert.Contains(t, got[0], "a note")
	assert.Equal(t, "1 passed, 0 failed", got[1])
}

func TestEachStageIsExplained(t *testing.T) {
	for _, s := range (&checker{}).stages() {
		assert.Contains(t, about, "\n  "+s.name+" ", "-h explains %s", s.name)
	}
}

// TestAStageThatFindsAFaultFails runs the stages that run other programs on a small tree with one fault each.
func TestAStageThatFindsAFaultFails(t *testing.T) {
	const good = "package calc\n\nimport \"testing\"\n\nfunc TestIt(t *testing.T) {}\n\nfunc FuzzIt(f *testing.F) { f.Fuzz(func(t *testing.T, s string) {}) }\n"
	run := func(t *testing.T, source string, of func(*checker) func(context.Context) (string, error)) error {
		t.Helper()
		root := t.TempDir()
		for name, text := range map[string]string{"go.mod": "module small\n\ngo 1.26\n", "calc/calc_test.go": source,
			"wasm/main.go": "//go:build js && wasm\n\npackage main\n\nfunc main() {}\n"} {
			require.NoError(t, os.MkdirAll(root+"/calc", 0o755))
			require.NoError(t, os.MkdirAll(root+"/wasm", 0o755))
			require.NoError(t, os.WriteFile(root+"/"+name, []byte(text), 0o644))
		}
		_, err := of(&checker{root: root})(context.Background())
		return err
	}
	stages := map[string]struct {
		of      func(*checker) func(context.Context) (string, error)
		planted string
	}{
		"format": {func(c *checker) func(context.Context) (string, error) { return c.format }, strings.Replace(good, "func TestIt", "func  TestIt", 1)},
		"vet":    {func(c *checker) func(context.Context) (string, error) { return c.vet }, strings.Replace(good, "{}\n\nfunc F", "{ t.Logf(\"%d\", \"x\") }\n\nfunc F", 1)},
		"tests":  {func(c *checker) func(context.Context) (string, error) { return c.tests }, strings.Replace(good, "{}\n\nfunc F", "{ t.Error() }\n\nfunc F", 1)},
		"wasm":   {func(c *checker) func(context.Context) (string, error) { return c.wasm }, strings.Replace(good, "{}\n\nfunc F", "{ t.Error() }\n\nfunc F", 1)},
		"fuzz":   {func(c *checker) func(context.Context) (string, error) { return c.fuzz }, strings.Replace(good, "s string) {}", "s string) { if len(s) > 3 { t.Error(s) } }", 1)},
	}
	for name, s := range stages {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			assert.NoError(t, run(t, good, s.of))
			assert.Error(t, run(t, s.planted, s.of))
		})
	}
}
