package main

import (
	"runtime/debug"
	"strings"
)

// versionText says which program this is, from what the compiler wrote into it:
// nothing of it depends on when or where it was built.
func versionText() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "fusewright, version not known"
	}
	return versionOf(info)
}

func versionOf(info *debug.BuildInfo) string {
	version := strings.Trim(info.Main.Version, "()")
	if version == "" {
		version = "devel"
	}
	words := []string{"fusewright " + version}
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision" && len(s.Value) >= 12:
			words = append(words, "revision "+s.Value[:12])
		case s.Key == "vcs.modified" && s.Value == "true":
			words = append(words, "with local changes")
		}
	}
	if info.GoVersion != "" {
		words = append(words, info.GoVersion)
	}
	return strings.Join(words, ", ")
}
