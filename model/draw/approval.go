package draw

import (
	"fmt"
	"image"
	"strings"

	"example.org/castwright/model/amount"
	"example.org/castwright/model/design"
	"example.org/castwright/model/edging"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/report"
	"example.org/castwright/model/scene"
	"example.org/castwright/model/terms"
)

// Letterhead is how the maker's own papers start; none of it is needed.
type Letterhead struct {
	Lines []string    // name first, then address and the like
	Logo  image.Image // nil for none
}

// ApprovalOptions says what an approval sheet shows.
type ApprovalOptions struct {
	SheetOptions
	Head        Letterhead
	Picture     image.Image // photo-like, wider than high; nil for none
	Room        image.Image // the top set into a photograph of the client's room; nil for none
	Revision    int         // that this is, or would be when signed
	Agreed      string      // how it was agreed, "" while it waits for a signature
	Fingerprint string
	Mark        [][]bool // modules of a QR code, rows from the top; nil for none
	Price       bool     // show the option's price
}

// Approval is what the client signs: picture and dimensioned drawing on the first
// page, everything in words on what follows, with fingerprint and signatures.
func Approval(job design.Job, option design.Option, r report.Report, o ApprovalOptions) []scene.Page {
	f := &flow{sys: job.Units, opt: o.SheetOptions}
	f.turn()
	f.letterhead(o.Head)
	f.title(job, option, o)
	_, most := pictureRoom(job, option, r, o)
	f.pictures(o, most)
	f.drawing(option.Design, r)

	f.head = func(f *flow) { f.runningHead(job, option) }
	f.turn()
	f.materials(option.Design, r)
	f.heading("What is made", 20)
	for _, row := range Specification(option.Design, r, job.Units) {
		f.row(row.Label, row.Words, typeBody)
	}
	said := terms.Filled(job.Terms, option.Design)
	f.terms(terms.Lines(said.Included), terms.Lines(said.NotIncluded))
	f.care(terms.Lines(said.Care))
	f.price(job, option, o.Price)
	f.sign(o, o.Price && !option.Price.Amount.IsZero())
	out := make([]scene.Page, len(f.pages))
	for i, l := range f.pages {
		l.numbered(i+1, len(f.pages), o)
		out[i] = l.page(f.views[i])
	}
	return out
}

// letterhead is the maker's logo on the left and lines on the right.
func (f *flow) letterhead(h Letterhead) {
	const high, logoWide, most = 17.0, 70.0, 12
	var lines []string
	bold := 0 // lines of the name
	for i, line := range terms.Lines(strings.Join(h.Lines, "\n")) {
		lines = append(lines, wrapped(line, typeSmall, i == 0, f.width()-logoWide-8, 3)...)
		if i == 0 {
			bold = len(lines)
		}
	}
	lines = lines[:min(len(lines), most)]
	if h.Logo == nil && len(lines) == 0 {
		return
	}
	if h.Logo != nil {
		b := h.Logo.Bounds()
		if b.Dx() > 0 && b.Dy() > 0 {
			w, tall := logoWide, high
			if k := float64(b.Dx()) / float64(b.Dy()); k*tall < w {
				w = k * tall
			} else {
				tall = w / k
			}
			at := geom.Box{Min: f.l.at(sheetMargin, 10), Max: f.l.at(sheetMargin+w, 10+tall)}
			f.l.items = append(f.l.items, scene.Picture{Box: at, Image: h.Logo})
		}
	}
	y := 11.5
	for i, line := range lines {
		f.l.words(f.l.w-sheetMargin, y, scene.AnchorEnd, typeSmall, i < bold, f.l.theme.Ink, line)
		y += 3.6
	}
	f.y = max(10+high, y) + 4
	f.l.rule(sheetMargin, f.l.w-sheetMargin, f.y-2)
	f.y += 2
}

// title says what is to be approved, for whom, and how far it is.
func (f *flow) title(job design.Job, option design.Option, o ApprovalOptions) {
	title := option.Title
	if title == "" {
		title = "Concrete top"
	}
	f.y += 4
	size := typeTitle
	if len(wrapped(title, size, true, f.width(), 3)) > 2 {
		size = 0.72 * typeTitle
	}
	for i, line := range wrapped(title, size, true, f.width(), 4) {
		if i > 0 {
			f.y += 1.2 * size
		}
		f.l.words(sheetMargin, f.y, scene.AnchorStart, size, true, f.l.theme.Ink, line)
	}
	f.y += 8
	state := fmt.Sprintf("For approval, revision %d", o.Revision)
	if o.Agreed != "" {
		state = fmt.Sprintf("Revision %d, %s", o.Revision, o.Agreed)
	}
	_, w := scene.Set(state, true)
	column, y := min(w*typeBody+0.1, 0.5*f.width()), f.y
	left := f.width() - column - 6
	for i, line := range wrapped(state, typeBody, true, column, 4) {
		f.l.words(f.l.w-sheetMargin, y+float64(i)*lineHigh(typeBody), scene.AnchorEnd, typeBody, true, f.l.theme.Ink, line)
		f.y = max(f.y, y+float64(i)*lineHigh(typeBody))
	}
	below := f.l.paragraph(sheetMargin, y, left, typeBody, false, f.l.theme.Faint, subtitle(job, option, o.Date), 4)
	f.y = max(f.y, below-lineHigh(typeBody)) + 5.5
}

func subtitle(job design.Job, option design.Option, date string) string {
	var parts []string
	if job.Client != "" {
		parts = append(parts, job.Client)
	}
	if option.Name != "" {
		parts = append(parts, "Option "+option.Name)
	}
	if date != "" {
		parts = append(parts, date)
	}
	return strings.Join(parts, between)
}

// drawing lays the plan with its dimensions in the rest of the page, at the
// largest of the usual scales.
func (f *flow) drawing(d design.Design, r report.Report) {
	zone := geom.Box{Min: geom.Vec{X: sheetMargin, Y: f.y}, Max: geom.Vec{X: f.l.w - sheetMargin, Y: f.bottom - 3}}
	v, one := f.l.plan(d, r, f.l.view(f.sys), zone)
	f.l.numberEdges(v, r.Solid, edging.Numbers(r.Solid.Sides))
	f.views[len(f.views)-1] = v
	y := f.bottom + 2
	x := f.l.scaleBar(v, y)
	words := scaleWords(one, f.sys, f.l.name)
	for _, side := range r.Solid.Sides {
		if side.Wall {
			words += "   ·   hatched: wall"
			break
		}
	}
	f.l.words(x, y, scene.AnchorStart, typeSmall, false, f.l.theme.Faint, words)
	f.initials(y)
}

// initials is where the client signs a page that has no signatures, so that it can't
// be changed for another one.
func (f *flow) initials(y float64) {
	const line = 22.0
	right := f.l.w - sheetMargin
	f.l.rule(right-line, right, y+1.6)
	f.l.words(right-line-2, y, scene.AnchorEnd, typeSmall, false, f.l.theme.Faint, "Client's initials")
}

// runningHead starts the pages after the first.
func (f *flow) runningHead(job design.Job, option design.Option) {
	title := option.Title
	if title == "" {
		title = "Concrete top"
	}
	// The option first: it must not fall to a long name.
	whose := "Option " + option.Name
	if job.Client != "" {
		whose += between + job.Client
	}
	w := f.l.words(sheetMargin, f.y, scene.AnchorStart, typeBody, true, f.l.theme.Ink, scene.Fitted(title, typeBody, true, f.width()/2))
	f.l.words(f.l.w-sheetMargin, f.y, scene.AnchorEnd, typeBody, false, f.l.theme.Faint,
		scene.Fitted(whose, typeBody, false, f.width()-w-6))
	f.y += 3.2
	f.l.rule(sheetMargin, f.l.w-sheetMargin, f.y)
	f.y += 5
}

// materials is the key: swatches with their words beside them.
func (f *flow) materials(d design.Design, r report.Report) {
	const row, size = 4, 14.0
	list := entries(d, r.Solid, f.sys)
	pitch := f.width() / float64(max(3, min(row, len(list))))
	text := pitch - size - 7
	f.y += 1
	bottom := f.y + size
	for i, e := range list {
		if i > 0 && i%row == 0 {
			f.y = bottom + 3
			bottom = f.y + size
		}
		x := sheetMargin + float64(i%row)*pitch
		e.swatch(f.l, f.views[len(f.views)-1], x, f.y, size)
		y := f.l.paragraph(x+size+3, f.y+2, text, typeBody, true, f.l.theme.Ink, e.title, 3)
		bottom = max(bottom, f.l.paragraph(x+size+3, y+0.2, text, typeSmall, false, f.l.theme.Faint, e.more, 4)-2)
	}
	f.y = bottom + 2
}

// terms is what the price covers and what not, side by side.
func (f *flow) terms(included, not []string) {
	const gap = 8.0
	half := (f.width() - gap) / 2
	h := max(pointsHigh(half, typeSmall, included), pointsHigh(half, typeSmall, not))
	f.need(h + 14)
	top := f.y + 4.5
	for i, side := range [...]struct {
		title string
		list  []string
	}{{"Included", included}, {"Not included", not}} {
		x := sheetMargin + float64(i)*(half+gap)
		f.l.words(x, top, scene.AnchorStart, typeBody, true, f.l.theme.Ink, side.title)
		f.l.rule(x, x+half, top+3.2)
		f.l.points(x, top+7.4, half, typeSmall, side.list)
	}
	f.y = top + 7.4 + h
}

func (f *flow) care(list []string) {
	f.heading("Care and cautions", 12)
	for _, text := range list {
		f.need(pointsHigh(f.width(), typeSmall, []string{text}))
		f.y = f.l.points(sheetMargin, f.y, f.width(), typeSmall, []string{text})
	}
}

// price says what the client pays and all of the words beside it, or that nothing is
// said of it.
func (f *flow) price(job design.Job, option design.Option, shown bool) {
	const column = 30.0
	size, text, note := 4.4, amount.Money(job.Materials.Currency, option.Price.Amount), option.Price.Note
	switch {
	case !shown:
		size, text, note = typeBody, "", "Not stated on this sheet."
	case option.Price.Amount.IsZero():
		size, text = typeBody, "by the quote for this revision"
	}
	text = scene.Fitted(text, size, true, 80)
	_, w := scene.Set(text, true)
	x := column
	if text != "" {
		x += w*size + 4
	}
	lines := wrapped(note, typeBody, false, f.width()-x, 6)
	f.need(13 + lineHigh(typeBody)*float64(max(0, len(lines)-1)))
	f.y += 5
	f.l.words(sheetMargin, f.y, scene.AnchorStart, typeBody, true, f.l.theme.Ink, "Price")
	f.l.words(sheetMargin+column, f.y, scene.AnchorStart, size, true, f.l.theme.Ink, text)
	for i, line := range lines {
		if i > 0 {
			f.y += lineHigh(typeBody)
		}
		f.l.words(sheetMargin+x, f.y, scene.AnchorStart, typeBody, false, f.l.theme.Faint, line)
	}
	f.y += 5
}

// signHigh is the height of what is signed.
const signHigh = 51.0

// sign is the words of agreement, lines for names, signatures and dates, and the
// fingerprint as text and as a QR code.
func (f *flow) sign(o ApprovalOptions, priced bool) {
	top := f.bottom - signHigh
	if f.y+signHigh > f.bottom {
		f.turn()
		top = f.y - 1 // alone on its page
	}
	what := o.seen() + "the drawing and the words"
	if priced {
		what = o.seen() + "the drawing, the words and the price"
	}
	l := f.l
	l.rule(sheetMargin, l.w-sheetMargin, top+1)
	const mark = 27.0
	x, right := sheetMargin, l.w-sheetMargin
	text := right - mark - 10 - x
	y := l.paragraph(x, top+6.5, text, typeBody, true, l.theme.Ink,
		fmt.Sprintf("I have seen %s of revision %d, and agree that the top is made so.", what, o.Revision), 3)
	l.paragraph(x, y+0.5, text, typeSmall, false, l.theme.Faint,
		"After the pour nothing can be changed. A change before it is a new revision with a fingerprint of its own.", 2)
	for i, who := range [...]string{"Client", "Maker"} {
		line := top + signHigh - 20.5 + 15*float64(i)
		at := x
		for _, field := range [...]struct {
			words string
			share float64
		}{{who + ", name", 0.38}, {"Signature", 0.38}, {"Date", 0.24}} {
			w := field.share*(text+8) - 8
			l.rule(at, at+w, line)
			l.words(at, line+3, scene.AnchorStart, typeSmall, false, l.theme.Faint, field.words)
			at += w + 8
		}
	}
	if n := len(o.Mark); n > 0 {
		side := mark / float64(n)
		var modules []geom.Loop
		for row := range o.Mark {
			for c := 0; c < len(o.Mark[row]); c++ {
				from := c
				for c < len(o.Mark[row]) && o.Mark[row][c] {
					c++
				}
				if c > from {
					modules = append(modules, l.box(right-mark+float64(from)*side, top+5+float64(row)*side, float64(c-from)*side, side))
				}
			}
		}
		l.items = append(l.items, scene.Fill{Loops: modules, Paint: scene.Paint{Colour: scene.Colour{A: 0xff}}})
	}
	l.words(right, top+5+mark+4.4, scene.AnchorEnd, typeSmall, false, l.theme.Faint, "Fingerprint of the design")
	l.words(right, top+5+mark+8.4, scene.AnchorEnd, typeSmall, true, l.theme.Ink, o.Fingerprint)
	f.y = f.bottom
}

// numbered is the foot of a page.
func (l *layout) numbered(n, of int, o ApprovalOptions) {
	y := l.h - 10.5
	l.rule(sheetMargin, l.w-sheetMargin, y-3.6)
	l.words(sheetMargin, y, scene.AnchorStart, typeSmall, false, l.theme.Faint,
		fmt.Sprintf("Revision %d   ·   %s", o.Revision, o.Fingerprint))
	l.words(l.w-sheetMargin, y, scene.AnchorEnd, typeSmall, false, l.theme.Faint, fmt.Sprintf("Page %d of %d", n, of))
}
