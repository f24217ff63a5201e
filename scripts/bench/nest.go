package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// nest prints how near the nesting comes to the best known plans of published instances, worked out by the program as a
// browser gets it: WebAssembly without inlining, here in Node.
func nest(ctx context.Context, root, dir string) error {
	goroot, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	out := filepath.Join(dir, "nest.wasm")
	build := exec.CommandContext(ctx, "go", "build", "-ldflags=-s -w", "-gcflags=all=-l", "-o", out, "./scripts/bench/nest")
	build.Dir, build.Env, build.Stderr = root, append(os.Environ(), "GOOS=js", "GOARCH=wasm"), os.Stderr
	if err := build.Run(); err != nil {
		return err
	}
	fmt.Println("Nesting of published instances: sheets of each class, best known in three stages with turns, and in any way")
	run := exec.CommandContext(ctx, "node", filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec_node.js"), out,
		filepath.Join(root, "testdata", "cutting", "rectangles.csv"))
	// The program's environment shares its memory with its arguments, and has little room.
	run.Env, run.Stdout, run.Stderr = []string{"PATH=" + os.Getenv("PATH")}, os.Stdout, os.Stderr
	return run.Run()
}
