package main

import (
	"os"
	"strings"
	"testing"
)

// The packaging file and the program must not disagree about the version.
func TestVersionIsThatOfThePackage(t *testing.T) {
	text, err := os.ReadFile("../../FyneApp.toml")
	if err != nil {
		t.Fatal(err)
	}
	if want := `Version = "` + version + `"`; !strings.Contains(string(text), want) {
		t.Errorf("FyneApp.toml lacks %s", want)
	}
}
