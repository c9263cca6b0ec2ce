//go:build unix

package picture

import (
	"syscall"
	"testing"
	"time"
)

// cpuTime is the processor time that the program has used, user and system,
// over all threads.
func cpuTime() time.Duration {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return 0
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// reportCPU adds the processor time of each round since start to a benchmark.
func reportCPU(b *testing.B, start time.Duration) {
	b.ReportMetric((cpuTime()-start).Seconds()/float64(b.N), "cpu-s/op")
}
