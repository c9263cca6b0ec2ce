package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"example.org/castwright/export/raster"
	"example.org/castwright/model/draw"
	"github.com/spf13/cobra"
)

// The widths that a picture may have, in pixels. The height follows.
const (
	minWidth     = 200
	defaultWidth = 2000
	maxWidth     = raster.MaxSide
)

func pictureCommand() *cobra.Command {
	var option, output string
	var width int
	cmd := &cobra.Command{
		Use:   "picture FILE -o OUT.png",
		Short: "Draw one option to scale with its dimensions, as PNG",
		Args:  oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if !strings.EqualFold(filepath.Ext(output), ".png") {
				return fmt.Errorf("picture needs -o and the name of a PNG to write, ending in .png; it got %q", output)
			}
			if err := widthWithin(width, maxWidth); err != nil {
				return err
			}
			if err := notOver(output, args[0]); err != nil {
				return err
			}
			job, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			page := draw.Sheet(job, o, derive(job, o), draw.SheetOptions{Width: float64(width)})
			return writeFile(cmd.Context(), output, func(w io.Writer) error { return raster.PNG(w, page, raster.Options{}) })
		},
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PNG to write")
	cmd.Flags().IntVar(&width, "width", defaultWidth, fmt.Sprintf("in pixels, %d to %d", minWidth, maxWidth))
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}
