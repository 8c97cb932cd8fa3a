package bench

import (
	"fmt"
	"hash/crc32"
)

// Seal writes a record with its checksum before it, so that one cut short or
// damaged is known for what it is.
func Seal(data []byte) string {
	return fmt.Sprintf("%08x:%s", crc32.ChecksumIEEE(data), data)
}

// Unseal gives the record back, and whether it is whole.
func Unseal(text string) (data []byte, whole bool) {
	const head = 9
	if len(text) < head || text[head-1] != ':' || text != Seal([]byte(text[head:])) {
		return nil, false
	}
	return []byte(text[head:]), true
}
