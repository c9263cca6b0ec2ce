package main

import (
	sheet "example.org/castwright/export/report"
	"github.com/spf13/cobra"
)

func reportCommand() *cobra.Command {
	var option string
	var asJSON bool
	cmd := &cobra.Command{
		Use:   "report FILE",
		Short: "Print every number of one option, with how it was reckoned",
		Args:  oneArgument("the job's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			job, o, err := loadOption(args[0], option)
			if err != nil {
				return err
			}
			write := sheet.Text
			if asJSON {
				write = sheet.JSON
			}
			return write(cmd.OutOrStdout(), job, o, derive(job, o))
		},
	}
	cmd.Flags().BoolVar(&asJSON, "json", false, "as JSON, for programs")
	optionFlag(cmd, &option, "the first one when not given")
	return cmd
}
