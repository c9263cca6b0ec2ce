package main

import "testing"

// The texts are what the systems' own os-release files hold, shortened.
func TestReadOSRelease(t *testing.T) {
	for _, c := range []struct {
		text   string
		family family
		name   string
	}{
		{"PRETTY_NAME=\"Debian GNU/Linux 12 (bookworm)\"\nNAME=\"Debian GNU/Linux\"\nID=debian\n",
			debian, "Debian GNU/Linux 12 (bookworm)"},
		{"PRETTY_NAME=\"Ubuntu 24.04.1 LTS\"\nID=ubuntu\nID_LIKE=debian\n", debian, "Ubuntu 24.04.1 LTS"},
		{"NAME=\"Linux Mint\"\nID=linuxmint\nID_LIKE=\"ubuntu debian\"\n", debian, "Linux"},
		{"NAME=\"Fedora Linux\"\nID=fedora\nPRETTY_NAME=\"Fedora Linux 41\"\n", fedora, "Fedora Linux 41"},
		{"ID=\"rocky\"\nID_LIKE=\"rhel centos fedora\"\nPRETTY_NAME='Rocky Linux 9'\n", fedora, "Rocky Linux 9"},
		{"ID=arch\nPRETTY_NAME=\"Arch Linux\"\n", arch, "Arch Linux"},
		{"ID=manjaro\nID_LIKE=arch\nPRETTY_NAME=Manjaro\r\n", arch, "Manjaro"},
		{"ID=\"opensuse-tumbleweed\"\nID_LIKE=\"opensuse suse\"\nPRETTY_NAME=\"openSUSE Tumbleweed\"\n",
			suse, "openSUSE Tumbleweed"},
		{"ID=nixos\nPRETTY_NAME=NixOS\n", other, "NixOS"},
		{"# ID=debian\nthis is no such file", other, "Linux"},
		{"", other, "Linux"},
	} {
		f, name := readOSRelease(c.text)
		if f != c.family || name != c.name {
			t.Errorf("%q: got %s %q, want %s %q", c.text, f, name, c.family, c.name)
		}
	}
}
