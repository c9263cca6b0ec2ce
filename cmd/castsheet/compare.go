package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"example.org/castwright/export/comparison"
	"example.org/castwright/export/raster"
	"example.org/castwright/model/store"
	"github.com/spf13/cobra"
)

func compareCommand() *cobra.Command {
	var options, output, as, paper, quality, date string
	var width int
	cmd := &cobra.Command{
		Use:   "compare FILE --options A,B -o OUT.png",
		Short: "Show two options side by side with what differs, as PNG or PDF",
		Long: "Shows two options side by side at one scale, with what differs marked on the drawings and\n" +
			"listed in words and numbers. \"--options A,approved\" compares an option with what was approved.",
		Args: oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ending := strings.ToLower(filepath.Ext(output))
			if ending != ".pdf" && ending != ".png" {
				return fmt.Errorf("compare needs -o and the name of a file to write, ending in .png or .pdf; it got %q", output)
			}
			a, b, ok := strings.Cut(options, ",")
			if a, b = strings.TrimSpace(a), strings.TrimSpace(b); !ok || a == "" || b == "" || strings.Contains(b, ",") {
				return fmt.Errorf("compare needs two options, such as --options A,B; it got %q", options)
			}
			if as != "drawing" && as != "picture" {
				return fmt.Errorf("there is no way %q to show an option: give drawing or picture", as)
			}
			size, ok := papers[strings.ToLower(paper)]
			if !ok {
				return fmt.Errorf("there is no paper %q: give a4 or letter", paper)
			}
			work, ok := previewQualities[quality]
			if !ok {
				return fmt.Errorf("there is no quality %q: give quick, good or reference", quality)
			}
			if width < minWidth || width > raster.MaxSide {
				return fmt.Errorf("a width of %d pixels is out of range: give %d to %d", width, minWidth, raster.MaxSide)
			}
			job, err := loadJob(args[0])
			if err != nil {
				return err
			}
			ctx := cmd.Context()
			if ctx == nil {
				ctx = context.Background()
			}
			page, err := comparison.Make(ctx, comparison.Order{
				Job: job, A: a, B: b, Pictures: as == "picture", Quality: work, Paper: size, Date: date,
			}, nil)
			if err != nil {
				return err
			}
			return store.Write(output, func(w io.Writer) error {
				if ending == ".pdf" {
					return page.PDF(w)
				}
				return page.PNG(w, width)
			})
		},
	}
	cmd.Flags().StringVar(&options, "options", "", "the two to compare, such as A,B")
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PNG or PDF to write")
	cmd.Flags().StringVar(&as, "as", "drawing", "drawing or picture")
	cmd.Flags().StringVar(&paper, "paper", "", "a4 or letter (that of the job's units when not given)")
	cmd.Flags().StringVar(&quality, "quality", "good", "of pictures: quick, good or reference")
	cmd.Flags().StringVar(&date, "date", "", "of the page, as it is to be printed")
	cmd.Flags().IntVar(&width, "width", defaultWidth, "of a PNG, in pixels")
	return cmd
}
