package picture

import "testing"

// What a maker waits for. The pictures are of tops of cream concrete with a river
// and glass; Build is part of a first picture alone.
func BenchmarkFirstPicture360(b *testing.B) {
	d := glassy()
	b.ReportAllocs()
	start := cpuTime()
	for b.Loop() {
		shotOf(b, built(d, SetOptions{Draft: true}), View{Kind: Quarter}, First, 640, 360, workers())
	}
	reportCPU(b, start)
}

func benchmark(b *testing.B, v View, q Quality, w, h, threads int) {
	s := built(poured(), SetOptions{})
	b.ReportAllocs()
	start := cpuTime()
	for b.Loop() {
		shotOf(b, s, v, q, w, h, threads)
	}
	reportCPU(b, start)
}

func BenchmarkBuild(b *testing.B) {
	d := poured()
	b.ReportAllocs()
	start := cpuTime()
	for b.Loop() {
		built(d, SetOptions{})
	}
	reportCPU(b, start)
}

func BenchmarkMove540(b *testing.B) {
	benchmark(b, View{Kind: Orbit, Turn: 20, Rise: 30}, First, 960, 540, workers())
}
func BenchmarkQuick1080(b *testing.B) {
	benchmark(b, View{Kind: Quarter}, Quick, 1920, 1080, workers())
}
func BenchmarkGood1080(b *testing.B) {
	benchmark(b, View{Kind: Quarter}, Good, 1920, 1080, workers())
}
func BenchmarkGood1080OneThread(b *testing.B) {
	benchmark(b, View{Kind: Quarter}, Good, 1920, 1080, 1)
}
func BenchmarkGood2160(b *testing.B) { benchmark(b, View{Kind: Quarter}, Good, 3840, 2160, workers()) }

// Coarse stone, polished, with glass in pigmented resin: the dearest look there is.
func stoneBenchmark(b *testing.B, w, h int) {
	s := built(demo(b, 0, 0), SetOptions{})
	for _, v := range []struct {
		name string
		kind Kind
	}{{"quarter", Quarter}, {"top", Top}, {"close", Close}} {
		b.Run(v.name, func(b *testing.B) {
			b.ReportAllocs()
			start := cpuTime()
			for b.Loop() {
				shotOf(b, s, View{Kind: v.kind}, Good, w, h, workers())
			}
			reportCPU(b, start)
		})
	}
}

func BenchmarkStone1080(b *testing.B) { stoneBenchmark(b, 1920, 1080) }
func BenchmarkStone2160(b *testing.B) { stoneBenchmark(b, 3840, 2160) }
