package store

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"
)

// The grammar of RFC 8259, each line one that a reader might get wrong.
var grammar = []struct {
	text string
	ok   bool
}{
	{`{}`, true}, {`[]`, true}, {` [ 1 , 2 ] `, true}, {`"a\u00e9\n"`, true}, {`"\ud83c\udf00"`, true},
	{`-0.5e+3`, true}, {`0`, true}, {`true`, true}, {`null`, true}, {"\t\r\n 1", true}, {`"\/"`, true},
	{`"` + "\u2028" + `"`, true}, {`{"":0}`, true},
	{``, false}, {`{`, false}, {`[1,]`, false}, {`{"a":1,}`, false}, {`{a:1}`, false}, {`'a'`, false},
	{`01`, false}, {`.5`, false}, {`1.`, false}, {`+1`, false}, {`1e`, false}, {`NaN`, false}, {`Infinity`, false},
	{`-`, false}, {`0x10`, false}, {`1_000`, false}, {`"a`, false}, {"\"a\nb\"", false}, {`"\x"`, false},
	{`"\u12"`, false}, {`"\`, false}, {`tru`, false}, {`truex`, false}, {`1 2`, false}, {`[1 2]`, false},
	{`{"a" 1}`, false}, {`{"a":1 "b":2}`, false}, {`// a`, false}, {"\"\x00\"", false}, {"\"\xff\"", false},
	{`{"a":1,"a":2}`, false}, {`1e400`, false}, {`1e-400`, false},
}

func TestParseKeepsToTheGrammar(t *testing.T) {
	for _, c := range grammar {
		if _, err := parse([]byte(c.text)); (err == nil) != c.ok {
			t.Errorf("%q: error %v, want it read: %v", c.text, err, c.ok)
		}
	}
}

func TestParseIsBounded(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"deep lists", strings.Repeat("[", 1_000_000), "nested more than 64"},
		{"deep objects", strings.Repeat(`{"a":`, 100_000), "nested more than 64"},
		{"many values", "[" + strings.Repeat("0,", 2_100_000) + "0]", "more than 2000000 values"},
		{"a long number", "[" + strings.Repeat("1", 5000) + "]", "more than 400 characters"},
		{"a large file", strings.Repeat(" ", MaxBytes+1), "larger than the 32 MiB"},
	} {
		if _, err := parse([]byte(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one that says %q", c.name, err, c.want)
		}
	}
	if _, err := parse([]byte(strings.Repeat("[", 64) + strings.Repeat("]", 64))); err != nil {
		t.Errorf("64 deep: %v", err)
	}
}

// FuzzParse holds the parser to the standard library's: what this one reads
// that one does too, and what this one refuses has a fault that one does not
// look for.
func FuzzParse(f *testing.F) {
	for _, c := range grammar {
		f.Add([]byte(c.text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		_, err := parse(data)
		valid := json.Valid(data) && utf8.Valid(data)
		if err == nil && !valid {
			t.Fatalf("%q was read and is not JSON", data)
		}
		if err != nil && valid {
			for _, ours := range []string{"stands twice", "nested more than", "values", "characters", "beyond"} {
				if strings.Contains(err.Error(), ours) {
					return
				}
			}
			t.Fatalf("%q is JSON and was refused: %v", data, err)
		}
		if err != nil && (err.Line < 1 || err.Col < 1) {
			t.Fatalf("%q: no place in %#v", data, err)
		}
	})
}
