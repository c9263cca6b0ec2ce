package compare

import (
	"context"
	"fmt"
	"image"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"golang.org/x/image/draw"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/design"
	"example.org/castwright/model/slab"
	"example.org/castwright/ui/control"
	"example.org/castwright/ui/view"
)

// shot is a picture that is wanted.
type shot struct {
	name   string // of the side, as progress tells it
	of     subject
	view   view.View    // pixels
	camera picture.View // with the zoom
	design design.Design
	solid  slab.Solid
	w, h   int
}

// grades are the pictures that follow each other, with their share of the size. What
// comes after another is worth more time.
var grades = [...]struct {
	quality picture.Quality
	share   float64
	words   string
	weight  float64 // of its time, for the progress
}{{picture.First, 0.5, "first look", 0.05}, {picture.Quick, 1, "clearer", 0.25}, {picture.Good, 1, "clear", 0.7}}

// shots takes pictures in the background, one after another: a first look of each
// side, then better ones. It belongs to the main goroutine.
type shots struct {
	frame *control.Frame
	later func(time.Duration, func())
	kept  *kept
	about func() picture.SetOptions
	// told hears how far it is, 0 to 1; a share of 1 with no words says that nothing
	// is being worked at.
	told func(words string, done float64)
	took func() // told of each picture
	bad  func(error)

	sets   []built
	turn   int
	wanted int // counts how often sets were asked for
	cancel context.CancelFunc
}

// built is a set with what it is of.
type built struct {
	print string
	set   *picture.Set
}

// mostSets is how many sets are kept: those of the two sides. One takes 40 to 80 MB.
const mostSets = 2

// setLife is how long nothing is asked of the sets before they are let go. The next
// picture waits for new ones then, some 0.3 s.
const setLife = 20 * time.Second

// set is the set of a design, nil when it is not built.
func (s *shots) set(print string) *picture.Set {
	for _, b := range s.sets {
		if b.print == print {
			return b.set
		}
	}
	return nil
}

func (s *shots) keep(print string, set *picture.Set) {
	s.sets = slices.DeleteFunc(s.sets, func(b built) bool { return b.print == print })
	s.sets = append([]built{{print, set}}, s.sets...)
	s.sets = s.sets[:min(len(s.sets), mostSets)]
}

// stop gives up what is being worked at.
func (s *shots) stop() {
	s.turn++
	if s.cancel != nil {
		s.cancel()
		s.cancel = nil
	}
	s.told("", 1)
	s.rest()
}

// rest lets the sets go unless they are wanted again soon.
func (s *shots) rest() {
	if len(s.sets) == 0 {
		return
	}
	wanted := s.wanted
	s.later(setLife, func() {
		if s.wanted == wanted {
			s.sets = nil
			s.frame.LetGo()
		}
	})
}

// forget gives up and lets the sets go.
func (s *shots) forget() {
	s.stop()
	s.sets = nil
}

// build has the sets of some designs made, then goes on.
func (s *shots) build(list []shot, then func()) {
	s.wanted++
	for _, w := range list {
		if s.set(w.of.print) != nil {
			continue
		}
		turn := s.turn
		s.told("Picture of "+w.name+": setting up", 0)
		about := s.about()
		s.frame.Long(func() func() {
			set := picture.Build(w.design, w.solid, about)
			return func() {
				if s.turn != turn {
					return
				}
				s.keep(w.of.print, set)
				s.build(list, then)
			}
		})
		return
	}
	then()
}

// want has pictures taken, those that are there already left out.
func (s *shots) want(list []shot) {
	ctx, cancel := context.WithCancel(context.Background())
	s.cancel = cancel
	s.next(ctx, list, 0)
}

// next takes the picture number n of all grades and sides.
func (s *shots) next(ctx context.Context, list []shot, n int) {
	for ; n < len(grades)*len(list); n++ {
		w, grade := list[n%len(list)], n/len(list)
		if l, exact := s.kept.best(w.of, w.view); exact && l.grade >= grade {
			continue
		}
		s.take(ctx, list, n, w, grade)
		return
	}
	s.told("", 1)
	s.rest()
}

func (s *shots) take(ctx context.Context, list []shot, n int, w shot, grade int) {
	set, turn, g := s.set(w.of.print), s.turn, grades[grade]
	if set == nil {
		return
	}
	tell := func(done float64) {
		all := (float64(n%len(list)) + done) / float64(len(list)) * g.weight
		for _, before := range grades[:grade] {
			all += before.weight
		}
		s.told(fmt.Sprintf("Picture of %s: %s", w.name, g.words), all)
	}
	tell(0)
	s.frame.Long(func() func() {
		told := 0.0
		v := w.camera
		v.Camera = v.Camera.Window(g.share, 0, 0)
		img, err := picture.Render(ctx, set, v, g.quality, max(8, int(float64(w.w)*g.share)), max(8, int(float64(w.h)*g.share)),
			func(_ string, done float64, _ *image.NRGBA) {
				if done < told+control.Shown {
					return
				}
				told = done
				fyne.Do(func() {
					if s.turn == turn {
						tell(done)
					}
				})
			})
		var full *image.RGBA
		if err == nil {
			full = image.NewRGBA(image.Rect(0, 0, w.w, w.h))
			draw.ApproxBiLinear.Scale(full, full.Rect, img, img.Rect, draw.Src, nil)
		}
		return func() {
			if s.turn != turn {
				return
			}
			if err != nil {
				s.stop()
				s.bad(err)
				return
			}
			s.kept.add(&layer{of: w.of, view: w.view, image: full, grade: grade})
			s.took()
			s.next(ctx, list, n+1)
		}
	})
}
