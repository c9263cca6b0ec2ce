package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
	"unicode"
)

// run starts the window on a job, or on the demo when file is "". Where no
// window can be shown it makes the job's papers instead.
func (d dev) run(file string) error {
	if !d.system.display {
		d.say("There is no display here (neither DISPLAY nor WAYLAND_DISPLAY is set), so no window can be\n" +
			"shown and nothing for it is installed. Making the sheets and pictures instead.")
		return d.papers(file)
	}
	if missing := d.setUp(toBuild, toShow); len(missing) > 0 {
		return fmt.Errorf("%d of the things named above are still missing", len(missing))
	}
	sockets, err := d.socketFolder()
	if err != nil {
		return err
	}
	env := setVar(windowEnv(os.Environ(), sockets, false), "CGO_ENABLED", "1")
	built := runSteps(d.out, []step{{
		name: "building the window (the first time takes some minutes)",
		run: func(out io.Writer) error {
			return call(out, env, "go", "build", "-tags", "migrated_fynedo,no_animations",
				"-o", d.binary("castwright"), "./cmd/castwright")
		},
	}})
	if built[0].err != nil {
		return built[0].err
	}
	words := []string{d.binary("castwright")}
	if file != "" {
		words = append(words, file)
	}
	d.say("Starting %s", strings.Join(words, " "))
	return call(d.out, env, words...)
}

// papers writes reports and pictures of a job, or of the demo, below out.
func (d dev) papers(file string) error {
	env := setVar(os.Environ(), "CGO_ENABLED", "0")
	dir := filepath.Join(d.root, "out")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	sheet := d.binary("castsheet")
	var made []string
	results := runSteps(d.out, []step{
		{name: "building castsheet", needed: true, run: func(out io.Writer) error {
			return call(out, env, "go", "build", "-o", sheet, "./cmd/castsheet")
		}},
		{name: "making sheets and pictures", run: func(out io.Writer) error {
			jobs := []string{file}
			if file == "" {
				demo := filepath.Join(dir, "demo")
				if err := call(out, env, sheet, "demo", demo, "--force"); err != nil {
					return err
				}
				var err error
				if jobs, err = filepath.Glob(filepath.Join(demo, "*.json")); err != nil {
					return err
				}
			}
			for _, job := range jobs {
				files, err := jobPapers(out, env, sheet, job, dir)
				if err != nil {
					return err
				}
				made = append(made, files...)
			}
			return nil
		}},
	})
	for _, r := range results {
		if r.err != nil {
			return r.err
		}
	}
	d.say("\nMade %d files in %v:", len(made), results[1].took.Round(time.Second/10))
	for _, f := range made {
		d.say("  %s", f)
	}
	return nil
}

// jobPapers writes, of each option of a job, the report as text and as JSON and
// the picture, and gives their paths.
func jobPapers(out io.Writer, env []string, sheet, job, dir string) ([]string, error) {
	text, err := os.ReadFile(job)
	if err != nil {
		return nil, err
	}
	options, err := optionNames(text)
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", job, err)
	}
	var made []string
	for _, option := range options {
		base := filepath.Join(dir, strings.TrimSuffix(filepath.Base(job), ".json")+"-"+fileName(option))
		for _, paper := range []struct {
			ext   string
			words []string
		}{
			{".txt", []string{"report", job, "--option", option}},
			{".json", []string{"report", job, "--option", option, "--json"}},
			{".png", []string{"picture", job, "--option", option, "--width", "2000", "-o", base + ".png"}},
		} {
			name := base + paper.ext
			if err := writePaper(out, env, name, append([]string{sheet}, paper.words...)); err != nil {
				return nil, err
			}
			made = append(made, name)
		}
	}
	return made, nil
}

// writePaper runs castsheet; what it prints is the paper, save for a picture,
// which it writes itself.
func writePaper(out io.Writer, env []string, name string, words []string) error {
	if strings.HasSuffix(name, ".png") {
		return call(out, env, words...)
	}
	cmd := exec.Command(words[0], words[1:]...)
	cmd.Env, cmd.Stderr = env, out
	text, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("castsheet %s: %w", strings.Join(words[1:], " "), err)
	}
	return os.WriteFile(name, text, 0o644)
}

// fileName makes an option's name fit for a file's: letters, digits and dashes.
func fileName(option string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return '-'
	}, option)
}

// optionNames gives the names of a job's options from the text of its file.
func optionNames(text []byte) ([]string, error) {
	var job struct {
		Options []struct {
			Name string `json:"name"`
		} `json:"options"`
	}
	if err := json.Unmarshal(text, &job); err != nil {
		return nil, err
	}
	var names []string
	for _, o := range job.Options {
		names = append(names, o.Name)
	}
	if len(names) == 0 {
		return nil, errors.New("it holds no options")
	}
	return names, nil
}
