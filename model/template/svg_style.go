package template

import "strings"

// Bounds on a style sheet.
const (
	maxSheet = 1 << 20
	maxRules = 5_000
)

// sheet is the rules of a drawing's <style> elements that choose by an element's
// name, class or id alone; others are passed over. A later rule goes before an
// earlier one of the same weight.
type sheet struct {
	rules map[string][]rule // by "name", ".class" or "#id"; "*" for all
	count int
}

type rule struct {
	name       string // of the element that it is for, "" for any
	weight     int    // 1 for a name, 10 for a class, 100 for an id
	properties map[string]string
}

// read adds the rules of a style sheet.
func (s *sheet) read(text string) {
	if s.rules == nil {
		s.rules = map[string][]rule{}
	}
	for text = withoutComments(text); text != ""; {
		heads, rest, ok := strings.Cut(text, "{")
		if !ok {
			return
		}
		body, after, ok := strings.Cut(rest, "}")
		if !ok {
			return
		}
		text = after
		if strings.Contains(heads, "@") { // its braces nest: not for us
			continue
		}
		properties := declarations(body)
		for _, head := range strings.Split(heads, ",") {
			s.add(strings.TrimSpace(head), properties)
		}
	}
}

func (s *sheet) add(head string, properties map[string]string) {
	if head == "" || strings.ContainsAny(head, " \t\r\n>+~:[") || s.count >= maxRules {
		return
	}
	s.count++
	i := strings.IndexAny(head, ".#")
	switch {
	case i < 0 && head == "*":
		s.rules["*"] = append(s.rules["*"], rule{"", 0, properties})
	case i < 0:
		s.rules[head] = append(s.rules[head], rule{"", 1, properties})
	case strings.ContainsAny(head[i+1:], ".#"):
		// Several classes at once are rare in drawings.
	default:
		weight, name := 10, strings.TrimPrefix(head[:i], "*")
		if head[i] == '#' {
			weight = 100
		}
		if name != "" {
			weight++
		}
		s.rules[head[i:]] = append(s.rules[head[i:]], rule{name, weight, properties})
	}
}

// apply gives an element the properties that the sheet has for it.
func (s *sheet) apply(e *element) {
	if s.count == 0 {
		return
	}
	weights := map[string]int{}
	take := func(key string) {
		for _, r := range s.rules[key] {
			if r.name != "" && r.name != e.name {
				continue
			}
			for k, v := range r.properties {
				if w, has := weights[k]; has && w > r.weight {
					continue
				}
				if e.sheet == nil {
					e.sheet = map[string]string{}
				}
				e.sheet[k], weights[k] = v, r.weight
			}
		}
	}
	take("*")
	take(e.name)
	for i, class := range strings.Fields(e.attrs["class"]) {
		if i == 32 {
			break
		}
		take("." + class)
	}
	if id := e.attrs["id"]; id != "" {
		take("#" + id)
	}
}

func withoutComments(text string) string {
	var b strings.Builder
	for {
		before, rest, ok := strings.Cut(text, "/*")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		if _, text, ok = strings.Cut(rest, "*/"); !ok {
			return b.String()
		}
	}
}

// declarations reads "name: value; name: value".
func declarations(text string) map[string]string {
	out := map[string]string{}
	for item := range strings.SplitSeq(text, ";") {
		if k, v, ok := strings.Cut(item, ":"); ok {
			v = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(v), "!important"))
			if keyword := strings.ToLower(v); keyword == "none" || keyword == "hidden" {
				v = keyword
			}
			out[strings.ToLower(strings.TrimSpace(k))] = v
		}
	}
	return out
}

// style is a property from the style attribute, the style sheet or the attribute
// of its name, in this order.
func (e *element) style(name string) string {
	if text := e.attrs["style"]; text != "" && e.inline == nil {
		e.inline = declarations(text)
	}
	if v, has := e.inline[name]; has {
		return v
	}
	if v, has := e.sheet[name]; has {
		return v
	}
	return strings.TrimSpace(e.attrs[name])
}

// transform is an element's transform list.
func (e *element) transform() string {
	t := e.style("transform")
	if t == "none" {
		return ""
	}
	return t
}
