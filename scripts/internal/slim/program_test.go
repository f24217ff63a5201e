package slim

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// built is a real program as Go's linker writes it, with inlined calls and without.
var built = map[string]func() ([]byte, error){
	"inlined": sync.OnceValues(func() ([]byte, error) { return compile() }),
	"plain":   sync.OnceValues(func() ([]byte, error) { return compile("-gcflags=all=-l") }),
}

func compile(flags ...string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "slim-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "program.wasm")
	cmd := exec.Command("go", append(append([]string{"build", "-trimpath", "-ldflags=-s -w", "-o", out}, flags...), "./testdata/program")...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// program gives one of the built programs and its slim form.
func program(t *testing.T, kind string) (wide, narrow []byte) {
	t.Helper()
	wide, err := built[kind]()
	require.NoError(t, err)
	narrow, err = Slim(wide)
	require.NoError(t, err)
	return wide, narrow
}

func goroot(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	return strings.TrimSpace(string(out))
}

type outcome struct {
	out, wrong string
	code       int
}

// run runs a program in Node as Go's own tests do.
func run(t *testing.T, wasm []byte, debug string, args ...string) outcome {
	t.Helper()
	file := filepath.Join(t.TempDir(), "program.wasm")
	require.NoError(t, os.WriteFile(file, wasm, 0o644))
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute) // a damaged program may hang
	defer cancel()
	cmd := exec.CommandContext(ctx, "node", append([]string{"--stack-size=8192", filepath.Join(goroot(t), "lib", "wasm", "wasm_exec_node.js"), file}, args...)...)
	cmd.Env = append(os.Environ(), "GODEBUG="+debug)
	var out, wrong bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &wrong
	err := cmd.Run()
	if _, exited := err.(*exec.ExitError); !exited {
		require.NoError(t, err)
	}
	return outcome{out.String(), wrong.String(), cmd.ProcessState.ExitCode()}
}

// TestRunsTheSame runs the program and compares what it prints. What it does is in testdata/program: recovered panics,
// stacks that grow, collection, goroutines, timers, calls through package reflect.
func TestRunsTheSame(t *testing.T) {
	for kind := range built {
		wide, narrow := program(t, kind)
		for _, debug := range []string{"", "gcstoptheworld=2"} { // the second lets system goroutines alone run while it collects
			want, got := run(t, wide, debug), run(t, narrow, debug)
			require.Zero(t, want.code, "%s, %s", kind, want.wrong)
			assert.Contains(t, want.out, "recovered: runtime error: assignment to entry in nil map\n")
			assert.Contains(t, want.out, "through nil: true true\n")
			assert.Equal(t, want, got, "%s, GODEBUG=%s", kind, debug)
		}
	}
}

// TestEndsTheSame lets the program end by a fault. The first line of what it says must stay; names and lines must not.
func TestEndsTheSame(t *testing.T) {
	for _, end := range []string{"panic", "deadlock"} {
		wide, narrow := program(t, "inlined")
		want, got := run(t, wide, "", end), run(t, narrow, "", end)
		first, trace, _ := strings.Cut(got.wrong, "\n")
		wantFirst, wantTrace, _ := strings.Cut(want.wrong, "\n")
		assert.NotEmpty(t, first)
		assert.Equal(t, wantFirst, first)
		assert.Equal(t, want.code, got.code)
		assert.NotZero(t, got.code)
		assert.Contains(t, wantTrace, "main.go:")
		assert.Contains(t, trace, "goroutine 1 [")
		assert.NotContains(t, trace, "main.")
	}
}

// TestStartFunction lets Node make an instance, in which nothing runs but the start function, and looks at its memory.
func TestStartFunction(t *testing.T) {
	_, narrow := program(t, "inlined")
	m, err := readModule(narrow)
	require.NoError(t, err)
	want, err := m.memory()
	require.NoError(t, err)
	tables, err := findTables(want)
	require.NoError(t, err)
	tables.fill()

	file := filepath.Join(t.TempDir(), "slim.wasm")
	require.NoError(t, os.WriteFile(file, narrow, 0o644))
	const script = `
		const [file] = process.argv.slice(1), fs = require("fs")
		const functions = new Proxy({}, {get: () => () => { throw new Error("the program ran") }})
		WebAssembly.instantiate(fs.readFileSync(file), {gojs: functions}).then(({instance}) =>
			fs.writeFileSync(file + ".memory", new Uint8Array(instance.exports.mem.buffer)))`
	out, err := exec.Command("node", "-e", script, file).CombinedOutput()
	require.NoError(t, err, "%s", out)
	got, err := os.ReadFile(file + ".memory")
	require.NoError(t, err)
	assert.True(t, bytes.Equal(want, got))
}

// TestSmaller compares what a browser has to fetch.
func TestSmaller(t *testing.T) {
	for kind, most := range map[string]float64{"inlined": 0.77, "plain": 0.78} {
		wide, narrow := program(t, kind)
		ratio := float64(compressed(t, narrow)) / float64(compressed(t, wide))
		assert.Less(t, ratio, most, kind)
		assert.Greater(t, ratio, 0.5, "%s: too good to be true", kind)
	}
}

func compressed(t *testing.T, data []byte) int {
	t.Helper()
	var b bytes.Buffer
	w := brotli.NewWriterLevel(&b, 9)
	_, err := w.Write(data)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	return b.Len()
}

func TestTwiceIsOnce(t *testing.T) {
	for kind := range built {
		_, narrow := program(t, kind)
		again, err := Slim(narrow)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(narrow, again), kind)
	}
}

// TestLeavesWhatTheRuntimeReads looks every function up in both forms as the runtime does.
func TestLeavesWhatTheRuntimeReads(t *testing.T) {
	for kind := range built {
		wide, narrow := program(t, kind)
		before, after := loaded(t, wide), loaded(t, narrow)
		require.Equal(t, len(before.records), len(after.records))
		require.Greater(t, len(before.records), 1000)
		runs := 0
		for n, f := range before.records {
			g := after.records[n]
			for word := range fixed {
				switch word {
				case nameOff, pcsp, pcfile, pcln, cuOffset, startLine:
				default:
					require.Equal(t, f.word(word), g.word(word), "%s: function %d, word %d", kind, n, word)
				}
			}
			for _, word := range append(f.pcdata(), pcsp) {
				if word == fixed+unsafePoint {
					continue
				}
				want, got := before.content(t, f.word(word)), after.content(t, g.word(word))
				require.Equal(t, want, got, "%s: function %d, run of word %d", kind, n, word)
				runs += len(want)
			}
			for i, word := range f.funcdata() {
				if i != argInfo {
					require.Equal(t, f.word(word), g.word(word), "%s: function %d, data %d", kind, n, i)
				}
			}
		}
		assert.Greater(t, runs, 5000)
		may := before.droppable()
		for i, b := range before.data {
			if b != after.data[i] {
				require.True(t, may[i], "%s: byte %d of the data", kind, i)
			}
		}
	}
}

// droppable tells of each byte of the data whether only the text of a stack trace is made of it.
func (t *tables) droppable() []bool {
	may := make([]bool, len(t.data))
	for _, call := range t.calls {
		at := cap(t.data) - cap(call)
		for i := range 4 {
			may[at+inlinedName+i], may[at+inlinedLine+i] = true, true
		}
	}
	needed := map[uint32]bool{}
	for _, f := range t.records {
		for i, word := range f.funcdata() {
			needed[f.word(word)] = needed[f.word(word)] || i != argInfo
		}
	}
	for at, is := range needed {
		for i := int(at); !is; i++ {
			may[i] = true
			is = t.data[i] == 0xff
		}
	}
	return may
}

// loaded gives the tables of a module as they are when its program starts.
func loaded(t *testing.T, wasm []byte) *tables {
	t.Helper()
	m, err := readModule(wasm)
	require.NoError(t, err)
	mem, err := m.memory()
	require.NoError(t, err)
	tables, err := findTables(mem)
	require.NoError(t, err)
	tables.fill()
	require.NoError(t, tables.check())
	return tables
}

// content is the bytes of a run.
func (t *tables) content(tt *testing.T, at uint32) string {
	tt.Helper()
	if at == 0 {
		return ""
	}
	length, _, ok := t.run(at)
	require.True(tt, ok)
	return string(t.runs[at : int(at)+length])
}
