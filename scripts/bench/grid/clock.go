//go:build !js

package main

import (
	"syscall"
	"time"
)

// clock is the processor time that the program has taken. The machine's other work bears on it less than on the time of day.
func clock() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
