package approval

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"example.org/castwright/export/approval"
	"example.org/castwright/export/letterhead"
	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/edit"
	"example.org/castwright/model/terms"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/files"
	"example.org/castwright/ui/keys"
	"example.org/castwright/ui/panel"
	look "example.org/castwright/ui/theme"
	"fyne.io/fyne/v2/container"
)

// sheetWidth is the width of a sheet as PNG, in pixels: A4 at 200 to the inch.
const sheetWidth = 1654

// MakeSheet asks what the sheet of the option in hand is to say, and makes it.
func (d *Desk) MakeSheet() {
	o := d.s.Option()
	if faults := d.s.Report().Faults; len(faults) > 0 {
		control.Warn(d.frame, "There is nothing to approve yet", fmt.Errorf("option %s can't be cast as drawn: %s", o.Name, faults[0]))
		return
	}
	j := d.s.Job()
	said := terms.Filled(j.Terms, o.Design)
	included := d.text("What the price covers, a line for each thing; with none the program's own words stand.", said.Included, 4)
	not := d.text("What it does not cover, a line for each thing; with none the program's own words stand.", said.NotIncluded, 4)
	care := d.text("Care and cautions, a line for each; with none the program's own words stand.", said.Care, 9)
	price := o.Price.Amount
	shown := ""
	if !price.IsZero() {
		shown = amount.Money("", price)
	}
	money := d.line("What the client pays, in "+orElse(j.Materials.Currency, "your money")+"; nothing when it is not set yet.", shown)
	bad := fault()
	order := approval.Order{Option: o.Name, Date: d.today(), Quality: d.quality, Price: !price.IsZero()}
	show := control.NewCheck(d.frame, "Show the price on the sheet", "Without it the sheet says that no price is stated.",
		func(on bool) { order.Price = on })
	show.SetTicked(order.Price)
	money.Commit = func(text string) error {
		p, err := panel.ReadPrice(text, "Price")
		if err != nil {
			return err
		}
		if price.IsZero() && !p.IsZero() { // whoever sets a price means it to be seen
			order.Price = true
			show.SetTicked(true)
		}
		price = p
		return nil
	}
	money.OnFault = func(err error) {
		bad.SetText("")
		if err != nil {
			bad.SetText(control.Sentence(err.Error()))
		}
	}
	note := d.line("Words beside the price, such as: with tax, fitted.", o.Price.Note)
	head := control.NewText("").Cut()
	d.nameHead(head)
	letters := control.NewButton(d.frame, control.Face{Text: "Change…", Kind: control.Raised, Hint: keys.Hint(keys.Letterhead)},
		func() { d.EditLetterhead(func() { d.nameHead(head) }) })
	own := control.NewButton(d.frame, control.Face{Text: "Program's own words", Kind: control.Raised,
		Hint: "Puts the program's own words in place of all three texts."}, func() {
		words := terms.Default(o.Design)
		included.SetText(words.Included)
		not.SetText(words.NotIncluded)
		care.SetText(words.Care)
	})

	var kind fileKind
	pictures := label("Picture", d.pictureChoice(&order.Pictures, j.Room.None()).Container)
	left := control.Column(look.Space,
		section("The sheet"),
		label("Option", control.Middle(control.NewText(nameOf(o)).Cut())),
		label("Paper", d.paperChoice(&order.Paper).Container),
		label("File", d.kindChoice(&kind).Container),
		pictures,
		label("Letterhead", container.NewBorder(nil, nil, nil, letters, control.Middle(head))),
		section("Price"),
		label("Amount", money), label("Words", note), show,
		control.Pad(look.Space, 0, control.SmallLines("Making the sheet freezes nothing. Once it is signed: Options, Mark as approved.")),
		bad)
	if n := d.severe(); n > 0 {
		left.Add(standing(n))
	}
	right := control.Column(look.Space, section("Included"), included, section("Not included"), not,
		section("Care and cautions"), care, control.Row(0, own))
	body := container.New(columns{0.42}, control.Pad(0, look.Space, left),
		container.NewVScroll(control.Pad(0, look.Space, right)))

	told := "" // what was said of characters that can't be printed
	unseen := func(said design.Terms) bool {
		with := order
		with.Job = d.s.Job()
		with.Job.Terms = said
		with.Head, _ = d.head() // a letterhead that can't be read is told later
		words := with.Unseen()
		if words == "" || words == told {
			return false
		}
		told = words
		bad.SetText(words + " Pressing again makes the sheet all the same.")
		return true
	}
	unseen(j.Terms)
	told = "" // it is said again when the sheet is to be made
	take := func() bool {
		for _, e := range []*control.Entry{money, note, included, not, care} {
			e.Settle()
			if e.Fault() != nil {
				d.frame.Window.Canvas().Focus(e)
				return false
			}
		}
		words := terms.Kept(design.Terms{Included: included.Text, NotIncluded: not.Text, Care: care.Text}, o.Design)
		if unseen(words) {
			return false
		}
		if err := d.keep(o, words, design.Price{Amount: price, Note: strings.TrimSpace(note.Text)}); err != nil {
			bad.SetText(control.Sentence(err.Error()))
			return false
		}
		d.setPaper(order.Paper)
		return true
	}
	control.NewDialog(d.frame, "Approval sheet", body, control.Cancel(),
		control.Answer{Text: "Make the sheet…", Kind: control.Primary, Enter: true, Hint: "Asks for the file's name.", Do: take,
			Then: func() {
				order.Job = d.s.Job()
				d.writeSheet(order, kind, "-approval")
			}}).Sized(900, 640).Show()
}

// pictureChoice is which pictures the sheet shows; those in the room only where the job
// has one.
func (d *Desk) pictureChoice(which *approval.Pictures, noRoom bool) *control.Segments {
	kinds := []approval.Pictures{approval.Studio, approval.InRoom, approval.Both, approval.None}
	faces := []control.Face{
		{Text: "Studio", Hint: "The top by itself, photo-like."},
		{Text: "Room", Hint: "The top set into the photograph of the client's room."},
		{Text: "Both", Hint: "The top by itself, and beside it in the client's room."},
		{Text: "None", Hint: "The drawing alone, as large as the page allows."},
	}
	if noRoom {
		kinds, faces = []approval.Pictures{approval.Studio, approval.None}, []control.Face{faces[0], faces[3]}
		faces[0].Hint += " The job holds no photograph of the room to set it into."
	}
	var s *control.Segments
	s = control.NewSegments(d.frame, faces, func(i int) {
		*which = kinds[i]
		s.SetPicked(i)
	})
	s.SetPicked(slices.Index(kinds, *which))
	return s
}

// keep takes what was typed into the job, as one step of undo, if it is new.
func (d *Desk) keep(o design.Option, words design.Terms, price design.Price) error {
	var steps []edit.JobEdit
	if words != d.s.Job().Terms {
		steps = append(steps, edit.SetTerms(words))
	}
	if !price.Amount.Equal(o.Price.Amount) || price.Note != o.Price.Note {
		steps = append(steps, edit.SetPrice(o.Name, price))
	}
	if len(steps) == 0 {
		return nil
	}
	return d.s.DoJob(together("Change the sheet's words", steps...))
}

// writeSheet asks for the file's name, makes the sheet in the background and writes
// it.
func (d *Desk) writeSheet(order approval.Order, kind fileKind, what string) {
	order.Path = d.s.Path()
	files.Choose(d.frame, files.Wish{Title: "Write the approval sheet", Accept: "Write", Ext: kind.ext(), Write: true,
		Start: d.files.ExportName(what, kind.ext())}, func(path string) {
		d.make("Making the approval sheet", "sheet", path, kind, sheetWidth, func(ctx context.Context, show func(string, float64)) (paper, error) {
			var err error
			if order.Head, err = d.head(); err != nil {
				return nil, err
			}
			show("Taking the picture", 0)
			return approval.Make(ctx, order, show)
		})
	})
}

// head is the maker's letterhead as sheets show it.
func (d *Desk) head() (draw.Letterhead, error) {
	path := d.files.Settings.LetterheadPath()
	if path == "" {
		return draw.Letterhead{}, nil
	}
	return letterhead.Read(path)
}

func nameOf(o design.Option) string {
	if o.Title == "" {
		return o.Name
	}
	return o.Name + "  ·  " + o.Title
}

func orElse(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}
