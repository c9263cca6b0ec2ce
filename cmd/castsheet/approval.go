package main

import (
	"errors"
	"fmt"
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

// maxSheet is the widest approval sheet, in pixels.
const maxSheet = 4000

// sheetPictures are the pictures of --picture.
var sheetPictures = map[string]approval.Pictures{"studio": approval.Studio, "room": approval.InRoom, "both": approval.Both, "none": approval.None}

func approvalCommand() *cobra.Command {
	var option, output, paper, quality, pictures, date, head, agreed, by string
	var price bool
	var revision, width int
	cmd := &cobra.Command{
		Use:   "approval FILE -o OUT.pdf",
		Short: "Make the sheet that the client signs, as PDF or PNG",
		Long: "Makes the sheet that the client signs: picture, drawing, words and the design's fingerprint.\n" +
			"It freezes nothing, unless --approve says on which day the client agreed: then the option is\n" +
			"kept in the job's file as its next revision, and the sheet says so.\n" +
			"A letterhead's file is a JSON object with name, address, contact and logo: texts, lines parted by\n" +
			"\\n, the logo a PNG or JPEG beside it.",
		Args: oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			ending, err := endingOf(output, "approval", ".pdf", ".png")
			if err != nil {
				return err
			}
			size, err := paperOf(paper)
			if err != nil {
				return err
			}
			work, err := qualityOf(quality)
			if err != nil {
				return err
			}
			shown, ok := sheetPictures[pictures]
			if !ok {
				return fmt.Errorf("there is no picture %q for a sheet: give studio, room, both or none", pictures)
			}
			if err := widthWithin(width, maxSheet); err != nil {
				return err
			}
			if by != "" && agreed == "" {
				return errors.New("--by says who agreed: give the day with --approve too, such as --approve 2026-11-26")
			}
			if agreed != "" && revision != 0 {
				return errors.New("--approve makes a new revision, --revision prints an old one: give one of the two")
			}
			if err := notOver(output, args[0], head); err != nil {
				return err
			}
			job, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			if !job.Room.None() {
				if err := notOver(output, filepath.Join(filepath.Dir(args[0]), job.Room.Photo)); err != nil {
					return err
				}
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
			order := approval.Order{
				Job: job, Option: o.Name, Revision: revision, Date: date, Paper: size, Price: price, Quality: work,
				Head: letters, Pictures: shown, Path: args[0],
			}
			s, err := approval.Make(cmd.Context(), order, nil)
			if err != nil {
				return err
			}
			if agreed == "" {
				err = writeSheet(cmd.Context(), output, ending, s, width)
			} else {
				// Neither a sheet without its revision nor a revision without its sheet.
				err = writeSheet(cmd.Context(), output, ending, keeping{s, func() error { return store.Save(args[0], job) }}, width)
			}
			if err != nil {
				return err
			}
			for _, n := range s.Notes() {
				fmt.Fprintln(cmd.ErrOrStderr(), n)
			}
			if words := order.Unseen(); words != "" {
				fmt.Fprintln(cmd.ErrOrStderr(), words)
			}
			if severe := s.Severe(); len(severe) > 0 {
				fmt.Fprintf(cmd.ErrOrStderr(), "The top has severe warnings, of which the sheet says nothing: %s. Put them right before it is signed.\n",
					strings.Join(severe, "; "))
			}
			return nil
		},
	}
	cmd.Flags().StringVarP(&output, "output", "o", "", "the PDF or PNG to write")
	cmd.Flags().StringVar(&paper, "paper", "", "a4 or letter (that of the job's units when not given)")
	cmd.Flags().StringVar(&quality, "quality", "good", "of the pictures: quick, good or reference")
	cmd.Flags().StringVar(&pictures, "picture", "studio", "studio, the top by itself; room, set into the photograph that the job holds; both or none")
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
