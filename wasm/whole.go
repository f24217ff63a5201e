//go:build js && wasm && !pocket

package main

// whole tells the program of the large pages (the long calculators, jobs, the class, the checker of data sheets) from
// the one of all others, which the tag "pocket" makes. What stands behind it is left out of that one.
const whole = true
