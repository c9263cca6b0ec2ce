package edit_test

import (
	"math"
	"strings"
	"testing"

	"example.org/castwright/model/design"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/units"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

func names(j design.Job) string {
	var all []string
	for _, o := range j.Options {
		all = append(all, o.Name)
	}
	return strings.Join(all, " ")
}

func TestOptions(t *testing.T) {
	job := design.Job{Options: []design.Option{{Name: "A", Title: "River", Design: counter(t)}}}
	h := edit.NewHistory(job)
	for _, c := range []struct {
		e    edit.JobEdit
		want string
	}{
		{edit.AddOption("Plain", design.Design{Outline: edit.Rectangle(mm(900), mm(500))}), "A B"},
		{edit.DuplicateOption("A"), "A C B"},
		{edit.MoveOption("B", 0), "B A C"},
		{edit.RenameOption("C", "calm"), "B A calm"},
		{edit.RemoveOption("A"), "B calm"},
		{edit.AddOption("", design.Design{}), "B calm A"},
		{edit.MoveOption("B", 2), "calm A B"},
		{edit.RetitleOption("calm", "Calm river"), "calm A B"},
	} {
		if err := h.Do(c.e, 0); err != nil {
			t.Fatalf("%s: %v", c.e.Name, err)
		}
		if got := names(h.Job()); got != c.want {
			t.Fatalf("%s: options %q, want %q", c.e.Name, got, c.want)
		}
	}
	if o, _ := h.Job().Option("calm"); o.Title != "Calm river" || cmp.Diff(job.Options[0].Design, o.Design) != "" {
		t.Errorf("the copy is %q with another design", o.Title)
	}
	for range 8 {
		h.Undo()
	}
	if diff := cmp.Diff(job, h.Job()); diff != "" {
		t.Errorf("all undone (-want +got):\n%s", diff)
	}
}

func TestOptionErrors(t *testing.T) {
	job := design.Job{Options: []design.Option{{Name: "A"}, {Name: "B"}}}
	alone := design.Job{Options: job.Options[:1]}
	good := design.Materials{Mix: design.Mix{BagMass: 25, BagPrice: decimal.RequireFromString("12.50")}}
	broken, dear, fine := good, good, good
	broken.Resin.Density = math.NaN()
	dear.Glass.KgPrice = decimal.New(1, 1_000_000_000)
	fine.Mix.BagPrice = decimal.New(1, -2_000_000_000)
	for _, c := range []struct {
		job  design.Job
		e    edit.JobEdit
		want string
	}{
		{alone, edit.RemoveOption("A"), "needs one option"},
		{job, edit.RemoveOption("C"), `no option "C"`},
		{job, edit.RenameOption("A", "B"), "already"},
		{job, edit.RenameOption("A", "  "), "needs a name"},
		{job, edit.MoveOption("A", 2), "place 3"},
		{job, edit.On("C", edit.Mirror()), `no option "C"`},
		{job, edit.SetMaterials(broken), "resin's density is NaN"},
		{job, edit.SetMaterials(dear), "too many digits"},
		{job, edit.SetMaterials(fine), "too many digits"},
		{job, edit.SetSite(design.Site{DoorWidth: mm(-1)}), "door's width"},
		{job, edit.SetUnits(units.System(7)), "metric or imperial"},
	} {
		if _, err := c.e.Apply(c.job); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one that says %q", c.e.Name, err, c.want)
		}
	}
	if out, err := edit.SetMaterials(good).Apply(job); err != nil || out.Materials.Mix.BagMass != 25 {
		t.Errorf("good materials: %v", err)
	}
}

// A job of many options gets names past Z.
func TestNextOption(t *testing.T) {
	var j design.Job
	for range 27 {
		j.Options = append(j.Options, design.Option{Name: edit.NextOption(j)})
	}
	if got := j.Options[25].Name + " " + j.Options[26].Name; got != "Z A2" {
		t.Errorf("names %q, want Z A2", got)
	}
}

func TestAJobHoldsNoMoreThanAFile(t *testing.T) {
	nodes := make([]design.Node, design.MaxPoints)
	j := design.Job{Options: []design.Option{{Name: "A", Design: design.Design{Outline: design.Outline{Nodes: nodes}}}}}
	var err error
	for range 3 {
		if j, err = edit.DuplicateOption("A").Apply(j); err != nil {
			t.Fatal(err)
		}
	}
	if _, err = edit.DuplicateOption("A").Apply(j); err == nil || !strings.Contains(err.Error(), "80000") {
		t.Errorf("error %v, want one that names the bound", err)
	}
	if _, err = edit.AddOption("", design.Design{}).Apply(j); err != nil {
		t.Errorf("an empty option: %v", err)
	}
}
