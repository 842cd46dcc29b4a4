package live

import (
	"net"
	"sync"
)

// bounded is a listener with so many connections at a time; further ones wait.
type bounded struct {
	net.Listener
	free chan struct{}
}

// Accept waits for a free place, then for a connection.
func (b *bounded) Accept() (net.Conn, error) {
	b.free <- struct{}{}
	c, err := b.Listener.Accept()
	if err != nil {
		<-b.free
		return nil, err
	}
	return &placed{Conn: c, leave: sync.OnceFunc(func() { <-b.free })}, nil
}

// placed is a connection that gives its place back.
type placed struct {
	net.Conn
	leave func()
}

func (p *placed) Close() error {
	defer p.leave()
	return p.Conn.Close()
}
