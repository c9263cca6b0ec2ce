package main

import (
	"fmt"
	"io"

	"example.org/castwright/model/approve"
	"example.org/castwright/model/design"
	"github.com/spf13/cobra"
)

func approvedCommand() *cobra.Command {
	var option string
	cmd := &cobra.Command{
		Use:   "approved FILE",
		Short: "Print what was approved and what has changed since",
		Long: "Prints how each option stands to what the client approved, and what has changed since, in words\n" +
			"and numbers. Ends with 1 when a revision in the file is not as it was approved.",
		Args: oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, options, err := loadOptions(args[0], option)
			if err != nil {
				return err
			}
			out := cmd.OutOrStdout()
			for _, o := range options {
				writeStanding(out, job, o.Name)
			}
			faults := approve.Check(job)
			for _, err := range faults {
				fmt.Fprintf(out, "SEVERE: %v\n", err)
			}
			if len(faults) > 0 {
				return errSevere
			}
			return nil
		},
	}
	optionFlag(cmd, &option, "all of them when not given")
	return cmd
}

// writeStanding writes how an option stands to what was approved.
func writeStanding(w io.Writer, job design.Job, option string) {
	s := approve.Of(job, option)
	fmt.Fprintf(w, "Option %s: %s\n", option, s.Words())
	for _, a := range job.Approvals {
		if a.Option != option {
			continue
		}
		fmt.Fprintf(w, "  revision %d, %s, fingerprint %s\n", a.Revision, a.When(), a.Fingerprint)
	}
	made, numbers := s.Since(job, option).Lines(job.Units, job.Materials.Currency)
	for _, list := range [...][]string{made, numbers} {
		for _, line := range list {
			fmt.Fprintf(w, "  %s\n", line)
		}
		if len(made) == 0 {
			break
		}
	}
}
