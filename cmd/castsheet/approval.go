package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"example.org/castwright/export/approval"
	"example.org/castwright/export/letterhead"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/draw"
	"example.org/castwright/model/store"
	"github.com/spf13/cobra"
)

// papers are the sizes of paper by the words that ask for them.
var papers = map[string]draw.PaperSize{"": draw.PaperByUnits, "a4": draw.PaperA4, "letter": draw.PaperLetter}

func approvalCommand() *cobra.Command {
	var option, output, paper, quality, date, head, agreed, by string
	var price bool
	var revision, width int
	cmd := &cobra.Command{
		Use:   "approval FILE -o OUT.pdf",
		Short: "Make the sheet that the client signs, as PDF or PNG",
		Long: "Makes the sheet that the client signs: picture, drawing, words and the design's fingerprint.\n" +
			"It freezes nothing, unless --approve says on which day the client agreed: then the option is\n" +
			"kept in the job's file as its next revision, and the sheet says so.",
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
			if by != "" && agreed == "" {
				return errors.New("--by says who agreed: give the day with --approve too, such as --approve 2026-11-26")
			}
			if agreed != "" && revision != 0 {
				return errors.New("--approve makes a new revision, --revision prints an old one: give one of the two")
			}
			job, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			letters, err := letterheadOf(head)
			if err != nil {
				return err
			}
			if agreed != "" {
				revision = approve.Next(job)
				job, err = approve.Approve(o.Name, approve.Deal{Date: agreed, By: by, Price: price}).Apply(job)
				if err != nil {
					return err
				}
			}
			ctx := cmd.Context()
			if ctx == nil {
				ctx = context.Background()
			}
			s, err := approval.Make(ctx, approval.Order{
				Job: job, Option: o.Name, Revision: revision, Date: date, Paper: size, Price: price, Quality: work,
				Head: letters,
			}, nil)
			if err != nil {
				return err
			}
			if agreed != "" {
				if err := store.Save(args[0], job); err != nil {
					return err
				}
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
	cmd.Flags().StringVar(&agreed, "approve", "", "freeze the option as agreed on this day, such as 2026-11-26")
	cmd.Flags().StringVar(&by, "by", "", "who agreed, with --approve")
	cmd.Flags().StringVar(&head, "letterhead", "", "a letterhead's file, or none (your own, if you have made one, when not given)")
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}

// letterheadOf is the letterhead in a file; with "" that of this user, with "none"
// none.
func letterheadOf(path string) (draw.Letterhead, error) {
	switch path {
	case "none":
		return draw.Letterhead{}, nil
	case "":
		own, err := letterhead.DefaultPath()
		if err != nil {
			return draw.Letterhead{}, nil // no place for one
		}
		return letterhead.Read(own)
	}
	if _, err := os.Stat(path); err != nil {
		return draw.Letterhead{}, fmt.Errorf("there is no letterhead %s", path)
	}
	return letterhead.Read(path)
}
