package approval_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/castwright/export/approval"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/draw"
	"golang.org/x/text/unicode/norm"
)

// What the fonts have no letters for is said before the sheet is made; what they have,
// in any direction, is not.
func TestUnseen(t *testing.T) {
	j := demo(t)
	o := approval.Order{Job: j, Option: "A"}
	if words := o.Unseen(); words != "" {
		t.Errorf("the demo: %s", words)
	}
	o.Job.Client = "Ζωή Žofie محمد שלום Ünal ½"
	o.Head = draw.Letterhead{Lines: []string{"Kiln Lane", "Łódź"}}
	if words := o.Unseen(); words != "" {
		t.Errorf("letters that are there: %s", words)
	}
	o.Job.Client = "陶芸家 田中 陶"
	o.Head.Lines = []string{"लिपि"}
	words := o.Unseen()
	if !strings.HasPrefix(words, "The client's name and the letterhead: the sheet has no letters for 陶 芸 家 田 中 ल and ") || !strings.Contains(words, "□") {
		t.Errorf("it is said: %q", words)
	}
}

// A frozen revision is printed with the words of its day.
func TestUnseenOfRevision(t *testing.T) {
	j := demo(t)
	j.Client, j.Options[0].Title = "田中", "中"
	j, err := approve.Approve("A", approve.Deal{Date: "2026-11-26", By: "लिपि"}).Apply(j)
	if err != nil {
		t.Fatal(err)
	}
	j.Client, j.Options[0].Title = "Tanaka", "Counter"
	if words := (approval.Order{Job: j, Option: "A"}).Unseen(); words != "" {
		t.Errorf("the option as it is: %s", words)
	}
	words := approval.Order{Job: j, Revision: 1}.Unseen()
	if !strings.HasPrefix(words, "The client's name, the option's title and the name of who agreed: the sheet has no letters for 田 中 ल") {
		t.Errorf("it is said: %q", words)
	}
}

// A client's name in Arabic and one in Hebrew are read by poppler as they were typed,
// letter by letter in the order of reading.
func TestRightToLeft(t *testing.T) {
	j := demo(t)
	for _, name := range []string{"محمد الفخاري", "שלום כהן"} {
		j.Client = name
		path := filepath.Join(t.TempDir(), "sheet.pdf")
		if err := os.WriteFile(path, pdf(t, approval.Order{Job: j, Option: "A"}), 0o600); err != nil {
			t.Fatal(err)
		}
		// Poppler gives the shapes of the letters; their compatibility decomposition is
		// the letters (Unicode Standard Annex 15).
		words := norm.NFKC.String(tool(t, "pdftotext", path, "-"))
		if !strings.Contains(words, name) {
			t.Errorf("%q is not in the sheet:\n%+q", name, words[:min(len(words), 300)])
		}
		// What reads the file's title orders and joins it itself.
		if info := tool(t, "pdfinfo", path); !strings.Contains(info, "Approval, "+name) {
			t.Errorf("%q is not the title:\n%s", name, info)
		}
	}
}
