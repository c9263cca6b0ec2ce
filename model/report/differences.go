package report

// Difference is one thing in which two reports differ.
type Difference struct {
	Key   string // stable, as in the JSON report
	Label string // plain words: "Weight, dry"
	// A and B are the values in Unit, for a difference in numbers.
	A, B float64
	Unit string
	// WordsA and WordsB are the values of a difference in words; "" when it is
	// one in numbers.
	WordsA, WordsB string
}

// Differences lists what differs from a to b, as the client asks for it.
func Differences(a, b Report) []Difference {
	return nil
}
