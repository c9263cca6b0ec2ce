package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"

	"example.org/castwright/model/geom"
	"example.org/castwright/model/template"
	"github.com/spf13/cobra"
)

// maxOutlineBytes is how much of a file is read; what is larger is refused.
const maxOutlineBytes = 32 << 20

func outlineCommand() *cobra.Command {
	var unit string
	cmd := &cobra.Command{
		Use:   "outline FILE.svg|FILE.dxf",
		Short: "Print the closed loops of a drawing as JSON",
		Long: "Reads an SVG or an ASCII DXF as the window brings it in, and prints as JSON the closed loops\n" +
			"found (\"loops\", with their holes) and in words what was joined, closed or dropped on the way\n" +
			"(\"notes\"). The area and centroid of a loop are less its holes; its perimeter is that of the\n" +
			"outer line. Centroids stand in the drawing's own axes: those of an SVG run right and down from\n" +
			"the corner of its page. --units goes before what a DXF says of itself, and before the pixels\n" +
			"of an SVG; an SVG whose size stands in it in mm, in or the like has that size.",
		Args: oneArgument("the drawing's file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			units := map[string]template.Unit{
				"": template.UnitUnknown, "mm": template.UnitMM, "in": template.UnitInch,
			}
			as, known := units[unit]
			if !known {
				return fmt.Errorf("--units %q is not known: use mm or in", unit)
			}
			data, err := readDrawing(args[0])
			if err != nil {
				return err
			}
			drawing, err := template.Read(data, as)
			switch {
			case err == template.ErrUnits:
				return fmt.Errorf("%s: %w, by --units mm or --units in", args[0], err)
			case err != nil:
				return fmt.Errorf("%s: %w", args[0], err)
			}
			out := json.NewEncoder(cmd.OutOrStdout())
			out.SetIndent("", "  ")
			return out.Encode(outlineOf(drawing))
		},
	}
	cmd.Flags().StringVar(&unit, "units", "", "what the file's numbers are, mm or in (asked for when it does not say)")
	return cmd
}

// readDrawing reads a file of a size that a drawing may have.
func readDrawing(path string) ([]byte, error) {
	// Looked at before it is opened: a pipe would wait for somebody to write.
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, fmt.Errorf("opening %s: %w", path, bare(err))
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("opening %s: this is not a file: choose an SVG or a DXF", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("opening %s: %w", path, bare(err))
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, maxOutlineBytes+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) > maxOutlineBytes:
		return nil, fmt.Errorf("%s: the file is larger than %d MB: save only the outline", path, maxOutlineBytes>>20)
	}
	return data, nil
}

// outline is what a drawing holds, as it is printed.
type outline struct {
	Loops []outlineLoop `json:"loops"`
	Notes []string      `json:"notes"`
}

// outlineLoop is a closed chain. Its area is less that of its holes, which are
// told of in the same way.
type outlineLoop struct {
	Area      float64       `json:"area_mm2"`
	Perimeter float64       `json:"perimeter_mm"`
	Centroid  [2]float64    `json:"centroid_mm"`
	Holes     []outlineLoop `json:"holes"`
}

func outlineOf(d template.Drawing) outline {
	out := outline{Loops: []outlineLoop{}, Notes: []string{}}
	for _, l := range d.Loops {
		loop := outlineLoop{micro(l.Area), micro(l.Perimeter), ownAxes(d, l.Centroid), []outlineLoop{}}
		for _, h := range l.Holes {
			area, perimeter, centroid := template.Measure(h)
			loop.Holes = append(loop.Holes,
				outlineLoop{micro(area), micro(perimeter), ownAxes(d, centroid), []outlineLoop{}})
		}
		out.Loops = append(out.Loops, loop)
	}
	out.Notes = append(out.Notes, d.Notes...)
	return out
}

// micro rounds to the sixth decimal, below which there is only rounding.
func micro(x float64) float64 { return math.Round(x*1e6)/1e6 + 0 } // no -0

// ownAxes is a place as the drawing's own axes have it: an SVG's y runs down.
func ownAxes(d template.Drawing, p geom.Vec) [2]float64 {
	if d.Source == "svg" {
		p.Y = -p.Y
	}
	return [2]float64{micro(p.X), micro(p.Y)}
}
