package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"setbook/scripts/internal/build"
)

const browserTests = "./scripts/check/browser"

var forPhone = []string{"GOOS=js", "GOARCH=wasm"}

// command runs a program at the top of the source tree and gives what it wrote.
func (c *checker) command(ctx context.Context, env []string, name string, arguments ...string) (string, error) {
	cmd := exec.CommandContext(ctx, name, arguments...)
	cmd.Dir = c.root
	cmd.Env = append(os.Environ(), env...)
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	if err := cmd.Run(); err != nil {
		return out.String(), fmt.Errorf("%s %s: %w\n%s", name, strings.Join(arguments, " "), err, faults(out.String()))
	}
	return out.String(), nil
}

// faults leaves out the lines of go test that tell of no fault.
func faults(out string) string {
	var kept strings.Builder
	for line := range strings.Lines(out) {
		if !strings.HasPrefix(line, "ok  \t") && !strings.HasPrefix(line, "?   \t") {
			kept.WriteString(line)
		}
	}
	return kept.String()
}

func (c *checker) format(ctx context.Context) (string, error) {
	out, err := c.command(ctx, nil, "gofmt", "-l", ".")
	if err == nil && out != "" {
		err = errors.New("gofmt would change:\n" + out)
	}
	return "", err
}

func (c *checker) vet(ctx context.Context) (string, error) {
	if _, err := c.command(ctx, nil, "go", "vet", "./..."); err != nil {
		return "", err
	}
	_, err := c.command(ctx, forPhone, "go", "vet", "./wasm/...", "./calc/...")
	if err != nil {
		return "", err
	}
	_, err = c.command(ctx, forPhone, "go", "vet", "-tags", "pocket", "./wasm/...", "./calc/...")
	return "", err
}

func (c *checker) tests(ctx context.Context) (string, error) {
	list, err := c.command(ctx, nil, "go", "list", "./...")
	if err != nil {
		return "", err
	}
	var packages []string
	for _, p := range strings.Fields(list) {
		if !strings.HasSuffix(p, strings.TrimPrefix(browserTests, ".")) {
			packages = append(packages, p)
		}
	}
	arguments, but := []string{"test"}, ""
	if c.lacks(needNode) {
		arguments = append(arguments, "-skip", "^TestAStageThatFindsAFaultFails$/^wasm$")
		but = ", but not that of the wasm stage: node is missing"
	}
	out, err := c.command(ctx, nil, "go", append(arguments, packages...)...)
	return tested(out) + but, err
}

// tested counts the packages that had tests and passed.
func tested(out string) string {
	count := 0
	for line := range strings.Lines(out) {
		if strings.HasPrefix(line, "ok ") {
			count++
		}
	}
	return fmt.Sprintf("%d packages", count)
}

func (c *checker) wasm(ctx context.Context) (string, error) {
	if c.lacks(needNode) {
		return "", fmt.Errorf("%w, for want of %s", errLeftOut, needNode)
	}
	goroot, err := c.command(ctx, nil, "go", "env", "GOROOT")
	if err != nil {
		return "", err
	}
	runner := filepath.Join(strings.TrimSpace(goroot), "lib", "wasm", "go_js_wasm_exec")
	out, err := c.command(ctx, forPhone, "go", "test", "-short", "-timeout", "5m", "-exec", runner, "./wasm/...", "./calc/...")
	return tested(out), err
}

func (c *checker) build(ctx context.Context) (string, error) {
	dir, err := os.MkdirTemp("", "setbook-check-")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	made, err := build.Build(ctx, build.Options{Out: filepath.Join(dir, "dist")})
	if err != nil {
		return "", err
	}
	program, ok := made.File(made.Program)
	whole, both := made.File(made.Whole)
	if !ok || !both || program.Brotli == 0 || whole.Brotli == 0 {
		return "", errors.New("the build has no compressed program")
	}
	c.program, c.whole = program.Brotli, whole.Brotli
	return fmt.Sprintf("%d files", len(made.Files)), nil
}

func (c *checker) size(context.Context) (string, error) {
	text, err := os.ReadFile(filepath.Join(c.root, "scripts", "check", "budget.txt"))
	if err != nil {
		return "", err
	}
	budget, err := parseBudget(string(text))
	if err != nil {
		return "", err
	}
	return budget.hold(c.program, c.whole)
}

func (c *checker) browser(ctx context.Context) (string, error) {
	switch {
	case c.short:
		return "", fmt.Errorf("%w: -short", errLeftOut)
	case c.lacks(needChromium):
		return "", fmt.Errorf("%w, for want of %s", errLeftOut, needChromium)
	}
	arguments := []string{"test", "-count=1", "-timeout", "30m", browserTests, "-skip", "^" + killTest + "$"}
	note := ""
	if c.lacks(needAxe) {
		arguments[len(arguments)-1] += "|^TestAxe"
		note = "but not the rules of axe: it is missing"
	}
	_, err := c.command(ctx, nil, "go", arguments...)
	return note, err
}
