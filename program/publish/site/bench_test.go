package site_test

import (
	"fmt"
	"testing"

	"gatepost/program"
	"gatepost/program/publish/site"
)

// A studio with 300 clients who all share: some 3,900 pages.
func BenchmarkBuild300Clients(b *testing.B) {
	s := source(b)
	s.Clients = nil
	for i := range 300 {
		s.Clients = append(s.Clients, client(s.Library, func(p *program.Program) {
			p.Client = program.Client{Name: "Maren", Share: program.ShareSite, Page: fmt.Sprintf("page%08d", i)}
		}))
	}
	for b.Loop() {
		files, _ := site.Build(s)
		b.ReportMetric(float64(len(files)), "files")
	}
}
