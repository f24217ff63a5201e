package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// gridPasses is how often each start of a program goes through the kernels. The first pass warms it up and is not counted.
const gridPasses = 4

// version is one build of the kernels of calc/surface.
type version struct {
	name    string
	command []string
	times   map[string]sample  // by kernel, and in all
	results map[string]float64 // by kernel
}

// grid times the kernels of calc/surface on a million readings: built for this machine, in WebAssembly, and in plain JavaScript. The three
// take turns, so that whatever else the machine does bears on each alike.
func grid(ctx context.Context, root, dir string, runs int) error {
	native, wasm := filepath.Join(dir, "grid"), filepath.Join(dir, "grid.wasm")
	if err := goBuild(ctx, root, native); err != nil {
		return err
	}
	if err := goBuild(ctx, root, wasm, "GOOS=js", "GOARCH=wasm"); err != nil { // with the flags of the site's own program
		return err
	}
	goroot, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("go env: %w", err)
	}
	shim := filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec_node.js")
	passes := fmt.Sprint(gridPasses)
	versions := []*version{
		{name: "native", command: []string{native, "1000", passes}},
		{name: "wasm", command: []string{"node", "--stack-size=65500", shim, wasm, "1000", passes}},
		{name: "JavaScript", command: []string{"node", filepath.Join(root, "scripts", "bench", "grid", "grid.js"), "1000", passes}},
	}
	for range runs {
		for _, v := range versions {
			if err := v.run(ctx); err != nil {
				return err
			}
		}
	}
	return report(versions)
}

func goBuild(ctx context.Context, root, out string, env ...string) error {
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", out}
	if len(env) > 0 {
		args = append(args, "-gcflags=all=-l")
	}
	c := exec.CommandContext(ctx, "go", append(args, "./scripts/bench/grid")...)
	c.Dir, c.Env = root, append(os.Environ(), env...)
	if text, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("go build: %w\n%s", err, text)
	}
	return nil
}

// run starts the program once and takes its times.
func (v *version) run(ctx context.Context) error {
	c := exec.CommandContext(ctx, v.command[0], v.command[1:]...)
	var errs bytes.Buffer
	c.Stderr = &errs
	out, err := c.Output()
	if err != nil {
		return fmt.Errorf("%s: %w\n%s", v.name, err, errs.String())
	}
	if v.times == nil {
		v.times, v.results = map[string]sample{}, map[string]float64{}
	}
	seen, total := map[string]int{}, 0.0
	lines := bufio.NewScanner(bytes.NewReader(out))
	for lines.Scan() {
		var name string
		var took, result float64
		if _, err := fmt.Sscan(lines.Text(), &name, &took, &result); err != nil {
			return fmt.Errorf("%s: %q: %w", v.name, lines.Text(), err)
		}
		if seen[name]++; seen[name] == 1 {
			v.results[name] = result
			continue
		}
		v.times[name] = append(v.times[name], took)
		if total += took; name == gridKernels[len(gridKernels)-1] {
			v.times["in all"] = append(v.times["in all"], total)
			total = 0
		}
	}
	return nil
}

// gridKernels are the kernels in the order in which a pass goes through them.
var gridKernels = []string{"plane", "straightedges", "ponds", "volume", "contours", "falls"}

func report(versions []*version) error {
	fmt.Println("A slab of 1,000 by 1,000 readings, 10 ft and 2 ft straightedges over 25 mm steps; processor time")
	for _, name := range append(gridKernels, "in all") {
		for _, v := range versions {
			aim := ""
			if name == "in all" && v.name == "wasm" {
				aim = "1000 ms"
			}
			fmt.Println(v.times[name].row(name+", "+v.name, "ms", aim))
		}
	}
	for _, v := range versions {
		for _, name := range gridKernels {
			if want, got := versions[0].results[name], v.results[name]; !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
				return fmt.Errorf("%s: %s found %v, not %v", name, v.name, got, want)
			}
		}
	}
	fmt.Println("Ratios, of the medians and of the fastest")
	ratio := func(a, b *version) {
		s, t := a.times["in all"], b.times["in all"]
		fmt.Printf("  %-34s %8.2f      (%.2f)\n", a.name+" over "+b.name, s.median()/t.median(), slices.Min(s)/slices.Min(t))
	}
	ratio(versions[1], versions[0])
	ratio(versions[1], versions[2])
	ratio(versions[2], versions[0])
	return nil
}
