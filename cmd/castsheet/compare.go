package main

import (
	"fmt"
	"strings"

	"example.org/castwright/export/comparison"
	"example.org/castwright/export/raster"
	"github.com/spf13/cobra"
)

func compareCommand() *cobra.Command {
	var options, output, as, view, paper, quality, date string
	var width int
	var cost bool
	cmd := &cobra.Command{
		Use:   "compare FILE --options A,B -o OUT.png",
		Short: "Show two options side by side with what differs, as PNG or PDF",
		Long: "Shows two options side by side at one scale, with what differs marked on the drawings and\n" +
			"listed in words and numbers. \"--options A,approved\" compares an option with what was approved,\n" +
			"\"--options B,approved:A\" with what was approved of another.\n" +
			"The price is told where one is set; what the materials cost you only with --cost.",
		Args: oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ending, err := endingOf(output, "compare", ".png", ".pdf")
			if err != nil {
				return err
			}
			a, b, ok := strings.Cut(options, ",")
			if a, b = strings.TrimSpace(a), strings.TrimSpace(b); !ok || a == "" || b == "" || strings.Contains(b, ",") {
				return fmt.Errorf("compare needs two options, such as --options A,B; it got %q", options)
			}
			if as != "drawing" && as != "picture" {
				return fmt.Errorf("there is no way %q to show an option: give drawing or picture", as)
			}
			if view != "quarter" && view != "top" {
				return fmt.Errorf("two pictures can't be taken from the view %q: give quarter or top", view)
			}
			size, err := paperOf(paper)
			if err != nil {
				return err
			}
			work, err := qualityOf(quality)
			if err != nil {
				return err
			}
			if err := widthWithin(width, raster.MaxSide); err != nil {
				return err
			}
			if err := notOver(output, args[0]); err != nil {
				return err
			}
			job, err := loadJob(args[0])
			if err != nil {
				return err
			}
			page, err := comparison.Make(cmd.Context(), comparison.Order{
				Job: job, A: a, B: b, Pictures: as == "picture", Above: view == "top", Quality: work, Paper: size, Date: date, Cost: cost,
			}, nil)
			if err != nil {
				return err
			}
			return writeSheet(cmd.Context(), output, ending, page, width)
		},
	}
	cmd.Flags().StringVar(&options, "options", "", "the two to compare, such as A,B")
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PNG or PDF to write")
	cmd.Flags().StringVar(&as, "as", "drawing", "drawing or picture")
	cmd.Flags().StringVar(&view, "view", "quarter", "of pictures: quarter, from the front, or top, from straight above")
	cmd.Flags().StringVar(&paper, "paper", "", "a4 or letter (that of the job's units when not given)")
	cmd.Flags().StringVar(&quality, "quality", "good", "of pictures: quick, good or reference")
	cmd.Flags().StringVar(&date, "date", "", "of the page, as it is to be printed")
	cmd.Flags().BoolVar(&cost, "cost", false, "tell what the materials cost you: for your own copy")
	cmd.Flags().IntVar(&width, "width", defaultWidth, "of a PNG, in pixels")
	return cmd
}
