// Package slim takes out of a program for the browser what only the text of a stack trace is made of, and sends what
// can be counted up as a rule. A phone on a slow link waits for every byte, and Go's linker has an option that drops
// the symbol table (-s) but none that drops the tables by which a crash names its source lines.
//
// What is lost: a program that ends by a panic that nothing recovers says the panic, and then a trace whose functions are
// named f or the like, at no file and line. The same holds of what runtime.Caller, runtime.Stack and log.Lshortfile
// give. The page never shows a trace (wasm/guard.go says in words that something failed); to read one, build wasm/
// with the flags of scripts/internal/build but for -s. A browser's own trace numbers the functions alike in both: the one
// that slim adds is the last.
//
// What is kept, because the runtime itself decides by it, in the source of Go 1.26:
//
//   - by places, the depth of the stack and which of its words hold pointers (stkframe.go, stack.go: a stack that grows,
//     garbage that is collected), and which inlined call a place belongs to (panic.go, gorecover: who may recover);
//   - a name that begins with "runtime." keeps that beginning (traceback.go, isSystemGoroutine: which goroutines run
//     while the world is stopped, and which count in a deadlock);
//   - a name of the form package.(*Type).Method keeps that form (error.go, panicwrap: it ends the program where it finds
//     none, and the panic could not be recovered);
//   - the two functions of package reflect that stkframe.go knows by name, argMapInternal;
//   - no name becomes empty (symtab.go, funcpkgpath).
//
// Dropped too is where a signal may stop a function: there are no signals in a browser (os_wasm.go,
// preemptMSupported is false).
//
// What is counted up: the number and the place of each function's record. The module gets a start function
// that writes them before the program runs.
//
// What is sent otherwise: Go's linker cuts the data where 8 zeros follow one another, into some 70,000 segments with a
// header each; here a cut takes 64 (about 30 segments).
//
// Measured with 23 calculators (Go 1.26.8, brotli 11, one build, KB of 1,000 bytes; Chromium's main thread in ms of
// processor time, unthrottled: median of 15 fresh browsers, quartiles in brackets; the first column adds those of two
// steps):
//
//	                                 KB   make and run until live       100 first keys    a later key
//	inlined, as linked             1030           35.1 [34.1-36.3]   106.7 [100-111]   0.84 [0.77-0.90]
//	inlined, slim                   800           34.8 [33.9-35.7]   110.1 [105-118]   0.81 [0.75-0.83]
//	not inlined in setbook, slim    763           36.6 [34.3-39.0]   114.1 [109-120]   0.85 [0.83-0.91]
//	not inlined (-l), as linked     943           37.7 [36.8-42.4]   145.1 [141-155]   1.06 [1.02-1.15]
//	not inlined, slim               735           37.5 [36.3-41.1]   147.8 [139-153]   1.08 [1.04-1.11]
//	the same, older collector       727           37.4 [36.2-38.9]   141.0 [136-150]   1.11 [1.03-1.16]
//
// So the program is slim and not inlined: 66 KB less are a third of a second of the first visit on a slow phone link, for
// 3 ms at the start and a quarter of a millisecond a key. The older collector (GOEXPERIMENT=nogreenteagc) is left alone:
// 8 KB do not pay for an experiment's name that a later Go may not know.
//
// How much of the 735 KB each part takes off, measured with 9 calculators, not inlined, older collector: 819 KB as
// linked; 747 by the cut at 64 alone; 667 without names, files and lines; 650 without what prints arguments and what
// signals need, and with runs packed; 635 by counting up. The cut at 8 zeros gives 724, at 16 696, at 24 641, at 32
// 636, at 48 or more 634 to 635. Leaving out the linker's own sections (its ID and the Go that made it) gains nothing.
//
// The layouts are those of one release of Go, and Slim refuses a module that says that another made it.
package slim
