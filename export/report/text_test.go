package report_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	sheet "example.org/castwright/export/report"
	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/units"
)

var update = flag.Bool("update", false, "write the golden files anew; look at them before a commit")

// golden compares with a file that a person has read.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

func text(t *testing.T, j design.Job, o design.Option, r report.Report) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.Text(&b, j, o, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestTextGolden(t *testing.T) {
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		j, o, r := sample(sys)
		golden(t, sys.String()+".txt", text(t, j, o, r))
	}
}

// checkLines looks for lines that do not fit on the paper or steer a terminal.
func checkLines(t *testing.T, b []byte) {
	t.Helper()
	if !utf8.Valid(b) {
		t.Error("the text is not UTF-8")
	}
	for _, line := range strings.Split(string(b), "\n") {
		if n := utf8.RuneCountInString(line); n > 78 {
			t.Errorf("a line of %d characters: %s", n, line)
		}
		if i := strings.IndexFunc(line, unicode.IsControl); i >= 0 {
			t.Errorf("a control character in %q", line)
		}
	}
}

func TestTextFits(t *testing.T) {
	for _, sys := range []units.System{units.Metric, units.Imperial} {
		j, o, r := sample(sys)
		j.Client = strings.Repeat("Μεγάλη αυλή\x1b[2J\n", 20) + "\xff 陶芸 🏺"
		o.Title = strings.Repeat("long and longer ", 20)
		j.Materials.Mix.Name = strings.Repeat("mix ", 60)
		j.Materials.Currency = "Kč\t"
		checkLines(t, text(t, j, o, r))
	}
}

// TestTextEmpty: the report of nothing is a report.
func TestTextEmpty(t *testing.T) {
	o := design.Option{}
	r := report.Derive(o.Design, design.Materials{}, design.Site{})
	checkLines(t, text(t, design.Job{}, o, r))
}

// TestTextCautions: a hazard is named where it is, and only there.
func TestTextCautions(t *testing.T) {
	j, o, r := sample(units.Metric)
	with := string(text(t, j, o, r))
	j2, o2, _ := sample(units.Metric)
	o2.Design.Sinks, o2.Design.Taps, o2.Design.Channels = nil, nil, nil
	without := string(text(t, j2, o2, report.Derive(design.Design{}, j2.Materials, j2.Site)))
	for _, word := range []string{"Silica:", "Alkali:", "local code"} {
		if !strings.Contains(flat(with), word) || !strings.Contains(flat(without), word) {
			t.Errorf("%s is not in both", word)
		}
	}
	for _, word := range []string{"Resin:", "Torch:", "Lifting:", "Plumbing:"} {
		if !strings.Contains(flat(with), word) {
			t.Errorf("%s is missing", word)
		}
		if strings.Contains(flat(without), word) {
			t.Errorf("%s does not apply", word)
		}
	}
}

// flat undoes the breaking of lines.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// TestCheckHoldsAll: the short form holds each fault and warning of the long one.
func TestCheckHoldsAll(t *testing.T) {
	j, o, r := sample(units.Imperial)
	var b bytes.Buffer
	if err := sheet.Check(&b, j, o, r); err != nil {
		t.Fatal(err)
	}
	checkLines(t, b.Bytes())
	got := flat(b.String())
	for _, w := range r.Warnings {
		for _, want := range []string{w.Title, w.Advice, w.Source, string(w.Code)} {
			if !strings.Contains(got, want) {
				t.Errorf("%q is missing", want)
			}
		}
	}
	if !strings.Contains(got, r.Faults[0].Error()) {
		t.Error("the fault is missing")
	}
	if long := flat(string(text(t, j, o, r))); len(got) >= len(long) {
		t.Error("the short form is no shorter")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// TestWriteError: a full disk is told.
func TestWriteError(t *testing.T) {
	j, o, r := sample(units.Metric)
	if sheet.Text(full{}, j, o, r) == nil || sheet.JSON(full{}, j, o, r) == nil ||
		sheet.Check(full{}, j, o, r) == nil {
		t.Error("a failed write was not told")
	}
}
