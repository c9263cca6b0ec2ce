package material

// Pipe is a size of Schedule 40 plastic pipe, used as a knock-out: the hole that
// it leaves is its outside diameter.
type Pipe struct {
	Nominal   string  // inches, as sold
	Outside   float64 // mm, outside diameter
	Tolerance float64 // mm, either way
}

// PipeSource is where the diameters stand. The tolerances of the single sizes are
// from memory.
var PipeSource = Source{"ASTM D1785 Table 1", Published}

// Pipes is the sizes in use, smallest first.
var Pipes = []Pipe{
	inchPipe("1/2", 0.840, 0.004),
	inchPipe("3/4", 1.050, 0.004),
	inchPipe("1", 1.315, 0.005),
	inchPipe("1-1/4", 1.660, 0.005),
	inchPipe("1-1/2", 1.900, 0.006),
	inchPipe("2", 2.375, 0.006),
	inchPipe("2-1/2", 2.875, 0.007),
	inchPipe("3", 3.500, 0.008),
	inchPipe("4", 4.500, 0.009),
}

func inchPipe(nominal string, outside, tolerance float64) Pipe {
	return Pipe{nominal, outside * 25.4, tolerance * 25.4}
}

// NearestPipe is the smallest pipe that is not smaller than a hole of this
// diameter in millimetres, leaving its tolerance aside; not ok when there is none.
func NearestPipe(holeMM float64) (Pipe, bool) {
	for _, p := range Pipes {
		if p.Outside >= holeMM-1e-9 {
			return p, true
		}
	}
	return Pipe{}, false
}
