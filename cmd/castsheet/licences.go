package main

import (
	"fmt"
	"maps"
	"slices"

	"example.org/castwright/assets"
	"github.com/spf13/cobra"
)

func licencesCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "licences",
		Short: "Print the licences of the fonts that are embedded in PDFs",
		Args:  noArgument,
		RunE: func(cmd *cobra.Command, _ []string) error {
			all := assets.Licences()
			for _, font := range slices.Sorted(maps.Keys(all)) {
				if _, err := fmt.Fprintf(cmd.OutOrStdout(), "%s\n\n%s\n\n", font, all[font]); err != nil {
					return err
				}
			}
			return nil
		},
	}
}
