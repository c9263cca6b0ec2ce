package geom_test

import (
	"fmt"

	"example.org/castwright/model/geom"
)

func ExampleSweep_Parts() {
	square := func(x, y, side float64) geom.Loop {
		return geom.Loop{{X: x, Y: y}, {X: x + side, Y: y}, {X: x + side, Y: y + side}, {X: x, Y: y + side}}
	}
	var s geom.Sweep
	s.Reset(geom.Vec{})
	s.Add(0, square(0, 0, 10))
	s.Add(1, square(6, 6, 10))
	for _, p := range s.Parts() {
		fmt.Printf("layers %02b: %.0f\n", p.Layers, p.Area)
	}
	// Unordered output:
	// layers 01: 84
	// layers 10: 84
	// layers 11: 16
}
