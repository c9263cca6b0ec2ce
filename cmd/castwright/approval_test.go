//go:build window

package main_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/castwright/model/approve"
	"example.org/castwright/model/store"
)

// makingPicture is how long a test waits for a sheet with its good picture on a busy
// machine.
const makingPicture = 3 * time.Minute

// chipSays reports whether the foot of the window says how the option stands, while
// no dialog is open.
func chipSays(words string) func(state) bool {
	return func(s state) bool {
		for _, c := range s.Controls {
			if strings.HasPrefix(c.Says, "Shows what was approved") && strings.HasPrefix(c.Value, words) {
				return !s.Busy
			}
		}
		return false
	}
}

// cardSays reports whether a card of the strip starts with words.
func cardSays(words string) func(state) bool {
	return func(s state) bool {
		_, ok := spotOf(s.Controls, words)
		return ok
	}
}

// TestApproval goes the way of an approval by mouse and keyboard: the sheet with a
// price, the mark, a change, the way back, and the sheet of the revision again. The
// sheets are read by poppler and qpdf.
func TestApproval(t *testing.T) {
	for _, tool := range []string{"pdftotext", "pdffonts", "qpdf"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("%s is not here", tool)
		}
	}
	d := startDisplay(t, screenW, screenH)
	home := t.TempDir()
	text, err := os.ReadFile("../../assets/demo/clay-room-wash-counter.json")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(home, "wash-counter.json")
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	m := newMaker(t, start(t, d, home, path), d.hand(t))
	m.wait("the job is open, not approved", func(s state) bool { return s.Path == path && chipSays("Not approved yet")(s) })

	// The sheet, with a price.
	m.press("ctrl+p", "the sheet's dialog", func(s state) bool { return s.Busy })
	m.typeInto("What the client pays", "1450.50")
	d.shootStill(t, "approval-1-sheet")
	sheet := filepath.Join(home, "sheet.pdf")
	m.pick("Asks for the file's name", "the window asks where to", cardSays("A name in this folder"))
	m.writeTo(sheet)
	words := m.readPDF(sheet)
	for _, want := range []string{"For approval revision 1", "1450.50"} { // commas aside
		if !strings.Contains(strings.ReplaceAll(words, ",", ""), want) {
			t.Errorf("the sheet lacks %q:\n%s", want, words)
		}
	}

	// Marked, by a name.
	m.press("ctrl+shift+a", "the mark's dialog", cardSays("Who agreed"))
	m.key("ctrl+a")
	m.count("value by Return")
	m.write("M. Clay, at the studio")
	d.shootStill(t, "approval-2-mark")
	m.key("Return")
	m.wait("the chip says so", chipSays("Approved, revision 1"))
	m.wait("the card says so", cardSays("Approved, revision 1. Option A is in hand."))
	d.shootStill(t, "approval-3-approved")

	// Changed, and what has changed in words.
	m.press("ctrl+m", "the top is mirrored", chipSays("Changed since revision 1: "))
	m.wait("the card says so", cardSays("Changed since revision 1. Option A is in hand."))
	m.press("ctrl+alt+a", "what was approved is shown", cardSays("Option A becomes what was approved"))
	d.shootStill(t, "approval-4-changed")
	m.pick("Option A becomes what was approved", "it is back", chipSays("Approved, revision 1"))

	// The sheet of the revision, from the dialog that shows it.
	m.press("ctrl+alt+a", "what was approved is shown", cardSays("Makes the sheet of revision 1 again"))
	again := filepath.Join(home, "again.pdf")
	m.pick("Makes the sheet of revision 1 again", "the window asks where to", cardSays("A name in this folder"))
	m.writeTo(again)
	m.press("ctrl+s", "the job is saved", func(s state) bool { return !s.Dirty && !s.Busy })

	j, err := store.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if len(j.Approvals) != 1 || len(j.Options) != 3 {
		t.Fatalf("the file has %d approvals and %d options", len(j.Approvals), len(j.Options))
	}
	a := j.Approvals[0]
	if a.By != "M. Clay, at the studio" || a.Price.Amount.String() != "1450.5" || approve.Of(j, "A").State != approve.Agreed {
		t.Errorf("the file keeps %q, %s, %v", a.By, a.Price.Amount, approve.Of(j, "A").State)
	}
	for name, words := range map[string]string{"sheet": words, "sheet of the revision": m.readPDF(again)} {
		if !strings.Contains(words, a.Fingerprint) {
			t.Errorf("the %s does not say the fingerprint %s:\n%s", name, a.Fingerprint, words)
		}
	}
	if got := m.readPDF(again); !strings.Contains(got, "evision 1") {
		t.Errorf("the sheet of the revision does not say which:\n%s", got)
	}
}

// typeInto clicks an entry of the card that is open and types into it.
func (m *maker) typeInto(says, text string) {
	m.t.Helper()
	m.pick(says, "the entry has the keyboard", func(s state) bool { return s.Busy })
	m.key("ctrl+a")
	m.count("value %q Tab", text)
	m.write(text)
	m.key("Tab")
}

// writeTo types a path into the dialog that asks for it, and waits until the file is
// written and said to be.
func (m *maker) writeTo(path string) {
	m.t.Helper()
	m.key("ctrl+a")
	m.count("value %s Return", path)
	m.write(path)
	m.key("Return")
	for end := time.Now().Add(makingPicture); ; time.Sleep(200 * time.Millisecond) {
		if _, err := os.Stat(path); err == nil {
			break
		}
		if time.Now().After(end) {
			m.t.Fatalf("%s is not written", path)
		}
	}
	m.wait("it is said that the file is written", func(s state) bool { return s.Busy && len(s.Controls) == 1 && s.Controls[0].Value == "Close" })
	m.press("Return", "the window is free", func(s state) bool { return !s.Busy })
}

// readPDF is the words of a PDF, which must be sound, with all of its fonts embedded.
func (m *maker) readPDF(path string) string {
	m.t.Helper()
	if out, err := exec.Command("qpdf", "--check", path).CombinedOutput(); err != nil {
		m.t.Errorf("qpdf: %v\n%s", err, out)
	}
	fonts, err := exec.Command("pdffonts", path).Output()
	if err != nil {
		m.t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(fonts)), "\n")[2:] {
		if !regexp.MustCompile(`\byes +(yes|no) +yes\b`).MatchString(line) {
			m.t.Errorf("a font is not embedded: %s", line)
		}
	}
	out, err := exec.Command("pdftotext", "-layout", path, "-").Output()
	if err != nil {
		m.t.Fatal(err)
	}
	return string(out)
}
