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

// program compiles wasm/ for the browser and gives the file with the script that Go ships to run it.
func program(ctx context.Context, root string) (wasm, exec []byte, err error) {
	dir, err := os.MkdirTemp("", "setbook-build-")
	if err != nil {
		return nil, nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "setbook.wasm")
	// No paths, symbol table or version stamp: the same sources give the same bytes anywhere. Nothing is inlined,
	// because a body that stands once is smaller than its copies (package slim has the figures).
	if _, err := goTool(ctx, root, []string{"GOOS=js", "GOARCH=wasm"},
		"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l", "-o", out, "./wasm"); err != nil {
		return nil, nil, err
	}
	linked, err := os.ReadFile(out)
	if err != nil {
		return nil, nil, err
	}
	wasm, err = slim.Slim(linked)
	if err != nil {
		return nil, nil, err
	}
	goroot, err := goTool(ctx, root, nil, "env", "GOROOT")
	if err != nil {
		return nil, nil, err
	}
	exec, err = os.ReadFile(filepath.Join(strings.TrimSpace(goroot), "lib", "wasm", "wasm_exec.js"))
	return wasm, exec, err
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
