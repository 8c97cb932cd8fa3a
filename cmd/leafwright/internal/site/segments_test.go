package site

import (
	"bytes"
	"encoding/binary"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
)

// memory gives what the program's memory begins with, and how many segments put it there.
func memory(t *testing.T, program []byte) (all []byte, count int) {
	t.Helper()
	for rest := program[8:]; len(rest) > 0; {
		kind := rest[0]
		section, after, ok := counted(rest[1:])
		if !ok {
			t.Fatal("a section cut short")
		}
		if rest = after; kind != dataSection {
			continue
		}
		list, ok := segments(section)
		if !ok {
			t.Fatal("no segments")
		}
		for _, s := range list {
			if more := s.at + len(s.data) - len(all); more > 0 {
				all = append(all, make([]byte, more)...)
			}
			copy(all[s.at:], s.data)
		}
		count += len(list)
	}
	return all, count
}

// A program with its segments joined begins with the same memory, has the same code and
// still runs.
func TestJoinSegments(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles a program")
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "main.go"), []byte("package main\n\nfunc main() { println(\"hung\") }\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	build := exec.Command("go", "build", "-ldflags=-s -w", "-o", "program.wasm", "main.go")
	build.Dir, build.Env = dir, browserEnv()
	if text, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	program, err := os.ReadFile(filepath.Join(dir, "program.wasm"))
	if err != nil {
		t.Fatal(err)
	}
	tight, err := joinSegments(program)
	if err != nil {
		t.Fatal(err)
	}
	was, many := memory(t, program)
	is, few := memory(t, tight)
	if !bytes.Equal(was, is) {
		t.Error("memory begins otherwise")
	}
	if few*20 > many {
		t.Errorf("%d segments made %d", many, few)
	}
	again, err := joinSegments(tight)
	if err != nil || !bytes.Equal(again, tight) {
		t.Errorf("joined once more it changes (%v)", err)
	}
	node, err := exec.LookPath("node")
	if err != nil {
		t.Log("no Node here to run it with; the browser tests run the page's")
		return
	}
	if err := os.WriteFile(filepath.Join(dir, "program.wasm"), tight, 0o600); err != nil {
		t.Fatal(err)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(node, filepath.Join(string(bytes.TrimSpace(root)), "lib", "wasm", "wasm_exec_node.js"), filepath.Join(dir, "program.wasm"))
	if text, err := run.CombinedOutput(); err != nil || !bytes.Contains(text, []byte("hung")) {
		t.Errorf("it says %q, %v", text, err)
	}
}

// What lies between two segments is filled only where nothing else is put.
func TestJoinedLeavesOthersAlone(t *testing.T) {
	all := []segment{{10, []byte{1, 2}}, {5000, []byte{3}}, {14, []byte{4}}, {20, []byte{5}}, {8, []byte{6}}, {30, []byte{7}}}
	out := joined(all)
	flat := func(list []segment) []byte {
		b := make([]byte, 6000)
		for _, s := range list {
			copy(b[s.at:], s.data)
		}
		return b
	}
	if !bytes.Equal(flat(all), flat(out)) {
		t.Errorf("memory begins otherwise: %v", out)
	}
	back, ok := segments(written(out))
	if !ok || !slices.EqualFunc(back, out, func(a, b segment) bool { return a.at == b.at && bytes.Equal(a.data, b.data) }) {
		t.Errorf("read back as %v, want %v", back, out)
	}
}

// No bytes make it panic, and none it takes begin memory otherwise.
func FuzzJoinSegments(f *testing.F) {
	head := []byte("\x00asm\x01\x00\x00\x00")
	section := written([]segment{{0, []byte{1}}, {3, []byte{2}}, {70, []byte{3, 4}}, {100000, []byte{5}}})
	whole := append(binary.AppendUvarint(append(bytes.Clone(head), dataSection), uint64(len(section))), section...)
	f.Add(whole)
	f.Add(whole[:len(whole)-1])
	f.Add(head)
	f.Fuzz(func(t *testing.T, program []byte) {
		tight, err := joinSegments(program)
		if err != nil {
			return
		}
		for rest := program[8:]; len(rest) > 0; {
			kind := rest[0]
			section, after, _ := counted(rest[1:])
			if rest = after; kind != dataSection {
				continue
			}
			list, _ := segments(section)
			for _, s := range list {
				if s.at > 1<<20 {
					return
				}
			}
		}
		was, _ := memory(t, program)
		is, _ := memory(t, tight)
		if !bytes.Equal(was, is) {
			t.Errorf("memory begins with %v, want %v", is, was)
		}
	})
}
