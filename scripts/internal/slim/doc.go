// Package slim takes out of a program for the browser what only the text of a stack trace is made of, and sends what
// can be counted up as a rule. A phone on a slow link waits for every byte, and Go's linker has an option that drops
// the symbol table (-s) but none that drops the tables by which a crash names its source lines.
//
// What is lost: a program that ends by a panic that nothing recovers says the panic, and then a trace whose functions are
// all named f, at no file and line. The page never shows a trace (wasm/guard.go says in words that something
// failed), and tests run the program as the linker wrote it.
//
// What is kept, because the runtime itself decides by it, in the source of Go 1.26: the depth of the stack and which of
// its words hold pointers (stkframe.go, stack.go: growing a stack and collecting garbage), the two functions of package
// reflect that stkframe.go knows by name, and the form package.(*Type).Method that panicwrap takes apart (error.go). A name
// that begins with "runtime." keeps that beginning (traceback.go and panic.go look for it). Where a signal may
// stop a function is dropped: there are no signals in a browser (os_wasm.go, preemptMSupported is false).
//
// What is counted up: the number and the place of each function's record. The module gets a start function
// that writes them before the program runs.
//
// What is sent otherwise: Go's linker cuts the data where 8 zeros follow one another, into some 70,000 segments with a
// header each; here a cut takes 64.
//
// Measured with 26 calculators (Go 1.26, brotli 11, one run, KB of 1,000 bytes):
//
//	compiled with                  as linked   slim
//	inlining                             924    801
//	no inlining in setbook                 -    763
//	no inlining anywhere (-l)            841    735
//	the same, older collector              -    727
//
// The older collector (GOEXPERIMENT=nogreenteagc) is left alone: 8 KB do not pay for an experiment's name that a later Go
// may not know.
//
// The layouts are those of one release of Go, and Slim refuses a module that says that another made it.
package slim
