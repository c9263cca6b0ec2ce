package picture

import (
	"context"
	"image"
	"testing"
	"time"
)

// How long a picture of 3840 x 2160 goes on once it is given up: the first call of
// each stage that reports its progress, and moments in between, give it up in turn.
// The mean and the longest wait are reported; 20 ms is wanted.
func BenchmarkCancel2160(b *testing.B) {
	s := built(poured(), SetOptions{})
	v := View{Kind: Quarter}
	s.sceneOf(v)
	// How long the whole takes, so that the moments are spread over it.
	start := time.Now()
	shotOf(b, s, v, Good, 3840, 2160, workers())
	whole := time.Since(start)
	var longest, sum time.Duration
	var worstAt string
	n := 0
	for b.Loop() {
		// Moments of the golden section, from one round to the next.
		at := time.Duration(float64(whole) * fract(0.5+float64(n)*0.61803398875))
		ctx, cancel := context.WithCancel(context.Background())
		gone := make(chan time.Time, 1)
		timer := time.AfterFunc(at, func() { gone <- time.Now(); cancel() })
		stage := ""
		_, err := Render(ctx, s, v, Good, 3840, 2160, func(now string, _ float64, _ *image.NRGBA) { stage = now })
		if err == nil {
			timer.Stop()
			cancel()
			continue
		}
		wait := time.Since(<-gone)
		sum += wait
		n++
		if wait > longest {
			longest, worstAt = wait, stage
		}
	}
	if n > 0 {
		b.ReportMetric(float64(sum.Microseconds())/float64(n)/1000, "ms-mean")
		b.ReportMetric(float64(whole.Milliseconds()), "ms-whole") // on a busy machine all grow alike
		b.ReportMetric(float64(longest.Microseconds())/1000, "ms-longest")
		b.Logf("longest in or after %q of %d", worstAt, n)
	}
}
