package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.org/castwright/assets"
	"example.org/castwright/model/store"
	"github.com/spf13/cobra"
)

func demoCommand() *cobra.Command {
	var force bool
	cmd := &cobra.Command{
		Use:   "demo DIR",
		Short: "Write the demo jobs into a folder",
		Args:  oneArgument("the folder to write to"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if args[0] == "" {
				return errors.New("demo needs the name of the folder to write to")
			}
			written, err := writeDemos(args[0], assets.Demos(), force)
			for _, name := range written {
				_, werr := fmt.Fprintln(cmd.OutOrStdout(), "wrote", name)
				err = errors.Join(err, werr)
			}
			return err
		},
	}
	cmd.Flags().BoolVar(&force, "force", false, "write over files that are there")
	return cmd
}

// writeDemos writes the demo jobs into dir, which it makes when it is not there,
// and gives the paths written. It looks for files that are in the way before it
// writes the first one.
func writeDemos(dir string, demos []assets.Demo, force bool) ([]string, error) {
	for _, d := range demos {
		path := filepath.Join(dir, d.Name)
		if _, err := os.Lstat(path); err == nil && !force {
			return nil, fmt.Errorf("%s is there already: choose another folder, or --force to write over it", path)
		}
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, fmt.Errorf("making the folder %s: %w: choose another", dir, bare(err))
	}
	var written []string
	for _, d := range demos {
		path := filepath.Join(dir, d.Name)
		err := store.Write(path, func(w io.Writer) error {
			_, err := w.Write(d.Data)
			return err
		})
		if err != nil {
			return written, err
		}
		written = append(written, path)
	}
	return written, nil
}
