// Package desk is the writing desk: a page served to the browser of this computer alone, in
// which the procedures of one shop folder are written while they are checked and drawn. It
// knows the disk and the compiler's front door, and must not know what the files mean.
package desk

import (
	"context"
	"crypto/rand"
	"encoding/hex"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"sync"
	"time"

	"benchleaf/compiler"
)

// Shop is a shop folder as the command reads it.
type Shop interface {
	// Folder is the shop folder, without links.
	Folder() string
	// Read gives what a compile takes. Texts that are not saved yet, by their paths from the
	// shop folder, stand in place of the files or beside them. What could not be read is told.
	Read(unsaved map[string][]byte) (compiler.Input, []error)
}

// Desk serves the page of one shop folder.
type Desk struct {
	shop     Shop
	root     *os.Root
	address  string // 127.0.0.1:8123
	port     string
	base     string // the folder of all addresses, /6f3a…/; a cookie of that path goes nowhere else
	token    string
	desk     http.Handler
	listener net.Listener

	saving  sync.Mutex // one file is written at a time
	counted int        // of what was written, for names of their own; under saving

	check checker
	turn  chan struct{} // held while the shop is compiled
	kept  kept          // under turn
}

// Open makes a desk for a shop folder and listens on a port of this computer; port 0 takes
// any that is free.
func Open(shop Shop, port int) (*Desk, error) {
	root, err := os.OpenRoot(shop.Folder())
	if err != nil {
		return nil, fmt.Errorf("the folder %s cannot be read: %w", shop.Folder(), err)
	}
	listener, err := net.Listen("tcp4", net.JoinHostPort("127.0.0.1", fmt.Sprint(port)))
	if err != nil {
		root.Close()
		var at *net.OpError
		if errors.As(err, &at) {
			err = at.Err
		}
		return nil, fmt.Errorf("nothing can be served at port %d: %w\n  give another with --port, or none", port, err)
	}
	d := &Desk{shop: shop, root: root, listener: listener, address: listener.Addr().String(), token: secret(32), base: "/" + secret(8) + "/",
		check: &session{}, turn: make(chan struct{}, 1)}
	_, d.port, err = net.SplitHostPort(d.address)
	if err != nil {
		return nil, errors.Join(err, d.Close())
	}
	d.desk = d.guarded(d.routes())
	return d, nil
}

func secret(bytes int) string {
	out := make([]byte, bytes)
	rand.Read(out) // never fails
	return hex.EncodeToString(out)
}

// Address is what is opened first: it holds the token, and leads to the page without it.
func (d *Desk) Address() string { return "http://" + d.address + d.base + "?token=" + d.token }

// Close frees the port and the folder of a desk that is not served.
func (d *Desk) Close() error { return errors.Join(d.listener.Close(), d.root.Close()) }

// Serve answers until the context ends.
func (d *Desk) Serve(ctx context.Context) error {
	defer d.root.Close()
	server := &http.Server{Handler: d.desk, ReadHeaderTimeout: 10 * time.Second, MaxHeaderBytes: 1 << 16}
	stopped := make(chan error, 1)
	go func() {
		<-ctx.Done()
		last, cancel := context.WithTimeout(context.Background(), 2*time.Second)
		defer cancel()
		err := server.Shutdown(last)
		if errors.Is(err, context.DeadlineExceeded) {
			err = server.Close()
		}
		stopped <- err
	}()
	if err := server.Serve(d.listener); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return <-stopped
}
