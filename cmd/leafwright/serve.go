package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"runtime"
	"time"

	"leafwright/cmd/leafwright/internal/static"
)

// home is the usual address. It stays the same from one day to the next because
// the browser keeps a job under the address it was opened at.
const home = "127.0.0.1:8417"

var serveCommand = command{
	name:  "serve",
	usage: "serve [-addr 127.0.0.1:PORT] [-open]",
	about: "makes the page and serves it to this machine's browser",
	run:   serve,
}

func serve(ctx context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	addr := flags.String("addr", home, "the `address` to serve at, on this machine only; port 0 takes any free one")
	open := flags.Bool("open", false, "open the page in the browser too")
	if status, good := c.parse(flags, args, std); !good {
		return status
	}
	if err := loopback(*addr); err != nil {
		return c.misuse(std, "-addr %s: %v", *addr, err)
	}
	l, err := listen(*addr, std)
	if err != nil {
		return c.fail(std, err)
	}
	defer l.Close()
	dir, err := os.MkdirTemp("", "leafwright-page-")
	if err != nil {
		return c.fail(std, err)
	}
	defer os.RemoveAll(dir)
	files, err := makePage(ctx, true, std)
	if ctx.Err() != nil {
		return failed
	}
	if err == nil {
		err = files.Write(dir)
	}
	if err != nil {
		return c.fail(std, err)
	}
	page := "http://" + l.Addr().String() + "/"
	fmt.Fprintf(std.out, "The page is at %s (Ctrl-C ends it)\n", page)
	if *open {
		if err := openBrowser(page); err != nil {
			fmt.Fprintf(std.err, "no browser could be opened (%v): open the address by hand\n", err)
		}
	}
	if err := answer(ctx, l, static.Handler(os.DirFS(dir))); err != nil {
		return c.fail(std, err)
	}
	return ok
}

// answer serves until the context ends, then lets what is under way finish.
func answer(ctx context.Context, l net.Listener, h http.Handler) error {
	srv := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second, IdleTimeout: 2 * time.Minute}
	ended := make(chan error, 1)
	go func() { ended <- srv.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	grace, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	defer cancel()
	if err := srv.Shutdown(grace); errors.Is(err, context.DeadlineExceeded) {
		return srv.Close()
	} else if err != nil {
		return err
	}
	return nil
}

// listen takes the address; where the usual one is taken, any free port will do.
func listen(addr string, std std) (net.Listener, error) {
	l, err := net.Listen("tcp", addr)
	if err != nil && addr == home {
		fmt.Fprintf(std.err, "%s is taken (%v): using another port. A job saved in the browser at %s is only seen there.\n", home, err, home)
		return net.Listen("tcp", "127.0.0.1:0")
	}
	return l, err
}

// loopback tells what is wrong with an address that is not this machine's own.
func loopback(addr string) error {
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return fmt.Errorf("want HOST:PORT such as %s", home)
	}
	if ip := net.ParseIP(host); host == "localhost" || ip != nil && ip.IsLoopback() {
		return nil
	}
	return fmt.Errorf("the page is served to this machine only: want 127.0.0.1, [::1] or localhost before the colon")
}

func openBrowser(page string) error {
	switch runtime.GOOS {
	case "darwin":
		return exec.Command("open", page).Start()
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", page).Start()
	}
	return exec.Command("xdg-open", page).Start()
}
