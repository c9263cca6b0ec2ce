package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

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

// patience is how long a program that is told to stop may take to tidy up.
const patience = 3 * time.Second

func main() {
	ctx, listen := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	go func() {
		<-ctx.Done()
		listen() // told again, it ends at once
		time.Sleep(patience)
		fmt.Fprintln(os.Stderr, "castsheet:", errStopped)
		os.Exit(exitFailed)
	}()
	os.Exit(run(ctx, os.Args[1:], os.Stdout, os.Stderr))
}

// errStopped says that somebody ended the program.
var errStopped = errors.New("stopped before it was done, nothing was written")

// run does what the arguments ask and gives the code to end with. When ctx ends, what
// is being written is taken away again.
func run(ctx context.Context, args []string, out, errs io.Writer) int {
	root := commands()
	root.SetArgs(args)
	root.SetOut(out)
	root.SetErr(errs)
	err := root.ExecuteContext(ctx)
	switch {
	case err != nil && ctx.Err() != nil:
		err = errStopped
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
			"Ends with 0 when all is well; with 1 when check found something severe or a fault, or approved\n" +
			"a revision that is not as it was approved; with 2 when it could not do what was asked: then one\n" +
			"line on the error stream says why, and no file was written or changed.",
		Version:           version,
		SilenceUsage:      true,
		SilenceErrors:     true,
		CompletionOptions: cobra.CompletionOptions{HiddenDefaultCmd: true},
		RunE: func(_ *cobra.Command, _ []string) error {
			return errors.New("say what to do: check, report, picture and others stand in castsheet --help")
		},
	}
	root.SetVersionTemplate("castsheet {{.Version}}\n")
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return fmt.Errorf("%s; see %s --help", plainFlag(err.Error()), cmd.CommandPath())
	})
	root.SetHelpCommand(helpCommand(root))
	root.AddCommand(demoCommand(), checkCommand(), reportCommand(), pictureCommand(), schemaCommand(), licencesCommand(),
		versionCommand(), previewCommand(), approvalCommand(), approvedCommand(), compareCommand(), outlineCommand(),
		roomCommand())
	return root
}

// helpCommand is the help of a command, for those who write "help" before it.
func helpCommand(root *cobra.Command) *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Print what a command does and its flags",
		RunE: func(_ *cobra.Command, args []string) error {
			cmd, rest, err := root.Find(args)
			if err != nil || len(rest) > 0 {
				return fmt.Errorf("there is no command %q; see castsheet --help", strings.Join(args, " "))
			}
			return cmd.Help()
		},
	}
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
	at := strings.Index(s, ": strconv.")
	switch {
	case at < 0:
		return s
	case strings.Contains(s[at:], "ParseBool"):
		return s[:at] + ", give true or false, or the flag alone"
	case strings.Contains(s[at:], "ParseFloat"):
		return s[:at] + ", give a number"
	}
	return s[:at] + ", give a whole number"
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
