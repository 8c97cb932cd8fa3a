package site

import (
	"bytes"
	"compress/gzip"
	"context"
	"io"
	"slices"

	"github.com/andybalholm/brotli"
)

const (
	gzipSuffix   = ".gz"
	brotliSuffix = ".br"
)

// pack puts a packed copy beside every file that gets smaller by it.
func (f Files) pack(ctx context.Context, quick bool) error {
	packings := []packing{{gzipSuffix, gzipAt(gzip.BestCompression)}, {brotliSuffix, brotliBest}}
	if quick {
		packings = []packing{{gzipSuffix, gzipAt(gzip.BestSpeed)}}
	}
	plain := make([]string, 0, len(f))
	for name := range f {
		plain = append(plain, name)
	}
	for _, name := range plain {
		for _, p := range packings {
			packed, err := p.pack(ctx, f[name])
			if err != nil {
				return err
			}
			if len(packed) < len(f[name]) {
				f[name+p.suffix] = packed
			}
		}
	}
	return nil
}

type packing struct {
	suffix string
	writer func(io.Writer) io.WriteCloser
}

// pack works in slices, so that it can be stopped.
func (p packing) pack(ctx context.Context, data []byte) ([]byte, error) {
	var b bytes.Buffer
	w := p.writer(&b)
	for slice := range slices.Chunk(data, 1<<18) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if _, err := w.Write(slice); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func gzipAt(level int) func(io.Writer) io.WriteCloser {
	return func(w io.Writer) io.WriteCloser {
		z, err := gzip.NewWriterLevel(w, level)
		if err != nil { // only for a level that does not exist
			z = gzip.NewWriter(w)
		}
		return z
	}
}

func brotliBest(w io.Writer) io.WriteCloser {
	return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
}
