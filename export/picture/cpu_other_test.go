//go:build !unix

package picture

import (
	"testing"
	"time"
)

func cpuTime() time.Duration { return 0 }

func reportCPU(*testing.B, time.Duration) {}
