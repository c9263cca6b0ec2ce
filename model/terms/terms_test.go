package terms_test

import (
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/terms"
)

// The cautions that a client must have read are all there (the list of the trade's
// questions and quote, common practice, no source).
func TestDefault(t *testing.T) {
	d := design.Design{Sinks: make([]design.Sink, 1), Channels: make([]design.Channel, 1), Glass: make([]design.GlassBed, 1)}
	all := terms.Default(d)
	for text, wants := range map[string][]string{
		all.Included:    {"casting", "holes", "Resin and glass"},
		all.NotIncluded: {"taps", "Cabinet", "Delivery", "Taking out"},
		all.Care:        {"vary", "Hairlines", "hot pans", "seal", "acids", "water stand", "overhead", "licensed", "on edge"},
	} {
		for _, want := range wants {
			if !strings.Contains(text, want) {
				t.Errorf("nothing is said of %q:\n%s", want, text)
			}
		}
	}
	if plain := terms.Default(design.Design{}); strings.Contains(plain.Included+plain.Care, "esin") {
		t.Error("resin is spoken of where there is none")
	}
}

func TestKeptAndFilled(t *testing.T) {
	d := design.Design{Channels: make([]design.Channel, 1)}
	own := terms.Default(d)
	if got := terms.Filled(design.Terms{Care: " \n"}, d); got != own {
		t.Errorf("empty terms are filled with %+v", got)
	}
	if got := terms.Kept(own, d); got != (design.Terms{}) {
		t.Errorf("the program's own words are kept: %+v", got)
	}
	mine := design.Terms{Included: "  All of it \n\n and more"}
	if got := terms.Kept(mine, d); got.Included != "All of it\nand more" {
		t.Errorf("kept %q", got.Included)
	}
	if got := terms.Filled(mine, d); got.Included != "All of it\nand more" || got.Care != own.Care {
		t.Errorf("filled %+v", got)
	}
}
