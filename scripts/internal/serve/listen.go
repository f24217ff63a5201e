package serve

import (
	"errors"
	"net"
	"syscall"
)

// Listen opens an address, or where that port is taken, a free port of the same host, and says which.
func Listen(address string) (l net.Listener, moved bool, err error) {
	l, err = net.Listen("tcp", address)
	if !errors.Is(err, syscall.EADDRINUSE) {
		return l, false, err
	}
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return nil, false, err
	}
	l, err = net.Listen("tcp", net.JoinHostPort(host, "0"))
	return l, true, err
}
