package bench

import (
	"hash/crc32"
	"strconv"
)

// sealed is how many letters of a seal stand before the record: the checksum in
// hexadecimal figures and a colon.
const sealed = 9

// Seal writes a record with its checksum before it, so that one cut short or
// damaged is known for what it is.
func Seal(data []byte) string {
	sum := strconv.FormatUint(uint64(crc32.ChecksumIEEE(data)), 16)
	return "00000000"[len(sum):] + sum + ":" + string(data)
}

// Unseal gives the record back, and whether it is whole.
func Unseal(text string) (data []byte, whole bool) {
	if len(text) < sealed || text[sealed-1] != ':' {
		return nil, false
	}
	data = []byte(text[sealed:])
	if Seal(data)[:sealed] != text[:sealed] {
		return nil, false
	}
	return data, true
}
