package main

import (
	"bytes"
	"context"
	"io"
	"net"
	"net/http"
	"strings"
	"testing"
)

// call runs the command and gives its status and what it wrote.
func call(ctx context.Context, args ...string) (status int, out, errs string) {
	var o, e bytes.Buffer
	status = run(ctx, args, std{strings.NewReader(""), &o, &e})
	return status, o.String(), e.String()
}

func TestUsage(t *testing.T) {
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   string // on the error output, or on the output where all is well
	}{
		{"help", []string{"help"}, ok, "leafwright serve"},
		{"help by flag", []string{"--help"}, ok, "leafwright build"},
		{"unknown command", []string{"plane"}, misused, `no command "plane"`},
		{"unknown flag", []string{"build", "-fast"}, misused, "-fast"},
		{"help of a command", []string{"build", "-h"}, ok, ""},
		{"build without a folder", []string{"build"}, misused, "-o DIR is missing"},
		{"build with too much", []string{"build", "-o", "x", "y"}, misused, `"y" is one argument too many`},
		{"serve with too much", []string{"serve", "now"}, misused, `"now" is one argument too many`},
		{"serve to the world", []string{"serve", "-addr", "0.0.0.0:80"}, misused, "this machine only"},
		{"serve to the world by silence", []string{"serve", "-addr", ":8080"}, misused, "this machine only"},
		{"serve at a name", []string{"serve", "-addr", "example.test:80"}, misused, "this machine only"},
		{"serve without a port", []string{"serve", "-addr", "127.0.0.1"}, misused, "want HOST:PORT"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := call(context.Background(), c.args...)
			if status != c.status {
				t.Errorf("status %d, want %d; it said %s%s", status, c.status, out, errs)
			}
			if !strings.Contains(out+errs, c.says) {
				t.Errorf("said %q, want %q in it", out+errs, c.says)
			}
			if status == misused && out != "" {
				t.Errorf("wrong usage wrote to the output: %q", out)
			}
		})
	}
}

func TestLoopback(t *testing.T) {
	for addr, good := range map[string]bool{
		"127.0.0.1:0": true, "127.1.2.3:80": true, "[::1]:80": true, "localhost:80": true,
		"192.168.1.4:80": false, "[::]:80": false, "0.0.0.0:0": false, "localhost.example:80": false, "": false, "80": false,
	} {
		if err := loopback(addr); (err == nil) != good {
			t.Errorf("%q: %v, want good %v", addr, err, good)
		}
	}
}

func TestOutsideACheckout(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, args := range [][]string{{"build", "-o", "page"}, {"serve", "-addr", "127.0.0.1:0"}} {
		status, _, errs := call(context.Background(), args...)
		if status != failed || !strings.Contains(errs, "not inside a checkout") {
			t.Errorf("%v: status %d, said %q", args, status, errs)
		}
	}
}

// The server answers until it is told to stop, and then lets go of its port.
func TestAnswerEndsCleanly(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() {
		ended <- answer(ctx, l, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { io.WriteString(w, "leaf") }))
	}()
	r, err := http.Get("http://" + l.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	if b, err := io.ReadAll(r.Body); string(b) != "leaf" {
		t.Errorf("answered %q, %v", b, err)
	}
	r.Body.Close()
	http.DefaultClient.CloseIdleConnections()
	stop()
	if err := <-ended; err != nil {
		t.Errorf("ended with %v", err)
	}
	again, err := net.Listen("tcp", l.Addr().String())
	if err != nil {
		t.Fatalf("the port is still taken: %v", err)
	}
	again.Close()
}

func TestTakenPort(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	status, _, errs := call(context.Background(), "serve", "-addr", l.Addr().String())
	if status != failed || errs == "" {
		t.Errorf("a port that was asked for and is taken: status %d, said %q", status, errs)
	}
}

func TestUsualPortTakenGivesAnother(t *testing.T) {
	first, err := net.Listen("tcp", home)
	if err == nil {
		defer first.Close()
	} // else something else holds it, which serves as well
	var said bytes.Buffer
	l, err := listen(home, std{err: &said})
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if l.Addr().String() == home || !strings.Contains(said.String(), "is taken") {
		t.Errorf("listens at %s, said %q", l.Addr(), said.String())
	}
}
