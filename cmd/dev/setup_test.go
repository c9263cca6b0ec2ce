package main

import (
	"slices"
	"strings"
	"testing"
)

// bare is a machine with nothing on it, and full one with everything.
var (
	bare = machineThat(false)
	full = machineThat(true)
)

func machineThat(yes bool) machine {
	answer := func(string) bool { return yes }
	return machine{program: answer, compiles: answer, config: answer, file: answer}
}

func TestEveryNeedHasPackages(t *testing.T) {
	for _, n := range needs {
		for _, f := range []family{debian, fedora, arch, suse} {
			if len(n.packages[f]) == 0 {
				t.Errorf("%s: no package for %s", n.what, f)
			}
		}
	}
}

func TestAbsent(t *testing.T) {
	linux := system{family: debian, linux: true}
	all := ofPurpose(linux, toBuild, toShow, toTest, toRead)
	if got := absent(all, full); len(got) != 0 {
		t.Errorf("a machine with everything lacks %d things", len(got))
	}
	if got := absent(all, bare); len(got) != len(needs) {
		t.Errorf("a bare machine lacks %d things, want all %d", len(got), len(needs))
	}
	noX := full
	noX.compiles = func(h string) bool { return !strings.HasPrefix(h, "X11/") }
	want := []string{"libx11-dev", "libxcursor-dev", "libxi-dev", "libxinerama-dev", "libxrandr-dev",
		"libxxf86vm-dev"}
	if got := packageNames(absent(all, noX), debian); !slices.Equal(got, want) {
		t.Errorf("without X11 headers: got %v, want %v", got, want)
	}
	if got := ofPurpose(linux, toTest); len(got) != 2 {
		t.Errorf("testing alone needs %d things, want Xvfb and xdotool", len(got))
	}
	if got := ofPurpose(system{family: mac}, toBuild, toShow, toTest); len(got) != 1 {
		t.Errorf("macOS needs %d things, want the compiler alone", len(got))
	}
}

func TestInstallCommands(t *testing.T) {
	lost := absent(ofPurpose(system{linux: true}, toTest), bare)
	for _, c := range []struct {
		name       string
		family     family
		root, sudo bool
		want       string // the last command, or words of the advice
	}{
		{"root", debian, true, false, "env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 " +
			"install -y --no-install-recommends xdotool xvfb"},
		{"sudo", debian, false, true, "sudo env DEBIAN_FRONTEND=noninteractive apt-get " +
			"-o DPkg::Lock::Timeout=300 install -y --no-install-recommends xdotool xvfb"},
		{"neither", debian, false, false, "apt-get install xdotool xvfb"},
		{"fedora", fedora, true, true, "sudo dnf install xdotool xorg-x11-server-Xvfb"},
		{"arch", arch, true, true, "sudo pacman -S --needed xdotool xorg-server-xvfb"},
		{"suse", suse, true, true, "sudo zypper install xdotool xorg-x11-server-Xvfb"},
		{"mac", mac, false, true, "xcode-select --install"},
		{"windows", windows, false, false, "mingw-w64-ucrt-x86_64-gcc"},
		{"other", other, true, true, "Xvfb, a screen in memory"},
	} {
		t.Run(c.name, func(t *testing.T) {
			commands, err := installCommands(c.family, lost, c.root, c.sudo)
			if err != nil {
				if !strings.Contains(err.Error(), c.want) {
					t.Errorf("the advice lacks %q: %v", c.want, err)
				}
				return
			}
			if len(commands) != 2 || !slices.Contains(commands[0], "update") {
				t.Fatalf("want an update and an installation, got %v", commands)
			}
			if got := strings.Join(commands[1], " "); got != c.want {
				t.Errorf("got %s\nwant %s", got, c.want)
			}
		})
	}
}

func TestDriver(t *testing.T) {
	at := func(path string) machine {
		m := bare
		m.file = func(pattern string) bool { return pattern == path }
		return m
	}
	if !driver(at("/usr/lib/*/dri/*_dri.so")) || driver(bare) {
		t.Error("the drawing driver is not looked for where Debian keeps it")
	}
}
