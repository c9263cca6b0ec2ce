package approve_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/material"
	"example.org/castwright/model/store"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

func job() design.Job {
	return design.Job{
		Client: "Clay room", Materials: material.Defaults(),
		Options: []design.Option{{
			Name: "A", Title: "Plain", Price: design.Price{Amount: decimal.New(125000, -2), Note: "fitted"},
			Design: design.Design{
				Outline:   edit.Rectangle(1500*units.Millimetre, 550*units.Millimetre),
				Thickness: 40 * units.Millimetre,
				Finish:    design.Finish{Polish: 2},
			},
		}},
	}
}

func do(t *testing.T, j design.Job, edits ...edit.JobEdit) design.Job {
	t.Helper()
	for _, e := range edits {
		var err error
		if j, err = e.Apply(j); err != nil {
			t.Fatalf("%s: %v", e.Name, err)
		}
	}
	return j
}

var agreed = approve.Deal{Date: "2026-11-26", By: "The client", Price: true}

// The form is Crockford's base 32 in fours: sixteen letters, none of I, L, O, U.
func TestFingerprint(t *testing.T) {
	d := job().Options[0].Design
	form := regexp.MustCompile(`^([0-9A-HJKMNP-TV-Z]{4}-){3}[0-9A-HJKMNP-TV-Z]{4}$`)
	one := approve.Fingerprint(d)
	if !form.MatchString(one) {
		t.Fatalf("fingerprint %q is not sixteen letters in fours", one)
	}
	d.Thickness += 1 // a nanometre
	if two := approve.Fingerprint(d); two == one || !form.MatchString(two) {
		t.Errorf("a nanometre more gives %q, before it was %q", two, one)
	}
}

// A known answer made outside the program: Python 3's hashlib over the canonical
// text, and base 32 of RFC 4648 with its letters put in Crockford's order:
//
//	import hashlib, base64
//	t = '{"finish":{"colour":"#000000","exposure":"cream","grind_mm":0,"polish":2},"outline":{"nodes":[]},"thickness_mm":40}'
//	base64.b32encode(hashlib.sha256(t.encode()).digest()[:10])
func TestFingerprintFromOutside(t *testing.T) {
	d := design.Design{Thickness: 40 * units.Millimetre, Finish: design.Finish{Polish: 2}}
	if got, want := approve.Fingerprint(d), "36HG-BSRW-28B9-W1T7"; got != want {
		t.Errorf("fingerprint %s, want %s of\n%s", got, want, store.EncodeDesign(d))
	}
}

// The client agrees to the design, not to the photograph that it was shown in: a room
// changes neither fingerprint nor standing.
func TestRoomIsNoPartOfWhatWasAgreed(t *testing.T) {
	j := do(t, job(), approve.Approve("A", agreed))
	seen := do(t, j, edit.SetRoom(design.Room{Photo: "a.room.jpg", SHA256: strings.Repeat("0a", 32),
		Width: 1500 * units.Millimetre, Depth: 550 * units.Millimetre}))
	again, err := store.Decode(store.Encode(seen))
	if err != nil || again.Room != seen.Room || again.Room.None() {
		t.Fatal(again.Room, err)
	}
	if s := approve.Of(again, "A"); s.State != approve.Agreed || approve.Fingerprint(again.Options[0].Design) != j.Approvals[0].Fingerprint {
		t.Errorf("with a room: %q", s.Words())
	}
	if f := approve.Check(again); len(f) > 0 {
		t.Error(f)
	}
}

func TestApprove(t *testing.T) {
	j := job()
	if s := approve.Of(j, "A"); s.State != approve.Never || s.Words() != "Not approved yet" {
		t.Errorf("before: %q", s.Words())
	}
	j = do(t, j, approve.Approve("A", agreed))
	a := j.Approvals[0]
	if a.Revision != 1 || a.Price.Note != "fitted" || a.Fingerprint != approve.Fingerprint(j.Options[0].Design) {
		t.Errorf("revision %d, price %v, fingerprint %s", a.Revision, a.Price, a.Fingerprint)
	}
	if s := approve.Of(j, "A"); s.State != approve.Agreed {
		t.Errorf("after: %q", s.Words())
	}

	// An edit changes the option, not what was agreed.
	later := do(t, j, edit.On("A", edit.Resize(1600*units.Millimetre, 550*units.Millimetre)))
	if diff := cmp.Diff(j.Approvals, later.Approvals); diff != "" {
		t.Errorf("an edit changed the revision (-want +got):\n%s", diff)
	}
	s := approve.Of(later, "A")
	if s.State != approve.Changed {
		t.Fatalf("after an edit: %q", s.Words())
	}
	since := s.Since(later, "A")
	if n := since.Numbers; len(n) == 0 || n[0].Key != "width_mm" || n[0].A != 1500 || n[0].B != 1600 {
		t.Errorf("since: %v", n)
	}
	made, numbers := since.Lines(units.Metric, "€")
	if diff := cmp.Diff([]string{"Top 1600 mm × 550 mm, was 1500 mm × 550 mm"}, made); diff != "" || since.Count() != 1 {
		t.Error(diff)
	}
	if len(numbers) == 0 || !strings.HasPrefix(numbers[0], "Area in plan 0.880 m², was 0.825 m² (+0.055 m²)") {
		t.Errorf("numbers: %q", numbers)
	}
	if len(approve.Check(later)) > 0 {
		t.Errorf("faults: %v", approve.Check(later))
	}

	// Back to it: what it had become stays as another option.
	back := do(t, later, approve.Restore(1))
	if approve.Of(back, "A").State != approve.Agreed || len(back.Options) != 2 ||
		back.Options[1].Design.Outline.Nodes[1].At.X != 1600*units.Millimetre {
		t.Errorf("brought back: %q, %d options", approve.Of(back, "A").Words(), len(back.Options))
	}

	// A second revision, then withdrawn: the first holds again.
	j = do(t, later, approve.Approve("A", agreed), approve.Withdraw(2, "2026-11-27"))
	if a, ok := approve.Latest(j, "A"); !ok || a.Revision != 1 || approve.Next(j) != 3 || len(j.Approvals) != 2 {
		t.Errorf("latest is %d, next %d of %d", a.Revision, approve.Next(j), len(j.Approvals))
	}
	if _, err := approve.Withdraw(2, "2026-11-28").Apply(j); err == nil {
		t.Error("withdrawn twice")
	}
}

// What the client was told beside the design is frozen and watched too.
func TestPriceAndTerms(t *testing.T) {
	j := do(t, job(), approve.Approve("A", agreed))
	if a := j.Approvals[0]; a.Client != "Clay room" || a.Terms.Care == "" || a.Terms.Included == "" {
		t.Errorf("frozen: %q, %+v", a.Client, a.Terms)
	}
	j = do(t, j, edit.SetPrice("A", design.Price{Amount: decimal.New(1400, 0)}), edit.SetTerms(design.Terms{Care: "Wipe it."}))
	s := approve.Of(j, "A")
	if s.State != approve.Agreed || s.Words() != "Approved, revision 1; the price has changed since" {
		t.Errorf("%q", s.Words())
	}
	made, _ := s.Since(j, "A").Lines(units.Metric, "€")
	want := []string{"Price " + j.Materials.Currency + "1400.00, was " + j.Materials.Currency + "1250.00",
		"What is included, or the words on care, changed"}
	if diff := cmp.Diff(want, made); diff != "" {
		t.Error(diff)
	}
}

// The text of a revision in the file stays as it is, byte for byte, through reading,
// edits and writing, with members that this version does not know.
func TestFrozenText(t *testing.T) {
	j := do(t, job(), approve.Approve("A", agreed))
	text := strings.Replace(string(store.Encode(j)), `"revision": 1,`, `"revision": 1, "seal": {"wax": true},`, 1)
	j, err := store.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	frozen := func(j design.Job) string {
		var file struct {
			Approvals json.RawMessage `json:"approvals"`
		}
		if err := json.Unmarshal(store.Encode(j), &file); err != nil {
			t.Fatal(err)
		}
		return string(file.Approvals)
	}
	before := frozen(j)
	if !strings.Contains(before, "wax") {
		t.Errorf("a member is lost:\n%s", before)
	}
	j = do(t, j, edit.On("A", edit.SetThickness(60*units.Millimetre)), edit.SetUnits(units.Imperial),
		edit.SetMaterials(design.Materials{Currency: "$"}), edit.SetClient("Another"), edit.DuplicateOption("A"),
		edit.SetPrice("A", design.Price{Amount: decimal.New(1, 0)}), edit.SetTerms(design.Terms{Care: "Wipe it."}),
		edit.RemoveOption("A"))
	if j, err = store.Decode(store.Encode(j)); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(before, frozen(j)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if faults := approve.Check(j); len(faults) > 0 {
		t.Error(faults)
	}
}

func TestApproveRefuses(t *testing.T) {
	bad := job()
	bad.Options[0].Design.Thickness = 0
	for _, c := range []struct {
		name string
		job  design.Job
		edit edit.JobEdit
		want string
	}{
		{"no such option", job(), approve.Approve("Z", agreed), `"Z"`},
		{"a day that is none", job(), approve.Approve("A", approve.Deal{Date: "2026-02-30"}), "2026-02-30"},
		{"a design with faults", bad, approve.Approve("A", agreed), "thickness"},
		{"no such revision", job(), approve.Withdraw(4, "2026-11-26"), "revision 4"},
		{"nothing to bring back", job(), approve.Restore(4), "revision 4"},
		{"again, with nothing new", do(t, job(), approve.Approve("A", agreed)), approve.Approve("A", agreed), "already"},
		{"another name", do(t, job(), approve.Approve("A", agreed)), edit.RenameOption("A", "Low"), "revision 1"},
	} {
		if _, err := c.edit.Apply(c.job); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want it to name %s", c.name, err, c.want)
		}
	}
}

// What was agreed comes through the file; a design changed in the file shows.
func TestApprovalInTheFile(t *testing.T) {
	j := do(t, job(), approve.Approve("A", agreed))
	text := store.Encode(j)
	got, err := store.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	if faults := approve.Check(got); len(faults) > 0 || got.Approvals[0].Fingerprint != j.Approvals[0].Fingerprint {
		t.Errorf("read back: %v", faults)
	}
	i := strings.LastIndex(string(text), `"thickness_mm": 40`)
	forged := string(text[:i]) + `"thickness_mm": 30` + string(text[i+len(`"thickness_mm": 40`):])
	got, err = store.Decode([]byte(forged))
	if err != nil {
		t.Fatal(err)
	}
	if faults := approve.Check(got); len(faults) != 1 || !strings.Contains(faults[0].Error(), "revision 1") {
		t.Errorf("a design changed in the file: %v", faults)
	}
	if s := approve.Of(got, "A"); s.State != approve.Tampered {
		t.Errorf("a design changed in the file: %q", s.Words())
	}
}
