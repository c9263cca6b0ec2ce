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
		Long: "Prints every number of one option, with how it was reckoned.\n\n" +
			"All measures are of the finished top, with the grind off. By their keys in --json:\n\n" +
			"  plan_area_mm2         inside the outline, nothing taken off\n" +
			"  net_area_mm2          less all that goes right through, at its plan size\n" +
			"  outline_perimeter_mm  along the whole outline, whatever meets it\n" +
			"  cutout_perimeter_mm   rims of openings, united, where they lie inside the outline\n" +
			"  concrete_volume_mm3   the solid, glass beds counted as concrete\n" +
			"  resin_volume_mm3      space of the resin channels up to the face, top coats left out\n" +
			"  glass_area_mm2        plan area of glass beds less openings and channels\n" +
			"  glass_mass_kg         glass as laid in those beds, without waste\n" +
			"  weight_kg             finished and dry, with glass, fill and top coats, without bowls\n" +
			"  centre_of_gravity_mm  of that mass: x, y as drawn, z above the underside\n" +
			"  bags                  whole bags, grind and waste included",
		Args: oneArgument("the job's file"),
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
