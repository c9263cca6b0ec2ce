package main

import (
	"os"
	"runtime"
	"strings"
)

// family is a group of systems with the same package names.
type family string

// The families whose package names stand in the table of needs.
const (
	debian  family = "debian"
	fedora  family = "fedora"
	arch    family = "arch"
	suse    family = "suse"
	mac     family = "mac"
	windows family = "windows"
	other   family = "other"
)

// system is what must be known of this machine.
type system struct {
	family  family
	name    string // as its maker writes it
	linux   bool
	display bool // a window can be shown
}

func thisSystem() system {
	switch runtime.GOOS {
	case "darwin":
		return system{family: mac, name: "macOS", display: true}
	case "windows":
		return system{family: windows, name: "Windows", display: true}
	}
	s := system{
		family:  other,
		name:    runtime.GOOS,
		linux:   runtime.GOOS == "linux",
		display: os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != "",
	}
	if text, err := os.ReadFile("/etc/os-release"); err == nil {
		s.family, s.name = readOSRelease(string(text))
	}
	return s
}

// readOSRelease finds the family and the name in the text of an os-release
// file: lines of KEY=value, values quoted as a shell would.
func readOSRelease(text string) (family, string) {
	fields := map[string]string{}
	for line := range strings.Lines(text) {
		key, value, ok := strings.Cut(strings.TrimSpace(line), "=")
		if !ok || strings.HasPrefix(key, "#") {
			continue
		}
		fields[key] = strings.Trim(value, `"'`)
	}
	name := fields["PRETTY_NAME"]
	if name == "" {
		name = "Linux"
	}
	ids := append([]string{fields["ID"]}, strings.Fields(fields["ID_LIKE"])...)
	for _, id := range ids {
		switch {
		case id == "debian" || id == "ubuntu":
			return debian, name
		case id == "fedora" || id == "rhel" || id == "centos":
			return fedora, name
		case id == "arch":
			return arch, name
		case id == "suse" || strings.HasPrefix(id, "opensuse"):
			return suse, name
		}
	}
	return other, name
}
