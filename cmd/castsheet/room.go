package main

import (
	"errors"
	"fmt"
	"image"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"

	"example.org/castwright/export/intake"
	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/export/room"
	"example.org/castwright/model/geom"
	"example.org/castwright/model/pose"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/units"
	"github.com/spf13/cobra"
)

// mostRoom is the longer side of a photograph that a top is set into, in pixels.
const mostRoom = room.MaxSide

// mostOld is how thick a present top may be, mm.
const mostOld = 500.0

func roomCommand() *cobra.Command {
	var option, output, photo, corners, size, old, quality, at string
	var paper bool
	var width int
	var brighter, warmer float64
	cmd := &cobra.Command{
		Use:   "room FILE [--photo PHOTO --corners x,y,x,y,x,y,x,y] -o OUT.png",
		Short: "Set one option into a photograph of the client's room, as PNG",
		Long: "Sets one option into a photograph of the client's room, in the right perspective and scale, in\n" +
			"the room's light. The corners are those of the present top's face, in pixels of the photograph as\n" +
			"it is seen upright, from its upper left corner: the back left corner first, as you stand before\n" +
			"the top; the other three may come in any order, for a top is seen from above and they go\n" +
			"clockwise. --size is that of what was marked; without it, the new top is taken to be as large\n" +
			"as the present one. With --paper the corners are those of a sheet of white paper that lies on\n" +
			"the top, which tells the light exactly; --size is then its name or size, A4 if not given, and\n" +
			"--at says where the new top's back left corner lies, to the right and behind the sheet's.\n" +
			"Without --photo and --corners the room is taken that was marked in the window and stands in the job.\n" +
			"The photograph is not changed, and no data but its picture goes into the new one.",
		Args: oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if !strings.EqualFold(filepath.Ext(output), ".png") {
				return fmt.Errorf("room needs -o and the name of a PNG to write, ending in .png; it got %q", output)
			}
			work, ok := qualities[quality]
			if !ok || quality == "reference" {
				return fmt.Errorf("there is no quality %q: give quick or good", quality)
			}
			if width != 0 {
				if err := widthWithin(width, mostRoom); err != nil {
					return err
				}
			}
			if !(math.Abs(brighter) <= 3) {
				return fmt.Errorf("--brighter %g is out of range: give -3 to 3 stops", brighter)
			}
			if !(math.Abs(warmer) <= 1) {
				return fmt.Errorf("--warmer %g is out of range: give -1 to 1", warmer)
			}
			if photo == "" && corners == "" {
				if others := cmd.Flags().Changed; others("size") || others("paper") || others("at") || others("old-thickness") {
					return errors.New("--size, --paper, --at and --old-thickness go with --photo and --corners: without them the job's own room says all of it")
				}
				return ownRoom(cmd, args[0], option, output, work, width, room.Light{Brighter: brighter, Warmer: warmer})
			}
			if photo == "" {
				return errors.New("room needs --photo and the name of a JPEG or PNG picture of the room")
			}
			if corners == "" {
				return errors.New("room needs --corners, such as --corners 410,300,1500,310,1630,520,290,500")
			}
			marks, err := pose.Parse(corners)
			if err != nil {
				return err
			}
			job, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			if err := notOver(output, args[0], photo); err != nil {
				return err
			}
			img, meta, err := readPhoto(photo)
			if err != nil {
				return err
			}
			s := slab.Resolve(o.Design)
			order := room.Order{Photo: img, Focal35: float64(meta.Focal35), Paper: paper,
				Light: room.Light{Brighter: brighter, Warmer: warmer}}
			order.Corners = scaledMarks(marks, meta, img.Rect.Dx(), img.Rect.Dy())
			if err := marks.Check(meta.Upright()); err != nil {
				return err
			}
			if size == "" && paper {
				size = "A4"
			}
			if size == "" {
				b := s.Outline.Bounds()
				order.W, order.D = b.W(), b.H()
			} else {
				w, d, err := pose.ParseSize(size, job.Units)
				if err != nil {
					return fmt.Errorf("--size: %w", err)
				}
				order.W, order.D = w.MM(), d.MM()
			}
			thick := 0.0
			if old != "" {
				l, err := units.Parse(old, job.Units)
				if err != nil {
					return fmt.Errorf("--old-thickness: %w", err)
				}
				if thick = l.MM(); !(thick > 0 && thick <= mostOld) {
					return fmt.Errorf("--old-thickness: %s is out of range: give up to %g mm", old, mostOld)
				}
			}
			order.Place = room.Standing(s, order.W, order.D, paper, thick)
			if at != "" {
				if order.Place, err = placeAt(order.Place, at, job.Units); err != nil {
					return fmt.Errorf("--at: %w", err)
				}
			}
			return composeTo(cmd, output, room.Top{Design: o.Design, Solid: s}, order, work, width)
		},
	}
	cmd.Flags().StringVar(&photo, "photo", "", "the photograph, JPEG or PNG")
	cmd.Flags().StringVar(&corners, "corners", "", "x,y,x,y,x,y,x,y in pixels, the back left corner first")
	cmd.Flags().StringVar(&size, "size", "", "width x depth of what was marked, such as 1250x560mm or A4 (the design's own when not given)")
	cmd.Flags().BoolVar(&paper, "paper", false, "a sheet of white paper was marked, not the present top")
	cmd.Flags().StringVar(&at, "at", "", "where the new top's back left corner lies from the marked one: right,back or right,back,degrees")
	cmd.Flags().StringVar(&old, "old-thickness", "", "of the present top (that of the new one when not given)")
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PNG to write")
	cmd.Flags().StringVar(&quality, "quality", "good", "quick or good")
	cmd.Flags().IntVar(&width, "width", 0, fmt.Sprintf("of the result in pixels, %d to %d (the photograph's own when not given)", minWidth, mostRoom))
	cmd.Flags().Float64Var(&brighter, "brighter", 0, "light of the top by hand, in stops, -3 to 3")
	cmd.Flags().Float64Var(&warmer, "warmer", 0, "colour of its light by hand, -1 (cooler) to 1 (warmer)")
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}

// ownRoom sets an option into the room that its job holds.
func ownRoom(cmd *cobra.Command, path, option, output string, work picture.Quality, width int, by room.Light) error {
	job, o, err := loadOption(path, option)
	if err != nil {
		return err
	}
	r := job.Room
	if r.None() {
		return fmt.Errorf("%s holds no room: give --photo and --corners, or mark them in the window", path)
	}
	if err := notOver(output, path, filepath.Join(filepath.Dir(path), r.Photo)); err != nil {
		return err
	}
	img, focal35, err := room.Kept(path, r)
	if err != nil {
		return fmt.Errorf("the room of %s: %w", path, err)
	}
	s := slab.Resolve(o.Design)
	order := room.OrderOf(r, img, focal35, s)
	order.Light.Brighter += by.Brighter
	order.Light.Warmer += by.Warmer
	return composeTo(cmd, output, room.Top{Design: o.Design, Solid: s}, order, work, width)
}

// composeTo sets a top in and writes the picture.
func composeTo(cmd *cobra.Command, output string, top room.Top, order room.Order, work picture.Quality, width int) error {
	out, err := room.Compose(cmd.Context(), top, order, work, width, nil)
	if err != nil {
		return err
	}
	err = writeFile(cmd.Context(), output, func(w io.Writer) error { return raster.Photo(w, out.Image) })
	if err != nil {
		return err
	}
	for _, n := range out.Notes {
		fmt.Fprintln(cmd.OutOrStdout(), n)
	}
	return nil
}

// readPhoto takes a photograph in.
func readPhoto(path string) (img *image.RGBA, m intake.Meta, err error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, m, fmt.Errorf("the photograph %s: %w", path, bare(err))
	}
	defer f.Close()
	limits := intake.Photo
	limits.Side = mostRoom
	if img, m, err = intake.Read(f, limits); err != nil {
		return nil, m, fmt.Errorf("the photograph %s: %w", path, err)
	}
	return img, m, nil
}

// scaledMarks are marks of the whole photograph in the one that was scaled down.
func scaledMarks(c pose.Corners, m intake.Meta, w, h int) pose.Corners {
	fw, fh := m.Upright()
	for i, p := range c {
		c[i] = geom.Vec{X: p.X * float64(w) / float64(fw), Y: p.Y * float64(h) / float64(fh)}
	}
	return c
}

// placeAt reads where the new top's back left corner lies.
func placeAt(p pose.Place, text string, sys units.System) (pose.Place, error) {
	parts := strings.Split(text, ",")
	if len(parts) < 2 || len(parts) > 3 {
		return p, fmt.Errorf("%q is no place: give right,back or right,back,degrees, such as -300,40,2", text)
	}
	for i, to := range []*float64{&p.X, &p.Y} {
		l, err := units.Parse(strings.TrimSpace(parts[i]), sys)
		if err != nil {
			return p, err
		}
		*to = l.MM()
	}
	if len(parts) == 3 {
		a, err := units.ParseAngle(strings.TrimSpace(parts[2]))
		if err != nil {
			return p, err
		}
		p.Turn = a.Radians()
	}
	return p, nil
}
