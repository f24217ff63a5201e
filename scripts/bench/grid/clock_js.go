package main

import (
	"syscall/js"
	"time"
)

// clock is the processor time that node has taken.
func clock() time.Duration {
	u := js.Global().Get("process").Call("cpuUsage")
	return time.Duration(u.Get("user").Float()+u.Get("system").Float()) * time.Microsecond
}
