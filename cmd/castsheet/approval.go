package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"example.org/castwright/export/approval"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/store"
	"github.com/spf13/cobra"
)

// papers are the sizes of paper by the words that ask for them.
var papers = map[string]draw.PaperSize{"": draw.PaperByUnits, "a4": draw.PaperA4, "letter": draw.PaperLetter}

func approvalCommand() *cobra.Command {
	var option, output, paper, quality, date string
	var price bool
	var revision, width int
	cmd := &cobra.Command{
		Use:   "approval FILE -o OUT.pdf",
		Short: "Make the sheet that the client signs, as PDF or PNG",
		Long: "Makes the sheet that the client signs: picture, drawing, words and the design's fingerprint.\n" +
			"It freezes nothing: that is done in the window, once the client has signed.",
		Args: oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ending := strings.ToLower(filepath.Ext(output))
			if ending != ".pdf" && ending != ".png" {
				return fmt.Errorf("approval needs -o and the name of a file to write, ending in .pdf or .png; it got %q", output)
			}
			size, ok := papers[strings.ToLower(paper)]
			if !ok {
				return fmt.Errorf("there is no paper %q: give a4 or letter", paper)
			}
			work, ok := previewQualities[quality]
			if !ok {
				return fmt.Errorf("there is no quality %q: give quick, good or reference", quality)
			}
			if width < minWidth || width > 4000 {
				return fmt.Errorf("a width of %d pixels is out of range: give %d to 4000", width, minWidth)
			}
			job, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			ctx := cmd.Context()
			if ctx == nil {
				ctx = context.Background()
			}
			s, err := approval.Make(ctx, approval.Order{
				Job: job, Option: o.Name, Revision: revision, Date: date, Paper: size, Price: price, Quality: work,
			}, nil)
			if err != nil {
				return err
			}
			return store.Write(output, func(w io.Writer) error {
				if ending == ".png" {
					return s.PNG(w, width)
				}
				return s.PDF(w)
			})
		},
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PDF or PNG to write")
	cmd.Flags().StringVar(&paper, "paper", "", "a4 or letter (that of the job's units when not given)")
	cmd.Flags().StringVar(&quality, "quality", "good", "of the picture: quick, good or reference")
	cmd.Flags().StringVar(&date, "date", "", "of the sheet, as it is to be printed")
	cmd.Flags().BoolVar(&price, "price", false, "show the option's price")
	cmd.Flags().IntVar(&revision, "revision", 0, "a revision that was approved (the option as it is when not given)")
	cmd.Flags().IntVar(&width, "width", 1654, "of a PNG, in pixels")
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}
