// Package browser holds what must be true of the built site in a browser on a
// phone. It is all tests: go run ./scripts/check runs them, and installs what
// they need.
package browser
