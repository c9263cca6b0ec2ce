package main

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"example.org/castwright/model/design"
	"example.org/castwright/model/report"
	"example.org/castwright/model/store"
	"github.com/spf13/cobra"
)

// loadJob reads a job that holds at least one option.
func loadJob(path string) (design.Job, error) {
	job, err := store.Load(path)
	if err != nil {
		return design.Job{}, err
	}
	if len(job.Options) == 0 {
		return design.Job{}, fmt.Errorf("%s: the job holds no options: draw one first", path)
	}
	return job, nil
}

// choose gives the option with this name, the first one when the name is empty.
func choose(job design.Job, name string) (design.Option, error) {
	if name == "" {
		return job.Options[0], nil
	}
	if o, ok := job.Option(name); ok {
		return o, nil
	}
	names := make([]string, len(job.Options))
	for i, o := range job.Options {
		names[i] = o.Name
	}
	return design.Option{}, fmt.Errorf("there is no option %q in this job; it has %s",
		name, strings.Join(names, ", "))
}

// loadOption reads a job and gives it with one of its options.
func loadOption(path, name string) (design.Job, design.Option, error) {
	job, err := loadJob(path)
	if err != nil {
		return design.Job{}, design.Option{}, err
	}
	o, err := choose(job, name)
	return job, o, err
}

// loadOptions reads a job and gives it with the option of this name, or with all of
// them when the name is empty.
func loadOptions(path, name string) (design.Job, []design.Option, error) {
	job, err := loadJob(path)
	if err != nil || name == "" {
		return job, job.Options, err
	}
	o, err := choose(job, name)
	return job, []design.Option{o}, err
}

// derive reckons the report of one option of a job.
func derive(job design.Job, o design.Option) report.Report {
	return report.Derive(o.Design, job.Materials, job.Site)
}

// optionFlag adds the flag that chooses an option.
func optionFlag(cmd *cobra.Command, into *string, otherwise string) {
	cmd.Flags().Var((*optionName)(into), "option", "name of the option, such as B ("+otherwise+")")
}

// optionName is the value of the flag that chooses an option. It is not empty: a
// script whose variable is empty has chosen none.
type optionName string

func (o *optionName) String() string { return string(*o) }
func (o *optionName) Type() string   { return "string" }

func (o *optionName) Set(s string) error {
	if s == "" {
		return errors.New("give the name of an option, or leave --option out")
	}
	*o = optionName(s)
	return nil
}

// bare is an error of the system without the call and the path: the caller has said
// them, and the usual one in plain words.
func bare(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return errors.New("there is no such file or folder")
	}
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err
	}
	return err
}
