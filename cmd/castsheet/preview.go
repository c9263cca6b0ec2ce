package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"example.org/castwright/export/picture"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/slab"
	"github.com/spf13/cobra"
)

// previewViews are the views that preview knows, by the words that ask for them.
var previewViews = map[string]picture.Kind{"top": picture.Top, "quarter": picture.Quarter, "close": picture.Close}

// previewBelow is what a top may stand on, by the words that ask for it.
var previewBelow = map[string]picture.Below{"designed": picture.BelowDesigned, "cabinet": picture.BelowCabinet,
	"legs": picture.BelowLegs, "nothing": picture.BelowNothing}

// previewShapes are the shapes of a picture, by the words that ask for them.
var previewShapes = map[string]picture.Shape{"16:9": picture.Wide, "4:3": picture.FourThirds, "own": picture.OwnShape}

func previewCommand() *cobra.Command {
	var option, output, view, quality, below, shape string
	var width int
	var wall bool
	cmd := &cobra.Command{
		Use:   "preview FILE -o OUT.png",
		Short: "Take a photo-like picture of one option, as PNG",
		Args:  oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if !strings.EqualFold(filepath.Ext(output), ".png") {
				return fmt.Errorf("preview needs -o and the name of a PNG to write, ending in .png; it got %q", output)
			}
			kind, ok := previewViews[view]
			if !ok {
				return fmt.Errorf("there is no view %q: give top, quarter or close", view)
			}
			work, err := qualityOf(quality)
			if err != nil {
				return err
			}
			stand, ok := previewBelow[below]
			if !ok {
				return fmt.Errorf("nothing is called %q below a top: give designed, cabinet, legs or nothing", below)
			}
			if shape == "" {
				shape = map[bool]string{true: "own", false: "16:9"}[kind == picture.Top]
			}
			form, ok := previewShapes[shape]
			if !ok {
				return fmt.Errorf("there is no shape %q: give 16:9, 4:3 or own", shape)
			}
			if err := widthWithin(width, picture.MaxSide); err != nil {
				return err
			}
			if err := notOver(output, args[0]); err != nil {
				return err
			}
			_, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			set := picture.Build(o.Design, slab.Resolve(o.Design), picture.SetOptions{NoWall: !wall, Below: stand})
			v := picture.View{Kind: kind}
			img, err := picture.Render(cmd.Context(), set, v, work, width, set.Height(v, form, width), nil)
			if err != nil {
				return err
			}
			return writeFile(cmd.Context(), output, func(w io.Writer) error { return raster.Photo(w, img) })
		},
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PNG to write")
	cmd.Flags().StringVar(&view, "view", "quarter", "top, quarter or close")
	cmd.Flags().StringVar(&quality, "quality", "good", "quick, good or reference (minutes)")
	cmd.Flags().IntVar(&width, "width", 1920, fmt.Sprintf("in pixels, %d to %d", minWidth, picture.MaxSide))
	cmd.Flags().StringVar(&below, "below", "designed", "what it stands on: designed, cabinet, legs or nothing")
	cmd.Flags().BoolVar(&wall, "wall", true, "the walls at its wall edges; --wall=false leaves them out")
	cmd.Flags().StringVar(&shape, "shape", "", "16:9, 4:3 or own, that of the top; own straight down, else 16:9, when not given")
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}
