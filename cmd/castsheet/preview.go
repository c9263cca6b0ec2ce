package main

import (
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"path/filepath"
	"strings"

	"example.org/castwright/export/picture"
	"example.org/castwright/model/slab"
	"example.org/castwright/model/store"
	"github.com/spf13/cobra"
)

// previewViews are the views that preview knows, by the words that ask for them.
var previewViews = map[string]picture.Kind{"top": picture.Top, "quarter": picture.Quarter, "close": picture.Close}

func previewCommand() *cobra.Command {
	var option, output, view, quality string
	var width int
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
			if err := widthWithin(width, picture.MaxSide); err != nil {
				return err
			}
			_, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			set := picture.Build(o.Design, slab.Resolve(o.Design), picture.SetOptions{})
			height := int(math.Round(float64(width) * 9 / 16))
			if kind == picture.Top {
				height = set.PlanHeight(width)
			}
			img, err := picture.Render(cmd.Context(), set, picture.View{Kind: kind}, work, width, height, nil)
			if err != nil {
				return err
			}
			return store.Write(output, func(w io.Writer) error { return writeOpaque(w, img) })
		},
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PNG to write")
	cmd.Flags().StringVar(&view, "view", "quarter", "top, quarter or close")
	cmd.Flags().StringVar(&quality, "quality", "good", "quick, good or reference (minutes)")
	cmd.Flags().IntVar(&width, "width", 1920, fmt.Sprintf("in pixels, %d to %d", minWidth, picture.MaxSide))
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}

// writeOpaque writes a picture without holes as PNG, fast rather than small.
func writeOpaque(w io.Writer, img *image.NRGBA) error {
	// For a picture without transparency the two models are the same bytes.
	opaque := &image.RGBA{Pix: img.Pix, Stride: img.Stride, Rect: img.Rect}
	return (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(w, opaque)
}
