package store

import (
	"strconv"

	"example.org/castwright/model/design"
)

func escape(s string) string   { return design.EscapePlace(s) }
func unescape(s string) string { return design.UnescapePlace(s) }

// indexes names the items of a list by their numbers.
func indexes(int) func(int) string { return strconv.Itoa }

// identities names the items of a list by their identity, as long as no other
// has the same, else by their numbers.
func identities(n int, id func(int) string) func(int) string {
	count := make(map[string]int, n)
	for i := range n {
		count[id(i)]++
	}
	return func(i int) string {
		if name := id(i); name != "" && count[name] == 1 {
			return design.PartToken(design.ID(name))
		}
		return strconv.Itoa(i)
	}
}
