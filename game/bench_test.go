package game

import (
	"testing"
)

// weavers is a demo of 43 readings.
func weavers(b *testing.B) Job { return demo(b, "8-weavers-cottage-readings") }

// What a keystroke in a reading costs: the job with the fit of its shapes.
func BenchmarkSetReading(b *testing.B) {
	j := weavers(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (Form{}).Set(j, "readings[0].value", "768"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSure(b *testing.B) {
	j := weavers(b)
	for _, row := range []struct {
		name  string
		swing bool
	}{{"closed", false}, {"swing", true}} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				j.Sure(row.swing)
			}
		})
	}
}

func BenchmarkCard(b *testing.B) {
	j := weavers(b)
	sure := j.Sure(false)
	b.ReportAllocs()
	for b.Loop() {
		Form{}.Card(j, sure)
	}
}

func BenchmarkParseReadings(b *testing.B) {
	text := EncodeReadings(weavers(b).Readings)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := ParseReadings(text); err != nil {
			b.Fatal(err)
		}
	}
}
