package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"
)

// version is the program's, the same as in FyneApp.toml.
const version = "0.1.0"

// The codes that the program ends with.
const (
	exitFine   = 0
	exitSevere = 1
	exitFailed = 2
)

// errSevere says that check found what must not be cast; it has been printed.
var errSevere = errors.New("there are severe warnings or faults")

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run does what the arguments ask and gives the code to end with.
func run(args []string, out, errs io.Writer) int {
	root := commands()
	root.SetArgs(args)
	root.SetOut(out)
	root.SetErr(errs)
	err := root.Execute()
	switch {
	case err == nil:
		return exitFine
	case errors.Is(err, errSevere):
		return exitSevere
	}
	fmt.Fprintln(errs, "castsheet:", oneLine(err.Error()))
	return exitFailed
}

// oneLine puts an error on one line, so that a script can keep it whole.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// commands builds the tree of sub-commands.
func commands() *cobra.Command {
	root := &cobra.Command{
		Use:   "castsheet",
		Short: "Checks, reckons and draws cast concrete tops from their job files",
		Long: "Checks, reckons and draws cast concrete tops from their job files.\n\n" +
			"Ends with 0 when all is well, 1 when check found something severe,\n" +
			"2 when a file can't be read or the call makes no sense.",
		Version:           version,
		SilenceUsage:      true,
		SilenceErrors:     true,
		CompletionOptions: cobra.CompletionOptions{HiddenDefaultCmd: true},
		RunE: func(_ *cobra.Command, _ []string) error {
			return errors.New("say what to do: demo, check, report, picture, preview, compare, approval, approved, outline, schema or version; see castsheet --help")
		},
	}
	root.SetVersionTemplate("castsheet {{.Version}}\n")
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return fmt.Errorf("%s; see %s --help", plainFlag(err.Error()), cmd.CommandPath())
	})
	root.AddCommand(demoCommand(), checkCommand(), reportCommand(), pictureCommand(), schemaCommand(), licencesCommand(),
		versionCommand(), previewCommand(), approvalCommand(), approvedCommand(), compareCommand(), outlineCommand(),
		roomCommand())
	return root
}

func versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "version",
		Short: "Print the program's version",
		Args:  noArgument,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := fmt.Fprintln(cmd.OutOrStdout(), "castsheet", version)
			return err
		},
	}
}

// noArgument accepts no argument.
func noArgument(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return fmt.Errorf("%s takes no argument; it got %q", cmd.Name(), args[0])
}

// plainFlag says what is wrong with a flag without the words of the reader of
// numbers.
func plainFlag(s string) string {
	if at := strings.Index(s, ": strconv."); at >= 0 {
		return s[:at] + ", give a whole number"
	}
	return s
}

// oneArgument accepts exactly one argument and says what it should be.
func oneArgument(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) == 1 {
			return nil
		}
		return fmt.Errorf("%s needs one argument, %s; it got %d", cmd.Name(), what, len(args))
	}
}
