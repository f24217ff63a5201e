package build

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"setbook/scripts/internal/slim"
)

// programs compiles wasm/ for the browser, once for most pages and once with everything, and gives both with the script that Go ships to run them.
func programs(ctx context.Context, root string) (pocket, whole, exec []byte, err error) {
	if pocket, err = program(ctx, root, "pocket"); err != nil {
		return nil, nil, nil, err
	}
	if whole, err = program(ctx, root, ""); err != nil {
		return nil, nil, nil, err
	}
	goroot, err := goTool(ctx, root, nil, "env", "GOROOT")
	if err != nil {
		return nil, nil, nil, err
	}
	exec, err = os.ReadFile(filepath.Join(strings.TrimSpace(goroot), "lib", "wasm", "wasm_exec.js"))
	return pocket, whole, exec, err
}

// program compiles wasm/ with a build tag.
func program(ctx context.Context, root, tag string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "setbook-build-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "setbook.wasm")
	// No paths, symbol table or version stamp: the same sources give the same bytes anywhere. Nothing is inlined,
	// because a body that stands once is smaller than its copies (package slim has the figures).
	if _, err := goTool(ctx, root, []string{"GOOS=js", "GOARCH=wasm"},
		"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l", "-tags", tag, "-o", out, "./wasm"); err != nil {
		return nil, err
	}
	linked, err := os.ReadFile(out)
	if err != nil {
		return nil, err
	}
	return slim.Slim(linked)
}

func goTool(ctx context.Context, dir string, env []string, args ...string) (string, error) {
	cmd := exec.CommandContext(ctx, "go", args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), env...)
	var out, wrong bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &wrong
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, wrong.String())
	}
	return out.String(), nil
}
