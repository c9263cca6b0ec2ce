package main

import (
	"fmt"

	sheet "example.org/castwright/export/report"
	"example.org/castwright/model/approve"
	"example.org/castwright/model/report"
	"example.org/castwright/model/warn"
	"github.com/spf13/cobra"
)

func checkCommand() *cobra.Command {
	var option string
	cmd := &cobra.Command{
		Use:   "check FILE",
		Short: "Print faults and warnings; end with 1 when one is severe",
		Args:  oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, options, err := loadOptions(args[0], option)
			if err != nil {
				return err
			}
			severe := false
			for _, err := range approve.Check(job) {
				severe = true
				if _, err := fmt.Fprintf(cmd.OutOrStdout(), "SEVERE: %v\n\n", err); err != nil {
					return err
				}
			}
			for _, f := range job.Validate() {
				severe = true
				if _, err := fmt.Fprintf(cmd.OutOrStdout(), "FAULT OF THE JOB: %v\n\n", f); err != nil {
					return err
				}
			}
			for i, o := range options {
				r := derive(job, o)
				if i > 0 {
					fmt.Fprintln(cmd.OutOrStdout())
				}
				if err := sheet.Check(cmd.OutOrStdout(), job, o, r); err != nil {
					return err
				}
				severe = severe || mustNotBeCast(r)
			}
			if severe {
				return errSevere
			}
			return nil
		},
	}
	optionFlag(cmd, &option, "all of them when not given")
	return cmd
}

// mustNotBeCast says whether a report holds a fault or a severe warning.
func mustNotBeCast(r report.Report) bool {
	if len(r.Faults) > 0 {
		return true
	}
	for _, w := range r.Warnings {
		if w.Severity == warn.Severe {
			return true
		}
	}
	return false
}
