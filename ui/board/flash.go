package board

import (
	"math"
	"time"

	"example.org/castwright/model/geom"
	"fyne.io/fyne/v2"
)

// flash is a place that is being shown by a ring that spreads twice.
type flash struct {
	at    geom.Vec
	phase float64
	run   *fyne.Animation
}

const (
	flashTime = 1400 * time.Millisecond
	flashes   = 2
)

func (b *Board) startFlash(at geom.Vec) {
	if b.flash != nil {
		b.flash.run.Stop()
	}
	f := &flash{at: at}
	f.run = fyne.NewAnimation(flashTime, func(done float32) {
		if b.flash != f {
			return
		}
		_, f.phase = math.Modf(float64(done) * flashes)
		if done >= 1 {
			b.flash = nil
		}
		b.raster.Refresh()
	})
	f.run.Curve = fyne.AnimationLinear
	b.flash = f
	f.run.Start()
	b.raster.Refresh()
}
