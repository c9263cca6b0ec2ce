package main

import (
	"sort"
	"strings"
)

// purpose is what a need is needed for.
type purpose string

// The purposes.
const (
	toBuild purpose = "to build the window"
	toShow  purpose = "to show the window"
	toTest  purpose = "to test the window without a screen"
	toRead  purpose = "to read our PDFs and codes by programs that are not ours"
)

// need is one thing that the program or its checks cannot do without, how to
// see whether it is here, and the packages that bring it.
type need struct {
	what     string
	purpose  purpose
	found    func(machine) bool
	packages map[family][]string
	anywhere bool // not on Linux alone
}

// needs is everything, for every system. Windows and macOS bring their own
// window and drawing libraries, so they need only the compiler.
var needs = []need{
	{what: "C compiler", purpose: toBuild, found: compiles("stdlib.h"), anywhere: true,
		packages: packages("gcc libc6-dev", "gcc glibc-devel", "gcc", "gcc")},
	{what: "pkg-config", purpose: toBuild, found: program("pkg-config"),
		packages: packages("pkg-config", "pkgconf-pkg-config", "pkgconf", "pkg-config")},
	{what: "OpenGL headers", purpose: toBuild, found: both(compiles("GL/gl.h"), configured("gl")),
		packages: packages("libgl-dev", "libglvnd-devel", "libglvnd", "Mesa-libGL-devel")},
	{what: "EGL headers", purpose: toBuild, found: compiles("EGL/egl.h"),
		packages: packages("libegl-dev", "libglvnd-devel", "libglvnd", "Mesa-libEGL-devel")},
	{what: "X11 headers", purpose: toBuild, found: compiles("X11/Xlib.h"),
		packages: packages("libx11-dev", "libX11-devel", "libx11", "libX11-devel")},
	{what: "X11 cursor headers", purpose: toBuild, found: compiles("X11/Xcursor/Xcursor.h"),
		packages: packages("libxcursor-dev", "libXcursor-devel", "libxcursor", "libXcursor-devel")},
	{what: "X11 screen headers", purpose: toBuild, found: compiles("X11/extensions/Xrandr.h"),
		packages: packages("libxrandr-dev", "libXrandr-devel", "libxrandr", "libXrandr-devel")},
	{what: "X11 several-screens headers", purpose: toBuild, found: compiles("X11/extensions/Xinerama.h"),
		packages: packages("libxinerama-dev", "libXinerama-devel", "libxinerama", "libXinerama-devel")},
	{what: "X11 input headers", purpose: toBuild, found: compiles("X11/extensions/XInput2.h"),
		packages: packages("libxi-dev", "libXi-devel", "libxi", "libXi-devel")},
	{what: "X11 video mode headers", purpose: toBuild, found: compiles("X11/extensions/xf86vmode.h"),
		packages: packages("libxxf86vm-dev", "libXxf86vm-devel", "libxxf86vm", "libXxf86vm-devel")},
	{what: "Wayland headers", purpose: toBuild, found: compiles("wayland-client.h"),
		packages: packages("libwayland-dev", "wayland-devel", "wayland", "wayland-devel")},
	{what: "keyboard headers", purpose: toBuild, found: compiles("xkbcommon/xkbcommon.h"),
		packages: packages("libxkbcommon-dev", "libxkbcommon-devel", "libxkbcommon", "libxkbcommon-devel")},
	{what: "OpenGL driver", purpose: toShow, found: driver,
		packages: packages("libgl1-mesa-dri", "mesa-dri-drivers", "mesa", "Mesa-dri")},
	{what: "Xvfb, a screen in memory", purpose: toTest, found: program("Xvfb"),
		packages: packages("xvfb", "xorg-x11-server-Xvfb", "xorg-server-xvfb", "xorg-x11-server-Xvfb")},
	{what: "xdotool, a hand for mouse and keys", purpose: toTest, found: program("xdotool"),
		packages: packages("xdotool", "xdotool", "xdotool", "xdotool")},
	{what: "pdftotext, pdffonts and pdftocairo, readers of PDF", purpose: toRead, found: program("pdftocairo"),
		packages: packages("poppler-utils", "poppler-utils", "poppler", "poppler-tools")},
	{what: "qpdf, which checks a PDF", purpose: toRead, found: program("qpdf"),
		packages: packages("qpdf", "qpdf", "qpdf", "qpdf")},
	{what: "zbarimg, a reader of QR codes", purpose: toRead, found: program("zbarimg"),
		packages: packages("zbar-tools", "zbar", "zbar", "zbar")},
}

// packages puts the names that each family uses, several with spaces between.
func packages(deb, fed, pac, sus string) map[family][]string {
	return map[family][]string{
		debian: strings.Fields(deb), fedora: strings.Fields(fed),
		arch: strings.Fields(pac), suse: strings.Fields(sus),
	}
}

// ofPurpose gives the needs with one of these purposes on a system.
func ofPurpose(s system, purposes ...purpose) []need {
	var out []need
	for _, n := range needs {
		for _, p := range purposes {
			if n.purpose == p && (s.linux || n.anywhere) {
				out = append(out, n)
			}
		}
	}
	return out
}

// absent gives those needs that the machine lacks.
func absent(all []need, m machine) []need {
	var out []need
	for _, n := range all {
		if !n.found(m) {
			out = append(out, n)
		}
	}
	return out
}

// packageNames gives, sorted and each once, what brings these needs on a family.
func packageNames(all []need, f family) []string {
	var out []string
	seen := map[string]bool{}
	for _, n := range all {
		for _, p := range n.packages[f] {
			if !seen[p] {
				seen[p] = true
				out = append(out, p)
			}
		}
	}
	sort.Strings(out)
	return out
}
