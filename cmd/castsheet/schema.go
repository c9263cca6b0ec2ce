package main

import (
	"example.org/castwright/assets"
	"github.com/spf13/cobra"
)

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema",
		Short: "Print the JSON Schema of the job file (draft 2020-12)",
		Args:  noArgument,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := cmd.OutOrStdout().Write(assets.Schema())
			return err
		},
	}
}
