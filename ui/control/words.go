package control

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	look "example.org/castwright/ui/theme"
)

// Words is a text in as much room as two lines of body text take, however much it
// says: what is longer than two lines stands in three small ones. It is as high
// with one line, so that nothing moves when the text changes.
type Words struct {
	widget.BaseWidget
	text   string
	colour fyne.ThemeColorName
	most   float32 // 0 for as wide as there is room
}

// NewWords is a text of up to two lines.
func NewWords() *Words {
	l := &Words{colour: theme.ColorNameForeground}
	l.ExtendBaseWidget(l)
	return l
}

// Muted makes the text step back.
func (l *Words) Muted() *Words { l.colour = look.Muted; return l }

// Narrow makes it as wide as its text, and wraps it where that is wider than most.
func (l *Words) Narrow(most float32) *Words { l.most = most; return l }

// Text is what it says.
func (l *Words) Text() string { return l.text }

// SetText says something else.
func (l *Words) SetText(text string) {
	if text != l.text {
		l.text = text
		l.Refresh()
	}
}

// setting is a size of type and how many lines of it there is room for.
type setting struct {
	size fyne.ThemeSizeName
	most int
}

// settings are the ways to set lines, the best first.
var settings = [...]setting{{theme.SizeNameText, 2}, {theme.SizeNameCaptionText, 3}}

// Set is how a text is set in lines of a width: which of its ways is taken, the
// first being body text, and whether all of it is seen.
func (l *Words) Set(text string, width float32) (lines []string, way int, whole bool) {
	th := l.Theme()
	for i, s := range settings {
		if lines, whole = wrap(text, width, th.Size(s.size), s.most); whole {
			return lines, i, true
		}
	}
	return lines, len(settings) - 1, false
}

// wrap breaks a text between words into at most a number of lines of a width. The
// last line ends in an ellipsis where that is not enough.
func wrap(text string, width, size float32, most int) (lines []string, whole bool) {
	wide := func(s string) float32 { return fyne.MeasureText(s, size, fyne.TextStyle{}).Width }
	rest := strings.TrimSpace(text)
	for len(lines) < most-1 && wide(rest) > width {
		words := strings.Split(rest, " ")
		low, high := 1, len(words) // the most words that fit, but one at least
		for low < high {
			mid := (low + high + 1) / 2
			if wide(strings.Join(words[:mid], " ")) <= width {
				low = mid
			} else {
				high = mid - 1
			}
		}
		lines = append(lines, strings.Join(words[:low], " "))
		rest = strings.Join(words[low:], " ")
	}
	last := fit(rest, width, size, fyne.TextStyle{})
	whole = last == rest
	for _, l := range lines {
		whole = whole && wide(l) <= width
	}
	return append(lines, last), whole
}

// CreateRenderer makes the widget's renderer.
func (l *Words) CreateRenderer() fyne.WidgetRenderer {
	r := &wordsRenderer{l: l}
	for range r.labels {
		r.objects = append(r.objects, canvas.NewText("", nil))
	}
	for i := range r.labels {
		r.labels[i] = r.objects[i].(*canvas.Text)
	}
	r.apply()
	return r
}

type wordsRenderer struct {
	l       *Words
	labels  [3]*canvas.Text
	objects []fyne.CanvasObject
}

// apply sets the lines, the block of them in the middle of the height.
func (r *wordsRenderer) apply() {
	th, v := r.l.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	room := r.l.Size()
	var lines []string
	way := 0
	if room.Width > 0 {
		lines, way, _ = r.l.Set(r.l.text, room.Width)
	}
	size := th.Size(settings[way].size)
	high := fyne.MeasureText("X", size, fyne.TextStyle{}).Height
	step := high
	if n := float32(len(lines)); n*step > room.Height && n > 1 {
		step = (room.Height - high) / (n - 1)
	}
	top := (room.Height - high - step*float32(max(0, len(lines)-1))) / 2
	for i, label := range r.labels {
		label.Text = ""
		if i < len(lines) {
			label.Text = lines[i]
		}
		label.TextSize, label.Color = size, th.Color(r.l.colour, v)
		label.Move(fyne.NewPos(0, top+step*float32(i)))
		label.Resize(fyne.NewSize(room.Width, high))
		label.Hidden = label.Text == ""
	}
}

func (r *wordsRenderer) Layout(fyne.Size) { r.apply() }

func (r *wordsRenderer) MinSize() fyne.Size {
	th := r.l.Theme()
	line := fyne.MeasureText("X", th.Size(theme.SizeNameText), fyne.TextStyle{})
	width := 10 * line.Width
	if r.l.most > 0 {
		width = fyne.Min(r.l.most, fyne.MeasureText(r.l.text, th.Size(theme.SizeNameText), fyne.TextStyle{}).Width+1)
	}
	return fyne.NewSize(width, 2*line.Height)
}

func (r *wordsRenderer) Refresh() {
	r.apply()
	for _, l := range r.labels {
		l.Refresh()
	}
}

func (r *wordsRenderer) Destroy() {}

func (r *wordsRenderer) Objects() []fyne.CanvasObject { return r.objects }
