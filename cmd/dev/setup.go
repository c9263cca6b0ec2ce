package main

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"time"
)

// setUp looks for what these purposes need, installs what is missing where it
// can, and gives what is still missing after that.
func (d dev) setUp(purposes ...purpose) []need {
	wanted := ofPurpose(d.system, purposes...)
	missing := absent(wanted, thisMachine())
	if len(missing) == 0 {
		return nil
	}
	d.say("Missing on this machine (%s):", d.system.name)
	for _, n := range missing {
		d.say("  %s, %s", n.what, n.purpose)
	}
	commands, err := installCommands(d.system.family, missing, os.Geteuid() == 0, has("sudo"))
	if err != nil {
		d.say("%s", err)
		return missing
	}
	d.say("About to install: %s", strings.Join(packageNames(missing, d.system.family), " "))
	for i, words := range commands {
		d.say("  %s", strings.Join(words, " "))
		// The package lists may be out of reach and the packages at hand, so
		// only the last command, the installation, must succeed.
		if said, err := d.quietly(words); err != nil {
			d.say("%sThat did not work: %v", said, err)
			if i == len(commands)-1 {
				d.say("%s", advice(d.system.family, missing))
			}
		}
	}
	return absent(wanted, thisMachine())
}

// quietly runs a command whose many lines matter only when it fails, and gives
// them. It still says at intervals that work goes on.
func (d dev) quietly(words []string) ([]byte, error) {
	tell := newTeller(d.out, 20*time.Second)
	defer tell.stop()
	cmd := exec.Command(words[0], words[1:]...)
	cmd.Stdin = os.Stdin
	return cmd.CombinedOutput()
}

// installCommands gives the commands that install what is missing, or an error
// that says what to do by hand.
func installCommands(f family, missing []need, root, sudo bool) ([][]string, error) {
	if f != debian || !root && !sudo {
		return nil, fmt.Errorf("%s", advice(f, missing))
	}
	apt := []string{"env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-o", "DPkg::Lock::Timeout=300"}
	if !root {
		apt = append([]string{"sudo"}, apt...)
	}
	with := func(words ...string) []string { return append(append([]string(nil), apt...), words...) }
	install := with("install", "-y", "--no-install-recommends")
	return [][]string{
		with("update"),
		append(install, packageNames(missing, f)...),
	}, nil
}

// advice says in words what to install by hand.
func advice(f family, missing []need) string {
	names := strings.Join(packageNames(missing, f), " ")
	switch f {
	case debian:
		return "Install this as root, then run the same command again:\n" +
			"  apt-get update && apt-get install " + names
	case fedora:
		return "Install this, then run the same command again:\n  sudo dnf install " + names
	case arch:
		return "Install this, then run the same command again:\n  sudo pacman -S --needed " + names
	case suse:
		return "Install this, then run the same command again:\n  sudo zypper install " + names
	case mac:
		return "Install Apple's command line tools, then run the same command again:\n" +
			"  xcode-select --install"
	case windows:
		return "Install a 64-bit gcc, for instance with MSYS2: in its UCRT64 shell\n" +
			"  pacman -S mingw-w64-ucrt-x86_64-gcc\n" +
			"then put its bin folder (usually C:\\msys64\\ucrt64\\bin) on PATH, open a new terminal\n" +
			"and run the same command again."
	}
	words := make([]string, len(missing))
	for i, n := range missing {
		words[i] = n.what
	}
	return "Install these with your system's package manager, then run the same command again:\n  " +
		strings.Join(words, "\n  ")
}
