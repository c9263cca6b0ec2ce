package store

// The words of the file, in the order of the design's constants.
var (
	systemWords   = []string{"metric", "imperial"}
	cornerWords   = []string{"square", "rounded", "chamfered"}
	curveWords    = []string{"straight", "arc", "spline"}
	sideWords     = []string{"seen", "wall"}
	profileWords  = []string{"square", "eased", "rounded", "bevelled", "half round", "full round", "rough"}
	shapeWords    = []string{"rectangle", "ellipse", "circle", "D", "path"}
	mountWords    = []string{"under", "over", "vessel"}
	revealWords   = []string{"flush", "rim shows", "concrete overhangs"}
	patternWords  = []string{"single", "three at 4 in", "three at 8 in", "own"}
	holeWords     = []string{"drain", "soap", "cable", "other"}
	endWords      = []string{"round", "flat", "open"}
	exposureWords = []string{"cream", "fine", "coarse"}
	supportWords  = []string{"wall", "gable", "rail", "bracket", "leg"}

	relationWords  = []string{"centred on top", "centred between", "in line", "distance", "on edge", "along bank"}
	bankWords      = []string{"both", "left", "right"}
	axisWords      = []string{"x", "y"}
	topSideWords   = []string{"left", "right", "front", "back"}
	riverSideWords = []string{"start", "end"}

	markedWords = []string{"present top", "sheet of paper"}
	lightWords  = []string{"as seen", "left", "right", "front", "above"}
)
