package posture_test

import (
	"testing"

	"gatepost/program/posture"
)

// BenchmarkAlbum draws the whole library. Asked for: 1 ms an exercise.
func BenchmarkAlbum(b *testing.B) {
	lib := library(b)
	for b.Loop() {
		posture.NewAlbum(lib).Problems()
	}
	b.ReportMetric(b.Elapsed().Seconds()*1000/float64(b.N*len(lib.Exercises)), "ms/exercise")
}
