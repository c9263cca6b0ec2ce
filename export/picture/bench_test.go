package picture

import (
	"context"
	"testing"

	"example.org/castwright/model/design"
)

// What a maker waits for. The pictures are of the corner counter of the demo and
// of a poured river with glass; Build is part of a first picture alone.
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

// How near the quick method comes to 512 samples of the path tracer on three
// tops, in steps of 255. Takes minutes.
func BenchmarkAgainstReference(b *testing.B) {
	for _, c := range []struct {
		name string
		d    design.Design
	}{{"poured", poured()}, {"corner", demo(b, 0, 0)}, {"oval", demo(b, 1, 0)}} {
		b.Run(c.name, func(b *testing.B) {
			const w, h = 320, 180
			s := built(c.d, SetOptions{})
			ref, err := s.room().reference(context.Background(), s.camera(View{Kind: Quarter}, w, h), 512, 0, nil)
			if err != nil {
				b.Fatal(err)
			}
			want := developed(ref, w, h)
			for b.Loop() {
				root, mean := rmse(shotOf(b, s, View{Kind: Quarter}, Good, w, h, workers()), want)
				b.ReportMetric(root, "rmse/255")
				b.ReportMetric(mean, "mean/255")
			}
		})
	}
}
