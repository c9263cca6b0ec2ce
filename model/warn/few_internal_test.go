package warn

import "testing"

// Of each code the worst are told, and the last one says how many more there are.
func TestFew(t *testing.T) {
	var found []Warning
	for range 120 {
		found = append(found, Warning{Code: "a", Advice: "Mend it."}, Warning{Code: "b"})
	}
	found = append(found, Warning{Code: "c", Advice: "Alone."})
	got := few(found)
	n := map[Code]int{}
	last := map[Code]Warning{}
	for _, w := range got {
		n[w.Code]++
		last[w.Code] = w
	}
	if n["a"] != mostOfACode || n["b"] != mostOfACode || n["c"] != 1 {
		t.Errorf("told %v", n)
	}
	if last["a"].Advice != "Mend it. It is so at 70 more places." || last["c"].Advice != "Alone." {
		t.Errorf("%q, %q", last["a"].Advice, last["c"].Advice)
	}
	if got := few(nil); len(got) != 0 {
		t.Errorf("of none: %v", got)
	}
}
