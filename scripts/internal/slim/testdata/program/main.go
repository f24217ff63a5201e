// Command program does what a Go runtime needs its tables for, and prints what came of it.
package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"log"
	"os"
	"reflect"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"time"
)

func main() {
	switch strings.Join(os.Args[1:], " ") {
	case "panic":
		nested(3)
	case "deadlock":
		<-make(chan int)
	}
	fmt.Println("goroutines", runtime.NumGoroutine())
	recovers()
	wrappers()
	fmt.Println("deep", deep(3000, new(node)))
	stubs()
	fmt.Println("channels", channels())
	fmt.Println("timers", timers())
	fmt.Println("maps", maps())
	fmt.Println("cleanups", cleanups())
	fmt.Println("exit", goexit())
	stacks()
	fmt.Printf("%v %+v %T %q %8.3f\n", []any{1, "two", nil}, node{value: 3}, node{}, "four", 5.0)
	fmt.Println("goroutines", runtime.NumGoroutine())
}

//go:noinline
func nested(n int) {
	if n == 0 {
		panic(errors.New("not recovered"))
	}
	nested(n - 1)
}

type node struct {
	next  *node
	value int
}

// recovered runs something and tells what it panics with.
func recovered(do func()) (text string) {
	defer func() {
		switch fault := recover().(type) {
		case nil:
		case runtime.Error:
			text = "runtime error: " + strings.TrimPrefix(fault.Error(), "runtime error: ")
		default:
			text = fmt.Sprint(fault)
		}
	}()
	do()
	return "nothing"
}

func recovers() {
	var m map[string]int
	var s []int
	var n *node
	var a any = "text"
	zero := len(s)
	for _, do := range []func(){
		func() { m["key"] = 1 },
		func() { s[zero+5] = 1 },
		func() { s = s[:zero+9] },
		func() { n.value++ },
		func() { fmt.Println(1 / zero) },
		func() { fmt.Println(a.(fmt.Stringer)) },
		func() { close((chan int)(nil)) },
		func() { panic(errors.New("an error of our own")) },
		func() { nested(100) },
		func() {
			defer func() { panic(fmt.Sprint("after ", recover())) }()
			nested(2)
		},
		func() {},
	} {
		fmt.Println("recovered:", recovered(do))
	}
	// Only a function that was deferred itself recovers, not one that it calls.
	fmt.Println("recovered:", recovered(func() {
		defer func() { func() { recover() }() }()
		nested(1)
	}))
	for i := range 3 { // a defer in a loop is kept in another way
		fmt.Println("recovered:", recovered(func() {
			for range i {
				defer func() { recover() }()
			}
			nested(i)
		}))
	}
}

type saver interface{ save() }

type saves struct{ caught *string }

func (s saves) save() { *s.caught = fmt.Sprint("saved from ", recover()) }

type value struct{ a, b int }

func (v value) sum() int { return v.a + v.b }

type summer interface{ sum() int }

func wrappers() {
	var caught string
	func() {
		var s saver = &saves{&caught} // the wrapper of a method must not count as a caller
		defer s.save()
		nested(1)
	}()
	fmt.Println(caught)
	sums := []summer{&value{1, 2}, (*value)(nil)}
	slices.Reverse(sums) // so that the compiler does not see which is which
	fmt.Println("through a pointer:", sums[1].sum())
	fault := recovered(func() { sums[0].sum() })
	fmt.Println("through nil:", strings.HasPrefix(fault, "runtime error: value method "), strings.HasSuffix(fault, " pointer"))
}

// deep fills a stack with pointers, which moves as it grows, and collects what is not reached.
//
//go:noinline
func deep(n int, from *node) int {
	here := &node{from, n}
	rubbish := make([]*node, 8)
	for i := range rubbish {
		rubbish[i] = &node{here, i}
	}
	if n%500 == 0 {
		runtime.GC()
	}
	if n == 0 {
		length := 0
		for at := here; at != nil; at = at.next {
			length += at.value
		}
		return length
	}
	sum := deep(n-1, here)
	for i, r := range rubbish {
		if r.value != i || r.next != here || here.value != n {
			panic("memory was lost")
		}
	}
	return sum + 1
}

func (n *node) add(others ...*node) *node {
	churn()
	for _, o := range others {
		n = &node{n, o.value}
	}
	return n
}

// stubs calls through package reflect, where the arguments of a frame are in no table.
func stubs() {
	made := reflect.MakeFunc(reflect.TypeFor[func(*node, string, *node) (*node, string)](), func(in []reflect.Value) []reflect.Value {
		churn()
		a, b := in[0].Interface().(*node), in[2].Interface().(*node)
		return []reflect.Value{reflect.ValueOf(&node{a, b.value}), reflect.ValueOf(strings.Repeat(in[1].String(), 3))}
	}).Interface().(func(*node, string, *node) (*node, string))
	n, s := made(&node{nil, 7}, "ab", &node{nil, 8})
	method := reflect.ValueOf(&node{nil, 9}).MethodByName("Add").Interface().(func(...*node) *node)
	m := method(&node{nil, 10}, &node{nil, 11})
	done := make(chan *node)
	go func() { done <- method(&node{nil, 12}) }()
	fmt.Println("stubs", n.next.value, n.value, s, m.value, m.next.value, m.next.next.value, (<-done).next.value)
}

func (n *node) Add(others ...*node) *node { return n.add(others...) }

// churn makes the stack move, collects, and uses memory again that was let go wrongly.
func churn() {
	grow(200)
	runtime.GC()
	var keep []*node
	for i := range 2000 {
		keep = append(keep, &node{nil, -i})
	}
	runtime.KeepAlive(keep)
}

//go:noinline
func grow(n int) byte {
	var room [256]byte
	room[n%256] = byte(n)
	if n > 0 {
		room[0] += grow(n - 1)
	}
	return room[n%256] + room[0]
}

func channels() (sum int) {
	in, out := make(chan *node), make(chan int, 3)
	var all sync.WaitGroup
	var mu sync.Mutex
	seen := 0
	for range 20 {
		all.Go(func() {
			for n := range in {
				runtime.Gosched()
				mu.Lock()
				seen++
				mu.Unlock()
				out <- n.value + len(recovered(func() { nested(n.value % 5) }))
			}
		})
	}
	go func() {
		for i := range 300 {
			in <- &node{nil, i}
			if i%100 == 0 {
				runtime.GC()
			}
		}
		close(in)
		all.Wait()
		close(out)
	}()
	for v := range out {
		sum += v
	}
	return sum + 100000*seen
}

func timers() (seen []string) {
	ctx, stop := context.WithTimeout(context.Background(), 30*time.Millisecond)
	defer stop()
	late := time.NewTimer(time.Hour)
	tick := time.NewTicker(3 * time.Millisecond)
	defer tick.Stop()
	for range 3 {
		select {
		case <-tick.C:
			seen = append(seen, "tick")
		case <-late.C:
			seen = append(seen, "late")
		}
	}
	fired := make(chan bool)
	time.AfterFunc(time.Millisecond, func() { fired <- true })
	<-fired
	<-ctx.Done()
	return append(seen, ctx.Err().Error(), fmt.Sprint(late.Stop()))
}

func maps() string {
	m := map[string]*node{}
	for i := range 5000 {
		m[fmt.Sprint("key", i)] = &node{nil, i}
	}
	for i := range 4000 {
		delete(m, fmt.Sprint("key", i))
	}
	runtime.GC()
	sum, keys := 0, []string{}
	for k, n := range m {
		sum += n.value
		keys = append(keys, k)
	}
	slices.Sort(keys)
	small := map[value]string{{1, 2}: "b", {1, 1}: "a"}
	return fmt.Sprint(len(m), sum, keys[0], keys[len(keys)-1], small)
}

func cleanups() bool {
	ran := make(chan string, 2)
	func() {
		a, b := &node{nil, 1}, &node{nil, 2}
		runtime.SetFinalizer(a, func(*node) { ran <- "finalizer" })
		runtime.AddCleanup(b, func(string) { ran <- "cleanup" }, "")
	}()
	for end := time.Now().Add(5 * time.Second); len(ran) < 2 && time.Now().Before(end); {
		runtime.GC()
		time.Sleep(time.Millisecond)
	}
	return len(ran) == 2
}

func goexit() (order []string) {
	done := make(chan bool)
	go func() {
		defer close(done)
		defer func() { order = append(order, fmt.Sprint(recover())) }()
		func() {
			defer func() { order = append(order, "inner") }()
			runtime.Goexit()
		}()
	}()
	<-done
	return order
}

// stacks asks for what Slim takes away. The text is another then; that it comes is what counts.
func stacks() {
	pcs := make([]uintptr, 100)
	pcs = pcs[:runtime.Callers(0, pcs)]
	frames, count := runtime.CallersFrames(pcs), 0
	for more := true; more; count++ {
		_, more = frames.Next()
	}
	_, _, _, ok := runtime.Caller(0)
	var lines bytes.Buffer
	log.New(&lines, "", log.Llongfile).Print("logged")
	f := runtime.FuncForPC(pcs[0])
	file, line := f.FileLine(pcs[0])
	fmt.Println("frames", len(pcs), count, ok, strings.HasSuffix(lines.String(), ": logged\n"), f.Entry() != 0, line >= 0 && len(file+f.Name()) >= 0)
	for _, all := range []bool{false, true} {
		text := make([]byte, 1<<20)
		fmt.Println("stack", strings.HasPrefix(string(text[:runtime.Stack(text, all)]), "goroutine 1 [running]:\n"))
	}
	fmt.Println("stack", len(debug.Stack()) > 0)
}
