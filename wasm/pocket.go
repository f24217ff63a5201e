//go:build js && wasm && pocket

package main

const whole = false // see whole.go
